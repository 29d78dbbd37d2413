"""What a bare number means in one journal, or in one record of it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal


@dataclass(frozen=True)
class Units:
    """The units that a figure takes when it has none of its own, and what a comma means.

    length: of sizes and lengths. weight: of yarn and cloth. density: ends, picks or dents in one
    of these. comma: None leaves "1,200" unread, because it is 1200 to one weaver and 1.2 to
    another; "decimal" and "thousands" settle it.
    """

    length: Literal["in", "cm", "mm"] = "in"
    weight: Literal["g", "oz"] = "g"
    density: Literal["in", "cm"] = "in"
    comma: Literal["decimal", "thousands"] | None = None


USUAL = Units()
"""What a bare number means where nobody has said anything: inches, grams, per inch."""
