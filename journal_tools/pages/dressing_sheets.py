"""Parts on one sheet of paper or two, always in the order in which a loom is dressed, and in letters that fill them."""

from __future__ import annotations

from collections.abc import Sequence

from journal_tools.pages.dressing_view import Line, Part, Sheet

HIGH = 690
"""Points of a sheet that may be filled: letter paper less its margins, and something for a wrong guess."""
PERCENT = tuple(range(140, 75, -5))
"""How large the letters may be beside the usual ones, as in the style sheet."""
WIDE = 530
"""Points across a sheet."""


def sheets_of(parts: Sequence[Part], top: int) -> tuple[Sheet, ...]:
    """One sheet where that holds all, else two that are filled about alike. top: points of the title and the rest."""
    if top + _high(parts, 1.0) <= HIGH:
        return (_sheet(parts, top),)
    cut = min(range(1, len(parts)), key=lambda at: max(top + _high(parts[:at], 1.0), 24 + _high(parts[at:], 1.0)))
    return _sheet(parts[:cut], top), _sheet(parts[cut:], 24)


def _sheet(parts: Sequence[Part], top: int) -> Sheet:
    """In the largest letters that it holds."""
    fits = (percent for percent in PERCENT if top + _high(parts, percent / 100) <= HIGH)
    return Sheet(tuple(parts), next(fits, PERCENT[-1]))


def _high(parts: Sequence[Part], scale: float) -> float:
    """About how high parts are on paper, in points."""
    return sum(_part(part, WIDE / scale) for part in parts) * scale


def _part(part: Part, wide: float) -> float:
    points = 32.0 + 15 * _rows(" ".join(part.said), wide, 5.8) + sum(_line(line, wide) for line in part.lines)
    if part.key == "heddles":
        points += 20 * -(-sum(len(each) * 7.4 + 14 for each in part.large) // wide)
    else:
        points += sum(20 * _rows(each, wide, 7.4) for each in part.large)
    points += 14 * -(-len(part.begins) // max(1, wide // 105))
    if part.table is not None:
        points += 50 + 18 * len(part.table.rows) + 15 * _rows(part.table.note or "", wide, 5.8)
    if part.card is not None:
        points += 25 + 20 * _rows(part.card.said, wide, 7.4) + 23 * (len(part.card.rows) + bool(part.card.rows))
    return points + 30 * len(part.blanks)


def _rows(text: str, wide: float, letter: float) -> int:
    return -(-len(text) * letter // wide) if text else 0  # type: ignore[return-value]


def _line(line: Line, wide: float) -> float:
    """A line of work: its groups side by side as far as there is room, and its boxes."""
    shown = [group.shown for group in line.once] or line.groups
    each = 20 + 13 * any(group.colours for group in shown)
    boxes = 46 if line.once else 14
    rows, at = 1, 60.0
    for group in shown:
        long = max(len(group.words) * 8.2, len(group.colours) * 5.6) + boxes
        if at + long > wide and at:
            rows, at = rows + 1, 0.0
        at += long
    points = 8.0 + rows * each
    if line.rows:
        across = max(1, wide // (len(line.rows[0].boxes) * 23 + 60))
        points += 21 * -(-len(line.rows) // across)
    return points
