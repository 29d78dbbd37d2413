"""The list of warps: narrowed down, sorted, and used without a mouse."""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.looking import Look, looking


def shown(page: Page) -> list[str]:
    """The titles of the cards that can be seen, in their order."""
    return page.locator(".card:visible h2").all_inner_texts()


NAPKINS, ESTUARY = "Gannet napkins, bookmarks off the end", "Estuary towels"
TIDELINE, SCARF, BLANKET, SAMPLER = (
    "Tideline towels",
    "The scarf that shrank",
    "Fold blanket",
    "Cotton sett sampler",
)


class TestNarrowing:
    def test_everything_at_first(self, desk: Look, tiny: str) -> None:
        """At first every warp is shown, newest first and undated last, and counted."""
        page = desk.at(f"{tiny}warps.html")

        assert [ESTUARY, NAPKINS, BLANKET, SAMPLER, SCARF, TIDELINE] == shown(page)
        assert "6 in all" == page.get_by_role("status").inner_text()

    @pytest.mark.parametrize(
        ("words", "titles"),
        [
            ("gannet", [NAPKINS]),
            ("towels", [ESTUARY, TIDELINE]),
            ("TOWELS twill", [ESTUARY]),
            ("linen 20/2", [NAPKINS]),
            ("bookmarks", [NAPKINS]),
            ("lace", [NAPKINS]),
            ("zibeline", []),
        ],
    )
    def test_by_words(self, desk: Look, tiny: str, words: str, titles: list[str]) -> None:
        """Words are looked for on the card and in the names of yarns, weaves and stretches; all must be there."""
        page = desk.at(f"{tiny}warps.html")
        page.get_by_role("searchbox", name="Words", exact=True).fill(words)

        assert titles == shown(page)
        assert f"{len(titles)} of 6" == page.get_by_role("status").inner_text()

    @pytest.mark.parametrize(
        ("name", "choice", "titles"),
        [
            ("yarn", "Cottolin 22/2", [ESTUARY, TIDELINE]),
            ("weave", "plain weave", [SAMPLER, TIDELINE]),
            ("year", "2024", [NAPKINS]),
        ],
    )
    def test_by_choice(self, desk: Look, tiny: str, name: str, choice: str, titles: list[str]) -> None:
        """A yarn, a weave or a year is chosen from those that there are."""
        page = desk.at(f"{tiny}warps.html")
        page.locator(f"select[name={name}]").select_option(choice)

        assert titles == shown(page)

    def test_both_and_back(self, desk: Look, tiny: str) -> None:
        """Choices and words hold together, and when they are taken back everything is there again."""
        page = desk.at(f"{tiny}warps.html")
        page.locator("select[name=yarn]").select_option("Cottolin 22/2")
        page.get_by_role("searchbox", name="Words", exact=True).fill("tideline")
        assert [TIDELINE] == shown(page)

        page.locator("select[name=yarn]").select_option("every yarn")
        page.get_by_role("searchbox", name="Words", exact=True).fill("")
        assert 6 == len(shown(page))

    def test_without_scripts(self, browser: Browser, tiny: str) -> None:
        """Where no scripts run, the list is whole and there is no form that does nothing."""
        with looking(browser, java_script_enabled=False) as look:
            page = look.at(f"{tiny}warps.html")

            assert 6 == len(shown(page))
            assert not page.locator("form.filter").is_visible()


class TestSorting:
    def test_by_a_column_and_back(self, desk: Look, tiny: str) -> None:
        """A press on a heading sorts by its column, a second one the other way; what is missing stays last."""
        page = desk.at(f"{tiny}yarns.html")
        names = page.locator("table tbody th")
        heading = page.locator("table thead th", has_text="width, reed to washed")
        heading.get_by_role("button").click()
        up = names.all_inner_texts()
        assert "ascending" == heading.get_attribute("aria-sort")

        heading.get_by_role("button").click()
        assert "descending" == heading.get_attribute("aria-sort")
        assert up != names.all_inner_texts()
        assert sorted(up) == sorted(names.all_inner_texts())


class TestTheKeyboard:
    def test_first_comes_the_way_past_the_bar(self, desk: Look, tiny: str) -> None:
        """The first press of Tab offers the way past the bar, which then can be seen, and leads into the page."""
        page = desk.at(f"{tiny}warps.html")
        page.keyboard.press("Tab")
        skip = page.locator(":focus")

        assert "To the page" == skip.inner_text()
        assert skip.evaluate("each => each.getBoundingClientRect().top >= 0")
        page.keyboard.press("Enter")
        assert page.url.endswith("#cloth")

    @pytest.mark.parametrize("address", ["warps.html", "warps/gannet-napkins.html", "yarns/cottolin-22-2.html"])
    def test_where_it_is_can_be_seen(self, desk: Look, tiny: str, address: str) -> None:
        """At each of the first thirty stops there is a line around what has the focus, on the screen."""
        page = desk.at(tiny + address)
        page.keyboard.press("Tab")  # past the hidden one, which is tested above
        stops = []
        for _ in range(30):
            page.keyboard.press("Tab")
            stops.append(page.evaluate(STOP))
        outside = [stop for stop in stops if stop["tag"] == "BODY"]

        assert [] == [stop["html"] for stop in stops if stop not in outside and not stop["lined"]]
        assert [] == [stop["html"] for stop in stops if stop not in outside and not stop["on"]]
        assert len(stops) - len(outside) > 15

    def test_a_card_by_the_keyboard(self, desk: Look, tiny: str) -> None:
        """From the words of the filter one more key leads on, and a card opens with Enter."""
        page = desk.at(f"{tiny}warps.html")
        page.get_by_role("searchbox", name="Words", exact=True).fill("tideline")
        for _ in range(6):
            page.keyboard.press("Tab")
            if page.evaluate("document.activeElement.closest('.card') !== null"):
                break
        page.keyboard.press("Enter")
        page.wait_for_url("**/warps/tideline-towels.html")


STOP = """
(() => {
  const it = document.activeElement;
  const shown = it.matches(".md-option") ? [it.nextElementSibling] : [it, it.closest(".card") || it];
  const lined = shown.some(each => {
    const style = getComputedStyle(each);
    return (style.outlineStyle !== "none" && parseFloat(style.outlineWidth) > 0) || style.boxShadow !== "none";
  });
  const on = shown.some(each => {
    const box = each.getBoundingClientRect();
    return box.bottom > 0 && box.top < innerHeight;
  });
  return { tag: it.tagName, html: it.outerHTML.slice(0, 90), lined: lined, on: on };
})()
"""
