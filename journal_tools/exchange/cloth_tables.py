"""The tables of what the cloth did: one row a step, one a size, one a piece."""

from __future__ import annotations

import math
from collections.abc import Iterator

from journal_tools.exchange.csv_cells import Cell
from journal_tools.exchange.table import Table, Told, columns, figure
from journal_tools.ledger import PieceLedger, Row
from journal_tools.records import Warp
from journal_tools.records.cloth import Weft
from journal_tools.records.yarns_used import warp_threads, weft_threads

WHOSE = """
warp | words | Name of the warp: of its record, and of its line in warps.csv.
stretch | words | Name of the stretch, empty where the warp has none.
piece | words | Name of the piece, empty where the warp is one.
pieces | count | How many pieces the row stands for: those that were written down as alike.
"""


def _steps(told: Told) -> Iterator[tuple[Cell, ...]]:
    for name in told.warps:
        for row in told.ledgers[name].rows:
            yield _step(row)


def _step(row: Row) -> tuple[Cell, ...]:
    return (
        row.warp,
        row.stretch,
        row.piece,
        row.number,
        row.direction,
        row.first.key,
        row.last.key,
        figure(row.loss),
        figure(row.uncertainty),
        figure(math.log1p(-row.loss)) if row.loss < 1 else None,
        figure(row.planned),
        "; ".join(state.key for state in row.between),
        row.whole,
        row.joined,
        row.steered,
        row.learn,
        row.reason,
    )


STEPS = Table(
    "steps",
    "one loss of one piece in one direction: every step, and every whole loss",
    columns(
        WHOSE
        + """
direction | words | width or length.
from | words | The state at the earlier end: in_reed, on_loom, off_loom, hemmed, scoured, fulled 8, washed, washed 2.
to | words | The state at the later end.
loss_fraction | figure | 1 - later/earlier; below nothing where the cloth grew.
uncertainty_fraction | figure | U of the loss, k = 2, by JCGM 100:2008 from the tape and the cloth.
log_ratio | figure | The natural logarithm of later/earlier: what adds up from step to step.
planned_loss_fraction | figure | The loss that the plan's own sizes give.
skipped | words | States in between that nobody measured, with ; between.
whole | yes or no | Whether it runs from the first state of its direction to a wash; the whole is no step of its own.
joined | yes or no | Whether it goes over a hem or from edges to marks, as a product.
steered | yes or no | Whether the cloth was fulled to size, so that the loss was a decision.
learn | yes or no | Whether the weaver lets the journal learn from it.
reason | words | Why not, in the weaver's words.
"""
    ),
    _steps,
)


def _sizes(told: Told) -> Iterator[tuple[Cell, ...]]:
    for name in told.warps:
        for piece in told.ledgers[name].pieces:
            for line in piece.sizes:
                yield (
                    *_whose(name, piece),
                    line.direction,
                    line.state.key,
                    line.yardstick,
                    figure(line.measured_mm, 4),
                    figure(line.u_mm, 4) if line.measured_mm is not None else None,
                    figure(line.planned_mm, 4),
                    figure(line.off_mm, 4),
                )


SIZES = Table(
    "sizes",
    "one size of one piece in one direction at one state of the cloth",
    columns(
        WHOSE
        + """
direction | words | width or length.
state | words | The state of the cloth, by its key in a record, and made_up.
yardstick | words | cloth, hemmed, marks or made up: only sizes on the same one compare.
measured_mm | figure | What was measured, opened for a double cloth; empty where nobody measured.
uncertainty_mm | figure | U of it, k = 2; 0 for dents that were counted.
planned_mm | figure | What was planned; empty where the plan does not say.
off_plan_mm | figure | Measured less planned, each to the mark of the tape.
"""
    ),
    _sizes,
)


def _pieces(told: Told) -> Iterator[tuple[Cell, ...]]:
    for name in told.warps:
        warp = told.journal.warps[name]
        for piece in told.ledgers[name].pieces:
            yield (*_whose(name, piece), piece.plan, *_cloth(told, warp, piece))


def _cloth(told: Told, warp: Warp, piece: PieceLedger) -> tuple[Cell, ...]:
    said = piece.laid.said
    wefts: tuple[Weft, ...] = said("weft") or ()
    sett = (piece.laid.band.sett if piece.laid.band is not None else None) or warp.sett_of(piece.laid.stretch)
    beat, mass = said("beat"), piece.mass
    weighed = said("weight") or {}
    return (
        said("weave") or "",
        "; ".join(dict.fromkeys(yarn.heading for yarn, _ in warp_threads(told.journal, warp))),
        "; ".join(dict.fromkeys(yarn.heading for yarn, _ in weft_threads(told.journal, warp, wefts))),
        "; ".join(said("finish") or ()),
        piece.laid.ends,
        figure(sett.per_cm, 4) if sett else None,
        piece.laid.picks.number if piece.laid.picks else None,
        figure(beat.per_cm, 4) if beat else None,
        figure(_per_cm(piece.counts.ends_per_m), 4),
        figure(_per_cm(piece.counts.picks_per_m), 4),
        "; ".join(f"{state} {figure(weight.grams, 2)}" for state, weight in weighed.items()),
        figure(mass.washed, 2) if mass else None,
        figure(mass.areal_mass, 2) if mass else None,
    )


def _per_cm(per_m: float | None) -> float | None:
    return None if per_m is None else per_m / 100


def _whose(warp: str, piece: PieceLedger) -> tuple[Cell, ...]:
    return warp, piece.stretch, piece.name, piece.number


PIECES = Table(
    "pieces",
    "one piece, or pieces that were written down as alike, or one band of a piece",
    columns(
        WHOSE
        + """
plan | words | Name of the plan that it was woven to.
weave | words | The weave, by name.
warp_yarns | words | The yarns wound, with ; between.
weft_yarns | words | The yarns thrown, with ; between.
finish | words | Finishing recipe of each wash, by name, with ; between.
ends | count | Ends across the piece, floating selvedges among them.
sett_per_cm | figure | Ends to the centimetre in the reed.
picks | count | Picks in one piece, counted.
beat_per_cm | figure | Picks to the centimetre on the loom.
finished_ends_per_cm | figure | Ends over the washed width.
finished_picks_per_cm | figure | Picks over the washed length.
weighed_g | words | What one piece weighs, by state, in grams, with ; between.
reckoned_g | figure | What one washed piece should weigh, from its threads.
reckoned_g_per_m2 | figure | Weight to the square metre of washed cloth, from its threads.
"""
    ),
    _pieces,
)
