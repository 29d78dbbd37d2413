"""What a piece should weigh, from its threads, beside what it weighed; and finished ends and picks."""

from __future__ import annotations

from pathlib import Path

import pytest

from journal_tools.ledger import PieceLedger
from journal_tools.ledger.mass import Reckoned
from tests.ledger.desk import woven

TOWEL = """
yarn: cotton
warp:
  ends: 400
in_reed: 20
on_loom: 19 x 30
washed: 18 x 28
picks: 600
"""
COTTON = "fibre: cotton\nnumber: 8/2 cotton"
TEX = 590.541247 / (8 / 2)  # ASTM D2260: tex = 590.541 / Ne, and 8/2 is Ne 4


def piece(folder: Path, header: str, **yarns: str) -> PieceLedger:
    """The first piece of a warp in these yarns."""
    made = {f"yarns__{name}": text for name, text in (yarns or {"cotton": COTTON}).items()}
    return woven(folder, header, **made).pieces[0]


def mass(folder: Path, header: str, **yarns: str) -> Reckoned:
    """What it should weigh."""
    found = piece(folder, header, **yarns).mass
    assert found is not None
    return found


def grams(
    ends: float, end_in: float, picks: float, pick_in: float, warp_tex: float = TEX, weft_tex: float = TEX
) -> float:
    """Length of every thread in metres, times g/km."""
    return (ends * end_in * 0.0254 * warp_tex + picks * pick_in * 0.0254 * weft_tex) / 1000


class TestWeight:
    """Ends as long as the cloth on the loom undone by take-up, picks as long as the width in the reed and 5 %."""

    def test_a_towel(self, tmp_path: Path) -> None:
        """Where nothing tells take-up it is 6 %, the middle of common practice."""
        expected = grams(400, 30 / (1 - 0.06), 600, 20 * 1.05)
        found = mass(tmp_path, TOWEL)

        assert pytest.approx(expected, rel=1e-6) == found.bought
        assert pytest.approx(expected / (18 * 28 * 0.0254**2), rel=1e-6) == found.areal_mass
        assert found.areal_mass_weighed is None

    def test_take_up_that_was_measured(self, tmp_path: Path) -> None:
        """Marks on the warp are used in its place."""
        header = TOWEL.replace("ends: 400", "ends: 400\n  wound: 2 yd\n  marked: 36 in wove 33 in")

        assert pytest.approx(grams(400, 30 / (33 / 36), 600, 21), rel=1e-6) == mass(tmp_path, header).bought

    def test_take_up_that_is_a_bound(self, tmp_path: Path) -> None:
        """What an account says at most holds all that went astray, and is no take-up to weigh by."""
        header = TOWEL.replace("ends: 400", "ends: 400\n  wound: 2 yd") + "where_it_went:\n  tie-on: 6 in\n"
        account = woven(tmp_path / "a", header, yarns__cotton=COTTON).account

        assert account is not None
        assert account.take_up is not None
        assert ("at most", True) == (account.take_up.basis, account.take_up.loss > 0.2)
        assert pytest.approx(grams(400, 30 / (1 - 0.06), 600, 21), rel=1e-6) == mass(tmp_path / "b", header).bought

    def test_a_beat_for_a_count(self, tmp_path: Path) -> None:
        """20 picks to the inch on the loom over 30 in are 600 picks."""
        assert (
            mass(tmp_path / "a", TOWEL).bought
            == mass(tmp_path / "b", TOWEL.replace("picks: 600", "beat: 20/in")).bought
        )

    def test_a_measured_yarn(self, tmp_path: Path) -> None:
        """A measured yards a pound wins over the label."""
        found = mass(tmp_path, TOWEL, cotton=COTTON + "\nyield: 3000 yd/lb")

        assert pytest.approx(mass(tmp_path, TOWEL).bought * (496_054.648 / 3000) / TEX, rel=1e-6) == found.bought

    def test_yarns_by_their_threads(self, tmp_path: Path) -> None:
        """380 fine ends and 20 thick ones count by their numbers, and so do the picks of an order."""
        header = (
            "yarns:\n  fine: fine\n  thick: thick\nwarp:\n  order: 190 fine, 20 thick, 190 fine\nweft: fine\n"
            "in_reed: 20\non_loom: 19 x 30\npicks: 600"
        )
        yarns = {"fine": "number: 100 tex", "thick": "number: 1000 tex"}
        mean = (380 * 100 + 20 * 1000) / 400

        assert (
            pytest.approx(grams(400, 30 / 0.94, 600, 21, mean, 100), rel=1e-6) == mass(tmp_path, header, **yarns).bought
        )

    def test_a_hem_s_weft_is_left_out(self, tmp_path: Path) -> None:
        """Sewing thread in the hems is no tenth of the weft."""
        header = TOWEL + "weft:\n  - yarn: cotton\n  - yarn: thread\n    role: hem\n"
        found = mass(tmp_path, header, cotton=COTTON, thread="number: 20 tex")

        assert pytest.approx(mass(tmp_path / "b", TOWEL).bought) == found.bought

    @pytest.mark.parametrize(
        "missing", ["in_reed: 20\n", "on_loom: 19 x 30\n", "picks: 600\n", "  ends: 400\n", "yarn: cotton\n"]
    )
    def test_missing_is_missing(self, tmp_path: Path, missing: str) -> None:
        """Without a width in the reed, a length on the loom, picks, ends or yarn, nothing is reckoned."""
        header = TOWEL.replace(missing, "").replace("warp:\nin_reed", "in_reed")

        assert piece(tmp_path, header).mass is None

    def test_tabby_not_counted(self, tmp_path: Path) -> None:
        """A count that leaves the tabby out is no count of the picks."""
        assert piece(tmp_path, TOWEL + "tabby: not counted").mass is None

    def test_a_yarn_nobody_knows(self, tmp_path: Path) -> None:
        """A yarn without a number has no weight to the metre."""
        assert piece(tmp_path, TOWEL, cotton="fibre: cotton").mass is None


class TestWashedOut:
    """Oil, gum and what grey linen loses are allowed for, and so are 10 % and the weather's 3 %."""

    @pytest.mark.parametrize(
        ("said", "least", "most"),
        [("", 0, 0), ("in_oil: yes", 0.08, 0.15), ("raw: yes", 0.20, 0.25), ("grey: yes", 0.03, 0.08)],
    )
    def test_bounds(self, tmp_path: Path, said: str, least: float, most: float) -> None:
        """Washed weight lies between what is lost at most, less 13 %, and at least, plus 13 %."""
        found = mass(tmp_path, TOWEL, cotton=f"{COTTON}\n{said}")
        bought = grams(400, 30 / 0.94, 600, 21)

        assert pytest.approx((bought * (1 - most) * 0.87, bought * (1 - least) * 1.13), rel=1e-6) == (
            found.low,
            found.high,
        )
        assert pytest.approx(bought * (1 - (least + most) / 2), rel=1e-6) == found.washed

    def test_weighed_in_oil(self, tmp_path: Path) -> None:
        """A piece weighed before its wash still has its oil."""
        found = mass(tmp_path, TOWEL + "weight:\n  in_oil: 150 g", cotton=f"{COTTON}\nin_oil: yes")

        assert pytest.approx((found.bought * 0.87, found.bought * 1.13)) == (found.low, found.high)
        assert 150 == found.weighed

    def test_only_one_system(self, tmp_path: Path) -> None:
        """Woollen weft on a cotton warp: only the weft loses its oil."""
        header = TOWEL + "weft: wool"
        found = mass(tmp_path, header, cotton=COTTON, wool="number: 250 tex\nin_oil: yes")
        warp, weft = grams(400, 30 / 0.94, 0, 0), grams(0, 0, 600, 21, TEX, 250)

        assert pytest.approx(warp + weft * (1 - 0.115), rel=1e-6) == found.washed

    def test_two_yarns_in_one_system(self, tmp_path: Path) -> None:
        """Of a warp half in oil by its weight, the first wash takes half as much."""
        yarns = "yarns:\n  a: oily\n  b: clean\nwarp:\n  order: 100 a, 300 b\nweft: b"
        header = f"{yarns}\nin_reed: 20\non_loom: 19 x 30\npicks: 1"
        found = mass(tmp_path, header, oily="number: 300 tex\nin_oil: yes", clean="number: 100 tex")
        oily, clean = grams(100, 30 / 0.94, 0, 0, 300), grams(300, 30 / 0.94, 1, 21, 100, 100)

        assert pytest.approx(oily + clean) == found.bought
        assert pytest.approx(oily * (1 - 0.115) + clean) == found.washed
        assert pytest.approx((oily * (1 - 0.15) + clean) * 0.87) == found.low
        assert pytest.approx((oily * (1 - 0.08) + clean) * 1.13) == found.high


class TestFar:
    """The scale beside the reckoning."""

    @pytest.mark.parametrize(("share", "far"), [(0.86, True), (0.88, False), (1, False), (1.12, False), (1.14, True)])
    def test_far(self, tmp_path: Path, share: float, far: bool) -> None:
        """Within 13 % it is no surprise."""
        bought = grams(400, 30 / 0.94, 600, 21)

        assert far is mass(tmp_path, f"{TOWEL}weight: {bought * share:.3f} g").far

    def test_not_weighed(self, tmp_path: Path) -> None:
        """A piece that was never on the scale is not far off."""
        assert not mass(tmp_path, TOWEL).far

    def test_grams_to_the_square_metre(self, tmp_path: Path) -> None:
        """125 g over 18 x 28 in."""
        found = mass(tmp_path, TOWEL + "weight: 125 g")

        assert pytest.approx(125 / (18 * 0.0254 * 28 * 0.0254)) == found.areal_mass_weighed

    def test_no_area_of_two_moments(self, tmp_path: Path) -> None:
        """A width after the second wash and a length after the first are no area of one cloth."""
        assert mass(tmp_path, TOWEL + "washed 2: 17 1/2").areal_mass is None
        assert mass(tmp_path / "b", TOWEL.replace("washed: 18 x 28", "off_loom: 18 x 28")).areal_mass is None


class TestCounts:
    """Finished epi and ppi: ends over washed width, picks over washed length."""

    def test_both(self, tmp_path: Path) -> None:
        """400 ends in 18 in, 600 picks in 28 in."""
        counts = piece(tmp_path, TOWEL).counts

        assert pytest.approx((400 / 18, 600 / 28)) == (
            (counts.ends_per_m or 0) * 0.0254,
            (counts.picks_per_m or 0) * 0.0254,
        )

    def test_the_last_wash(self, tmp_path: Path) -> None:
        """After several washes the last one counts."""
        counts = piece(tmp_path, TOWEL + "washed 2: 17 1/2 x 27").counts

        assert pytest.approx((400 / 17.5, 600 / 27)) == (
            (counts.ends_per_m or 0) * 0.0254,
            (counts.picks_per_m or 0) * 0.0254,
        )

    def test_not_before_the_wash(self, tmp_path: Path) -> None:
        """Cloth that has not been washed is not finished."""
        counts = piece(tmp_path, TOWEL.replace("washed: 18 x 28", "off_loom: 18 3/4 x 29")).counts

        assert (None, None) == (counts.ends_per_m, counts.picks_per_m)

    def test_a_density_is_no_count(self, tmp_path: Path) -> None:
        """Picks to the inch on the loom are not picks counted: how they close up is not known from them."""
        assert piece(tmp_path, TOWEL.replace("picks: 600", "beat: 20/in")).counts.picks_per_m is None

    def test_on_from_marks(self, tmp_path: Path) -> None:
        """Ends over the width off the loom go on by what the marks lost."""
        header = "yarn: cotton\nends: 400\npicks: 600\noff_loom: 19 x 30\nmarks: 10 x 10\nwashed: 9 x 9 1/2"
        counts = piece(tmp_path, header).counts

        assert pytest.approx((400 / (19 * 0.9), 600 / (30 * 0.95))) == (
            (counts.ends_per_m or 0) * 0.0254,
            (counts.picks_per_m or 0) * 0.0254,
        )

    def test_ends_from_the_order(self, tmp_path: Path) -> None:
        """Ends are counted in the order as wound, with two floating selvedges; two warps add up."""
        header = (
            "warp:\n  - order: 10 times (4 red, 6 blue)\n    floating_selvedges: red\n"
            "  - ends: 48\n    role: supplementary\nwashed: 10 x 20"
        )
        counts = piece(tmp_path, header).counts

        assert pytest.approx((100 + 2 + 48) / 10) == (counts.ends_per_m or 0) * 0.0254
