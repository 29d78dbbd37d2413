"""Trends: how far off plan the cloth came out, over time and by yarn."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from journal_tools.ledger import Ledger, SizeLine
from journal_tools.ledger.words import COMPARED
from journal_tools.pages.archive import Archive
from journal_tools.pages.measured import mean_lines, off_words, uncertainty_text
from journal_tools.pages.score_part import charts as score_charts
from journal_tools.pages.score_part import said as score_said
from journal_tools.pages.score_part import scores
from journal_tools.pages.score_part import tables as score_tables
from journal_tools.pages.view_parts import Cell, Chart, Column, Table
from journal_tools.pages.views import ThingView
from journal_tools.pages.yarn_page import year_of
from journal_tools.pictures.trend import OffByYarn, OffPoint, OffTrend
from journal_tools.records import Warp


def trends_view(archive: Archive) -> ThingView:
    """Off plan over time and by yarn, for width and for length, each with its table."""
    drawn: list[Chart] = []
    tables: list[Table] = []
    for direction in COMPARED:
        found = list(_off_plan(archive, direction))
        if not found:
            continue
        table = _table(archive, direction, found)
        points = tuple(_point(archive, warp, line) for warp, line in found if warp.started or warp.finished)
        unit = "in" if archive.journal.settings.length == "in" else "cm"
        if len(points) >= 2:
            over_time, by_yarn = OffTrend(direction, unit, points), OffByYarn(direction, unit, points)
            less, more = COMPARED[direction]
            alt = f"How much {less} or {more} than planned {len(points)} warps came out"
            drawn.append(
                archive.chart(
                    over_time,
                    f"Off plan in {direction}, over time",
                    f"{alt}, by date; the table has the figures.",
                    table,
                )
            )
            drawn.append(
                archive.chart(
                    by_yarn,
                    f"Off plan in {direction}, by yarn",
                    f"{alt}, by yarn; the table has the figures.",
                    _by_yarn(direction, points, unit),
                )
            )
        else:
            tables.append(table)
    said: tuple[str, ...] = (
        ()
        if drawn or tables
        else ("Nothing yet: a warp shows here once its plan states a size that was also measured.",)
    )
    about = "How far off plan the cloth came out, and how far off the forecast was."
    score = scores(archive)
    drawn += score_charts(archive, score)
    tables += score_tables(archive, score)
    said = (*said, *score_said(archive, score))
    return ThingView("Trends", about, said=said, charts=tuple(drawn), tables=tuple(tables))


def _off_plan(archive: Archive, direction: str) -> Iterator[tuple[Warp, SizeLine]]:
    """Each warp that can be held to a plan, oldest first, with its last planned and measured size."""
    for warp in reversed(archive.warps):
        line = last_off_plan(archive.ledgers[warp.name], direction)
        if line is not None:
            yield warp, line


def last_off_plan(ledger: Ledger, direction: str) -> SizeLine | None:
    """The last state of the first planned stretch that was both planned and measured after the loom."""
    for stretch in dict.fromkeys(piece.stretch for piece in ledger.pieces):
        pieces = [piece for piece in ledger.pieces if piece.stretch == stretch]
        lines = [line for line in mean_lines(pieces, direction) if line.off_mm is not None and line.state.rank > 1]
        if lines:
            return lines[-1]
    return None


def _point(archive: Archive, warp: Warp, line: SizeLine) -> OffPoint:
    when = warp.started or warp.finished
    assert when is not None
    assert line.off_mm is not None
    return OffPoint(year_of(when.key), line.off_mm, line.u_mm, _yarn(archive, warp), warp.heading)


def _yarn(archive: Archive, warp: Warp) -> str:
    yarns = archive.yarns(warp)
    if not yarns:
        return "no yarn named"
    return yarns[0].plain_heading


def _table(archive: Archive, direction: str, found: Sequence[tuple[Warp, SizeLine]]) -> Table:
    columns = (Column("warp"), Column("when"), Column("yarn"), Column("at"), Column("off plan"))
    rows = []
    for warp, line in reversed(found):
        when = warp.started or warp.finished
        rows.append(
            (
                Cell(warp.heading, f"warps/{warp.name}.html"),
                Cell(
                    when.show() if when else "undated",
                    sort="-".join(f"{part:04d}" for part in when.key) if when else "0",
                ),
                Cell(_yarn(archive, warp)),
                Cell(line.state.name),
                Cell(
                    off_words(line), sort=f"{line.off_mm:.2f}", beyond=line.beyond, small=f"± {uncertainty_text(line)}"
                ),
            )
        )
    return Table(f"Off plan in {direction}", columns, tuple(rows), sortable=True)


def _by_yarn(direction: str, points: Sequence[OffPoint], unit: str) -> Table:
    by_yarn: dict[str, list[float]] = {}
    for point in points:
        by_yarn.setdefault(point.yarn, []).append(point.off_mm)
    less, more = COMPARED[direction]
    size = 25.4 if unit == "in" else 10.0
    rows = tuple(
        (
            Cell(yarn),
            Cell(str(len(off))),
            Cell(f"{abs(mean) / size:.2f} {unit} {less if mean < 0 else more}", sort=f"{mean:.3f}"),
        )
        for yarn, off in sorted(by_yarn.items())
        for mean in [sum(off) / len(off)]
    )
    return Table(
        f"Off plan in {direction}, by yarn",
        (Column("yarn"), Column("warps", True), Column("mean")),
        rows,
        sortable=True,
    )
