"""Sizes that can hardly be so count for nothing until the weaver says that they are."""

from __future__ import annotations

from pathlib import Path

import pytest

from journal_tools.ledger import ledger_of
from journal_tools.ledger.doubts import SLUGS
from journal_tools.ledger.past import past_of
from journal_tools.records import public
from journal_tools.records.public import SIZE_QUESTIONS
from tests.ledger.desk import woven, write

SOUND = "yarn: a\nin_reed: 20\non_loom: 19 x 33\nwashed: 18 x 30"


def learned(folder: Path, header: str) -> set[str]:
    """The labels of the losses that the journal learns from."""
    return {row.label for row in woven(folder, header).rows if row.learn}


class TestWhatCounts:
    def test_a_sound_piece(self, tmp_path: Path) -> None:
        """All losses of a sound piece count."""
        assert {
            "width, reed to loom",
            "width, loom to washed",
            "width, reed to washed",
            "length, loom to washed",
        } == learned(tmp_path, SOUND)

    def test_the_reed(self, tmp_path: Path) -> None:
        """Where all of the cloth is wider than the reed, the width in the reed is the one that is wrong."""
        assert {"width, loom to washed", "length, loom to washed"} == learned(
            tmp_path, SOUND.replace("in_reed: 20", "in_reed: 2/3")
        )

    def test_one_width(self, tmp_path: Path) -> None:
        """Where one width is wider than the reed, it is that one."""
        assert {"width, reed to loom", "length, loom to washed"} == learned(
            tmp_path, SOUND.replace("18 x 30", "28 x 30")
        )

    @pytest.mark.parametrize(("washed", "counts"), [("11 1/2", True), ("11", False)])
    def test_lost_beyond_belief(self, tmp_path: Path, washed: str, counts: bool) -> None:
        """A step of more than two fifths is asked about, and less is not."""
        found = learned(tmp_path, f"on_loom: 19 x 33\nwashed: {washed} x 30")

        assert counts == ("width, loom to washed" in found)

    @pytest.mark.parametrize(("washed", "counts"), [("9", True), ("7", False)])
    def test_fulled(self, tmp_path: Path, washed: str, counts: bool) -> None:
        """Fulled cloth may lose a half and more."""
        ledger = woven(tmp_path, f"on_loom: 19 x 33\nwashed: {washed} x 20\nfulling:\n  8 min: 15 x 28")

        assert counts == (not ledger.pieces[0].doubts)

    def test_accepted(self, tmp_path: Path) -> None:
        """What has been accepted counts."""
        assert "length, loom to washed" in learned(tmp_path, "accepted: grew\non_loom: 19 x 33\nwashed: 18 x 34")
        assert "length, loom to washed" not in learned(tmp_path / "b", "on_loom: 19 x 33\nwashed: 18 x 34")


class TestAverages:
    def test_a_slip_spoils_no_mean(self, tmp_path: Path) -> None:
        """A warp with a slip of the pen stands in the past of its yarn, and not in its mean."""
        made = write(tmp_path, warps__good=SOUND, warps__slip=SOUND.replace("in_reed: 20", "in_reed: 2/3"))
        past = past_of(made, "a")
        whole = past.step("width")

        assert 2 == len(past.warps)
        assert whole is not None
        assert ((pytest.approx(0.1),), 1) == (whole.losses, whole.left_out)


class TestShared:
    def test_the_same_slugs(self) -> None:
        """The shared journal keeps what was accepted of sizes, all of it."""
        assert set(SLUGS) == set(SIZE_QUESTIONS)

    def test_accepted_there_too(self, tmp_path: Path) -> None:
        """What the weaver accepted counts in the shared journal as well, and what she accepted else stays at home."""
        header = "share: yes\naccepted:\n  - grew\n  - no such yarn\non_loom: 19 x 33\nwashed: 18 x 34\nyarn: a"
        shared = public(write(tmp_path, warps__w=header))

        assert ("grew",) == shared.warps["w"].accepted
        assert [True, True] == [row.learn for row in ledger_of(shared, shared.warps["w"]).rows]
