"""Weaves that have a name of their own, each as the draft of one repeat.

The drafts are the trade's common knowledge (common practice, no source). In the name of a twill the
figure before the stroke is the ends that a pick goes under, warp on top, and the one after it the
ends that it goes over: 3/1 twill shows warp, 1/3 twill shows weft.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import StrEnum
from functools import cache

from journal_tools.drafts.draft import Draft
from journal_tools.notation import parse_threading, parse_tie_up, parse_treadling


class Face(StrEnum):
    """Which threads are seen."""

    BALANCED = "balanced"
    WARP = "warp-faced"
    WEFT = "weft-faced"


@dataclass(frozen=True)
class NamedWeave:
    """A weave by its name.

    name: its plain name, whichever of its names was asked for. draft: one repeat.
    face: which threads are seen. ends_to_picks: ends for each pick in the same length, as the
    weave is usually set (judgement; for pictures alone).
    """

    name: str
    draft: Draft
    face: Face = Face.BALANCED
    ends_to_picks: float = 1.0

    def proportions(self, epi: float | None, ppi: float | None) -> tuple[float, float]:
        """Densities to draw a picture by: what is known, and what nobody wrote down as is usual."""
        if epi is None and ppi is None:
            return self.ends_to_picks, 1.0
        if epi is None:
            return (ppi or 1.0) * self.ends_to_picks, ppi or 1.0
        return epi, epi / self.ends_to_picks if ppi is None else ppi


@dataclass(frozen=True)
class _Entry:
    """A line of the table: the names, plain one first, and the draft in notation."""

    names: tuple[str, ...]
    threading: str
    tie_up: str
    treadling: str
    face: Face = Face.BALANCED
    ends_to_picks: float = 1.0


_TWILL = "1+2, 2+3, 3+4, 4+1"

_TABLE = (
    _Entry(("plain weave", "plain", "tabby", "calico", "log cabin"), "1, 2", "1, 2", "1, 2"),
    _Entry(
        ("warp-faced plain weave", "rep", "warp rep", "warp-faced rep", "warp-faced", "warp-faced plain"),
        "1, 2",
        "1, 2",
        "1, 2",
        Face.WARP,
        4.0,
    ),
    _Entry(
        (
            "weft-faced plain weave",
            "tapestry",
            "weft rep",
            "weft-faced rep",
            "weft-faced",
            "weft-faced plain",
        ),
        "1, 2",
        "1, 2",
        "1, 2",
        Face.WEFT,
        0.25,
    ),
    _Entry(("2/2 basket", "basket", "basket weave", "hopsack", "2/2 hopsack"), "1, 1, 2, 2", "1, 2", "1, 1, 2, 2"),
    _Entry(("3/3 basket", "3/3 hopsack"), "3 times (1), 3 times (2)", "1, 2", "3 times (1), 3 times (2)"),
    _Entry(("2/2 twill", "twill", "straight twill", "balanced twill", "houndstooth"), "1-4", _TWILL, "1-4"),
    # Point drafts turn on one end; woven as drawn in, the treadling turns as well and diamonds close.
    _Entry(
        ("point twill", "diamond twill", "birds eye", "birds eye twill", "goose eye"),
        "1-4, 3-2",
        _TWILL,
        "1-4, 3-2",
    ),
    _Entry(("zigzag twill", "waved twill", "chevron", "chevron twill"), "1-4, 3-2", _TWILL, "1-4"),
    _Entry(("rosepath", "rose path"), "1-4, 3-1, 4", _TWILL, "1-4, 3-1, 4"),
    # Where a broken twill turns, it leaves out one shaft: each line then meets its own opposite,
    # cleanly, and no float grows longer.
    _Entry(("herringbone", "herringbone twill"), "2 times (1-4), 2 times (2, 1, 4, 3)", _TWILL, "1-4"),
    _Entry(("broken twill", "2/2 broken twill", "dornick"), "1-4, 2, 1, 4, 3", _TWILL, "1-4"),
    _Entry(("3/1 broken twill",), "1-4", "2+3+4, 1+3+4, 1+2+4, 1+2+3", "1, 2, 4, 3", Face.WARP, 1.5),
    _Entry(("1/3 broken twill", "crowfoot"), "1-4", "1-4", "1, 2, 4, 3", Face.WEFT, 0.8),
    # Floats grow from plain weave towards one end and one pick, which stand up as the walls of a cell.
    _Entry(("waffle weave", "waffle", "honeycomb"), "1-4, 3-2", "1, 2, 1+3, 1+2+4", "1-4, 3-2"),
    # Half units of five ends, the second with odd and even changed round. Pattern ends on 3 and 4.
    _Entry(
        ("huck", "huckaback"),
        "1, 3, 1, 3, 1, 2, 4, 2, 4, 2",
        "1+4, 2, 2+3, 1",
        "1, 2, 1, 2, 1, 3, 4, 3, 4, 3",
    ),
    _Entry(
        ("huck lace", "lace huck"),
        "1, 3, 1, 3, 1, 2, 4, 2, 4, 2",
        "1+4, 2+4, 2+3, 1+3",
        "1, 2, 1, 2, 1, 3, 4, 3, 4, 3",
    ),
)

_SATIN_STEPS = {5: 2, 7: 2, 8: 3, 10: 3, 12: 5}
"""Ends from one binding point to that of the next pick. There is no regular satin on 6."""

_MOST_ON_TWILL = 32
"""The most shafts of a twill that is drawn from its figures."""


def named_weave(text: str) -> NamedWeave | None:
    """The weave of a name, or None where the name is none of a weave known here.

    Words after a comma do not count ("2/2 twill, double width"), nor do capitals, hyphens and the
    word "weave". Any straight twill (3/1 twill, 2/2/1/3 twill) and the satins and sateens of 5, 7,
    8, 10 and 12 ends are drawn from their figures.
    """
    return _by_name(_folded(text))


def weave_names() -> tuple[str, ...]:
    """The plain names of the table's weaves, for a field guide and for near misses."""
    drawn = ("3/1 twill", "1/3 twill", "5-end satin", "8-end satin")
    return (*(entry.names[0] for entry in _TABLE), *drawn)


def _folded(text: str) -> str:
    """A name without what does not tell weaves apart."""
    name = re.split("[,;(]", text.lower())[0]
    name = re.sub(r"['’]", "", name)
    name = re.sub(r"(?<=\d)\s*[-/:]\s*(?=\d)", "/", name)
    words = [word for word in re.split(r"[\s-]+", name) if word and word != "weave"]
    if len(words) == 2 and words[0] == "twill":  # twill 2/2
        words.reverse()
    return " ".join(words)


@cache
def _table() -> dict[str, _Entry]:
    return {_folded(name): entry for entry in _TABLE for name in entry.names}


@cache
def _by_name(name: str) -> NamedWeave | None:
    entry = _table().get(name)
    if entry:
        draft = Draft(parse_threading(entry.threading), parse_tie_up(entry.tie_up), parse_treadling(entry.treadling))
        return NamedWeave(entry.names[0], draft, entry.face, entry.ends_to_picks)
    if twill := re.fullmatch(r"(\d{1,2}(?:/\d{1,2})+) twill", name):
        return _twill([int(figure) for figure in twill.group(1).split("/")])
    if satin := re.fullmatch(r"(?:(\d{1,2}) (?:end|shaft) )?(satin|sateen)", name):
        return _satin(int(satin.group(1) or 5), satin.group(2))
    return None


def _twill(figures: list[int]) -> NamedWeave | None:
    """A straight twill: so many ends over the pick, so many under it, and so on in turn."""
    shafts = sum(figures)
    if len(figures) % 2 or 0 in figures or shafts > _MOST_ON_TWILL:
        return None
    up = [over for n, figure in enumerate(figures) for over in [n % 2 == 0] * figure]
    lifts = [frozenset((s + pick) % shafts + 1 for s in range(shafts) if up[s]) for pick in range(shafts)]
    name = "/".join(map(str, figures)) + " twill"
    over = sum(up)
    if 2 * over == shafts:
        return NamedWeave(name, _straight(lifts))
    return NamedWeave(name, _straight(lifts), *((Face.WARP, 1.25) if 2 * over > shafts else (Face.WEFT, 0.8)))


def _satin(shafts: int, kind: str) -> NamedWeave | None:
    """Satin shows warp, sateen weft; the binding points never touch."""
    step = _SATIN_STEPS.get(shafts)
    if step is None:
        return None
    bound = [frozenset({pick * step % shafts + 1}) for pick in range(shafts)]
    name = f"{shafts}-end {kind}"
    if kind == "sateen":
        return NamedWeave(name, _straight(bound), Face.WEFT, 0.7)
    every = frozenset(range(1, shafts + 1))
    return NamedWeave(name, _straight([every - point for point in bound]), Face.WARP, 1.5)


def _straight(lifts: list[frozenset[int]]) -> Draft:
    """One treadle a pick on a straight draw."""
    one_each = tuple(frozenset({n}) for n in range(1, len(lifts) + 1))
    return Draft(threading=one_each, tie_up=tuple(lifts), treadling=one_each)
