"""How right the forecast is, and how honest its ranges, in made worlds whose truth is known.

    python -m benchmarks.forecast_worlds                                  everything: hours
    python -m benchmarks.forecast_worlds --only prior --size 10           one row of the table
    python -m benchmarks.forecast_worlds --only drift --worlds 80 --direction width

Each world is a journal of made warps, and twenty more not yet woven; the forecast is fitted to the
first and asked about the others. Error is the geometric mean over worlds of its rmse beside that of an
oracle that knows every variance; inside is how often the truth fell in the ranges that promise 50, 80
and 95 %. A standard error, by world, stands after each as ±. Worlds go to both processors, one thread each.
"""

from __future__ import annotations

import os

os.environ |= dict.fromkeys(("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"), "1")

import argparse
import sys
import time
from collections.abc import Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from typing import NamedTuple

from tests.worlds.law import FIXED
from tests.worlds.trial import EVERY, LAST_YEAR, PRIOR, YEAR_AFTER, Trial, against, inside, try_world
from tests.worlds.world import SPANS

SIZES = (2, 10, 60, 200)
PROMISED = (0.5, 0.8, 0.95)
WHO = ("floor", "ten per cent", "own mean", "last alike")
YEARS = (
    *("direction, warps", "worlds", "last year: forecast", "last year: oracle"),
    *("year after: forecast", "year after: oracle", "year after, asked as of the last"),
)


class Row(NamedTuple):
    """One row of the table: which worlds."""

    name: str
    direction: str
    warps: int
    worlds: int


def main(arguments: Sequence[str] | None = None) -> None:
    """Try the worlds asked for and print a Markdown table a direction."""
    asked = _asked(arguments)
    rows = list(_rows(asked))
    started, done, total = time.monotonic(), 0, sum(row.worlds for row in rows)
    tables: dict[str, list[list[str]]] = {direction: [] for direction in asked.direction}
    years: list[list[str]] = []
    with ProcessPoolExecutor(asked.processes) as pool:
        for row in rows:
            tasks = [(row.name, row.direction, row.warps, asked.seed + n) for n in range(row.worlds)]
            trials = []
            for trial in pool.map(_try, tasks, chunksize=2):
                trials.append(trial)
                done += 1
                minutes = (time.monotonic() - started) / 60
                _progress(f"{done} of {total} worlds, {minutes:.1f} min: {row.direction}, {row.name}, {row.warps}")
            tables[row.direction].append(_cells(row, trials))
            if row.name == "drift":
                years.append(_years(row, trials))
            _progress("")
            print(_line(tables[row.direction][-1]), file=sys.stderr, flush=True)
    for direction, cells in tables.items():
        if cells:
            heads = [f"{label}: error; inside 50/80/95" for label in SPANS[direction]]
            print(f"\n**{direction.capitalize()}**\n\n{_table(['world, warps', 'worlds', *heads, *WHO], cells)}")
    if years:
        print(f"\n**The wash in a drifting world, by the year of the new warp**\n\n{_table(YEARS, years)}")


def _try(task: tuple[str, str, int, int]) -> Trial:
    return try_world(*task)


def _rows(asked: argparse.Namespace) -> Iterator[Row]:
    """Every world at every size; a fifth as many of the fixed ones."""
    for direction in asked.direction:
        for name in asked.only or (PRIOR, *FIXED):
            worlds = asked.worlds or (400 if name == PRIOR else 80)
            yield from (Row(name, direction, warps, worlds) for warps in asked.size or SIZES)


def _cells(row: Row, trials: Sequence[Trial]) -> list[str]:
    cells = [f"{row.name}, {row.warps}", str(len(trials))]
    for label in SPANS[row.direction]:
        error, spread = against(trials, label, "forecast")
        cells.append(f"{error:.3f} ± {spread:.3f}; {_held(trials, label)}")
    cells += [f"{against(trials, 'whole', who)[0]:.2f}" for who in WHO]
    return cells


def _held(trials: Sequence[Trial], label: str, who: str = "forecast", when: slice = EVERY) -> str:
    shares = [inside(trials, label, share, who, when) for share in PROMISED]
    return f"{'/'.join(f'{100 * share:.1f}' for share, _ in shares)} ± {'/'.join(f'{100 * e:.1f}' for _, e in shares)}"


def _years(row: Row, trials: Sequence[Trial]) -> list[str]:
    """Who was asked about which year, and how often the range held."""
    asked = (
        ("forecast", LAST_YEAR),
        ("oracle", LAST_YEAR),
        ("forecast", YEAR_AFTER),
        ("oracle", YEAR_AFTER),
        ("standing still", YEAR_AFTER),
    )
    cells = [_held(trials, "wash", who, when) for who, when in asked]
    return [f"{row.direction}, {row.warps}", str(len(trials)), *cells]


def _table(heads: Sequence[str], rows: Sequence[Sequence[str]]) -> str:
    return "\n".join(_line(cells) for cells in (heads, ["---"] * len(heads), *rows))


def _line(cells: Sequence[str]) -> str:
    return f"| {' | '.join(cells)} |"


def _progress(words: str) -> None:
    if sys.stderr.isatty():
        print(f"\r\x1b[K{words}", end="", file=sys.stderr, flush=True)


def _asked(arguments: Sequence[str] | None) -> argparse.Namespace:
    parser = argparse.ArgumentParser(
        prog="python -m benchmarks.forecast_worlds",
        description=__doc__,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--worlds", type=int, help="how many a row (400 from the prior, 80 of each fixed one)")
    parser.add_argument("--seed", type=int, default=0, help="of the first world; the next has the next")
    parser.add_argument("--only", action="append", choices=(PRIOR, *FIXED), help="a world by name; may stand again")
    parser.add_argument("--size", type=int, action="append", help="warps in a journal; may stand again")
    parser.add_argument("--direction", action="append", choices=tuple(SPANS), help="width or length; both")
    parser.add_argument("--processes", type=int, default=os.cpu_count() or 1)
    asked = parser.parse_args(arguments)
    asked.direction = asked.direction or tuple(SPANS)
    return asked


if __name__ == "__main__":
    main()
