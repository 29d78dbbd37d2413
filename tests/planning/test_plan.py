"""A plan worked with a pencil beside the one that is made, with a memory whose losses are known."""

from __future__ import annotations

import dataclasses
from pathlib import Path

import pytest

from journal_tools.planning.plan import Plan, plan_of
from journal_tools.planning.wants import Asked, NotPlanned
from journal_tools.planning.words import Words
from journal_tools.records import Journal
from tests.ledger.desk import write
from tests.planning.knows import Knows

TOWELS = """\
loom: big
yarn: cotton
weave: plain weave
sett: 24/in
beat: 20/in
plan:
  - piece: towel
    count: 4
    made_up: 18 x 27
hem:
  depth: 1 in
  turn: 3/8 in
  sewn: after washing
"""
SHELF = {
    "looms__big": (
        "title: The big loom\nshafts: 4\nwidth: 36 in\nheddles: 300\nreeds:\n  - 10/in\n  - 12/in\nwaste: 30 in"
    ),
    "yarns__cotton": (
        "title: Cotton 8/2\nfibre: cotton\nnumber: 8/2 cotton\nput_up: 250 g cones\nprice: 10 EUR\non_hand: 300 g"
    ),
}
INCH = 25.4
WIDTH = 0.96 * 0.99 * 0.94
"""What is left of a width: 4, 1 and 6 %."""
LENGTH = 0.98 * 0.94
"""What is left of a length on the loom: 2 and 6 %."""


def journal(folder: Path, header: str = TOWELS, **more: str) -> Journal:
    """A journal with one warp to plan."""
    made = write(folder, **{**SHELF, **more}, warps__next=header)
    assert [] == [problem.sentence() for problem in made.problems]
    return made


def planned(
    folder: Path, header: str = TOWELS, asked: Asked | None = None, knows: Knows | None = None, **more: str
) -> Plan:
    """The plan of it."""
    made = journal(folder, header, **more)
    return plan_of(made, knows or Knows(), made.warps["next"], asked)


class TestAcross:
    def test_width(self, tmp_path: Path) -> None:
        """18 in washed is 20.15 in in the reed: 242 dents of the 12, two in a dent, 484 ends."""
        (stretch,) = planned(tmp_path).stretches
        across = stretch.across

        assert pytest.approx(18 / WIDTH * INCH, rel=1e-3) == across.wanted_mm
        assert (242, 484, "2") == (across.dents, across.ends, across.sleying.written)
        assert pytest.approx(242 / 12 * INCH) == across.mm

    def test_doubled_edges(self, tmp_path: Path) -> None:
        """Two ends doubled at each side take no dent of their own: 488 ends stand in 242 dents."""
        across = planned(tmp_path, asked=Asked(doubled=2)).stretches[0].across

        assert (242, 488) == (across.dents, across.ends)

    def test_the_narrowest_ribbon(self, tmp_path: Path) -> None:
        """However narrow, and however many ends are doubled, there is a dent to stand in."""
        header = TOWELS.partition("hem:")[0].replace("18 x 27", "1/16 x 27")
        across = planned(tmp_path, header, asked=Asked(doubled=5)).stretches[0].across

        assert across.dents >= 1

    def test_the_reeds_that_are_there(self, tmp_path: Path) -> None:
        """With a 10 reed alone 24 to the inch is 2-2-3 in the dents, 23 1/3 to the inch."""
        loom = SHELF["looms__big"].replace("  - 12/in\n", "")
        (stretch,) = planned(tmp_path, looms__big=loom).stretches

        assert "2-2-3" == stretch.across.sleying.written
        assert pytest.approx(70 / 3 / 24 - 1) == stretch.across.sleying.off

    def test_whole_repeats(self, tmp_path: Path) -> None:
        """Stripes are whole and the borders stay: 20 a, so many times (4 b, 24 a), 4 b, 20 a."""
        header = TOWELS.replace(
            "yarn: cotton\n", "warp:\n  yarn: cotton\n  order: 20 a, 12 times (4 b, 24 a), 4 b, 20 a\n"
        )
        yarn = SHELF["yarns__cotton"] + "\ncolours:\n  a: c9b58b\n  b: 43536b"
        plan = planned(tmp_path, header, yarns__cotton=yarn)
        across = plan.stretches[0].across
        assert across.order is not None

        assert "20 a, 16 times (4 b, 24 a), 4 b, 20 a" == across.order.written(across.times)
        assert 20 + 16 * 28 + 4 + 20 == across.ends
        assert across.mirrored
        (need,) = plan.yarns
        assert ["a", "b"] == [each.named for each in need.colours]


class TestAlong:
    def test_length(self, tmp_path: Path) -> None:
        """27 in made up and two hems of 1 3/8 are 29 3/4 in washed, 32.3 on the loom: woven to 32 1/2."""
        (piece,) = planned(tmp_path).stretches[0].pieces

        assert pytest.approx(29.75 / LENGTH, rel=1e-3) == 32.295
        assert pytest.approx(32.5 * INCH) == piece.weave_mm
        assert 650 == piece.picks

    def test_what_comes_of_it(self, tmp_path: Path) -> None:
        """Woven to 32 1/2 it comes out 27.19 in long, nine times in ten within 3.3 % of the washed length."""
        (piece,) = planned(tmp_path).stretches[0].pieces
        assert piece.length is not None

        washed = 32.5 * LENGTH
        assert pytest.approx((washed - 2.75) * INCH, rel=1e-4) == piece.length.mm
        assert pytest.approx((washed * 0.9676 - 2.75) * INCH, rel=1e-3) == piece.length.low
        assert piece.length.worst < piece.length.low

    def test_hemmed_first(self, tmp_path: Path) -> None:
        """A hem sewn before the wash is washed with it, so it eats 6 % less of the washed length."""
        (piece,) = planned(tmp_path, TOWELS.replace("after washing", "before washing")).stretches[0].pieces
        wanted = (27 + 2.75 * 0.94) / LENGTH

        assert pytest.approx(-(-wanted * 4 // 1) / 4 * INCH) == piece.weave_mm

    def test_the_warp_inch_by_inch(self, tmp_path: Path) -> None:
        """Header 2, four of 32 1/2, three gaps of 1/2, 30 of waste and 6 % of take-up are 171.8 in: wind 5 yd."""
        plan = planned(tmp_path)
        lines = {line.name: line.mm / INCH for line in plan.length.lines}

        assert pytest.approx({"header": 2, "towel": 130, "gaps between them": 1.5, "loom waste": 30}) == {
            name: long for name, long in lines.items() if name != "take-up"
        }
        assert pytest.approx(130 / 0.94 - 130) == lines["take-up"]
        assert pytest.approx(171.8, abs=0.01) == plan.length.mm / INCH
        assert pytest.approx(5 * 36) == plan.length.wind_mm / INCH

    def test_fringes(self, tmp_path: Path) -> None:
        """Fringes are warp that is not woven, and take the place of gaps."""
        header = TOWELS.partition("hem:")[0].replace("count: 4", "count: 2") + "fringe: 4 in each end\n"
        lines = {line.name: line for line in planned(tmp_path, header).length.lines}

        assert pytest.approx(16 * INCH) == lines["fringes"].mm
        assert "gaps between them" not in lines


    @pytest.mark.parametrize(
        ("said", "inches"),
        [
            ("  finished: 4 in", 2 * 4 / 0.8),
            ("  style: twisted before washing\n  finished: 4 in", 2 * 4 / 0.8),
            ("  after_twist: 4 in", 2 * 4 / 0.8),
            ("  style: cut\n  finished: 4 in", 2 * 4),
            ("  allowed: 3 in each end\n  finished: 4 in", 2 * 3),
        ],
    )
    def test_a_fringe_that_is_to_be_so_long(self, tmp_path: Path, said: str, inches: float) -> None:
        """A twist takes a fifth: 4 in twisted are 5 in of warp at each end; a cut fringe takes its length."""
        header = TOWELS.partition("hem:")[0].replace("count: 4", "count: 1") + f"fringe:\n{said}\n"
        lines = {line.name: line for line in planned(tmp_path, header).length.lines}

        assert pytest.approx(inches * INCH) == lines["fringes"].mm


class TestYarn:
    def test_weight_and_cones(self, tmp_path: Path) -> None:
        """484 ends of 5 yd and 2600 picks of 21.2 in in 147.6 tex, a twentieth to spare: 560 g, 260 of them to buy."""
        plan = planned(tmp_path)
        (need,) = plan.yarns
        warp_m = 484 * 5 * 0.9144
        weft_m = 2600 * 242 / 12 * 0.0254 * 1.05
        grams = (warp_m + weft_m) * 590.541247 / 4 / 1000 * 1.05

        assert pytest.approx(559.8, abs=0.1) == grams
        assert pytest.approx(grams, rel=1e-4) == need.grams
        assert pytest.approx(grams - 300, rel=1e-3) == need.short_g
        assert 2 == need.cones
        assert pytest.approx(grams / 250 * 10, rel=1e-3) == need.cost

    def test_a_cone_has_one_colour(self, tmp_path: Path) -> None:
        """Two colours take a cone each at least, though one would hold the weight of both."""
        wound = "warp:\n  yarn: cotton\n  order: 20 a, 12 times (4 b, 24 a), 4 b, 20 a\n"
        header = TOWELS.replace("yarn: cotton\n", wound + "weft: cotton a\n").replace("count: 4", "count: 1")
        yarn = "fibre: cotton\nnumber: 8/2 cotton\nput_up: 900 g cones\ncolours:\n  a: c9b58b\n  b: 43536b"
        (need,) = planned(tmp_path, header, yarns__cotton=yarn).yarns

        assert (2, True) == (need.cones, (need.grams or 0) < 900)

    def test_nobody_knows_how_thick(self, tmp_path: Path) -> None:
        """A yarn without a number is told in yards."""
        plan = planned(tmp_path, yarns__cotton="title: Mystery\nfibre: unknown")

        assert "nobody can say: its record has no yarn number" in " ".join(Words(plan).yarn(plan.yarns[0]))


class TestRisk:
    def test_the_shortest_that_will_do(self, tmp_path: Path) -> None:
        """Where 27 in is the least, more is woven until it is short only once in twenty times."""
        (piece,) = planned(tmp_path, asked=Asked(least_mm=27 * INCH)).stretches[0].pieces
        risk = piece.risk
        assert risk is not None
        assert risk.after is not None

        assert risk.chance > 0.3
        assert risk.after <= 0.05
        assert pytest.approx((risk.more_mm or 0) * 4 / 0.94) == piece.risk_warp_mm

    def test_more_often_than_not(self, tmp_path: Path) -> None:
        """A length that can hardly come of it is not called an even chance."""
        plan = planned(tmp_path, asked=Asked(least_mm=28 * INCH))
        (piece,) = plan.stretches[0].pieces

        assert "More often than not one of them comes up under 28 in" in " ".join(
            Words(plan).expects(plan.stretches[0], piece)
        )

    def test_one_piece(self, tmp_path: Path) -> None:
        """The range of a single piece holds the piece's own scatter, which the mean of a batch has not."""
        knows = Knows(shared=0.02, own=0.02)
        many, one = (
            planned(tmp_path / count, TOWELS.replace("count: 4", f"count: {count}"), knows=knows).stretches[0].pieces[0]
            for count in ("4", "1")
        )
        ranges = [each.width.high - each.width.low for each in (one, many) if each.width is not None]
        assert pytest.approx(2**0.5, rel=0.01) == ranges[0] / ranges[1]

    def test_sample_first(self, tmp_path: Path) -> None:
        """A range of a tenth either way is no plan, and a sample comes first."""
        plan = planned(tmp_path, knows=Knows(shared=0.08))
        (piece,) = plan.stretches[0].pieces

        assert piece.useless
        said = [*Words(plan).expects(plan.stretches[0], piece)]
        assert "Sample first: what it will come to is too little known to weave by." == said[0]
        assert "nine times in ten" not in " ".join(said)

    def test_what_a_sample_does(self, tmp_path: Path) -> None:
        """It costs its 7 in undone by take-up and a new knot, and leaves as much doubt as the memory then has."""
        sample = planned(tmp_path).stretches[0].sample
        assert sample is not None

        assert pytest.approx(7 / 0.94 * INCH + 9 * INCH) == sample.warp
        assert pytest.approx(0.5) == sample.then / sample.now
        assert sample.worth
        assert sample.length is None

    def test_a_longer_sample(self, tmp_path: Path) -> None:
        """From 15 in up a sample tells of length too, and it costs its own length."""
        plan = planned(tmp_path, asked=Asked(sample_mm=16 * INCH))
        sample = plan.stretches[0].sample
        assert sample is not None
        assert sample.length is not None

        assert pytest.approx((16 / 0.94 + 9) * INCH) == sample.warp
        assert sample.length.then < 0.6 * sample.length.now
        assert "Of length it leaves ± " in Words(plan).sample(plan.stretches[0])

    def test_smaller_than_a_ribbon_shows(self, tmp_path: Path) -> None:
        """A piece of an eighth of an inch has no size that it could come up short of, and plans without a word."""
        (piece,) = planned(tmp_path, TOWELS.partition("hem:")[0].replace("18 x 27", "18 x 1/8")).stretches[0].pieces

        assert piece.risk is None


class TestNothingToPlanBy:
    @pytest.mark.parametrize(
        ("header", "said"),
        [
            ("yarn: cotton\nsett: 24/in", "nothing is planned here yet"),
            ("yarn: strange\nweave: plain weave\nplan:\n  made_up: 18 x 27", "how close is it to be set?"),
            (
                "yarn: strange\nweave: plane weave\nplan:\n  made_up: 18 x 27",
                'the weave was read as "plane weave": is it plain weave? Else, how close is it to be set?',
            ),
            ("yarn: cotton\nsett: 24/in\nplan:\n  piece: towel", "how wide is it to be?"),
            ("yarn: cotton\nsett: 24/in\nplan:\n  washed: 18 x ?", "how long is it to be?"),
            (
                "yarn: cotton\nsett: 24/in\nplan:\n  washed: 18 x 27\nstretches:\n  - name: x\n  - name: y",
                "which stretch is the plan of?",
            ),
        ],
    )
    def test_it_says_what_is_missing(self, tmp_path: Path, header: str, said: str) -> None:
        """No plan, no sett, no width: told in a sentence, with what to write."""
        with pytest.raises(NotPlanned, match=said.replace("?", r"\?")):
            planned(tmp_path, header)

    def test_the_past_is_enough(self, tmp_path: Path) -> None:
        """The sett of the last such warp stands in, and is told."""
        header = TOWELS.replace("sett: 24/in\n", "")
        past = "yarn: cotton\nweave: plain weave\nsett: 22/in\nstarted: 2024\ntitle: Last year's"
        plan = planned(tmp_path, header, warps__past=past)

        assert "The sett is as Last year's was set." in [*Words(plan).repeats(plan.stretches[0])]


def test_a_piece_of_it_was_seen(tmp_path: Path) -> None:
    """A washed sample of the very warp sharpens the rest, and is told."""
    made = journal(tmp_path)
    from journal_tools.forecast.kind import ClothKind
    from journal_tools.forecast.observed import Observed

    sample = Observed("next", "sample", ClothKind(), ())
    blind = plan_of(made, Knows(), made.warps["next"])
    seeing = plan_of(made, Knows(), made.warps["next"], seen={"width": [sample], "length": [sample]})
    first, second = (plan.stretches[0].pieces[0].width for plan in (blind, seeing))
    assert first is not None
    assert second is not None

    assert second.high - second.low < 0.6 * (first.high - first.low)
    assert "A piece of this very warp counts too." in Words(seeing).rests(seeing.stretches[0])
    assert dataclasses.replace(seeing, seen=0).ends == blind.ends
