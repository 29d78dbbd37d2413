"""The photos beside an entry, for its page."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from journal_tools.pages.archive import Archive
from journal_tools.pages.view_parts import Picture
from journal_tools.pictures.photo import SUFFIXES, PhotoRefused
from journal_tools.problems import Problem, Severity
from journal_tools.records import Record


def photos(archive: Archive, record: Record) -> tuple[Picture, ...]:
    """The photos in the folder beside a record; in a shared journal, those marked for everyone."""
    return tuple(picture for path in _files(archive, record) if (picture := _photo(archive, record, path)) is not None)


def _files(archive: Archive, record: Record) -> Iterator[Path]:
    folder = (archive.journal.folder / record.file).with_suffix("")
    if not record.file or not folder.is_dir() or folder.is_symlink():
        return
    captioned = list(record.photos or {})
    names = sorted(path.name for path in folder.iterdir() if path.is_file() and not path.is_symlink())
    ordered = [name for name in captioned if name in names] + [name for name in names if name not in captioned]
    for name in ordered:
        shared = not archive.public or name in record.photos_for_everyone
        if shared and Path(name).suffix.lower() in SUFFIXES:
            yield folder / name


def _photo(archive: Archive, record: Record, path: Path) -> Picture | None:
    try:
        stored = archive.photo(path)
    except PhotoRefused as refused:
        archive.refused.append(
            Problem(
                record.file, 0, "photo", path.name, f"this photo is left out: {refused}.", Severity.QUESTION, "photo"
            )
        )
        return None
    caption = (record.photos or {}).get(path.name, "")
    alt = caption or f"Photo of {record.heading}"
    smallest = stored[0]
    wider = tuple((address, width) for address, width, _ in stored[1:])
    return Picture(smallest[0], alt, smallest[1], smallest[2], caption, wider=wider)
