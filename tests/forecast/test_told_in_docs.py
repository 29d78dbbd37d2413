"""What docs/forecast.md says of the forecast's beliefs is what the forecast believes."""

from __future__ import annotations

import pytest

from journal_tools.forecast.chain import STEPS
from journal_tools.forecast.priors import LEVELS, MEDIANS, SLOPES
from tests.house import PROJECT, text_of


def table(direction: str) -> str:
    """The beliefs of a direction as the page prints them, in points."""
    steps = STEPS[direction]
    levels = [f"{LEVELS[direction][step][0]:g} ± {LEVELS[direction][step][1]:g}" for step in steps]
    slopes = [f"{SLOPES[direction].get(step, 0.0):g}" for step in steps]
    terms = [
        [term, *(f"{sds[step]:g}" if step in sds else "" for step in steps)] for term, sds in MEDIANS[direction].items()
    ]
    rows = [[direction, *steps], ["---"] * (len(steps) + 1), ["level ± sd", *levels], ["mean slope", *slopes], *terms]
    return "\n".join(f"| {' | '.join(row)} |" for row in rows)


@pytest.mark.parametrize("direction", STEPS)
def test_the_page_tells_what_is_believed(direction: str) -> None:
    """Every level, slope and spread that is believed beforehand stands on the page as it is."""

    assert table(direction) in text_of(PROJECT / "docs" / "forecast.md")
