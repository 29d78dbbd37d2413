"""Values written into a weaver's record: they go where she would put them, or are refused."""

from __future__ import annotations

import difflib

import pytest

from journal_tools.editing.change import Unfit, changed
from journal_tools.editing.splice import Change, SpliceRefused, splice
from journal_tools.records.front_matter import read_front_matter
from tests.editing.napkins import NAPKINS


def lines_changed(old: str, new: str) -> list[str]:
    """The lines taken out and put in, in the order of the record."""
    before, after = old.splitlines(), new.splitlines()
    found = []
    for _, a, b, c, d in difflib.SequenceMatcher(None, before, after, autojunk=False).get_opcodes():
        if before[a:b] != after[c:d]:
            found += [f"-{line}" for line in before[a:b]] + [f"+{line}" for line in after[c:d]]
    return found


class TestWhatIsWritten:
    @pytest.mark.parametrize(
        ("change", "lines"),
        [
            (Change(("title",), "Gannets"), ["-title: Gannet napkins        # aligned, and with a comment",
                                             "+title: Gannets        # aligned, and with a comment"]),
            (Change(("in_reed",), "21 3/8"), ["-in_reed:", "+in_reed: 21 3/8"]),
            (Change(("yarns", "slate"), "linen #2"), ["-    slate:  linen-20-2 slate", '+    slate:  "linen #2"']),
            (Change(("yarns", "clay"), "? x 2"), ["+    clay: ? x 2"]),
            (Change(("sley",), "1-2"), ["+sley: 1-2"]),
            (Change(("warp", "wound"), "7 1/2 yd"), ["+    wound: 7 1/2 yd"]),
            (Change(("warp", "order"), "4 bone"),
             ["-    order: 20 bone, 12 times (4 slate, 24 bone),", "-           4 slate, 20 bone",
              "+    order: 4 bone"]),
            (Change(("where_it_went", "thrums"), "22 in"), ["+where_it_went:", "+    thrums: 22 in"]),
            (Change(("washed",), ["19 x 30", "18 x 29"]),
             ["-washed: 19 x 30   # dry", "+washed:   # dry", "+- 19 x 30", "+- 18 x 29"]),
            (Change(("washed",), "18 x 29", append=True),
             ["-washed: 19 x 30   # dry", "+washed:   # dry", "+- 19 x 30", "+- 18 x 29"]),
            (Change(("tags",), ["gift", "yes: no"]), ["+tags:", "+- gift", '+- "yes: no"']),
            (Change(("tags",), "gift", append=True), ["+tags:", "+- gift"]),
            (Change(("stretches", 0, "pieces", 1, "washed"), "19 x 19"), ["+          washed: 19 x 19"]),
            (Change(("stretches", 0, "pieces", 0, "washed", 1), "19 x 19"),
             ["-          - 19 5/8 x 19 7/8", "+          - 19 x 19"]),
            (Change(("stretches", 0, "pieces", 0, "washed", 2), "19 x 19"), ["+          - 19 x 19"]),
            (Change(("stretches", 0, "pieces", 0, "washed"), ["19 3/4 x 20", "1 x 2", "3 x 4"]),
             ["-          - 19 5/8 x 19 7/8", "+          - 1 x 2", "+          - 3 x 4"]),
            (Change(("stretches", 0, "pieces"), {"name": "napkin 7", "on_loom": "20 x 21"}, append=True),
             ["+        - name: napkin 7", "+          on_loom: 20 x 21"]),
            (Change(("stretches", 0, "pieces"), {"name": "napkin 7"}), ["+        - name: napkin 7"]),
            (Change(("stretches", 1, "pieces"), {"name": "a", "washed": ["1 x 2", "? x 3"]}, append=True),
             ["+        pieces:", "+        - name: a", "+          washed:", "+          - 1 x 2",
              "+          - ? x 3"]),
            (Change(("stretches", 1, "hem", "depth"), "1 in"), ["+        hem:", "+            depth: 1 in"]),
            (Change(("stretches", 0, "hem", "turn"), "3/8 in"),
             ['-        hem: {depth: 1/2 in, turn: "1/4 in"}', "+        hem: {depth: 1/2 in, turn: 3/8 in}"]),
            (Change(("stretches", 0, "hem", "edges"), "left, right"),
             ['-        hem: {depth: 1/2 in, turn: "1/4 in"}',
              '+        hem: {depth: 1/2 in, turn: "1/4 in", edges: "left, right"}']),
            (Change(("finish",), "line", append=True),
             ["-finish: [hand-40, machine-40]", "+finish: [hand-40, machine-40, line]"]),
            (Change(("note",), "one: two"),
             ["-note: |  # as told", "-    one", "-    two", '+note: "one: two"  # as told']),
            (Change(("fulling",), {"0 min": "153 x 220 cm", "8 min": {"size": "1 x 2", "dry": ""}}),
             ["+fulling:", "+    0 min: 153 x 220 cm", "+    8 min:", "+        size: 1 x 2", "+        dry:"]),
            (Change(("washed",), "19 x 30"), []),
        ],
    )  # fmt: skip
    def test_only_the_lines_of_the_value_change(self, change: Change, lines: list[str]) -> None:
        """A value goes where a weaver would put it, set in as her record is; no other line changes."""
        assert lines == lines_changed(NAPKINS, splice(NAPKINS, [change], "a.md"))

    def test_a_new_field_stands_last(self) -> None:
        """A new field of the record stands just above the `---` that ends the fields."""
        new = splice(NAPKINS, [Change(("sley",), "1-2")], "a.md")

        assert "# the end\nsley: 1-2\n---\nWoven" in new

    def test_several_changes_are_made_in_order(self) -> None:
        """Each change sees what the one before it wrote."""
        changes = [
            Change(("pieces",), {"name": "towel 1"}, append=True),
            Change(("pieces",), {"name": "towel 2"}, append=True),
            Change(("pieces", 1, "washed"), "17 7/8 x 30 1/8"),
            Change(("pieces", 0, "hem", "depth"), "1 in"),
        ]
        new = splice("---\ntitle: a\n---\n", changes, "a.md")
        wanted = """\
---
title: a
pieces:
  - name: towel 1
    hem:
      depth: 1 in
  - name: towel 2
    washed: 17 7/8 x 30 1/8
---
"""

        assert wanted == new

    @pytest.mark.parametrize("line_end", ["\n", "\r\n", "\r"])
    @pytest.mark.parametrize("mark", ["", "\ufeff"])
    @pytest.mark.parametrize("notes", ["", "Notes.", "\n\tNotes\u00a0 \n\n"])
    def test_line_ends_and_byte_order_mark_stay(self, mark: str, line_end: str, notes: str) -> None:
        """New lines end as the record's lines do, and a missing last line end stays missing."""
        before = mark + line_end.join(["---", "title: a", "washed: 1 x 2", "---"]) + notes
        if notes:
            before = before.replace("---" + notes, "---" + line_end + notes)
        new = splice(before, [Change(("washed",), ["1 x 2", "3 x 4"]), Change(("reed",), "12/in")], "a.md")
        added = line_end.join(["washed:", "  - 1 x 2", "  - 3 x 4", "reed: 12/in"])

        assert before.replace("washed: 1 x 2", added) == new

    def test_an_empty_record_takes_fields(self) -> None:
        """A record without fields, or with comments alone, takes its first field."""
        change = Change(("warp", "ends"), "396")

        assert "---\nwarp:\n  ends: 396\n---\n" == splice("---\n---\n", [change], "a.md")
        assert "---\n# c\nwarp:\n  ends: 396\n---" == splice("---\n# c\n---", [change], "a.md")

    def test_key_blanks_count_once(self) -> None:
        """`washed  2` is the field `washed 2`, and is not written a second time."""
        new = splice("---\nwashed  2: 1 x 2\n---\n", [Change(("washed 2",), "3 x 4")], "a.md")

        assert "---\nwashed  2: 3 x 4\n---\n" == new


class TestWhatIsRefused:
    @pytest.mark.parametrize(
        ("change", "line", "field"),
        [
            (Change(("yarns",), "bone"), 4, "yarns"),
            (Change(("yarns",), ["bone"]), 4, "yarns"),
            (Change(("yarns",), "bone", append=True), 4, "yarns"),
            (Change(("stretches",), "bone"), 13, "stretches"),
            (Change(("washed", "on"), "2024"), 12, "washed: on"),
            (Change(("washed",), {"size": "19 x 30"}), 12, "washed"),
            (Change(("washed", 1), "19 x 30"), 12, "washed: 2"),
            (Change(("stretches", 4, "name"), "x"), 13, "stretches: 5: name"),
            (Change(("stretches", -1, "name"), "x"), 13, "stretches: 0: name"),
            (Change(("stretches", 0, "pieces", 0, "washed"), ["1 x 2"]), 19, "stretches: 1: pieces: 1: washed"),
            (Change(("stretches", "name"), "x"), 13, "stretches: name"),
            (Change(("stretches", 0, "hem", "sewn"), ["x"]), 15, "stretches: 1: hem: sewn"),
            (Change(("note",), ["one", "two"]), 28, "note"),
            (Change(("x",), [["1"]]), 0, "x"),
            (Change(("",), "x"), 0, ""),
            (Change(("x",), "a\x00b"), 0, "x"),
            (Change((), "x"), 0, ""),
        ],
    )
    def test_what_would_lose_something_is_refused(self, change: Change, line: int, field: str) -> None:
        """Nothing that stands in a record is overwritten by something of another kind."""
        with pytest.raises(SpliceRefused) as refused:
            splice(NAPKINS, [change], "warps/a.md")
        problem = refused.value.problem

        assert ("warps/a.md", field, "not-written") == (problem.file, problem.field, problem.slug)
        assert line in (0, problem.line)
        assert problem.right

    @pytest.mark.parametrize(
        "text",
        [
            "",
            "No fields.",
            "---\ntitle: a\n",
            "---\ntitle: a: b\n---\n",
            "---\na: 1\na: 2\n---\n",
            "---\na: &x 1\n---\n",
            "---\na: {b: 1,5}\n---\n",
            "---\na: 1\x00\n---\n",
            "---\n- a\n---\n",
        ],
    )
    def test_a_record_with_a_fault_is_not_written_to(self, text: str) -> None:
        """What cannot be read for sure is not written to; the fault is named instead."""
        with pytest.raises(SpliceRefused) as refused:
            splice(text, [Change(("washed",), "1 x 2")], "a.md")
        faults = [problem for problem in read_front_matter(text, "a.md").problems if problem.is_fault]

        assert faults[0] == refused.value.problem

    def test_brackets_over_several_lines_are_left_alone(self) -> None:
        """A value is set between brackets on several lines, but nothing is added there."""
        text = "---\nhem: {depth: 1 in,  # deep\n  turn: 1/4 in}\n---\n"
        new = splice(text, [Change(("hem", "turn"), "1/2 in")], "a.md")

        assert text.replace("1/4", "1/2") == new
        with pytest.raises(SpliceRefused, match="brackets"):
            splice(text, [Change(("hem", "edges"), "all")], "a.md")


class TestTheTreeThatIsWanted:
    def test_nothing_given_is_changed(self) -> None:
        """The tree once changed is a new one; the old stays as it was."""
        old = {"a": ["1"], "b": {"c": "2"}}
        new = changed(old, Change(("b", "d"), "3"))

        assert ({"a": ["1"], "b": {"c": "2", "d": "3"}}, {"a": ["1"], "b": {"c": "2"}}) == (new, old)

    def test_a_list_may_not_be_shortened(self) -> None:
        """A measured wash is never taken out."""
        with pytest.raises(Unfit):
            changed({"washed": ["1", "2"]}, Change(("washed",), ["1"]))
