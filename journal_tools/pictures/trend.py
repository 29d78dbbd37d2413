"""How far off its plan the cloth came out: over time, and yarn by yarn.

Ink is for what lies within its ± of the plan; the warning colour only for what lies beyond.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING, Any

from journal_tools.pictures.chart_paper import GROUPS, MADDER, QUIET, as_svg, axes_in, drawn_on, years_along

if TYPE_CHECKING:
    from matplotlib.figure import Figure

WIDTH = 380
HEIGHT = 290
YARN_ROW = 26
LONGEST_NAME = 22
NAMES_WIDE, EDGE = 156, 30
"""What stands left and right of the lines of yarns, in px."""
WORDS_WIDE = 62
"""What "as planned" below an axis takes, with the room that it needs beside it, in px."""
MM = {"in": 25.4, "cm": 10.0}
STEPS = {
    "in": [Fraction(1, 8), Fraction(1, 4), Fraction(1, 2), *map(Fraction, (1, 2, 4, 10, 20))],
    "cm": [Fraction(1, 5), Fraction(1, 2), *map(Fraction, (1, 2, 5, 10, 20, 50))],
}
WORDS = {"width": ("narrower", "wider"), "length": ("shorter", "longer")}


@dataclass(frozen=True)
class OffPoint:
    """One warp against its plan.

    when: the year with its part. off_mm: measured less planned, in mm: less than nought is
    narrower or shorter. uncertain_mm: its U (k = 2). yarn and warp: their names.
    """

    when: float
    off_mm: float
    uncertain_mm: float
    yarn: str
    warp: str

    @property
    def beyond(self) -> bool:
        """Whether it is further off than the tape can explain."""
        return abs(self.off_mm) > self.uncertain_mm * (1 + 1e-9)

    @property
    def colour(self) -> str:
        """Ink, or the warning colour beyond what the tape can explain."""
        return MADDER.light if self.beyond else GROUPS[0].light

    @property
    def mark(self) -> str:
        """A disc within, a diamond beyond, for those who cannot tell the colours."""
        return "D" if self.beyond else "o"


@dataclass(frozen=True)
class OffTrend:
    """Off plan over time. direction: "width" or "length"; unit: "in" or "cm"."""

    direction: str
    unit: str
    points: tuple[OffPoint, ...]

    @property
    def size(self) -> tuple[int, int]:
        """Width and height in px."""
        return WIDTH, HEIGHT

    def draw(self) -> bytes:
        """The chart as an SVG file."""
        per = MM[self.unit]
        with drawn_on(*self.size) as figure:
            axes = axes_in(figure, 108, 8, 34, 26)
            for point in sorted(self.points, key=lambda point: (point.when, point.warp)):
                off, doubt = point.off_mm / per, point.uncertain_mm / per
                axes.vlines(point.when, off - doubt, off + doubt, color=point.colour, linewidth=1.2)
                axes.plot([point.when], [off], point.mark, color=point.colour, markersize=6)
            years_along(axes, [point.when for point in self.points])
            ticks = off_ticks(self.points, self.unit)
            axes.set_yticks([float(tick) for tick in ticks])
            axes.set_yticklabels([off_words(tick, self.direction, self.unit) for tick in ticks])
            axes.set_ylim(*room_for(self.points, per))
            as_planned(axes.axhline)
            what_marks_mean(figure, self.points)
            return as_svg(figure)


@dataclass(frozen=True)
class OffByYarn:
    """Off plan, one line a yarn. direction: "width" or "length"; unit: "in" or "cm"."""

    direction: str
    unit: str
    points: tuple[OffPoint, ...]

    @property
    def yarns(self) -> list[str]:
        """The yarns, in the order of their names."""
        return sorted({point.yarn for point in self.points})

    @property
    def size(self) -> tuple[int, int]:
        """Width and height in px."""
        return WIDTH, 90 + YARN_ROW * len(self.yarns)

    def draw(self) -> bytes:
        """The chart as an SVG file."""
        per = MM[self.unit]
        row_of = {yarn: n for n, yarn in enumerate(self.yarns)}
        with drawn_on(*self.size) as figure:
            axes = axes_in(figure, NAMES_WIDE, EDGE, 34, 44)
            for point in sorted(self.points, key=lambda point: (point.yarn, point.when, point.warp)):
                row = row_of[point.yarn]
                axes.plot([point.off_mm / per], [row], point.mark, color=point.colour, markersize=6.5, alpha=0.75)
            low, high = room_for(self.points, per)
            ticks = few(off_ticks(self.points, self.unit), WORDS_WIDE / (WIDTH - NAMES_WIDE - EDGE) * (high - low))
            axes.set_xticks([float(tick) for tick in ticks])
            words = [off_words(tick, self.direction, self.unit) for tick in ticks]
            axes.set_xticklabels([said.replace(f"{self.unit} ", f"{self.unit}\n") for said in words])
            axes.set_xlim(low, high)
            axes.set_yticks(range(len(self.yarns)))
            axes.set_yticklabels([shortened(yarn) for yarn in self.yarns])
            axes.set_ylim(len(self.yarns) - 0.4, -0.6)
            as_planned(axes.axvline)
            what_marks_mean(figure, self.points)
            return as_svg(figure)


def as_planned(across: Callable[..., Any]) -> None:
    """The line of the plan, dashed as on the tape; across: `axhline` or `axvline`."""
    across(0, color=QUIET.light, linewidth=1.4, linestyle=(0, (4, 3)))


def what_marks_mean(figure: Figure, points: Sequence[OffPoint]) -> None:
    """The legend: what ink stands for and, where it is used, the warning colour."""
    from matplotlib.lines import Line2D

    meanings = [("o", GROUPS[0], "within what a tape can tell")]
    if any(point.beyond for point in points):
        meanings.append(("D", MADDER, "beyond it"))
    handles = [Line2D([], [], color=tone.light, marker=mark, linestyle="", label=said) for mark, tone, said in meanings]
    figure.legend(handles=handles, loc="upper left", bbox_to_anchor=(0, 1), ncols=2)


def room_for(points: Sequence[OffPoint], per: float) -> tuple[float, float]:
    """From where to where the axis goes, in the unit: the plan is always on it."""
    low = min(0.0, *(point.off_mm - point.uncertain_mm for point in points)) / per
    high = max(0.0, *(point.off_mm + point.uncertain_mm for point in points)) / per
    room = max((high - low) * 0.07, 0.05)
    return low - room, high + room


def off_ticks(points: Sequence[OffPoint], unit: str) -> list[Fraction]:
    """Ticks of the tape around the plan, no more than nine of them."""
    low, high = room_for(points, MM[unit])
    step = next((step for step in STEPS[unit] if (high - low) / step <= 8), STEPS[unit][-1])
    first, last = int(low / step), int(high / step)
    return [step * n for n in range(first, last + 1)]


def few(ticks: list[Fraction], apart: float) -> list[Fraction]:
    """The plan, and to its sides those ticks whose words have room beside each other.

    apart: how far apart ticks must be, in their unit.
    """
    plan = ticks.index(Fraction(0))
    step = next((step for step in range(1, len(ticks)) if ticks[step] - ticks[0] >= apart), len(ticks))
    return [tick for n, tick in enumerate(ticks) if (n - plan) % step == 0]


def off_words(off: Fraction, direction: str, unit: str) -> str:
    """Off plan in a weaver's words: "1/4 in narrower"."""
    if not off:
        return "as planned"
    less, more = WORDS[direction]
    size = abs(off)
    whole, part = divmod(size, 1)
    if unit == "cm":
        number = f"{float(size):g}"
    elif part and whole:
        number = f"{whole} {part}"
    else:
        number = f"{part or whole}"
    return f"{number} {unit} {less if off < 0 else more}"


def shortened(name: str) -> str:
    """A yarn's name that fits beside its line."""
    return name if len(name) <= LONGEST_NAME else name[: LONGEST_NAME - 1].rstrip() + "…"
