"""What the journal asks about: figures that can be read but hardly all be so.

A question is worded as one, never stops a build, and is asked until the weaver accepts it by
writing its slug under `accepted:` in the warp, the stretch or the piece.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Iterable, Iterator, Mapping

from journal_tools.ledger.agreement import of_piece, of_stretch
from journal_tools.ledger.chain import Measure
from journal_tools.ledger.doubts import GREW, LOST, WIDER, Doubt
from journal_tools.ledger.ends import floating_ends, miscounted
from journal_tools.ledger.laid import Laid
from journal_tools.ledger.ledger import Ledger, PieceLedger
from journal_tools.ledger.uncertainty import tape_unit
from journal_tools.ledger.words import per_cent
from journal_tools.problems import Problem, Severity, nearest
from journal_tools.quantities import show_length, show_weight
from journal_tools.records.cloth import Cloth
from journal_tools.records.journal import Journal, nearest_name
from journal_tools.records.learn import names
from journal_tools.records.warp import Stretch, Warp
from journal_tools.records.yarns_used import labelled_yarns, yarn_in_use

MOST_TAKEN = 0.30
"""A take-up "at most" beyond this leaves warp unaccounted for: rep takes 10 to 25 % (common practice, no source)."""

MOST_ASTRAY = 0.10
"""Share of the warp that may be in no line where marks tell the take-up (judgement)."""

BOARD = 0.02
"""How far a warp may be from what the board said: 1 to 2 % (common practice, no source)."""


def questions(journal: Journal, ledger: Ledger) -> tuple[Problem, ...]:
    """Every question about one warp that has not been accepted."""
    warp = ledger.warp
    asked = [
        *_yarns(journal, warp),
        *_dates(warp),
        *_ends(journal, warp),
        *_account(ledger),
        *(problem for stretch in warp.woven() for problem in _stretch(journal, warp, stretch)),
        *(problem for piece in ledger.pieces for problem in _piece(ledger, piece)),
    ]
    if warp.loom and warp.loom not in journal.looms:
        asked.append(_missing(warp, warp.line("loom"), "loom", warp.loom, journal.looms))
    return tuple(dict.fromkeys(_unaccepted(asked, warp)))


def _unaccepted(asked: Iterable[Problem], *levels: Cloth) -> Iterator[Problem]:
    accepted = {slug for level in levels for slug in level.accepted}
    return (problem for problem in asked if problem.slug not in accepted)


def _ask(warp: Warp, line: int, field: str, read: str, right: str, slug: str) -> Problem:
    said = f"{right} If it is so, write `accepted: {slug.replace('-', ' ')}`."
    return Problem(warp.file, line, field, read, said, Severity.QUESTION, slug)


def _missing(warp: Warp, line: int, kind: str, name: str, known: Mapping[str, object]) -> Problem:
    near = nearest_name(name, known)
    is_it = f"Is it `{near}`" if near else "Is it spelt otherwise"
    right = (
        f"the journal has no {kind} of this name. {is_it}, or is its record still to come? All else works without it."
    )
    return _ask(warp, line, kind, name, right, f"no-such-{kind}")


def _yarns(journal: Journal, warp: Warp) -> Iterator[Problem]:
    seen = set()
    for typed, colour, line, field in _typed_yarns(warp):
        yarn = yarn_in_use(journal, warp, typed, colour)
        if (yarn.name, yarn.colour) in seen:
            continue
        seen.add((yarn.name, yarn.colour))
        if yarn.record is None and (labelled := labelled_yarns(journal, yarn.said)):
            names = ", ".join(each.name for each in labelled)
            right = f"several yarns here have this label: {names}. Which is it? Write its name;"
            right += " or leave it open with `accepted: which yarn`."
            yield Problem(warp.file, line, field, yarn.said, right, Severity.QUESTION, "which-yarn")
        elif yarn.record is None:
            missing = _missing(warp, line, "yarn", yarn.name, journal.yarns)
            yield dataclasses.replace(missing, field=field, read=yarn.said)
        elif yarn.colour and yarn.colour not in (yarn.record.colours or {}):
            near = nearest_name(yarn.colour, yarn.record.colours or {})
            is_it = f"Is it {near}" if near else "Is it called otherwise"
            right = f"the record of {yarn.record.heading} has no colour of this name. {is_it}, or is it a new one?"
            yield _ask(warp, line, field, f"{yarn.name} {yarn.colour}", right, "no-such-colour")


def _typed_yarns(warp: Warp) -> Iterator[tuple[str, str | None, int, str]]:
    """Every yarn as it is typed in a warp, with a colour that stands beside it, the line and the field."""
    if warp.yarn:
        yield warp.yarn, None, warp.line("yarn"), "yarn"
    for alias, use in (warp.yarns or {}).items():
        yield alias, None, use.line("yarn") or warp.line("yarns"), f"yarns: {alias}"
    for wound in warp.warp:
        if wound.yarn:
            yield wound.yarn, None, wound.line("yarn"), "warp: yarn"
        for typed in dict.fromkeys(wound.order.items if wound.order else ()):
            yield typed, None, wound.line("order"), "warp: order"
        if wound.floating_selvedges:
            yield wound.floating_selvedges, None, wound.line("floating_selvedges"), "warp: floating_selvedges"
    levels = [each for stretch in warp.woven() for each in (stretch, *stretch.pieces)]
    for weft in [weft for level in (warp, *levels) for weft in level.weft]:
        if weft.yarn:
            yield weft.yarn, weft.colour, weft.line("yarn"), "weft"
        for typed in dict.fromkeys(weft.order.items if weft.order else ()):
            yield typed, weft.colour, weft.line("order"), "weft: order"


def _stretch(journal: Journal, warp: Warp, stretch: Stretch) -> Iterator[Problem]:
    own: tuple[Stretch, ...] = (warp,) if stretch is warp else (stretch, warp)
    asked = [*_loom(journal, warp, own), *_names(journal, warp, own), *_kept_out(warp, own)]
    for each in of_stretch(warp, stretch, floating_ends(journal, warp, stretch)):
        line = next((line for level in own if (line := level.line(each.key))), warp.line("warp"))
        asked.append(_ask(warp, line, each.key, each.read, each.right, each.slug))
    yield from _unaccepted(asked, stretch)


def _names(journal: Journal, warp: Warp, own: tuple[Stretch, ...]) -> Iterator[Problem]:
    for stretch in own:
        if isinstance(stretch.draft, str) and stretch.draft not in journal.drafts:
            yield _missing(warp, stretch.line("draft"), "draft", stretch.draft, journal.drafts)
    levels: list[Cloth] = [*own, *own[0].pieces]
    named = [(name, level.line("finish")) for level in levels for name in level.finish if name]
    named += [(at.finish, at.line("finish")) for level in levels for at in level.washed if at.finish]
    for name, line in named:
        if name not in journal.finishes:
            yield _missing(warp, line, "finish", name, journal.finishes)


def _kept_out(warp: Warp, own: tuple[Stretch, ...]) -> Iterator[Problem]:
    """Whether every name that `learn:` speaks of is the name of something in this warp."""
    stretches = warp.woven()
    called = {name for stretch in stretches for name in (stretch.name, *(piece.name for piece in stretch.pieces))}
    called |= {band for stretch in (warp, *stretches) for band in stretch.across or {}}
    called |= {band for stretch in stretches for piece in stretch.pieces for band in piece.across or {}}
    known = [name for name in called if name]
    for level in (*own, *own[0].pieces):
        for rule in level.learn:
            if rule.source and not any(names(rule.source, name) for name in known):
                near = nearest(rule.source, known)
                is_it = f" Is it `{near}`?" if near else " Which is meant?"
                right = f"no stretch, piece or band of this warp has this name, so nothing is kept out.{is_it}"
                yield _ask(warp, level.line("learn"), "learn", rule.source, right, "no-such-piece")


def _dates(warp: Warp) -> Iterator[Problem]:
    began, ended = warp.started, warp.finished
    if began is not None and ended is not None and ended.last_day < began.first_day:
        right = f"it was finished before it was started ({began.text}). Are the two dates right?"
        yield _ask(warp, warp.line("finished"), "finished", ended.text, right, "dates-out-of-order")
        began = None
    levels = {id(each): each for stretch in warp.woven() for each in (warp, stretch, *stretch.pieces)}
    for level in levels.values():
        latest, what = began, "the warp was started"
        for state in (level.on_loom, level.off_loom, level.hemmed, *level.washed):
            if state is None or state.on is None:
                continue
            if latest is not None and state.on.last_day < latest.first_day:
                right = f"this size is dated before {what} ({latest.text}). Are the two dates right?"
                problem = _ask(warp, state.line("on"), "on", state.on.text, right, "dates-out-of-order")
                yield from _unaccepted([problem], level)
            latest, what = state.on, "the size above it"


def _ends(journal: Journal, warp: Warp) -> Iterator[Problem]:
    """Whether the ends of the order are as many as the record says."""
    for each in miscounted(warp, floating_ends(journal, warp, warp.woven()[0])):
        right = f"{each.words}, and this says {each.said}. Is the order or the number another?"
        problem = _ask(warp, each.line, each.key, str(each.said), right, "ends-are-not-the-order")
        yield from _unaccepted([problem], *warp.stretches[:1])


def _loom(journal: Journal, warp: Warp, own: tuple[Stretch, ...]) -> Iterator[Problem]:
    loom = journal.looms.get(warp.loom or "")
    if loom is None:
        return
    stretch = next((each for each in own if each.in_reed is not None), None)
    mm = Laid(warp, own[0], "", 1, own, own[0]).reed_mm
    if (
        stretch is not None
        and stretch.in_reed
        and loom.width is not None
        and mm is not None
        and round(mm - float(loom.width.mm), 3) > 0
    ):
        right = f"this is wider than {loom.heading} weaves ({loom.width.text}). Is it the right loom?"
        yield _ask(warp, stretch.line("in_reed"), "in_reed", stretch.in_reed.text, right, "wider-than-loom")
    stretch = next((each for each in own if each.draft is not None), own[0])
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
    unit = tape_unit(next((each.wound.unit for each in warp.warp if each.wound is not None), "in"))
    mark = ledger.tape.inches_mm if unit == "in" else ledger.tape.metric_mm
    wound = show_length(account.wound_mm, unit, mark)
    line = warp.line("where_it_went", "warp")
    told = account.unaccounted_mm is not None and not account.unmeasured
    left = account.unaccounted_mm if told and account.unaccounted_mm is not None else account.remainder_mm
    at_most = account.take_up is not None and account.take_up.basis == "at most"
    if left < -BOARD * account.wound_mm:
        over = show_length(-left, unit, mark)
        right = (
            f"cloth and losses come to {over} more than the {wound} that was wound. Is a line wrong, or was more wound?"
        )
        yield _ask(warp, line, "where_it_went", wound, right, "warp-does-not-add-up")
    elif (told and left > MOST_ASTRAY * account.wound_mm) or (
        at_most and account.take_up is not None and account.take_up.loss > MOST_TAKEN
    ):
        shown = show_length(left, unit, mark)
        right = f"{shown} of the {wound} wound is in no line, which is more than take-up explains. Is a line missing?"
        yield _ask(warp, line, "where_it_went", wound, right, "warp-does-not-add-up")


def _piece(ledger: Ledger, piece: PieceLedger) -> Iterator[Problem]:
    warp, laid = ledger.warp, piece.laid
    asked = [*_sizes(ledger, piece), *_weight(warp, piece)]
    for each in of_piece(laid, ledger.tape):
        line = next((line for level in laid.levels if (line := level.line(each.key))), 0)
        asked.append(_ask(warp, line, _field(piece, each.key), each.read, each.right, each.slug))
    yield from _unaccepted(asked, *laid.levels)


def _field(piece: PieceLedger, key: str) -> str:
    return f"{piece.name}: {key}" if piece.name else key


def _sizes(ledger: Ledger, piece: PieceLedger) -> Iterator[Problem]:
    for direction, doubt in piece.doubts:
        size = doubt.size
        right = _ASKS[doubt.slug](direction, doubt)
        field = _field(piece, size.state.key)
        yield _ask(ledger.warp, _line_of(piece, size), field, _shown(size), right, doubt.slug)


def _wider(direction: str, doubt: Doubt) -> str:
    return (
        f"{doubt.size.state.name} it is {_shown(doubt.size)} wide, which is wider than the {_shown(doubt.against)}"
        " it stood in the reed. Are width and length the right way round, and is the unit right?"
    )


def _grew(direction: str, doubt: Doubt) -> str:
    before, after = doubt.against, doubt.size
    return (
        f"the {direction} grew from {_shown(before)} {before.state.name} to {_shown(after)} {after.state.name}."
        " Did it stretch, or was it read wrong?"
    )


def _lost(direction: str, doubt: Doubt) -> str:
    before, after = doubt.against, doubt.size
    lost = per_cent(1 - after.mm / before.mm, 0)
    other = "centimetres" if after.unit == "in" else "inches"
    mixed = 0.33 < after.mm / before.mm < 0.47  # an inch is 2.54 cm, and some of it was lost
    slip = f"Was one of them typed in {other}" if mixed else "Is a figure missing in one"
    return (
        f"the {direction} lost {lost} from {_shown(before)} {before.state.name} to {_shown(after)} {after.state.name},"
        f" more than cloth does. {slip}?"
    )


_ASKS: Mapping[str, Callable[[str, Doubt], str]] = {WIDER: _wider, GREW: _grew, LOST: _lost}


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
