"""The whole journal as one file: going out and in again, it is the same journal."""

from __future__ import annotations

import dataclasses
import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal_tools.exchange.downloads import downloads
from journal_tools.exchange.typed import fields_of
from journal_tools.exchange.whole import FORMAT, NotWhole, records_in, whole_json
from journal_tools.exchange.whole_taking import take_whole
from journal_tools.records import KINDS, Journal, Warp, public, read_journal
from tests.built import TINY
from tests.exchange.trips import ledgers, out_and_in, take_in
from tests.house import PROJECT
from tests.ledger.desk import JOURNAL, write
from tests.records.canaries import full_of_canaries

JOURNALS = {"demo": PROJECT / "entries", "fixtures": JOURNAL, "tiny": TINY / "entries"}


@pytest.fixture(params=sorted(JOURNALS))
def journal(request: pytest.FixtureRequest) -> Journal:
    """The demonstration journal, the fixtures of the ledger, the small journal."""
    return read_journal(JOURNALS[request.param])


class TestOutAndIn:
    def test_the_same_ledger(self, journal: Journal, tmp_path: Path) -> None:
        """Every loss of every piece, with its ±, is the same when a journal has gone out and come in again."""
        again = out_and_in(journal, tmp_path / "book")
        before, after = ledgers(journal), ledgers(again)

        assert sorted(before) == sorted(after)
        assert {name: ledger.rows for name, ledger in before.items()} == {
            name: ledger.rows for name, ledger in after.items()
        }
        assert [ledger.account for ledger in before.values()] == [ledger.account for ledger in after.values()]

    def test_the_same_records(self, journal: Journal, tmp_path: Path) -> None:
        """Every field of every record, and all its notes, are the same; so are the settings."""
        again = out_and_in(journal, tmp_path / "book")

        for kind in KINDS:
            assert dict(journal.kind(kind)) == dict(again.kind(kind))
        kept = dataclasses.replace(journal.settings, title="A new book", notes=again.settings.notes)
        assert kept == again.settings

    def test_the_same_files(self, journal: Journal, tmp_path: Path) -> None:
        """Every table is the same to the byte."""
        again = out_and_in(journal, tmp_path / "book")
        before, after = downloads(journal), downloads(again)

        assert [] == [name for name in before if name != "journal.json" and before[name] != after.get(name)]

    def test_every_field_there_is(self, tmp_path: Path) -> None:
        """A record with every field of the field guide filled is the same once it is read again."""
        journal = full_of_canaries(tmp_path / "canaries")
        again = out_and_in(journal, tmp_path / "book")

        for kind in KINDS:
            assert dict(journal.kind(kind)) == dict(again.kind(kind))

    def test_what_is_shared(self, journal: Journal, tmp_path: Path) -> None:
        """The journal for others goes out and in with the same losses; what cannot be read alone stands in notes."""
        shared = public(journal)
        again = out_and_in(shared, tmp_path / "book", keep_unread=True)

        assert {name: ledger.rows for name, ledger in ledgers(shared).items()} == {
            name: ledger.rows for name, ledger in ledgers(again).items()
        }

    def test_a_hem_between_washes(self, tmp_path: Path) -> None:
        """The order of hem and washes, which only the order of the lines tells, is kept."""
        record = "title: A towel\nwashed 2: 18 x 27\nhemmed: 19 x 29\nwashed 3: 17 7/8 x 26 3/4\nwashed 1: 19 x 30"
        journal = write(tmp_path / "one", warps__cloth=record)

        assert {
            "title": "A towel",
            "washed 2": "18 x 27",
            "hemmed": "19 x 29",
            "washed 3": "17 7/8 x 26 3/4",
            "washed 1": "19 x 30",
        } == fields_of(journal.warps["cloth"])


TEXT = st.text(st.characters(exclude_categories=["Cs", "Cc"], include_characters="\n\t"), max_size=60)


@given(title=TEXT, notes=TEXT, note=TEXT)
def test_any_words(tmp_path_factory: pytest.TempPathFactory, title: str, notes: str, note: str) -> None:
    """Titles with quotes, colons and hashes, remarks with formulas, notes of any kind: all come in as they went out."""
    folder = tmp_path_factory.mktemp("words")
    write(folder, journal="title: A book")
    data = json.dumps(
        {
            "format": FORMAT,
            "journal": {"fields": {"title": "A book"}, "notes": ""},
            "warps": {"cloth": {"fields": {"title": title, "pieces": [{"name": "a", "note": note}]}, "notes": notes}},
        }
    ).encode()
    take_in(data, folder)
    warp = read_journal(folder).warps["cloth"]

    assert (title.strip() or None, note.strip() or None) == (warp.title or None, warp.pieces[0].note or None)
    assert notes == warp.notes


class TestNothingIsLost:
    def test_a_second_time(self, tmp_path: Path) -> None:
        """Taking the same file in again writes nothing and finds everything there."""
        journal = read_journal(JOURNAL)
        again = out_and_in(journal, tmp_path / "book")
        taken = take_in(downloads(journal)["journal.json"], again.folder)

        assert () == taken.records
        assert {"there"} == {outcome.done for outcome in taken.outcomes}

    def test_no_record_is_written_over(self, tmp_path: Path) -> None:
        """A record that has been changed since is left as it is, and told of."""
        journal = read_journal(JOURNAL)
        again = out_and_in(journal, tmp_path / "book")
        path = again.folder / "warps" / "tideline-towels.md"
        path.write_text("---\ntitle: Mine\n---\n", encoding="utf-8")
        taken = take_in(downloads(journal)["journal.json"], again.folder)
        told = {outcome.file: [p.slug for p in outcome.problems] for outcome in taken.outcomes if outcome.problems}

        assert {"warps/tideline-towels.md": ["is-there"]} == told
        assert "---\ntitle: Mine\n---\n" == path.read_text(encoding="utf-8")

    def test_figures_keep_their_meaning(self, tmp_path: Path) -> None:
        """Figures kept in centimetres are not taken into a journal whose bare figures are inches."""
        metric = write(tmp_path / "metric", journal="length: cm", warps__cloth="in_reed: 50\nwashed: 45 x 70")
        inches = write(tmp_path / "inches", journal="length: in", warps__other="title: Another")
        taken = take_whole(whole_json(metric), "journal.json", inches)

        assert () == taken.records
        assert {"length": "length: cm", "density": "density: cm"} == {p.field: p.mended for p in taken.problems}

    def test_a_field_that_cannot_be_read(self, tmp_path: Path) -> None:
        """A record that the reader refuses is skipped with its reason, or its field is put into the notes if asked."""
        empty = write(tmp_path, journal="title: A book")
        said = {"fields": {"title": "A towel", "in_reed": "wide"}, "notes": "\nKept.\n"}
        data = json.dumps({"format": FORMAT, "journal": {"fields": {}, "notes": ""}, "warps": {"a": said}}).encode()

        refused = take_whole(data, "journal.json", empty)
        assert () == refused.records
        assert [("skipped", "in_reed")] == [(each.done, each.problems[0].field) for each in refused.outcomes]

        (record,) = take_whole(data, "journal.json", empty, keep_unread=True).records
        assert {"title": "A towel"} == record.fields
        assert "\nKept.\n\n    in_reed: wide\n" == record.notes


class TestNotWhole:
    @pytest.mark.parametrize(
        ("data", "word"),
        [
            (b"", "no JSON"),
            (b"{", "no JSON"),
            (b"[1, 2]", "tenterhook export"),
            (b'{"format": "something else"}', "tenterhook export"),
            (b"\xff\xfe{", "UTF-8"),
            (b"[" * 100_000, "no JSON"),
            (b'{"format": "tenterhook journal 1", "warps": {"a": {}, "a": {}}}', "twice"),
        ],
    )
    def test_another_file(self, data: bytes, word: str) -> None:
        """A file that is no exported journal is refused with a sentence that says why."""
        with pytest.raises(NotWhole) as refused:
            records_in(data, "journal.json")

        assert word in refused.value.problem.sentence()

    @pytest.mark.parametrize(
        "record",
        [None, 7, [], {"fields": []}, {"fields": {"title": None}}, {"fields": {"a": [[{"b": True}]]}}, {"notes": []}],
    )
    def test_an_odd_record(self, record: Any) -> None:
        """A record that is none is told of by its name, and the others are taken."""
        warps = {"odd": record, "good": {"fields": {"title": "Good"}, "notes": ""}, "Bad Name": {}, "readme": {}}
        records, problems = records_in(json.dumps({"format": FORMAT, "warps": warps}).encode(), "journal.json")

        assert ["warps/good.md"] == [each.file for each in records if each.kind]
        assert ["warps: odd", "warps", "warps"] == [problem.field for problem in problems]

    def test_numbers_are_read_as_typed(self) -> None:
        """A number without quotes is the text that it was typed as, so that 1.50 keeps its nought."""
        data = b'{"format": "tenterhook journal 1", "warps": {"a": {"fields": {"hours": 1.50, "ends": 396}}}}'
        records, _ = records_in(data, "journal.json")

        assert {"hours": "1.50", "ends": "396"} == next(each.fields for each in records if each.kind)


def test_a_warp_in_six_lines() -> None:
    """The six lines of a plain record leave as they were typed."""
    warp: Warp = read_journal(JOURNAL).warps["tideline-towels"]

    assert {
        "title": "Tideline towels",
        "yarn": "cottolin-22-2",
        "weave": "plain weave",
        "in_reed": "20 1/4",
        "on_loom": "19 3/8 x 33",
        "washed": "17 7/8 x 30 1/8",
    } == fields_of(warp)
