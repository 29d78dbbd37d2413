"""What YAML reads otherwise than a weaver means it: each case told, with the line to paste.

The cases were found by trying the notations of the format on the parser.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal_tools.problems import Severity
from journal_tools.records.front_matter import read_file
from journal_tools.records.quoting import as_key, as_value
from tests.records.reading import pasted, read, shown

CORPUS = Path(__file__).parent / "corpus"

# What a weaver can type: every character but the control characters, and line ends.
WORDS = st.text(st.one_of(st.characters(exclude_categories=("Cc", "Cs")), st.sampled_from("\n\t #:-?'\"")))

# fields, line of the file, field named, what the mended line pasted over it reads as
READ_SILENTLY_WRONG = [
    ("warp: {reed: 46,5 cm}", 2, "warp", {"warp": {"reed": "46,5 cm"}}),
    ("cut: [46,5 cm, 44 cm]", 2, "cut", {"cut": ["46,5 cm", "44 cm"]}),
    ("yarn: {price: 12,50 EUR}", 2, "yarn", {"yarn": {"price": "12,50 EUR"}}),
    ("hex: #a1b2c3", 2, "hex", {"hex": "a1b2c3"}),
    ("colours:\n  bone: #fff", 3, "colours: bone", {"colours": {"bone": "fff"}}),
    ("weft: slate #43536b", 2, "weft", {"weft": "slate #43536b"}),
    ("finish: wash #2 warm", 2, "finish", {"finish": "wash #2 warm"}),
    ("finish: 'wash' #2 warm", 2, "finish", None),
    ("note: knot #3", 2, "note", {"note": "knot #3"}),
    ("note: knot #3  # at the end", 2, "note", {"note": "knot #3"}),
    ("finish:\n  - wash #2", 3, "finish: 1", {"finish": ["wash #2"]}),
    ("warp: #2 wound\n  ends: 4", 2, "warp", None),
    ("ends: {flax:396}", 2, "ends", {"ends": {"flax": "396"}}),
    ("weft: &co", 2, "weft", {"weft": "&co"}),
    ("title: !wow", 2, "title", {"title": "!wow"}),
    ("title: !", 2, "title", {"title": "!"}),
    ("title: !!str b", 2, "title", {"title": "!!str b"}),
    ("weft: *bone", 2, "weft", {"weft": "*bone"}),
    ("weft:\n  - *bone", 3, "weft: 1", {"weft": ["*bone"]}),
    ("warp: &w\n  ends: 4", 2, "warp", {"warp": {"ends": "4"}}),
    ("<<: {a: b}", 2, "<<", None),
    ("yarn: a\nreed: 12\nyarn: b", 4, "yarn", None),
    ("warp:\n  ends: 4\n  ends: 5", 4, "warp: ends", None),
    ("pieces:\n  - name: a\n    name: b", 4, "pieces: 1: name", None),
    ("washed 2: 17\nwashed  2: 18", 3, "washed 2", None),
    ("piece: {loom: 19, off, washed: 17}", 2, "piece", None),
    ("warp:\n  wound:7 yd", 3, "warp", {"warp": {"wound": "7 yd"}}),
    ("weave:plain: weave", 2, "weave:plain", None),
    ("[a, b]: c", 2, "", None),
    ("washed:\n  - 19 x 20\n   - 19 x 21", 4, "washed: 1", {"washed": ["19 x 20", "19 x 21"]}),
    ("washed:\n  - 19 x 20\n   -19 x 21", 4, "washed: 1", {"washed": ["19 x 20", "19 x 21"]}),
    ("washed: 19 x 20\n  - 19 x 21", 3, "washed", None),
    ("washed:\n  - - 19 x 20", 3, "washed: 1", {"washed": ["19 x 20"]}),
    ("pieces:\n  - - name: a\n      picks: 3", 3, "pieces: 1", None),
    ("pieces:\n  - {name: a, cut: 4,5 cm}", 3, "pieces: 1", {"pieces": [{"name": "a", "cut": "4,5 cm"}]}),
    ("washed:\n  - -", 3, "washed: 1", None),
    ("pieces:\n  - name: a\n  - name:b", 4, "pieces: 2", {"pieces": [{"name": "a"}, {"name": "b"}]}),
    ('in_reed: "20\non_loom: 19"', 2, "in_reed", {"in_reed": "20", "on_loom": '19"'}),
    ('title: "a\\0b"', 2, "title", None),
    ("title\u00a0: Towels", 2, "title", {"title": "Towels"}),
    ("warp:\n\u00a0\u00a0ends: 4", 3, "ends", {"warp": {"ends": "4"}}),
    ("title:\u00a0Towels", 2, "", {"title": "Towels"}),
    ("title:Towels", 2, "", {"title": "Towels"}),
    ("title = Towels", 2, "", {"title": "Towels"}),
    ("- title", 2, "", None),
    ("Just words", 2, "", None),
]

# fields, line of the file, field named, what the mended line pasted over it reads as
REFUSED = [
    ('on_loom: "19" x 30"', 2, "on_loom", {"on_loom": '19" x 30"'}),
    ('on_loom: "19 x 30', 2, "on_loom", {"on_loom": "19 x 30"}),
    ("title: 'tis a towel", 2, "title", {"title": "tis a towel"}),
    ("title: 'it's'", 2, "title", {"title": "it's"}),
    ('title: "the "good" one"', 2, "title", {"title": 'the "good" one'}),
    ('title: "C:\\d"', 2, "title", {"title": "C:\\d"}),
    ("weft: @bone", 2, "weft", {"weft": "@bone"}),
    ("loss: %8", 2, "loss", {"loss": "%8"}),
    ("loss: `8`", 2, "loss", {"loss": "`8`"}),
    ("weft: * bone", 2, "weft", {"weft": "* bone"}),
    ("weft: & bone", 2, "weft", {"weft": "& bone"}),
    ("threading: [1-4] x 3", 2, "threading", {"threading": "[1-4] x 3"}),
    ("threading: [1-4", 2, "threading", None),
    ("threading: {1-4", 2, "threading", None),
    ("threading: ]1-4", 2, "threading", {"threading": "]1-4"}),
    ("threading: , 1-4", 2, "threading", {"threading": ", 1-4"}),
    ("width: > 20 cm", 2, "width", {"width": "> 20 cm"}),
    ("width: >20", 2, "width", {"width": ">20"}),
    ("width: |12", 2, "width", {"width": "|12"}),
    ("title: Towels: the second", 2, "title", {"title": "Towels: the second"}),
    ("title: Towels:", 2, "title", {"title": "Towels:"}),
    ("off_loom: -", 2, "off_loom", None),
    ("washed: - 19 x 20", 2, "washed", {"washed": ["19 x 20"]}),
    ("warp:\n\tends: 4", 3, "warp: ends", {"warp": {"ends": "4"}}),
    ("title: a\n\tends: 4", 3, "title: ends", {"title": "a", "ends": "4"}),
    ("piece: {off:, x: 1}", 2, "piece", {"piece": {"off": "", "x": "1"}}),
    ("yarn: {hex: #abc}", 2, "yarn", {"yarn": {"hex": "abc"}}),
    ("yarn: {hex: #a1b2c3, lot: 7}", 2, "yarn", {"yarn": {"hex": "a1b2c3", "lot": "7"}}),
    ("warp: {ends: 4, order: 2 bone: 3}", 2, "warp", {"warp": {"ends": "4", "order": "2 bone: 3"}}),
    ("warp: {ends: 4}}", 2, "warp", None),
    ("title: a\nweave:plain", 3, "", {"title": "a", "weave": "plain"}),
    ("title: a\nweave:plain\nreed: 12", 3, "", {"title": "a", "weave": "plain", "reed": "12"}),
    ("title: a\nweave = plain\nreed: 12", 3, "", {"title": "a", "weave": "plain", "reed": "12"}),
    ("title: a\nweave\uff1aplain\nreed: 12", 3, "", {"title": "a", "weave": "plain", "reed": "12"}),
    ("weave:plain\nreed: 12", 2, "", {"weave": "plain", "reed": "12"}),
    ("pieces:\n  - name:a\n    picks: 3", 3, "pieces: 1", {"pieces": [{"name": "a", "picks": "3"}]}),
    ("washed:\n  - 19 x 20\n  -19 x 21", 4, "washed", {"washed": ["19 x 20", "19 x 21"]}),
    ("note: a long one\nthat goes on\nreed: 12", 3, "", {"note": "a long one that goes on", "reed": "12"}),
    ("reed: 12\n  sley: 2", 3, "reed: sley", {"reed": "12", "sley": "2"}),
    ("warp:\n  ends: 4\n wound: 7", 4, "warp: wound", None),
    ("warp:\n    ends: 4\n   wound: 7", 4, "warp: wound", {"warp": {"ends": "4", "wound": "7"}}),
    ("washed:\n  - 19 x 20\n    on: 2024", 4, "washed: 1: on", None),
    ("note: so\n  we say: yes", 3, "note: we say", None),
    ("note: |\n   one\n  two", 4, "note", {"note": "one\ntwo\n"}),
    ("title: a\n...\nreed: 12", 3, "", None),
    ("title: a\n--- b\nreed: 12", 3, "", None),
    ("%title: a", 2, "%title", None),
    ("title: a\n: b", 3, "", None),
]


class TestMisreadings:
    @pytest.mark.parametrize(("fields", "line", "field", "meant"), READ_SILENTLY_WRONG + REFUSED)
    def test_each_is_told_once_with_its_place(
        self, fields: str, line: int, field: str, meant: object
    ) -> None:
        """A line that is not read as meant is told once: its line, its field, what would be right."""
        problems = read(fields).problems

        assert [("warps/a.md", line, field, True)] == [
            (p.file, p.line, p.field, bool(p.right)) for p in problems
        ]
        assert problems[0].is_fault

    @pytest.mark.parametrize(
        ("fields", "meant"), [(row[0], row[3]) for row in READ_SILENTLY_WRONG + REFUSED]
    )
    def test_the_mended_line_reads_as_meant(self, fields: str, meant: object) -> None:
        """Pasted over the line that is named, the mended line reads as meant, and nothing more is told."""
        problems = read(fields).problems
        assert (meant is not None) == bool(problems[0].mended)
        if meant is not None:
            again = read(pasted(fields, problems))

            assert (meant, ()) == (shown(again.node), again.problems)

    def test_no_words_of_the_parser_come_through(self) -> None:
        """A weaver is told in her own words, never in the parser's."""
        jargon = ("token", "mapping", "scalar", "yaml", "block", "flow", "alias", "anchor", "parse", "stream")
        said = [p.right.lower() for row in READ_SILENTLY_WRONG + REFUSED for p in read(row[0]).problems]

        assert [] == [(right, word) for right in said for word in jargon if word in right]

    def test_words_after_a_hash_are_asked_about(self) -> None:
        """`wash #two` loses its last word, unless it is a comment: that is a question, not a fault."""
        problems = read("finish: wash #two\nreed: 12 # dented").problems

        assert [(2, Severity.QUESTION, 'finish: "wash #two"')] == [
            (p.line, p.severity, p.mended) for p in problems
        ]

    def test_a_list_without_dashes(self) -> None:
        """Sizes below one another without dashes are one text to the parser, and are told."""
        problems = read("washed:\n  19 x 20\n  18 x 19").problems

        assert [(3, "  - 19 x 20\n  - 18 x 19")] == [(p.line, p.mended) for p in problems]

    def test_a_doubled_key_names_both_lines(self) -> None:
        """A field that stands twice is told on its second line, and the first is named."""
        problems = read("washed: 17\nreed: 12\nwashed: 18").problems

        assert (4, True) == (problems[0].line, "line 2" in problems[0].right)

    def test_a_second_wash_is_a_list(self) -> None:
        """A second `washed:` line is one fault, and the list of both washes stands in its place without the first."""
        fields = "washed: 17 x 30\nreed: 12\nwashed: 16 x 29"
        (problem,) = read(fields).problems
        again = read(pasted(fields, (problem,)).removeprefix("washed: 17 x 30\n"))

        assert (4, "doubled-key") == (problem.line, problem.slug)
        assert "For a second wash write a list: put this one here, and take line 2 out." in problem.right
        assert ({"reed": "12", "washed": ["17 x 30", "16 x 29"]}, ()) == (shown(again.node), again.problems)

    def test_two_lists_of_pieces_are_one(self) -> None:
        """A second `pieces:` is told to stand with the first, and offers no line that would lose any."""
        (problem,) = read("pieces:\n  - name: a\npieces:\n  - name: b").problems

        assert "each of these stands below those of line 2" in problem.right
        assert "" == problem.mended

    def test_all_bad_lines_are_told_at_once(self) -> None:
        """Every bad line of a file is told in one run, whatever is wrong with each."""
        lines = ["title: Towels: the second", "reed: @12", "weave:plain", "warp:", "\torder: 20 bone", "\tends: 4"]
        lines += ["washed: {cm: 46,5 cm}", "weft: slate #43536b", 'on_loom: "19" x 30"', "sley: 2", "sley: 1-2"]
        lines += ["yarn: {hex: #abc}", "note: so", "  it: was", "tags: [a"]
        problems = read("\n".join(lines)).problems

        assert [2, 3, 4, 6, 7, 8, 9, 10, 12, 13, 15, 16] == [p.line for p in problems]

    def test_many_bad_lines_can_all_be_pasted(self) -> None:
        """A file with several bad lines reads well once each mended line is pasted."""
        fields = 'title: A: b\nreed: @12\nweave:plain\nweft: slate #43536b\non_loom: "19" x 30"'
        again = read(pasted(fields, read(fields).problems))
        meant = {"title": "A: b", "reed": "@12", "weave": "plain", "weft": "slate #43536b", "on_loom": '19" x 30"'}

        assert (meant, ()) == (shown(again.node), again.problems)

    @pytest.mark.parametrize("prose", ["Woven in May.\n- and: June\nMore.", "The first on this loom: a joy.\nOh."])
    def test_notes_without_a_line_above_them(self, prose: str) -> None:
        """Notes that begin without `---` above them, with a rule further down, are told once."""
        problems = read(f"title: Towels\n\n{prose}").problems

        assert [(4, "---\n" + prose.split("\n")[0])] == [(p.line, p.mended) for p in problems]


class TestGoodLines:
    @pytest.mark.parametrize(
        "fields",
        [
            "a: b\n\n# a comment\n#another\n#2 more\nc: d",
            "a: b   # 2 days later",
            "a: # not yet",
            "a:\n- b\n- c\nd: e",
            "a:\n    b: c\nd:\n  e: f",
            "a:\n  -   b: c\n      d: e",
            "a:\n  -\n    b: c",
            "photos:\n  a-b.jpg: on the loom",
            "was: [old-name, older]",
            "note: see https://a.example/x#2",
            "note:\n  https://a.example/x",
            "note: one\n  two\n\n  three",
            "note: |\n  a:b\n  - c\n  #2\n  19 x 20\n",
            'note: "one\n  and then: two"',
            "0 min: 153 x 220 cm",
            "10:30: x",
            "fulling:\n  0 min: 153 x 220 cm\n  8 min, hot: 141 x 203 cm",
            "threading: 12 times (1-4, 3-2), none, 1+3",
            "order: 20 bone,\n  12 times (4 slate, 24 bone)",
            "order:\n  20 bone,\n  12 times (4 slate)",
            '"a: b": c',
            "a: 'b: c'  # d",
            "a: { b: c, d: e }",
            "a: [b, c]",
            "a: {}\nb: []",
            "na\u00efve: \u00e9\u00a0\u00ab x \u00bb",
        ],
    )
    def test_nothing_is_said_of_good_lines(self, fields: str) -> None:
        """Lines that read as they were meant are never complained of."""
        assert () == read(fields).problems

    @given(WORDS)
    def test_any_text_can_be_written_so_that_it_reads_back(self, text: str) -> None:
        """Quoted where needed, any text reads back as itself, as a value and as an item, without a word."""
        written = as_value(text)
        fm = read(f"a: {written}\nb:\n  - {written}\n  - c: {written}  # d")

        assert ({"a": text, "b": [text, {"c": text}]}, ()) == (shown(fm.node), fm.problems)

    @given(WORDS.filter(lambda text: 0 < len(text) < 60))
    def test_any_key_can_be_written_so_that_it_reads_back(self, text: str) -> None:
        """Quoted where needed, any words are a key."""
        fm = read(f"a:\n  {as_key(text)}: b\nc:\n  - {as_key(text)}: d")

        assert ({"a": {text: "b"}, "c": [{text: "d"}]}, ()) == (shown(fm.node), fm.problems)


class TestCorpus:
    @pytest.mark.parametrize("path", sorted(CORPUS.glob("*.md")), ids=lambda path: path.stem)
    def test_a_nasty_file_is_told_as_written_down(self, path: Path) -> None:
        """Each file that once was read wrong says the same as when it was understood."""
        said = []
        for problem in read_file(path, path.name).problems:
            said.append(f"{problem.severity} {problem.sentence()}")
            said += [f"    {line}" for line in problem.mended.splitlines()]

        assert path.with_suffix(".txt").read_text(encoding="utf-8").splitlines() == said
