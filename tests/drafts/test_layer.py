"""Cloths on one another, each told by itself."""

from __future__ import annotations

import numpy as np
import pytest

from journal_tools.drafts import Draft, parse_lift_plan, parse_threading
from journal_tools.drafts.analysis import Analysis, analysed
from journal_tools.drafts.analysis_words import sentences, warnings
from journal_tools.drafts.double_cloth import double_cloth
from tests.drafts.looking import INCH, draft

PLAIN = ("1, 2", "1, 2", "1, 2")
SHEDS = "1+3, 1+3+5+7+2+4, 1+3+5+7+8+2, 3+5, 5+7, 1+3+5+7+6+8, 1+3+5+7+4+6, 7+1"
SHEDS_ALIKE = "1+3, 1+3+5+7+2+4, 1+3+5+7+4+6, 3+5, 5+7, 1+3+5+7+6+8, 1+3+5+7+8+2, 7+1"
LINES = "as it is woven, first end at the left"


def look(made: Draft, said: str = "", bears_mm: float | None = None) -> Analysis:
    """At 20 ends and 20 picks to the inch, both layers together."""
    return analysed(made, ends_per_m=20 / INCH, picks_per_m=20 / INCH, said_weave=said, bears_mm=bears_mm)


DOUBLE_PLAIN = double_cloth(draft(*PLAIN), draft(*PLAIN))
DOUBLE_WIDTH, BOTH_ALIKE = (Draft(parse_threading("1-8"), lift_plan=parse_lift_plan(x)) for x in (SHEDS, SHEDS_ALIKE))


def test_named_from_the_top() -> None:
    """Each layer has its own name, seen from above; layers alike are named once."""
    assert "Two layers, each plain weave." in list(sentences(look(DOUBLE_PLAIN)))
    mixed = list(sentences(look(double_cloth(draft("1-4"), draft(*PLAIN)))))
    assert f"Two layers, from the top: 2/2 twill, its lines rising to the right; plain weave, {LINES}." in mixed


def test_the_fold() -> None:
    """Lines that run the same way in both layers turn at the fold; those that run against one another go on."""
    turned = "opened out, they turn at the fold"

    assert turned in " ".join(sentences(look(BOTH_ALIKE)))
    assert turned not in " ".join(sentences(look(DOUBLE_WIDTH)))
    assert ["Z", "S"] == [layer.name.direction for layer in look(DOUBLE_WIDTH).layers]


def test_floats_within_each_layer() -> None:
    """A float crosses its own layer only, which has half of the threads: two of a twill are as long as four."""
    found = look(DOUBLE_WIDTH)
    upper = next(one for one in found.floats if (one.layer, one.system, one.side) == (0, "warp", "face"))
    lower = next(one for one in found.floats if (one.layer, one.system, one.side) == (1, "weft", "face"))

    assert {2} == {one.threads for one in found.floats}
    assert pytest.approx(4 / 20 * 25.4) == found.float_mm(upper)
    assert {0, 2, 4, 6} == {end for end, _ in upper.at}
    assert {1, 2, 5, 6} == {pick for pick, _ in lower.at}


def test_marked_within_each_layer() -> None:
    """Nothing is marked that only passes the other layer; what is too long in a layer is, in its own threads."""
    assert not look(DOUBLE_PLAIN, bears_mm=3).marked.any()
    assert not look(DOUBLE_WIDTH, bears_mm=5.1).marked.any()
    marked = look(DOUBLE_WIDTH, bears_mm=5).marked
    picks, ends = np.nonzero(marked)

    assert 32 == len(picks)
    assert all((end % 2 == 0) == (pick in (0, 3, 4, 7)) for pick, end in zip(picks, ends, strict=True))


def test_nothing_of_edges() -> None:
    """At the fold of a cloth of double width a floating selvedge would be woven in: nothing is said of edges."""
    said = " ".join(sentences(look(DOUBLE_WIDTH)))

    assert "selvedge" not in said
    assert "shuttle" not in said


@pytest.mark.parametrize("said", ["double plain weave", "2/2 twill, double width", "a tube", "two layers"])
def test_layers_that_are_meant(said: str) -> None:
    """Where its weave says so, a draft in layers is no warning, but told all the same."""
    found = look(DOUBLE_WIDTH if "twill" in said else DOUBLE_PLAIN, said)
    joined = "Two layers, joined by the weft alone at the edges, as a double cloth is meant to be."

    assert [] == list(warnings(found))
    assert joined in list(sentences(found))


def test_layers_that_are_not_meant() -> None:
    """Where nothing says so, it is asked about first."""
    [asked] = warnings(look(DOUBLE_PLAIN, "plain weave"))

    assert "It falls into 2 layers, whole cloths that nothing joins but the weft at the edges." == asked


def test_said_of_each() -> None:
    """A weave is said of both layers."""
    assert look(DOUBLE_WIDTH, "2/2 twill, double width").agrees is True
    assert look(DOUBLE_WIDTH, "plain weave, double width").agrees is False
    assert look(double_cloth(draft("1-4"), draft(*PLAIN)), "2/2 twill, double width").agrees is None
