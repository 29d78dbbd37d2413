"""The list of drafts: the fields to find one by, the line on a card, and the table beside the cards."""

from __future__ import annotations

from pathlib import Path

import pytest

from journal_tools.pages.archive import Archive
from journal_tools.pages.list_pages import list_view
from journal_tools.pages.templating import panels
from journal_tools.pages.views import ListView
from journal_tools.pictures.store import PictureStore
from tests.built import Seen
from tests.ledger.desk import write

TWILL = "threading: 1-4\ntie_up: 1+2, 2+3, 3+4, 4+1\ntreadling: 1-4"
PLAIN = "threading: 1, 2\ntie_up: 1, 2\ntreadling: 1, 2"
DRAFTS = {
    "drafts__twill": f"title: Twill\n{TWILL}\nweave: towel twill\nwarp_colours: rust\nweft_colours: bone",
    "drafts__plain": f"title: Plain\n{PLAIN}\ntags:\n  - easy\n  - easy, for a first day",
    "drafts__sateen": "title: Sateen\nthreading: 1-5\nlift_plan: 1, 3, 5, 2, 4",
    "drafts__broken": "title: Broken\nthreading: 1-4",
}


def drafts(folder: Path, **records: str) -> ListView:
    """The list of the drafts of a journal made on the spot."""
    return list_view(Archive(write(folder / "journal", **records), PictureStore(folder / "pictures")), "drafts")


@pytest.fixture
def view(tmp_path: Path) -> ListView:
    """A twill in two colours, a tagged plain weave, a sateen by a lift plan, and one that cannot be woven."""
    return drafts(tmp_path, **DRAFTS)


def asked(view: ListView) -> dict[str, list[str]]:
    """The words of the answers of each field, by its label."""
    return {one.label: [words for _, words in one.answers] for one in view.choices}


def test_the_fields_offer_what_there_is(view: ListView) -> None:
    """Each field offers only what some draft has, smallest first, and what has no number after the numbers."""
    assert {
        "Shafts": ["2 shafts at most", "4 shafts at most", "5 shafts at most"],
        "Treadles": ["2 treadles at most", "4 treadles at most", "a lift plan, no treadles"],
        "Weave": ["2/2 twill", "5-end sateen", "plain weave", "towel twill"],
        "Longest float": ["1 thread at most", "2 threads at most", "4 threads at most"],
        "Repeat, ends": ["2 ends at most", "4 ends at most", "5 ends at most"],
        "Repeat, picks": ["2 picks at most", "4 picks at most", "5 picks at most"],
        "Colours named": ["2 colours at most", "none"],
        "Tag": ["easy", "easy, for a first day"],
    } == asked(view)


def test_what_tells_nothing_apart_is_not_asked(tmp_path: Path) -> None:
    """Where all drafts have four shafts, treadles and picks, and none a tag, the weave alone is asked for."""
    same = {f"drafts__{name}": f"title: {name}\n{TWILL}" for name in ("one", "two")}

    assert {"Weave": ["2/2 twill"]} == asked(drafts(tmp_path, **same))


def test_a_thread_that_is_never_crossed(tmp_path: Path) -> None:
    """A draft with a thread that no other crosses is longer than any float that can be asked for, and says so."""
    never = "title: Never\nthreading: 1, 2, 3\ntie_up: 1, 2\ntreadling: 1, 2"
    view = drafts(tmp_path, drafts__never=never, drafts__plain=DRAFTS["drafts__plain"])
    cells = {row[0].text: row[4].text for row in view.tables[0].rows}

    assert {"Never": "never crossed", "Plain": "1"} == cells
    assert ["1 thread at most"] == asked(view)["Longest float"]
    assert "a thread never crossed" in {card.title: card.line for card in view.cards}["Never"]


def test_the_line_on_a_card(view: ListView) -> None:
    """A card tells shafts, treadles or lift plan, longest float, repeat and warps; of a broken draft what is known."""
    lines = {card.title: " · ".join(card.line) for card in view.cards}

    assert "4 shafts · 4 treadles · longest float 2 · repeat 4 ends, 4 picks · not woven yet" == lines["Twill"]
    assert "5 shafts · lift plan · longest float 4 · repeat 5 ends, 5 picks · not woven yet" == lines["Sateen"]
    assert "4 shafts · not woven yet" == lines["Broken"]


def test_warps_are_counted(tmp_path: Path) -> None:
    """A card says how many warps were woven in its draft."""
    warps = {f"warps__{name}": f"title: {name}\ndraft: plain" for name in ("one", "two")}
    [card] = drafts(tmp_path, drafts__plain=DRAFTS["drafts__plain"], **warps).cards

    assert "2 warps" == card.line[-1]


def test_numbers_are_no_words(view: ListView) -> None:
    """What the words are looked for in holds names, weaves, tags and colours, and no figure of the draft."""
    words = {card.title: card.found_by for card in view.cards}

    assert "2/2 twill towel twill rust bone" == words["Twill"]
    assert "easy easy, for a first day plain weave" == words["Plain"]
    assert "" == words["Broken"]


def test_the_table_has_both_names_of_a_weave(view: ListView) -> None:
    """The table tells what a draft was found to weave, and beneath it what the weaver calls it."""
    weaves = {row[0].text: (row[3].text, row[3].small) for row in view.tables[0].rows}

    assert ("2/2 twill", "called towel twill") == weaves["Twill"]
    assert [("plain weave", ""), ("5-end sateen", "")] == [weaves["Plain"], weaves["Sateen"]]


def test_what_is_not_in_the_table_is_said(view: ListView) -> None:
    """A draft that cannot be woven has a card and no line in the table, which says which one is left out."""
    assert "Broken" not in {row[0].text for row in view.tables[0].rows}
    assert "Among the pictures only, because they cannot be woven as they are written: Broken." == view.tables[0].note


def test_labels_and_columns(view: ListView) -> None:
    """Every field stands inside its label, has a name of its own, and asks for a column that the table has."""
    _, bottom = panels("list", view, "drafts")
    page = Seen(bottom)
    fields = [each for each in page.all("select") + page.all("input") if each["name"] != "as"]
    columns = {column.text for column in view.tables[0].columns}

    assert len(fields) + 2 == len(page.all("label"))
    assert len({each["name"] for each in fields}) == len(fields) == 9
    assert {"tag"} == {each["name"] for each in page.all("select") if each.get("data-of") not in columns}


def test_a_card_carries_little(tmp_path: Path) -> None:
    """A hundred drafts more make the list longer by no more than 2,000 bytes each, however long their colour orders."""
    long = f"{TWILL}\nwarp_colours: 300 times (2 rust, 2 bone)"
    sizes = []
    for number in (10, 110):
        many = {f"drafts__twill-{n}": f"title: Twill {n}\n{long}" for n in range(number)}
        sizes.append(len(panels("list", drafts(tmp_path / str(number), **many), "drafts")[1]))

    assert (sizes[1] - sizes[0]) / 100 < 2_000
