"""The physics of the invented workshop against what weavers expect of real cloth.

Every figure in this file is common practice, no source: typical losses and their ranges by fibre and
weave, their scatter and how they go together. They are judgement, good for a demonstration alone.
"""

from __future__ import annotations

from random import Random
from statistics import correlation, fmean, stdev

import pytest

from tests.workshop.physics import (
    CLOTHS,
    Conditions,
    Steps,
    creep,
    departure,
    expected,
    fulled_to,
    later_wash,
    piece_steps,
    warp_steps,
    weft_length,
)

PRACTICE = {
    "cotton plain": ((4, 1.5, 6), (8, 14), (7, 3, 6), (6, 12)),
    "cotton twill": ((3, 1.5, 7), (8, 15), (5, 3, 6.5), (6, 12)),
    "mercerised plain": ((4, 1, 5), (7, 12), (6, 3, 5), (5, 10)),
    "cotton lace": ((6, 2, 8), (12, 18), (5, 3, 7), (7, 13)),
    "cotton waffle": ((5, 4, 16), (18, 28), (8, 6, 14), (15, 25)),
    "rep": ((2, 0.5, 2), (2, 7), (15, 3, 6), (6, 11)),
    "cottolin plain": ((4, 1, 5), (7, 13), (6, 2.5, 5.5), (6, 11)),
    "cottolin twill": ((3, 1, 5.5), (7, 13), (5, 2.5, 6), (6, 11)),
    "linen plain": ((3, 0.5, 4), (5, 10), (4, 1, 3.5), (3, 7)),
    "linen lace": ((4.5, 0.5, 5), (7, 12), (3, 1, 4), (3, 7)),
    "woollen scoured": ((4, 2, 7), (9, 17), (4, 5, 7), (8, 16)),
    "woollen fulled": ((4, 2, 20), (18, 32), (4, 5, 20), (17, 32)),
    "worsted": ((4, 2, 6), (8, 15), (4, 4, 6), (7, 13)),
    "superwash": ((4, 2, 3), (5, 11), (4, 4, 1), (1, 8)),
    "silk": ((4, 0.5, 2.5), (4, 9), (4, 1.5, 2), (2, 6)),
    "alpaca": ((5, 1, 4), (6, 13), (4, 2, 2), (0, 7)),
    "weft-faced": ((1.5, 0.5, 1), (1, 5), (4, 1.5, 1.5), (2, 5)),
}
"""Width steps (draw-in, cut-off, wash) and whole range; length steps (take-up, cut-off, wash) and whole range."""

DRAWS = 4000


def _departures(name: str) -> list[Steps]:
    rng = Random(f"departures of {name}")
    return [departure(rng, CLOTHS[name]) for _ in range(DRAWS)]


def _warps(name: str, conditions: Conditions, number: int = 300) -> list[Steps]:
    rng = Random(name)
    return [warp_steps(rng, CLOTHS[name], conditions) for _ in range(number)]


def test_every_kind_of_cloth_loses_what_weavers_expect_of_it() -> None:
    """Usual steps and ranges are those of practice, for every kind of cloth and no other."""
    known = {
        name: (cloth.width, cloth.width_range, cloth.length, cloth.length_range)
        for name, cloth in CLOTHS.items()
    }

    assert PRACTICE == known


@pytest.mark.parametrize("name", PRACTICE)
def test_whole_losses_stay_in_their_range(name: str) -> None:
    """No warp loses less or more in the whole than its kind of cloth does, in width or in length."""
    _, width_range, _, length_range = PRACTICE[name]
    warps = _warps(name, Conditions())

    assert width_range[0] <= min(warp.width_whole for warp in warps)
    assert width_range[1] >= max(warp.width_whole for warp in warps)
    assert length_range[0] <= min(warp.length_whole for warp in warps)
    assert length_range[1] >= max(warp.length_whole for warp in warps)


@pytest.mark.parametrize("name", PRACTICE)
def test_warps_lie_about_the_usual_steps(name: str) -> None:
    """On average a warp does at every step what is usual, within half a point (fulled cloth: one and a half)."""
    width, _, length, _ = PRACTICE[name]
    near = 1.5 if "fulled" in name else 0.5
    warps = _warps(name, Conditions())

    for step, usual in enumerate((*width, *length)):
        assert usual == pytest.approx(fmean(warp[step] for warp in warps), abs=near)


@pytest.mark.parametrize(
    ("name", "width", "length"),
    [("cotton plain", 1.2, 1.8), ("woollen scoured", 2, 2.4), ("woollen fulled", 4.2, 4.5)],
)
def test_scatter_from_warp_to_warp(name: str, width: float, length: float) -> None:
    """Warps woven alike scatter by 1.2 points in width and 1.8 in length; scoured wool 2 and 2.4; fulled 4 to 5."""
    off = _departures(name)

    assert width == pytest.approx(stdev(d.draw + d.off_width + d.wash_width for d in off), rel=0.06)
    assert length == pytest.approx(stdev(d.off_length + d.wash_length for d in off), rel=0.06)


@pytest.mark.parametrize("name", PRACTICE)
def test_what_is_not_lost_on_the_loom_is_lost_at_the_cut_off(name: str) -> None:
    """Draw-in goes against relaxation in width, and take-up against relaxation in length, by about one half."""
    off = _departures(name)

    assert correlation([d.draw for d in off], [d.off_width for d in off]) == pytest.approx(-0.5, abs=0.06)
    assert correlation([d.take_up for d in off], [d.off_length for d in off]) == pytest.approx(-0.5, abs=0.06)


def test_the_steps_still_go_against_each_other_in_whole_warps() -> None:
    """Warps that have to stay in the range of their kind keep most of that correlation."""
    warps = _warps("cotton plain", Conditions(), 1000)

    assert -0.65 < correlation([w.draw for w in warps], [w.off_width for w in warps]) < -0.3
    assert -0.65 < correlation([w.take_up for w in warps], [w.off_length for w in warps]) < -0.3


def test_felt_takes_width_and_length_together() -> None:
    """In fulled cloth the whole losses in width and in length go together, by about six tenths."""
    off = _departures("woollen fulled")
    width = [d.draw + d.off_width + d.wash_width for d in off]
    length = [d.off_length + d.wash_length for d in off]

    assert correlation(width, length) == pytest.approx(0.6, abs=0.05)


def test_other_cloth_does_not() -> None:
    """Cotton that lost more in width says nothing of its length."""
    off = _departures("cotton plain")
    width = [d.draw + d.off_width + d.wash_width for d in off]
    length = [d.off_length + d.wash_length for d in off]

    assert correlation(width, length) == pytest.approx(0, abs=0.06)


def test_pieces_of_one_warp_lie_closer_together_than_warps() -> None:
    """Pieces scatter by half a point in width and nine tenths in length inside their warp."""
    rng, cloth = Random("pieces"), CLOTHS["cotton plain"]
    warp = cloth.usual()
    pieces = [piece_steps(rng, cloth, warp, place=2, of=5, creep=0.0) for _ in range(DRAWS)]

    assert stdev(p.draw + p.off_width + p.wash_width for p in pieces) == pytest.approx(0.5, rel=0.08)
    assert stdev(p.off_length + p.wash_length for p in pieces) == pytest.approx(0.9, rel=0.08)


def test_draw_in_creeps_down_a_warp() -> None:
    """From the first piece to the last draw-in gains half a point to one point."""
    rng, cloth = Random("creep"), CLOTHS["cotton plain"]
    gains = [creep(rng) for _ in range(200)]
    second = fmean(piece_steps(rng, cloth, cloth.usual(), place=1, of=5, creep=1.0).draw for _ in range(DRAWS))
    fourth = fmean(piece_steps(rng, cloth, cloth.usual(), place=3, of=5, creep=1.0).draw for _ in range(DRAWS))

    assert min(gains) >= 0.5
    assert max(gains) <= 1.0
    assert fourth - second == pytest.approx(0.5, abs=0.06)


def test_the_first_and_the_last_piece_are_odd() -> None:
    """The first piece draws in less and relaxes more than those between; the last one relaxes less."""
    rng, cloth = Random("odd"), CLOTHS["cotton plain"]
    first, middle, last = (
        [piece_steps(rng, cloth, cloth.usual(), place=place, of=5, creep=0.0) for _ in range(DRAWS)]
        for place in (0, 2, 4)
    )

    assert fmean(p.draw for p in first) < fmean(p.draw for p in middle) - 0.3
    assert fmean(p.off_length for p in first) > fmean(p.off_length for p in middle) + 0.3
    assert fmean(p.off_length for p in last) < fmean(p.off_length for p in middle) - 0.2


def test_a_temple_is_paid_back() -> None:
    """A temple takes two points off draw-in and gives them back at the cut-off; the whole moves by half at most."""
    cloth = CLOTHS["cottolin plain"]
    plain, held = expected(cloth, Conditions()), expected(cloth, Conditions(temple=True))

    assert held.draw - plain.draw == pytest.approx(-2)
    assert 1.5 <= held.off_width - plain.off_width <= 2
    assert abs(held.width_whole - plain.width_whole) <= 0.5


def test_a_closer_sett_loses_less() -> None:
    """A tenth more ends takes a point off width; a tenth more picks .8 off length, and adds one to take-up."""
    cloth = CLOTHS["cotton plain"]
    usual, close = expected(cloth, Conditions()), expected(cloth, Conditions(closeness=1.1, picks=1.1))

    assert usual.width_whole - close.width_whole == pytest.approx(1, abs=0.15)
    assert usual.length_whole - close.length_whole == pytest.approx(0.8, abs=0.1)
    assert close.take_up - usual.take_up == pytest.approx(1)


def test_the_tumble_dryer_takes_more_of_cotton() -> None:
    """The dryer takes two to four points more in length and one to two in width, of cotton and not of wool."""
    cotton = [expected(CLOTHS["cotton plain"], Conditions(tumbled=hot)) for hot in (False, True)]
    wool = [expected(CLOTHS["worsted"], Conditions(tumbled=hot)) for hot in (False, True)]

    assert 2 <= cotton[1].length_whole - cotton[0].length_whole <= 4
    assert 1 <= cotton[1].width_whole - cotton[0].width_whole <= 2
    assert wool[0] == wool[1]


@pytest.mark.parametrize(("name", "second"), [("cotton plain", (0.5, 2)), ("linen plain", (0.5, 1.5))])
def test_later_washes_take_less_and_less(name: str, second: tuple[float, float]) -> None:
    """The second wash takes half a point to two of cotton, to one and a half of linen; the third .7 at most."""
    rng = Random("washes")
    at_second = [loss for _ in range(200) for loss in later_wash(rng, CLOTHS[name], 2)]
    at_third = [loss for _ in range(200) for loss in later_wash(rng, CLOTHS[name], 3)]

    assert second[0] <= min(at_second)
    assert second[1] >= max(at_second)
    assert min(at_third) >= 0
    assert max(at_third) <= 0.7


def test_the_first_wash_is_no_later_wash() -> None:
    """What the first wash takes is one of the steps of the cloth, and is refused here."""
    with pytest.raises(ValueError, match="one of the steps"):
        later_wash(Random(1), CLOTHS["cotton plain"], 1)


def test_a_pick_is_longer_than_the_reed_is_wide() -> None:
    """A pick takes the width in the reed and three to eight per cent more."""
    rng = Random("weft")
    picks = [weft_length(rng, 20) for _ in range(200)]

    assert min(picks) >= 20 * 1.03
    assert max(picks) <= 20 * 1.08


def test_fulling_is_slow_at_first() -> None:
    """Half way through the minutes less than half of the way to the final size is gone, and it ends there."""
    sizes = [fulled_to(150, 130, minutes, 12) for minutes in (0, 3, 6, 9, 12)]

    assert sizes[0] == pytest.approx(150)
    assert sizes[-1] == pytest.approx(130)
    assert sizes == sorted(sizes, reverse=True)
    assert sizes[2] > 140
