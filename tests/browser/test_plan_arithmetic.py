"""The page that plans a warp reckons as Python does: one table of cases, in a real browser."""

from __future__ import annotations

import json
from typing import Any

import pytest

from journal_tools.notation import parse_colours
from journal_tools.planning.order import order_of
from journal_tools.planning.sleying import sleyings
from journal_tools.quantities import Unreadable
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
    reeds = [dents / 0.0254 for dents in (8, 10, 12, 15)]
    setts = [ends / 0.0254 for ends in (6, 9, 11, 16, 18, 20, 22, 24, 27, 30, 36, 45)]
    desk.page.goto(f"{tiny}plan.html")
    found = desk.page.evaluate(
        "([setts, reeds]) => setts.map(sett => tenterhook.arithmetic.sleyings(sett, reeds)"
        ".map(one => [one.dents_per_m, one.order.join('-')]))",
        [setts, reeds],
    )

    assert [[[each.dents_per_m, each.written] for each in sleyings(sett, reeds)] for sett in setts] == found


ORDERS = [
    *("20 bone, 12 times (4 slate, 24 bone), 4 slate, 20 bone", "880 white", "bone", "2 times (3 times (a, 2 b), c)"),
    *("4 slate, 24 bone", "4 slate, 2 bone, 4 slate", "20 bone, 400 white, 20 bone", "(4 slate, 24 bone)"),
    *("9 times(dark-slate,2 écru)", " 3  bone ,slate\n", "3 mirrored", "2 times (pointed (a, b, c), d)"),
    *("mirrored (1 a, 2 b), 3 c", "12 bone, 12 times (4 slate)"),
]
NONE = [
    *("", "12", "4 slate,", "4 slate 5 bone", "(4 slate", "4 slate)", "0 bone", "20001 bone", "12 times 4 bone"),
    *("4 dark slate", "0 times (bone)", "400 times (400 bone)", "x"),
]


def test_the_same_colours(desk: Look, tiny: str) -> None:
    """The page reads a colour order as a record does, and refuses what a record refuses."""

    def read(text: str) -> list[str] | None:
        try:
            return list(parse_colours(text))
        except Unreadable:
            return None

    desk.page.goto(f"{tiny}plan.html")
    found = desk.page.evaluate("all => all.map(text => tenterhook.colours(text))", ORDERS + NONE)

    assert [read(text) for text in ORDERS + NONE] == found
    assert [None] * len(NONE) == found[len(ORDERS) :]


@pytest.mark.parametrize("ends", [30, 404])
def test_the_same_order(desk: Look, tiny: str, ends: int) -> None:
    """The page repeats the part of an order that the command repeats, as often."""
    texts = [text for text in ORDERS if "mirrored" not in text]
    desk.page.goto(f"{tiny}plan.html")
    found = desk.page.evaluate(
        "([texts, ends]) => texts.map(text => { const order = new tenterhook.Order(text, ends);"
        " const times = tenterhook.arithmetic.whole_repeats(ends, order.items.length, order.beside);"
        " return [times, order.beside, order.written(times), order.ends(times)]; })",
        [texts, ends],
    )

    for text, (times, beside, written, items) in zip(texts, found, strict=True):
        order = order_of(text, ends)
        assert (order.times_for(ends), order.beside) == (times, beside)
        assert list(parse_colours(order.written(times))) == items == list(parse_colours(written))
