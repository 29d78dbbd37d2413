"""The journal's own settings, in `journal.md`: who keeps it, and what a bare number means."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, cast

from journal_tools.quantities import Length, Units
from journal_tools.records import readers
from journal_tools.records.model import Model, says


@dataclass(frozen=True, kw_only=True)
class Settings(Model):
    """What holds for every record of the journal."""

    title: str | None = says(readers.text, "What the journal is called.", "The swatch book", public=True)
    maker: str | None = says(readers.text, "Who weaves, in a few words.", "Handwoven cloth", public=True)
    place: str | None = says(readers.text, "Where you are; never shared.", "Upstairs at the mill")
    length: str = says(readers.choice("in", "cm", "mm"), "Unit of a bare length.", "in", public=True, default="in")
    weight: str = says(readers.choice("g", "oz"), "Unit of a bare weight.", "g", public=True, default="g")
    density: str | None = says(
        readers.choice("in", "cm"), "Whether a bare sett is to the inch or the centimetre.", "in", public=True
    )
    comma: str | None = says(
        readers.choice("decimal", "thousands"), "What a comma in a number means.", "decimal", public=True
    )
    tape: Length | None = says(readers.length, "The finest mark of the tape you use.", "1/8 in", public=True)
    currency: str | None = says(readers.text, "The currency of a bare price.", "EUR")
    notes: str = ""
    file: str = "journal.md"

    @property
    def units(self) -> Units:
        """What a bare number means in a record that does not say otherwise."""
        density = self.density or ("in" if self.length == "in" else "cm")
        return Units(cast(Any, self.length), cast(Any, self.weight), cast(Any, density), cast(Any, self.comma))
