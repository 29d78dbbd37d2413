"""Cloth that is fulled to size: its minutes, and how sure past fullings make the next."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from journal_tools.planning.steered import belief_from, student
from journal_tools.planning.words import Words
from tests.planning.test_plan import TOWELS, planned


class TestFulled:
    FINISH = "title: In the tub\nfulling: yes"

    def test_minutes(self, tmp_path: Path) -> None:
        """Fulled cloth is told with the minutes from scoured to the width wanted, never with a sample."""
        plan = planned(tmp_path, TOWELS.partition("hem:")[0] + "finish: tub\n", finishes__tub=self.FINISH)
        (stretch,) = plan.stretches
        (piece,) = stretch.pieces
        assert piece.minutes is not None
        likely, least, most = piece.minutes

        assert least < likely < most
        assert stretch.sample is None
        assert any("look first at" in line for line in Words(plan).expects(stretch, piece))

    def test_not_fulled(self, tmp_path: Path) -> None:
        """Other cloth has no minutes."""
        assert planned(tmp_path).stretches[0].pieces[0].minutes is None


    def test_the_next_of_two(self) -> None:
        """Two that agree leave the guess's .09 for three degrees and one of theirs: t of 4 degrees and √1.5."""
        both = belief_from("width", [-0.3, -0.3])
        half = math.sqrt(3 * 0.09**2 / 4) * math.sqrt(1.5) * 2.1318

        assert pytest.approx(half, rel=2e-3) == both.shared * 1.6449
        assert -0.3 == both.mean

    def test_the_next_of_many(self) -> None:
        """Sixty that differ by .1 (k = 1) leave little more than that: nine in ten are ± 1.67 of it."""
        figures = [-0.3 + 0.1 * (-1) ** each for each in range(60)]

        assert pytest.approx(0.1 * 1.67, rel=0.02) == belief_from("width", figures).shared * 1.6449

    @pytest.mark.parametrize(("degrees", "table"), [(3, 2.353), (4, 2.132), (9, 1.833), (29, 1.699)])
    def test_students_table(self, degrees: int, table: float) -> None:
        """The nineteenth twentieth of t as the tables have it (from memory)."""
        assert pytest.approx(table, abs=0.002) == student(1.644854, degrees)

    def test_fewer_say_less(self) -> None:
        """The range narrows with every fulled cloth that agrees with the ones before it."""
        ranges = [belief_from("width", [-0.3] * number).shared for number in range(1, 8)]

        assert sorted(ranges, reverse=True) == ranges
