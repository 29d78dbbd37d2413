"""Charts kept by their content, so that only those that changed are drawn again.

A chart takes matplotlib a fortieth of a second, which at sixty yarns is most of a build. A kept
file is named by all that decides how the chart looks, and is written whole or not at all.
"""

from __future__ import annotations

import hashlib
import os
from collections.abc import Mapping
from concurrent.futures import ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from importlib.metadata import version
from multiprocessing import get_context
from pathlib import Path

from journal_tools.pictures.chart_paper import Chart

AT_ONCE = 2
WORTH_A_SECOND_PROCESS = 60
"""Fewer charts than this are drawn sooner than two more Pythons have started."""
DRAWN_BY = ("chart_paper.py", "scatter.py", "trend.py")


def draw_all(charts: Mapping[str, Chart], folder: Path) -> dict[str, bytes]:
    """Every chart as SVG under its own name, from the folder where it is kept there.

    The folder is made when it is not there; it may be deleted at any time.
    """
    files = {name: folder / f"{key}.svg" for name, key in keys(charts).items()}
    kept = {name: read_kept(path) for name, path in files.items()}
    missing = {files[name]: charts[name] for name, svg in kept.items() if svg is None}
    if missing:
        folder.mkdir(parents=True, exist_ok=True)
        draw_missing(missing)
    return {name: kept[name] or files[name].read_bytes() for name in charts}


def keys(charts: Mapping[str, Chart]) -> dict[str, str]:
    """A name for the look of each chart: its values, the code that draws it, matplotlib's version."""
    drawn_by = hashlib.sha256(version("matplotlib").encode())
    for name in DRAWN_BY:
        drawn_by.update((Path(__file__).parent / name).read_bytes())
    drawing = drawn_by.digest()
    return {name: hashlib.sha256(drawing + repr(chart).encode()).hexdigest() for name, chart in charts.items()}


def read_kept(path: Path) -> bytes | None:
    """A kept chart, or None when it is not there or not whole."""
    try:
        svg = path.read_bytes()
    except FileNotFoundError:
        return None
    return svg if svg.rstrip().endswith(b"</svg>") else None


def draw_missing(missing: Mapping[Path, Chart]) -> None:
    """Draw what is not kept, in two processes when there is much of it."""
    if len(missing) >= WORTH_A_SECOND_PROCESS:
        try:
            with ProcessPoolExecutor(AT_ONCE, mp_context=get_context("spawn")) as pool:
                list(pool.map(draw_one, missing.keys(), missing.values(), chunksize=8))
            return
        except (BrokenProcessPool, OSError):
            pass  # no second process here: the charts that are not there yet are drawn below
    for path, chart in missing.items():
        if read_kept(path) is None:
            draw_one(path, chart)


def draw_one(path: Path, chart: Chart) -> None:
    """Draw a chart into its file: whole, or not at all when this is stopped halfway."""
    half = path.with_name(f"{path.name}.{os.getpid()}")
    half.write_bytes(chart.draw())
    half.replace(path)


def chart_size(chart: Chart) -> tuple[int, int]:
    """Width and height of a chart in px."""
    return chart.size
