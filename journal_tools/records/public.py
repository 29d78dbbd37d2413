"""The journal with nothing private in it, made before any page exists.

What may be shared is an allow-list: the fields whose words say `public`. Everything else is left
behind, and so are names that are free text (of pieces, stretches, bands, yarns in one warp): they
become "piece 1", "pieces 2-4", "band 2". A yarn, draft, loom or finish comes along only if a shared warp uses it.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterable, Iterator, Mapping
from typing import Any, TypeVar, cast

from journal_tools.quantities import CountOf
from journal_tools.records.cloth import SizeAt, Weft
from journal_tools.records.journal import Journal
from journal_tools.records.learn import Learn, names
from journal_tools.records.model import Model, words_of
from journal_tools.records.notated import ColourOrder
from journal_tools.records.record import Record
from journal_tools.records.warp import Piece, Stretch, Warp, YarnUse
from journal_tools.records.yarn import Yarn
from journal_tools.records.yarns_used import all_yarns, yarn_in_use

SIZE_QUESTIONS = ("washed-wider-than-reed", "grew", "lost-too-much")
"""What may have been accepted of a size: without it, the size would count for nothing here and not at home."""

M = TypeVar("M", bound=Model)
S = TypeVar("S", bound=Stretch)
T = TypeVar("T")
V = TypeVar("V")


def public(journal: Journal) -> Journal:
    """The journal that anybody may see: shared warps and what they use, allowed fields only."""
    warps = {name: _public_warp(journal, warp) for name, warp in journal.warps.items() if warp.share is True}
    shared = Journal(journal.folder, _allowed(journal.settings), warps)
    shared = dataclasses.replace(shared, settings=dataclasses.replace(shared.settings, notes=journal.settings.notes))
    used = [journal.warps[name] for name in warps]
    return dataclasses.replace(
        shared,
        yarns=_shared_yarns(journal, used),
        drafts=_used(journal.drafts, (name for warp in used for name in _drafts(warp))),
        looms=_used(journal.looms, (warp.loom or "" for warp in used)),
        finishes=_used(journal.finishes, (name for warp in used for name in _finishes(warp))),
    )


def _allowed(model: M) -> M:
    """A copy with the allowed fields alone, in depth."""
    kept = {
        attribute: _allowed_value(getattr(model, attribute))
        for attribute, words in words_of(type(model)).values()
        if words.public
    }
    if isinstance(model, Record):
        captions = {name: said for name, said in (model.photos or {}).items() if name in model.photos_for_everyone}
        kept |= {"name": model.name, "file": model.file, "photos": captions or None}
    if isinstance(model, Yarn):
        kept["counted"] = model.counted
    if isinstance(model, SizeAt):
        kept["wash"] = model.wash
    order = {key: line for key, line in model.lines.items() if key.split(" ")[0] in ("hemmed", "washed")}
    return type(model)(**kept, lines=order)


def _allowed_value(value: Any) -> Any:
    if isinstance(value, Model):
        return _allowed(value)
    if isinstance(value, tuple):
        return tuple(_allowed_value(each) for each in value)
    if isinstance(value, Mapping):
        return {key: _allowed_value(each) for key, each in value.items()}
    if isinstance(value, ColourOrder):
        return ColourOrder("", value.items)
    if dataclasses.is_dataclass(value) and not isinstance(value, type) and hasattr(value, "at"):
        return dataclasses.replace(cast(Any, value), at=_allowed(cast(Any, value).at), words="")
    return value


def _used(records: Mapping[str, M], wanted_names: Iterable[str]) -> dict[str, M]:
    wanted = set(wanted_names)
    return {name: _allowed(record) for name, record in records.items() if name in wanted}


def _shared_yarns(journal: Journal, warps: Iterable[Warp]) -> dict[str, Yarn]:
    """The yarns of shared warps, each with the colours that those warps used: the rest is the stock."""
    colours: dict[str, set[str]] = {}
    for warp in warps:
        for yarn in all_yarns(journal, warp):
            if yarn.record is not None:
                first = next(iter(yarn.record.colours or {}), "")  # what is drawn where no colour was said
                colours.setdefault(yarn.name, set()).add(yarn.colour or first)
    return {
        name: dataclasses.replace(
            yarn,
            colours={colour: hex_ for colour, hex_ in (yarn.colours or {}).items() if colour in colours[name]} or None,
        )
        for name, yarn in _used(journal.yarns, colours).items()
    }


def _with_records(journal: Journal, value: V) -> V:
    """A warp, in depth, without the names of finishes and drafts that have no record: those are free text."""
    if isinstance(value, tuple):
        return cast(V, tuple(_with_records(journal, each) for each in value))
    if isinstance(value, Mapping):
        return cast(V, {key: _with_records(journal, each) for key, each in value.items()})
    if not isinstance(value, Model):
        return value
    told = {attribute: getattr(value, attribute) for attribute, words in words_of(type(value)).values() if words.public}
    kept = {attribute: _with_records(journal, each) for attribute, each in told.items()}
    if isinstance(kept.get("finish"), tuple):
        # Empty, not gone: the second recipe is the second wash's.
        kept["finish"] = tuple(name if name in journal.finishes else "" for name in kept["finish"])
    elif "finish" in kept and kept["finish"] not in journal.finishes:
        kept["finish"] = None
    if isinstance(kept.get("draft"), str) and kept["draft"] not in journal.drafts:
        kept["draft"] = None
    return dataclasses.replace(value, **kept)


def _drafts(warp: Warp) -> list[str]:
    return [each.draft for each in (warp, *warp.stretches) if isinstance(each.draft, str)]


def _finishes(warp: Warp) -> list[str]:
    levels = [warp, *warp.stretches, *(piece for stretch in warp.woven() for piece in stretch.pieces)]
    washes = [at.finish for level in levels for at in level.washed if at.finish]
    return [name for level in levels for name in level.finish] + washes


def _public_warp(journal: Journal, warp: Warp) -> Warp:
    shared = _with_records(journal, _allowed(warp))
    rename = {alias: _plain_name(journal, warp, alias) for alias in warp.yarns or {}}
    bands = {band: f"band {number}" for number, band in enumerate(_bands(warp), start=1)}
    above = tuple(rule for rule in warp.learn if rule.source is not None)
    stretches = tuple(
        dataclasses.replace(_public_stretch(typed, kept, bands, above), name=f"stretch {number}")
        for number, (typed, kept) in enumerate(zip(warp.stretches, shared.stretches, strict=True), start=1)
    )
    own = _public_stretch(warp, shared, bands, ())
    learned = tuple(rule for rule in warp.learn if rule.source is None)
    return dataclasses.replace(
        own,
        stretches=tuple(_renamed(each, rename) for each in stretches),
        pieces=_renamed(own, rename).pieces,
        learn=_without_reasons(learned) if stretches else own.learn,
        weft=_renamed_wefts(shared.weft, rename),
        opens="yes" if warp.opens else None,
        loom=warp.loom if warp.loom in journal.looms else None,
        yarn=rename.get(warp.yarn or "", warp.yarn),
        yarns={name: YarnUse(yarn=name) for name in rename.values()} or None,
        warp=tuple(
            dataclasses.replace(
                wound,
                yarn=rename.get(wound.yarn or "", wound.yarn),
                order=_renamed_order(wound.order, rename),
                floating_selvedges=rename.get(wound.floating_selvedges or "", wound.floating_selvedges),
            )
            for wound in shared.warp
        ),
    )


def _bands(warp: Warp) -> list[str]:
    """Every band's name in a warp, once."""
    stretches = (warp, *warp.stretches)
    named = [band for stretch in stretches for band in stretch.across or {}]
    named += [band for stretch in stretches for piece in stretch.pieces for band in piece.across or {}]
    return list(dict.fromkeys(named))


def _plain_name(journal: Journal, warp: Warp, alias: str) -> str:
    yarn = yarn_in_use(journal, warp, alias)
    return f"{yarn.name} {yarn.colour}".strip()


def _renamed(stretch: S, rename: Mapping[str, str]) -> S:
    pieces = tuple(dataclasses.replace(piece, weft=_renamed_wefts(piece.weft, rename)) for piece in stretch.pieces)
    return dataclasses.replace(stretch, pieces=pieces, weft=_renamed_wefts(stretch.weft, rename))


def _renamed_wefts(wefts: tuple[Weft, ...], rename: Mapping[str, str]) -> tuple[Weft, ...]:
    return tuple(
        dataclasses.replace(weft, yarn=rename.get(weft.yarn or "", weft.yarn), order=_renamed_order(weft.order, rename))
        for weft in wefts
    )


def _renamed_order(order: ColourOrder | None, rename: Mapping[str, str]) -> ColourOrder | None:
    return ColourOrder("", tuple(rename.get(item, item) for item in order.items)) if order else None


def _public_stretch(typed: S, kept: S, bands: Mapping[str, str], above: tuple[Learn, ...]) -> S:
    """A stretch with its names made plain, and what may not be learned kept without its reason.

    above: the warp's rules about something by name, which become rules of the stretch that has it.
    """
    plain = _plain_names(typed.pieces)
    pieces = tuple(
        dataclasses.replace(
            shared,
            name=name,
            count=CountOf(piece.number, False, str(piece.number)),
            across=_renamed_bands(shared.across, bands),
            learn=tuple(_renamed_rules(piece.learn, (typed.name, piece.name), {}, bands)),
        )
        for name, piece, shared in zip(plain, typed.pieces, kept.pieces, strict=True)
    )
    called = {name: piece.name or name for name, piece in zip(plain, typed.pieces, strict=True)}
    return dataclasses.replace(
        kept,
        pieces=pieces,
        across=_renamed_bands(kept.across, bands),
        learn=tuple(_renamed_rules((*typed.learn, *above), (typed.name,), called, bands)),
        accepted=_of_sizes(typed.accepted),
    )


def _of_sizes(accepted: Iterable[str]) -> tuple[str, ...]:
    return tuple(slug for slug in accepted if slug in SIZE_QUESTIONS)


def _plain_names(pieces: Iterable[Piece]) -> list[str]:
    """`piece 1`, and `pieces 2-4` for three that measured alike: every piece has its number."""
    names, last = [], 0
    for piece in pieces:
        first, last = last + 1, last + piece.number
        names.append(f"piece {last}" if piece.number == 1 else f"pieces {first}-{last}")
    return names


def _renamed_bands(across: Mapping[str, T] | None, bands: Mapping[str, str]) -> dict[str, T] | None:
    return {bands[band]: value for band, value in across.items()} if across else None


def _renamed_rules(
    rules: Iterable[Learn], own: Iterable[str | None], pieces: Mapping[str, str], bands: Mapping[str, str]
) -> Iterator[Learn]:
    """The rules with plain names. own: names of where they stand. pieces: typed names by plain ones."""
    for rule in _without_reasons(rules):
        source = rule.source
        if source is None or any(name and names(source, name) for name in own):
            yield dataclasses.replace(rule, source=None)
            continue
        found = [plain for plain, name in pieces.items() if names(source, name)]
        found += [plain for name, plain in bands.items() if names(source, name)]
        yield from (dataclasses.replace(rule, source=plain) for plain in found)


def _without_reasons(rules: Iterable[Learn]) -> tuple[Learn, ...]:
    return tuple(dataclasses.replace(rule, reason="") for rule in rules)
