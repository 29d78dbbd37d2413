"""What is left of a warp on the loom: from what was wound, what is woven, and what the next piece takes."""

from __future__ import annotations

import dataclasses
import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from journal_tools.forecast.cloth_kind import kind_of
from journal_tools.forecast.moments import moments
from journal_tools.forecast.observed import Observed
from journal_tools.ledger import Ledger, ledger_of
from journal_tools.ledger.account import Account, loom_length_mm
from journal_tools.ledger.laid import lay_out
from journal_tools.planning import arithmetic as sums
from journal_tools.planning.allowances import GAP
from journal_tools.planning.along import HIGH, LOW
from journal_tools.planning.knowing import Knows
from journal_tools.planning.plan import plan_of
from journal_tools.planning.planned import Plan
from journal_tools.planning.wants import Asked, NotPlanned
from journal_tools.planning.warp_length import BEHIND, WASTE_LINES, loom_waste
from journal_tools.records import Journal
from journal_tools.records.learn import kind_of as piece_kind
from journal_tools.records.warp import Warp


@dataclass(frozen=True)
class Next:
    """The next piece that the plan wants. All in mm.

    weave: its length on the loom; takes: warp for it, with the gap or fringe before it; spare: what is
    then left to weave, negative where it does not fit. more: how many of the kind are still to come.
    """

    name: str
    weave: float
    takes: float
    spare: float
    more: int


@dataclass(frozen=True)
class Left:
    """A warp half woven. All lengths are of warp, in mm, but for cloth.

    wound: in all. gone: in cloth and in every line of the account. behind: what will not weave, thrums
    and knots. left: what still can. take_up: of cloth, a share; cloth: what that makes, tension on;
    woven: cloth so far; take_up_range: nine times in ten, None where it is by marks.
    reckoned: pieces that nobody measured on the loom, led back from a later size or taken at their planned
    length; uncounted: those of which neither is known. marked: whether
    take-up is by marks on this warp.
    """

    wound: float
    gone: float
    behind: float
    take_up: float
    reckoned: tuple[str, ...]
    marked: bool
    next: Next | None
    uncounted: tuple[str, ...] = ()
    woven: float = 0.0
    take_up_range: tuple[float, float] | None = None

    @property
    def left(self) -> float:
        """Warp that can still be woven; negative when more is gone than was wound."""
        return self.wound - self.gone - self.behind

    @property
    def cloth(self) -> float:
        """The cloth that it makes, tension on."""
        return max(0.0, self.left) * (1 - self.take_up)

    @property
    def cloth_range(self) -> tuple[float, float] | None:
        """What it makes nine times in ten; the cloth woven so far took up as much or as little as the rest will."""
        if self.take_up_range is None:
            return None
        least, most = self.take_up_range
        other = self.wound - self.behind - (self.gone - sums.warp_for(self.woven, self.take_up))
        low, high = (max(0.0, other - sums.warp_for(self.woven, one)) * (1 - one) for one in (most, least))
        return low, high


def left_of(
    journal: Journal,
    memory: Knows,
    warp: Warp,
    seen: Mapping[str, Sequence[Observed]] | None = None,
    ledgers: Mapping[str, Ledger] | None = None,
) -> Left:
    """What is left. Raises NotPlanned where nobody wrote how long the warp was wound.

    seen: pieces of the very warp that were measured, by direction. ledgers: of warps, where they are at hand.
    """
    ledger = (ledgers or {}).get(warp.name) or ledger_of(journal, warp)
    account = ledger.account
    if account is None:
        raise NotPlanned("how long was it wound? Say `wound: 5 yd` under `warp:`.")
    try:
        plan = plan_of(journal, memory, warp, Asked(), seen, ledgers)
    except NotPlanned:
        plan = None
    take_up, marked, between = _take_up(journal, account, memory, warp, seen or {})
    reckoned, uncounted, unmeasured = _unmeasured(journal, ledger, memory, plan)
    went = warp.where_it_went or {}
    has_waste = any(BEHIND.search(line) for line in went)
    front = [float(each.mm) for line, each in went.items() if WASTE_LINES.search(line) and not BEHIND.search(line)]
    loom = journal.looms.get(warp.loom) if warp.loom else None
    behind = 0.0 if has_waste else max(0.0, loom_waste(journal, warp, loom).mm - sum(front))
    lines = sum(line.mm for line in account.lines if not line.is_cloth)
    woven = account.cloth_mm + unmeasured
    gone = lines + sums.warp_for(woven, take_up)
    found = Left(
        account.wound_mm, gone, behind, take_up, tuple(reckoned), marked, None, tuple(uncounted), woven, between
    )
    return found if plan is None else _with_next(found, plan, warp)


def _take_up(
    journal: Journal, account: Account, memory: Knows, warp: Warp, seen: Mapping[str, Sequence[Observed]]
) -> tuple[float, bool, tuple[float, float] | None]:
    """Take-up by marks on this very warp, else what the journal expects, with its range."""
    told = account.take_up
    if told is not None and told.basis != "at most":
        return told.loss, True, None
    kind = kind_of(journal, lay_out(warp)[0])
    belief = memory.belief("length", kind, "warp", "on_loom", seen=seen.get("length", ()))
    least, most = (1 - math.exp(belief.quantile(p, of="batch")) for p in (HIGH, LOW))
    return 1 - math.exp(belief.mean), False, (least, most)


def _unmeasured(
    journal: Journal, ledger: Ledger, memory: Knows, plan: Plan | None
) -> tuple[list[str], list[str], float]:
    """Cloth without a length on the loom: what could be reckoned, what could not, and how long the first is.

    A later size is led back to the loom by what the journal expects; else it is as long as was planned.
    """
    planned = {piece_kind(piece.wanted.name): piece for each in plan.stretches for piece in each.pieces} if plan else {}
    reckoned, uncounted, mm = [], [], 0.0
    for piece in {id(each.laid.levels[0]): each for each in ledger.pieces}.values():
        laid = piece.laid
        sizes = [
            (moment, measure)
            for moment, measure in moments(journal, laid, piece.chains["length"])
            if measure.yardstick == "cloth"
        ]
        if loom_length_mm(laid) is not None or not (laid.piece or sizes):
            continue
        wanted = planned.get(piece_kind(laid.piece)) or (next(iter(planned.values())) if len(planned) == 1 else None)
        name = laid.piece or laid.stretch.name or "the cloth"
        if sizes:
            moment, measure = sizes[0]
            belief = memory.belief("length", kind_of(journal, laid), "on_loom", moment)
            long = measure.mm / math.exp(belief.mean)
        elif wanted is not None and wanted.weave_mm is not None:
            long = wanted.weave_mm
        else:
            uncounted.append(name)
            continue
        reckoned.append(name)
        mm += long * laid.number
    return reckoned, uncounted, mm


def _with_next(found: Left, plan: Plan, warp: Warp) -> Left:
    woven: dict[str, int] = {}
    for laid in {id(laid.levels[0]): laid for laid in lay_out(warp) if laid.piece}.values():
        woven[piece_kind(laid.piece)] = woven.get(piece_kind(laid.piece), 0) + laid.number
    total = sum(woven.values())
    pieces = [piece for each in plan.stretches for piece in each.pieces if piece.weave_mm is not None]
    for piece in pieces:
        done = woven.get(piece_kind(piece.wanted.name), 0)
        if not done and len(pieces) == 1:  # pieces by another name than the plan's; a sample is none of them
            done = total - woven.get("sample", 0)
        if done < piece.wanted.count and piece.weave_mm is not None:
            between = piece.wanted.fringe_mm or (GAP if total else 0.0)
            takes = sums.warp_for(piece.weave_mm, found.take_up) + between
            spare = (found.left - takes) * (1 - found.take_up)
            coming = Next(piece.wanted.name or "piece", piece.weave_mm, takes, spare, piece.wanted.count - done)
            return dataclasses.replace(found, next=coming)
    return found
