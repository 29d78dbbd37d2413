"""The tie-ups and lift plans of a dressing sheet, each with what it is for."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from journal_tools.dressing import Dressing
from journal_tools.dressing.runs import root_of
from journal_tools.dressing.tied import Tied
from journal_tools.notation import Sets
from journal_tools.pages.dressing_view import Card, Part
from journal_tools.records import Warp

MOST_LIFTS = 16
"""Picks of a lift plan that are drawn as a card; a longer one stands in notation."""


def tie_up_parts(made: Dressing, warp: Warp) -> Iterator[Part]:
    """The tie-up of the first stretch, and those of its pieces in another weave."""
    if made.tied is None:
        return
    first = warp.woven()[0]
    title = "Tie-up" if made.tied.treadles else "Lift plan"
    what = first.name if made.later and first.name else ""
    if made.also:
        others = {name for other in made.also for name in other.pieces}
        own = [piece.name for piece in first.pieces if piece.name and piece.name not in others]
        what = _of(made.tied.weave or first.weave or "", own)
    yield Part("tie-up", f"{title} for {what}" if what else title, card=_card(made.tied))
    for number, other in enumerate(made.also, 2):
        title = f"Tie-up for {_of(other.weave, [name for name in other.pieces if name])}"
        if other.tied is not None:
            yield Part(f"tie-up-{number}", title, card=_card(other.tied))
        else:
            yield Part(f"tie-up-{number}", title, ("This threading does not carry it: it wants a draft of its own.",))


def hitched(made: Dressing, first: str) -> dict[tuple[Sets, bool], tuple[int, str]]:
    """Each different tie-up or lift plan, with the number and the name of the stretch that it is drawn for.

    first: the first one's name, "" for none.
    """
    found = {made.tied.hitch: (1, first or "stretch 1")} if made.tied is not None else {}
    for stretch in made.later:
        if stretch.tied is not None:
            found.setdefault(stretch.tied.hitch, (stretch.number, stretch.called))
    return found


def later_tie_ups(made: Dressing, first: str) -> Iterator[Part]:
    """The tie-ups of later stretches that have another than the stretches before them."""
    drawn = hitched(made, first)
    for stretch in made.later:
        if stretch.tied is not None and drawn[stretch.tied.hitch][0] == stretch.number:
            title = "Tie-up" if stretch.tied.treadles else "Lift plan"
            yield Part(f"tie-up-for-{stretch.number}", f"{title} for {stretch.called}", card=_card(stretch.tied))


def _of(weave: str, pieces: Sequence[str]) -> str:
    """`2/2 twill (b)`."""
    return f"{weave} ({', '.join(pieces)})" if pieces else weave


def _card(tied: Tied) -> Card:
    moves = "go up" if tied.rising else "go down"
    shed = f"{'Rising' if tied.rising else 'Sinking'} shed: the shafts {'tied' if tied.treadles else 'named'} {moves}."
    if tied.treadles:
        return _drawn("treadle", shed, tied, tied.treadles, f"Treadling: {tied.written}; then again from the first.")
    lifts = root_of(tied.picks)
    if len(lifts) > MOST_LIFTS:
        return Card(shed, (), (), f"{tied.written}. Then again from the first.")
    return _drawn("pick", shed, tied, lifts, "Then again from the first.")


def _drawn(each: str, shed: str, tied: Tied, columns: Sequence[frozenset[int]], said: str) -> Card:
    heads = (each, *map(str, range(1, len(columns) + 1)))
    shafts = range(tied.shafts, 0, -1)
    rows = tuple((f"shaft {n}", tuple(str(n) if n in column else "" for column in columns)) for n in shafts)
    return Card(shed, heads, rows, said)
