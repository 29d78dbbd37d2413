"""The draft that `draft` is asked about: in a file, or in the journal."""

from __future__ import annotations

import difflib
from collections.abc import Collection, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

import click

from journal_tools.commands.draft_record import OwnText, own_text, own_words, problems_of, read_outside, usual_dent
from journal_tools.commands.folder import Place, find
from journal_tools.commands.terminal import tell

if TYPE_CHECKING:
    from journal_tools.drafts import Draft
    from journal_tools.interchange import ReadDraft
    from journal_tools.problems import Problem
    from journal_tools.records import Draft as Record
    from journal_tools.records import Journal

MOST_NAMES = 10
"""Drafts that are listed where none has the name that was typed."""


@dataclass(frozen=True)
class Found:
    """A draft, and what came with it.

    called: its title. said: the weave that it is said to be. read: the interchange file that it came from, if
    any. own: its notation as a record has it, and text: that record's file. colours: six digits of each colour
    that the file, or a yarn of the journal, has a name for. usual_dent: ends of a usual dent, 0 where no one says.
    """

    draft: Draft
    called: str
    said: str
    read: ReadDraft | None = None
    own: tuple[str, ...] = ()
    colours: Mapping[str, str] = field(default_factory=dict)
    text: OwnText | None = None
    usual_dent: int = 0


def found_draft(context: click.Context, file: str, journal: Path | None, *, aside: bool = False) -> Found:
    """The draft of a file or of a name. Ends the command where there is none.

    A path to a file that is there is that file, wherever it lies; all else is a name in the journal.
    aside: what was odd is told where errors go, so that nothing stands before what a program reads.
    """
    path = Path(file)
    is_record = path.suffix.lower() == ".md"
    if path.suffix.lower() == ".wif" or (path.is_file() and not is_record):
        return _from_file(context, path, aside=aside)
    if is_record and path.is_file():
        return _from_record(context, path, journal, aside=aside)
    place = find(journal)
    if (below := _below(place, file)) is not None:
        return _from_record(context, below, journal, aside=aside)
    from journal_tools.records import read_journal
    from journal_tools.records.readers import slug

    whole = read_journal(place.entries)
    titled = {slug(draft.title): key for key, draft in whole.drafts.items() if draft.title}
    # Words with a slash are a path, and a draft of the journal that happens to be called as its end is another.
    name = "" if len(path.parts) > 1 else slug(path.stem if is_record else file)
    record = (whole.drafts.get(name) or whole.drafts.get(titled.get(name, ""))) if name else None
    if record is None:
        near = _near(slug(path.stem), whole.drafts, titled)
        click.echo(f'There is no file and no draft called "{file}".{near}', err=True)
        context.exit(1)
    return _woven(context, record, whole, place.entries / record.file, aside=aside)


def _below(place: Place, file: str) -> Path | None:
    """The record that a path means as it stands in the journal's messages: drafts/birds-eye.md."""
    if len(Path(file).parts) < 2:
        return None
    paths = (place.entries / file, place.entries / f"{file}.md")
    return next((path for path in paths if path.suffix == ".md" and path.is_file()), None)


def _near(name: str, drafts: Collection[str], titled: Mapping[str, str]) -> str:
    """The names that were probably meant; where none is near, some of those that there are."""
    near = difflib.get_close_matches(name, [*drafts, *titled], n=3, cutoff=0.6)
    meant = list(dict.fromkeys(titled.get(each, each) for each in near))
    if meant:
        return f" Did you mean {' or '.join(filter(None, [', '.join(meant[:-1]), meant[-1]]))}?"
    listed = list(drafts)
    more = f", and {len(listed) - MOST_NAMES} more" if len(listed) > MOST_NAMES else ""
    return f" Drafts here: {', '.join(listed[:MOST_NAMES])}{more}." if listed else ""


def _from_record(context: click.Context, path: Path, journal: Path | None, *, aside: bool) -> Found:
    """A record by its path: one of the journal's, or one that lies elsewhere."""
    import dataclasses

    from journal_tools.records import Journal, read_journal

    try:
        place = find(journal)
    except click.UsageError:  # a draft can be looked at where there is no journal
        place = None
    whole = read_journal(place.entries) if place is not None else Journal(path.parent)
    if place is not None and path.resolve().parent == (place.entries / "drafts").resolve():
        own = whole.drafts.get(path.stem)
        if own is not None:
            return _woven(context, own, whole, path, aside=aside)
    record, problems = read_outside(path, whole.settings.units)
    whole = dataclasses.replace(whole, problems=problems)
    return _woven(context, record, whole, path, aside=aside)


def _woven(context: click.Context, record: Record, whole: Journal, path: Path, *, aside: bool) -> Found:
    """The draft of a record, after its own problems. Ends the command where it cannot be woven."""
    from journal_tools.checking import woven_draft
    from journal_tools.quantities import Unreadable
    from journal_tools.records.colours_named import hexes_named

    problems = problems_of(record, whole)
    _tell(problems, aside=aside)
    try:
        woven = woven_draft(record)
    except Unreadable as unreadable:
        if any(problem.is_fault for problem in problems):
            click.echo("It can be drawn once that is mended.", err=True)
        else:
            read = f' read "{unreadable.read}".' if unreadable.read else ""
            click.echo(f"{record.file}:{read} {unreadable.right}", err=True)
        context.exit(1)
    if problems and not aside:
        click.echo("")
    own = tuple(own_words(record))
    text = own_text(path)
    said, colours = record.weave or "", hexes_named(whole)
    return Found(
        woven, record.heading, said, own=own, colours=colours, text=text, usual_dent=usual_dent(record)
    )


def _from_file(context: click.Context, path: Path, *, aside: bool) -> Found:
    from journal_tools.interchange import read_wif

    try:
        read = read_wif(path.read_bytes(), path.name)
    except OSError as error:
        raise click.UsageError(f"{path} cannot be read: {error.strerror or error}.") from error
    _tell(read.told, aside=aside)
    if read.draft is None:
        context.exit(1)
    if read.told and not aside:
        click.echo("")
    return Found(read.draft, read.title or path.stem, "", read, colours=read.colours)


def _tell(problems: Collection[Problem], *, aside: bool) -> None:
    for problem in problems:
        if aside:
            click.echo(problem.sentence(), err=True)
        else:
            tell(problem)
