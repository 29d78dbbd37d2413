"""Napkins and bookmarks on one warp, worked by hand: two stretches, two washes, hems sewn last, a re-tie."""

from __future__ import annotations

import pytest

from tests.ledger.desk import LENGTH, REED, WIDTH, gaps, journal, ledger, losses, piece, plus_minus, pm

GANNET = ledger("gannet-napkins")
NAPKIN_1 = piece("gannet-napkins", "napkin 1")
NAPKINS = piece("gannet-napkins", "napkins 2-6")
BOOKMARKS = piece("gannet-napkins", "bookmarks 1-8")

SLEYED = 21 + 3 / 8


class TestNapkin1:
    """21 3/8 in the reed; 20 1/2 x 21, 20 3/8 x 20 3/4, then 19 3/4 x 20 and 19 5/8 x 19 7/8."""

    def test_every_loss(self) -> None:
        """Four states and two washes give every step, and a whole loss to each wash."""
        expected = {
            "width, reed to loom": 1 - (20 + 1 / 2) / SLEYED,
            "width, loom to off": 1 - (20 + 3 / 8) / (20 + 1 / 2),
            "width, off to washed 1": 1 - (19 + 3 / 4) / (20 + 3 / 8),
            "width, washed 1 to washed 2": 1 - (19 + 5 / 8) / (19 + 3 / 4),
            "width, reed to washed 1": 1 - (19 + 3 / 4) / SLEYED,
            "width, reed to washed 2": 1 - (19 + 5 / 8) / SLEYED,
            "length, loom to off": 1 - (20 + 3 / 4) / 21,
            "length, off to washed 1": 1 - 20 / (20 + 3 / 4),
            "length, washed 1 to washed 2": 1 - (19 + 7 / 8) / 20,
            "length, loom to washed 1": 1 - 20 / 21,
            "length, loom to washed 2": 1 - (19 + 7 / 8) / 21,
        }

        assert pytest.approx(expected) == losses(NAPKIN_1.rows)

    def test_every_plus_minus(self) -> None:
        """Each ± is later/earlier x the root of the squared relative ± of its two ends."""
        expected = {
            "width, reed to loom": pm(20.5 / SLEYED, REED / SLEYED, WIDTH / 20.5),
            "width, loom to off": pm(20.375 / 20.5, WIDTH / 20.5, WIDTH / 20.375),
            "width, off to washed 1": pm(19.75 / 20.375, WIDTH / 20.375, WIDTH / 19.75),
            "width, washed 1 to washed 2": pm(19.625 / 19.75, WIDTH / 19.75, WIDTH / 19.625),
            "width, reed to washed 1": pm(19.75 / SLEYED, REED / SLEYED, WIDTH / 19.75),
            "width, reed to washed 2": pm(19.625 / SLEYED, REED / SLEYED, WIDTH / 19.625),
            "length, loom to off": pm(20.75 / 21, LENGTH, LENGTH),
            "length, off to washed 1": pm(20 / 20.75, LENGTH, LENGTH),
            "length, washed 1 to washed 2": pm(19.875 / 20, LENGTH, LENGTH),
            "length, loom to washed 1": pm(20 / 21, LENGTH, LENGTH),
            "length, loom to washed 2": pm(19.875 / 21, LENGTH, LENGTH),
        }

        assert pytest.approx(expected) == plus_minus(NAPKIN_1.rows)

    def test_nothing_was_left_out(self) -> None:
        """Every state was measured, so no loss goes over a gap."""
        assert {} == gaps(NAPKIN_1.rows)

    def test_the_whole_is_the_product_of_the_steps(self) -> None:
        """What is left of each step multiplies: losses are never added up."""
        lost = losses(NAPKIN_1.rows)
        left = (
            (1 - lost["width, reed to loom"])
            * (1 - lost["width, loom to off"])
            * (1 - lost["width, off to washed 1"])
            * (1 - lost["width, washed 1 to washed 2"])
        )

        assert pytest.approx(1 - left) == lost["width, reed to washed 2"]

    def test_finished_ends_and_picks(self) -> None:
        """Ends over washed width, floating selvedges among them; picks over washed length."""
        ends = 20 + 12 * (4 + 24) + 4 + 20 + 2

        assert 382 == ends
        assert pytest.approx(ends / (19 + 5 / 8)) == (NAPKIN_1.counts.ends_per_m or 0) * 0.0254
        assert pytest.approx(378 / (19 + 7 / 8)) == (NAPKIN_1.counts.picks_per_m or 0) * 0.0254

    def test_made_up_against_plan(self) -> None:
        """18 1/8 x 18 3/8 was made up where 18 x 18 was planned, and is in no loss."""
        lines = {line.direction: line for line in NAPKIN_1.sizes if line.state.key == "made_up"}

        assert pytest.approx(1 / 8 * 25.4) == lines["width"].off_mm
        assert pytest.approx(3 / 8 * 25.4) == lines["length"].off_mm
        assert [] == [row for row in NAPKIN_1.rows if "made_up" in (row.first.key, row.last.key)]


class TestNapkins2To6:
    """Five napkins written down as one: 19 3/4 x 19 7/8, then 19 5/8 x 19 3/4, and nothing before."""

    def test_every_loss(self) -> None:
        """The width in the reed is the warp's; the length has no size before the first wash."""
        expected = {
            "width, reed to washed 1": 1 - (19 + 3 / 4) / SLEYED,
            "width, washed 1 to washed 2": 1 - (19 + 5 / 8) / (19 + 3 / 4),
            "width, reed to washed 2": 1 - (19 + 5 / 8) / SLEYED,
            "length, washed 1 to washed 2": 1 - (19 + 3 / 4) / (19 + 7 / 8),
        }

        assert pytest.approx(expected) == losses(NAPKINS.rows)

    def test_every_plus_minus(self) -> None:
        """The ± of the five is the ± of one: they were written down as alike."""
        expected = {
            "width, reed to washed 1": pm(19.75 / SLEYED, REED / SLEYED, WIDTH / 19.75),
            "width, washed 1 to washed 2": pm(19.625 / 19.75, WIDTH / 19.75, WIDTH / 19.625),
            "width, reed to washed 2": pm(19.625 / SLEYED, REED / SLEYED, WIDTH / 19.625),
            "length, washed 1 to washed 2": pm(19.75 / 19.875, LENGTH, LENGTH),
        }

        assert pytest.approx(expected) == plus_minus(NAPKINS.rows)

    def test_gaps(self) -> None:
        """Reed to washed goes over two states that nobody measured."""
        expected = {
            "width, reed to washed 1": ["on the loom", "off the loom"],
            "width, reed to washed 2": ["on the loom", "off the loom"],
        }

        assert expected == gaps(NAPKINS.rows)

    def test_five_pieces(self) -> None:
        """`napkins 2-6` are five, and each counts in an average."""
        mean = next(row for row in GANNET.stretch_rows if row.label == "length, washed 1 to washed 2")
        one, alike = 1 - (19 + 7 / 8) / 20, 1 - (19 + 3 / 4) / (19 + 7 / 8)

        assert {"napkins", "bookmarks"} == {row.stretch for row in GANNET.stretch_rows}
        assert {""} == {row.stretch for row in GANNET.warp_rows}
        assert 5 == NAPKINS.number
        assert 6 == mean.number
        assert pytest.approx((one + 5 * alike) / 6) == mean.loss

    def test_finished_ends_and_picks(self) -> None:
        """Ends are the warp's; picks were counted in napkin 1 alone."""
        assert pytest.approx(382 / (19 + 5 / 8)) == (NAPKINS.counts.ends_per_m or 0) * 0.0254
        assert NAPKINS.counts.picks_per_m is None


class TestBookmarks:
    """48 ends from the middle, 2 5/8 in the reed, 2 1/2 x 7 5/8 on the loom, 2 1/8 x 7 washed."""

    def test_every_loss(self) -> None:
        """A tail that is re-threaded has its own width in the reed."""
        expected = {
            "width, reed to loom": 1 - (2 + 1 / 2) / (2 + 5 / 8),
            "width, loom to washed": 1 - (2 + 1 / 8) / (2 + 1 / 2),
            "width, reed to washed": 1 - (2 + 1 / 8) / (2 + 5 / 8),
            "length, loom to washed": 1 - 7 / (7 + 5 / 8),
        }

        assert pytest.approx(expected) == losses(BOOKMARKS.rows)

    def test_every_plus_minus(self) -> None:
        """An eighth is 5 % of so narrow a cloth: the width of a bookmark tells little."""
        expected = {
            "width, reed to loom": pm(2.5 / 2.625, REED / 2.625, WIDTH / 2.5),
            "width, loom to washed": pm(2.125 / 2.5, WIDTH / 2.5, WIDTH / 2.125),
            "width, reed to washed": pm(2.125 / 2.625, REED / 2.625, WIDTH / 2.125),
            # A length of 7 in has a floor of 0.058 in; 2 d / √12 is 0.072 in, which is larger.
            "length, loom to washed": pm(7 / 7.625, REED / 7.625, REED / 7),
        }

        assert pytest.approx(expected) == plus_minus(BOOKMARKS.rows)

    def test_what_is_learned(self) -> None:
        """Widths of bookmarks were pulled in on purpose; their lengths and the napkins' widths teach."""
        taught = {row.label for row in BOOKMARKS.rows if row.learn}
        reasons = {row.reason for row in BOOKMARKS.rows if not row.learn}

        assert {"length, loom to washed"} == taught
        assert {"pulled in on purpose"} == reasons
        assert all(row.learn for row in NAPKIN_1.rows + NAPKINS.rows)

    def test_finished_ends(self) -> None:
        """48 of the warp's ends are in it."""
        assert pytest.approx(48 / (2 + 1 / 8)) == (BOOKMARKS.counts.ends_per_m or 0) * 0.0254


class TestAccount:
    """7 1/2 yd wound."""

    def test_every_line(self) -> None:
        """The losses as written, cloth at its length on the loom, a fringe of 2 in at both ends of eight."""
        assert GANNET.account is not None
        expected = {
            "front tie-on": 5.0,
            "header": 2.0,
            "gaps between napkins": 5 * (1 / 2),
            "cut off and re-tied after napkin 6": 9.0,
            "thrums": 22.0,
            "napkin 1": 21.0,
            "bookmarks 1-8": 8 * (7 + 5 / 8),
            "fringes": 8 * 2 * 2.0,
        }

        assert pytest.approx(expected) == {line.name: line.mm / 25.4 for line in GANNET.account.lines}

    def test_the_remainder(self) -> None:
        """What is left holds the five napkins that nobody measured, so take-up is not reckoned."""
        assert GANNET.account is not None
        left = 7.5 * 36 - (5 + 2 + 2.5 + 9 + 22) - (21 + 61) - 32

        assert pytest.approx(left) == GANNET.account.remainder_mm / 25.4
        assert pytest.approx(115.5) == left
        assert ("napkins 2-6",) == GANNET.account.unmeasured
        assert GANNET.account.take_up is None


def test_the_yarn_in_napkin_1() -> None:
    """382 ends of 20/2 linen, 21 in and 6 % take-up long, and 378 picks of 1.05 times the width in the reed."""
    assert NAPKIN_1.mass is not None
    tex = 496_054.648 / 3000  # 20/2 linen: 20 x 300 / 2 yd/lb, ASTM D2260
    warp = 382 * (21 * 0.0254) / (1 - 0.06)
    weft = 378 * (SLEYED * 0.0254) * 1.05
    grams = (warp + weft) * tex / 1000

    assert pytest.approx(grams) == NAPKIN_1.mass.bought
    assert pytest.approx(grams / (19.625 * 19.875 * 0.0254**2)) == NAPKIN_1.mass.areal_mass
    assert pytest.approx(tex) == float(journal().yarns["linen-20-2"].tex or 0)
