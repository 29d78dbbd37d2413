"""How long the forecast takes to learn a journal and to answer, and how that grows.

    python -m benchmarks.forecast_speed                        the whole table: about two minutes
    python -m benchmarks.forecast_speed --warps 1000 --yarns 60

Made journals of three pieces a warp, whose readings skip moments as a weaver's do. Both directions are
learned at once, in two threads of one each for the linear algebra; seconds are the least of some rounds,
answers are means. Seconds are this machine's; how they grow is not.
"""

from __future__ import annotations

import argparse
import math
import resource
import sys
import time
from collections.abc import Callable, Sequence

import numpy as np
from threadpoolctl import threadpool_limits

from journal_tools.forecast.belief import Belief
from journal_tools.forecast.chain import MOMENTS, STEPS, position
from journal_tools.forecast.columns import Column, terms_of
from journal_tools.forecast.forecast import Forecast
from journal_tools.forecast.kind import ClothKind
from journal_tools.forecast.memory import Memory
from journal_tools.forecast.observed import Observed, Reading
from journal_tools.forecast.priors import priors_for
from journal_tools.forecast.rows import mean_of
from journal_tools.forecast.small import Floats

TABLE = ((500, 60), (1000, 60), (2000, 60), (1000, 200))
SPANS = {"width": ("in_reed", "washed 1"), "length": ("on_loom", "washed 1")}
OFTEN = {"in_reed": 0.95, "warp": 0.3, "picks": 0.3, "on_loom": 0.8, "off_loom": 0.5, "washed 1": 0.95,
         "washed 2": 0.2, "settled": 0.2}  # fmt: skip
PIECES, WEAVES, FIBRES, FINISHES, YEARS = 3, 12, 8, 10, 20


def main(arguments: Sequence[str] | None = None) -> None:
    """Print one line a journal."""
    parser = argparse.ArgumentParser(prog="python -m benchmarks.forecast_speed", description=__doc__.split("\n")[0])
    parser.add_argument("--warps", type=int)
    parser.add_argument("--yarns", type=int, default=60)
    parser.add_argument("--rounds", type=int, default=3)
    asked = parser.parse_args(arguments)
    print(
        "| warps, yarns | both directions, s | width alone, s | length alone, s | nodes, effective "
        "| answer, ms | its range, ms | worst of 4, ms | with a sample, ms | one warp more, ms | peak memory, MB |"
    )
    print("|---" * 11 + "|")
    with threadpool_limits(1):
        for warps, yarns in ((asked.warps, asked.yarns),) if asked.warps else TABLE:
            print(f"| {warps}, {yarns} | {' | '.join(_figures(warps, yarns, asked.rounds))} |", flush=True)


def _figures(warps: int, yarns: int, rounds: int) -> list[str]:
    journal = {direction: made(direction, warps, yarns) for direction in SPANS}
    both = min(_seconds(lambda: Memory.from_observed(journal)) for _ in range(rounds))
    alone = {}
    for direction in SPANS:
        alone[direction] = min(_seconds(lambda d=direction: Forecast.fit(journal[d], d)) for _ in range(rounds))
    forecast = Forecast.fit(journal["length"], "length")
    nodes = f"{len(forecast.nodes.score)}, {forecast.effective_nodes:.0f}"
    first, last = SPANS["length"]
    kinds = [piece.kind for piece in journal["length"][:: PIECES * 7]][:40]
    seen = journal["length"][:PIECES]
    fresh = [Observed("one more", piece.piece, piece.kind, piece.readings) for piece in seen]
    beliefs: list[Belief] = []
    answer = _seconds(lambda: beliefs.extend(forecast.belief(kind, first, last) for kind in kinds)) / len(kinds)
    ranges = _seconds(lambda: [belief.range(0.9) for belief in beliefs]) / len(kinds)
    worst = _seconds(lambda: [belief.worst(0.05, of=4) for belief in beliefs]) / len(kinds)
    sample = _seconds(lambda: [forecast.belief(kind, first, last, seen=seen) for kind in kinds]) / len(kinds)
    more = min(_seconds(lambda: forecast.with_more(fresh)) for _ in range(rounds))
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / (1024 if sys.platform != "darwin" else 1024**2)
    milliseconds = [f"{1000 * seconds:.1f}" for seconds in (answer, ranges, worst, sample, more)]
    return [f"{both:.2f}", *(f"{alone[d]:.2f}" for d in SPANS), nodes, *milliseconds, f"{memory:.0f}"]


def _seconds(run: Callable[[], object]) -> float:
    start = time.perf_counter()
    run()
    return time.perf_counter() - start


def made(direction: str, warps: int, yarns: int, seed: int = 5) -> tuple[Observed, ...]:
    """A journal drawn from what the forecast believes, always the same."""
    rng = np.random.default_rng((seed, warps, yarns))
    hyper = priors_for(direction).hyper(np.zeros(priors_for(direction).size))
    root = np.linalg.cholesky(hyper.correlation)
    steps = len(STEPS[direction])
    effects: dict[Column, Floats] = {}

    def effect(column: Column) -> Floats:
        if column not in effects:
            sd = hyper.level_sd if column[0] == "level" else hyper.sd_of(column[0], direction)
            effects[column] = sd * rng.standard_normal(steps)
            if column[0] == "year" and int(column[1]) > 0:
                effects[column] = effects[column] + effect(("year", int(column[1]) - 1))
        return effects[column]

    found = []
    for warp in range(warps):
        kind = _kind(rng, yarns, warp * YEARS // warps)
        mean = mean_of(kind, hyper) + sum(
            share * effect(name) for name, share in terms_of(kind, direction, None).items()
        )
        mean = mean + hyper.sd_of("warp", direction) * (root @ rng.standard_normal(steps)) / math.sqrt(
            rng.gamma(3.5, 1 / 3.5)
        )
        moments = [moment for moment in MOMENTS[direction] if rng.random() < OFTEN[moment]]
        size = float(rng.uniform(5, 7))
        for piece in range(PIECES):
            z = mean + hyper.sd_of("piece", direction) * (root @ rng.standard_normal(steps))
            readings = []
            for moment in moments:
                sd = (0.3 if moment == "in_reed" else 1.5) / math.exp(size)
                log = size + float(np.dot(position(direction, moment), z)) + sd * float(rng.standard_normal())
                readings.append(Reading(moment, log, sd))
            found.append(Observed(f"warp {warp}", f"piece {piece}", kind, tuple(readings)))
    return tuple(found)


def _kind(rng: np.random.Generator, yarns: int, year: int) -> ClothKind:
    """A cloth of two yarns, alike three times in five; a yarn has one fibre."""
    warp = int(rng.integers(yarns))
    weft = warp if rng.random() < 0.6 else int(rng.integers(yarns))
    close = None if rng.random() < 0.1 else 0.75 * math.exp(0.15 * float(rng.standard_normal()))
    return ClothKind(
        weave=f"weave {rng.integers(WEAVES)}",
        warp_yarn=f"yarn {warp}",
        weft_yarn=f"yarn {weft}",
        warp_fibre=f"fibre {warp % FIBRES}",
        weft_fibre=f"fibre {weft % FIBRES}",
        finish=f"finish {rng.integers(FINISHES)}",
        closeness=close,
        year=year,
    )


if __name__ == "__main__":
    main()
