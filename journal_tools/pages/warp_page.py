"""A warp's page."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Literal

from journal_tools.ledger import Ledger, PieceLedger
from journal_tools.pages import views
from journal_tools.pages.account import went
from journal_tools.pages.archive import Archive
from journal_tools.pages.cards import main_stretch, weave_of
from journal_tools.pages.draft_part import draft_part
from journal_tools.pages.dressing_page import dressing_link
from journal_tools.pages.measured import drawn_unit, measured
from journal_tools.pages.photos import photos
from journal_tools.pages.pieces import piece_name, pieces_table, without_empty
from journal_tools.pages.recorded import written
from journal_tools.pages.swatch import PAGE, cloth, swatch_of, whole_width
from journal_tools.pages.view_parts import Cell, Column, Fact, Link, Table
from journal_tools.quantities import show_density, show_weight
from journal_tools.records import Piece, Stretch, Warp
from journal_tools.records.yarns_used import YarnInUse, weft_yarns


def warp_view(archive: Archive, warp: Warp) -> views.WarpView:
    """Everything a warp's page shows."""
    ledger = archive.ledgers[warp.name]
    main = main_stretch(warp)
    swatch = swatch_of(archive, warp, main)
    several = bool(warp.stretches)
    own = "" if not several else None
    when = warp.started or warp.finished
    about = " · ".join(word for word in (weave_of(archive, warp), when.show() if when else "") if word)
    return views.WarpView(
        warp.heading,
        about,
        cloth(archive, swatch, PAGE) if swatch else None,
        whole_width(archive, swatch, warp) if swatch and main.ends is None else None,
        tuple(_facts(archive, warp, ledger)),
        measured(ledger, own) if own is not None else None,
        tuple(_stretches(archive, warp, ledger)) if several else (),
        pieces_table(archive, ledger, "") if not several else None,
        *went(ledger),
        draft_part(archive, warp, main) if not several or len(warp.stretches) == 1 else None,
        tuple(_tables(ledger)),
        tuple(written(warp)),
        photos(archive, warp),
        tuple(_taught(warp)),
        archive.problems_of(warp),
        archive.neighbours("warps", warp.name),
    )


def _facts(archive: Archive, warp: Warp, ledger: Ledger) -> Iterator[Fact]:
    if yarns := _yarn_links(archive, archive.yarns(warp)):
        yield Fact("yarn" if len(yarns) == 1 else "yarns", yarns)
    if weave := weave_of(archive, warp):
        yield Fact("weave", (Link(weave),))
    drafts = dict.fromkeys(each.draft for each in (warp, *warp.stretches) if isinstance(each.draft, str))
    if drafts:
        yield Fact("draft", tuple(archive.link("drafts", name) for name in drafts))
    if warp.loom:
        yield Fact("loom", (archive.link("looms", warp.loom),))
    if sheet := dressing_link(archive, warp):
        yield Fact("to dress it", (sheet,))
    yield from _sett_facts(warp, main_stretch(warp), ledger)
    finishes = dict.fromkeys(name for each in (warp, *warp.stretches) for name in each.finish if name)
    finishes |= dict.fromkeys(at.finish for each in (warp, *warp.stretches) for at in each.washed if at.finish)
    if finishes:
        yield Fact("finish", tuple(archive.link("finishes", name) for name in finishes))
    if warp.opens:
        layers = warp.layers.number if warp.layers else 2
        yield Fact(
            "layers", (Link(f"{layers}, opening {warp.opens}" if warp.opens != "yes" else f"{layers}, opening out"),)
        )
    dates = [(word, when) for word, when in (("started", warp.started), ("finished", warp.finished)) if when]
    yield from (Fact(word, (Link(when.show()),)) for word, when in dates)
    plain = (("temple", {True: "used", False: "none", None: ""}[warp.temple]), ("tension", warp.tension or ""))
    yield from (Fact(label, (Link(text),)) for label, text in plain if text)
    if not archive.public:
        yield from _private_facts(warp)


def _private_facts(warp: Warp) -> Iterator[Fact]:
    yield Fact("shared", (Link("yes" if warp.share else "no"),))
    if warp.hours:
        yield Fact("time", (Link(warp.hours if not warp.hours.replace(".", "").isdigit() else f"{warp.hours} hours"),))
    if warp.cost:
        yield Fact("cost", (Link(warp.cost.text),))
    if warp.tags:
        yield Fact("tags", tuple(Link(tag) for tag in warp.tags))


def _yarn_links(archive: Archive, yarns: Sequence[YarnInUse]) -> tuple[Link, ...]:
    """One link for each yarn, with the colours of it that were used."""
    colours: dict[str, list[str]] = {}
    for yarn in yarns:
        colours.setdefault(yarn.name, []).extend([yarn.colour] if yarn.colour else [])
    headings = {yarn.name: yarn.plain_heading for yarn in yarns}
    return tuple(
        archive.link("yarns", name, f"{headings[name]}: {', '.join(used)}" if used else headings[name])
        for name, used in colours.items()
    )


def _sett_facts(warp: Warp, stretch: Stretch, ledger: Ledger) -> Iterator[Fact]:
    pieces = [piece for piece in ledger.pieces if piece.laid.stretch is stretch]
    ends = pieces[0].laid.ends if pieces and pieces[0].laid.band is None else None
    reed, sley, sett = stretch.reed or warp.reed, stretch.sley or warp.sley, warp.sett_of(stretch)
    words = []
    if ends:
        words.append(f"{ends} ends")
    if sett:
        words.append(show_density(sett.per_m, sett.unit))
    if reed:
        order = f", {'-'.join(map(str, sley))} in a dent" if sley else ""
        words.append(f"{show_density(reed.per_m, reed.unit)} reed{order}")
    if words:
        yield Fact("sett", (Link(", ".join(words)),))
    yield from _finished(pieces)


def _finished(pieces: Sequence[PieceLedger]) -> Iterator[Fact]:
    """Finished threads to the inch or centimetre: the mean over the pieces that tell."""
    counted = [piece for piece in pieces if piece.laid.band is None]
    unit = _density_unit(counted)
    for label, attribute in (("epi", "ends_per_m"), ("ppi", "picks_per_m")):
        known = [
            (getattr(piece.counts, attribute), piece.number) for piece in counted if getattr(piece.counts, attribute)
        ]
        if known:
            mean = sum(value * number for value, number in known) / sum(number for _, number in known)
            word = f"finished {label}" if unit == "in" else f"finished {'ends' if label == 'epi' else 'picks'} per cm"
            yield Fact(word, (Link(show_density(mean, unit).partition("/")[0]),))


def _density_unit(pieces: Sequence[PieceLedger]) -> Literal["in", "cm"]:
    lines = [line for piece in pieces for line in piece.sizes]
    return "cm" if lines and drawn_unit(lines[0].unit) == "cm" else "in"


def _stretches(archive: Archive, warp: Warp, ledger: Ledger) -> Iterator[views.Stretch]:
    for number, stretch in enumerate(warp.stretches, start=1):
        name = stretch.name or ""
        swatch = swatch_of(archive, warp, stretch)
        wefts = weft_yarns(archive.journal, warp, stretch)
        facts = [
            *([Fact("weave", (Link(stretch.weave or warp.weave or ""),))] if stretch.weave or warp.weave else []),
            *([Fact("draft", (archive.link("drafts", stretch.draft),))] if isinstance(stretch.draft, str) else []),
            *([Fact("weft", _yarn_links(archive, wefts))] if wefts else []),
            *_sett_facts(warp, stretch, ledger),
        ]
        yield views.Stretch(
            (name or f"stretch {number}").capitalize(),
            f"stretch-{number}",
            tuple(facts),
            cloth(archive, swatch, PAGE) if swatch and number > 1 else None,  # the first stands above
            measured(ledger, name),
            pieces_table(archive, ledger, name),
        )


def _tables(ledger: Ledger) -> Iterator[Table]:
    weighed = [piece for piece in ledger.pieces if piece.mass is not None]
    rows = tuple(_mass_row(piece) for piece in _first_alike(weighed))
    if rows:
        columns = (
            Column("piece"),
            Column("reckoned", number=True),
            Column("weighed", number=True),
            Column("reckoned, g/m²", number=True),
            Column("weighed, g/m²", number=True),
        )
        note = "Reckoned from the ends and picks, their lengths and the yarn numbers; see How it is reckoned."
        yield without_empty(Table("Weight of a piece", columns, rows, note=note, stacked=True))
    yield from _fulling(ledger)


def _first_alike(pieces: Sequence[PieceLedger]) -> list[PieceLedger]:
    """Pieces that were weighed, or the first alone when none was."""
    weighed = [piece for piece in pieces if piece.mass is not None and piece.mass.weighed is not None]
    return weighed or list(pieces[:1])


def _mass_row(piece: PieceLedger) -> tuple[Cell, ...]:
    mass = piece.mass
    assert mass is not None
    wet = mass.weighed_state in ("washed", "made_up", "")
    dry = "" if wet else mass.weighed_state.replace("_", " ")
    areal, weighed = mass.areal_mass, mass.areal_mass_weighed
    return (
        Cell(piece_name(piece)),
        Cell(show_weight(mass.washed if wet else mass.bought, "g"), small=dry),
        Cell(show_weight(mass.weighed, "g") if mass.weighed is not None else "–", beyond=mass.far, small=dry),
        Cell(f"{areal:.0f}" if areal else "–"),
        Cell(f"{weighed:.0f}" if weighed else "–"),
    )


def _fulling(ledger: Ledger) -> Iterator[Table]:
    for piece in ledger.pieces:
        checks = piece.laid.said("fulling")
        if not checks:
            continue
        rows = tuple(
            (Cell(f"{check.minutes} min"), Cell(check.at.size.text if check.at.size else "–"), Cell(check.words))
            for check in checks
        )
        yield Table("Size while it was fulled", (Column("after", True), Column("size", True), Column("")), rows)


def _taught(warp: Warp) -> Iterator[str]:
    """What the journal is told not to learn, by the warp, by its stretches and by its pieces."""
    parts: list[Stretch | Piece] = [*warp.stretches]
    parts += [piece for stretch in warp.woven() for piece in stretch.pieces]
    levels = [("", warp.learn), *((f", of {each.name or 'a part'}", each.learn) for each in parts)]
    for of, rules in levels:
        for rule in rules:
            if rule.yes:
                continue
            what = {
                "width": "widths",
                "length": "lengths",
                None: rule.state.replace("_", " ") if rule.state else "anything",
            }
            source = f" from {rule.source}" if rule.source else ""
            reason = f": {rule.reason}" if rule.reason else ""
            yield f"The journal does not learn {what[rule.direction]}{source}{of}{reason}."
