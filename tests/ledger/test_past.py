"""What a yarn did before, gathered from ledgers."""

from __future__ import annotations

from pathlib import Path

import pytest

from journal_tools.ledger.past import Past, as_json, past_of
from tests.ledger.desk import journal, write

YARNS = {
    "yarns__linen": "title: Wet-spun linen\nfibre: linen\nnumber: 16/2 linen\nwas: old-linen",
    "yarns__wool": "title: Wool\nfibre: wool",
}


def past(folder: Path, typed: str, **warps: str) -> Past:
    """The past of a yarn in a journal of these warps."""
    return past_of(write(folder, **YARNS, **{f"warps__{name}": text for name, text in warps.items()}), typed)


class TestWhichWarps:
    """Every warp in the yarn, newest first, undated last."""

    def test_order(self, tmp_path: Path) -> None:
        """Dates to the day, the month, the season or the year; no file times."""
        found = past(
            tmp_path,
            "linen",
            undated="yarn: linen",
            spring="yarn: linen\nstarted: spring 2023",
            old="yarn: linen\nstarted: 2016",
            new="yarn: linen\nfinished: 2024-05-01",
        )

        assert ["new", "spring", "old", "undated"] == [each.warp.name for each in found.warps]

    @pytest.mark.parametrize("typed", ["linen", "old-linen", "Wet-spun linen", "wet-spun-linen", "linen ecru"])
    def test_names(self, tmp_path: Path, typed: str) -> None:
        """By its name, its old name, its title, with or without a colour."""
        assert ["a"] == [each.warp.name for each in past(tmp_path, typed, a="yarn: linen", b="yarn: wool").warps]

    def test_use(self, tmp_path: Path) -> None:
        """In the warp, in the weft, or in both; a yarn that is nowhere has no past."""
        warps = {"a": "yarn: linen", "b": "warp:\n  yarn: linen\nweft: wool", "c": "warp:\n  yarn: wool\nweft: linen"}

        assert {"a": "warp and weft", "b": "warp", "c": "weft"} == {
            each.warp.name: each.use for each in past(tmp_path, "linen", **warps).warps
        }
        assert () == past(tmp_path, "silk").warps

    def test_weave(self, tmp_path: Path) -> None:
        """Each stretch has its weave, or its warp's."""
        header = "yarn: linen\nweave: plain weave\nstretches:\n  - name: a\n  - name: b\n    weave: 2/2 twill"
        (found,) = past(tmp_path, "linen", w=header).warps

        assert ["plain weave", "2/2 twill", "plain weave"] == [found.weave(stretch) for stretch in ("a", "b", "")]


class TestSteps:
    """One figure for each stretch of a warp."""

    def test_mean_and_spread(self, tmp_path: Path) -> None:
        """10, 12 and 14 % are 12 % with a spread of 2 points."""
        sizes = {"a": 18, "b": 17.6, "c": 17.2}
        warps = {name: f"yarn: linen\nunits: cm\nin_reed: 20\nwashed: {size} x 30" for name, size in sizes.items()}
        step = past(tmp_path, "linen", **warps).step("width")

        assert step is not None
        assert "width, reed to washed" == step.label
        assert (pytest.approx(0.12), pytest.approx(0.02)) == (step.mean, step.spread)

    def test_what_does_not_count(self, tmp_path: Path) -> None:
        """A disaster and a cloth fulled to size are shown and not averaged."""
        found = past(
            tmp_path,
            "linen",
            a="yarn: linen\nin_reed: 20\nwashed: 18 x 30",
            b="yarn: linen\nin_reed: 20\nwashed: 10 x 30\nlearn: no, dryer",
            c="yarn: linen\nin_reed: 20\nfulling:\n  0 min: 17 x 28\n  9 min: 14 x 22\nwashed: 14 x 22",
        )
        step = found.step("width")

        assert step is not None
        assert ((pytest.approx(0.1),), 2) == (step.losses, step.left_out)

    def test_order(self, tmp_path: Path) -> None:
        """Width before length, steps before wholes."""
        header = "yarn: linen\nin_reed: 20\non_loom: 19 x 33\noff_loom: 18 x 32\nwashed: 17 x 30"

        assert [
            "width, reed to loom",
            "width, loom to off",
            "width, off to washed",
            "width, reed to washed",
            "length, loom to off",
            "length, off to washed",
            "length, loom to washed",
        ] == [step.label for step in past(tmp_path, "linen", a=header).steps]

    def test_the_same_wash(self, tmp_path: Path) -> None:
        """A cloth washed once and one washed twice compare at the first wash, which is then called by its number."""
        found = past(
            tmp_path,
            "linen",
            a="yarn: linen\nin_reed: 20\nwashed: 18 x 30",
            b="yarn: linen\nin_reed: 20\nwashed:\n  - 17 x 30\n  - 16 x 29",
        )

        assert {"width, reed to washed 1": 2, "width, reed to washed 2": 1} == {
            step.label: len(step.losses) for step in found.steps if step.whole and step.direction == "width"
        }


def test_one_object_a_step() -> None:
    """For machines: one object a warp, piece and step, fractions and plain words."""
    (first, *_) = as_json(past_of(journal(), "cottolin-22-2"))

    assert {
        "warp": "tideline-towels",
        "stretch": "",
        "piece": "",
        "pieces": 1,
        "started": None,
        "weave": "plain weave",
        "use": "warp and weft",
        "direction": "width",
        "from": "in_reed",
        "to": "on_loom",
        "loss": round(1 - 19.375 / 20.25, 6),
        "planned": None,
        "skipped": [],
        "whole": False,
        "joined": False,
        "steered": False,
        "learn": True,
        "reason": "",
    } == {key: value for key, value in first.items() if key != "uncertainty"}
    assert pytest.approx(0.00705, abs=0.00001) == first["uncertainty"]
