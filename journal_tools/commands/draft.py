"""`tenterhook draft`: a draft looked through, drawn, changed, and turned into other files."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import click

from journal_tools.commands.called import line_to_type
from journal_tools.commands.folder import find, journal_option
from journal_tools.commands.terminal import tell

if TYPE_CHECKING:
    from journal_tools.drafts import Draft
    from journal_tools.interchange import ReadDraft
    from journal_tools.records import Draft as Record

OPERATIONS: Mapping[str, str] = {
    "turned": "turned",
    "mirrored": "mirrored",
    "picks-reversed": "reversed_picks",
    "lift-plan": "as_lift_plan",
    "tie-up": "as_tie_up",
    "two-feet": "fewer_treadles",
    "other-shed": "other_shed",
    "fewest-shafts": "fewest_shafts",
}
"""What --change takes, and the operation that it is."""

MOST_SHOWN = 64
"""Threads that a terminal shows either way."""


@dataclass(frozen=True)
class Found:
    """A draft, and what came with it. called: its title. said: the weave that it is said to be."""

    draft: Draft
    called: str
    said: str
    read: ReadDraft | None = None
    own: tuple[str, ...] = ()
    """Its notation as a record has it."""


@click.command()
@click.argument("file")
@click.option(
    "--change",
    "changes",
    multiple=True,
    type=click.Choice(list(OPERATIONS)),
    help="Change it first; several are done in turn. See below.",
)
@click.option("--sett", default="", help="Finished ends to the inch or centimetre, so that floats have lengths.")
@click.option("--beat", default="", help="Finished picks likewise; else as many as ends.")
@click.option("--bears", default="", help="The longest float that its use bears, such as `3/8 in`.")
@click.option(
    "--to",
    "target",
    type=click.Path(dir_okay=False, path_type=Path),
    help="Write it to a new file: .wif, .md (a record), .png (the whole drawing) or .txt.",
)
@journal_option
@click.option("--json", "as_json", is_flag=True, help="The findings as one object, for programs.")
@click.pass_context
def command(
    context: click.Context,
    file: str,
    changes: tuple[str, ...],
    sett: str,
    beat: str,
    bears: str,
    target: Path | None,
    journal: Path | None,
    as_json: bool,
) -> None:
    """What a draft weaves, and what to look at before it is threaded.

    FILE is an interchange file (.wif) or the name of a draft in your journal. What was odd in a file is
    told first. Changes keep the cloth, or say what becomes of it:

    \b
      turned          by a quarter: warp becomes weft
      mirrored        left for right
      picks-reversed  the last pick first
      lift-plan       the same cloth by a lift plan
      tie-up          the same cloth by treadles, one at a time
      two-feet        the same cloth with two treadles at once, on fewer treadles
      other-shed      the same cloth on a loom whose shafts move the other way
      fewest-shafts   the same cloth, ends that move alike on one shaft

    With --json, among others: hangs_together, verdict, layers, floats (system, side, threads, mm, at),
    weave, agrees, face, repeat_ends, repeat_picks, symmetry, plain_weave_lifts, selvedge,
    threading_slip; ends, picks, shafts and treadles are counted from 1.

    Exit status 1 when there is no draft in it.

    \b
    For example:
      tenterhook draft huck-squares --sett 18
      tenterhook draft birds-eye --change turned --to turned.wif
      tenterhook draft from-a-friend.wif --to entries/drafts/from-a-friend.md
    """
    from journal_tools.drafts.analysis import analysed

    found = _found(context, file, journal)
    draft = _changed(found.draft, changes)
    looked = analysed(
        draft,
        ends_per_m=_density(sett, "--sett"),
        picks_per_m=_density(beat or sett, "--beat"),
        said_weave="" if changes else found.said,
        bears_mm=_length(bears) if bears else None,
    )
    if target is not None:
        _write(target, found, draft, changes)
    if as_json:
        click.echo(json.dumps(looked.as_json(), indent=2, ensure_ascii=False))
        return
    from journal_tools.drafts.analysis_words import sentences, warnings

    unit = "cm" if "cm" in sett else "in"
    click.secho(", ".join([found.called, *changes]), bold=True)
    for line in found.own if found.own and not changes else _notation(draft):
        click.echo(line)
    click.echo("")
    for line in _drawn(draft):
        click.echo(line)
    click.echo("")
    asked = list(warnings(looked, unit))  # type: ignore[arg-type]
    for line in asked:
        click.secho(line, fg="yellow")
    for line in sentences(looked, unit):  # type: ignore[arg-type]
        if line not in asked:
            click.echo(line)
    if target is not None:
        click.echo(f"\nWritten: {target}")


def _found(context: click.Context, file: str, journal: Path | None) -> Found:
    """The draft of a file or of a name. Ends the command where there is none."""
    path = Path(file)
    if path.suffix.lower() == ".wif" or (path.is_file() and path.suffix.lower() != ".md"):
        return _from_file(context, path)
    from journal_tools.checking import woven_draft
    from journal_tools.problems import nearest
    from journal_tools.quantities import Unreadable
    from journal_tools.records import read_journal
    from journal_tools.records.readers import slug

    drafts = read_journal(find(journal).entries).drafts
    name = slug(path.stem if path.suffix == ".md" else file)
    titled = {slug(draft.title): key for key, draft in drafts.items() if draft.title}
    record: Record | None = drafts.get(name) or drafts.get(titled.get(name, ""))
    if record is None:
        near = nearest(name, (*drafts, *titled))
        more = f" Did you mean {near}?" if near else f" Drafts here: {', '.join(drafts)}." if drafts else ""
        click.echo(f'There is no file and no draft called "{file}".{more}', err=True)
        context.exit(1)
    try:
        return Found(woven_draft(record), record.heading, record.weave or "", own=tuple(_own_words(record)))
    except Unreadable as unreadable:
        read = f' read "{unreadable.read}".' if unreadable.read else ""
        click.echo(f"{record.file}:{read} {unreadable.right}", err=True)
        context.exit(1)


def _own_words(record: Record) -> Iterator[str]:
    """The notation of a record as it was typed."""
    from journal_tools.pages.draft_part import notation_of

    yield from (f"{line.label}: {line.text}" for line in notation_of(record))


def _from_file(context: click.Context, path: Path) -> Found:
    from journal_tools.interchange import read_wif

    try:
        read = read_wif(path.read_bytes(), path.name)
    except OSError as error:
        raise click.UsageError(f"{path} cannot be read: {error.strerror or error}.") from error
    for problem in read.told:
        tell(problem)
    if read.draft is None:
        context.exit(1)
    if read.told:
        click.echo("")
    return Found(read.draft, read.title or path.stem, "", read)


def _changed(draft: Draft, changes: tuple[str, ...]) -> Draft:
    from journal_tools.drafts import operations
    from journal_tools.quantities import Unreadable

    for name in changes:
        change: Callable[[Draft], Draft] = getattr(operations, OPERATIONS[name])
        try:
            draft = change(draft)
        except Unreadable as unreadable:
            raise click.UsageError(f"--change {name}: {unreadable.right}") from None
    return draft


def _density(typed: str, option: str) -> float | None:
    from journal_tools.quantities import Unreadable, parse_density

    try:
        return float(parse_density(typed).per_m) if typed else None
    except Unreadable as unreadable:
        raise click.BadParameter(unreadable.right, param_hint=f"'{option}'") from None


def _length(typed: str) -> float:
    from journal_tools.quantities import Unreadable, parse_length

    try:
        return float(parse_length(typed).mm)
    except Unreadable as unreadable:
        raise click.BadParameter(unreadable.right, param_hint="'--bears'") from None


def _notation(draft: Draft) -> Iterator[str]:
    from journal_tools.notation import found_blocks, print_colours, print_profile, print_sets

    yield f"threading: {print_sets(draft.threading)}"
    if (blocks := found_blocks(draft.threading)) is not None:
        units = "; ".join(f"{letter} is {print_sets(unit)}" for letter, unit in blocks.units.items())
        yield f"  in blocks: {print_profile(blocks.order)}, where {units}"
    if draft.tie_up is not None and draft.treadling is not None:
        yield f"tie-up: {print_sets(draft.tie_up)}"
        yield f"treadling: {print_sets(draft.treadling)}"
    else:
        yield f"lift plan: {print_sets(draft.picks)}"
    if not draft.rising:
        yield "shed: sinking"
    for name, order in (("warp colours", draft.warp_colours), ("weft colours", draft.weft_colours)):
        if order:
            yield f"{name}: {print_colours(order)}"


def _drawn(draft: Draft) -> Iterator[str]:
    """The drawdown in characters: two rows of picks to a line, filled where the warp is over."""
    from journal_tools.drafts import drawdown

    over = drawdown(draft)[:MOST_SHOWN, :MOST_SHOWN]
    marks = {(True, True): "█", (True, False): "▀", (False, True): "▄", (False, False): " "}
    for pick in range(0, len(over), 2):
        below = over[pick + 1] if pick + 1 < len(over) else [False] * len(over[pick])
        yield "".join(marks[bool(top), bool(low)] for top, low in zip(over[pick], below, strict=True)).rstrip()
    ends, picks = len(draft.threading), len(draft.picks)
    if ends > MOST_SHOWN or picks > MOST_SHOWN:
        yield f"(the first {min(ends, MOST_SHOWN)} of {ends} ends and {min(picks, MOST_SHOWN)} of {picks} picks)"


def _write(target: Path, found: Found, draft: Draft, changes: tuple[str, ...]) -> None:
    """Put the draft into a new file, in the form that its ending says. Nothing is written over."""
    from journal_tools.interchange import Extras, ReadDraft, record_text, write_wif

    title = ", ".join([found.called, *changes])
    extras = Extras.of(found.read) if found.read is not None else Extras({"Title": title})
    forms: dict[str, Callable[[], bytes]] = {
        ".wif": lambda: write_wif(draft, extras),
        ".md": lambda: record_text(
            ReadDraft(draft, {**extras.text, "Title": title}, extras.notes, extras.colours)
        ).encode(),
        ".png": lambda: _picture(draft),
        ".txt": lambda: "\n".join([title, *_notation(draft), ""]).encode(),
    }
    form = forms.get(target.suffix.lower())
    if form is None:
        raise click.BadParameter(f"{target} should end in {', '.join(forms)}.", param_hint="'--to'")
    try:
        with target.open("xb") as file:
            file.write(form())
    except FileExistsError:
        again = line_to_type("draft", "…", "--to", f"other{target.suffix}")
        raise click.UsageError(f"{target} is there already, and is left as it is: {again}") from None
    except OSError as error:
        raise click.UsageError(f"{target} cannot be written: {error.strerror or error}.") from error


def _picture(draft: Draft) -> bytes:
    from journal_tools.pictures.draft_drawing import Window, draft_picture

    return draft_picture(draft, Window(most_ends=len(draft.threading), most_picks=len(draft.picks)))
