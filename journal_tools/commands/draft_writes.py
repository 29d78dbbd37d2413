"""What `draft --to` writes: the draft in the form that the new file's ending says."""

from __future__ import annotations

import dataclasses
import re
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from journal_tools.commands.called import line_to_type
from journal_tools.commands.draft_changes import CHANGES
from journal_tools.commands.draft_rewritten import record_of
from journal_tools.commands.draft_shows import notation

if TYPE_CHECKING:
    from journal_tools.commands.draft_found import Found
    from journal_tools.drafts import Draft
    from journal_tools.drafts.analysis import Analysis
    from journal_tools.interchange import Extras

CELLS = (7, 6, 5, 4, 3)
"""Pixels to a thread of a drawing, the largest that a picture of all threads can have."""

_NUMBERED = re.compile(r"\s*[0-9]+\s*=")
"""A line of a section that goes through threads, shafts or treadles by their numbers."""


def write(target: Path, found: Found, looked: Analysis, changes: Sequence[str], title: str) -> None:
    """Put the draft into a new file. Nothing is written over, and where it cannot be made there is no file.

    looked: the draft as it has been changed, looked through.
    """
    draft = looked.draft
    own = found.own if found.own and not changes else notation(draft)
    forms: dict[str, Callable[[], bytes]] = {
        ".wif": lambda: _interchange(found, draft, changes, title),
        ".md": lambda: record_of(found, looked, changes, title),
        ".png": lambda: _picture(found, looked),
        ".txt": lambda: "\n".join([title, *own, ""]).encode(),
    }
    form = forms.get(target.suffix.lower())
    if form is None:
        raise click.BadParameter(f"{target} should end in {', '.join(forms)}.", param_hint="'--to'")
    if target.exists():
        raise _is_there(target)
    made = form()
    try:
        with target.open("xb") as file:
            file.write(made)
    except FileExistsError:
        raise _is_there(target) from None
    except OSError as error:
        raise click.UsageError(f"{target} cannot be written: {error.strerror or error}.") from error


def _is_there(target: Path) -> click.UsageError:
    again = line_to_type("draft", "…", "--to", f"other{target.suffix}")
    return click.UsageError(f"{target} is there already, and is left as it is: {again}")


def _interchange(found: Found, draft: Draft, changes: Sequence[str], title: str) -> bytes:
    from journal_tools.interchange import write_wif

    return write_wif(draft, _beside(found, draft, changes, title))


def _beside(found: Found, draft: Draft, changes: Sequence[str], title: str) -> Extras:
    """What goes into the file beside the draft. What the changes make untrue is left out, and told."""
    from journal_tools.interchange import Extras

    extras = Extras.of(found.read) if found.read is not None else Extras()
    kept = extras.kept
    for name in changes:
        change = CHANGES[name]
        if change.exchanges:
            ends_per_m, picks_per_m = extras.picks_per_m, extras.ends_per_m
            extras = dataclasses.replace(extras, ends_per_m=ends_per_m, picks_per_m=picks_per_m)
        untrue = [each for each in kept if any(map(_NUMBERED.match, each.lines)) and change.unsettles(each.name)]
        for section in untrue:
            said = f"[{section.name}] is left out: it goes by numbers, which mean others now ({name})."
            click.secho(said, fg="yellow", err=True)
        kept = [each for each in kept if each not in untrue]
    named = {"Title": title} if changes or found.read is None else {}
    return dataclasses.replace(extras, text={**extras.text, **named}, colours=_hexes(found, draft), kept=kept)


def _hexes(found: Found, draft: Draft) -> dict[str, str]:
    """Six digits for each colour of the draft: as the file or the shelf has it, else a plain tone."""
    from journal_tools.pages.draft_part import colour_places
    from journal_tools.pictures.colour import plain_tone

    return {name: found.colours.get(name) or plain_tone(place) for name, place in colour_places(draft).items()}


def _picture(found: Found, looked: Analysis) -> bytes:
    from journal_tools.pictures.cloth import MOST_PIXELS
    from journal_tools.pictures.draft_drawing import Window, draft_picture, draft_picture_size

    draft, hexes = looked.draft, _hexes(found, looked.draft)
    whole = Window(most_ends=len(draft.threading), most_picks=len(draft.picks))
    sizes = {px: draft_picture_size(draft, whole, cell_px=px, coloured=True, numbered=True) for px in CELLS}
    cell = next((px for px, (wide, high) in sizes.items() if wide * high <= MOST_PIXELS), None)
    if cell is None:
        threads = f"{whole.most_ends:,} ends and {whole.most_picks:,} picks"
        raise click.UsageError(f"{threads} are too many for one picture. `--to` a .wif, .md or .txt holds them all.")
    return draft_picture(
        draft,
        whole,
        cell_px=cell,
        marked=looked.marked,
        warp=[hexes[name] for name in draft.warp_colours],
        weft=[hexes[name] for name in draft.weft_colours],
        numbered=True,
    )
