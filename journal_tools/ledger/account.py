"""Where the warp went: from what was wound to the last line, "take-up and unaccounted"."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from journal_tools.ledger.laid import Laid
from journal_tools.ledger.state import ON_LOOM
from journal_tools.records.warp import Warp


@dataclass(frozen=True)
class Line:
    """One line of the account. mm: of warp. how: how the figure comes about, "" for a plain one."""

    name: str
    mm: float
    how: str = ""
    is_cloth: bool = False


@dataclass(frozen=True)
class TakeUp:
    """1 - length on the loom / warp that wove it, tension on.

    basis: "marks" on the warp, "measured" warp of a piece, or "at most": all that nothing else
    accounts for, which is why it cannot be more.
    """

    loss: float
    basis: str

    @property
    def words(self) -> str:
        """How far the figure can be trusted, in words."""
        return {"marks": "by marks on the warp", "measured": "by warp measured for a piece"}.get(self.basis, "at most")


@dataclass(frozen=True)
class Account:
    """Where the warp went.

    unmeasured: names of pieces without a length on the loom, whose cloth is still in the remainder.
    remainder_mm: wound less every line; "take-up and unaccounted", negative when the lines are too many.
    taken_up_mm: the part of the remainder that is take-up, where marks tell; None where they do not.
    """

    wound_mm: float
    lines: tuple[Line, ...]
    unmeasured: tuple[str, ...]
    take_up: TakeUp | None
    taken_up_mm: float | None

    @property
    def cloth_mm(self) -> float:
        """Cloth at its length on the loom."""
        return sum(line.mm for line in self.lines if line.is_cloth)

    @property
    def remainder_mm(self) -> float:
        """What is left when every line is taken off."""
        return self.wound_mm - sum(line.mm for line in self.lines)

    @property
    def unaccounted_mm(self) -> float | None:
        """The remainder without its take-up, where marks tell the two apart."""
        return None if self.taken_up_mm is None else self.remainder_mm - self.taken_up_mm


def account_of(warp: Warp, pieces: Sequence[Laid]) -> Account | None:
    """The account of a warp; None when nobody wrote how long it was wound."""
    wound = next((each.wound for each in warp.warp if each.wound is not None), None)
    if wound is None:
        return None
    lines = [
        Line(name, float(length.mm), length.text if length.count > 1 else "")
        for name, length in (warp.where_it_went or {}).items()
    ]
    cloth, unmeasured = _cloth(pieces)
    lines += cloth
    if not any(re.search(r"\bfringe", line.name.lower()) for line in lines):
        lines += _fringes(pieces)
    take_up, taken_up_mm = _take_up(warp, pieces, float(wound.mm), lines, unmeasured)
    return Account(float(wound.mm), tuple(lines), tuple(unmeasured), take_up, taken_up_mm)


def _once(pieces: Sequence[Laid]) -> list[Laid]:
    """Bands of one piece lie side by side on the same warp, so only the first of them is counted."""
    return list({id(laid.levels[0]): laid for laid in reversed(pieces)}.values())[::-1]


def loom_length_mm(laid: Laid) -> float | None:
    """Length on the loom of one piece, None when nobody measured it."""
    at = next((at for state, at in laid.measured() if state == ON_LOOM), None)
    return float(at.size.length.mm) if at is not None and at.size is not None and at.size.length is not None else None


def _cloth(pieces: Sequence[Laid]) -> tuple[list[Line], list[str]]:
    lines, unmeasured = [], []
    for laid in _once(pieces):
        stretch = laid.stretch.name if laid.stretch is not laid.warp else ""
        name = (laid.piece if laid.band is not None else laid.name) or stretch or "cloth"
        mm = loom_length_mm(laid)
        if mm is None:
            unmeasured.append(name)
            continue
        how = f"{laid.number} pieces" if laid.number > 1 else ""
        lines.append(Line(name, mm * laid.number, how, is_cloth=True))
    return lines, unmeasured


def _fringes(pieces: Sequence[Laid]) -> list[Line]:
    total = sum(laid.fringe_mm * laid.number for laid in _once(pieces))
    return [Line("fringes", total)] if total else []


def _take_up(
    warp: Warp, pieces: Sequence[Laid], wound_mm: float, lines: Sequence[Line], unmeasured: Sequence[str]
) -> tuple[TakeUp | None, float | None]:
    cloth_mm = sum(line.mm for line in lines if line.is_cloth)
    marked = [mark for wound in warp.warp for mark in wound.marked]
    if marked:
        loss = 1 - sum(float(m.cloth.mm) for m in marked) / sum(float(m.warp.mm) for m in marked)
        return TakeUp(loss, "marks"), cloth_mm * loss / (1 - loss)
    measured = [
        (mm, float(used.mm))
        for laid in _once(pieces)
        if (used := laid.levels[0].warp_used) is not None and (mm := loom_length_mm(laid)) is not None
    ]
    if measured:
        loss = 1 - sum(mm for mm, _ in measured) / sum(used for _, used in measured)
        return TakeUp(loss, "measured"), cloth_mm * loss / (1 - loss)
    remainder = wound_mm - sum(line.mm for line in lines)
    if unmeasured or not cloth_mm or not warp.where_it_went or remainder < 0:
        return None, None
    return TakeUp(remainder / (remainder + cloth_mm), "at most"), None
