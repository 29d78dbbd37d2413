"""What every kind of record has: a name that is its address, a title, notes."""

from __future__ import annotations

from dataclasses import dataclass

from journal_tools.records import readers
from journal_tools.records.model import Model, says


@dataclass(frozen=True, kw_only=True)
class Record(Model):
    """One file of the journal.

    name: the file's name without its ending; the record's identity and its address.
    notes: the free notes below the front matter, Markdown, private. file: path inside the journal.
    """

    title: str | None = says(readers.text, "What you call it.", "Tideline towels", public=True)
    was: tuple[str, ...] = says(
        readers.names, "Names the file had before; their addresses still lead here.", "blue-towels", default=()
    )
    tags: tuple[str, ...] = says(readers.texts, "Words to find it by.", "gifts", default=())
    notes_for_everyone: str | None = says(
        readers.text, "Notes that the shared journal shows too.", "Woven for the kitchen.", public=True
    )
    photos: dict[str, str] | None = says(
        readers.by_name(readers.text),
        "Photos in the folder beside the entry, with captions.",
        "\n  on-the-line.jpg: On the line",
    )
    photos_for_everyone: tuple[str, ...] = says(
        readers.texts, "Photos that the shared journal shows too.", "on-the-line.jpg", public=True, default=()
    )
    name: str = ""
    notes: str = ""
    file: str = ""

    @property
    def heading(self) -> str:
        """The title, or the name when it has none."""
        return self.title or self.name.replace("-", " ").capitalize()
