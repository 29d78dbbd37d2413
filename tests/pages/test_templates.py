"""The templates: whatever a weaver typed is text on the page, and every link stays in the site."""

from __future__ import annotations

import dataclasses
import types
import typing
from html.parser import HTMLParser
from typing import Any

import pytest

from journal_tools.pages import views
from journal_tools.pages.templating import coded, panels
from journal_tools.pages.view_parts import Cell, Column, Table
from journal_tools.problems import Problem, Severity

HOSTILE = """<script>alert(1)</script>"' onload='x' {{ 7*7 }} {% raw %} &amp; \u202e"""
ADDRESS = "javascript:alert(1)"
KINDS: dict[str, type] = {
    "warp": views.WarpView,
    "yarn": views.YarnView,
    "draft": views.DraftView,
    "thing": views.ThingView,
    "front": views.FrontView,
    "list": views.ListView,
}
# Fields that no weaver writes: they choose a look.
CHOSEN = {"direction": "width", "unit": "in", "kind": "cloth"}


def filled(wanted: Any, name: str = "") -> Any:
    """A value of a type in which every text is hostile and every address leads into a script."""
    origin, parts = typing.get_origin(wanted), typing.get_args(wanted)
    if origin in (types.UnionType, typing.Union):
        return filled(parts[0], name)
    if origin is tuple and parts[-1] is Ellipsis:
        return (filled(parts[0], name), filled(parts[0], name))
    if origin is tuple:
        return tuple(filled(part, name) for part in parts)
    if wanted is Problem:
        return Problem(HOSTILE, 3, HOSTILE, HOSTILE, HOSTILE, Severity.FAULT, "", HOSTILE)
    if dataclasses.is_dataclass(wanted):
        hints = typing.get_type_hints(wanted)
        return wanted(**{field.name: filled(hints[field.name], field.name) for field in dataclasses.fields(wanted)})  # type: ignore[operator]
    if wanted is str:
        return CHOSEN.get(name) or (ADDRESS if name in ("href", "src") else HOSTILE)
    return {bool: True, int: 100, float: 0.25}[wanted]


class Seen(HTMLParser):
    """What a browser would make of a page: its elements with their attributes, and its text."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.elements: list[tuple[str, dict[str, str | None]]] = []
        self.text = ""
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Note an element."""
        self.elements.append((tag, dict(attrs)))

    def handle_data(self, data: str) -> None:
        """Note a text."""
        self.text += data


@pytest.mark.parametrize("kind", KINDS)
def test_whatever_was_typed_is_text(kind: str) -> None:
    """Tags, quotes and template marks in every field of a page show as they were typed."""
    seen = Seen("".join(panels(kind, filled(KINDS[kind]), "warps/towels")))

    assert "script" not in {tag for tag, _ in seen.elements}
    assert [] == [names for _, names in seen.elements if any(name.startswith("on") for name in names)]
    assert "<script>alert(1)</script>" in seen.text
    assert "{{ 7*7 }} {% raw %}" in seen.text


@pytest.mark.parametrize("kind", KINDS)
def test_every_link_stays_in_the_site(kind: str) -> None:
    """From a page one folder down every address begins at the top of the site, whatever it holds."""
    seen = Seen("".join(panels(kind, filled(KINDS[kind]), "warps/towels")))

    led = [names[name] or "" for _, names in seen.elements for name in ("href", "src") if name in names]
    assert led
    assert [] == [address for address in led if not address.startswith("../")]


def test_a_state_nobody_measured_is_said_to_be_so() -> None:
    """The table of a tape says "not measured", and fills nothing in."""
    tape = views.Tape("width", "in", "Width", (), (views.StateRow("off the loom", planned="19 1/4 in"),))
    top, _ = panels("warp", views.WarpView("Towels", measured=views.Measured(width=tape)), "warps/towels")

    assert "not measured" in Seen(top).text


def test_losses_without_a_plan_have_no_empty_column_for_it() -> None:
    """Where nothing was planned, the table has steps and measured losses only."""
    measured = views.Measured(losses=(views.Loss("width, reed to washed", measured="11.7 %", uncertain="0.7"),))
    top, _ = panels("warp", views.WarpView("Towels", measured=measured), "warps/towels")

    assert "planned" not in Seen(top).text
    assert "11.7 % ± 0.7" in Seen(top).text


def test_the_ribbon_of_the_warp_lays_its_parts_end_to_end() -> None:
    """Waste of a quarter, cloth of a half and a rest of a quarter fill the wound length in order."""
    parts = (("tie-on", 0.25, "waste"), ("towels", 0.5, "cloth"), ("take-up", 0.25, "rest"), ("wound", 1.0, "total"))
    went = tuple(views.Went(what, "", share, kind) for what, share, kind in parts)
    _, bottom = panels("warp", views.WarpView("Towels", went=went), "warps/towels")

    drawn = [(names["class"], names["x"], names["width"]) for tag, names in Seen(bottom).elements if tag == "rect"]
    assert [("waste", "0.0", "250.0"), ("cloth", "250.0", "500.0"), ("rest", "750.0", "250.0")] == drawn


@pytest.mark.parametrize(
    ("typed", "shown"),
    [
        ("write `accepted: grew`.", "write <code>accepted: grew</code>."),
        ("`a` and `<b>`", "<code>a</code> and <code>&lt;b&gt;</code>"),
        ("one ` alone, `c` not", "one <code> alone, </code>c` not"),
        ("none <i>", "none &lt;i&gt;"),
        ("last `", "last `"),
    ],
)
def test_what_is_to_be_typed_is_set_as_code(typed: str, shown: str) -> None:
    """Words between backticks in a question stand as code, and whatever they are they stay words."""
    assert shown == str(coded(typed))


def test_many_columns_become_cards() -> None:
    """Each figure of a table that stacks where it is narrow has its column's heading at hand."""
    table = Table("Pieces", (Column("piece"), Column("washed, in")), ((cell("a"), cell("9")),))
    _, bottom = panels(
        "warp", views.WarpView("Towels", pieces=dataclasses.replace(table, stacked=True)), "warps/towels"
    )

    assert ["washed, in"] == [names["data-of"] for tag, names in Seen(bottom).elements if tag == "td"]


def cell(text: str) -> Cell:
    """A cell with this text."""
    return Cell(text)
