"""A record file taken apart: where its fields stand, and every way a file can fail to be one."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from journal_tools.records.front_matter import LARGEST, line_of, read_file, read_front_matter
from tests.records.reading import read, record, shown

CORPUS = Path(__file__).parent / "corpus"

PIECES = ["a: b", "washed: 19 x 30", "- ", "  ", "\n", "\n  ", "\t", '"', "'", "[", "]", "{", "}", ",", ": ", " #"]
PIECES += ["&a ", "*a", " !x ", "? ", "|\n  t", ">", "%", "@", "`", "---", "\n---\n", "...", "\r\n", "\r", "\ufeff"]
PIECES += ["\x00", "\u2028", "\u00a0", "é", "😀", "\ud800", "- name: x\n    q: 1", "<<: ", "46,5 cm", "\\", "--", "="]


class TestTheBlock:
    def test_fields_stand_between_two_lines_of_three_hyphens(self) -> None:
        """The fields stand between two lines `---`, and what follows is notes."""
        fm = read_front_matter("---\ntitle: Towels\n---\nWoven in May.\n", "a.md")

        assert ("title: Towels\n", "Woven in May.\n", ()) == (fm.header, fm.notes, fm.problems)

    @pytest.mark.parametrize("line_end", ["\n", "\r\n", "\r"])
    @pytest.mark.parametrize("mark", ["", "\ufeff"])
    def test_line_ends_and_a_byte_order_mark_do_not_matter(self, mark: str, line_end: str) -> None:
        """A file saved on any system reads the same, and its text is kept as it was."""
        text = mark + line_end.join(["---", "title: Towels", "warp:", "  ends: 396", "---", "Notes.", ""])
        fm = read_front_matter(text, "a.md")

        assert ({"title": "Towels", "warp": {"ends": "396"}}, ()) == (shown(fm.node), fm.problems)
        assert (text, fm.header) == (fm.text, text[fm.header_start : fm.header_start + len(fm.header)])

    def test_a_rule_in_the_notes_is_no_end(self) -> None:
        """A line `---` below the fields belongs to the notes."""
        fm = read_front_matter("---\ntitle: a\n---\nOne.\n\n---\n\nTwo.", "a.md")

        assert "One.\n\n---\n\nTwo." == fm.notes

    def test_an_empty_block_is_an_empty_record(self) -> None:
        """Nothing between the two lines is a record without fields, and no fault of the file."""
        for text in ("---\n---\n", "---\n\n---\n", "---\n# a comment\n---\n"):
            fm = read_front_matter(text, "a.md")

            assert ({}, ()) == (shown(fm.node), fm.problems)

    def test_a_node_knows_its_line_in_the_file(self) -> None:
        """A problem can name the line as an editor counts it, also below emoji."""
        fm = read("title: 🧵🧵\nwarp:\n  ends: 396")
        assert fm.node is not None
        key, value = fm.node.value[1][1].value[0]

        assert ("396", 4, 4) == (value.value, line_of(fm, key), line_of(fm, value))
        assert "396" == fm.header[value.start_mark.index : value.end_mark.index]

    @pytest.mark.parametrize(
        ("text", "line", "mended"),
        [
            ("", 0, ""),
            ("  \n\n", 0, ""),
            ("Just words.\n", 1, ""),
            ("title: Towels\n---\n", 1, ""),
            ("---", 1, ""),
            ("---\ntitle: Towels\nweave: plain weave\n", 1, ""),
            ("---\ntitle: Towels\n\nWoven in May.\n", 1, ""),
            ("\n\n---\ntitle: Towels\n---\n", 3, "---"),
            (" ---\ntitle: Towels\n---\n", 1, "---"),
            ("----\ntitle: Towels\n---\n", 1, "---"),
            ("—\ntitle: Towels\n---\n", 1, "---"),
            ("---\ntitle: Towels\n----\nNotes.\n", 3, "---"),
            ("---\ntitle: Towels\n —\nNotes.\n", 3, "---"),
            ("---\ntitle: Towels\n--\n\nNotes.\n\n---\n\nMore.", 3, "---"),
            ("---\ntitle: Towels\n...\nNotes.\n", 3, "---"),
        ],
    )
    def test_a_block_that_does_not_begin_or_end_is_one_problem(
        self, text: str, line: int, mended: str
    ) -> None:
        """A block without a proper first or last line is told once, with the line to paste if known."""
        fm = read_front_matter(text, "warps/a.md")

        assert [("warps/a.md", line, mended)] == [(p.file, p.line, p.mended) for p in fm.problems]

    def test_an_unclosed_block_says_where_it_seems_to_end(self) -> None:
        """The line below the last field is named, so that the weaver need not seek it."""
        fm = read_front_matter("---\ntitle: Towels\nloom: small-loom\n\nWoven in May.\n", "a.md")

        assert "probably below line 3" in fm.problems[0].right
        assert {"title": "Towels", "loom": "small-loom"} == shown(fm.node)


class TestValues:
    @pytest.mark.parametrize(
        "typed",
        [
            "20 bone, 12 times (4 slate, 24 bone)",
            '19 1/4" x 32 1/2"',
            "46,5 cm",
            "1-2",
            "~18",
            "? x 30 1/8",
            "?",
            "19 3/8 x ?",
            "yes",
            "no",
            "~",
            "null",
            "2024-04-20",
            "2026-13-40",
            "010",
            "2:1",
            "1:30",
            "1e3",
            "-5",
            "0x1F",
            "18¼",
            "18\u202f1/4",
            "100 x 100 mm, sewn off the loom",
            "2 in each end",
            "12.50 EUR",
            "Ne 8/2",
            "R74 tex/2",
            "50 m = 12.3 g",
            "55 % cotton, 45 % linen",
            "a (b) [c] {d}",
            "it's a towel",
            'the 12" one',
            "a#b",
            "https://a.example/b#c",
            "a - b -- c",
            "5 of 1/2 in; 3 more",
            "===",
            "…",
            "🧵 ünïcode",
        ],
    )
    def test_a_value_is_the_text_that_was_typed(self, typed: str) -> None:
        """What is typed on a field's line, or as a list's item, is read as it stands, without a word."""
        fm = read(f"a: {typed}\nb:\n  - {typed}\nc:\n  d: {typed}  # how it was")

        assert ({"a": typed, "b": [typed], "c": {"d": typed}}, ()) == (shown(fm.node), fm.problems)

    @pytest.mark.parametrize(
        ("fields", "meant"),
        [
            ("order: >-\n  20 bone,\n  4 slate", "20 bone, 4 slate"),
            ("order: 20 bone,\n  4 slate", "20 bone, 4 slate"),
            ("order: |\n  a: b\n  # 2 #3\n  - c\n", "a: b\n# 2 #3\n- c\n"),
            ('order: "a: b #3"', "a: b #3"),
            ("order: 'it''s'", "it's"),
            ('order: "#c9b58b"  # bone', "#c9b58b"),
            ("order:", ""),
            ("order:   # not yet", ""),
        ],
    )
    def test_longer_texts_are_read_whole(self, fields: str, meant: str) -> None:
        """Text over several lines or in quotes is read whole, and a true comment is left out."""
        fm = read(fields)

        assert ({"order": meant}, ()) == (shown(fm.node), fm.problems)

    def test_brackets_are_read_where_nothing_is_lost(self) -> None:
        """Fields and lists between brackets are read, when each comma and colon has its blank."""
        fm = read("a: {washed: 17 x 30, width: ? x 3, dry: , cm: '46,5 cm'}\nreeds: [8, 10, 12]")
        meant = {"washed": "17 x 30", "width": "? x 3", "dry": "", "cm": "46,5 cm"}

        assert ({"a": meant, "reeds": ["8", "10", "12"]}, ()) == (shown(fm.node), fm.problems)

    @given(st.text(alphabet="? \n:-,[]{}ax", max_size=40))
    def test_a_question_mark_never_changes_its_length_or_place(self, text: str) -> None:
        """A `?` for what was not measured is text wherever it stands in a quoted value."""
        fm = read("a: '" + text.replace("\n", " ") + "'")

        assert {"a": text.replace("\n", " ")} == shown(fm.node)


class TestFiles:
    def test_a_file_is_read_with_its_marks_and_line_ends(self, tmp_path: Path) -> None:
        """The text read is the file's, byte order mark and line ends included."""
        data = "\ufeff---\r\ntitle: Tüchlein\r\n---\r\nNotiz".encode()
        (tmp_path / "a.md").write_bytes(data)
        fm = read_file(tmp_path / "a.md", "warps/a.md")

        assert (data, ()) == (fm.text.encode(), fm.problems)

    @pytest.mark.parametrize(
        ("data", "line", "slug"),
        [
            ("---\ntitle: a\nnote: grün\n---\n".encode("latin-1"), 3, "encoding"),
            ("---\ntitle: a\n---\n".encode("utf-16"), 0, "encoding"),
            (b"---\ntitle: a\x00b\n---\n", 2, "characters"),
            (b"---\ntitle: a\nnote: \x1b[31mred\n---\n", 3, "characters"),
            ("---\ntitle: a\u2028weave: b\n---\n".encode(), 2, "characters"),
            (b"---\ntitle: " + b"a" * LARGEST + b"\n---\n", 0, "too-large"),
            (b"", 0, "no-front-matter"),
        ],
    )
    def test_a_file_that_is_no_text_is_a_problem(
        self, tmp_path: Path, data: bytes, line: int, slug: str
    ) -> None:
        """Wrong encodings, unseen characters and huge files are told with their line, never raised."""
        (tmp_path / "a.md").write_bytes(data)
        fm = read_file(tmp_path / "a.md", "warps/a.md")

        assert [(line, slug)] == [(p.line, p.slug) for p in fm.problems]

    def test_notes_may_hold_what_fields_may_not(self) -> None:
        """A tab or a form feed in the notes is the weaver's own affair."""
        assert () == read_front_matter("---\ntitle: a\n---\n\tb\x0c\n", "a.md").problems

    def test_a_folder_a_pipe_and_nothing_at_all(self, tmp_path: Path) -> None:
        """What is no file is a problem, and reading never waits for a pipe."""
        os.mkfifo(tmp_path / "pipe.md")
        (tmp_path / "loop.md").symlink_to(tmp_path / "loop.md")
        for name in (".", "pipe.md", "loop.md", "missing.md", "a\0b.md"):
            fm = read_file(tmp_path / name, "a.md")

            assert ([("a.md", "unreadable")], None) == ([(p.file, p.slug) for p in fm.problems], fm.node)


class TestNeverACrash:
    def check(self, text: str) -> None:
        fm = read_front_matter(text, "a.md")
        lines = 1 + text.count("\n") + text.count("\r")

        assert text == fm.text
        assert fm.header == text[fm.header_start : fm.header_start + len(fm.header)]
        assert [] == [p for p in fm.problems if not p.right or not 0 <= p.line <= lines]
        assert fm.node is not None or fm.problems

    @given(st.text(st.characters()))
    def test_any_text(self, text: str) -> None:
        """Any text at all is read to fields or to problems with lines that are there."""
        self.check(text)

    @given(st.lists(st.sampled_from(PIECES), max_size=60).map("".join))
    @example("a: |\n   b\n  c")
    @example("? a\n: b")
    def test_any_fields(self, fields: str) -> None:
        """Any heap of what fields are made of is read to fields or to problems."""
        self.check(record(fields))

    @given(st.binary(max_size=200))
    def test_any_bytes(self, tmp_path_factory: pytest.TempPathFactory, data: bytes) -> None:
        """Any bytes in a file are read to fields or to problems."""
        path = tmp_path_factory.mktemp("any") / "a.md"
        path.write_bytes(b"---\n" + data)
        fm = read_file(path, "a.md")

        assert fm.node is not None or fm.problems

    @pytest.mark.parametrize("piece", ["[", "{", "- ", ": ", "a: [", "[{", "{a: "])
    def test_depth_is_bounded(self, piece: str) -> None:
        """Fields inside fields without end are refused with words."""
        fm = read("a: " + piece * 30_000)

        assert fm.problems

    def test_lists_twenty_one_deep_are_refused(self) -> None:
        """Twenty mappings inside one another are read; one more is refused and its line named."""
        fields = "\n".join(" " * depth + "a:" for depth in range(20))
        deeper = fields + "\n" + " " * 20 + "a:"

        assert [] == list(read(fields).problems)
        assert [(22, "too-deep")] == [(p.line, p.slug) for p in read(deeper).problems]

    @pytest.mark.parametrize(
        "line", ["a: @x", "a: [x", "\ta: 1", "words", "a:b", "- -", "--", '"', "a: b #2", "\x00"]
    )
    def test_a_large_bad_file_ends_in_good_time(self, line: str) -> None:
        """A file of nothing but bad lines is told of in bounded words."""
        fm = read((line + "\n") * 5000)

        assert 0 < len(fm.problems) <= 200
