"""Old names of looms, drafts and finishes, as warps written long ago still say them, turned into the new."""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping
from typing import TypeVar

from journal_tools.records.cloth import Cloth
from journal_tools.records.record import Record
from journal_tools.records.warp import Stretch, Warp

C = TypeVar("C", bound=Cloth)
S = TypeVar("S", bound=Stretch)

Names = Mapping[str, str]


def old_names(records: Mapping[str, Record]) -> Names:
    """The name of today for every old name."""
    return {old: record.name for record in records.values() for old in record.was if old not in records}


def with_new_names(warp: Warp, looms: Names, drafts: Names, finishes: Names) -> Warp:
    """The warp with every loom, draft and finish by its name of today."""
    stretches = tuple(_stretch(each, drafts, finishes) for each in warp.stretches)
    loom = looms.get(warp.loom, warp.loom) if warp.loom else None
    return dataclasses.replace(_stretch(warp, drafts, finishes), stretches=stretches, loom=loom)


def _stretch(stretch: S, drafts: Names, finishes: Names) -> S:
    draft = drafts.get(stretch.draft, stretch.draft) if isinstance(stretch.draft, str) else stretch.draft
    pieces = tuple(_cloth(piece, finishes) for piece in stretch.pieces)
    return dataclasses.replace(_cloth(stretch, finishes), draft=draft, pieces=pieces)


def _cloth(cloth: C, finishes: Names) -> C:
    washed = tuple(
        dataclasses.replace(at, finish=finishes.get(at.finish, at.finish)) if at.finish else at for at in cloth.washed
    )
    return dataclasses.replace(cloth, finish=tuple(finishes.get(name, name) for name in cloth.finish), washed=washed)
