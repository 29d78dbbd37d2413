"""Scores that are kept: what forecasting every past warp costs seconds, and most of it never changes."""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from functools import cache
from pathlib import Path

from threadpoolctl import threadpool_limits

from journal_tools.forecast.observed import Observed
from journal_tools.forecast.score import MOST, Score, score_of
from journal_tools.records import Journal

MOST_KEPT = 4_000
"""Figures: two directions of the newest warps, of your journal and of the shared one, with room for edits."""


def dated(journal: Journal) -> list[str]:
    """The names of the warps that have a date, oldest first."""
    return [warp.name for warp in reversed(list(journal.warps_newest_first())) if warp.started or warp.finished]


def scores_of(
    observed: Mapping[str, Sequence[Observed]], order: Sequence[str], file: Path | None = None, most: int = MOST
) -> dict[str, Score]:
    """The score of each direction. file: where figures are kept between builds; it may go at any time.

    most: how many of the newest warps are scored.
    """
    kept = _read(file)
    known = dict(kept)
    with threadpool_limits(1), ThreadPoolExecutor(len(observed)) as side_by_side:
        scores = side_by_side.map(lambda way: score_of(observed[way], order, way, known, most), observed)
        found = dict(zip(observed, scores, strict=True))
    if file is not None and known.keys() != kept.keys():
        _write(file, known)
    return found


def _read(file: Path | None) -> dict[str, list[float]]:
    if file is None:
        return {}
    try:
        listed = json.loads(file.read_bytes())
        if listed["by"] == _reckoned_by():
            return {key: [float(expected), float(place)] for key, (expected, place) in listed["scores"].items()}
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        pass
    return {}


def _write(file: Path, scores: Mapping[str, Sequence[float]]) -> None:
    file.parent.mkdir(parents=True, exist_ok=True)
    part = file.with_name(f"{file.name}.{os.getpid()}")
    newest = dict(list(scores.items())[-MOST_KEPT:])
    part.write_text(json.dumps({"by": _reckoned_by(), "scores": newest}), encoding="utf-8")
    part.replace(file)  # whole or not at all


@cache
def _reckoned_by() -> str:
    """The code that reckons: figures of another are not taken."""
    found = hashlib.sha256()
    for path in sorted(Path(__file__).parent.glob("*.py")):
        found.update(path.read_bytes())
    return found.hexdigest()
