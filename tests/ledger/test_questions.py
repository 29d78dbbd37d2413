"""What the journal asks: worded as a question, never a fault, and asked once."""

from __future__ import annotations

from pathlib import Path

import pytest

from journal_tools.checking import check
from journal_tools.problems import Problem, Severity
from tests.ledger.desk import journal, write

LOOM = "title: The small loom\nshafts: 4\nwidth: 24 in"
DRAFT = "title: Eight shafts\nthreading: 1-8\nlift_plan: 1+3+5+7, 2+4+6+8"
YARN = "title: Cotton\nfibre: cotton\nnumber: 8/2 cotton\ncolours:\n  slate: 43536b"
FINISH = "title: By hand"

ASKED: dict[str, tuple[str, int, str, str]] = {
    "washed-wider-than-reed": ("in_reed: 18\nwashed: 30 x 18", 3, "washed", "30 in"),
    "lost-too-much": ("in_reed: 50\non_loom: 48 x 80\nwashed: 18 x 60", 4, "washed", "18 in"),
    "grew": ("off_loom: 18 x 30\nwashed: 18 x 31", 3, "washed", "31 in"),
    "sett-is-not-the-sley": ("reed: 10/in\nsley: 2\nsett: 24/in", 4, "sett", "24/in"),
    "ends-do-not-fill-the-width": (
        "reed: 10/in\nsley: 2\nwarp:\n  ends: 300\nin_reed: 20",
        6,
        "in_reed",
        "20",
    ),
    "ends-are-not-the-order": ("ends: 120\nwarp: {yarn: cotton, order: 100 slate}", 2, "ends", "120"),
    "made-up-is-larger": ("washed: 18 x 29\nmade_up: 18 x 32", 3, "made_up", "32 in"),
    "hems-do-not-add-up": (
        "washed: 18 x 29\nhem:\n  depth: 1 in\n  turn: 1/4 in\n  sewn: after washing\nmade_up: 18 x 24",
        7,
        "made_up",
        "24 in",
    ),
    "warp-does-not-add-up": (
        "warp:\n  wound: 3 yd\non_loom: 18 x 90\nwhere_it_went:\n  thrums: 30 in",
        5,
        "where_it_went",
        "108 in",
    ),
    "wider-than-loom": ("loom: small\nin_reed: 25", 3, "in_reed", "25"),
    "more-shafts-than-loom": ("loom: small\ndraft: eight", 3, "draft", "eight"),
    "dates-out-of-order": ("started: 2024-05-01\nfinished: 2024-04-01", 3, "finished", "2024-04-01"),
    "weight-far-from-reckoned": (
        "yarn: cotton\nends: 400\nin_reed: 20\non_loom: 19 x 30\npicks: 600\nweight: 300 g",
        7,
        "weight",
        "300 g",
    ),
    "no-such-yarn": ("yarn: coton", 2, "yarn", "coton"),
    "no-such-colour": ("yarn: cotton slat", 2, "yarn", "cotton slat"),
    "no-such-draft": ("draft: eigth", 2, "draft", "eigth"),
    "no-such-loom": ("loom: smal", 2, "loom", "smal"),
    "no-such-finish": ("finish: by-hnd", 2, "finish", "by-hnd"),
    "no-such-piece": ("learn: no widths from napkns\npieces:\n  - name: napkin 1", 2, "learn", "napkns"),
}
"""A warp that makes each question be asked, and its line, its field and what was read."""


def asked(folder: Path, header: str) -> list[Problem]:
    """What is asked about one warp, in a journal with one of everything."""
    made = write(
        folder,
        warps__cloth=header,
        looms__small=LOOM,
        drafts__eight=DRAFT,
        yarns__cotton=YARN,
        finishes__by_hand=FINISH,
    )
    return list(check(made))


def slugs(folder: Path, header: str) -> list[str]:
    """The kinds of question asked about one warp."""
    return [problem.slug for problem in asked(folder, header)]


class TestEveryQuestion:
    """Each of them, asked, accepted, and worded."""

    @pytest.mark.parametrize("slug", ASKED)
    def test_it_is_asked(self, tmp_path: Path, slug: str) -> None:
        """It names the file, the line, the field and what was read, and it is a question."""
        header, line, field, read = ASKED[slug]
        (problem,) = asked(tmp_path, header)

        assert (slug, "warps/cloth.md", line, field, read) == (
            problem.slug,
            problem.file,
            problem.line,
            problem.field,
            problem.read,
        )
        assert Severity.QUESTION is problem.severity

    @pytest.mark.parametrize("slug", ASKED)
    def test_it_is_worded_as_one(self, tmp_path: Path, slug: str) -> None:
        """It asks, and says how to answer it for good."""
        (problem,) = asked(tmp_path, ASKED[slug][0])

        assert "?" in problem.right
        assert problem.right.endswith(f"If it is so, write `accepted: {slug.replace('-', ' ')}`.")

    @pytest.mark.parametrize("slug", ASKED)
    @pytest.mark.parametrize("between", [" ", "-"])
    def test_it_is_asked_once(self, tmp_path: Path, slug: str, between: str) -> None:
        """Accepted, with blanks or hyphens, it is not asked again."""
        assert [] == asked(tmp_path, f"{ASKED[slug][0]}\naccepted: {slug.replace('-', between)}")

    @pytest.mark.parametrize("slug", ASKED)
    def test_another_answer_does_not_do(self, tmp_path: Path, slug: str) -> None:
        """To accept one question is not to accept another."""
        other = "grew" if slug != "grew" else "no-such-loom"

        assert [slug] == slugs(tmp_path, f"{ASKED[slug][0]}\naccepted:\n  - {other}")


class TestNames:
    """A name without a record is a question with the nearest name; all else works without it."""

    @pytest.mark.parametrize(
        ("slug", "near"),
        [
            ("no-such-yarn", "`cotton`"),
            ("no-such-colour", "slate"),
            ("no-such-draft", "`eight`"),
            ("no-such-loom", "`small`"),
            ("no-such-finish", "`by-hand`"),
            ("no-such-piece", "`napkin 1`"),
        ],
    )
    def test_the_nearest(self, tmp_path: Path, slug: str, near: str) -> None:
        """The name that was probably meant is offered."""
        (problem,) = asked(tmp_path, ASKED[slug][0])

        assert f"Is it {near}" in problem.right

    def test_no_name_is_near(self, tmp_path: Path) -> None:
        """A name like no other is asked about without a guess."""
        (problem,) = asked(tmp_path, "loom: grandmother-s-countermarch")

        assert "Is it spelt otherwise, or is its record still to come?" in problem.right

    def test_an_unknown_yarn_is_never_a_fault(self, tmp_path: Path) -> None:
        """Losses and card work for a yarn that nobody has written down."""
        (problem,) = asked(tmp_path, "yarn: mystery-cone\nin_reed: 20\nwashed: 18 x 30")

        assert not problem.is_fault
        assert "mystery-cone" == problem.read

    def test_wherever_it_is_named(self, tmp_path: Path) -> None:
        """Each place that a yarn can be named in has its own line, and each yarn is asked about once."""
        header = (
            "yarns:\n  red: wool-a red\n  blue:\n    yarn: wool-b\n    colour: blue\n"
            "warp:\n  order: 10 red, 10 wool-c\n  floating_selvedges: wool-d\n"
            "weft:\n  - wool-e\n  - yarn: wool-f\nstretches:\n  - name: one\n    weft: wool-g\n"
            "    pieces:\n      - name: x\n        weft: wool-a red"
        )

        assert [
            ("yarns: red", 3, "wool-a"),
            ("yarns: blue", 5, "wool-b"),
            ("warp: order", 8, "wool-c"),
            ("warp: floating_selvedges", 9, "wool-d"),
            ("weft", 11, "wool-e"),
            ("weft", 12, "wool-f"),
            ("weft", 15, "wool-g"),
        ] == [(problem.field, problem.line, problem.read) for problem in asked(tmp_path, header)]

    def test_colours_beside_a_yarn(self, tmp_path: Path) -> None:
        """In an order the words may be colours of the yarn beside it."""
        known = "warp:\n  yarn: cotton\n  order: 20 slate"
        new = "warp:\n  yarn: cotton\n  order: 20 slate, 4 mustard"

        assert [] == slugs(tmp_path / "a", known)
        assert [("no-such-colour", "cotton mustard")] == [(p.slug, p.read) for p in asked(tmp_path / "b", new)]

    def test_finishes_of_washes(self, tmp_path: Path) -> None:
        """A recipe named by a wash of one piece is asked about where it stands."""
        header = "pieces:\n  - name: a\n    washed:\n      - size: 18 x 30\n        finish: tub"

        assert [("finish", 6, "tub")] == [(p.field, p.line, p.read) for p in asked(tmp_path, header)]


class TestWider:
    """Cloth that is wider than it stood in the reed."""

    def test_within_the_tape(self, tmp_path: Path) -> None:
        """An eighth wider is within what a tape can tell."""
        assert [] == slugs(tmp_path, "in_reed: 18\nwashed: 18 1/8 x 30")

    def test_opened_cloth(self, tmp_path: Path) -> None:
        """Double-width cloth is compared with its opened width in the reed."""
        assert [] == slugs(tmp_path, "layers: 2\nopens: at the left\nin_reed: 20\nwashed: 36 x 50")

    def test_in_a_piece(self, tmp_path: Path) -> None:
        """The question names the piece, and can be accepted in it."""
        header = "in_reed: 18\npieces:\n  - name: towel 1\n    washed: 30 x 18"
        (problem,) = asked(tmp_path / "a", header)

        assert ("towel 1: washed", 5) == (problem.field, problem.line)
        assert [] == slugs(tmp_path / "b", header + "\n    accepted: washed wider than reed")


class TestGrew:
    """A state that is larger than the one before."""

    def test_within_the_tape(self, tmp_path: Path) -> None:
        """Less than both ± together is no growth."""
        assert [] == slugs(tmp_path, "off_loom: 18 x 30\nwashed: 18 1/8 x 30 1/4")

    def test_not_over_a_hem(self, tmp_path: Path) -> None:
        """Cloth and hemmed cloth are not compared."""
        header = "off_loom: 18 x 30\nhem: 1 in\nhemmed: 18 x 27\nwashed: 18 x 27"

        assert [] == slugs(tmp_path, header)

    def test_both_directions(self, tmp_path: Path) -> None:
        """Alpaca that grew both ways is asked about twice, in one acceptance."""
        header = "off_loom: 18 x 30\nwashed: 19 x 32"

        assert ["grew", "grew"] == slugs(tmp_path / "a", header)
        assert [] == slugs(tmp_path / "b", header + "\naccepted: grew")


class TestAccount:
    """A warp that does not add up."""

    def test_a_line_is_missing(self, tmp_path: Path) -> None:
        """More than 30 % of what wove in no line is no take-up."""
        header = "warp:\n  wound: 4 yd\non_loom: 18 x 60\nwhere_it_went:\n  thrums: 30 in"
        (problem,) = asked(tmp_path, header)

        assert problem.right.startswith("54 in of the 144 in wound is in no line")

    def test_a_board_is_out_by_little(self, tmp_path: Path) -> None:
        """A warp 2 % shorter than its lines is what boards do."""
        header = "warp:\n  wound: 3 yd\non_loom: 18 x 80\nwhere_it_went:\n  thrums: {} in"

        assert [] == slugs(tmp_path / "a", header.format(30))
        assert ["warp-does-not-add-up"] == slugs(tmp_path / "b", header.format(31))

    def test_rep_takes_much(self, tmp_path: Path) -> None:
        """A quarter of the warp taken up is no surprise in rep."""
        assert [] == slugs(tmp_path, "warp:\n  wound: 3 yd\non_loom: 18 x 60\nwhere_it_went:\n  thrums: 28 in")

    def test_with_marks(self, tmp_path: Path) -> None:
        """Where marks tell the take-up, a tenth of the warp in no line is asked about."""
        header = "warp:\n  wound: 4 yd\n  marked: 36 in wove 34 in\non_loom: 18 x 85\nwhere_it_went:\n  thrums: {} in"

        assert [] == slugs(tmp_path / "a", header.format(45))
        assert ["warp-does-not-add-up"] == slugs(tmp_path / "b", header.format(35))

    def test_in_centimetres(self, tmp_path: Path) -> None:
        """A warp wound in metres is asked about in centimetres."""
        header = "units: cm\nwarp:\n  wound: 3 m\non_loom: 45 x 120\nwhere_it_went:\n  thrums: 60"
        (problem,) = asked(tmp_path, header)

        assert problem.right.startswith("120 cm of the 300 cm wound is in no line")

    def test_pieces_unmeasured(self, tmp_path: Path) -> None:
        """What is left may be the cloth that nobody measured."""
        header = "warp:\n  wound: 4 yd\nwhere_it_went:\n  thrums: 30 in\nwashed: 18 x 60"

        assert [] == slugs(tmp_path, header)


class TestWeight:
    """A weighed piece far from its reckoned weight."""

    def test_in_words(self, tmp_path: Path) -> None:
        """The reckoned weight and how far the scale is off it, both before the wash and after."""
        towel = "yarn: cotton\nends: 400\nin_reed: 20\non_loom: 19 x 30\npicks: 600\nweight:\n  {}: {} g"
        reckoned = (400 * 30 / 0.94 + 600 * 21) * 0.0254 * 590.541247 / 4 / 1000
        oily = {"yarns__cotton": f"{YARN}\nin_oil: yes"}
        (washed,) = check(write(tmp_path / "a", warps__w=towel.format("washed", 300), **oily))
        (before,) = check(write(tmp_path / "b", warps__w=towel.format("off_loom", 45), **oily))
        clean = reckoned * (1 - (0.08 + 0.15) / 2)

        assert f"about {round(clean)} g; the scale is {300 / clean * 100 - 100:.0f} % off that" in washed.right
        assert f"about {round(reckoned)} g; the scale is −{100 - 45 / reckoned * 100:.0f} % off that" in before.right


class TestLoom:
    """What the loom can do."""

    def test_as_wide_as_the_loom(self, tmp_path: Path) -> None:
        """24 in stand on a loom of 24."""
        assert [] == slugs(tmp_path, "loom: small\nin_reed: 24")

    def test_folded(self, tmp_path: Path) -> None:
        """A double cloth of 40 in opened stands 20 wide in the reed."""
        assert [] == slugs(tmp_path, "loom: small\nlayers: 2\nopens: at the left\nin_reed: 40 opened")

    def test_dents(self, tmp_path: Path) -> None:
        """300 dents of a reed of 12 are 25 in, wider than 24."""
        assert ["wider-than-loom"] == slugs(tmp_path, "loom: small\nreed: 12/in\nin_reed: 300 dents")

    def test_in_a_stretch(self, tmp_path: Path) -> None:
        """A stretch has its own draft and width, and its own acceptance."""
        header = "loom: small\nin_reed: 20\nstretches:\n  - name: a\n    in_reed: 25\n    draft: eight"

        assert ["wider-than-loom", "more-shafts-than-loom"] == slugs(tmp_path / "a", header)
        assert ["more-shafts-than-loom"] == slugs(tmp_path / "b", header + "\n    accepted: wider than loom")

    def test_its_own_draft(self, tmp_path: Path) -> None:
        """A draft written in the warp is counted too."""
        header = "loom: small\ndraft:\n  threading: 1-6\n  lift_plan: 1+3+5, 2+4+6"
        (problem,) = asked(tmp_path, header)

        assert "takes 6 shafts, and The small loom has 4" in problem.right


class TestDates:
    """Dates that run backwards."""

    def test_states(self, tmp_path: Path) -> None:
        """A wash dated before the loom is asked about on its own line, in the piece that can accept it."""
        header = (
            "pieces:\n  - name: a\n    on_loom:\n      size: 18 x 33\n      on: 2024-05-01\n"
            "    washed:\n      size: 17 x 30\n      on: 2024-04-01"
        )

        assert [("on", 9, "2024-04-01")] == [(p.field, p.line, p.read) for p in asked(tmp_path / "a", header)]
        assert [] == slugs(tmp_path / "b", header + "\n    accepted: dates out of order")

    def test_before_the_warp(self, tmp_path: Path) -> None:
        """Nothing is measured before the warp was started."""
        header = "started: 2024-05\nwashed:\n  size: 18 x 30\n  on: 2023-06-01"
        (problem,) = asked(tmp_path, header)

        assert "dated before the warp was started (2024-05)" in problem.right

    def test_the_same_day(self, tmp_path: Path) -> None:
        """Started, woven and washed in a day is quick, and in order."""
        day = "size: {}\n  on: 2024-05-01"
        header = f"started: 2024-05-01\nfinished: 2024-05-01\non_loom:\n  {day}\nwashed:\n  {day}"

        assert [] == slugs(tmp_path, header.format("18 x 33", "17 x 30"))

    def test_rough_dates(self, tmp_path: Path) -> None:
        """Spring 2024 and April 2024 do not contradict each other."""
        assert [] == slugs(tmp_path, "started: spring 2024\nfinished: 2024-04")


def test_the_journal_worked_by_hand_asks_nothing() -> None:
    """The fixtures have no fault and raise no question."""
    assert [] == [problem.sentence() for problem in check(journal())]


def test_everything_in_one_run(tmp_path: Path) -> None:
    """Faults and questions of all files come in one list, in the order of files and lines."""
    made = write(
        tmp_path,
        warps__b="in_reed: 2O\nloom: nowhere",
        warps__a="yarn: nothing\nwashed: 18 by",
        yarns__x="number: 2/3",
        drafts__d="threading: 1-4\ntie_up: 1+2, 3+4\ntreadling: 1-3",
    )

    found = [(problem.file, problem.line, problem.is_fault) for problem in check(made)]
    assert [
        ("drafts/d.md", 4, True),
        ("warps/a.md", 2, False),
        ("warps/a.md", 3, True),
        ("warps/b.md", 2, True),
        ("warps/b.md", 3, False),
        ("yarns/x.md", 2, True),
    ] == found
