"""A tape for the states of a cloth, made by hand as SVG.

No charting library draws a tape, and this one costs a tenth of a millisecond. It is meant to
stand in a page: widths are parts of the tape's own width and letters keep their size, so it is
as readable on a telephone as on a desk; colours come from the page's stylesheet, which gives
light, dark and print. Ink is for what the tape cannot tell from the plan; the warning colour
marks only what lies further off than that.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from html import escape

from journal_tools.pictures.tape_scale import ALL, TapeScale, Tick, scale_for

MM = {"in": 25.4, "cm": 10.0}

RULE = 34
"""Height of the tape itself, in px."""
ROW = 34
BAR = 22
LEGEND = 26
TICK_HEIGHTS = {"in": (17, 12, 8, 5), "cm": (17, 11, 6)}
INKS = 5
TICKS_ON_A_DESK = 130
TICKS_ON_A_PHONE = 50
NUMBERS_ON_A_DESK = (26, 25.0)
NUMBERS_ON_A_PHONE = (8, 105.0)
"""How many numbers at most, and the thousandths that one needs before the tape ends."""
INSIDE = 140
INSIDE_ON_A_PHONE = 340
"""A size needs this much of an untorn bar, in thousandths, or stands behind its end."""
NEAR = 330
"""A planned mark this close behind the end would run through the label: it goes behind the mark."""


@dataclass(frozen=True)
class TapeBar:
    """One state of the cloth on a tape.

    label: "on the loom". mm: the measured size, or None where nobody measured.
    planned_mm: the size that was planned, or None. uncertain_mm: U (k = 2) of the measured size.
    text: the measured size as written, "17 7/8 in". planned_text: likewise for the plan.
    """

    label: str
    mm: float | None
    planned_mm: float | None = None
    uncertain_mm: float = 0.0
    text: str = ""
    planned_text: str = ""

    @property
    def beyond(self) -> bool:
        """Whether the cloth is further off its plan than the tape can explain."""
        if self.mm is None or self.planned_mm is None:
            return False
        return abs(self.mm - self.planned_mm) > self.uncertain_mm * (1 + 1e-9)


def tape_svg(bars: Sequence[TapeBar], *, direction: str, unit: str, title: str) -> str:
    """The tape as one `<svg>` for a page, or "" when there is no size to show on it.

    direction: "width" or "length". unit: "in" (eighths) or "cm" (millimetres).
    title: what it is, for those who cannot see it; the sizes are read out after it.
    """
    sizes = [mm / MM[unit] for bar in bars for mm in (bar.mm, bar.planned_mm) if mm is not None]
    if not sizes:
        return ""
    scale = scale_for(sizes, unit)
    legend = legend_svg(bars, RULE + ROW * len(bars))
    height = RULE + ROW * len(bars) + (LEGEND if legend else 0)
    rows = [bar_svg(bar, n, len(bars), scale) for n, bar in enumerate(bars)]
    body = [
        rule_svg(scale, direction, RULE + ROW * len(bars) - 6),
        *(row.ink for row in rows),
        torn_svg(scale, RULE + ROW * len(bars) - 6),
        *(row.words for row in rows),
        legend,
    ]
    spoken = escape(f"{title}: {spoken_sizes(bars)}", quote=True)
    return (
        f'<svg class="tape" role="img" aria-label="{spoken}" width="100%" height="{height}">' + "".join(body) + "</svg>"
    )


def spoken_sizes(bars: Sequence[TapeBar]) -> str:
    """The tape as a sentence, for a screen reader."""
    said = []
    for bar in bars:
        planned = f", planned {bar.planned_text}" if bar.planned_text else ""
        said.append(f"{bar.label} {bar.text if bar.mm is not None else 'not measured'}{planned}")
    return "; ".join(said) + "."


@lru_cache(maxsize=1_000)  # tapes of towels are much alike, and a thousand of them are drawn in a build
def rule_svg(scale: TapeScale, direction: str, bottom: int) -> str:
    """The tape itself: a strip with its ticks and numbers, and faint lines down from the numbers."""
    desk = scale.numbered(*NUMBERS_ON_A_DESK)
    phone = scale.numbered(*NUMBERS_ON_A_PHONE)
    numbers, paths = "", {"unit": "", "unit desk": ""}
    for tick in scale.ticks(scale.finest_within(TICKS_ON_A_DESK)):
        kind = "tick" if fits_a_phone(tick, scale) or tick.value in phone else "tick desk"
        height = tick_height(tick, scale, tick.value in desk)
        paths[kind] = paths.get(kind, "") + f"M{short(tick.at)} {RULE - 4}v-{height}"
        if tick.value in desk:
            wide = "" if tick.value in phone else " desk"
            paths[f"unit{wide}"] += f"M{short(tick.at)} {RULE - 4}V{bottom}"
            numbers += f'<text class="number{wide}" x="{percent(tick.at)}" dx="4" y="13">{tick.value}</text>'
    drawn = "".join(f'<path class="{kind}" d="{path}"/>' for kind, path in paths.items() if path)
    return (
        f'<rect class="strip" width="100%" height="{RULE - 4}"/>'
        f'<svg width="100%" height="{bottom}" viewBox="0 0 {ALL} {bottom}" '
        f'preserveAspectRatio="none">{drawn}</svg>{numbers}'
        f'<text class="direction" x="-10" y="{RULE - 14}">{escape(direction)}, {scale.unit}</text>'
    )


def fits_a_phone(tick: Tick, scale: TapeScale) -> bool:
    """Whether a tick is drawn where the tape is narrow."""
    return tick.level <= scale.finest_within(TICKS_ON_A_PHONE) and (tick.level > 0 or scale.units <= TICKS_ON_A_PHONE)


def tick_height(tick: Tick, scale: TapeScale, numbered: bool) -> int:
    """How tall a tick is, in px: the coarser the taller, and those with a number tallest."""
    heights = TICK_HEIGHTS[scale.unit]
    return heights[0] if numbered else heights[max(tick.level, 1)]


@dataclass(frozen=True)
class Row:
    """What is drawn of a bar below the tears, and what above them."""

    ink: str
    words: str


def bar_svg(bar: TapeBar, row: int, rows: int, scale: TapeScale) -> Row:
    """One bar with its label, planned mark, doubt and, where it is beyond that, how far off."""
    top = RULE + ROW * row + 3
    planned = None if bar.planned_mm is None else scale.at(bar.planned_mm / MM[scale.unit])
    words = label_svg(bar.label, top)
    mark = ""
    if planned is not None:
        kind = "planned beyond" if bar.beyond else "planned"
        mark = line(kind, planned, top - 4, top + BAR + 4)
    if bar.mm is None:
        at = "0" if planned is None or planned > INSIDE_ON_A_PHONE else percent(planned)
        missing = f'<text class="missing" x="{at}" dx="9" y="{top + 16}">not measured</text>'
        return Row("", words + mark + missing)
    end = scale.at(bar.mm / MM[scale.unit])
    ink = f'<rect class="ink-{ink_of(row, rows)}" y="{top}" width="{percent(end)}" height="{BAR}"/>'
    ink += doubt_svg(bar, top, scale, ink_of(row, rows))
    if bar.beyond and planned is not None:
        low, high = sorted((end, planned))
        ink += f'<rect class="off" x="{percent(low)}" y="{top + BAR - 5}" width="{percent(high - low)}" height="5"/>'
    return Row(ink, words + mark + value_svg(bar, end, planned, top, scale, ink_of(row, rows)))


def doubt_svg(bar: TapeBar, top: int, scale: TapeScale, ink: int) -> str:
    """What the tape cannot tell: a fringe from the measured end to as far as it may be."""
    if bar.mm is None or not bar.uncertain_mm:
        return ""
    low = scale.at(bar.mm / MM[scale.unit])
    high = scale.at((bar.mm + bar.uncertain_mm) / MM[scale.unit])
    threads = "".join(f"M{short(low)} {y}H{short(high)}" for y in range(2, BAR, 4))
    return (
        f'<svg y="{top}" width="100%" height="{BAR}" viewBox="0 0 {ALL} {BAR}" '
        f'preserveAspectRatio="none"><path class="doubt line-{ink}" d="{threads}"/></svg>'
    )


def value_svg(bar: TapeBar, end: float, planned: float | None, top: int, scale: TapeScale, ink: int) -> str:
    """The measured size, inside the bar, or behind its end when there is no room that is not torn."""
    y, text = top + 16, escape(bar.text)
    doubtful = end if bar.mm is None else scale.at((bar.mm + bar.uncertain_mm) / MM[scale.unit])
    behind = planned if planned is not None and doubtful - 10 < planned < doubtful + NEAR else doubtful
    drawn = []
    for needed in (INSIDE, INSIDE_ON_A_PHONE):
        at = untorn(end, needed, scale)
        if at is None and behind + needed > ALL:
            at = end  # no room anywhere: over a tear is better than cut off
        if at is None:
            drawn.append(("value", f'x="{percent(behind)}" dx="8" y="{y}">{text}</text>'))
        else:
            drawn.append((f"value in line-{ink}", f'x="{percent(at)}" dx="-9" y="{y}">{text}</text>'))
    desk, phone = drawn
    if desk == phone:
        return f'<text class="{desk[0]}" {desk[1]}'
    return f'<text class="{desk[0]} desk" {desk[1]}<text class="{phone[0]} phone" {phone[1]}'


def untorn(end: float, needed: float, scale: TapeScale) -> float | None:
    """Where a text of this width may end inside a bar: by the bar's end, else before a tear; None for nowhere."""
    tears = [(low, high) for low, high in scale.tears() if high <= end]
    begins = [0.0, *(high for _, high in tears)]
    ends = [*(low for low, _ in tears), end]
    return next((high for low, high in zip(begins[::-1], ends[::-1], strict=True) if high - low >= needed), None)


def label_svg(label: str, top: int) -> str:
    """The state's name to the left of its bar; what is said beside it, or too long, on a second line."""
    name, _, beside = label.partition(" (")
    beside = beside.removesuffix(")")
    if not beside and (len(label) <= 15 or " " not in label):
        return f'<text class="label" x="-10" y="{top + 15}">{escape(label)}</text>'
    if not beside:
        half = label.rfind(" ", 0, 16)
        half = half if half > 0 else label.index(" ")
        name, beside = label[:half], label[half + 1 :]
    return (
        f'<text class="label two" x="-10" y="{top + 9}">{escape(name)}'
        f'<tspan x="-10" dy="13">{escape(beside)}</tspan></text>'
    )


def torn_svg(scale: TapeScale, bottom: int) -> str:
    """Pinked edges: at the start, which is not nought, and where the tape is torn."""
    right, left = pinked(bottom, 5), pinked(bottom, -5)
    drawn = f'<path class="torn" d="M-2 0H0{right}H-2z"/>' if scale.runs[0][0] else ""
    for low, high in scale.tears():
        drawn += (
            f'<rect class="torn" x="{percent(low)}" width="{percent(high - low)}" '
            f'height="{bottom}"/>'
            f'<svg class="edge" x="{percent(low)}"><path class="torn" d="M1 0H0{left}H1z"/></svg>'
            f'<svg class="edge" x="{percent(high)}"><path class="torn" d="M-1 0H0{right}H-1z"/></svg>'
        )
    return drawn


def pinked(height: int, depth: int) -> str:
    """The path of an edge cut with pinking shears, downwards; depth in px, minus for leftwards."""
    return f"l{depth} 4 {-depth} 4" * (height // 8 + 1)


def legend_svg(bars: Sequence[TapeBar], top: int) -> str:
    """What the marks mean, for those that are on this tape."""
    shown = []
    y = top + 14
    if any(bar.planned_mm is not None for bar in bars):
        shown.append((62, f'<path class="planned" d="M3 {y - 11}v15"/>', "planned", 11))
    if any(bar.mm is not None and bar.uncertain_mm for bar in bars):
        threads = "".join(f"M0 {y - 10 + n}h14" for n in (0, 4, 8))
        shown.append((106, f'<path class="doubt line-3" d="{threads}"/>', "give or take (±)", 20))
    if any(bar.beyond for bar in bars):
        shown.append((60, f'<rect class="off" y="{y - 7}" width="14" height="5"/>', "off plan", 20))
    drawn, x = "", 0
    for width, mark, word, gap in shown:
        drawn += f'<g transform="translate({x})">{mark}<text x="{gap}" y="{y}">{word}</text></g>'
        x += width + gap + 2
    return f'<g class="legend">{drawn}</g>' if drawn else ""


def ink_of(row: int, rows: int) -> int:
    """The shade of a bar, light to dark from the reed to the wash: 1 to 5."""
    return 1 + round(row * (INKS - 1) / max(rows - 1, 1))


def line(kind: str, at: float, top: int, bottom: int) -> str:
    """An upright line at a place on the tape."""
    return f'<line class="{kind}" x1="{percent(at)}" x2="{percent(at)}" y1="{top}" y2="{bottom}"/>'


def percent(at: float) -> str:
    """Thousandths as a percentage, for SVG attributes."""
    return f"{at / 10:.3f}".rstrip("0").rstrip(".") + "%"


def short(at: float) -> str:
    """A coordinate without needless figures."""
    return f"{at:.2f}".rstrip("0").rstrip(".")
