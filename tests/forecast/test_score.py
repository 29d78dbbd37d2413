"""The score: each past warp forecast from those before it, and nothing that came after."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from journal_tools.forecast.forecast import Forecast
from journal_tools.forecast.kind import ClothKind
from journal_tools.forecast.observed import Observed, Reading
from journal_tools.forecast.score import (
    RIVALS,
    Score,
    Scored,
    came_out,
    guesses,
    kinds_of,
    root_mean_square,
    score_of,
    usual,
)

PLAIN = ClothKind("plain weave", "cotton", "cotton", "cotton", "cotton", "hot", 0.75, 2024)
TWILL = replace(PLAIN, weave="2/2 twill")


def warp(name: str, kind: ClothKind, *losses: float) -> list[Observed]:
    """A warp with a piece for each of some width losses, reed to washed."""
    return [
        Observed(
            name,
            f"piece {number}",
            kind,
            (Reading("in_reed", math.log(500), 0.001), Reading("washed 1", math.log(500 * (1 - loss)), 0.003)),
        )
        for number, loss in enumerate(losses, start=1)
    ]


SHELF = {
    "one": warp("one", PLAIN, 0.11, 0.12),
    "two": warp("two", TWILL, 0.09),
    "three": warp("three", PLAIN, 0.13),
    "four": warp("four", replace(PLAIN, weft_yarn="linen", weft_fibre="linen"), 0.07),
    "five": warp("five", PLAIN, 0.12, 0.12, 0.12),
}


def scored(shelf: dict[str, list[Observed]] = SHELF, order: str = "one two three four five", **more: object) -> Score:
    """The score of a shelf of warps, woven in this order."""
    pieces = [piece for pieces in shelf.values() for piece in pieces]
    return score_of(pieces, order.split(), "width", **more)  # type: ignore[arg-type]


class TestWhatCame:
    def test_the_mean_of_its_pieces(self) -> None:
        """Pieces of one kind in a warp are one figure: 11 and 12 % are a mean of logarithms, read two times two."""
        [(kind, came, count, noise)] = came_out(SHELF["one"], "width")

        assert (PLAIN, 2) == (kind, count)
        assert pytest.approx((math.log(0.89) + math.log(0.88)) / 2) == came
        assert pytest.approx((0.001**2 + 0.003**2) / 2) == noise

    def test_a_whole_loss_alone(self) -> None:
        """A piece that was measured on the loom only has no whole loss to be scored by."""
        piece = replace(SHELF["two"][0], readings=(Reading("in_reed", 6.2, 0.0), Reading("on_loom", 6.1, 0.01)))

        assert [] == list(came_out([piece], "width"))


class TestRivals:
    def test_what_they_say(self) -> None:
        """Ten per cent; the yarns' own mean so far; the last warp in the same yarns and weave."""
        by_warp = {each.warp: each.rivals for each in scored().scored}
        ten, one, three = math.log(0.9), (math.log(0.89) + math.log(0.88)) / 2, math.log(0.87)
        two = math.log(0.91)

        assert 3 == len(RIVALS)
        assert pytest.approx((ten, one, one)) == by_warp["two"]
        assert pytest.approx((ten, (one + two) / 2, one)) == by_warp["three"]
        assert pytest.approx((ten, ten, ten)) == by_warp["four"]
        assert pytest.approx((ten, (one + two + three) / 3, three)) == by_warp["five"]

    def test_how_far_off(self) -> None:
        """The error of ten per cent is worked by hand from the four warps that were scored."""
        offs = [0.91 - 0.9, 0.87 - 0.9, 0.93 - 0.9, 0.88 - 0.9]

        assert pytest.approx(offs) == scored().offs_of(0)
        assert pytest.approx(math.sqrt((0.01**2 + 0.03**2 + 0.03**2 + 0.02**2) / 4)) == root_mean_square(offs)
        assert pytest.approx(0.025) == usual(offs)


class TestBeforeAndAfter:
    def test_the_first_warp(self) -> None:
        """The first warp has none before it, and an undated one is neither scored nor learned from."""
        assert ["two", "three", "four", "five"] == [each.warp for each in scored().scored]
        assert ["three"] == [each.warp for each in scored(order="one three").scored]

    def test_nothing_that_came_after(self) -> None:
        """Another last warp changes no score but its own."""
        other = SHELF | {"five": warp("five", PLAIN, 0.30, 0.30, 0.30)}

        assert scored().scored[:-1] == scored(other).scored[:-1]
        assert scored().scored[-1].expected == scored(other).scored[-1].expected
        assert scored().scored[-1].place > 0.3 > 0.05 > scored(other).scored[-1].place

    def test_it_is_the_forecast(self) -> None:
        """What the second warp was expected to do is what a forecast fitted to the first one says."""
        belief = Forecast.fit(SHELF["one"], "width").belief(TWILL, "in_reed", "washed 1")
        second = scored().scored[0]

        assert pytest.approx(belief.quantile(0.5), abs=1e-4) == second.expected

    def test_the_newest_alone(self) -> None:
        """Of a long journal the newest are scored, with all of it behind them."""
        assert scored().scored[2:] == scored(most=2).scored


class TestKept:
    def test_found_again(self) -> None:
        """What was found once is used again, and a new warp adds its own."""
        kept: dict[str, list[float]] = {}
        first = scored(order="one two three four", kept=kept)
        before = dict(kept)
        second = scored(kept=kept)

        assert 3 == len(before)
        assert first.scored == second.scored[:-1]
        assert second == scored()
        assert before.items() < kept.items()

    def test_taken_at_its_word(self) -> None:
        """It is looked up and not reckoned again."""
        kept: dict[str, list[float]] = {}
        scored(kept=kept)
        odd = {key: [-0.5, 0.25] for key in kept}

        assert {(-0.5, 0.25)} == {(each.expected, each.place) for each in scored(kept=odd).scored}


class TestHeld:
    @pytest.mark.parametrize(("place", "held"), [(0.5, 3), (0.24, 2), (0.9, 2), (0.91, 1), (0.02, 0)])
    def test_inside(self, place: float, held: int) -> None:
        """The range of 80 in 100 leaves ten out at either end, and so on."""
        one = Scored("w", PLAIN, 0.0, 0.0, place, (0.0, 0.0, 0.0))

        assert held == sum(one.inside(promised) for promised in (0.5, 0.8, 0.95))

    def test_nothing_scored(self) -> None:
        """An empty journal has nothing to be off by."""
        assert ([], 0) == (scored({}).offs, scored({}).held(0.95))


class TestGuesses:
    def test_a_sample_takes_doubt_away(self) -> None:
        """A yarn with warps behind it is better known than a stranger, and a washed sample helps both."""
        stranger = ClothKind("plain weave", "alpaca", "alpaca", "alpaca", "alpaca", "cool", 0.75, 2024)
        model = Forecast.fit([piece for pieces in SHELF.values() for piece in pieces], "width")
        first, second = guesses(model, [PLAIN, stranger], 2025)

        assert ("alpaca", 0) == (first.kind.warp_yarn, first.warps)
        assert ("cotton", 5) == (second.kind.warp_yarn, second.warps)
        assert first.now > second.now
        assert first.gain > second.gain > 0

    def test_each_kind_once(self) -> None:
        """Two warps in the same yarns and weave are one kind, as it was woven last."""
        later = replace(PLAIN, finish="cool", year=2025)
        pieces = [*SHELF["one"], *SHELF["two"], *warp("six", later, 0.1)]

        assert {later, TWILL} == set(kinds_of(pieces))
