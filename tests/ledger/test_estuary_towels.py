"""Linen hemmed before three washes, worked by hand: hemmed is compared with hemmed, cloth with cloth."""

from __future__ import annotations

import pytest

from tests.ledger.desk import LENGTH, REED, WIDTH, gaps, journal, ledger, losses, piece, plus_minus, pm

ESTUARY = ledger("estuary-towels")
SAMPLE = piece("estuary-towels", "sample")
TOWEL_1 = piece("estuary-towels", "towel 1")
TOWEL_2 = piece("estuary-towels", "towel 2")
TOWEL_3 = piece("estuary-towels", "towel 3")
TOWEL_4 = piece("estuary-towels", "towel 4")


class TestSample:
    """Not hemmed: 20 in the reed, 19 1/2 x 8 on the loom, 18 3/4 x 7 5/8 washed."""

    def test_every_loss(self) -> None:
        """`hem: none` in a piece holds for it, though the warp has a hem."""
        expected = {
            "width, reed to loom": 1 - (19 + 1 / 2) / 20,
            "width, loom to washed": 1 - (18 + 3 / 4) / (19 + 1 / 2),
            "width, reed to washed": 1 - (18 + 3 / 4) / 20,
            "length, loom to washed": 1 - (7 + 5 / 8) / 8,
        }

        assert pytest.approx(expected) == losses(SAMPLE.rows)

    def test_every_plus_minus(self) -> None:
        """So short a length is known to the tape's ± alone, which is larger than its floor."""
        expected = {
            "width, reed to loom": pm(19.5 / 20, REED / 20, WIDTH / 19.5),
            "width, loom to washed": pm(18.75 / 19.5, WIDTH / 19.5, WIDTH / 18.75),
            "width, reed to washed": pm(18.75 / 20, REED / 20, WIDTH / 18.75),
            "length, loom to washed": pm(7.625 / 8, REED / 8, REED / 7.625),
        }

        assert pytest.approx(expected) == plus_minus(SAMPLE.rows)


class TestTowel1:
    """19 1/2 x 33, 19 3/8 x 32 1/2, hemmed 19 3/8 x 29 3/4; 18 5/8 x 28 1/2, 18 3/8 x 28 1/8, 18 3/8 x 28."""

    def test_every_width(self) -> None:
        """Hems at both ends leave the width alone: it goes on from off the loom to washed."""
        expected = {
            "width, reed to loom": 1 - (19 + 1 / 2) / 20,
            "width, loom to off": 1 - (19 + 3 / 8) / (19 + 1 / 2),
            "width, off to washed 1": 1 - (18 + 5 / 8) / (19 + 3 / 8),
            "width, washed 1 to washed 2": 1 - (18 + 3 / 8) / (18 + 5 / 8),
            "width, washed 2 to washed 3": 1 - (18 + 3 / 8) / (18 + 3 / 8),
            "width, reed to washed 1": 1 - (18 + 5 / 8) / 20,
            "width, reed to washed 2": 1 - (18 + 3 / 8) / 20,
            "width, reed to washed 3": 1 - (18 + 3 / 8) / 20,
        }

        assert pytest.approx(expected) == losses(tuple(row for row in TOWEL_1.rows if row.direction == "width"))

    def test_every_length(self) -> None:
        """The hems took 2 3/4 in, which is no loss; wholes go over them as a product of the two sides."""
        before, since = (32 + 1 / 2) / 33, 1 / (29 + 3 / 4)
        expected = {
            "length, loom to off": 1 - before,
            "length, hemmed to washed 1": 1 - (28 + 1 / 2) * since,
            "length, washed 1 to washed 2": 1 - (28 + 1 / 8) / (28 + 1 / 2),
            "length, washed 2 to washed 3": 1 - 28 / (28 + 1 / 8),
            "length, loom to washed 1": 1 - before * (28 + 1 / 2) * since,
            "length, loom to washed 2": 1 - before * (28 + 1 / 8) * since,
            "length, loom to washed 3": 1 - before * 28 * since,
        }

        assert pytest.approx(expected) == losses(tuple(row for row in TOWEL_1.rows if row.direction == "length"))

    def test_every_plus_minus(self) -> None:
        """A product over the hem has the ± of all four sizes in it."""
        off, washed_1, washed_2, washed_3 = 32.5 / 33, 28.5 / 29.75, 28.125 / 29.75, 28 / 29.75
        expected = {
            "width, reed to loom": pm(19.5 / 20, REED / 20, WIDTH / 19.5),
            "width, loom to off": pm(19.375 / 19.5, WIDTH / 19.5, WIDTH / 19.375),
            "width, off to washed 1": pm(18.625 / 19.375, WIDTH / 19.375, WIDTH / 18.625),
            "width, washed 1 to washed 2": pm(18.375 / 18.625, WIDTH / 18.625, WIDTH / 18.375),
            "width, washed 2 to washed 3": pm(1, WIDTH / 18.375, WIDTH / 18.375),
            "width, reed to washed 1": pm(18.625 / 20, REED / 20, WIDTH / 18.625),
            "width, reed to washed 2": pm(18.375 / 20, REED / 20, WIDTH / 18.375),
            "width, reed to washed 3": pm(18.375 / 20, REED / 20, WIDTH / 18.375),
            "length, loom to off": pm(off, LENGTH, LENGTH),
            "length, hemmed to washed 1": pm(washed_1, LENGTH, LENGTH),
            "length, washed 1 to washed 2": pm(28.125 / 28.5, LENGTH, LENGTH),
            "length, washed 2 to washed 3": pm(28 / 28.125, LENGTH, LENGTH),
            "length, loom to washed 1": pm(off * washed_1, LENGTH, LENGTH, LENGTH, LENGTH),
            "length, loom to washed 2": pm(off * washed_2, LENGTH, LENGTH, LENGTH, LENGTH),
            "length, loom to washed 3": pm(off * washed_3, LENGTH, LENGTH, LENGTH, LENGTH),
        }

        assert pytest.approx(expected) == plus_minus(TOWEL_1.rows)

    def test_which_losses_go_over_the_hem(self) -> None:
        """The wholes of the length are joined at the hem, and no other loss is."""
        joined = [row.label for row in TOWEL_1.rows if row.joined]

        assert [f"length, loom to washed {wash}" for wash in (1, 2, 3)] == joined

    def test_the_hem_is_no_gap(self) -> None:
        """It was hemmed as it came off the loom, so nothing is missing between hemmed and washed."""
        assert {} == gaps(TOWEL_1.rows)

    def test_what_the_hems_took(self) -> None:
        """Two edges of 1 in and 3/8 in turned under take 2 3/4 in, and the tape agrees."""
        hem = TOWEL_1.laid.hem
        assert hem is not None

        assert pytest.approx((0, 2 * (1 + 3 / 8))) == tuple(each / 25.4 for each in hem.eats_mm)
        assert pytest.approx((32 + 1 / 2) - (29 + 3 / 4)) == hem.eats_mm[1] / 25.4

    def test_finished_ends_and_picks(self) -> None:
        """Its 561 picks lay in 32 1/2 in off the loom, and these went on as the hemmed towel did."""
        picks = 561 / ((32 + 1 / 2) * 28 / (29 + 3 / 4))

        assert pytest.approx(360 / (18 + 3 / 8)) == (TOWEL_1.counts.ends_per_m or 0) * 0.0254
        assert pytest.approx(picks) == (TOWEL_1.counts.picks_per_m or 0) * 0.0254
        assert TOWEL_1.counts.over_hem

    def test_the_weight(self) -> None:
        """The yarn in it should weigh 128 g, and it weighs 125; a hemmed towel has no plain area."""
        assert TOWEL_1.mass is not None
        tex = 496_054.648 / 2400  # 16/2 linen: 16 x 300 / 2 yd/lb, ASTM D2260
        warp = 360 * (33 * 0.0254) / (1 - 0.06)
        weft = 561 * (20 * 0.0254) * 1.05

        assert pytest.approx((warp + weft) * tex / 1000) == TOWEL_1.mass.bought
        assert 128 == round(TOWEL_1.mass.washed)
        assert 125 == TOWEL_1.mass.weighed
        assert not TOWEL_1.mass.far
        assert TOWEL_1.mass.areal_mass is None


class TestTheOthers:
    """Hemmed 19 3/8 x 29 5/8 and washed 18 5/8 x 28 3/8; two more with a washed size alone."""

    def test_towel_2(self) -> None:
        """Its length begins at the hem: no loss goes back to the loom, where nobody measured."""
        expected = {
            "width, reed to hemmed": 1 - (19 + 3 / 8) / 20,
            "width, hemmed to washed": 1 - (18 + 5 / 8) / (19 + 3 / 8),
            "width, reed to washed": 1 - (18 + 5 / 8) / 20,
            "length, hemmed to washed": 1 - (28 + 3 / 8) / (29 + 5 / 8),
        }

        assert pytest.approx(expected) == losses(TOWEL_2.rows)

    def test_towel_2_plus_minus(self) -> None:
        """The ± of its four losses."""
        expected = {
            "width, reed to hemmed": pm(19.375 / 20, REED / 20, WIDTH / 19.375),
            "width, hemmed to washed": pm(18.625 / 19.375, WIDTH / 19.375, WIDTH / 18.625),
            "width, reed to washed": pm(18.625 / 20, REED / 20, WIDTH / 18.625),
            "length, hemmed to washed": pm(28.375 / 29.625, LENGTH, LENGTH),
        }

        assert pytest.approx(expected) == plus_minus(TOWEL_2.rows)

    def test_towel_2_gaps(self) -> None:
        """It was measured as it was hemmed, off the loom; on the loom it was not."""
        assert {
            "width, reed to hemmed": ["on the loom"],
            "width, reed to washed": ["on the loom"],
        } == gaps(TOWEL_2.rows)

    def test_towels_3_and_4(self) -> None:
        """A washed size alone gives one loss, of the width."""
        expected = {"width, reed to washed": 1 - (18 + 1 / 2) / 20}

        assert pytest.approx(expected) == losses(TOWEL_3.rows)
        assert pytest.approx(expected) == losses(TOWEL_4.rows)
        assert (
            pytest.approx({"width, reed to washed": pm(18.5 / 20, REED / 20, WIDTH / 18.5)})
            == plus_minus(TOWEL_3.rows)
            == plus_minus(TOWEL_4.rows)
        )
        assert {"width, reed to washed": ["on the loom", "off the loom"]} == gaps(TOWEL_3.rows)

    def test_finished_ends_and_picks(self) -> None:
        """Ends of every piece; no picks where no length of unhemmed cloth was ever measured."""
        ends = {each.name: (each.counts.ends_per_m or 0) * 0.0254 for each in ESTUARY.pieces}
        picks = {each.name for each in ESTUARY.pieces if each.counts.picks_per_m is not None}
        expected = {
            "sample": 360 / (18 + 3 / 4),
            "towel 1": 360 / (18 + 3 / 8),
            "towel 2": 360 / (18 + 5 / 8),
            "towel 3": 360 / (18 + 1 / 2),
            "towel 4": 360 / (18 + 1 / 2),
        }

        assert pytest.approx(expected) == ends
        assert {"towel 1"} == picks


class TestAccount:
    """5 1/2 yd wound."""

    def test_every_line(self) -> None:
        """The sample cost 8 in of cloth and 10 in of re-tying."""
        assert ESTUARY.account is not None
        expected = {
            "front": 6.0,
            "header": 2.0,
            "gaps": 3 * (1 / 2),
            "re-tied after sample": 10.0,
            "thrums": 32.0,
            "sample": 8.0,
            "towel 1": 33.0,
        }

        assert pytest.approx(expected) == {line.name: line.mm / 25.4 for line in ESTUARY.account.lines}

    def test_the_remainder(self) -> None:
        """The last line still holds three towels."""
        assert ESTUARY.account is not None

        assert pytest.approx(5.5 * 36 - (6 + 2 + 1.5 + 10 + 32) - (8 + 33)) == ESTUARY.account.remainder_mm / 25.4
        assert ("towel 2", "towel 3", "towel 4") == ESTUARY.account.unmeasured
        assert ESTUARY.account.take_up is None


class TestTheWarp:
    """What the five pieces say together."""

    def test_means(self) -> None:
        """Pieces are averaged over the same wash: a single wash is wash 1."""
        means = losses(ESTUARY.warp_rows)
        widths = [1 - 18.75 / 20, 1 - 18.625 / 20, 1 - 18.625 / 20, 1 - 18.5 / 20, 1 - 18.5 / 20]
        lengths = [1 - 7.625 / 8, 1 - (32.5 / 33) * (28.5 / 29.75)]
        first_wash = next(row for row in ESTUARY.warp_rows if row.span == ("width", "in_reed", "washed 1"))

        assert pytest.approx(sum(widths) / 5) == first_wash.loss
        assert 5 == first_wash.number
        assert pytest.approx(sum(lengths) / 2) == means["length, loom to washed"]
        assert pytest.approx(1 - 18.375 / 20) == means["width, reed to washed 3"]

    def test_spread(self) -> None:
        """The spread is the sample standard deviation between the pieces."""
        row = next(row for row in ESTUARY.warp_rows if row.span == ("width", "in_reed", "washed 1"))
        widths = [6.25, 6.875, 6.875, 7.5, 7.5]  # per cent
        mean = sum(widths) / 5
        spread = (sum((each - mean) ** 2 for each in widths) / 4) ** 0.5

        assert pytest.approx(spread / 100) == row.spread

    def test_what_stands_for_it(self) -> None:
        """The whole loss that stands for a warp is to its last wash."""
        width, length = ESTUARY.whole("width"), ESTUARY.whole("length")

        assert "width, reed to washed 3" == (width.label if width else None)
        assert "length, loom to washed 3" == (length.label if length else None)


def test_the_first_wash_is_dry_and_pressed() -> None:
    """How a size was taken stays beside it."""
    first = journal().warps["estuary-towels"].pieces[1].washed[0]

    assert ("dry", True) == (first.dry, first.pressed)
