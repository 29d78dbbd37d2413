"""What is asked about a draft: a slip in its threading, a weave that it is not."""

from __future__ import annotations

from pathlib import Path

import pytest

from journal_tools.checking import check, woven_draft
from journal_tools.drafts import Draft as Woven
from tests.ledger.desk import write

DRAFT = "threading: {threading}\ntie_up: 1+2, 2+3, 3+4, 4+1\ntreadling: 1-4\nweave: {weave}{more}"
SLIPPED = "6 times (1-4), 1, 3, 3, 4, 4 times (1-4)"


def asked(folder: Path, threading: str = "1-4", weave: str = "2/2 twill", more: str = "") -> list[str]:
    """The questions about one draft, as they are told."""
    made = write(folder, drafts__one=DRAFT.format(threading=threading, weave=weave, more=more))
    return [problem.sentence() for problem in check(made) if not problem.is_fault]


def test_a_slip_in_the_threading(tmp_path: Path) -> None:
    """One end that breaks a repeat is asked about, with its place and what the others have, and asked once."""
    [question] = asked(tmp_path / "asked", SLIPPED)

    assert "drafts/one.md:" in question
    assert "The threading repeats after 4 ends but once: end 26 is on 3 where the others have 2. A slip?" in question
    assert [] == asked(tmp_path / "answered", SLIPPED, more="\naccepted: threading slip")


def test_a_slip_in_a_layer(tmp_path: Path) -> None:
    """A slip in one layer of a double cloth is asked about there, with the number of the end in its own cloth."""
    layer = f"\n  threading: {SLIPPED}\n  lift_plan: 1-4"
    text = f"upper:\n  threading: 1, 2\n  lift_plan: 1, 2\nlower:{layer}"
    [question] = check(write(tmp_path / "asked", drafts__one=text))

    assert ("lower: threading", 6) == (question.field, question.line)
    assert "end 26 is on 3 where the others have 2" in question.right
    assert () == check(write(tmp_path / "answered", drafts__one=f"{text}\naccepted: threading slip"))


def test_another_weave_than_it_says(tmp_path: Path) -> None:
    """A draft that is called plain weave and weaves a twill is asked about, and asked once."""
    [question] = asked(tmp_path / "asked", weave="plain weave")

    assert 'weave: read "plain weave". What it weaves is 2/2 twill.' in question
    assert [] == asked(tmp_path / "answered", weave="plain weave", more="\naccepted: woven otherwise")


@pytest.mark.parametrize(
    ("more", "field", "right"),
    [
        ("\naccents:\n  - end: 400", "accents", "An accent is one of the ends 1 to 5."),
        ("\nends_in_dents: 2 times (none)", "ends_in_dents", "Some dent has ends"),
        ("\nlower:\n  threading: 1, 2\n  lift_plan: 1, 2", "lower", "A double cloth wants both its layers"),
        ("\nends_in_dents: 100, 100, 1, none", "ends_in_dents", "A thread is more than 0 and at most 100 times"),
        ("\nprofile: A", "profile", "Write either the threading thread by thread, or its profile, and not both."),
        ("\nprofile_treadling: A", "profile_treadling", "Write either the treadling thread by thread, or its profile"),
        ("\nwarp_order: ground, pile", "warp_order", "A draft cannot hold it: its pile is made of loops"),
    ],
)
def test_parts_that_do_not_fit(tmp_path: Path, more: str, field: str, right: str) -> None:
    """A part that cannot be is told with its key, its line and what would be right."""
    made = write(tmp_path, drafts__one=DRAFT.format(threading="1-4", weave="a name", more=more))
    [fault] = [problem for problem in check(made) if problem.is_fault]

    assert (field, text_line(more, field)) == (fault.field, fault.line - len(DRAFT.splitlines()) - 1)
    assert right in fault.right


def text_line(text: str, key: str) -> int:
    """The line on which a key stands, its first one counted as 0."""
    return next(number for number, line in enumerate(text.split("\n")) if line.strip().startswith(f"{key}:"))


LAYER = "\n  threading: 1, 2\n  lift_plan: 1, 2"
LAYERS = f"upper:{LAYER}{{upper}}\nlower:{LAYER}{{lower}}{{more}}"


def of_layers(folder: Path, upper: str = "", lower: str = "", more: str = "") -> list[tuple[str, int, str]]:
    """What is told of a double cloth: key, line of the record and what would be right."""
    made = write(folder, drafts__one=LAYERS.format(upper=upper, lower=lower, more=more))
    return [(problem.field, problem.line, problem.right) for problem in check(made)]


@pytest.mark.parametrize(
    "key",
    [
        *("shed: sinking", "warp_colours: red", "weft_colours: red", "threading: 1, 2", "lift_plan: 1", "tie_up: 1"),
        *("treadling: 1", "weft_order: a, b", "warp_order: a, b", "tabby_between: 1", "profile: A"),
        *("profile_treadling: A", "blocks:\n  A: 1"),
    ],
)
def test_what_each_layer_has(tmp_path: Path, key: str) -> None:
    """Beside its layers a double cloth has nothing that each layer has for itself: it would do nothing."""
    right = "Each layer of a double cloth has its own: write it below `upper:` and below `lower:`."

    assert [(key.split(":")[0], 8, right)] == of_layers(tmp_path, more=f"\n{key}")


@pytest.mark.parametrize("key", ["ends_in_dents: 4", "floating_selvedges: 1"])
def test_what_the_whole_cloth_has(tmp_path: Path, key: str) -> None:
    """Dents and floating selvedges are those of both layers together, and are not passed over in one of them."""
    [(field, line, right)] = of_layers(tmp_path / "in a layer", upper=f"\n  {key}")

    assert (f"upper: {key.split(':')[0]}", 5) == (field, line)
    assert "Both layers share the reed and the edges" in right
    assert [] == of_layers(tmp_path / "beside them", more=f"\n{key}")


def test_all_at_once(tmp_path: Path) -> None:
    """Every key that would do nothing is told of in one run."""
    told = of_layers(tmp_path, lower="\n  floating_selvedges: 1", more="\nshed: sinking\nwarp_colours: red")

    assert [("lower: floating_selvedges", 8), ("shed", 9), ("warp_colours", 10)] == [each[:2] for each in told]


@pytest.mark.parametrize(
    ("upper", "lower", "field", "line", "right"),
    [
        ("", "\n  tie_up: 1", "lower: lift_plan", 7, "Write either a lift plan, or a tie-up and a treadling"),
        ("\n  shafts: 1", "", "upper: threading", 3, "The threading has it at end 2, and there are 1 shafts."),
        ("\n  weave: velvet", "", "upper: weave", 5, "A draft cannot hold it"),
        ("\n  upper:\n    threading: 1", "", "upper: upper", 5, "A double cloth wants both its layers"),
    ],
)
def test_in_a_layer(tmp_path: Path, upper: str, lower: str, field: str, line: int, right: str) -> None:
    """What does not fit in a layer is told with the layer, its key and its line."""
    [told] = of_layers(tmp_path, upper, lower)

    assert (field, line) == told[:2]
    assert right in told[2]


def test_more_shafts_than_it_says(tmp_path: Path) -> None:
    """Where the layers together take more shafts than the record says there are, that line is told of."""
    told = of_layers(tmp_path, more="\nshafts: 3")

    assert [("shafts", 8, "The threading has it at end 4, and there are 3 shafts.")] == told


def test_in_a_warp(tmp_path: Path) -> None:
    """A draft written in a warp is told of there, with all keys that lead to the part."""
    header = "draft:\n  threading: 1-4\n  lift_plan: 1+3, 2+4\n  ends_in_dents: 3\n"
    layers = "draft:\n  upper:\n    threading: 1\n    lift_plan: 1\n    shed: sinking\n    tie_up: 1"
    layers += "\n  lower:\n    threading: 1\n    lift_plan: 1"
    found = write(tmp_path, warps__dents=header, warps__layers=layers)
    told = [(problem.file, problem.line, problem.field) for problem in check(found) if "draft" in problem.field]

    assert [("warps/dents.md", 5, "draft: ends_in_dents"), ("warps/layers.md", 5, "draft: upper: lift_plan")] == told


def test_a_sinking_layer(tmp_path: Path) -> None:
    """A layer whose shed sinks is woven as it is alone, and refused where an end is not on just one shaft."""
    assert [] == of_layers(tmp_path / "one shaft each", lower="\n  shed: sinking")
    text = LAYERS.format(upper="", lower="\n  shed: sinking", more="").replace("1, 2\n  lift", "1, 1+2\n  lift")
    told = [problem for problem in check(write(tmp_path / "two shafts", drafts__one=text)) if problem.is_fault]

    assert [("lower: threading", 6)] == [(problem.field, problem.line) for problem in told]
    assert "The lower cloth's shed sinks. End 2 is on several shafts; the shed cannot be changed" in told[0].right


def test_blocks_without_their_order(tmp_path: Path) -> None:
    """Blocks that nothing puts in order are asked about beside a threading, and told of where there is none."""
    [question] = asked(tmp_path / "asked", weave="a name", more="\nblocks:\n  A: 1, 3, 1, 4")
    in_a_layer = of_layers(tmp_path / "layers", upper="\n  blocks:\n    A: 1")
    [fault] = check(write(tmp_path / "alone", drafts__one="blocks:\n  A: 1, 2\nlift_plan: 1, 2"))

    assert "one.md:6 blocks: Nothing says in which order the blocks come: `profile: 4 A, 2 B`" in question
    assert [("upper: blocks", 5)] == [each[:2] for each in in_a_layer]
    assert ("blocks", 2, True) == (fault.field, fault.line, fault.is_fault)
    more = "\nblocks:\n  A: 1, 3, 1, 4\naccepted: unused blocks"
    assert [] == asked(tmp_path / "answered", weave="a name", more=more)


def test_a_block_without_picks(tmp_path: Path) -> None:
    """A block that the order of picks names and that has none is told of at that order."""
    text = "blocks:\n  A: 1, 2\nprofile: A\ntie_up: 1, 2\nprofile_treadling: 2 A"
    [problem] = check(write(tmp_path, drafts__one=text))

    assert ("profile_treadling", 6) == (problem.field, problem.line)
    assert "Block A has no treadling under blocks; those that have are none." == problem.right


@pytest.mark.parametrize(
    ("threading", "dents", "asked_about"),
    [
        ("1-4", "2", False),
        ("1-4", "20 times (2)", False),
        ("2 times (1-4)", "2, 4, 2", False),
        ("2 times (1-4)", "2, 4", True),
        ("1-4, 1, 2", "20 times (2)", True),
        ("1-4, 1, 2", "20 times (2)\naccepted: uneven dents", False),
        ("1-4", "2, 3\naccents:\n  - end: 2", False),
        ("1-4", "2, 2\naccents:\n  - end: 2", False),
        ("1-4", "3\naccents:\n  - end: 2", True),
    ],
)
def test_ends_and_dents(tmp_path: Path, threading: str, dents: str, asked_about: bool) -> None:
    """The ends in the dents and those of the threading, added ends or not, come out even or are asked about."""
    told = asked(tmp_path, threading, "a name", f"\nends_in_dents: {dents}")

    assert asked_about == any("neither goes into the other a whole number of times" in each for each in told)


def woven(folder: Path, threading: str, more: str) -> Woven:
    """The draft of a record."""
    text = DRAFT.format(threading=threading, weave="a name", more=more)
    return woven_draft(write(folder, drafts__one=text).drafts["one"])


def test_an_accents_colour(tmp_path: Path) -> None:
    """An accent keeps its colour where the record has no colours of the warp."""
    draft = woven(tmp_path, "1-4", "\naccents:\n  - end: 2\n    shaft: 3\n    colour: gold")

    assert ("warp", "gold", "warp", "warp", "warp") == draft.warp_colours


def test_an_added_end_in_the_reed(tmp_path: Path) -> None:
    """An added end takes the usual room and moves the others on; where the dents count it, it has its dent's."""
    accent = "\naccents:\n  - end: 1\n    colour: gold"
    beside = woven(tmp_path / "beside", "1-4", "\nends_in_dents: 1, 1, 2" + accent)
    counted = woven(tmp_path / "counted", "1-4", "\nends_in_dents: 1, 2, 2" + accent)

    assert (1, 1, 1, 0.5, 0.5) == beside.warp_spacing
    assert (2, 1, 1, 1, 1) == counted.warp_spacing


@pytest.mark.parametrize("weave", ["2/2 twill", "twill", "a name of my own", "straight twill, fine"])
def test_what_is_not_asked(tmp_path: Path, weave: str) -> None:
    """A draft that is what it says, or has a name that nobody can draw, is not asked about."""
    assert [] == asked(tmp_path, weave=weave)
