"""The page that plans a warp reckons as Python does: one table of cases, in a real browser."""

from __future__ import annotations

import json
from typing import Any

import pytest

from tests.browser.looking import Look
from tests.house import PROJECT

CASES: list[tuple[str, list[Any], float, str]] = json.loads(
    (PROJECT / "tests" / "planning" / "cases.json").read_text(encoding="utf-8")
)


def test_the_table(desk: Look, tiny: str) -> None:
    """Every function of the page's arithmetic gives what a pencil does."""
    desk.page.goto(f"{tiny}plan.html")
    found = desk.page.evaluate(
        "cases => cases.map(([name, given]) => tenterhook.arithmetic[name].apply(null, given))", CASES
    )

    assert [pytest.approx(gives, rel=1e-6) for _, _, gives, _ in CASES] == found


def test_the_same_sleys(desk: Look, tiny: str) -> None:
    """For every sett and reed the page picks the sley order that Python picks."""
    from journal_tools.planning.sleying import sleyings

    reeds = [dents / 0.0254 for dents in (8, 10, 12, 15)]
    setts = [ends / 0.0254 for ends in (6, 9, 11, 16, 18, 20, 22, 24, 27, 30, 36, 45)]
    desk.page.goto(f"{tiny}plan.html")
    found = desk.page.evaluate(
        "([setts, reeds]) => setts.map(sett => tenterhook.arithmetic.sleyings(sett, reeds)"
        ".map(one => [one.dents_per_m, one.order.join('-')]))",
        [setts, reeds],
    )

    assert [[[each.dents_per_m, each.written] for each in sleyings(sett, reeds)] for sett in setts] == found
