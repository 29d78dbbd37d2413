"""The charts: the same bytes every time, both schemes in one file, colour only beyond the doubt."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from fractions import Fraction
from itertools import pairwise
from pathlib import Path
from xml.etree import ElementTree

import pytest

from journal_tools.pictures.chart_paper import Chart
from journal_tools.pictures.scatter import LossPoint, LossScatter
from journal_tools.pictures.trend import OffByYarn, OffPoint, OffTrend, off_words

SCATTER = LossScatter(
    "width, reed to washed",
    (
        LossPoint(2024.1, 0.105, 0.007, "plain weave", "Creek towels"),
        LossPoint(2025.2, 0.117, 0.007, "plain weave", "Tideline towels"),
        LossPoint(2023.4, 0.098, 0.008, "2/2 twill", "Sill runner"),
    ),
    mean=0.107,
)
ON_PLAN = OffPoint(2024.5, -3.1, 3.175, "Cottolin 22/2", "Tideline towels")
OFF_PLAN = OffPoint(2024.9, 9.5, 3.175, "Wool 6/2", "Lookout blanket")

PRINT_HASHES = """
import hashlib
from tests.pictures.test_charts import CHARTS
print([hashlib.sha256(chart.draw()).hexdigest() for chart in CHARTS])
"""


def trend(*points: OffPoint) -> OffTrend:
    """Off plan in width over time, in inches."""
    return OffTrend("width", "in", points)


CHARTS: tuple[Chart, ...] = (
    SCATTER,
    trend(ON_PLAN, OFF_PLAN),
    OffByYarn("length", "cm", (ON_PLAN, OFF_PLAN)),
)


class TestDrawing:
    """What every chart holds to."""

    def test_two_pythons_with_other_hash_seeds_draw_the_same_bytes(self) -> None:
        """No clock, no set order and no random name is in a chart."""
        said = {
            subprocess.run(
                [sys.executable, "-c", PRINT_HASHES],
                env={**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": "."},
                cwd=Path(__file__).parents[2],
                capture_output=True,
                text=True,
                check=True,
            ).stdout
            for seed in ("1", "2")
        }

        assert 1 == len(said)

    @pytest.mark.parametrize("chart", CHARTS)
    def test_one_file_serves_light_and_dark(self, chart: Chart) -> None:
        """Its colours are variables that change with the reader's preference."""
        svg = chart.draw().decode()

        assert "@media(prefers-color-scheme:dark)" in svg
        assert "var(--indigo)" in svg

    @pytest.mark.parametrize("chart", CHARTS)
    def test_a_chart_is_as_large_as_it_says(self, chart: Chart) -> None:
        """The page keeps its place with the size that the drawing has."""
        root = ElementTree.fromstring(chart.draw())

        assert [0, 0, *chart.size] == [float(n) for n in root.get("viewBox", "").split()]

    def test_letters_are_letters(self) -> None:
        """The weaves of the legend can be read out and searched for, not only seen."""
        words = "".join(ElementTree.fromstring(SCATTER.draw()).itertext())

        assert "plain weave" in words
        assert "2/2 twill" in words

    def test_the_order_of_the_warps_changes_nothing(self) -> None:
        """The same warps in another order are the same chart."""
        turned = LossScatter(SCATTER.title, SCATTER.points[::-1], SCATTER.mean)

        assert SCATTER.draw() == turned.draw()

    def test_a_name_is_text_whatever_it_holds(self) -> None:
        """A weave named with tags or dollars is written as it was typed."""
        weave = "<b>$x$</b> &"
        chart = LossScatter("width", (LossPoint(2024.0, 0.1, 0.01, weave, "warp"),))

        assert weave in "".join(ElementTree.fromstring(chart.draw()).itertext())


class TestOffPlan:
    """How far off plan, in words and in colour."""

    def test_colour_is_only_for_what_lies_beyond_the_doubt(self) -> None:
        """3.1 mm off with a doubt of 3.2 mm is ink; 9.5 mm off is the warning colour."""
        assert "var(--madder)" not in trend(ON_PLAN).draw().decode()
        assert "var(--madder)" in trend(ON_PLAN, OFF_PLAN).draw().decode()

    @pytest.mark.parametrize(
        ("off", "direction", "unit", "said"),
        [
            (Fraction(0), "width", "in", "as planned"),
            (Fraction(-1, 4), "width", "in", "1/4 in narrower"),
            (Fraction(3, 2), "length", "in", "1 1/2 in longer"),
            (Fraction(-1, 2), "length", "cm", "0.5 cm shorter"),
            (Fraction(2), "width", "cm", "2 cm wider"),
        ],
    )
    def test_off_plan_is_said_in_words_and_never_as_a_sign(
        self, off: Fraction, direction: str, unit: str, said: str
    ) -> None:
        """A quarter inch less width than planned is "1/4 in narrower"."""
        assert said == off_words(off, direction, unit)


class TestRoom:
    """Words below an axis, where there are few warps."""

    @pytest.mark.parametrize("offs", [[0.0], [3.175, -3.175], [1.6], [80.0, -3.1], [-12.7, -3.2, 0.0]])
    @pytest.mark.parametrize("unit", ["in", "cm"])
    def test_words_stand_apart(self, offs: list[float], unit: str) -> None:
        """The plan is on the axis, and each tick is as far from the next as "as planned" is long."""
        points = tuple(OffPoint(2020 + n, off, 3.2, "Linen", f"w{n}") for n, off in enumerate(offs))
        svg = OffByYarn("width", unit, points).draw().decode()
        places = sorted(float(x) for x in re.findall(r'id="xtick_\d+".*?<use [^>]*x="([\d.]+)"', svg, re.DOTALL))

        assert places
        assert "as planned" in svg
        assert [] == [(a, b) for a, b in pairwise(places) if b - a < 60]
