"""What a cloth is called by how it is woven, from the interlacement alone; honestly nothing where it has no name.

The definitions are the trade's (common practice, no source): in a twill each pick is the one before it
moved by one end, in a satin by more than one, with one binding point an end and a pick.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from itertools import groupby, pairwise
from math import gcd
from typing import TYPE_CHECKING

from journal_tools.drafts.interlacement import drawdown
from journal_tools.drafts.likeness import same_cloth
from journal_tools.drafts.repeat import whole_repeat
from journal_tools.drafts.weaves import named_weave, weave_names

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

NOT_NAMED = "not named"


@dataclass(frozen=True)
class Name:
    """A weave as found. kind: "plain", "twill", "satin", "sateen", "basket", "rib", "named" (as a weave of
    the table, begun elsewhere or mirrored) or "not named". text: as a weaver says it.

    direction: of a twill, "S" where its lines fall to the right as it is drawn, first end at the left and
    first pick at the top, and "Z" where they rise; "" else. step: of a satin, from one binding point to
    the next; 0 else.
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
    return _twill_in_pieces(repeat) or Name(NOT_NAMED, NOT_NAMED)


@cache
def _interlaced(name: str) -> NDArray[np.bool_] | None:
    weave = named_weave(name)
    return None if weave is None else whole_repeat(drawdown(weave.draft))


def _plain_or_ribbed(repeat: NDArray[np.bool_]) -> Name | None:
    """Plain weave, and what comes of it when ends, or picks, or both go in groups."""
    import numpy as np

    if any(len({line.tobytes() for line in table}) != 2 for table in (repeat, repeat.T)):
        return None
    across = [tuple(row) for row in repeat.tolist()]
    along = [tuple(column) for column in repeat.T.tolist()]
    if (
        len(set(across)) != 2
        or len(set(along)) != 2
        or np.array_equal(repeat[0], repeat[-1])
        or across[0] != tuple(not crossing for crossing in next(row for row in across if row != across[0]))
    ):
        return None
    picks, ends = _groups(across), _groups(along)
    if len(set(picks)) > 1 or len(set(ends)) > 1:
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


def _groups(order: list[tuple[bool, ...]]) -> list[int]:
    """How many alike stand together, in turn, a group over the join counted once."""
    start = next((place for place in range(len(order)) if order[place] != order[place - 1]), 0)
    turned = order[start:] + order[:start]
    sizes = [1]
    for before, here in pairwise(turned):
        if before == here:
            sizes[-1] += 1
        else:
            sizes.append(1)
    return sizes


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


def _twill_of(first: NDArray[np.bool_], falls: bool) -> Name:
    """A straight twill by its figures: ends that a pick goes under, and over, in turn, the longest first."""
    import numpy as np

    start = int(np.flatnonzero(first & ~np.roll(first, 1))[0])
    turned = np.roll(first, -start)
    edges = np.flatnonzero(np.diff(turned.astype(np.int8))) + 1
    figures = np.diff(np.concatenate([[0], edges, [len(turned)]])).tolist()
    spun = max(tuple(figures[n:] + figures[:n]) for n in range(0, len(figures), 2))
    direction = "S" if falls else "Z"
    return Name("twill", "/".join(map(str, spun)) + " twill", direction)


def _satin_of(size: int, up: int, step: int) -> Name | None:
    if up not in (1, size - 1):
        return None
    kind = "satin" if up > 1 else "sateen"
    return Name(kind, f"{size}-end {kind}", step=step)


def _twill_in_pieces(repeat: NDArray[np.bool_]) -> Name | None:
    """A twill whose ends, or picks, or both do not go straight on: pointed, herringbone or broken."""
    import numpy as np

    picks, pick_order = _numbered([row.tobytes() for row in repeat])
    ends, end_order = _numbered([column.tobytes() for column in repeat.T])
    size = len(picks)
    if size < 3 or len(ends) != size:
        return None
    straight = repeat[np.ix_(picks, ends)]
    twill = _twill_or_satin(straight)
    if twill is None:  # drawn in, or treadled, in another order than the lines go
        chained, lined = _chained(straight), _chained(straight.T)
        if chained is not None:
            twill, end_order = _twill_or_satin(straight[:, chained]), [chained.index(end) for end in end_order]
        elif lined is not None:
            twill, pick_order = _twill_or_satin(straight[lined]), [lined.index(pick) for pick in pick_order]
    if twill is None or twill.kind != "twill":
        return None
    ways = {_way(end_order, size), _way(pick_order, size)}
    if "broken" in ways:
        return Name("twill", f"broken {twill.text}")
    if "herringbone" in ways:
        return Name("twill", f"herringbone of {twill.text}")
    both = len(ways) == 1
    return Name("twill", f"point twill of {twill.text}, in diamonds" if both else f"zigzag of {twill.text}")


def _chained(table: NDArray[np.bool_]) -> list[int] | None:
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


def _numbered(items: list[bytes]) -> tuple[list[int], list[int]]:
    """Where each different thread first stands, and for every thread which of them it is."""
    first: dict[bytes, int] = {}
    for place, item in enumerate(items):
        first.setdefault(item, place)
    number = {item: n for n, item in enumerate(first)}
    return list(first.values()), [number[item] for item in items]


def _way(order: list[int], size: int) -> str:
    """How the lines of a twill go: "straight", "pointed" (turning on one thread), "herringbone" (turning
    past a gap, in lines longer than a repeat) or "broken"."""
    steps = [(after - here) % size for here, after in zip(order, [*order[1:], order[0]], strict=True)]
    runs = [len(run) for run in _runs(steps) if run[0] in (1, size - 1)]
    turns = [step for step in steps if step not in (1, size - 1)]
    if not turns:
        return "straight" if len(set(steps)) == 1 else "pointed"
    both_ways = {1, size - 1} <= set(steps)
    return "herringbone" if both_ways and min(runs, default=0) >= size - 1 else "broken"


def _runs(steps: list[int]) -> list[list[int]]:
    """Steps that are alike, together."""
    return [list(alike) for _, alike in groupby(steps)]
