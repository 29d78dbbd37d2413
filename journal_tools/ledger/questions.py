"""What the journal asks about: figures that can be read but hardly all be so.

A question is worded as one, never stops a build, and is asked until the weaver accepts it by
writing its slug under `accepted:` in the warp, the stretch or the piece.
"""

from __future__ import annotations

from collections.abc import Iterator

from journal_tools.ledger.chain import Measure, chain_of
from journal_tools.ledger.ledger import Ledger, PieceLedger
from journal_tools.ledger.state import IN_REED, MADE_UP
from journal_tools.ledger.words import per_cent
from journal_tools.problems import Problem, Severity
from journal_tools.quantities import show_length, show_weight
from journal_tools.records.journal import Journal, nearest_name
from journal_tools.records.warp import Stretch, Warp
from journal_tools.records.yarns_used import all_yarns

LEAST_TAKEN = 0.30
"""A take-up "at most" beyond this leaves warp unaccounted for: rep takes 10 to 25 % (common practice, no source)."""


def questions(journal: Journal, ledger: Ledger) -> tuple[Problem, ...]:
    """Every question about one warp that has not been accepted."""
    warp = ledger.warp
    asked = [
        *_names(journal, warp),
        *_dates(warp),
        *_loom(journal, warp),
        *_account(ledger),
        *(problem for piece in ledger.pieces for problem in _piece(ledger, piece)),
    ]
    return tuple(dict.fromkeys(problem for problem in asked if problem.slug not in warp.accepted))


def _ask(warp: Warp, line: int, field: str, read: str, right: str, slug: str) -> Problem:
    words = slug.replace("-", " ")
    said = f"{right} If it is so, write `accepted: {words}`." if not slug.startswith("no-such") else right
    return Problem(warp.file, line, field, read, said, Severity.QUESTION, slug)


def _names(journal: Journal, warp: Warp) -> Iterator[Problem]:
    for yarn in all_yarns(journal, warp):
        if yarn.record is None:
            yield _missing(warp, warp.line("yarns", "yarn", "warp", "weft"), "yarn", yarn.name, nearest_name(yarn.name, journal.yarns))
        elif yarn.colour and yarn.colour not in (yarn.record.colours or {}):
            near = nearest_name(yarn.colour, yarn.record.colours or {})
            hint = f" Is it {near}?" if near else ""
            yield _ask(
                warp,
                warp.line("yarns", "yarn", "warp", "weft"),
                "yarn",
                f"{yarn.name} {yarn.colour}",
                f"{yarn.record.heading} has no colour of this name in its record.{hint}",
                "no-such-colour",
            )
    if warp.loom and warp.loom not in journal.looms:
        yield _missing(warp, warp.line("loom"), "loom", warp.loom, nearest_name(warp.loom, journal.looms))
    for stretch in {id(each): each for each in (warp, *warp.stretches)}.values():
        yield from _names_in(journal, warp, stretch)


def _names_in(journal: Journal, warp: Warp, stretch: Stretch) -> Iterator[Problem]:
    if isinstance(stretch.draft, str) and stretch.draft not in journal.drafts:
        near = nearest_name(stretch.draft, journal.drafts)
        yield _missing(warp, stretch.line("draft"), "draft", stretch.draft, near)
    washes = [at for level in (stretch, *stretch.pieces) for at in level.washed]
    recipes = [name for level in (stretch, *stretch.pieces) for name in level.finish]
    for name in dict.fromkeys([*recipes, *(at.finish for at in washes if at.finish)]):
        if name not in journal.finishes:
            near = nearest_name(name, journal.finishes)
            yield _missing(warp, stretch.line("finish") or warp.line("finish"), "finish", name, near)


def _missing(warp: Warp, line: int, kind: str, name: str, near: str | None) -> Problem:
    hint = f" Is it `{near}`?" if near else ""
    right = f"there is no {kind} of this name in the journal yet.{hint} All else works without it."
    return _ask(warp, line, kind, name, right, f"no-such-{kind}")


def _dates(warp: Warp) -> Iterator[Problem]:
    dated = [("started", warp.started), ("finished", warp.finished)]
    (_, began), (_, ended) = dated
    if began is not None and ended is not None and ended.last_day < began.first_day:
        yield _ask(
            warp,
            warp.line("finished"),
            "finished",
            ended.text,
            f"it was finished before it was started ({began.text}). Are the two dates right?",
            "dates-out-of-order",
        )
    for level in (warp, *warp.stretches, *(piece for stretch in warp.woven() for piece in stretch.pieces)):
        latest = None
        for state in (level.on_loom, level.off_loom, level.hemmed, *level.washed):
            if state is None or state.on is None:
                continue
            if latest is not None and state.on.last_day < latest.first_day:
                right = f"this size was taken before the state before it ({latest.text}). Are the two dates right?"
                yield _ask(warp, state.line("on"), "on", state.on.text, right, "dates-out-of-order")
            latest = state.on


def _loom(journal: Journal, warp: Warp) -> Iterator[Problem]:
    loom = journal.looms.get(warp.loom or "")
    if loom is None:
        return
    for stretch in warp.woven():
        reed = stretch.in_reed or warp.in_reed
        if loom.width is not None and reed is not None and reed.length is not None and reed.length.mm > loom.width.mm:
            right = f"this is wider than {loom.heading} weaves ({loom.width.text}). Is it the right loom?"
            yield _ask(warp, stretch.line("in_reed") or warp.line("in_reed"), "in_reed", reed.text, right, "wider-than-loom")
        draft = journal.drafts.get(stretch.draft) if isinstance(stretch.draft, str) else stretch.draft
        shafts = draft.highest_shaft if draft is not None else 0
        if loom.shafts is not None and shafts > loom.shafts.number:
            right = f"this draft takes {shafts} shafts, and {loom.heading} has {loom.shafts.number}. Is it the right loom?"
            read = stretch.draft if isinstance(stretch.draft, str) else "its own draft"
            yield _ask(warp, stretch.line("draft"), "draft", read, right, "more-shafts-than-loom")


def _account(ledger: Ledger) -> Iterator[Problem]:
    account, warp = ledger.account, ledger.warp
    if account is None:
        return
    unit, mark = ("in", ledger.tape.inches_mm) if _wound_unit(warp) in ("in", "ft", "yd") else ("cm", ledger.tape.metric_mm)
    wound = show_length(account.wound_mm, unit, mark)
    line = warp.line("where_it_went", "warp")
    if account.remainder_mm < 0:
        over = show_length(-account.remainder_mm, unit, mark)
        right = f"cloth and losses come to {over} more than the {wound} that was wound. Is a line wrong, or was more wound?"
        yield _ask(warp, line, "where_it_went", wound, right, "warp-does-not-add-up")
    elif account.take_up is not None and account.take_up.basis == "at most" and account.take_up.loss > LEAST_TAKEN:
        left = show_length(account.remainder_mm, unit, mark)
        right = f"{left} of the {wound} wound is in no line, which is more than take-up explains. Is a line missing?"
        yield _ask(warp, line, "where_it_went", wound, right, "warp-does-not-add-up")


def _wound_unit(warp: Warp) -> str:
    return next((each.wound.unit for each in warp.warp if each.wound is not None), "in")


def _piece(ledger: Ledger, piece: PieceLedger) -> Iterator[Problem]:
    warp, laid = ledger.warp, piece.laid
    accepted = {slug for level in laid.levels for slug in level.accepted}
    asked = [*_widths(ledger, piece), *_growth(ledger, piece), *_weight(warp, piece)]
    yield from (problem for problem in asked if problem.slug not in accepted)


def _field(piece: PieceLedger, key: str) -> str:
    return f"{piece.name}: {key}" if piece.name else key


def _widths(ledger: Ledger, piece: PieceLedger) -> Iterator[Problem]:
    chain = chain_of(piece.laid, "width", ledger.tape)
    reed = next((each for each in chain if each.state == IN_REED), None)
    wider = [each for each in chain if each.yardstick == "cloth" and reed is not None and each.mm > reed.mm + each.u_mm]
    if reed is None or not wider:
        return
    last = wider[-1]
    right = (
        f"{last.state.name} it is {_shown(last)} wide, which is wider than the {_shown(reed)} it stood in the reed."
        " Are width and length the right way round, and is the unit right?"
    )
    yield _ask(
        ledger.warp, _line_of(piece, last), _field(piece, last.state.key), _shown(last), right, "washed-wider-than-reed"
    )


def _growth(ledger: Ledger, piece: PieceLedger) -> Iterator[Problem]:
    for direction in ("width", "length"):
        chain = [each for each in chain_of(piece.laid, direction, ledger.tape) if each.state != MADE_UP]
        for before, after in zip(chain, chain[1:], strict=False):
            if before.yardstick != after.yardstick or before.state == IN_REED:
                continue
            if after.mm - before.mm > (before.u_mm**2 + after.u_mm**2) ** 0.5:
                right = (
                    f"the {direction} grew from {_shown(before)} {before.state.name} to {_shown(after)} {after.state.name}."
                    " Did it stretch, or was it read wrong?"
                )
                yield _ask(ledger.warp, _line_of(piece, after), _field(piece, after.state.key), _shown(after), right, "grew")


def _shown(measure: Measure) -> str:
    return show_length(measure.mm, measure.unit, measure.mark_mm)


def _line_of(piece: PieceLedger, measure: Measure) -> int:
    key = measure.state.key
    for level in (piece.laid.sizes, *piece.laid.levels):
        if line := level.line(key, key.split(" ")[0]):
            return line
    return 0


def _weight(warp: Warp, piece: PieceLedger) -> Iterator[Problem]:
    mass = piece.mass
    if mass is None or not mass.far or mass.weighed is None:
        return
    reckoned = mass.washed if mass.weighed_state in ("washed", "made_up") else mass.bought
    off = per_cent(mass.weighed / reckoned - 1, 0)
    right = (
        f"from its threads this piece should weigh about {show_weight(reckoned, 'g')}; the scale is {off} off that."
        " Is a count, a size or the yarn number wrong?"
    )
    line = next((line for level in piece.laid.levels if (line := level.line("weight"))), 0)
    yield _ask(warp, line, _field(piece, "weight"), show_weight(mass.weighed, "g"), right, "weight-far-from-reckoned")
