"""What one yarn lost, warp by warp: a loss against its date, with its ±, marked by weave."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from journal_tools.pictures.chart_paper import LINE, QUIET, Tone, as_svg, axes_in, drawn_on, in_groups, years_along

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.ticker import Locator

WIDTH = 380
PLOT = 230
LEGEND_ROW = 20
LEGEND_LETTERS = 44
"""About how many letters of a legend fit on one row."""
NEXT = 0.2
"""Width of the strip for the next warp, as a part of that of the years."""
LEAST_SPAN = 0.04
"""The axis spans four points at least: less would make weather of what a tape cannot tell."""


@dataclass(frozen=True)
class LossPoint:
    """One warp's loss.

    when: the year with its part, 2025.21. loss: a fraction, 0.117; less than nought where it grew.
    uncertain: U (k = 2) of it, a fraction. weave and warp: their names.
    direction: "width", drawn full, or "length", drawn open.
    """

    when: float
    loss: float
    uncertain: float
    weave: str
    warp: str
    direction: str = "width"


@dataclass(frozen=True)
class LossBand:
    """What to expect of the next warp in a weave: a loss, as fractions, and the range that holds nine times in ten."""

    weave: str
    direction: str
    low: float
    likely: float
    high: float


@dataclass(frozen=True)
class LossScatter:
    """Every warp's whole losses in one yarn, width and length. mean: a fraction, a line when given.

    bands: what to expect of the next warp, drawn behind the newest.
    """

    title: str
    points: tuple[LossPoint, ...]
    mean: float | None = None
    bands: tuple[LossBand, ...] = ()

    @property
    def legend_rows(self) -> int:
        """How many rows the weaves take."""
        return len(legend_rows(sorted({point.weave for point in self.points})))

    @property
    def size(self) -> tuple[int, int]:
        """Width and height in px."""
        return WIDTH, PLOT + LEGEND_ROW * self.legend_rows

    def draw(self) -> bytes:
        """The chart as an SVG file."""
        width, height = self.size
        look_of = in_groups([point.weave for point in self.points])
        with drawn_on(width, height) as figure:
            axes = axes_in(figure, 46, 8, 12 + LEGEND_ROW * self.legend_rows, 26)
            handles = {}
            for weave, direction in sorted({(point.weave, point.direction) for point in self.points}):
                tone, mark = look_of(weave)
                of_these = [each for each in self.points if (each.weave, each.direction) == (weave, direction)]
                some = sorted(of_these, key=lambda point: (point.when, point.warp))
                xs = [point.when for point in some]
                low = [(point.loss - point.uncertain) * 100 for point in some]
                high = [(point.loss + point.uncertain) * 100 for point in some]
                axes.vlines(xs, low, high, color=tone.light, linewidth=1.2)
                (drawn,) = axes.plot(
                    xs, [point.loss * 100 for point in some], mark, color=tone.light, markersize=7,
                    fillstyle="full" if direction == "width" else "none",
                )  # fmt: skip
                if direction == "width" or weave not in handles:
                    handles[weave] = drawn
            if self.mean is not None:
                axes.axhline(self.mean * 100, color=QUIET.light, linewidth=1, linestyle=(0, (4, 3)))
            if any(point.loss < 0 for point in self.points):
                axes.axhline(0, color=LINE.light, linewidth=2)
            years_along(axes, [point.when for point in self.points])
            self._expect(axes, look_of)
            axes.set_ylim(*self.percents())
            axes.yaxis.set_major_locator(few_ticks())
            axes.yaxis.set_major_formatter(lambda value, _: f"{value:g} %".replace("-", "−"))
            for n, row in enumerate(legend_rows(sorted(handles))):
                top = 1 - (4 + LEGEND_ROW * n) / height
                figure.legend(
                    [handles[weave] for weave in row], row, loc="upper left",
                    bbox_to_anchor=(40 / width, top), ncols=len(row),
                )  # fmt: skip
            return as_svg(figure)

    def _expect(self, axes: Axes, look_of: Callable[[str], tuple[Tone, str]]) -> None:
        """A strip behind the newest year, with a bar for each band: full for width, open for length."""
        if not self.bands:
            return
        start, end = axes.get_xlim()
        wide = (end - start) * NEXT / 2
        centre = end + wide
        axes.axvspan(end, end + 2 * wide, color=LINE.light, alpha=0.45, linewidth=0)
        ticks = {at: f"{at:.0f}" for at in axes.get_xticks()} | {centre: "next"}
        for band, across in zip(self.bands, (-0.45, 0.45) if len(self.bands) > 1 else (0.0,), strict=True):
            tone, mark = look_of(band.weave) if any(band.weave == each.weave for each in self.points) else (QUIET, "o")
            at, full = centre + across * wide, band.direction == "width"
            axes.bar(
                at, (band.high - band.low) * 100, wide * 0.55, band.low * 100, linewidth=1.4, edgecolor=tone.light,
                facecolor=tone.light if full else "none", alpha=0.5 if full else 1.0,
            )  # fmt: skip
            style = "full" if full else "none"
            axes.plot([at], [band.likely * 100], mark, color=tone.light, markersize=7, fillstyle=style)
        axes.set_xlim(start, end + 2 * wide)
        axes.set_xticks(list(ticks), list(ticks.values()))

    def percents(self) -> tuple[float, float]:
        """From where to where the axis goes, in per cent."""
        low = min([point.loss - point.uncertain for point in self.points] + [band.low for band in self.bands])
        high = max([point.loss + point.uncertain for point in self.points] + [band.high for band in self.bands])
        room = max((LEAST_SPAN - (high - low)) / 2, (high - low) * 0.08)
        return (low - room) * 100, (high + room) * 100


def legend_rows(names: list[str]) -> list[list[str]]:
    """The names in rows that fit the width."""
    rows: list[list[str]] = [[]]
    for name in names:
        if rows[-1] and sum(len(each) + 5 for each in [*rows[-1], name]) > LEGEND_LETTERS:
            rows.append([])
        rows[-1].append(name)
    return rows


def few_ticks() -> Locator:
    """Ticks at round per cents, no more than six."""
    from matplotlib.ticker import MaxNLocator

    return MaxNLocator(5, steps=[1, 2, 5, 10])
