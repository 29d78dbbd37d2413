"""Does a cloth hang together: against two libraries' strong components, and told in a weaver's words."""

from __future__ import annotations

import networkx
import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.numpy import array_shapes, arrays
from numpy.typing import NDArray
from scipy.sparse import csr_matrix
from scipy.sparse.csgraph import connected_components

from journal_tools.drafts.hanging import Hanging, hanging

CLOTH = arrays(bool, array_shapes(min_dims=2, max_dims=2, max_side=9), elements=st.booleans())


def cloth(*rows: str) -> NDArray[np.bool_]:
    """A cloth from its picks, 1 where the warp is over."""
    return np.array([[mark == "1" for mark in row] for row in rows])


def threads(found: Hanging) -> set[frozenset[int]]:
    """The parts as sets of threads: ends from 0, picks from −1 down."""
    return {frozenset([*part.ends, *(-1 - pick for pick in part.picks)]) for part in found.parts}


def arcs(over: NDArray[np.bool_]) -> list[tuple[int, int]]:
    """From the upper thread to the lower one, at every crossing."""
    crossings = [(pick, end) for pick in range(over.shape[0]) for end in range(over.shape[1])]
    return [(end, -1 - pick) if over[pick, end] else (-1 - pick, end) for pick, end in crossings]


@given(CLOTH)
def test_as_networkx_finds_it(over: NDArray[np.bool_]) -> None:
    """The parts are the strong components of the threads with an arc from the upper to the lower one."""
    graph = networkx.DiGraph(arcs(over))

    assert {frozenset(part) for part in networkx.strongly_connected_components(graph)} == threads(hanging(over))


@given(CLOTH)
def test_as_scipy_counts_it(over: NDArray[np.bool_]) -> None:
    """There are as many parts as another library's count of strong components."""
    picks, ends = over.shape
    table = np.zeros((ends + picks, ends + picks), dtype=int)
    for upper, lower in arcs(over):
        table[upper if upper >= 0 else ends - 1 - upper, lower if lower >= 0 else ends - 1 - lower] = 1
    number, _ = connected_components(csr_matrix(table), directed=True, connection="strong")

    assert number == len(hanging(over).parts)


@given(CLOTH)
def test_from_the_top(over: NDArray[np.bool_]) -> None:
    """Wherever two parts cross, the one named first lies on top."""
    parts = hanging(over).parts
    for n, upper in enumerate(parts):
        for lower in parts[n + 1 :]:
            assert over[np.ix_(lower.picks, upper.ends)].all()
            assert not over[np.ix_(upper.picks, lower.ends)].any()


@pytest.mark.parametrize(
    ("rows", "verdict", "layers"),
    [
        (("10", "01"), "together", 1),
        (("1100", "0110", "0011", "1001"), "together", 1),
        (("1000", "1110", "0010", "1011"), "layers", 2),
        (("1010", "1111", "0101", "1111"), "loose", 1),
        (("111", "111"), "loose", 0),
        (("100000", "111110", "001000", "101111", "000010", "111011"), "layers", 2),
    ],
)
def test_verdict(rows: tuple[str, ...], verdict: str, layers: int) -> None:
    """Plain weave and twill hold, a double plain weave is two layers, a pick under every end lies loose."""
    found = hanging(cloth(*rows))

    assert (verdict, layers) == (found.verdict, len(found.layers))


def test_a_slip_is_no_second_cloth() -> None:
    """Two ends and two picks that hold only one another, in a cloth of twenty, are told as coming apart."""
    over = np.indices((20, 20)).sum(axis=0) % 2 == 0
    over[:, :2], over[:2] = True, False
    over[:2, :2] = [[True, False], [False, True]]

    assert "apart" == hanging(over).verdict


def test_what_is_loose() -> None:
    """An end that every pick passes over is named."""
    over = np.indices((6, 6)).sum(axis=0) % 2 == 0
    over[:, 3] = False
    found = hanging(over)

    assert ((3,), ()) == (found.loose_ends, found.loose_picks)
