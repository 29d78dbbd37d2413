"""The record that is made of a file: all that the file says, harmless, and nothing that may be private."""

from __future__ import annotations

import dataclasses
import html
import re
from pathlib import Path

import markdown
import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal_tools.drafts import Draft, drawdown
from journal_tools.interchange import Extras, ReadDraft, read_wif, record_text, write_wif
from journal_tools.interchange.lines import without_unseen
from journal_tools.interchange.plain_markdown import plain_markdown
from journal_tools.interchange.what_was_read import Kept
from journal_tools.notation import parse_colours, parse_threading
from journal_tools.records import Journal, read_journal

TWILL = Draft(parse_threading("1-4"), parse_threading("1+2, 2+3, 3+4, 1+4"), parse_threading("1-4"))
EXTENSIONS = ["tables", "fenced_code", "toc", "attr_list", "def_list", "footnotes", "abbr", "admonition", "md_in_html"]
HARD = "`*_{}[]()<>#+-.!|~&\\:=^$\"'/ \t0123abc\n;%@?\x81\u2028\u200b\xa0"


def record_of(draft: Draft, extras: Extras | None = None) -> str:
    """The draft as a record, by way of a file."""
    return record_text(read_wif(write_wif(draft, extras), "a.wif"))


def journal_of(text: str, folder: Path) -> Journal:
    """A journal of that one record, called read."""
    (folder / "drafts").mkdir(exist_ok=True)
    (folder / "drafts" / "read.md").write_text(text, encoding="utf-8")
    return read_journal(folder)


def shown(text: str) -> str:
    """What a page shows of Markdown in paragraphs; a tag of any other kind would stand out."""
    page = markdown.markdown(text, extensions=EXTENSIONS)
    return html.unescape(re.sub(r"</?p>", "", page))


def test_all_that_the_file_says() -> None:
    """Sett, thickness, spare shafts, profile, developers, unused colours and kept sections stand in the notes."""
    draft = dataclasses.replace(
        TWILL, warp_colours=("bone",), weft_order=("pattern", "tabby"), weft_thickness=(2.0, 1.0), warp_spacing=(0.5, 2)
    )
    extras = Extras(
        {"Title": "Sea wall", "Author": "A weaver"}, "one\n\nthree", {"bone": "e8dfcb", "brick": "9c4a2f"},
        24 / 0.0254, 20 / 0.0254, "nobody", (Kept("PRIVATE LOOM Settings", ("a=1", "", "  <b>=2")),), True,
        0.5, 0.25, 8, 10,
    )  # fmt: skip
    text = record_of(draft, extras)

    assert "\nweft_order: pattern, tabby\n" in text
    for line in (
        "one\n\nthree\n",
        "- Author: A weaver\n",
        "- Ends in its length: 24/in, that is 9.4/cm\n",
        "- Picks in its length: 20/in, that is 7.9/cm\n",
        "- Thickness of a usual end: 0.5 mm\n",
        "- Thickness of a usual pick: 0.25 mm\n",
        "- It is made for 8 shafts\n",
        "- It is made for 10 treadles\n",
        "- It is a profile draft: its shafts stand for blocks\n",
        "- Developers: nobody\n",
        "Room of each end beside the usual: 1 of 0.5, 1 of 2.\n",
        "Thickness of each pick beside the usual: 1 of 2, 1 of 1.\n",
        "- bone: e8dfcb\n",
        "Colours of its table that no thread has: brick 9c4a2f.\n",
        "The file has a section \\[PRIVATE LOOM Settings\\], which means nothing here:\n\n    a=1\n\n      <b>=2\n",
    ):
        assert line in text


def test_addresses_stay_in_the_file() -> None:
    """An author's address, e-mail, telephone and whatever else may be private is left out, and that is said."""
    closed = {key: f"CANARY {key}" for key in ("Address", "EMail", "Telephone", "FAX", "Mobile")}
    read = read_wif(write_wif(TWILL, Extras({"Title": "Sea wall", "Author": "A weaver", **closed})), "a.wif")
    text = record_text(read)

    assert closed.items() <= read.text.items()
    assert "CANARY" not in text
    assert "- Left out, since it may be private: Address, EMail, Telephone, FAX, 1 more\n" in text
    assert ["Address, EMail, Telephone, FAX, Mobile"] == [problem.read for problem in read.told]


def test_a_strangers_tags() -> None:
    """A script, a picture from elsewhere and a heading in a stranger's notes are shown as they were typed."""
    notes = ["<script>alert(1)</script>", "![](http://example.org/x.png)", "# Loud", "1. one", "{{ 7*7 }}", "* * *"]
    text = record_of(TWILL, Extras({"Title": "x"}, "\n".join(notes)))
    body = "\n".join(text.split("\n---\n")[1].strip().split("\n")[: len(notes)])

    assert notes == shown(body).split("\n")


@given(st.text(HARD, max_size=40))
def test_any_line_shows_as_it_is(line: str) -> None:
    """Whatever a line holds, a page shows it letter for letter."""
    assert " ".join(without_unseen(line)[0].split()) == shown(plain_markdown(line))


@given(st.lists(st.text(HARD.replace("\n", ""), min_size=1, max_size=12), min_size=1, max_size=5))
def test_any_lines_make_a_paragraph(lines: list[str]) -> None:
    """Lines below one another make no heading, list or table of each other either."""
    plain = [plain_markdown(line) for line in lines]
    seen = [" ".join(without_unseen(line)[0].split()) for line in lines]

    assert [line for line in seen if line] == [line for line in shown("\n".join(plain)).split("\n") if line]


@given(st.text(max_size=30), st.text(max_size=60), st.text(max_size=10))
def test_any_words_make_a_record_that_is_read(
    tmp_path_factory: pytest.TempPathFactory, title: str, notes: str, developers: str
) -> None:
    """Whatever the words of a file are, its record is read without a fault and has its title."""
    text = record_text(ReadDraft(TWILL, {"Title": title}, notes, developers=developers))
    journal = journal_of(text, tmp_path_factory.getbasetemp())

    assert [] == [problem for problem in journal.problems if problem.is_fault]
    assert (" ".join(without_unseen(title)[0].split()) or "A draft") == journal.drafts["read"].title


def test_a_control_character_in_a_title(tmp_path: Path) -> None:
    """A character that cannot be seen is left out of the title, told, and the record can be read."""
    data = write_wif(TWILL, Extras({"Title": "Sea wall"})).replace(b"Sea wall", "Sea\x81 wall".encode())
    read = read_wif(data, "a.wif")
    journal = journal_of(record_text(read), tmp_path)

    assert ["unseen"] == [problem.slug for problem in read.told]
    assert ((), "Sea wall") == (journal.problems, journal.drafts["read"].title)


@pytest.mark.parametrize("name", ["x", "12", "20bone", "dark slate", "times", "-"])
def test_colours_that_no_order_can_name(name: str, tmp_path: Path) -> None:
    """A colour with a name that a colour order cannot hold gets a plain one, which is told; the record is read."""
    draft = dataclasses.replace(TWILL, warp_colours=(name, "bone"))
    read = read_wif(write_wif(draft, Extras(colours={name: "00007f", "bone": "e8dfcb"})), "a.wif")
    journal = journal_of(record_text(read), tmp_path)

    assert [("colour-name", name)] == [(problem.slug, problem.read) for problem in read.told]
    assert () == journal.problems
    assert parse_colours("dark-blue, bone") == journal.drafts["read"].warp_colours.items


def test_shuttles_that_no_order_can_name() -> None:
    """An order of shuttles whose names a record cannot hold stands in its notes instead."""
    named = record_of(dataclasses.replace(TWILL, weft_order=("a1", "b1")))
    unnamed = record_of(dataclasses.replace(TWILL, weft_order=("a1", "1a")))

    assert "\nweft_order: a1, b1\n" in named
    assert "weft_order" not in unnamed
    assert "- Order of the weft, with names that no order here can hold: a1, 1a\n" in unnamed


def test_sections_too_long_for_a_record(tmp_path: Path) -> None:
    """A file with a megabyte of private data makes a record that can be read, and says what is not in it."""
    kept = Kept("PRIVATE PICTURE", tuple(f"{n}=0123456789abcdef" for n in range(60_000)))
    read = read_wif(write_wif(TWILL, Extras({"Title": "x"}, kept=[kept])), "a.wif")
    text = record_text(read)

    assert kept == read.kept[0]
    assert text.endswith("Sections that mean nothing here: too long for a record; see the interchange file.\n")
    assert () == journal_of(text, tmp_path).problems


@given(st.data())
def test_a_record_weaves_the_same(data: st.DataObject) -> None:
    """Whatever the order of shafts, the record has the cloth of the file."""
    lifts = st.lists(st.frozensets(st.integers(1, 8), max_size=4), min_size=1, max_size=30)
    draft = Draft(tuple(data.draw(lifts.filter(any))), lift_plan=tuple(data.draw(lifts)))
    text = record_of(draft)
    keys = dict(line.split(": ", 1) for line in text.split("---\n")[1].splitlines())
    again = Draft(parse_threading(keys["threading"]), lift_plan=parse_threading(keys["lift_plan"]))

    assert (drawdown(draft) == drawdown(again)).all()
