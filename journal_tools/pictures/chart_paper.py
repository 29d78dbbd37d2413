"""The paper that charts are drawn on: one SVG for light and dark, letters as letters, the same bytes.

matplotlib draws with fixed colours; afterwards each of them becomes a variable of the SVG's own
stylesheet, which asks whether the reader prefers light or dark. An image in a page follows the
page's scheme, so one file serves both.
"""

from __future__ import annotations

import io
import re
import warnings
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Protocol

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

FONT = "DejaVu Sans"
"""matplotlib brings it along and measures with it; readers see their own system's letters."""
LETTERS = 12.0


class Chart(Protocol):
    """A chart as plain values, which can draw itself."""

    @property
    def size(self) -> tuple[int, int]:
        """Width and height in px."""

    def draw(self) -> bytes:
        """The chart as an SVG file."""


def chart_svg(chart: Chart) -> bytes:
    """A chart as an SVG file: what another process is asked for."""
    return chart.draw()


@dataclass(frozen=True)
class Tone:
    """A colour of the charts in light and in dark."""

    name: str
    light: str
    dark: str


INK = Tone("ink", "#24231f", "#ece6d8")
QUIET = Tone("quiet", "#5c584d", "#b4ac9b")
LINE = Tone("line", "#d8d1bf", "#453f35")
MADDER = Tone("madder", "#9a3a20", "#f09a7c")
GROUPS = (
    Tone("indigo", "#2b466e", "#a9c3e6"),
    Tone("moss", "#5a6a2a", "#b7c98a"),
    Tone("walnut", "#7a5330", "#d9b48c"),
    Tone("heather", "#7b4d79", "#d9aed6"),
    Tone("sea", "#2a6c69", "#8fd0ca"),
    Tone("ochre", "#8d6a05", "#e3c15c"),
)
MARKS = ("o", "s", "^", "D", "v", "P", "X", "*")
"""With the colours, so that no group is told by colour alone."""


@contextmanager
def drawn_on(width: int, height: int) -> Iterator[Figure]:
    """A figure of so many px, with the journal's own rules for lines and letters."""
    import matplotlib
    from matplotlib.figure import Figure

    rules: Any = {
        "svg.hashsalt": "tenterhook",
        "svg.fonttype": "none",
        "font.family": "sans-serif",
        "font.sans-serif": [FONT],
        "font.size": LETTERS,
        "text.parse_math": False,
        "text.color": INK.light,
        "axes.edgecolor": LINE.light,
        "axes.labelcolor": QUIET.light,
        "axes.linewidth": 1.0,
        "axes.axisbelow": True,
        "axes.spines.top": False,
        "axes.spines.right": False,
        "axes.spines.left": False,
        "axes.grid": True,
        "grid.color": LINE.light,
        "grid.linewidth": 0.8,
        "xtick.color": LINE.light,
        "ytick.color": LINE.light,
        "xtick.labelcolor": QUIET.light,
        "ytick.labelcolor": QUIET.light,
        "ytick.major.size": 0.0,
        "legend.frameon": False,
        "legend.fontsize": LETTERS,
        "legend.handletextpad": 0.2,
        "legend.columnspacing": 1.0,
        "legend.borderaxespad": 0.0,
    }
    with matplotlib.rc_context(rules), warnings.catch_warnings():
        # Letters are drawn by the reader's system, so it does not matter which ones the font lacks.
        warnings.filterwarnings("ignore", message="Glyph")
        yield Figure(figsize=(width / 72, height / 72))


def axes_in(figure: Figure, left: int, right: int, top: int, bottom: int) -> Axes:
    """The axes with so many px around them."""
    width, height = figure.get_size_inches() * 72
    return figure.add_axes(
        (left / width, bottom / height, (width - left - right) / width, (height - top - bottom) / height)
    )


def as_svg(figure: Figure) -> bytes:
    """The figure as an SVG file that follows the reader's scheme, without a date."""
    drawn = io.BytesIO()
    nothing = dict.fromkeys(("Date", "Creator", "Format", "Type"))
    figure.savefig(drawn, format="svg", transparent=True, metadata=nothing)
    text = drawn.getvalue().decode()
    text = text[text.index("<svg") :].replace(f"'{FONT}'", "system-ui")
    for tone in (INK, QUIET, LINE, MADDER, *GROUPS):
        text = text.replace(tone.light, f"var(--{tone.name})")
    head, rest = re.split(r"(?<=>)", text, maxsplit=1)
    return f"{head}\n <style>{schemes()}</style>{rest}".encode()


def schemes() -> str:
    """The stylesheet of both schemes."""
    tones = (INK, QUIET, LINE, MADDER, *GROUPS)
    light = "".join(f"--{tone.name}:{tone.light};" for tone in tones)
    dark = "".join(f"--{tone.name}:{tone.dark};" for tone in tones)
    return f"svg{{{light}}}@media(prefers-color-scheme:dark){{svg{{{dark}}}}}"


def years_along(axes: Axes, whens: list[float]) -> None:
    """Years along the foot; a journal of one year shows where the year begins and ends."""
    first, last = min(whens), max(whens)
    room = max((last - first) * 0.06, 0.08)
    low, high = min(first - room, int(first)), max(last + room, int(first) + 1)
    axes.set_xlim(low, high)
    years = range(int(low) + (low > int(low)), int(high) + 1)
    step = 1 + (len(years) - 1) // 7
    axes.set_xticks([year for year in years if year % step == 0], minor=False)
    axes.xaxis.set_major_formatter(lambda year, _: f"{year:.0f}")
    axes.xaxis.grid(False)


def in_groups(names: list[str]) -> Callable[[str], tuple[Tone, str]]:
    """A colour and a mark for each name, the same whatever the order they come in."""
    order = {name: n for n, name in enumerate(sorted(set(names)))}
    return lambda name: (GROUPS[order[name] % len(GROUPS)], MARKS[order[name] % len(MARKS)])
