"""The record of a finishing recipe."""

from __future__ import annotations

from dataclasses import dataclass

from journal_tools.records import readers
from journal_tools.records.model import says
from journal_tools.records.record import Record


@dataclass(frozen=True, kw_only=True)
class Finish(Record):
    """What is done to cloth off the loom."""

    title: str | None = says(readers.text, "What you call it.", "By hand at 40, on the line", public=True)
    done: str | None = says(readers.text, "What is done, in order.", "Soak an hour, press the water out.")
    water: str | None = says(readers.text, "Temperature of the water.", "40 C")
    agitation: str | None = says(readers.text, "How it is moved.", "by hand, gently")
    drying: str | None = says(readers.text, "How it is dried.", "on the line")
    pressing: str | None = says(readers.text, "How it is pressed.", "damp, hot iron")
    care: str | None = says(readers.text, "Care words for the owner.", "Machine wash at 40, line dry.", public=True)
    cautions: str | None = says(
        readers.text, "What can hurt, and how not to be hurt.", "Hot water scalds.", public=True
    )
    fulling: bool | None = says(readers.yes_no, "Whether the cloth is fulled on purpose.", "no", public=True)
