"""The journal with nothing private in it, made before any page exists.

What may be shared is an allow-list: the fields whose words say `public`. Everything else is left
behind, and so are names that are free text (of pieces, stretches, bands, yarns in one warp): they
become "piece 1", "band 2". A yarn, draft, loom or finish comes along only if a shared warp uses it.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterable, Mapping
from typing import Any, TypeVar, cast

from journal_tools.quantities import CountOf
from journal_tools.records.cloth import Weft
from journal_tools.records.learn import Learn, names
from journal_tools.records.journal import Journal
from journal_tools.records.model import Model, words_of
from journal_tools.records.notated import ColourOrder
from journal_tools.records.record import Record
from journal_tools.records.warp import Piece, Stretch, Warp, YarnUse
from journal_tools.records.yarns_used import all_yarns, yarn_in_use

M = TypeVar("M", bound=Model)


def public(journal: Journal) -> Journal:
    """The journal that anybody may see: shared warps and what they use, allowed fields only."""
    warps = {
        name: _public_warp(journal, warp) for name, warp in journal.warps.items() if warp.share is True
    }
    shared = Journal(journal.folder, _allowed(journal.settings), warps)
    shared = dataclasses.replace(
        shared, settings=dataclasses.replace(shared.settings, notes=journal.settings.notes)
    )
    used = [journal.warps[name] for name in warps]
    return dataclasses.replace(
        shared,
        yarns=_used(journal.yarns, (yarn.name for warp in used for yarn in all_yarns(journal, warp))),
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
    own = {"name": model.name, "file": model.file} if isinstance(model, Record) else {}
    extra = {"counted": getattr(model, "counted")} if hasattr(model, "counted") else {}
    wash = {"wash": getattr(model, "wash")} if hasattr(model, "wash") else {}
    keys = {key: line for key, line in model.lines.items() if key.split(" ")[0] in ("hemmed", "washed")}
    return type(model)(**kept, **own, **extra, **wash, lines=keys)


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


def _used(records: Mapping[str, M], names: Iterable[str]) -> dict[str, M]:
    wanted = set(names)
    return {name: _allowed(record) for name, record in records.items() if name in wanted}


def _drafts(warp: Warp) -> list[str]:
    return [each.draft for each in (warp, *warp.stretches) if isinstance(each.draft, str)]


def _finishes(warp: Warp) -> list[str]:
    levels = [warp, *warp.stretches, *(piece for stretch in warp.woven() for piece in stretch.pieces)]
    washes = [at.finish for level in levels for at in level.washed if at.finish]
    return [name for level in levels for name in level.finish] + washes


def _public_warp(journal: Journal, warp: Warp) -> Warp:
    shared = _allowed(warp)
    rename = {alias: _plain_name(journal, warp, alias) for alias in warp.yarns or {}}
    stretches = tuple(
        _public_stretch(each, kept, f"stretch {number}", warp.learn)
        for number, (each, kept) in enumerate(zip(warp.stretches, shared.stretches, strict=True), start=1)
    )
    own = _public_stretch(warp, shared, "", ())
    photos = {name: caption for name, caption in (warp.photos or {}).items() if name in warp.photos_for_everyone}
    return dataclasses.replace(
        shared,
        stretches=tuple(_renamed(each, rename) for each in stretches),
        pieces=own.pieces,
        across=own.across,
        learn=own.learn,
        weft=_renamed_wefts(shared.weft, rename),
        opens="yes" if warp.opens else None,
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
        photos=photos or None,
    )


def _plain_name(journal: Journal, warp: Warp, alias: str) -> str:
    yarn = yarn_in_use(journal, warp, alias)
    return f"{yarn.name} {yarn.colour}".strip()


def _renamed(stretch: Stretch, rename: Mapping[str, str]) -> Stretch:
    pieces = tuple(
        dataclasses.replace(piece, weft=_renamed_wefts(piece.weft, rename)) for piece in stretch.pieces
    )
    return dataclasses.replace(stretch, pieces=pieces, weft=_renamed_wefts(stretch.weft, rename))


def _renamed_wefts(wefts: tuple[Weft, ...], rename: Mapping[str, str]) -> tuple[Weft, ...]:
    return tuple(
        dataclasses.replace(
            weft, yarn=rename.get(weft.yarn or "", weft.yarn), order=_renamed_order(weft.order, rename)
        )
        for weft in wefts
    )


def _renamed_order(order: ColourOrder | None, rename: Mapping[str, str]) -> ColourOrder | None:
    return ColourOrder("", tuple(rename.get(item, item) for item in order.items)) if order else None


def _public_stretch(typed: Stretch, kept: Stretch, name: str, above: tuple[Learn, ...]) -> Stretch:
    """A stretch with its names made plain, and what may not be learned kept without its reason."""
    bands = {band: f"band {number}" for number, band in enumerate(typed.across or {}, start=1)}
    mine = tuple(rule for rule in (*typed.learn, *above) if rule.source in (None, typed.name))
    named = tuple(rule for rule in (*typed.learn, *above) if rule.source not in (None, typed.name))
    pieces = tuple(
        _public_piece(piece, shared, number, bands, named)
        for number, (piece, shared) in enumerate(zip(typed.pieces, kept.pieces, strict=True), start=1)
    )
    return dataclasses.replace(
        kept,
        name=name if not isinstance(kept, Warp) else kept.name,
        pieces=pieces,
        across={bands[band]: value for band, value in (kept.across or {}).items()} or None,
        learn=_without_reasons(mine),
    )


def _public_piece(
    typed: Piece, kept: Piece, number: int, bands: Mapping[str, str], rules: tuple[Learn, ...]
) -> Piece:
    name = typed.name or ""
    own = tuple(rule for rule in rules if rule.source in (name, name.split(" ")[0]))
    across = {bands.get(band, band): sizes for band, sizes in (kept.across or {}).items()}
    for order, band in enumerate(kept.across or {}, start=1):
        if band not in bands:
            across[f"band {order}"] = across.pop(band)
    return dataclasses.replace(
        kept,
        name=f"piece {number}",
        count=CountOf(typed.number, False, str(typed.number)),
        across=across or None,
        learn=_without_reasons((*typed.learn, *own)),
    )


def _without_reasons(rules: Iterable[Learn]) -> tuple[Learn, ...]:
    return tuple(dataclasses.replace(rule, source=None, reason="") for rule in rules)
