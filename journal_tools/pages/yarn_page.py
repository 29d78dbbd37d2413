"""A yarn's page: what it is, what it did in every warp."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from journal_tools.ledger import Row
from journal_tools.ledger.past import Past, PastWarp, Step, most_figures
from journal_tools.ledger.state import wash_number
from journal_tools.ledger.words import COMPARED, per_cent, points
from journal_tools.pages import views
from journal_tools.pages.archive import Archive
from journal_tools.pages.cards import card
from journal_tools.pages.expect_part import bands, expect_part
from journal_tools.pages.photos import photos
from journal_tools.pages.view_parts import Cell, Chart, Column, Fact, Link, Table
from journal_tools.pictures.scatter import LossPoint, LossScatter
from journal_tools.quantities import show_density
from journal_tools.records import Warp, Yarn


def yarn_view(archive: Archive, yarn: Yarn) -> views.YarnView:
    """Everything a yarn's page shows."""
    past = archive.past(yarn.name)
    return views.YarnView(
        yarn.heading,
        fibres_text(yarn),
        tuple((name, f"#{colour}") for name, colour in (yarn.colours or {}).items()),
        tuple(_facts(archive, yarn)),
        expect_part(archive, yarn),
        tuple(said(past)),
        tuple(_charts(archive, yarn, past)),
        tuple(_tables(archive, past)),
        tuple(card(archive, each.warp) for each in past.warps),
        archive.problems_of(yarn),
        archive.neighbours("yarns", yarn.name),
        photos(archive, yarn),
    )


def fibres_text(yarn: Yarn) -> str:
    """Fibres and their shares, the largest first."""
    if yarn.fibre is None:
        return ""
    if not yarn.fibre:
        return "fibre unknown"
    if len(yarn.fibre) == 1:
        return next(iter(yarn.fibre))
    shares = sorted(yarn.fibre.items(), key=lambda item: -(item[1] or 0))
    return ", ".join(f"{float(share) * 100:g} % {fibre}" if share else fibre for fibre, share in shares)


def number_text(yarn: Yarn) -> str:
    """The number on the label, else what was measured, as it was typed."""
    measured = yarn.length_weight or yarn.yield_
    return yarn.number or (measured.text if measured else "")


def _facts(archive: Archive, yarn: Yarn) -> Iterator[Fact]:
    if yarn.number:
        yield Fact("yarn number", (Link(yarn.number),))
    best = yarn.length_weight or yarn.yield_ or yarn.counted
    if best is not None:
        per_pound = 496_054.648 / float(best.tex)
        how = ", as weighed" if best.measured else ""
        yield Fact("length", (Link(f"{per_pound:,.0f} yd/lb, {1_000_000 / float(best.tex):,.0f} m/kg{how}"),))
        yield Fact("tex", (Link(f"{float(best.tex):.0f}"),))
    if yarn.wraps:
        yield Fact("wraps", (Link(show_density(yarn.wraps.per_m, yarn.wraps.unit)),))
    flags = [
        word
        for word, on in (
            ("wetted before", yarn.wetted),
            ("in oil", yarn.in_oil),
            ("raw", yarn.raw),
            ("grey", yarn.grey),
        )
        if on
    ]
    if flags:
        yield Fact("as it comes", tuple(Link(word) for word in flags))
    if not archive.public:
        private = (
            ("put-up", yarn.put_up),
            ("price", yarn.price and yarn.price.text),
            ("on hand", yarn.on_hand and yarn.on_hand.text),
            ("lot", yarn.lot),
        )
        yield from (Fact(label, (Link(text),)) for label, text in private if text)


def said(past: Past) -> Iterator[str]:
    """What to make of it, in sentences: whole losses with their range, and what they rest on; each weave by itself."""
    several = len(past.weaves) > 1
    for weave, steps in past.weaves:
        words = [*_said(steps)]
        if words and several:
            first = " ".join(words)
            yield f"In {weave or 'no weave that was named'}: {first[0].lower()}{first[1:]}"
        else:
            yield from words


def _said(steps: Sequence[Step]) -> Iterator[str]:
    for direction, (less, _) in COMPARED.items():
        step = most_figures(steps, direction)
        if step is None or step.mean is None:
            continue
        number = len(step.losses)
        if number == 1:
            yield f"Once measured: {step.label}, it came out {per_cent(step.mean)} {less}. One warp is not a habit."
            continue
        low, high = min(step.losses), max(step.losses)
        yield (
            f"{step.label.capitalize()}, it came out {per_cent(step.mean)} {less}: the mean of {number},"
            f" from {per_cent(low)} to {per_cent(high)}."
        )


def _charts(archive: Archive, yarn: Yarn, past: Past) -> Iterator[Chart]:
    """One chart a yarn: whole losses by date, width full and length open."""
    steps = [step for direction in COMPARED if (step := past.step(direction)) is not None]
    points_ = tuple(point for step in steps for point in _points(past, step))
    if len(points_) < 2:
        return
    marks = {"width": "full marks", "length": "open marks"}
    title = "; ".join(f"{marks[step.direction]} are {step.label}" for step in steps)
    alt = f"Losses in {len(past.warps)} warps, by date; the same figures are in the table below."
    table = _scatter_table(points_)
    wholes = (("width", "in_reed", "washed 1"), ("length", "on_loom", "washed 1"))
    next_one = bands(archive, yarn, [step.direction for step in steps if step.span in wholes])
    if next_one:
        title += "; bars are the next warp’s, nine times in ten"
    yield archive.chart(LossScatter(title, points_, bands=next_one), title[0].upper() + title[1:], alt, table)


def _points(past: Past, step: Step) -> Iterator[LossPoint]:
    for each in past.warps:
        when = each.warp.started or each.warp.finished
        for row in each.ledger.stretch_rows:
            if row.span == step.span and when is not None and row.learn and not row.steered:
                yield LossPoint(
                    year_of(when.key),
                    row.loss,
                    row.uncertainty,
                    each.weave(row.stretch) or "no weave named",
                    each.warp.heading,
                    row.direction,
                )


def year_of(key: Sequence[int]) -> float:
    """A date as a year and a part of it; a year alone is its middle."""
    year, month, day = key
    return year + ((month - 1 + (day - 1 if day else 14) / 31) / 12 if month else 0.5)


def _scatter_table(points_: Sequence[LossPoint]) -> Table:
    columns = (Column("warp"), Column("weave"), Column("of its"), Column("loss", number=True))
    rows = tuple(
        (
            Cell(point.warp),
            Cell(point.weave),
            Cell(point.direction),
            Cell(per_cent(point.loss), sort=f"{point.loss:.6f}", small=f"± {points(point.uncertain)}"),
        )
        for point in points_
    )
    return Table("Losses", columns, rows)


def _tables(archive: Archive, past: Past) -> Iterator[Table]:
    for weave, steps in past.weaves:
        if len(past.weaves) == 1 or any(step.losses for step in steps):
            yield _steps_table(steps, f", {weave}" if weave and len(past.weaves) > 1 else "")
    if past.warps:
        yield _warps_table(archive, past.warps)


def _steps_table(steps: Sequence[Step], of: str) -> Table:
    columns = (
        Column("step"),
        Column("mean", True),
        Column("spread", True),
        Column("least", True),
        Column("most", True),
        Column("figures", True),
    )
    rows = tuple(
        (
            Cell(step.label, strong=step.whole),
            Cell(per_cent(step.mean) if step.mean is not None else "–", strong=step.whole),
            Cell(f"{points(step.spread)}" if step.spread is not None else "–"),
            Cell(per_cent(min(step.losses)) if step.losses else "–"),
            Cell(per_cent(max(step.losses)) if step.losses else "–"),
            Cell(str(len(step.losses)), small=f"{step.left_out} left out" if step.left_out else ""),
        )
        for step in steps
    )
    note = (
        "Losses in per cent of the earlier size, spread in points. Left out: what was fulled to size, and what is"
        " not to be learned from."
    )
    return Table(f"Every step{of}", columns, rows, note=note)


def _warps_table(archive: Archive, warps: Sequence[PastWarp]) -> Table:
    columns = (
        Column("warp"),
        Column("when"),
        Column("as"),
        Column("weave"),
        Column("sett"),
        Column("width lost", True),
        Column("length lost", True),
    )
    rows = []
    for each in warps:
        for stretch in dict.fromkeys(row.stretch for row in each.ledger.stretch_rows) or [""]:
            rows.append(_warp_row(each, stretch))
    return Table("Every warp", columns, tuple(rows), sortable=True)


def _warp_row(each: PastWarp, stretch: str) -> tuple[Cell, ...]:
    warp = each.warp
    when = warp.started or warp.finished
    name = f"{warp.heading}: {stretch}" if stretch else warp.heading
    rows = [row for row in each.ledger.stretch_rows if row.stretch == stretch and row.whole]
    return (
        Cell(name, f"warps/{warp.name}.html"),
        Cell(when.show() if when else "undated", sort="-".join(f"{part:04d}" for part in when.key) if when else "0"),
        Cell(each.use),
        Cell(each.weave(stretch)),
        Cell(sett_text(warp, stretch)),
        _loss_cell(rows, "width"),
        _loss_cell(rows, "length"),
    )


def sett_text(warp: Warp, stretch: str) -> str:
    """The sett in the reed, "" where the record does not tell."""
    sett = warp.sett_of(next((each for each in warp.stretches if each.name == stretch), warp))
    return show_density(sett.per_m, sett.unit) if sett else ""


def _loss_cell(rows: Sequence[Row], direction: str) -> Cell:
    found = [row for row in rows if row.direction == direction]
    if not found:
        return Cell("–", sort="-1")
    row = max(found, key=lambda each: wash_number(each.last) or 0)
    small = f"± {points(row.uncertainty)}, to {row.last.short}"
    if row.steered:
        small += ", fulled"
    elif not row.learn:
        small += ", not learned"
    return Cell(per_cent(row.loss), sort=f"{row.loss:.6f}", small=small)
