"""Which sizes are compared with which: gaps, washes, hems, marks, opened widths, fulling."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.ledger.desk import gaps, losses, the_row, woven


class TestGaps:
    """Missing is missing: a step goes over what nobody measured, and says so."""

    def test_reed_to_washed(self, tmp_path: Path) -> None:
        """Two sizes give one loss that goes over the loom and off the loom."""
        made = woven(tmp_path, "in_reed: 20\nwashed: 18 x 30")

        assert {"width, reed to washed": pytest.approx(0.1)} == losses(made.rows)
        assert {"width, reed to washed": ["on the loom", "off the loom"]} == gaps(made.rows)

    def test_a_wash_that_was_not_measured(self, tmp_path: Path) -> None:
        """`washed 3` after `washed 1` goes over the second wash."""
        made = woven(tmp_path, "off_loom: 20 x 33\nwashed 1: 19 x 31\nwashed 3: 18 x 30")

        assert pytest.approx(1 - 18 / 19) == losses(made.rows)["width, washed 1 to washed 3"]
        assert ["washed 2"] == gaps(made.rows)["width, washed 1 to washed 3"]

    def test_the_first_wash_of_a_later_one(self, tmp_path: Path) -> None:
        """Off the loom to `washed 2` goes over wash 1; one wash without a number goes over none."""
        later = woven(tmp_path / "a", "off_loom: 20 x 33\nwashed 2: 18 x 30")
        alone = woven(tmp_path / "b", "off_loom: 20 x 33\nwashed: 18 x 30")

        assert ["washed 1"] == gaps(later.rows)["width, off to washed 2"]
        assert {} == gaps(alone.rows)

    def test_one_side_alone(self, tmp_path: Path) -> None:
        """`? x 30 1/8` has no width, and `19 3/8` no length; nothing is filled in."""
        made = woven(tmp_path, "in_reed: 20\non_loom: 19 3/8\nwashed: ? x 30 1/8")

        assert {"width, reed to loom": pytest.approx(1 - 19.375 / 20)} == losses(made.rows)

    def test_nothing_to_compare(self, tmp_path: Path) -> None:
        """A single size is a size and no loss."""
        made = woven(tmp_path, "title: Old curtain\nwashed: 18 x 30")

        assert () == made.rows
        assert [18 * 25.4, 30 * 25.4] == [pytest.approx(line.measured_mm) for line in made.pieces[0].sizes]


class TestWashes:
    """A list is wash 1, 2, …; `washed 2` names one; wholes name the wash they end at."""

    def test_a_list(self, tmp_path: Path) -> None:
        """Three washes give three wholes and the steps between them."""
        made = woven(tmp_path, "in_reed: 20\nwashed:\n  - 18 x 30\n  - 17 1/2 x 29 1/2\n  - 17 1/2 x 29 1/4")

        assert {
            "width, reed to washed 1": pytest.approx(1 - 18 / 20),
            "width, washed 1 to washed 2": pytest.approx(1 - 17.5 / 18),
            "width, washed 2 to washed 3": pytest.approx(0),
            "width, reed to washed 2": pytest.approx(1 - 17.5 / 20),
            "width, reed to washed 3": pytest.approx(1 - 17.5 / 20),
            "length, washed 1 to washed 2": pytest.approx(1 - 29.5 / 30),
            "length, washed 2 to washed 3": pytest.approx(1 - 29.25 / 29.5),
            "length, washed 1 to washed 3": pytest.approx(1 - 29.25 / 30),
        } == losses(made.rows)

    def test_washed_and_washed_2(self, tmp_path: Path) -> None:
        """`washed:` beside `washed 2:` is wash 1."""
        made = woven(tmp_path, "in_reed: 20\nwashed: 18 x 30\nwashed 2: 17 1/2 x 29 1/2")

        assert pytest.approx(1 - 17.5 / 18) == losses(made.rows)["width, washed 1 to washed 2"]

    def test_the_only_wash_compares_with_wash_1(self, tmp_path: Path) -> None:
        """A piece washed once and a piece washed twice share the first wash."""
        header = "in_reed: 20\npieces:\n  - washed: 18 x 30\n  - washed:\n      - 18 1/2 x 30\n      - 18 x 30"
        means = [row for row in woven(tmp_path, header).warp_rows if row.span == ("width", "in_reed", "washed 1")]

        assert [(2, pytest.approx(1 - 18.25 / 20))] == [(row.number, row.loss) for row in means]


class TestHems:
    """A hem takes cloth away: sizes before it and after it do not compare."""

    def test_no_word_about_the_hem(self, tmp_path: Path) -> None:
        """Where nobody says which edges, neither direction is compared across `hemmed:`."""
        made = woven(tmp_path, "on_loom: 20 x 33\noff_loom: 19 1/2 x 32 1/2\nhemmed: 19 x 29\nwashed: 18 x 28")

        assert {
            "width, loom to off": pytest.approx(1 - 19.5 / 20),
            "width, hemmed to washed": pytest.approx(1 - 18 / 19),
            "width, loom to washed": pytest.approx(1 - (19.5 / 20) * (18 / 19)),
            "length, loom to off": pytest.approx(1 - 32.5 / 33),
            "length, hemmed to washed": pytest.approx(1 - 28 / 29),
            "length, loom to washed": pytest.approx(1 - (32.5 / 33) * (28 / 29)),
        } == losses(made.rows)

    def test_one_side_of_the_hem(self, tmp_path: Path) -> None:
        """Without the size just before the hem there is no whole over it."""
        made = woven(tmp_path, "on_loom: 20 x 33\nhem: 1 in\nhemmed: 19 x 29\nwashed: 18 x 28")
        lengths = {label: loss for label, loss in losses(made.rows).items() if label.startswith("length")}

        assert {"length, hemmed to washed": pytest.approx(1 - 28 / 29)} == lengths

    def test_all_four_edges(self, tmp_path: Path) -> None:
        """A hem on all four edges parts the widths as well."""
        header = "off_loom: 20 x 33\nhem:\n  depth: 1 in\n  edges: all four\nhemmed: 18 x 31\nwashed: 17 x 29"
        made = woven(tmp_path, header)

        assert pytest.approx(1 - 17 / 18) == losses(made.rows)["width, hemmed to washed"]
        assert not [row for row in made.rows if row.label == "width, off to hemmed"]

    def test_sides(self, tmp_path: Path) -> None:
        """Hems at the sides part the widths and leave the lengths alone."""
        header = "off_loom: 20 x 33\nhem:\n  depth: 1 in\n  edges: sides\nhemmed: 18 x 33\nwashed: 17 x 31"

        assert {
            "width, hemmed to washed": pytest.approx(1 - 17 / 18),
            "width, off to washed": pytest.approx(1 - 1 * 17 / 18),
            "length, off to washed": pytest.approx(1 - 31 / 33),
        } == losses(woven(tmp_path, header).rows)

    def test_between_two_washes(self, tmp_path: Path) -> None:
        """The place of `hemmed:` among the sizes tells when it was sewn: here after the first wash."""
        header = "on_loom: 20 x 33\nhem: 1 in\nwashed 1: 19 x 31\nhemmed: 19 x 28\nwashed 2: 18 x 27"
        made = woven(tmp_path, header)

        assert {
            "length, loom to washed 1": pytest.approx(1 - 31 / 33),
            "length, hemmed to washed 2": pytest.approx(1 - 27 / 28),
            "length, loom to washed 2": pytest.approx(1 - (31 / 33) * (27 / 28)),
        } == {label: loss for label, loss in losses(made.rows).items() if label.startswith("length")}
        assert pytest.approx(1 - 18 / 19) == losses(made.rows)["width, washed 1 to washed 2"]

    def test_after_a_list(self, tmp_path: Path) -> None:
        """`hemmed:` after a list of two washes was sewn after the second of them."""
        header = "on_loom: 20 x 33\nhem: 1 in\nwashed:\n  - 19 x 31\n  - 19 x 30\nhemmed: 19 x 27\nwashed 3: 18 x 26"
        lengths = losses(woven(tmp_path, header).rows)

        assert pytest.approx(1 - 26 / 27) == lengths["length, hemmed to washed 3"]
        assert pytest.approx(1 - (30 / 33) * (26 / 27)) == lengths["length, loom to washed 3"]

    def test_said_in_words(self, tmp_path: Path) -> None:
        """`sewn: after wash 1` says the same without `hemmed:` in its place."""
        header = (
            "on_loom: 20 x 33\nhemmed: 19 x 28\nhem:\n  depth: 1 in\n  sewn: after wash 1\n"
            "washed:\n  - 19 x 31\n  - 18 x 27"
        )
        row = the_row(woven(tmp_path, header).rows, "length, loom to washed 2")

        assert row.joined
        assert pytest.approx(1 - (31 / 33) * (27 / 28)) == row.loss

    def test_the_wash_before_the_hem_was_not_measured(self, tmp_path: Path) -> None:
        """A hem after wash 2 does not join on to wash 1."""
        header = (
            "on_loom: 20 x 33\nwashed 1: 19 x 31\nhem:\n  depth: 1 in\n  sewn: after wash 2\n"
            "hemmed: 18 x 28\nwashed 3: 18 x 27"
        )
        lengths = {
            label: loss for label, loss in losses(woven(tmp_path, header).rows).items() if label.startswith("length")
        }

        assert {
            "length, loom to washed 1": pytest.approx(1 - 31 / 33),
            "length, hemmed to washed 3": pytest.approx(1 - 27 / 28),
        } == lengths

    def test_sewn_but_not_measured(self, tmp_path: Path) -> None:
        """Hemmed before washing and not measured then: the washed length has nothing to compare with."""
        header = "in_reed: 20\non_loom: 19 1/2 x 33\nhem:\n  depth: 1 in\n  sewn: before washing\nwashed: 18 x 28"

        assert ["width, reed to loom", "width, loom to washed", "width, reed to washed"] == list(
            losses(woven(tmp_path, header).rows)
        )

    def test_sewn_last(self, tmp_path: Path) -> None:
        """A hem sewn after washing changes no loss; `hemmed:` then ends none."""
        header = "on_loom: 20 x 33\nhem:\n  depth: 1 in\n  sewn: after washing\nwashed: 18 x 30\nhemmed: 18 x 27"
        lengths = {
            label: loss for label, loss in losses(woven(tmp_path, header).rows).items() if label.startswith("length")
        }

        assert {"length, loom to washed": pytest.approx(1 - 30 / 33)} == lengths

    def test_hemmed_last_of_all(self, tmp_path: Path) -> None:
        """Hemmed and not yet washed: the hem has eaten cloth, and that is no loss."""
        header = "on_loom: 20 x 33\noff_loom: 19 1/2 x 32 1/2\nhem: 1 in\nhemmed: 19 1/2 x 30"

        assert ["width, loom to off", "length, loom to off"] == list(losses(woven(tmp_path, header).rows))

    def test_sewn_last_leaves_the_width(self, tmp_path: Path) -> None:
        """The width taken again once hemmed is no step after the wash."""
        header = "on_loom: 20 x 33\nhem:\n  depth: 1 in\n  sewn: after washing\nwashed: 18 x 30\nhemmed: 18 x 27"
        widths = [row.label for row in woven(tmp_path, header).rows if row.direction == "width"]

        assert ["width, loom to washed"] == widths

    def test_every_piece_by_the_warp(self, tmp_path: Path) -> None:
        """A piece takes the hem and the sizes that it does not say from its warp."""
        header = (
            "off_loom: 20 x 33\nhem: 1 in\nhemmed: 20 x 30\npieces:\n"
            "  - name: towel 1\n    washed: 18 x 28\n  - name: towel 2\n    washed: 18 x 27"
        )
        made = woven(tmp_path, header)

        assert [pytest.approx(1 - 28 / 30), pytest.approx(1 - 27 / 30)] == [
            row.loss for row in made.rows if row.label == "length, hemmed to washed"
        ]


class TestMadeUp:
    """What the owner measures is in no loss."""

    def test_in_no_loss(self, tmp_path: Path) -> None:
        """A made-up size is shown, and nothing is reckoned from it."""
        made = woven(tmp_path, "in_reed: 20\nwashed: 18 x 30\nmade_up: 17 x 27")

        assert ["width, reed to washed"] == list(losses(made.rows))
        assert ["washed", "made up"] == [line.state.name for line in made.pieces[0].sizes if line.direction == "length"]

    def test_cushions(self, tmp_path: Path) -> None:
        """With a made-up size alone there is no loss at all."""
        assert () == woven(tmp_path, "in_reed: 20\non_loom: ? x 33\nmade_up: 17 x 17").rows


class TestLastSize:
    """The last size of a piece, for its card."""

    def test_before_it_was_made_up(self, tmp_path: Path) -> None:
        """The last washed size, though a made-up one and a plan stand after it."""
        made = woven(tmp_path, "plan:\n  washed 2: 17 x 29\nin_reed: 20\nwashed: 18 x 30\nmade_up: 17 x 27")
        last = made.pieces[0].last("width")

        assert last is not None
        assert ("washed", 18) == (last.state.name, round((last.measured_mm or 0) / 25.4))

    def test_made_up_alone(self, tmp_path: Path) -> None:
        """The made-up size, when nothing else was measured; none when nothing was."""
        made = woven(tmp_path, "made_up: 17 x 27").pieces[0]
        none = woven(tmp_path / "b", "plan:\n  washed: 17 x 29").pieces[0]

        assert "made up" == (line.state.name if (line := made.last("length")) else None)
        assert none.last("length") is None


class TestMarks:
    """Marks sewn off the loom: the washed sizes lie between them."""

    def test_joined_to_edges(self, tmp_path: Path) -> None:
        """Where the edges were measured off the loom too, the whole goes on over the marks as a product."""
        header = "in_reed: 20\non_loom: 19 x 40\noff_loom: 18 1/2 x 39\nmarks: 10 x 10 in\nwashed: 9 1/2 x 9 1/4 in"
        made = woven(tmp_path, header)

        assert pytest.approx(1 - 9.5 / 10) == losses(made.rows)["width, off to washed"]
        assert pytest.approx(1 - (18.5 / 20) * (9.5 / 10)) == losses(made.rows)["width, reed to washed"]
        assert pytest.approx(1 - (39 / 40) * (9.25 / 10)) == losses(made.rows)["length, loom to washed"]
        assert the_row(made.rows, "width, reed to washed").joined

    def test_not_joined(self, tmp_path: Path) -> None:
        """Without edges off the loom, the reed and the marks have nothing in common."""
        made = woven(tmp_path, "in_reed: 20\nmarks: 10 x 10 in\nwashed: 9 1/2 x 9 1/4 in")

        assert {
            "width, off to washed": pytest.approx(0.05),
            "length, off to washed": pytest.approx(0.075),
        } == losses(made.rows)

    def test_no_marks_washed_yet(self, tmp_path: Path) -> None:
        """Marks that were sewn and not yet washed end no loss."""
        made = woven(tmp_path, "in_reed: 20\non_loom: 19 x 40\noff_loom: 18 1/2 x 39\nmarks: 10 x 10 in")

        assert ["width, reed to loom", "width, loom to off", "width, reed to off", "length, loom to off"] == list(
            losses(made.rows)
        )

    def test_a_rectangle(self, tmp_path: Path) -> None:
        """Marks may be further apart one way than the other."""
        assert {
            "width, off to washed": pytest.approx(0.04),
            "length, off to washed": pytest.approx(0.1),
        } == losses(woven(tmp_path, "units: mm\nmarks: 100 x 250\nwashed: 96 x 225").rows)

    def test_several_washes(self, tmp_path: Path) -> None:
        """Every wash is measured between the marks that were sewn once."""
        made = woven(tmp_path, "units: mm\nmarks: 100 x 100\nwashed:\n  - 95 x 94\n  - 94 x 92")

        assert pytest.approx(0.06) == losses(made.rows)["width, off to washed 2"]
        assert pytest.approx(1 - 92 / 94) == losses(made.rows)["length, washed 1 to washed 2"]


class TestBands:
    """Bands side by side."""

    def test_their_own_width_in_the_reed(self, tmp_path: Path) -> None:
        """A band that says its width in the reed has a draw-in of its own; the warp's width is not its."""
        header = (
            "in_reed: 12\nacross:\n  left:\n    in_reed: 4\n  right:\n    ends: 80\npieces:\n  - across:\n"
            "      left:\n        on_loom: 3 7/8 x 8\n        washed: 3 1/2 x 7\n"
            "      right:\n        on_loom: 3 3/4 x 8\n        washed: 3 1/2 x 7"
        )
        made = woven(tmp_path, header)
        left, right = made.pieces

        assert ("left", "right") == (left.name, right.name)
        assert pytest.approx(1 - 3.5 / 4) == losses(left.rows)["width, reed to washed"]
        assert "width, reed to washed" not in losses(right.rows)
        assert pytest.approx(80 / 3.5) == (right.counts.ends_per_m or 0) * 0.0254


class TestDoubleWidth:
    """`opens` makes the opened width so many loom widths."""

    def test_layers_that_do_not_open(self, tmp_path: Path) -> None:
        """Two layers that stay together are as wide as the loom shows."""
        made = woven(tmp_path, "layers: 2\nin_reed: 20\nwashed: 18 x 30")

        assert {"width, reed to washed": pytest.approx(0.1)} == losses(made.rows)

    def test_without_words(self, tmp_path: Path) -> None:
        """On the loom it is folded and later it is opened, unless a word says otherwise."""
        made = woven(tmp_path, "layers: 2\nopens: at the left\nin_reed: 20\non_loom: 19 x 50\noff_loom: 37 x 48")

        assert {
            "width, reed to loom": pytest.approx(1 - 38 / 40),
            "width, loom to off": pytest.approx(1 - 37 / 38),
            "width, reed to off": pytest.approx(1 - 37 / 40),
            "length, loom to off": pytest.approx(1 - 48 / 50),
        } == losses(made.rows)

    def test_words(self, tmp_path: Path) -> None:
        """`opened` in the reed and `folded` off the loom are taken at their word."""
        made = woven(tmp_path, "layers: 2\nopens: at the left\nin_reed: 40 opened\noff_loom: 18 1/2 x 48 folded")

        assert {"width, reed to off": pytest.approx(1 - 37 / 40)} == losses(made.rows)


class TestFulling:
    """Fulled cloth is steered: its last loss is a decision."""

    def test_by_its_recipe(self, tmp_path: Path) -> None:
        """A finish that says it is fulling marks what comes after the loom, and nothing before."""
        made = woven(
            tmp_path,
            "in_reed: 30\non_loom: 29 x 80\noff_loom: 28 x 76\nwashed: 23 x 64\nfinish: tub",
            finishes__tub="title: In the tub\nfulling: yes",
        )

        assert {
            "width, off to washed",
            "width, reed to washed",
            "length, off to washed",
            "length, loom to washed",
        } == {row.label for row in made.rows if row.steered}

    def test_only_scoured(self, tmp_path: Path) -> None:
        """Off the loom to scoured is what the yarn does, and it is learned from."""
        made = woven(tmp_path, "off_loom: 28 x 76\nfulling:\n  0 min: 26 x 71\n  10 min: 23 x 64")

        assert not the_row(made.rows, "width, off to scoured").steered
        assert the_row(made.rows, "width, scoured to fulled 10 min").steered
