"""What a weaver meant by a key that is none, by a size under a wrong key, and by a line without its colon."""

from __future__ import annotations

from pathlib import Path

import pytest

from journal_tools.problems import Severity
from journal_tools.records.front_matter import read_front_matter
from journal_tools.records.kinds import INSIDE_A_WARP, KINDS
from journal_tools.records.model import words_of
from journal_tools.records.trade_words import TOLD_ELSEWHERE, TRADE
from tests.records.reading import pasted, read, shown
from tests.records.recorded import problems


class TestAWrongKey:
    @pytest.mark.parametrize(
        ("typed", "mended"),
        [
            ("wash: 17 x 30", "washed: 17 x 30"),
            ("wash 2: 17 x 30", "washed 2: 17 x 30"),
            ("wash:\n  - 17 x 30", "washed:"),
            ("was_: blue-towels", "was: blue-towels"),
            ("loom: 19 3/8 x 33", "on_loom: 19 3/8 x 33"),
            ("finished: 17 7/8 x 30 1/8", "washed: 17 7/8 x 30 1/8"),
            ("finishd: 17 7/8 x 30 1/8", "washed: 17 7/8 x 30 1/8"),
            ("epi: 20", "sett: 20"),
            ("e.p.i.: 20", "sett: 20"),
            ("PPI: 18", "beat: 18"),
            ("reed width: 20", "in_reed: 20"),
            ("width in reed: 20 1/4", "in_reed: 20 1/4"),
            ("loom width: 19 3/8", "on_loom: 19 3/8"),
            ("take-off: 19 x 32", "off_loom: 19 x 32"),
            ("before washing: 19 x 32", "off_loom: 19 x 32"),
            ("after washing: 17 x 30  # dry", "washed: 17 x 30  # dry"),
            ("picks: 18/in", "beat: 18/in"),
            ("washed: 17 7/8 30 1/8", "washed: 17 7/8 x 30 1/8"),
        ],
    )
    def test_the_line_to_paste(self, tmp_path: Path, typed: str, mended: str) -> None:
        """The key is found by its spelling, the trade's word and its value, and the whole line can be pasted."""
        (problem,) = problems(tmp_path, f"title: A\n{typed}")

        assert (3, mended) == (problem.line, problem.mended)
        assert [] == problems(tmp_path, "title: A\n" + typed.replace(typed.split("\n")[0], mended))

    @pytest.mark.parametrize(
        ("typed", "mended"),
        [("treading: 1 2 3 4", "treadling: 1, 2, 3, 4"), ("treading: 1, A", ""), ("treading: 1-4", "treadling: 1-4")],
    )
    def test_its_value_is_mended_too(self, tmp_path: Path, typed: str, mended: str) -> None:
        """A line is offered with the key that was meant only where its value reads under it, or can be mended."""
        (problem,) = problems(tmp_path, f"threading: 1-4\ntie_up: 1, 2, 3, 4\n{typed}", file="drafts__d")

        assert mended == problem.mended

    @pytest.mark.parametrize(
        ("typed", "mended"),
        [
            ("treading: 1-4\ntreadleing: 1-4", ["treadling: 1-4", ""]),
            ("treading: 1-4\ntreadling: 1-4", [""]),
            ("treadling: 1-4\ntreading: 1-4", [""]),
        ],
    )
    def test_a_key_is_offered_once(self, tmp_path: Path, typed: str, mended: list[str]) -> None:
        """A key that the record has, or that another line is told to have, is not offered for a second one."""
        found = problems(tmp_path, f"threading: 1-4\ntie_up: 1, 2, 3, 4\n{typed}", file="drafts__d")

        assert mended == [problem.mended for problem in found]
        assert [line == "" for line in mended] == ["`treadling:` can stand here once only" in p.right for p in found]

    def test_in_its_place(self, tmp_path: Path) -> None:
        """A line to paste is set in as the wrong one is, with the dash before it and the remark behind it."""
        fields = "pieces:\n  - wash: 17 x 30  # damp\n    picks: 18/in\n  - washed: 17 30"
        found = problems(tmp_path, fields)

        assert ["  - washed: 17 x 30  # damp", "    beat: 18/in", "  - washed: 17 x 30"] == [p.mended for p in found]
        assert [] == problems(tmp_path, pasted(fields, tuple(found)))

    def test_a_label_that_is_misspelt(self, tmp_path: Path) -> None:
        """The number of a yarn is offered with its key, too."""
        (problem,) = problems(tmp_path, "number: 8/2 coton  # from the shop", file="yarns__y")

        assert "number: 8/2 cotton  # from the shop" == problem.mended

    @pytest.mark.parametrize(
        ("typed", "where"),
        [
            ("shrinkage: 10 %", "what it measured"),
            ("take-up: 5 %", "what it measured"),
            ("warp length: 5 yd", "`wound:` below `warp:`"),
            ("thrums: 12 in", "below `where_it_went:`"),
            ("notes: it went well", "in the notes"),
        ],
    )
    def test_what_stands_elsewhere(self, tmp_path: Path, typed: str, where: str) -> None:
        """For what is no key at all it is told where the thing stands, and no line is offered."""
        (problem,) = problems(tmp_path, typed)

        assert where in problem.right
        assert "" == problem.mended

    def test_a_size_is_no_name(self, tmp_path: Path) -> None:
        """A size under a key that wants a record's name is never turned into a name."""
        for typed in ("loom: 19 3/8 x 33", "finish: 17 x 30", "draft: 17 x 30"):
            assert "17-x-30" not in problems(tmp_path, typed)[0].mended
            assert "19-3-8-x-33" not in problems(tmp_path, typed)[0].mended

    def test_a_word_that_wants_more(self, tmp_path: Path) -> None:
        """Where the value does not fit the key that was meant, the key is told and no line is offered."""
        (problem,) = problems(tmp_path, "color: c9b58b", file="yarns__y")

        assert "`colours:`" in problem.right
        assert "" == problem.mended

    def test_the_trade_leads_to_keys(self) -> None:
        """Every word of the trade leads to keys that some record has, and every other one to a sentence."""
        keys = {key for model in (*KINDS.values(), *INSIDE_A_WARP) for key in words_of(model)}

        assert set() == {key for found in TRADE.values() for key in found} - keys
        assert all(text.endswith(".") for text in TOLD_ELSEWHERE.values())


class TestAMissingColon:
    @pytest.mark.parametrize(
        ("typed", "mended"),
        [
            ("yarn cotton-8-2", "yarn: cotton-8-2"),
            ("weave 2/2 twill  # mine", "weave: 2/2 twill  # mine"),
            ("on loom 19 3/8 x 33", "on_loom: 19 3/8 x 33"),
            ("washed 2 17 x 30", "washed 2: 17 x 30"),
            ("weav plain weave", "weave: plain weave"),
            ("epi 20", "sett: 20"),
            ("pieces", "pieces:"),
        ],
    )
    @pytest.mark.parametrize("below", ["", "\nin_reed: 20"])
    def test_below_a_title(self, typed: str, mended: str, below: str) -> None:
        """A key without its colon below a title is no more of the title: the line to paste has the colon."""
        fields = f"title: Colon\n{typed}{below}"
        (problem,) = read(fields).problems
        again = read(pasted(fields, (problem,)))
        shown_again = shown(again.node)

        assert (3, mended, True) == (problem.line, problem.mended, problem.is_fault)
        assert isinstance(shown_again, dict)
        assert ("Colon", mended.split(":")[0], ()) == (shown_again["title"], list(shown_again)[1], again.problems)

    def test_the_first_line(self) -> None:
        """The first line may lack its colon as well, alone and with others below it."""
        for fields in ("title Towels", "title Towels\nweave: plain"):
            assert ["title: Towels"] == [problem.mended for problem in read(fields).problems]

    def test_in_a_piece(self) -> None:
        """Inside a piece the keys of a piece are known, also behind the dash."""
        fields = "pieces:\n  - name a\n    washed: 17 x 30\n  - name: b\n    on_loom 19 x 33"
        found = read(fields).problems

        assert ["  - name: a", "    on_loom: 19 x 33"] == [problem.mended for problem in found]
        assert () == read(pasted(fields, found)).problems

    def test_below_a_gap(self) -> None:
        """After a gap a line in small letters that begins with a key is a field; prose is where notes begin."""
        assert ["yarn: cotton-8-2"] == [p.mended for p in read("title: A\n\nyarn cotton-8-2\nweave: x").problems]
        assert ["---\nYarn was sticky."] == [p.mended for p in read("title: A\n\nYarn was sticky.").problems]

    def test_set_in_below_a_title(self) -> None:
        """Set in deeper, such lines would be read as more of the title: each is a fault with its line to paste."""
        fields = "title: Colon\n  yarn cotton-8-2\n  weave 2/2 twill\nin_reed: 20"
        found = read(fields).problems
        again = read(pasted(fields, found))
        meant = {"title": "Colon", "yarn": "cotton-8-2", "weave": "2/2 twill", "in_reed": "20"}

        assert [(3, True), (4, True)] == [(problem.line, problem.is_fault) for problem in found]
        assert (meant, ()) == (shown(again.node), again.problems)

    def test_longer_texts_stay(self) -> None:
        """Text that goes on below is read as before: a line of it that begins with a key's word may be no field."""
        for text in ("Towels woven\n  on the small loom", '"Towels in\n  yarn of old"', "A\n  b"):
            assert () == read(f"title: {text}").problems

    def test_prose_is_only_asked_about(self) -> None:
        """In what is done, a next line that begins with `water` may be meant so: it is a question."""
        text = "---\ndone: Soak it, then press the\n  water out.\n---\n"
        (problem,) = read_front_matter(text, "finishes/f.md").problems

        assert (Severity.QUESTION, "water: out.") == (problem.severity, problem.mended)

    def test_words_that_are_no_field(self) -> None:
        """A line with no key at all is not offered as more of the title above it."""
        (problem,) = read("title: Towels\nmoon waxing\nweave: plain").problems

        assert ("moon waxing", "") == (problem.read, problem.mended)
        assert {"title": "Towels", "weave": "plain"} == shown(read("title: Towels\nmoon waxing\nweave: plain").node)
