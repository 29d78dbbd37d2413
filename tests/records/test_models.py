"""What a warp may say of its cloth: sizes, counts, and keys that take one of a few words."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.ledger.desk import write
from tests.records.recorded import problems, warp


class TestSizes:
    """States of the cloth."""

    def test_a_list_of_washes(self, tmp_path: Path) -> None:
        """A list is wash 1, 2, …; an item may be a mapping with how it was taken."""
        made = warp(tmp_path, "washed:\n  - 18 x 30\n  - size: 17 x 29\n    pressed: no\n    finish: by-hand")

        assert [(1, None, None), (2, False, "by-hand")] == [(at.wash, at.pressed, at.finish) for at in made.washed]

    def test_a_wash_by_its_number(self, tmp_path: Path) -> None:
        """`washed 2:` names one; the first may stand beside it without a number."""
        made = warp(tmp_path, "washed: 18 x 30\nwashed 3: 17 x 29")

        assert [None, 3] == [at.wash for at in made.washed]

    def test_a_wash_said_twice(self, tmp_path: Path) -> None:
        """Two sizes for the second wash are a fault, and the first of them is kept."""
        made = write(tmp_path, warps__w="washed:\n  - 18 x 30\n  - 17 x 29\nwashed 2: 16 x 28")
        (problem,) = made.problems

        assert ("said-twice", 5, "washed 2") == (problem.slug, problem.line, problem.field)
        assert ["18 x 30", "17 x 29"] == [at.size.text for at in made.warps["w"].washed if at.size]

    def test_a_list_under_a_number(self, tmp_path: Path) -> None:
        """A list stands under `washed:`, and one size under `washed 2:`."""
        (problem,) = problems(tmp_path, "washed 2:\n  - 18 x 30\n  - 17 x 29")

        assert "a list stands under `washed:`" in problem.right

    def test_without_its_size(self, tmp_path: Path) -> None:
        """A state that says how it was pressed and not how large it was wants its size."""
        (problem,) = problems(tmp_path, "washed:\n  pressed: yes")

        assert "`size:`" in problem.right

    def test_one_of_three(self, tmp_path: Path) -> None:
        """A wash that cannot be read is told of by its number, and the others stay, in their places."""
        made = write(tmp_path, warps__w="washed:\n  - 18 x 30\n  - 17 by\n  - 16 x 28")
        (problem,) = made.problems

        assert ("washed: wash 2", 4) == (problem.field, problem.line)
        assert [1, 3] == [at.wash for at in made.warps["w"].washed]

    @pytest.mark.parametrize(
        ("typed", "inches", "dents", "fold"),
        [("20 1/4", 20.25, None, None), ("243 dents", None, 243, None), ("86 cm folded", 86 / 2.54, None, "folded")],
    )
    def test_in_the_reed(
        self, tmp_path: Path, typed: str, inches: float | None, dents: int | None, fold: str | None
    ) -> None:
        """A width, dents that were counted, or a folded width."""
        reed = warp(tmp_path, f"in_reed: {typed}").in_reed
        assert reed is not None

        assert (inches, dents, fold) == (
            pytest.approx(float(reed.length.inches)) if reed.length else None,
            reed.dents.number if reed.dents else None,
            reed.fold,
        )

    def test_units_of_the_record(self, tmp_path: Path) -> None:
        """`units: cm` holds for every bare number, before it and after it, and for setts and picks."""
        made = warp(tmp_path, "in_reed: 50\nunits: cm\nwashed: 45 x 76,5\nsett: 9.5\npieces:\n  - on_loom: 48 x 80")
        (at,) = made.washed

        assert made.in_reed is not None
        assert made.in_reed.length is not None
        assert at.size is not None
        assert (500, 450, 765) == (made.in_reed.length.mm, at.size.width_mm, at.size.length_mm)
        assert made.sett is not None
        assert 950 == made.sett.per_m
        assert made.pieces[0].on_loom is not None
        assert made.pieces[0].on_loom.size is not None
        assert 480 == made.pieces[0].on_loom.size.width_mm

    def test_units_of_the_journal(self, tmp_path: Path) -> None:
        """A metric journal's bare numbers are centimetres, its tape's mark among them."""
        made = write(tmp_path, journal="length: cm\ntape: 0.1", warps__w="in_reed: 50\nsett: 10")
        reed, tape = made.warps["w"].in_reed, made.settings.tape

        assert reed is not None
        assert reed.length is not None
        assert tape is not None
        assert (500, 1) == (reed.length.mm, tape.mm)


class TestCounts:
    """Picks, ends, pieces."""

    @pytest.mark.parametrize("typed", ["18/in", "18 per in", "18 ppi"])
    def test_picks_are_no_density(self, tmp_path: Path, typed: str) -> None:
        """A density under `picks:` is refused, with the key that it belongs under."""
        (problem,) = problems(tmp_path, f"picks: {typed}")

        assert f"beat: {typed}" == problem.mended
        assert "`beat:`" in problem.right

    @pytest.mark.parametrize(
        ("piece", "number"),
        [
            ("name: napkin 1", 1),
            ("name: napkins 2-6", 5),
            ("name: towels 1–4", 4),
            ("name: towels\n    count: 7", 7),
            ("name: runner", 1),
            ("washed: 18 x 30", 1),
        ],
    )
    def test_pieces(self, tmp_path: Path, piece: str, number: int) -> None:
        """`napkins 2-6` are five pieces; a count says it outright."""
        assert number == warp(tmp_path, f"pieces:\n  - {piece}").pieces[0].number

    def test_ends_from_the_middle(self, tmp_path: Path) -> None:
        """`48 from the middle` is 48, and which."""
        ends = warp(tmp_path, "ends: 48 from the middle").ends

        assert ends is not None
        assert (48, True) == (ends.number, ends.from_the_middle)

    @pytest.mark.parametrize(("typed", "order"), [("2", (2,)), ("1-2", (1, 2)), ("1-1-2", (1, 1, 2)), ("0-3", (0, 3))])
    def test_sley(self, tmp_path: Path, typed: str, order: tuple[int, ...]) -> None:
        """Ends in each dent, in order; a dent may be left empty."""
        assert order == warp(tmp_path, f"sley: {typed}").sley

    @pytest.mark.parametrize("typed", ["2 in 12/in", "0", "two"])
    def test_not_a_sley(self, tmp_path: Path, typed: str) -> None:
        """`2 in 12/in` could be two inches, so it is asked for in dents."""
        assert 1 == len(problems(tmp_path, f"sley: {typed}"))


class TestWords:
    """Keys that take one of a few words, or a short form."""

    @pytest.mark.parametrize(
        ("typed", "edges", "sewn"),
        [
            ("none", "none", None),
            ("1 in", "both ends", None),
            ("\n  depth: 1 in\n  edges: all four\n  sewn: after wash 2", "all four", "after wash 2"),
        ],
    )
    def test_hem(self, tmp_path: Path, typed: str, edges: str, sewn: str | None) -> None:
        """`none`, a depth at both ends, or the whole of it."""
        hem = warp(tmp_path, f"hem: {typed}" if "\n" not in typed else f"hem:{typed}").hem

        assert hem is not None
        assert (edges, sewn) == (hem.edges, hem.sewn)

    def test_near_word(self, tmp_path: Path) -> None:
        """A word that is not one of the few is answered with all of them and the near one."""
        (problem,) = problems(tmp_path, "hem:\n  edges: both end")

        assert "Did you mean `both ends`?" in problem.right
        assert "`all four`" in problem.right

    def test_weights(self, tmp_path: Path) -> None:
        """A weight is of the washed piece; weights by state say which, with a blank or not."""
        assert {"washed": 125} == {
            state: each.grams for state, each in (warp(tmp_path, "weight: 125").weight or {}).items()
        }
        by_state = warp(tmp_path, "weight:\n  in oil: 1075 g\n  off_loom: 1060 g").weight or {}
        (problem,) = problems(tmp_path, "weight:\n  wshed: 9 g")

        assert {"in_oil": 1075, "off_loom": 1060} == {state: each.grams for state, each in by_state.items()}
        assert "Did you mean `washed`?" in problem.right

    def test_fulling(self, tmp_path: Path) -> None:
        """Minutes in order, with the weaver's words; a check without minutes is a fault."""
        made = write(
            tmp_path, warps__w="units: cm\nfulling:\n  8 min: 141 x 203\n  0 min scoured: 153 x 220\n  later: 1 x 2"
        )
        (problem,) = made.problems

        assert [(0, "scoured"), (8, "")] == [(each.minutes, each.words) for each in made.warps["w"].fulling]
        assert "8 min: 141 x 203 cm" in problem.right

    @pytest.mark.parametrize("typed", ["beamed badly", "not this one", "no beamed badly", "no colours, faded"])
    def test_not_a_rule_of_learning(self, tmp_path: Path, typed: str) -> None:
        """What `learn:` cannot read is told with what it can."""
        (problem,) = problems(tmp_path, f"learn: {typed}")

        assert "`no washed 1, and why`" in problem.right

    def test_accepted(self, tmp_path: Path) -> None:
        """One question or several, with blanks or hyphens or capitals."""
        assert ("wider-than-loom", "grew") == warp(tmp_path, "accepted:\n  - Wider than loom\n  - grew").accepted

    def test_marks_on_the_warp(self, tmp_path: Path) -> None:
        """`36 in wove 33 1/4 in`, alone or in a list; anything else is told what is wanted."""
        one = warp(tmp_path, "warp:\n  marked:\n    - 36 in wove 33 1/4 in\n    - 1 yd wove 34").warp[0].marked
        (problem,) = problems(tmp_path, "warp:\n  marked: 33 1/4 at mark 3")

        assert [(36, 33.25), (36, 34)] == [(float(each.warp.inches), float(each.cloth.inches)) for each in one]
        assert "36 in wove 33 1/4 in" in problem.right

    def test_name_of_a_record(self, tmp_path: Path) -> None:
        """A name is small letters, digits and hyphens, and the title that was typed leads to it."""
        (problem,) = problems(tmp_path, "loom: Small Loom")

        assert "loom: small-loom" == problem.mended
