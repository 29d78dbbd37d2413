"""How far off the forecast was: each past warp against what the warps before it led one to expect, over time.

Ink is for what came inside the range that should hold eight times in ten; the warning colour for the rest.
"""

from __future__ import annotations

from dataclasses import dataclass

from journal_tools.pictures.chart_paper import GROUPS, MADDER, QUIET, as_svg, axes_in, drawn_on, years_along

WIDTH, HEIGHT = 380, 270
LEAST = 0.03
"""The axis goes three points each way at least."""


@dataclass(frozen=True)
class Foretold:
    """One warp. when: the year with its part. off: came out less expected, a fraction of the first size.

    Less than nought is narrower or shorter. inside: whether it lay in the range of eight in ten.
    """

    when: float
    off: float
    inside: bool


@dataclass(frozen=True)
class ForetoldTrend:
    """All that were forecast in one direction, "width" or "length"."""

    direction: str
    points: tuple[Foretold, ...]

    @property
    def size(self) -> tuple[int, int]:
        """Width and height in px."""
        return WIDTH, HEIGHT

    def draw(self) -> bytes:
        """The chart as an SVG file."""
        less, more = {"width": ("narrower", "wider"), "length": ("shorter", "longer")}[self.direction]
        with drawn_on(*self.size) as figure:
            axes = axes_in(figure, 108, 8, 34, 26)
            handles = {}
            for inside, mark, tone, words in (
                (True, "o", GROUPS[0], "inside its range"),
                (False, "D", MADDER, "outside"),
            ):
                some = sorted((point.when, point.off) for point in self.points if point.inside is inside)
                when, off = [each for each, _ in some], [each * 100 for _, each in some]
                (drawn,) = axes.plot(when, off, mark, color=tone.light, markersize=6)
                handles[words] = drawn
            years_along(axes, [point.when for point in self.points])
            axes.axhline(0, color=QUIET.light, linewidth=1.4, linestyle=(0, (4, 3)))
            far = max(LEAST, max(abs(point.off) for point in self.points) * 1.1) * 100
            axes.set_ylim(-far, far)
            axes.yaxis.set_major_formatter(
                lambda value, _: "as expected" if not value else f"{abs(value):g} % {less if value < 0 else more}"
            )
            figure.legend(
                list(handles.values()), list(handles), loc="upper left",
                bbox_to_anchor=(20 / WIDTH, 1 - 4 / HEIGHT), ncols=2,
            )  # fmt: skip
            return as_svg(figure)
