"""The list of drafts of the demonstration journal: found by every field, as pictures and as a table."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

from journal_tools.checking import woven_draft
from journal_tools.drafts.analysis import Analysis, analysed
from journal_tools.records import Draft, read_journal
from tests.browser.looking import SIDEWAYS, Look, looking, serving
from tests.house import PROJECT

Known = tuple[Draft, Analysis]

ALL = len(list((PROJECT / "entries" / "drafts").glob("*.md")))
"""The drafts of the demonstration journal."""


@pytest.fixture(scope="module")
def address(demo_site: Path) -> Iterator[str]:
    """The list of drafts of the demonstration journal's site, served."""
    with serving(demo_site) as top:
        yield f"{top}drafts.html"


@pytest.fixture(scope="module")
def known() -> Mapping[str, Known]:
    """Each draft of the demonstration journal by its title, with what it weaves."""
    records = read_journal(PROJECT / "entries").drafts.values()
    return {draft.heading: (draft, analysed(woven_draft(draft))) for draft in records}


def longest(one: Known) -> int:
    """The longest float of a draft, on either side."""
    return max(each.threads or 0 for each in one[1].floats)


def colours(one: Known) -> int:
    """How many colours the orders of a draft name."""
    return len({*one[1].draft.warp_colours, *one[1].draft.weft_colours})


RULES: Mapping[str, Callable[[Known, str], bool]] = {
    "Shafts": lambda one, wanted: one[1].draft.shafts <= int(wanted),
    "Treadles": lambda one, wanted: (
        not one[1].draft.treadles if wanted == "lift plan" else 0 < one[1].draft.treadles <= int(wanted)
    ),
    "Weave": lambda one, wanted: wanted in (one[0].weave, one[1].name.text),
    "Longest float": lambda one, wanted: longest(one) <= int(wanted),
    "Repeat, ends": lambda one, wanted: one[1].repeat[1] <= int(wanted),
    "Repeat, picks": lambda one, wanted: one[1].repeat[0] <= int(wanted),
    "Colours named": lambda one, wanted: not colours(one) if wanted == "–" else 0 < colours(one) <= int(wanted),
    "Tag": lambda one, wanted: wanted in one[0].tags,
}
"""Of each field, whether a draft is wanted by an answer."""


def pictures(page: Page) -> list[str]:
    """The titles of the cards that can be seen."""
    return sorted(page.locator(".card:visible h2").all_inner_texts())


def lines(page: Page) -> list[str]:
    """The titles of the table's lines that can be seen."""
    return sorted(page.locator("tbody tr:visible th").all_inner_texts())


def as_a_table(page: Page) -> None:
    """Turn from the pictures to the table."""
    page.get_by_label("a table", exact=True).check()


def field(page: Page, label: str) -> Locator:
    """The field that a weaver hears called by a label."""
    return page.get_by_role("combobox", name=label, exact=True)


def answers(page: Page, label: str) -> list[str]:
    """The values that a field offers, but for the one that leaves nothing out."""
    return [value for value in field(page, label).locator("option").evaluate_all(VALUES) if value]


VALUES = "all => all.map(each => each.value)"


class TestFinding:
    """What is shown, by what is asked."""

    @pytest.mark.parametrize("label", RULES)
    @pytest.mark.parametrize("shown", [pictures, lines])
    def test_every_answer_of_every_field(
        self, desk: Look, address: str, known: Mapping[str, Known], label: str, shown: Callable[[Page], list[str]]
    ) -> None:
        """With any answer of any field those drafts are shown that have it, as pictures and as lines, and counted."""
        page = desk.at(address)
        if shown is lines:
            as_a_table(page)
        offered = answers(page, label)
        for wanted in offered:
            field(page, label).select_option(wanted)
            fitting = sorted(title for title, one in known.items() if RULES[label](one, wanted))

            assert fitting == shown(page), wanted
            counted = f"{len(fitting)} of {len(known)} drafts" if len(fitting) < len(known) else f"{len(known)} drafts"
            assert counted == page.get_by_role("status").inner_text()
        assert len(offered) > 1
        assert [] == desk.wrong

    @pytest.mark.parametrize(
        ("words", "titles"),
        [
            ("houndstooth", ["Houndstooth"]),
            ("2/2 twill lift plan", ["Double width, 2/2 twill in both layers"]),
            ("8 shafts", ["Double width, 2/2 twill in both layers", "Sedge diamonds, a point on eight"]),
            ("8-shaft", ["Double width, 2/2 twill in both layers", "Sedge diamonds, a point on eight"]),
            ("8 sh", ["Double width, 2/2 twill in both layers", "Sedge diamonds, a point on eight"]),
            ("point twill 8 shafts", ["Sedge diamonds, a point on eight"]),
            ("longest float 7", ["Waffle on six, deeper cells"]),
            ("rust bone", ["Marram stripes, crammed and spaced", "Two layers of plain weave"]),
            ("5", ["Five-end satin"]),
            ("4", []),
            ("zzz", []),
        ],
    )
    def test_by_words(self, desk: Look, address: str, words: str, titles: list[str]) -> None:
        """Words are looked for in names, weaves, tags and colours, a number with its word in the figures."""
        page = desk.at(address)
        page.get_by_label("Words", exact=True).fill(words)
        assert titles == pictures(page)

        as_a_table(page)
        assert titles == lines(page)
        assert f"{len(titles)} of {ALL} drafts" == page.get_by_role("status").inner_text()

    def test_four_shafts(self, desk: Look, address: str, known: Mapping[str, Known]) -> None:
        """ "4 shafts" finds the drafts on four shafts and none on eight."""
        page = desk.at(address)
        page.get_by_label("Words", exact=True).fill("4 shafts")

        assert sorted(title for title, one in known.items() if one[1].draft.shafts == 4) == pictures(page)

    def test_all_hold_together(self, desk: Look, address: str) -> None:
        """Four shafts, four treadles, floats over two threads and two colours, each at most, leave three drafts."""
        page = desk.at(address)
        for label, wanted in {"Shafts": "4", "Treadles": "4", "Longest float": "2", "Colours named": "2"}.items():
            field(page, label).select_option(wanted)
        assert ["Houndstooth", "Log cabin", "Marram stripes, crammed and spaced"] == pictures(page)

        field(page, "Tag").select_option("colour-and-weave")
        page.get_by_label("Words", exact=True).fill("twill")
        assert ["Houndstooth"] == pictures(page)


class TestTheForm:
    """How it is used."""

    def test_labels(self, desk: Look, address: str) -> None:
        """Every field has its own label, and the choice between pictures and table has a name."""
        page = desk.at(address)
        fields = page.locator("form.filter :is(input, select)")

        assert [1] * 11 == fields.evaluate_all("all => all.map(each => each.labels.length)")
        assert [1] * 8 == [field(page, label).count() for label in RULES]
        assert page.get_by_role("group", name="Show as").is_visible()

    def test_by_the_keyboard_alone(self, desk: Look, address: str) -> None:
        """From the words one reaches every field, both ways to show the list, and the button that clears, in order."""
        page = desk.at(address)
        page.get_by_label("Words", exact=True).focus()
        page.keyboard.type("twill")
        page.keyboard.press("Tab")
        page.keyboard.type("8")
        assert "8" == field(page, "Shafts").input_value()
        page.keyboard.press("Tab")
        page.keyboard.type("a lift")
        assert ["Double width, 2/2 twill in both layers"] == pictures(page)

        for _ in range(7):
            page.keyboard.press("Tab")
        page.keyboard.press("ArrowRight")
        assert ["Double width, 2/2 twill in both layers"] == lines(page)
        assert [] == pictures(page)

        page.keyboard.press("Tab")
        page.keyboard.press("Enter")
        assert ALL == len(lines(page))
        assert "Clear" == page.locator(":focus").inner_text()

    def test_clear(self, desk: Look, address: str) -> None:
        """The button empties every field, and leaves it at pictures or table."""
        page = desk.at(f"{address}#words=twill&shafts=4&as=table")
        page.get_by_role("button", name="Clear").click()

        assert [""] * 9 == page.locator("form.filter :is([type=search], select)").evaluate_all(VALUES)
        assert ALL == len(lines(page))
        expect(page).to_have_url(f"{address}#as=table")

    def test_the_address_keeps_it(self, desk: Look, address: str, browser: Browser) -> None:
        """What is sought stands in the address, and another browser that opens it shows the same."""
        page = desk.at(address)
        page.get_by_label("Words", exact=True).fill("huck lace")
        field(page, "Repeat, ends").select_option("10")
        as_a_table(page)
        expect(page).to_have_url(f"{address}#words=huck+lace&ends=10&as=table")

        with looking(browser) as look:
            other = look.at(page.url)
            assert ["Huck lace, small squares"] == lines(other)
            assert "huck lace" == other.get_by_label("Words", exact=True).input_value()
            assert [] == look.wrong

    def test_another_address_in_the_same_tab(self, desk: Look, address: str) -> None:
        """A bookmark opened over the list shows what it keeps; the way past the bar changes nothing."""
        page = desk.at(f"{address}#shafts=2")
        assert 3 == len(pictures(page))
        page.evaluate("location.hash = '#weave=waffle+weave&shafts=17'")
        expect(page.get_by_role("status")).to_have_text(f"2 of {ALL} drafts")

        page.evaluate("location.hash = '#cloth'")
        expect(page.get_by_role("status")).to_have_text(f"2 of {ALL} drafts")
        assert "" == field(page, "Shafts").input_value()

    def test_from_a_disk(self, desk: Look, demo_site: Path) -> None:
        """Opened from a disk it finds, and keeps the address, too."""
        page = desk.at((demo_site / "drafts.html").as_uri())
        field(page, "Shafts").select_option("3")

        assert 4 == len(pictures(page))
        page.wait_for_url("**/drafts.html#shafts=3")
        assert [] == desk.wrong


class TestTheLook:
    """Once, and readable, on a telephone and without scripts."""

    @pytest.mark.parametrize("tab", ["desk", "phone"])
    def test_each_draft_once(self, request: pytest.FixtureRequest, tab: str, address: str) -> None:
        """Each draft is shown once, as a picture or as a line, and nothing moves sideways."""
        page = request.getfixturevalue(tab).at(address)
        assert (ALL, 0) == (len(pictures(page)), len(lines(page)))
        assert 0 == page.evaluate(SIDEWAYS)

        as_a_table(page)
        assert (0, ALL) == (len(pictures(page)), len(lines(page)))
        assert 0 == page.evaluate(SIDEWAYS)

    def test_what_a_telephone_scrolls_through(self, phone: Look, address: str) -> None:
        """At 390 pixels a draft takes no more than a quarter of a screen of 844, as a picture or in the table."""
        page = phone.at(address)
        cards = page.locator(".card").evaluate_all(HEIGHTS)
        as_a_table(page)
        rows = page.locator("tbody tr").evaluate_all(HEIGHTS)

        assert (ALL, ALL) == (len(cards), len(rows))
        assert sum(cards) / ALL < 844 / 4 > sum(rows) / ALL

    def test_without_scripts(self, browser: Browser, address: str) -> None:
        """Where no scripts run, pictures and table both stand, whole, and there is no form that does nothing."""
        with looking(browser, java_script_enabled=False) as look:
            page = look.at(address)

            assert (ALL, ALL) == (len(pictures(page)), len(lines(page)))
            assert not page.locator("form.filter").is_visible()


HEIGHTS = "all => all.map(each => each.getBoundingClientRect().height)"
