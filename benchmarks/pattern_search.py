"""How long it takes to look a thousand drafts through, and whether the same cloth under two names is found.

    python -m benchmarks.pattern_search            1,000 drafts on 4 to 16 shafts, 50 planted twins

A twin is one of the drafts begun elsewhere, mirrored, turned by a quarter or seen from the back, threaded
and treadled anew. It is found where it is the first of the patterns like it and the same cloth.
"""

from __future__ import annotations

import argparse
import random
import time

import numpy as np
from numpy.typing import NDArray

from journal_tools.drafts import Draft, drawdown
from journal_tools.drafts.analysis import analysed
from journal_tools.drafts.likeness import same_cloth, windows
from journal_tools.drafts.nearest import Nearest
from journal_tools.drafts.repeat import true_repeat

TWINS = 50
ALIKE = 0.25
"""How far a pattern may be that is shown as like another, as on the pages."""


def made(dice: random.Random) -> Draft:
    """A draft such as weavers have: a threading of runs and turns, a twill tie-up or a random one."""
    shafts = dice.choice((4, 4, 8, 8, 12, 16))
    threading: list[int] = []
    while len(threading) < dice.choice((8, 24, 60, 96)):
        run = list(range(1, shafts + 1))[: dice.randint(2, shafts)]
        threading += dice.choice((run, run[::-1], run + run[-2:0:-1]))
    tie_up = [frozenset(dice.sample(range(1, shafts + 1), shafts // 2)) for _ in range(shafts)]
    treadling = [dice.randint(1, shafts) for _ in range(dice.choice((8, 16, 32)))]
    ends = tuple(frozenset({shaft}) for shaft in threading)
    return Draft(ends, tuple(tie_up), tuple(frozenset({treadle}) for treadle in treadling))


def twin(over: NDArray[np.bool_], dice: random.Random) -> Draft:
    """The same cloth written another way: a shaft for each end and a lift for each pick that differ."""
    other = np.roll(over, (dice.randrange(over.shape[0]), dice.randrange(over.shape[1])), axis=(0, 1))
    other = other[:, ::-1] if dice.random() < 0.5 else other
    other = ~other.T if dice.random() < 0.5 else other
    other = ~other[:, ::-1] if dice.random() < 0.5 else other
    shaft = {column: n for n, column in enumerate(dict.fromkeys(column.tobytes() for column in other.T), 1)}
    ends = tuple(frozenset({shaft[column.tobytes()]}) for column in other.T)
    lifts = tuple(
        frozenset(shaft[column.tobytes()] for column, up in zip(other.T, row, strict=True) if up) for row in other
    )
    return Draft(ends, lift_plan=lifts)


def main() -> None:
    """Print the times and how many twins were found."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").split("\n\n")[0])
    parser.add_argument("--drafts", type=int, default=1_000, help="how many drafts (1000)")
    dice, number = random.Random(1), parser.parse_args().drafts
    drafts = [made(dice) for _ in range(number - TWINS)]
    planted = dice.sample(range(len(drafts)), TWINS)
    drafts += [twin(drawdown(drafts[one]), dice) for one in planted]
    began = time.perf_counter()
    for draft in drafts:
        analysed(draft)
    looked = time.perf_counter() - began
    began = time.perf_counter()
    overs = [true_repeat(drawdown(draft)) for draft in drafts]
    described = [windows(over) for over in overs]
    told = time.perf_counter() - began
    began = time.perf_counter()
    nearest = Nearest({str(place): each for place, each in enumerate(described)})
    gathered = time.perf_counter() - began
    began = time.perf_counter()
    found = 0
    for place in range(number):
        near = nearest.to(str(place), ALIKE)
        if place >= number - TWINS:
            one = planted[place - (number - TWINS)]
            found += bool(near) and near[0][0] == str(one) and same_cloth(overs[place], overs[one])
    asked = (time.perf_counter() - began) / number
    print(f"| drafts | all analyses, s | all descriptions, s | gathered, s | one search, ms | twins found of {TWINS} |")
    print("|---|---|---|---|---|---|")
    print(f"| {number} | {looked:.2f} | {told:.2f} | {gathered:.2f} | {asked * 1000:.1f} | {found} |")


if __name__ == "__main__":
    main()
