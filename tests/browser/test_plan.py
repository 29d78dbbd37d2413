"""The page that plans a warp, in a real browser: as the command plans it, kept in its address, used without a mouse."""

from __future__ import annotations

import inspect
import re
import shutil
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any
from urllib.parse import urlencode

import pytest
from playwright.sync_api import Browser, Page, expect

from journal_tools.forecast.memory import Memory
from journal_tools.planning import limits
from journal_tools.planning.allowances import SPARE_YARN
from journal_tools.planning.at_the_loom import hem_words, picks_words
from journal_tools.planning.plan import Plan, plan_of
from journal_tools.planning.wants import Asked
from journal_tools.planning.words import Words
from journal_tools.quantities import parse_length, parse_size
from journal_tools.records import Journal, read_journal
from tests.browser.looking import SIDEWAYS, Look, looking
from tests.browser.wanted import WANTED, record
from tests.house import PROJECT

EIGHTH = 3.175
"""An eighth of an inch in mm: the page tells a range by sums alone, and may be off by less than a tape shows."""

MOSTLY = re.compile(r", mostly (.+?)(?=\. \d|\. The|\. None|\.$)")
"""Which of the warps that fit tells the most is a near thing, and the page asks of the yarn as it is mostly woven."""


@dataclass(frozen=True)
class Desk:
    """The demonstration journal with the wanted warps in it, what it remembers without them, and its site."""

    journal: Journal
    memory: Memory
    page: str

    def plan(self, name: str) -> Plan:
        """As the command plans it."""
        sample, gap = (WANTED[name].get(each) for each in ("sample", "gap"))
        asked = Asked(sample_mm=sample and float(parse_length(sample).mm), gap_mm=gap and float(parse_length(gap).mm))
        own = f"wanted-{list(WANTED).index(name)}"
        past = {each: warp for each, warp in self.journal.warps.items() if not each.startswith("wanted-")}
        warp = self.journal.warps[own]
        return plan_of(replace(self.journal, warps={**past, own: warp}), self.memory, warp, asked)


@pytest.fixture(scope="module")
def demo(demo_site: Path, tmp_path_factory: pytest.TempPathFactory) -> Desk:
    """Opened from the disk, as from a stick."""
    entries = tmp_path_factory.mktemp("wanted") / "entries"
    shutil.copytree(PROJECT / "entries", entries)
    for number, wanted in enumerate(WANTED.values()):
        (entries / "warps" / f"wanted-{number}.md").write_text(record(wanted), encoding="utf-8")
    memory = Memory.of(read_journal(PROJECT / "entries"))
    return Desk(read_journal(entries), memory, (demo_site / "plan.html").as_uri())


def planned(page: Page, address: str, wanted: dict[str, str]) -> dict[str, Any]:
    """What the page reckons for an address."""
    page.goto("about:blank")
    page.goto(f"{address}#{urlencode(wanted)}")
    found: dict[str, Any] = page.evaluate("tenterhook.shown.plan")
    return found


class TestAsTheCommandPlans:
    @pytest.mark.parametrize("name", WANTED)
    def test_what_hands_do(self, desk: Look, demo: Desk, name: str) -> None:
        """Dents, ends, sley, length to weave, picks and warp to wind are the command's, to the last one."""
        plan = demo.plan(name)
        stretch, piece = plan.stretches[0], plan.stretches[0].pieces[0]
        found = planned(desk.page, demo.page, WANTED[name])

        assert stretch.across.dents == found["reed"]["dents"]
        assert stretch.across.ends == found["reed"]["ends"]
        assert list(stretch.across.sleying.order) == found["reed"]["sley"]["order"]
        assert pytest.approx(piece.weave_mm) == found["weave"]
        assert piece.picks == found["picks"]
        assert pytest.approx(plan.length.wind_mm) == found["warp"]["wind"]
        yarn = [each["g"] * (1 + SPARE_YARN) for each in found["yarn"].values() if each["g"]]
        assert pytest.approx(sum(each.grams or 0 for each in plan.yarns), rel=1e-4) == sum(yarn)
        assert [line.name for line in plan.length.lines] == [line["name"] for line in found["warp"]["lines"]]

    @pytest.mark.parametrize("name", WANTED)
    def test_what_to_expect(self, desk: Look, demo: Desk, name: str) -> None:
        """Sizes to expect are the command's, and ranges and the worst of the batch are within an eighth of an inch."""
        piece = demo.plan(name).stretches[0].pieces[0]
        found = planned(desk.page, demo.page, WANTED[name])
        for said, shown in ((piece.width, found["width"]), (piece.length, found["length"])):
            assert said is not None
            assert pytest.approx(said.mm, abs=0.2) == shown["mm"]
            for end in ("low", "high", "worst"):
                assert pytest.approx(getattr(said, end), abs=EIGHTH) == shown[end]

        assert (piece.risk is None) == (found["risk"] is None)
        assert piece.useless == found["useless"]

    @pytest.mark.parametrize("name", WANTED)
    def test_in_the_same_words(self, desk: Look, demo: Desk, name: str) -> None:
        """What it rests on, what the loom cannot do, picks, hours and hems are said in the command's words."""
        plan = demo.plan(name)
        planned(desk.page, demo.page, WANTED[name])
        words, [stretch], shown = Words(plan), plan.stretches, desk.page.locator("#plan-shown")
        printed = [words.loom(), *hem_words(stretch.pieces)]
        rests = [MOSTLY.split(said) for said in (words.rests(stretch), shown.locator(".rests").inner_text())]
        fit = [plan.wants.journal.warps[warp].heading for warp in stretch.rests_on.both or stretch.rests_on.yarn_warps]

        assert rests[0][::2] == rests[1][::2]
        assert [] == [warp for warp in rests[1][1::2][:1] if warp not in fit]
        assert words.limits() == shown.locator(".fault li").all_inner_texts()
        assert " ".join(filter(None, printed)) == shown.locator(".only-printed p").nth(1).text_content()
        assert picks_words(stretch, plan.wants.density_unit) in (shown.text_content() or "")
        assert "".join(said for said in words.repeats(stretch) if said.startswith("Wind ")) == "".join(
            text for text in shown.locator("p.said").all_inner_texts() if text.startswith("Wind ")
        )
        assert words.money().partition("At the pace")[2] in (shown.text_content() or "")

    def test_every_limit_has_its_case(self, demo: Desk) -> None:
        """Among what is planned here is every kind of limit that a form can run into."""
        met = {limit.slug for name in WANTED for limit in demo.plan(name).stretches[0].limits}
        never = {"no-such-loom", "no-such-reed", "no-such-weave", "two-widths"}  # a form offers only what there is

        assert set(re.findall(r'Limit\(\s*"([a-z-]+)"', inspect.getsource(limits))) - never == met

    def test_a_yarn_never_used(self, desk: Look, tiny: str) -> None:
        """A yarn that is new on the shelf is called a guess before any figure."""
        page = desk.at(f"{tiny}plan.html")
        page.evaluate(
            """() => {
              tenterhook.journal.yarns.ramie = { title: "Ramie 20/2", fibre: "ramie", tex: 60, room: 2200 };
              document.getElementById("plan-warp").add(new Option("Ramie 20/2", "ramie"));
            }"""
        )
        page.get_by_label("Warp yarn").select_option("ramie")

        assert page.locator(".rests").inner_text().startswith("A guess: nothing of yours in Ramie 20/2. It goes by ")


class TestTheForm:
    def test_it_changes_as_you_type(self, desk: Look, demo: Desk) -> None:
        """A wider towel wants more dents at once, and a screen reader is told in one sentence."""
        page = desk.at(demo.page)
        before = page.evaluate("tenterhook.shown.plan.reed.dents")
        page.get_by_label("Width", exact=True).fill("20 1/2")

        assert page.evaluate("tenterhook.shown.plan.reed.dents") > before
        expect(page.get_by_role("status")).to_have_text(page.locator("#plan-short").text_content() or "-")
        assert desk.wrong == []

    @pytest.mark.parametrize(
        ("typed", "mm"),
        [
            *(("18", 457.2), ("18 1/4", 463.55), ("18¼", 463.55)),
            *(("46,5 cm", 465.0), ("465 mm", 465.0), ("1 ft 6 in", 457.2)),
        ],
    )
    def test_lengths_as_they_are_typed(self, desk: Look, demo: Desk, typed: str, mm: float) -> None:
        """A length may have a fraction, another unit, or two."""
        page = desk.at(demo.page)
        page.get_by_label("Width", exact=True).fill(typed)

        assert pytest.approx(mm) == page.evaluate("tenterhook.shown.wanted.width")

    @pytest.mark.parametrize("typed", ["wide", "1,200", "-3", "0", "18 pounds", "1/0"])
    def test_what_cannot_be_read(self, desk: Look, demo: Desk, typed: str) -> None:
        """What cannot be read is marked and told, what was reckoned before is dimmed, and nothing breaks."""
        page = desk.at(demo.page)
        field = page.get_by_label("Width", exact=True)
        field.fill(typed)

        assert "true" == field.get_attribute("aria-invalid")
        assert "a length such as 18 1/4" == page.locator("#plan-width-hint").inner_text()
        assert "stale" in (page.locator("#plan-answer").get_attribute("class") or "")
        field.fill("18")
        assert field.get_attribute("aria-invalid") is None
        assert "stale" not in (page.locator("#plan-answer").get_attribute("class") or "")
        assert desk.wrong == []

    def test_every_field_is_named(self, desk: Look, demo: Desk) -> None:
        """Every field has a label and a hint that is read out with it."""
        page = desk.at(demo.page)
        unnamed = page.evaluate(
            "[...document.querySelectorAll('#plan :is(input, select)')].filter(one => !one.labels.length"
            " || !document.getElementById(one.getAttribute('aria-describedby'))).map(one => one.name)"
        )

        assert [] == unnamed

    def test_by_the_keyboard(self, desk: Look, demo: Desk) -> None:
        """From the first field to the record, everything is reached with Tab, and the record is copied with Enter."""
        page = desk.at(demo.page)
        page.get_by_label("What it is").focus()
        for _ in range(60):
            page.keyboard.press("Tab")
            if page.evaluate("document.activeElement.dataset.does === 'copy'"):
                break
        page.keyboard.press("Enter")

        expect(page.locator(":focus")).to_have_text("Copied")


class TestWhatIsKept:
    def test_the_address_holds_the_plan(self, desk: Look, demo: Desk) -> None:
        """What was typed stands in the address, and another visit to it finds the same plan."""
        page = desk.at(demo.page)
        page.get_by_label("Length", exact=True).fill("31 1/2")
        page.get_by_label("Weave").select_option("2/2 twill")
        page.get_by_label("Reed and sley").select_option(index=2)
        kept, plan = page.url, page.evaluate("JSON.stringify(tenterhook.shown.plan)")
        page.goto("about:blank")
        page.goto(kept)

        assert "long=31+1%2F2" in kept
        assert plan == page.evaluate("JSON.stringify(tenterhook.shown.plan)")

    def test_the_way_past_the_bar_forgets_nothing(self, desk: Look, demo: Desk) -> None:
        """The way past the bar leads into the page and leaves what was typed."""
        page = desk.at(demo.page)
        page.get_by_label("Width", exact=True).fill("21")
        page.evaluate("location.hash = '#cloth'")
        page.wait_for_function("location.hash === '#cloth'")

        assert "21" == page.get_by_label("Width", exact=True).input_value()

    def test_what_was_typed_stands_as_it_was(self, desk: Look, demo: Desk) -> None:
        """Sizes, hem, sett and beat stand in the record as they were typed, and not to the tape's marks."""
        wanted = {"width": "46,3 cm", "long": "70.2 cm", "sized": "made_up", "hem": "2,2 cm", "turn": "7 mm"}
        cloth = {"warp": "cottolin-22-2", "weave": "plain weave", "sett": "9.4/cm", "beat": "8.7/cm"}
        planned(desk.page, demo.page, wanted | cloth)
        text = desk.page.locator("#plan-record").text_content() or ""

        assert "    made_up: 46,3 x 70.2 cm\n" in text
        assert "  depth: 2,2 cm\n  turn: 7 mm\n" in text
        assert "\nsett: 9.4/cm\n" in text
        assert "\nbeat: 8.7/cm\n" in text

    @pytest.mark.parametrize(
        ("width", "long", "size"),
        [
            *(("18", "28 1/2", "18 x 28 1/2 in"), ("18", "70.2 cm", "18 in x 70.2 cm")),
            *(("1 ft 6 in", "2 ft 4 in", "1 ft 6 in x 2 ft 4 in"), ("18¼ in", "28", "18¼ x 28 in")),
        ],
    )
    def test_sizes_in_the_record(self, desk: Look, demo: Desk, width: str, long: str, size: str) -> None:
        """A size in the record is what was typed, with the unit that a bare number was read in, and reads so."""
        planned(desk.page, demo.page, {"width": width, "long": long})
        text = desk.page.locator("#plan-record").text_content() or ""
        wide, tall = desk.page.evaluate("[tenterhook.shown.wanted.width, tenterhook.shown.wanted.long]")
        read = parse_size(size)

        assert size in text.split("made_up: ")[1].splitlines()[0].strip('"')
        assert pytest.approx((wide, tall)) == (float(read.width_mm or 0), float(read.length.mm if read.length else 0))

    def test_another_reed_than_the_nearest(self, desk: Look, demo: Desk) -> None:
        """Where a reed was chosen for its own sett, the record tells reed and sley, and no beat that the past tells."""
        page = desk.at(demo.page)
        page.get_by_label("Ends to the inch").fill("24")
        nearest = page.locator("#plan-record").text_content() or ""
        page.get_by_label("Reed and sley").select_option(index=3)
        other = page.locator("#plan-record").text_content() or ""

        assert ["sett: 24/in" in text for text in (nearest, other)] == [True, False]
        assert ["beat:" in text for text in (nearest, other)] == [False, False]

    def test_a_shaft_without_a_heddle(self, desk: Look, demo: Desk) -> None:
        """A shaft that the loom's record says has none is short of all of them."""
        planned(desk.page, demo.page, WANTED["scarves with a fringe"])
        before = desk.page.locator("#plan-shown .fault li").all_inner_texts()
        desk.page.evaluate("tenterhook.journal.looms['small-loom'].heddles = { 0: 5000, 2: 0 }")
        desk.page.get_by_label("How many").fill("3")
        after = desk.page.locator("#plan-shown .fault li").all_inner_texts()

        [short] = [text for text in after if text not in before]
        assert short.startswith("Shaft 2 takes ")
        assert " has 0 on it: " in short

    @pytest.mark.parametrize("name", WANTED)
    def test_the_record_is_one(self, desk: Look, demo: Desk, name: str, tmp_path: Path) -> None:
        """The record that the page gives is read without a fault, and planned again it is the same plan."""
        found = planned(desk.page, demo.page, WANTED[name])
        text = desk.page.locator("#plan-record").text_content() or ""
        entries = tmp_path / "entries"
        shutil.copytree(PROJECT / "entries", entries)
        (entries / "warps" / "from-the-page.md").write_text(text, encoding="utf-8")
        journal = read_journal(entries)
        again = plan_of(journal, demo.memory, journal.warps["from-the-page"])

        assert () == journal.problems_of("warps/from-the-page.md")
        assert found["reed"]["dents"] == again.stretches[0].across.dents
        assert pytest.approx(found["weave"]) == again.stretches[0].pieces[0].weave_mm
        if "beat" in WANTED[name]:
            assert found["picks"] == again.stretches[0].pieces[0].picks

    def test_it_can_be_downloaded(self, desk: Look, demo: Desk) -> None:
        """The record comes as a file that is named as a record is."""
        page = desk.at(demo.page)
        with page.expect_download() as waiting:
            page.get_by_role("button", name="Download it").click()

        assert waiting.value.suggested_filename == page.locator("#plan-file").inner_text()
        assert Path(waiting.value.path()).read_text(encoding="utf-8") == page.locator("#plan-record").text_content()


class TestWhereItIsRead:
    def test_without_a_network(self, browser: Browser, demo: Desk) -> None:
        """From a disk with the network off it plans all the same, and asks for nothing from elsewhere."""
        with looking(browser, offline=True) as look:
            page = look.at(demo.page)

            assert page.locator("#plan-answer").is_visible()
            assert [] == look.elsewhere
            assert [] == look.wrong

    def test_on_a_telephone(self, phone: Look, demo: Desk) -> None:
        """On a telephone the plan in short stands at the foot while one types, and leads to the whole."""
        page = phone.at(demo.page)
        short = page.locator("#plan-short")

        assert short.is_visible()
        assert short.inner_text().startswith("Sley ")
        assert page.evaluate(SIDEWAYS) <= 0
        short.click()
        page.wait_for_function("document.querySelector('#plan-answer').getBoundingClientRect().top < 60")

    def test_printed(self, desk: Look, demo: Desk) -> None:
        """On paper what was wanted stands in a line above what to do, without a field to type in."""
        page = desk.at(demo.page)
        assert not page.locator(".only-printed").is_visible()
        page.emulate_media(media="print")

        assert page.locator(".only-printed").is_visible()
        assert page.evaluate("tenterhook.shown.wanted.title") in page.locator(".only-printed").inner_text()
        assert "picks an inch" in page.locator("#plan-shown").inner_text()
        assert 0 == page.locator("#plan :is(input, select):visible").count()
        assert "in the reed" in (page.locator("#plan-shown").text_content() or "")

    def test_without_scripts(self, browser: Browser, demo: Desk) -> None:
        """Where no scripts run, the page says where else to plan."""
        with looking(browser, java_script_enabled=False) as look:
            assert "tenterhook plan" in look.at(demo.page).locator("noscript").inner_text()
