"""Many cloths searched for those like one."""

from __future__ import annotations

import numpy as np

from journal_tools.drafts.likeness import distance, windows
from journal_tools.drafts.nearest import Nearest


def test_a_search_finds_what_comparing_each_would() -> None:
    """Of sixty cloths of few threads the near ones of each, and how near, are those that comparing one by one gives."""
    draw = np.random.default_rng(7)
    cloths = {f"c{n}": draw.random((draw.integers(2, 5), draw.integers(2, 5))) < 0.5 for n in range(60)}
    counted = {name: windows(over) for name, over in cloths.items()}
    nearest = Nearest(counted)

    for name in cloths:
        apart = {other: distance(counted[name], counted[other]) for other in cloths if other != name}
        expected = {other: round(far, 9) for other, far in apart.items() if far <= 0.5}
        assert expected == {other: round(far, 9) for other, far in nearest.to(name, 0.5)}


def test_the_nearest_come_first() -> None:
    """A copy begun at another end is the first of the list, and a name that is not there finds nothing."""
    twill = np.array([[1, 1, 0, 0], [0, 1, 1, 0], [0, 0, 1, 1], [1, 0, 0, 1]], dtype=bool)
    other = twill.copy()
    other[0, 0] = False
    nearest = Nearest(
        {name: windows(over) for name, over in {"a": twill, "z": np.roll(twill, 1, axis=1), "b": other}.items()}
    )

    assert ["z", "b"] == [name for name, _ in nearest.to("a", 1.0)]
    assert [] == nearest.to("nothing", 1.0)
