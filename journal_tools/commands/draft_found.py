"""The draft that `draft` is asked about: in a file, or in the journal."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

import click

from journal_tools.commands.folder import find
from journal_tools.commands.terminal import tell

if TYPE_CHECKING:
    from journal_tools.drafts import Draft
    from journal_tools.interchange import ReadDraft
    from journal_tools.records import Draft as Record


@dataclass(frozen=True)
class Found:
    """A draft, and what came with it.

    called: its title. said: the weave that it is said to be. read: the file that it came from, if any.
    own: its notation as a record has it. colours: six digits of each colour that the file, or a yarn of the
    journal, has a name for.
    """

    draft: Draft
    called: str
    said: str
    read: ReadDraft | None = None
    own: tuple[str, ...] = ()
    colours: Mapping[str, str] = field(default_factory=dict)


def found_draft(context: click.Context, file: str, journal: Path | None, *, aside: bool = False) -> Found:
    """The draft of a file or of a name. Ends the command where there is none.

    aside: what was odd in a file is told where errors go, so that nothing stands before what a program reads.
    """
    path = Path(file)
    if path.suffix.lower() == ".wif" or (path.is_file() and path.suffix.lower() != ".md"):
        return _from_file(context, path, aside=aside)
    from journal_tools.checking import woven_draft
    from journal_tools.problems import nearest
    from journal_tools.quantities import Unreadable
    from journal_tools.records import read_journal
    from journal_tools.records.colours_named import hexes_named
    from journal_tools.records.readers import slug

    whole = read_journal(find(journal).entries)
    drafts = whole.drafts
    name = slug(path.stem if path.suffix == ".md" else file)
    titled = {slug(draft.title): key for key, draft in drafts.items() if draft.title}
    record: Record | None = drafts.get(name) or drafts.get(titled.get(name, ""))
    if record is None:
        near = nearest(name, (*drafts, *titled))
        more = f" Did you mean {near}?" if near else f" Drafts here: {', '.join(drafts)}." if drafts else ""
        click.echo(f'There is no file and no draft called "{file}".{more}', err=True)
        context.exit(1)
    try:
        woven = woven_draft(record)
    except Unreadable as unreadable:
        read = f' read "{unreadable.read}".' if unreadable.read else ""
        click.echo(f"{record.file}:{read} {unreadable.right}", err=True)
        context.exit(1)
    own = tuple(_own_words(record))
    return Found(woven, record.heading, record.weave or "", own=own, colours=hexes_named(whole))


def _own_words(record: Record) -> Iterator[str]:
    """The notation of a record as it was typed."""
    from journal_tools.pages.draft_part import notation_of

    yield from (f"{line.label}: {line.text}" for line in notation_of(record))


def _from_file(context: click.Context, path: Path, *, aside: bool) -> Found:
    from journal_tools.interchange import read_wif

    try:
        read = read_wif(path.read_bytes(), path.name)
    except OSError as error:
        raise click.UsageError(f"{path} cannot be read: {error.strerror or error}.") from error
    for problem in read.told:
        if aside:
            click.echo(problem.sentence(), err=True)
        else:
            tell(problem)
    if read.draft is None:
        context.exit(1)
    if read.told and not aside:
        click.echo("")
    return Found(read.draft, read.title or path.stem, "", read, colours=read.colours)
