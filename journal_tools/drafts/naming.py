"""What a cloth is called by how it is woven, from the interlacement alone; honestly nothing where it has no name.

The definitions are the trade's (common practice, no source): in a twill each pick is the one before it
moved by one end, in a satin by more than one, with one binding point an end and a pick.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from math import gcd
from typing import TYPE_CHECKING

from journal_tools.drafts.blocks import in_blocks
from journal_tools.drafts.interlacement import drawdown
from journal_tools.drafts.likeness import same_cloth
from journal_tools.drafts.repeat import whole_repeat
from journal_tools.drafts.twill_lines import WAYS, Lines, grouped, lines
from journal_tools.drafts.waffle import is_waffle
from journal_tools.drafts.weaves import named_weave, weave_names

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

NOT_NAMED = "not named"

MOST_ON_TWILL = 40
"""The most different ends of a twill that is looked for in pieces: more than looms have shafts (judgement)."""


@dataclass(frozen=True)
class Name:
    """A weave as found. kind: "plain", "twill", "satin", "sateen", "basket", "rib", "named" (as a weave of
    the table, begun elsewhere or mirrored) or "not named". text: as a weaver says it.

    direction: of a twill's lines in the cloth as it is woven, the first end at the weaver's left and the first
    pick nearest to the weaver: "Z" where they rise to the right, "S" where they fall; "" else. In a drawing
    with the first pick at the top they go the other way. step: of a satin, from one binding point to the
    next; 0 else.
    """

    kind: str
    text: str
    direction: str = ""
    step: int = 0


def name_of(over: NDArray[np.bool_]) -> Name:
    """The name of a cloth of which this is a repeat (picks, ends), wherever it begins."""
    repeat = whole_repeat(over)
    found = _plain_or_ribbed(repeat) or _twill_or_satin(repeat)
    if found is not None:
        return found
    alike = [name for name in weave_names() if (known := _interlaced(name)) is not None and same_cloth(repeat, known)]
    as_up = [name for name in alike if (known := _interlaced(name)) is not None and known.mean() == repeat.mean()]
    if alike:
        return Name("named", (as_up or alike)[0])
    if is_waffle(repeat):
        return Name("named", "waffle weave")
    if twill := _irregular_satin(repeat) or _twill_in_pieces(repeat):
        return twill
    blocks = in_blocks(repeat)
    return Name("named", blocks) if blocks else Name(NOT_NAMED, NOT_NAMED)


@cache
def _interlaced(name: str) -> NDArray[np.bool_] | None:
    weave = named_weave(name)
    return None if weave is None else whole_repeat(drawdown(weave.draft))


def _plain_or_ribbed(repeat: NDArray[np.bool_]) -> Name | None:
    """Plain weave, and what comes of it when ends, or picks, or both go in groups."""
    if any(len({line.tobytes() for line in table}) != 2 for table in (repeat, repeat.T)):
        return None
    across = [tuple(row) for row in repeat.tolist()]
    along = [tuple(column) for column in repeat.T.tolist()]
    other = next(row for row in across if row != across[0])
    if across[0] != tuple(not crossing for crossing in other):
        return None
    picks, ends = grouped(across)[1], grouped(along)[1]
    if len(set(picks)) > 1 or len(set(ends)) > 1:
        doubled = [word for word, groups in (("ends", ends), ("picks", picks)) if set(groups) == {1, 2}]
        if len(doubled) == sum(set(groups) != {1} for groups in (ends, picks)):
            return Name("rib", f"plain weave with doubled {' and '.join(doubled)}")
        return Name("rib", "plain weave in groups that differ")
    pick, end = picks[0], ends[0]
    if pick == end == 1:
        return Name("plain", "plain weave")
    if pick == end:
        return Name("basket", f"{pick}/{pick} basket")
    if end == 1:
        return Name("rib", f"plain weave with {pick} picks in each shed")
    if pick == 1:
        return Name("rib", f"plain weave with ends in groups of {end}")
    return Name("basket", f"basket of {end} ends and {pick} picks")


def _twill_or_satin(repeat: NDArray[np.bool_]) -> Name | None:
    import numpy as np

    size = len(repeat)
    if repeat.shape != (size, size) or size < 3:
        return None
    first = repeat[0]
    for step in range(1, size):
        if gcd(step, size) == 1 and all(np.array_equal(repeat[n], np.roll(first, n * step)) for n in range(size)):
            return _satin_of(size, int(first.sum()), step) if 1 < step < size - 1 else _twill_of(first, step == 1)
    return None


def _twill_of(first: NDArray[np.bool_], rises: bool) -> Name:
    """A straight twill by its figures: ends that a pick goes under, and over, in turn, the longest first.

    rises: whether each pick is the one before it moved by one end to the right.
    """
    import numpy as np

    start = int(np.flatnonzero(first & ~np.roll(first, 1))[0])
    turned = np.roll(first, -start)
    edges = np.flatnonzero(np.diff(turned.astype(np.int8))) + 1
    figures = np.diff(np.concatenate([[0], edges, [len(turned)]])).tolist()
    spun = max(tuple(figures[n:] + figures[:n]) for n in range(0, len(figures), 2))
    direction = "Z" if rises else "S"
    return Name("twill", "/".join(map(str, spun)) + " twill", direction)


def _satin_of(size: int, up: int, step: int) -> Name | None:
    if up not in (1, size - 1):
        return None
    kind = "satin" if up > 1 else "sateen"
    return Name(kind, f"{size}-end {kind}", step=step)


def _irregular_satin(repeat: NDArray[np.bool_]) -> Name | None:
    """Satin and sateen on six: one binding point an end and a pick, and no two that touch; no step does for all."""
    size = 6
    for table, kind in ((repeat, "sateen"), (~repeat, "satin")):
        if table.shape == (size, size) and all((table.sum(axis=way) == 1).all() for way in (0, 1)):
            points = table.argmax(axis=1)
            apart = [int(here - before) % size for before, here in zip(points, [*points[1:], points[0]], strict=True)]
            if not {1, size - 1} & set(apart):
                return Name("named", f"{size}-end {kind}, irregular")
    return None


def _twill_in_pieces(repeat: NDArray[np.bool_]) -> Name | None:
    """A twill whose ends, or picks, or both do not go straight on: in groups, pointed, herringbone or broken."""
    import numpy as np

    picks, pick_order = _numbered([row.tobytes() for row in repeat])
    ends, end_order = _numbered([column.tobytes() for column in repeat.T])
    size = len(picks)
    if not 3 <= size <= MOST_ON_TWILL or len(ends) != size:
        return None
    table = repeat[np.ix_(picks, ends)]
    if any(len(set(table.sum(axis=way).tolist())) > 1 for way in (0, 1)):
        return None
    drawn = [
        *((by_picks, _followed(table[by_picks])) for by_picks in _drawn_in(pick_order, size)),
        *((_followed(table[:, by_ends].T), by_ends) for by_ends in _drawn_in(end_order, size)),
    ]
    found = [
        _named_by(table[np.ix_(by_picks, by_ends)][0], pick_lines, end_lines)
        for by_picks, by_ends in drawn
        if by_picks is not None and by_ends is not None
        if (pick_lines := lines([by_picks.index(pick) for pick in pick_order], size)) is not None
        if (end_lines := lines([by_ends.index(end) for end in end_order], size)) is not None
    ]
    return min(found)[-1] if found else None


def _drawn_in(order: list[int], size: int) -> list[list[int]]:
    """Every order of all threads that comes in a longer one which goes round, each wherever it begins."""
    threads, _ = grouped(order)
    if len(threads) < size:
        return []
    round_again = [*threads, *threads[: size - 1]]
    found: dict[tuple[int, ...], None] = {}
    for place in range(len(threads)):
        some = round_again[place : place + size]
        if len(set(some)) == size:
            first = some.index(0)
            found[tuple(some[first:] + some[:first])] = None
    return [list(each) for each in found]


def _followed(table: NDArray[np.bool_]) -> list[int] | None:
    """The columns in the order in which each is the one before it moved by one, None where that leaves some out."""
    import numpy as np

    columns = {column.tobytes(): place for place, column in enumerate(table.T)}
    order, column = [0], table[:, 0]
    while len(order) < len(columns):
        column = np.roll(column, 1)
        place = columns.get(column.tobytes())
        if place is None or place in order:
            return None
        order.append(place)
    return order


def _named_by(first: NDArray[np.bool_], picks: Lines, ends: Lines) -> tuple[int, int, str, str, Name]:
    """A twill by the first pick of its straight form and the way its lines go, after what makes it the plainer name."""
    twill, ways = _twill_of(first, ends.forward == picks.forward), (ends.way, picks.way)
    text, direction = twill.text, ""
    if set(ways) == {"straight"}:
        direction = twill.direction
    elif "broken" in ways:
        text = f"broken {text}"
    elif "herringbone" in ways:
        text = f"herringbone of {text}"
    else:
        text = f"point twill of {text}, in diamonds" if ways[0] == ways[1] else f"zigzag of {text}"
    text += "".join(f", {note}" for note in _doubled(picks, ends))
    return sum(map(WAYS.index, ways)), text.count("/"), text, direction, Name("twill", text, direction)


def _doubled(picks: Lines, ends: Lines) -> Iterator[str]:
    """What is to be said of threads that stand together, each group of them on one shaft or in one shed."""
    both = {"ends": ends, "picks": picks}
    for threads in (["ends", "picks"],) if ends.together == picks.together else (["ends"], ["picks"]):
        if (together := both[threads[0]].together) > 1:
            yield f"its {' and '.join(threads)} in {'pairs' if together == 2 else f'groups of {together}'}"
    turned = [name for name, one in both.items() if one.doubled]
    if turned:
        yield f"with doubled {' and '.join(turned)} where it turns"


def _numbered(items: list[bytes]) -> tuple[list[int], list[int]]:
    """Where each different thread first stands, and for every thread which of them it is."""
    first: dict[bytes, int] = {}
    for place, item in enumerate(items):
        first.setdefault(item, place)
    number = {item: n for n, item in enumerate(first)}
    return list(first.values()), [number[item] for item in items]
