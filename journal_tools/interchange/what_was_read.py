"""What an interchange file came to."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from journal_tools.drafts import Draft
from journal_tools.problems import Problem


@dataclass(frozen=True)
class Kept:
    """A section that is kept word for word. lines: below its head, with their indents, and blank ones too."""

    name: str
    lines: tuple[str, ...]


@dataclass(frozen=True)
class ReadDraft:
    """draft: None where the file holds none that can be woven. text: title, author and so on, by the file's keys.

    colours: hex of each colour of the file, by the name that the draft has for it. ends_per_m, picks_per_m: by
    the spacing, where the file gives a unit. end_mm, pick_mm: the usual thickness, likewise. shafts, treadles: as
    many as the file says, used or not. profile: whether its shafts are said to be blocks. kept: sections that
    mean nothing here, private ones among them. told: what was read oddly, mended, kept aside or refused.
    """

    draft: Draft | None
    text: Mapping[str, str] = field(default_factory=dict)
    notes: str = ""
    colours: Mapping[str, str] = field(default_factory=dict)
    ends_per_m: float | None = None
    picks_per_m: float | None = None
    profile: bool = False
    developers: str = ""
    kept: tuple[Kept, ...] = ()
    told: tuple[Problem, ...] = ()
    end_mm: float | None = None
    pick_mm: float | None = None
    shafts: int | None = None
    treadles: int | None = None

    @property
    def title(self) -> str:
        """What the draft is called; "" where the file does not say."""
        return self.text.get("Title", "")
