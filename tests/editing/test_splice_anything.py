"""Anything written into any record: it reads back, and every other byte stays."""

from __future__ import annotations

from collections.abc import Sequence

from hypothesis import assume, given
from hypothesis import strategies as st

from journal_tools.editing.change import changed, tree_of
from journal_tools.editing.splice import Change, SpliceRefused, splice
from journal_tools.records.front_matter import read_front_matter
from journal_tools.records.quoting import as_value

# A record is made by writing a tree in a random style, so that what it should read as is known.
KEYS = st.sampled_from(["title", "washed", "washed 2", "0 min", "hem", "a: b", "on_loom", "#", "- x", "yes", "ß"])
TEXTS = st.one_of(
    st.sampled_from(["", "19 x 30", "? x 3", "a: b", "c #2", "'", '"19"', "- 3", "[x", "46,5 cm", " x ", "|", "&"]),
    st.text(st.characters(exclude_categories=("Cc", "Cs")), max_size=12),
    st.text("ab\n :#-", max_size=8),
)
VALUES = st.recursive(
    TEXTS,
    lambda below: st.one_of(
        st.lists(below.filter(lambda v: not isinstance(v, list)), min_size=1, max_size=3),
        st.dictionaries(KEYS, below, min_size=1, max_size=3),
    ),
    max_leaves=8,
)
TREES = st.dictionaries(KEYS, VALUES, max_size=4)
PATHS = st.lists(st.one_of(KEYS, st.integers(0, 3)), min_size=1, max_size=4).map(tuple)


@st.composite
def written_records(draw: st.DrawFn) -> str:
    """A record's text in some weaver's style, with comments, gaps and any line end."""
    step = draw(st.integers(1, 5))
    dashes = draw(st.integers(0, 4))
    line_end = draw(st.sampled_from(["\n", "\r\n"]))
    between = draw(st.sampled_from(["", "# a comment: #2 {x", "   ", "    # deep"]))
    tail = draw(st.sampled_from(["", "  # why", "   "]))

    def fields(value: dict[str, object], column: int) -> list[str]:
        lines: list[str] = []
        for key, below in value.items():
            start = " " * column + as_value(key) + ":" + (" " if as_value(key) == '""' else "")
            if isinstance(below, str):
                lines.append(f"{start}   {as_value(below)}{tail}" if below else start.rstrip())
            elif isinstance(below, dict):
                lines += [start + tail, *fields(below, column + step)]
            elif isinstance(below, list):
                lines += [start + tail, *items(below, column + dashes)]
            lines += [between] if between else []
        return lines

    def items(value: list[object], column: int) -> list[str]:
        lines: list[str] = []
        for item in value:
            if isinstance(item, str):
                lines.append(" " * column + f"- {as_value(item)}{tail}")
            elif isinstance(item, dict):
                inner = fields(item, column + 2)
                lines += [" " * column + "- " + inner[0].lstrip(" "), *inner[1:]]
            lines += [between] if between else []
        return lines

    tree_drawn = draw(TREES)
    text = line_end.join(["---", *fields(tree_drawn, 0), "---", "Notes.", ""])
    return draw(st.sampled_from(["", "\ufeff"])) + text


def texts_in(value: object, path: tuple[str | int, ...] = ()) -> Sequence[tuple[str | int, ...]]:
    """The path of every text in a tree."""
    if isinstance(value, dict):
        return [found for key, below in value.items() for found in texts_in(below, (*path, key))]
    if isinstance(value, list):
        return [found for number, item in enumerate(value) for found in texts_in(item, (*path, number))]
    return [path]


def alike(one: str, other: str) -> int:
    """How many characters the texts have in common at their start."""
    pairs = zip(one, other, strict=False)
    return next((n for n, (a, b) in enumerate(pairs) if a != b), min(len(one), len(other)))


class TestEveryRecord:
    @given(written_records(), PATHS, VALUES, st.booleans())
    def test_it_reads_back_or_is_refused(
        self, text: str, path: tuple[str | int, ...], value: object, append: bool
    ) -> None:
        """Whatever is written anywhere, the whole record then reads as wanted, or nothing is written."""
        fm = read_front_matter(text, "a.md")
        assume(not any(problem.is_fault for problem in fm.problems))
        change = Change(path, value, append)  # type: ignore[arg-type]
        try:
            new = splice(text, [change], "a.md")
        except SpliceRefused:
            return
        again = read_front_matter(new, "a.md")

        assert changed(tree_of(fm.node), change) == tree_of(again.node)
        assert fm.notes == again.notes
        assert text[: fm.header_start] == new[: fm.header_start]

    @given(written_records(), KEYS, TEXTS)
    def test_a_new_field_adds_its_lines_and_nothing_else(self, text: str, key: str, value: str) -> None:
        """A field that is new is one line above the end of the fields; all that was there stays."""
        fm = read_front_matter(text, "a.md")
        assume(not any(problem.is_fault for problem in fm.problems))
        assume(key not in (tree_of(fm.node) or {}))
        new = splice(text, [Change((key,), value)], "a.md")
        end = fm.header_start + len(fm.header)
        added = new[end : len(new) - len(text) + end]

        assert text[:end] + added + text[end:] == new
        assert 1 == len(added.splitlines())

    @given(written_records(), st.data())
    def test_setting_one_value_leaves_every_other_byte(self, text: str, data: st.DataObject) -> None:
        """When a text is set, the file differs at that text alone."""
        fm = read_front_matter(text, "a.md")
        assume(not any(problem.is_fault for problem in fm.problems))
        places = list(texts_in(tree_of(fm.node)))
        assume(places)
        path = data.draw(st.sampled_from(places))
        new = splice(text, [Change(path, "17 7/8 x 30 1/8")], "a.md")
        start = alike(text, new)
        end = alike(text[start:][::-1], new[start:][::-1])

        assert (text[:start], text[len(text) - end :]) == (new[:start], new[len(new) - end :])
        assert "\n" not in new[start : len(new) - end]
        assert 1 >= len(text[start : len(text) - end].splitlines())

    @given(written_records(), st.data())
    def test_setting_what_is_there_changes_nothing(self, text: str, data: st.DataObject) -> None:
        """A value set to what it is already leaves the file as it is."""
        fm = read_front_matter(text, "a.md")
        assume(not any(problem.is_fault for problem in fm.problems))
        places = list(texts_in(tree_of(fm.node)))
        assume(places)
        path = data.draw(st.sampled_from(places))
        value = tree_of(fm.node)
        for key in path:
            value = value[key]  # type: ignore[index,call-overload]

        assert text == splice(text, [Change(path, value)], "a.md")
