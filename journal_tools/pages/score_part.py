"""The forecast's score on the page of trends: how far off it was, how often its ranges held, what is still a guess."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import exp, expm1

from journal_tools.forecast.kept_score import dated, scores_of
from journal_tools.forecast.score import PROMISED, RIVALS, Guess, Score, Scored, guesses, root_mean_square, usual
from journal_tools.ledger.words import COMPARED, per_cent, points
from journal_tools.pages.archive import Archive
from journal_tools.pages.view_parts import Cell, Chart, Column, Table
from journal_tools.pages.yarn_page import year_of
from journal_tools.pictures.foretold import Foretold, ForetoldTrend
from journal_tools.quantities import When

LARGE = 250
"""With more dated warps than this a build does not wait for the score, which takes longer than all the rest."""
SHOWN = 0.8
"""The range that the charts speak of."""
GUESSES = 8
"""Kinds of cloth that are told as the least known."""
SPAN = {"width": "width, reed to washed", "length": "length, loom to washed"}


def scores(archive: Archive) -> dict[str, Score]:
    """The score of each direction, kept between builds beside the pictures."""
    order = dated(archive.journal)
    if len(order) > LARGE:
        return {}
    file = archive.store.folder.parent / ("score-shared.json" if archive.public else "score.json")
    return {
        direction: score
        for direction, score in scores_of(archive.memory.observed, order, file).items()
        if score.scored
    }


def said(archive: Archive, found: dict[str, Score]) -> Iterator[str]:
    """How often the range held and how far off it was, in a sentence for each direction."""
    if not found and len(dated(archive.journal)) > LARGE and not archive.public:
        yield f"The forecast’s score of more than {LARGE} warps takes a while: `tenterhook score` tells it."
    for direction, score in found.items():
        number = len(score.scored)
        yield (
            f"{SPAN[direction].capitalize()}: {number} forecast{'s' if number > 1 else ''} from the warps before."
            f" The range that should hold eight times in ten held {score.held(SHOWN)} of {number} times; half came"
            f" within {points(usual(score.offs))} points."
        )


def charts(archive: Archive, found: dict[str, Score]) -> Iterator[Chart]:
    """One chart a direction, with every warp that was forecast as its table."""
    for direction, score in found.items():
        drawn = tuple(
            Foretold(year_of(when.key), round(each.off, 5), each.inside(SHOWN))
            for each in score.scored
            if (when := _when(archive, each)) is not None
        )
        if len(drawn) < 2:
            continue
        less, more = COMPARED[direction]
        yield archive.chart(
            ForetoldTrend(direction, drawn),
            f"Off the forecast in {direction}, over time",
            f"How much {less} or {more} than expected {len(drawn)} warps came out, by date; the table has the figures.",
            _every(archive, direction, score),
        )


def tables(archive: Archive, found: dict[str, Score]) -> Iterator[Table]:
    """The forecast beside three simple rules, how often ranges held, and what is still guesswork."""
    if not found:
        return
    yield _beside_rules(found)
    yield _held(found)
    least_known = _least_known(archive)
    if least_known:
        yield _guesswork(archive, least_known)


def _when(archive: Archive, scored: Scored) -> When | None:
    warp = archive.journal.warps[scored.warp]
    return warp.started or warp.finished


def _every(archive: Archive, direction: str, score: Score) -> Table:
    columns = (Column("warp"), Column("weave"), Column("expected", True), Column("came out", True), Column("so"))
    less, more = COMPARED[direction]
    rows = tuple(
        (
            Cell(archive.journal.warps[each.warp].heading, f"warps/{each.warp}.html"),
            Cell(each.kind.weave),
            Cell(per_cent(-expm1(each.expected)), sort=f"{-expm1(each.expected):.6f}"),
            Cell(per_cent(-expm1(each.came)), sort=f"{-expm1(each.came):.6f}"),
            Cell(
                f"{points(abs(each.off))} points {less if each.off < 0 else more}",
                sort=f"{each.off:.6f}",
                beyond=not each.inside(SHOWN),
            ),
        )
        for each in reversed(score.scored)
    )
    return Table(f"Forecasts of {SPAN[direction]}", columns, rows, sortable=True)


def _beside_rules(found: dict[str, Score]) -> Table:
    columns = (
        Column("forecast by"),
        Column("of"),
        Column("half within", True),
        Column("root mean square", True),
        Column("furthest off", True),
    )
    rows = []
    for direction, score in found.items():
        told = [("this journal", score.offs), *((name, score.offs_of(n)) for n, name in enumerate(RIVALS))]
        for number, (name, offs) in enumerate(told):
            figures = (usual(offs), root_mean_square(offs), max(map(abs, offs)))
            cells = (Cell(points(each), strong=not number) for each in figures)
            rows.append((Cell(name, strong=not number), Cell(direction), *cells))
    note = (
        "In points: per cent of the first size. A yarn without a past has no mean of its own, and no last warp; ten per"
        " cent stands in."
    )
    return Table("Beside three simple rules", columns, tuple(rows), note=note, stacked=True)


def _held(found: dict[str, Score]) -> Table:
    columns = (Column("a range that should hold"), *(Column(direction, True) for direction in found))
    rows = tuple(
        (
            Cell(f"{promised:.0%} of the time".replace("%", " %")),
            *(Cell(f"{score.held(promised) / len(score.scored):.0%}".replace("%", " %"),
                   small=f"{score.held(promised)} of {len(score.scored)}") for score in found.values()),
        )
        for promised in PROMISED
    )  # fmt: skip
    return Table("How often its ranges held", columns, rows)


def _least_known(archive: Archive) -> Sequence[Guess]:
    """The kinds of cloth whose width is least known; the pocket says which are worth asking about."""
    kinds = {(kind.warp_yarn, kind.weft_yarn, kind.weave): kind for _, kind in archive.woven_kinds}
    asked = ("width", "in_reed", "washed 1")
    widest = sorted(kinds.values(), key=lambda kind: -archive.pocket.answer(kind, asked).sd)[:GUESSES]
    years = [kind.year for kind in kinds.values() if kind.year]
    return guesses(archive.memory.forecasts["width"], widest, max(years, default=None))


def _guesswork(archive: Archive, least_known: Sequence[Guess]) -> Table:
    columns = (
        Column("cloth"),
        Column("rests on", True),
        Column("doubt in width", True),
        Column("once sampled", True),
        Column("a sample takes off", True),
    )
    best = max(least_known, key=lambda guess: guess.gain)

    def doubt(sd: float) -> str:
        return f"± {points(1 - exp(-1.645 * sd))}"

    rows = tuple(
        (
            Cell(_cloth(archive, guess)),
            Cell(f"{guess.warps} warp{'' if guess.warps == 1 else 's'}"),
            Cell(doubt(guess.now), sort=f"{guess.now:.6f}"),
            Cell(doubt(guess.sampled), sort=f"{guess.sampled:.6f}"),
            Cell(points(1.645 * guess.gain), sort=f"{guess.gain:.6f}", strong=guess is best),
        )
        for guess in least_known
    )
    note = (
        f"In points of the whole loss, nine times in ten of one piece. A sample of {_cloth(archive, best)} would"
        " teach most."
    )
    return Table("Still guesswork", columns, rows, note=note, sortable=True, stacked=True)


def _cloth(archive: Archive, guess: Guess) -> str:
    yarns = dict.fromkeys(name for name in (guess.kind.warp_yarn, guess.kind.weft_yarn) if name)
    named = [archive.link("yarns", name).text for name in yarns] or ["yarn without a name"]
    return f"{' and '.join(named)}, {guess.kind.weave or 'no weave named'}"
