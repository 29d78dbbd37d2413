"""What a plan says, in words that hands can act on."""

from __future__ import annotations

from pathlib import Path

import pytest

from journal_tools.planning.phrases import odds_of, repeats_of
from journal_tools.planning.words import Words
from tests.planning.knows import Knows, Rests
from tests.planning.test_plan import LENGTH, SHELF, TOWELS, planned


class TestWords:
    def test_hems_line_by_line(self, tmp_path: Path) -> None:
        """Two hems of 1 3/8 washed are 3 in on the loom, told in the line of the towels."""
        lines = {name: how for name, _, how in Words(planned(tmp_path)).lines()}

        assert pytest.approx(2.985, abs=0.001) == 2.75 / LENGTH
        assert "4 of 32 1/2 in, 3 in of each in hems" == lines["towel"]

    @pytest.mark.parametrize(
        ("ends", "threading", "said"),
        [
            (380, range(10), "38 whole repeats of it"),
            (385, [1, 3, 1, 3, 1, 2, 4, 2, 4, 2], "38 whole repeats of it and the 5 ends that balance them"),
            (13, [1, 2, 3, 4, 3, 2], "2 whole repeats of it and the end that balances them"),
            (9, [1, 2, 3, 4], "2 whole repeats of it and one end over"),
            (7, [1, 2, 3, 4], "1 whole repeat of it and 3 ends over"),
        ],
    )
    def test_repeats(self, ends: int, threading: list[int], said: str) -> None:
        """Whole repeats are counted, with the ends that mirror them or that are over."""
        assert said == repeats_of(ends, list(threading), "it")

    @pytest.mark.parametrize(("chance", "said"), [(1 / 6, "1 in 6"), (0.011, "1 in 91"), (0.0, "less than 1 in 100")])
    def test_odds(self, chance: float, said: str) -> None:
        """Odds are told to one in a hundred, and no longer ones."""
        assert said == odds_of(chance)

    def test_no_whole_repeats(self, tmp_path: Path) -> None:
        """Where a wide repeat cannot come nearer than a quarter inch, the next one is told beside it."""
        header = TOWELS.replace("yarn: cotton\n", "warp:\n  yarn: cotton\n  order: 40 a, 20 b\n")
        yarn = SHELF["yarns__cotton"] + "\ncolours:\n  a: c9b58b\n  b: 43536b"
        plan = planned(tmp_path, header, yarns__cotton=yarn)
        (stretch,) = plan.stretches

        assert "7 times (40 a, 20 b), 40 a" == (stretch.across.order and stretch.across.order.written(7))
        assert 460 == stretch.across.ends
        said = [*Words(plan).expects(stretch, stretch.pieces[0])]
        assert "For 18 in there are no whole repeats: one more comes to 19 3/8 in." in said

    def test_how_far_the_true_sett_is(self, tmp_path: Path) -> None:
        """A reed that gives 23.3 for the 24 wanted says so."""
        loom = SHELF["looms__big"].replace("  - 12/in\n", "")
        plan = planned(tmp_path, looms__big=loom)

        assert "(23.3/in for the 24/in wanted)" in Words(plan).sley(plan.stretches[0])

    def test_a_shelf_of_several_colours(self, tmp_path: Path) -> None:
        """What is on hand is of all colours together, and is no promise for one of them."""
        yarn = SHELF["yarns__cotton"].replace("300 g", "900 g") + "\ncolours:\n  a: c9b58b\n  b: 43536b"
        plan = planned(tmp_path, yarns__cotton=yarn)
        (said,) = Words(plan).yarn(plan.yarns[0])

        assert "you have 900 g in all its colours, enough if the colours are." in said

    def test_what_it_rests_on(self, tmp_path: Path) -> None:
        """Said before any figure: how many warps, and how many of them in the weave."""
        plan = planned(tmp_path)

        assert "Rests on 2 of your warps. 1 in plain weave." == Words(plan).rests(plan.stretches[0])

    def test_a_guess(self, tmp_path: Path) -> None:
        """A yarn that was never used is called a guess."""
        plan = planned(tmp_path, knows=Knows(rests=Rests("common practice", (), (), (), "")))

        assert "A guess: nothing of yours in Cotton 8/2. It goes by common practice." == Words(plan).rests(
            plan.stretches[0]
        )

    def test_what_hands_do(self, tmp_path: Path) -> None:
        """Dents and ends, a length or a count of picks, quarter yards."""
        plan = planned(tmp_path)
        words, (stretch,) = Words(plan), plan.stretches

        assert "Sley 20 1/8 in: 242 dents of the 12/in, 2 in a dent (24/in), 484 ends." == words.sley(stretch)
        assert "Towel: weave each of 4 to 32 1/2 in, tension on, or 650 picks." == words.weave(stretch.pieces[0])
        assert words.wound().startswith("Wind 5 yd.")

    def test_both_ways(self, tmp_path: Path) -> None:
        """A per cent says what is lost, and what a wanted size is divided by."""
        plan = planned(tmp_path)
        losses = [*Words(plan).losses(plan.stretches[0].pieces[0])]

        assert "width, from the reed: loses 11 %; a size wanted is divided by .89" == losses[0]
        assert "length, from the loom: loses 8 %; a size wanted is divided by .92" == losses[1]

    def test_centimetres(self, tmp_path: Path) -> None:
        """A metric journal is planned in centimetres, half ones, and quarter metres."""
        header = TOWELS.replace("18 x 27", "45 x 70").replace("1 in", "2.5 cm").replace("3/8 in", "1 cm")
        plan = planned(tmp_path, "units: cm\n" + header)

        assert " cm, tension on" in Words(plan).weave(plan.stretches[0].pieces[0])
        assert " m." in Words(plan).wound()
        assert 0 == round(plan.length.wind_mm) % 250

    def test_the_unit_that_was_typed(self, tmp_path: Path) -> None:
        """Sizes typed in centimetres are told in centimetres, picks as the sett is typed."""
        plan = planned(tmp_path, TOWELS.replace("18 x 27", "45 x 70 cm"))
        words, (stretch,) = Words(plan), plan.stretches

        assert " cm, tension on, or " in words.weave(stretch.pieces[0])
        assert "On The big loom, 91.5 cm wide, 4 shafts." == words.loom()
        assert "20 picks an inch." in [*words.repeats(stretch)]
        assert words.wound().startswith("Wind 4.5 m.")

    def test_other_reeds(self, tmp_path: Path) -> None:
        """Every other reed of the loom is told with the sett that it truly gives."""
        plan = planned(tmp_path)

        assert "Other reed: 10/in, 2-2-3 in the dents, 23.3/in." == Words(plan).other_reeds(plan.stretches[0])

    def test_hems(self, tmp_path: Path) -> None:
        """A hem is told with its turn, its edges and when it is sewn."""
        plan = planned(tmp_path)
        said = [*Words(plan).repeats(plan.stretches[0])]

        assert "Hem of 1 in with 3/8 in turned under, both ends, sewn after washing." in said

    def test_the_beat_of_the_past(self, tmp_path: Path) -> None:
        """Without a beat, picks go with the ends as they did: 540 over 30 in at 20 ends are 21.6 at 24."""
        past = "yarn: cotton\nweave: plain weave\nsett: 20/in\non_loom: 18 x 30\npicks: 540"
        header = TOWELS.replace("beat: 20/in\n", "")
        plan = planned(tmp_path, header, warps__past=past)
        bare = planned(tmp_path / "bare", header)

        assert "21.6 picks an inch (as in one past warp)." in [*Words(plan).repeats(plan.stretches[0])]
        assert round(32.5 * 21.6) == plan.stretches[0].pieces[0].picks
        guess = "24 picks an inch (a guess: balanced, as many picks as ends)."
        assert guess in [*Words(bare).repeats(bare.stretches[0])]
