"""Plans made with the journal's own memory: what is planned agrees with what the forecast expects."""

from __future__ import annotations

import math
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from journal_tools.forecast.memory import Memory
from journal_tools.ledger import ledger_of
from journal_tools.planning.plan import Plan, plan_of
from journal_tools.planning.remembering import remembered
from journal_tools.planning.wants import Asked
from journal_tools.planning.words import Words
from journal_tools.records import Journal, read_journal
from tests.ledger.desk import write

INCH = 25.4
PAST = """\
title: Towels of {year}
started: {year}
yarn: cotton
weave: plain weave
sett: 20/in
in_reed: {reed}
on_loom: {wide} x 32
picks: 576
washed: {washed} x {long}
where_it_went:
  header: 2 in
warp:
  wound: 5 yd
  marked: 36 in wove {wove} in
"""
SHELF = {
    "looms__big": "title: The big loom\nshafts: 4\nwidth: 36 in\nheddles: 300\nreeds:\n  - 10/in\n  - 12/in",
    "yarns__cotton": "title: Cotton 8/2\nfibre: cotton\nnumber: 8/2 cotton",
}
WARPS = {
    2020: ("20", "19 1/4", "17 5/8", "29", "33 1/2"),
    2021: ("20 1/4", "19 1/2", "18", "29 1/4", "34"),
    2022: ("24", "23", "21 1/4", "28 3/4", "33 1/2"),
    2023: ("16", "15 1/4", "14", "29 1/8", "33 3/4"),
}
NEXT = """\
loom: big
yarn: cotton
weave: plain weave
sett: 20/in
plan:
  - piece: towel
    count: 3
    washed: 18 x 28
"""


@cache
def shelf() -> Journal:
    """Four warps of towels and one that is wanted."""
    figures = [dict(zip(("reed", "wide", "washed", "long", "wove"), said, strict=True)) for said in WARPS.values()]
    past = {
        f"warps__of_{year}": PAST.format(year=year, **figure) for year, figure in zip(WARPS, figures, strict=True)
    }
    with TemporaryDirectory() as place:
        write(Path(place), **SHELF, **past, warps__next=NEXT)
        made = read_journal(Path(place))
    assert [] == [problem.sentence() for problem in made.problems]
    return made


@cache
def memory() -> Memory:
    """What they teach."""
    return remembered(shelf(), shelf().warps["next"])[0]


@cache
def plan(asked: Asked | None = None) -> Plan:
    """The plan of the one that is wanted."""
    return plan_of(shelf(), memory(), shelf().warps["next"], asked)


def test_what_is_wanted_is_within_the_range() -> None:
    """The sizes wanted lie within nine in ten, and a dent and a ribbon's mark from the middle."""
    (piece,) = plan().stretches[0].pieces
    assert piece.width is not None
    assert piece.length is not None

    assert piece.width.low < 18 * INCH < piece.width.high
    assert piece.length.low < 28 * INCH < piece.length.high
    assert pytest.approx(18 * INCH, abs=INCH / 10) == piece.width.mm
    assert 0 <= piece.length.mm - 28 * INCH < INCH / 4


def test_a_loss_undone() -> None:
    """Width in the reed x (1 - loss) is the width expected, and the loss is the forecast's own of that cloth."""
    (stretch,) = plan().stretches
    (piece,) = stretch.pieces
    belief = memory().belief("width", stretch.wanted.kind, "in_reed", "washed 1")
    assert piece.width is not None
    assert piece.length is not None
    assert piece.weave_mm is not None

    assert pytest.approx(1 - math.exp(belief.mean)) == piece.width_loss
    assert pytest.approx(stretch.across.mm * (1 - piece.width_loss)) == piece.width.mm
    assert pytest.approx(piece.weave_mm * (1 - piece.length_loss)) == piece.length.mm


def test_the_loss_is_like_the_past() -> None:
    """Four warps that lost a tenth to an eighth of their width make the next lose as much."""
    (piece,) = plan().stretches[0].pieces
    losses = [1 - washed / reed for reed, washed in ((20, 17.625), (20.25, 18), (24, 21.25), (16, 14))]

    assert min(losses) < piece.width_loss < max(losses)


def test_the_reed_gives_the_ends() -> None:
    """As many dents as the width holds, the sley order in each, and the sett that was wanted."""
    across = plan().stretches[0].across

    assert pytest.approx(across.dents / across.sleying.dents_per_m * 1000) == across.mm
    assert across.dents * 2 == across.ends
    assert pytest.approx(20, abs=0.01) == across.sleying.sett * INCH / 1000


def test_picks_as_they_were_beaten() -> None:
    """576 picks over 32 in at 20 ends are 18 to the inch, four times over, and 18 to the inch are planned."""
    (stretch,) = plan().stretches
    (piece,) = stretch.pieces
    assert piece.weave_mm is not None

    assert "18 picks an inch (as in 4 past warps)." in [*Words(plan()).repeats(stretch)]
    assert round(18 * piece.weave_mm / INCH) == piece.picks


def test_the_warp_holds_the_cloth() -> None:
    """What is wound weaves all pieces after the take-up that the marks of the past teach, 5.5 to 7 %."""
    made = plan()
    (stretch,) = made.stretches
    lines = {line.name: line.mm for line in made.length.lines}
    woven = lines["towel"] + lines["take-up"]

    assert 1 - 34 / 36 < stretch.take_up < 1 - 33.5 / 36
    assert pytest.approx(lines["towel"]) == woven * (1 - stretch.take_up)
    assert made.length.mm <= made.length.wind_mm < made.length.mm + 9 * INCH
    assert stretch.take_up < stretch.take_up_high


def test_rests_on_the_others() -> None:
    """The plan rests on the four, in the yarn and the weave, and not on itself."""
    rests = plan().stretches[0].rests_on

    assert {f"of-{year}" for year in WARPS} == set(rests.both)
    assert "yarn and weave" == rests.basis


def test_the_worst_of_more_is_worse() -> None:
    """The smallest of three is shorter than one piece's middle, and the risk of a short one falls with more woven."""
    (piece,) = plan(Asked(least_mm=27.5 * INCH)).stretches[0].pieces
    assert piece.length is not None
    assert piece.risk is not None
    belief = memory().belief("length", plan().stretches[0].wanted.kind, "on_loom", "washed 1")
    assert piece.weave_mm is not None

    assert piece.length.worst < piece.length.low
    assert pytest.approx(belief.chance_worst_below(math.log(27.5 * INCH / piece.weave_mm), 3)) == piece.risk.chance
    assert piece.risk.after is None or piece.risk.after < piece.risk.chance


def test_ledgers_at_hand_change_nothing() -> None:
    """A plan is the same whether the ledgers were handed over or are reckoned again."""
    made = shelf()
    ledgers = {name: ledger_of(made, warp) for name, warp in made.warps.items()}
    handed = remembered(made, made.warps["next"], ledgers)[0]

    assert memory().observed == handed.observed
