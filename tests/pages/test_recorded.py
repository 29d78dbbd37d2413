"""A warp's page shows whatever was written down: no field of a record is for nobody."""

from __future__ import annotations

import dataclasses
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import pytest
import yaml

from journal_tools.pages.archive import Archive
from journal_tools.pages.templating import panels
from journal_tools.pages.warp_page import warp_view
from journal_tools.pictures.store import PictureStore
from journal_tools.records import Journal, Piece, Planned, Stretch, Warp, public, read_journal
from journal_tools.records.cloth import SizeAt, Weft
from journal_tools.records.hem import Fringe, Hem
from journal_tools.records.model import Model, words_of
from journal_tools.records.warp import Band, BandSizes, WarpYarn, YarnUse
from tests.records.canaries import every_word, full_of_canaries, word

ELSEWHERE = {"notes_for_everyone", "photos", "photos_for_everyone"}
"""Fields of the notes and the photographs beside a record, which are no part of what is tested here."""

WHOLE: dict[str, Any] = {"weave": "plain weave", "on_loom": "20 x 30", "warp": {"yarn": "a"}}
"""A record to which one field is added."""

EXAMPLES: dict[str, Any] = {
    "across": {"middle": {"ends": "64"}},
    "draft": "another-draft",
    "edges": "all four",
    "fulling": {"8 min": "141 x 203 cm"},
    "layers": "3",
    "learn": "no widths, pulled in",
    "loom": "another-loom",
    "photos": {"a.jpg": "On the line"},
    "pieces": [{"name": "runner"}, {"name": "napkin"}],
    "plan": {"washed": "9 x 9"},
    "stretches": [{"name": "the first yard"}],
    "weave": "huck lace",
    "warp": {"wound": "7 yd"},
    "where_it_went": {"thrums": "22 in"},
    "weight": {"off_loom": "99 g"},
    "yarns": {"bone": "linen-20-2 bone"},
}
"""What is added where a field's own example is not a value, or is what the record has already."""


class Text(HTMLParser):
    """All that is to be read on a page."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.said = ""
        self.feed(page)

    def handle_data(self, data: str) -> None:
        """Note a text."""
        self.said += f"{data} "


def page_of(journal: Journal, folder: Path) -> str:
    """All that is to be read on the page of the only warp, without the questions about it."""
    return Text(html_of(journal, folder)).said


def html_of(journal: Journal, folder: Path) -> str:
    """The page itself, with the addresses that its words lead to."""
    archive = Archive(journal, PictureStore(folder / "pictures"))
    (warp,) = journal.warps.values()
    view = dataclasses.replace(warp_view(archive, warp), problems=())
    return "".join(panels("warp", view, "warps/w"))


def written(folder: Path, record: dict[str, Any]) -> str:
    """The page of a warp with this record."""
    (folder / "warps").mkdir(parents=True, exist_ok=True)
    (folder / "warps" / "w.md").write_text(f"---\n{yaml.safe_dump(record, sort_keys=False)}---\n", encoding="utf-8")
    journal = read_journal(folder)
    assert () == journal.problems
    return page_of(journal, folder)


def among(part: str) -> Any:
    """A function that puts fields into one part of a record, as a weaver would write them there."""
    size = {"size": "19 x 29"}
    return {
        "warp": lambda fields: WHOLE | fields,
        "stretch": lambda fields: WHOLE | {"stretches": [{"name": "one"} | fields, {"name": "two"}]},
        "the only piece": lambda fields: WHOLE | {"pieces": [{"name": "first"} | fields]},
        "one of two pieces": lambda fields: WHOLE | {"pieces": [{"name": "first"} | fields, {"name": "other"}]},
        "plan": lambda fields: WHOLE | {"plan": [{"piece": "x"} | fields]},
        "warp as wound": lambda fields: WHOLE | {"warp": {"role": "pile"} | fields},
        "weft": lambda fields: WHOLE | {"weft": [{"role": "pile"} | fields]},
        "a yarn of this warp": lambda fields: WHOLE | {"yarns": {"b": {"role": "pile"} | fields}},
        "size": lambda fields: WHOLE | {"pieces": [{"washed": size | fields}, {"name": "other"}]},
        "hem": lambda fields: WHOLE | {"hem": {"turn": "1/4 in"} | fields},
        "fringe": lambda fields: WHOLE | {"fringe": {"allowed": "3 in each end"} | fields},
        "band": lambda fields: WHOLE | {"across": {"middle": {"ends": "8"} | fields}},
        "sizes of a band": lambda fields: (
            WHOLE | {"pieces": [{"across": {"left": {"washed": "4 x 4"}, "right": fields or {"washed": "5 x 5"}}}]}
        ),
    }[part]


PARTS: dict[str, type[Model]] = {
    "warp": Warp,
    "stretch": Stretch,
    "the only piece": Piece,
    "one of two pieces": Piece,
    "plan": Planned,
    "warp as wound": WarpYarn,
    "weft": Weft,
    "a yarn of this warp": YarnUse,
    "size": SizeAt,
    "hem": Hem,
    "fringe": Fringe,
    "band": Band,
    "sizes of a band": BandSizes,
}


@pytest.mark.parametrize("part", PARTS)
def test_every_field_is_told(part: str, tmp_path: Path) -> None:
    """A field more in the record, of whatever part, is something more to read on the page."""
    made = among(part)
    plain = written(tmp_path, made({}))
    untold = []
    for key, (_, words) in words_of(PARTS[part]).items():
        value = {"left": "4 x 4"} if (key, "piece" in part) == ("across", True) else EXAMPLES.get(key, words.example)
        if key not in ELSEWHERE and written(tmp_path, made({key: value})) == plain:
            untold.append(key)

    assert [] == untold


def test_every_word_is_there(tmp_path: Path) -> None:
    """Of a record with a word of its own in every field, each word stands on the page for oneself."""
    kinds = (Warp, Stretch, Piece, Planned, WarpYarn, Weft, YarnUse, SizeAt, Hem, Fringe, Band, BandSizes)
    told = [word(kind, key) for kind in kinds for key in words_of(kind) if key not in ELSEWHERE]
    page = html_of(full_of_canaries(tmp_path), tmp_path)

    assert [] == [each for each in told if each in every_word() and each not in page]


def test_buyers_and_prices_are_for_oneself(tmp_path: Path) -> None:
    """Who has a piece, and what it cost, stand on the page for oneself and not on the one for others."""
    piece = {"name": "towel 1", "buyer": "a neighbour", "price": "42 EUR", "picks": "561", "beat": "20/in"}
    record = {"share": "yes"} | WHOLE | {"hem": {"depth": "1 in"}, "pieces": [piece, {"name": "towel 2"}]}
    own = written(tmp_path, record)
    shared = page_of(public(read_journal(tmp_path)), tmp_path)

    assert ["a neighbour", "42 EUR", "561 picks", "beat 20/in", "hem: depth 1 in"] == [
        each for each in ("a neighbour", "42 EUR", "561 picks", "beat 20/in", "hem: depth 1 in") if each in own
    ]
    assert ["561 picks", "beat 20/in", "hem: depth 1 in"] == [
        each for each in ("a neighbour", "42 EUR", "561 picks", "beat 20/in", "hem: depth 1 in") if each in shared
    ]
