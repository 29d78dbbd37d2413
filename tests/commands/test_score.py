"""`score`: what the journal said beforehand, beside what came."""

from __future__ import annotations

import json
import re
from pathlib import Path

from tests.commands.shell import Shell

WARPS = {"2021": "22", "2022": "22 1/2", "2023": "22 1/4", "2024": "22"}


def weave_them(tenterhook: Shell) -> None:
    """Four warps in one yarn, a year apart."""
    for year, washed in WARPS.items():
        text = f"---\nstarted: {year}\nyarn: cottolin\nweave: plain weave\nin_reed: 25\nwashed: {washed} x 30\n---\n"
        tenterhook.write(f"warps/towels-{year}", text)


class TestTheTable:
    def test_four_warps(self, tenterhook: Shell) -> None:
        """Three are forecast from those before them, beside three rules, with how often the ranges held."""
        weave_them(tenterhook)
        said = tenterhook("score")

        assert 0 == said.exit_code
        assert "Width, reed to washed: 3 forecasts from the warps before\n" in said.output
        # 12 %, then 10, 11 and 12: the last warp before was off by 2, 1 and 1 points, ten per cent by 0, 1 and 2.
        assert re.search(r"the last warp in the same yarn and weave +1\.0 +1\.4 +2\.0\n", said.output)
        assert re.search(r"ten per cent +1\.0 +1\.3 +2\.0\n", said.output)
        assert re.search(r"95 % held [0-3] of 3\n", said.output)
        assert "Length, loom to washed: no two dated warps to go by yet.\n" in said.output
        assert "cottolin, plain weave: ± " in said.output

    def test_kept(self, tenterhook: Shell) -> None:
        """What was reckoned is kept beside the site's pictures, and a broken file there does no harm."""
        weave_them(tenterhook)
        first = tenterhook("score").output
        kept = tenterhook.folder / ".cache" / "tenterhook" / "score.json"

        assert kept.is_file()
        kept.write_text('{"by": 3}', encoding="utf-8")
        assert first == tenterhook("score").output == tenterhook("score").output

    def test_an_empty_journal(self, tenterhook: Shell) -> None:
        """A journal without two dated warps says so, and ends with 1."""
        said = tenterhook("score")

        assert 1 == said.exit_code
        assert 2 == said.output.count("no two dated warps to go by yet")

    def test_json(self, tenterhook: Shell, tmp_path: Path) -> None:
        """--json gives each forecast with what came, as fractions."""
        weave_them(tenterhook)
        found = json.loads(tenterhook("score", "--json").output)

        assert ["towels-2022", "towels-2023", "towels-2024"] == [each["warp"] for each in found]
        assert [0.1, 0.11, 0.12] == [each["loss"] for each in found]
        assert [[0.1, 0.12, 0.12], [0.1, 0.110056, 0.1]] == [each["rules"] for each in found[:2]]
        assert all(0 < each["chance"] < 1 for each in found)
