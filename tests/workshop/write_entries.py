"""Writes the demonstration journal: `python -m tests.workshop.write_entries`.

Every record's front matter comes from the designs and the physics, its notes from notes/. Running it
again writes the same bytes.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path

from tests.workshop.block_yaml import Value, block
from tests.workshop.drafts import DRAFTS
from tests.workshop.finishes import FINISHES
from tests.workshop.looms import LOOMS
from tests.workshop.shelf import YARNS
from tests.workshop.warps import WARPS
from tests.workshop.weaving import record

HERE = Path(__file__).parent
ENTRIES = HERE.parents[1] / "entries"
FOR_US = "\n~~~\n"
"""Stands in notes/ between what is for everyone and what is for the weavers alone."""

JOURNAL: dict[str, Value] = {
    "title": "Saltmarsh Loft",
    "maker": "Handwoven cloth from two looms and two weavers, both invented",
    "place": "The loft over the net store, Marram Quay, on an island that no chart has",
    "length": "in",
    "weight": "g",
    "density": "in",
    "tape": "1/8 in",
    "currency": "EUR",
}


def entries() -> Iterator[tuple[str, str]]:
    """Every file of the journal: its path inside entries/, and its text."""
    yield "journal.md", _text("journal", JOURNAL)
    for design in WARPS:
        yield f"warps/{design.name}.md", _text(design.name, record(design))
    for folder, records in (("yarns", YARNS), ("drafts", DRAFTS), ("looms", LOOMS), ("finishes", FINISHES)):
        for name, fields in records.items():
            yield f"{folder}/{name}.md", _text(f"{folder}/{name}", fields)


def _text(name: str, fields: dict[str, Value]) -> str:
    path = HERE / "notes" / f"{name}.md"
    written = path.read_text(encoding="utf-8").strip() if path.exists() else ""
    for_everyone, mark, for_us = written.partition(FOR_US)
    if mark:
        fields = fields | {"notes_for_everyone": for_everyone.strip()}
    notes = (for_us if mark else written).strip()
    return f"---\n{block(fields)}---\n" + (f"\n{notes}\n" if notes else "")


def write(folder: Path) -> int:
    """Write every entry under a folder; the number of files."""
    written = list(entries())
    for path, text in written:
        file = folder / path
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(text, encoding="utf-8", newline="\n")
    return len(written)


if __name__ == "__main__":
    print(f"{write(ENTRIES)} entries written to {ENTRIES.name}/", file=sys.stderr)
