"""Every key of every kind of record reads what the field guide shows for it, and near misses are caught."""

from __future__ import annotations

from pathlib import Path

import pytest

from journal_tools.records import KINDS, Journal, Settings
from journal_tools.records.cloth import Cloth, SizeAt, Weft
from journal_tools.records.hem import Fringe, Hem
from journal_tools.records.model import Model, words_of
from journal_tools.records.warp import Band, BandSizes, Piece, Planned, Stretch, WarpYarn, YarnUse
from tests.ledger.desk import write
from tests.records.recorded import problems

KEYS: dict[type[Model], str] = {
    Settings: "title maker place length weight density comma tape currency",
    KINDS["warps"]: """title was started finished loom temple tension units tape tags yarn yarns warp weft weave draft
        reed sley sett ends in_reed layers opens on_loom off_loom hemmed washed made_up picks beat tabby warp_used
        fulling marks hem fringe across plan pieces stretches where_it_went finish weight hours cost share learn
        accepted photos photos_for_everyone notes_for_everyone""",
    Stretch: "name ends reed sley sett in_reed weave draft weft hem fringe beat across marks finish learn plan pieces",
    Piece: "name count across weight note now buyer price on_loom off_loom hemmed washed made_up picks learn accepted",
    Planned: "piece count in_reed on_loom off_loom hemmed washed made_up picks",
    WarpYarn: "yarn order ends wound sett floating_selvedges role marked wound_on",
    Weft: "yarn colour order role amount",
    YarnUse: "yarn colour role lot",
    SizeAt: "size on dry pressed rested taken finish",
    Hem: "depth turn edges sewn",
    Fringe: "allowed style twisted after_twist finished",
    Band: "ends sley reed sett",
    BandSizes: "washed off_loom",
    KINDS["yarns"]: """title was fibre number length_weight yield wraps put_up price colours lot on_hand wetted in_oil
        raw grey tags notes_for_everyone""",
    KINDS["drafts"]: """title was shafts treadles threading tie_up treadling lift_plan shed warp_colours weft_colours
        weave tags notes_for_everyone""",
    KINDS["looms"]: "title was shafts treadles width heddles reeds waste retie notes_for_everyone",
    KINDS["finishes"]: """title was done water agitation drying pressing care cautions fulling notes_for_everyone""",
}
"""The keys of the format, by kind."""

WHERE = {
    Settings: ("journal", "{}"),
    Stretch: ("warps__w", "stretches:\n  - {}"),
    Cloth: ("warps__w", "{}"),
    Piece: ("warps__w", "pieces:\n  - {}"),
    Planned: ("warps__w", "plan:\n  - {}"),
    WarpYarn: ("warps__w", "warp:\n  {}"),
    Weft: ("warps__w", "weft:\n  {}"),
    YarnUse: ("warps__w", "yarns:\n  bone:\n    {}"),
    SizeAt: ("warps__w", "washed:\n  size: 18 x 30\n  {}"),
    Hem: ("warps__w", "hem:\n  {}"),
    Fringe: ("warps__w", "fringe:\n  {}"),
    Band: ("warps__w", "across:\n  left:\n    {}"),
    BandSizes: ("warps__w", "pieces:\n  - across:\n      left:\n        {}"),
    **{kind: (f"{folder}__w", "{}") for folder, kind in KINDS.items()},
}
"""In which file, and under which keys, a line of each kind stands."""

EVERY_KEY = [(model, key) for model in WHERE for key in words_of(model)]


def name_of(value: object) -> str:
    """A kind by its name, for the names of tests."""
    return value.__name__ if isinstance(value, type) else str(value)


def with_line(folder: Path, model: type[Model], line: str) -> Journal:
    """A journal with one line of this kind where it belongs."""
    file, around = WHERE[model]
    under = around.split("{}")[0].split("\n")[-1]
    if model is SizeAt and line.startswith("size:"):
        around = around.replace("  size: 18 x 30\n", "")
    blanks = " " * len(under)
    return write(folder, **{file: around.format(line.replace("\n", f"\n{blanks}"))})


def example(model: type[Model], key: str) -> str:
    """The line, or the lines, that a weaver would type for a key."""
    said = words_of(model)[key][1].example
    return f"{key}:{said}" if said.startswith("\n") else f"{key}: {said}"


class TestEveryKey:
    """The format's keys, one by one."""

    @pytest.mark.parametrize("model", KEYS, ids=name_of)
    def test_it_is_there(self, model: type[Model]) -> None:
        """Every key of the format is a key of its kind."""
        assert set() == set(KEYS[model].split()) - set(words_of(model))

    @pytest.mark.parametrize(("model", "key"), EVERY_KEY, ids=name_of)
    def test_its_example_reads(self, tmp_path: Path, model: type[Model], key: str) -> None:
        """What the field guide shows for a key can be typed there."""
        made = with_line(tmp_path, model, example(model, key))

        assert words_of(model)[key][1].example
        assert [] == [problem.sentence() for problem in made.problems]

    @pytest.mark.parametrize(("model", "key"), EVERY_KEY, ids=name_of)
    def test_it_has_words(self, model: type[Model], key: str) -> None:
        """The field guide says of every key what it means, in a sentence."""
        meaning = words_of(model)[key][1].meaning

        assert meaning == meaning.strip()
        assert meaning.endswith(".")

    @pytest.mark.parametrize("model", WHERE, ids=name_of)
    def test_a_near_miss(self, tmp_path: Path, model: type[Model]) -> None:
        """A key with a letter too many is a fault on its line, with the near key and the line to paste."""
        key = max(words_of(model), key=len)
        made = with_line(tmp_path, model, example(model, key).replace(key, f"{key}x", 1))
        found = [problem for problem in made.problems if problem.slug == "no-such-key"]
        typed = (tmp_path / found[0].file).read_text(encoding="utf-8").splitlines()[found[0].line - 1]

        assert [(True, f"{key}x", typed.replace(f"{key}x", key))] == [
            (each.is_fault, each.read, each.mended) for each in found
        ]
        assert f"`{key}:`" in found[0].right


class TestUnknownKeys:
    """A key that no record has."""

    @pytest.mark.parametrize(
        ("typed", "meant"),
        [
            ("on loom", "on_loom"),
            ("In_Reed", "in_reed"),
            ("off-loom", "off_loom"),
            ("weav", "weave"),
        ],
    )
    def test_spelt_otherwise(self, tmp_path: Path, typed: str, meant: str) -> None:
        """Blanks, hyphens, capitals and slips lead to the key that was meant."""
        (problem,) = problems(tmp_path, f"title: A\n{typed}: 1")

        assert ("warps/w.md", 3, typed, f"{meant}: 1") == (problem.file, problem.line, problem.field, problem.mended)

    def test_with_a_list_below(self, tmp_path: Path) -> None:
        """The line of a key with a list below it is the key alone."""
        (problem,) = problems(tmp_path, "title: A\npeices:\n  - washed: 17 x 30")

        assert (3, "peices", "pieces:") == (problem.line, problem.field, problem.mended)

    def test_with_a_value_that_does_not_fit(self, tmp_path: Path) -> None:
        """No line is offered that would itself be a fault."""
        (problem,) = problems(tmp_path, "title: A\npeices: 1")

        assert (3, "") == (problem.line, problem.mended)
        assert "`pieces:`" in problem.right

    def test_like_no_other(self, tmp_path: Path) -> None:
        """Where no key is near, the notes are the place for it."""
        (problem,) = problems(tmp_path, "moon: waxing")

        assert "notes below" in problem.right
        assert "" == problem.mended

    def test_wash_nought(self, tmp_path: Path) -> None:
        """Washes are counted from 1."""
        (problem,) = problems(tmp_path, "washed 0: 18 x 30")

        assert "counted from 1" in problem.right
