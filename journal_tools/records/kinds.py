"""The kinds of record, by the folder that they stand in, and the keys that a line of each may begin with."""

from __future__ import annotations

from collections.abc import Mapping

from journal_tools.records.cloth import SizeAt, Weft
from journal_tools.records.draft import Draft
from journal_tools.records.finish import Finish
from journal_tools.records.hem import Fringe, Hem
from journal_tools.records.loom import Loom
from journal_tools.records.model import FieldWords, Model, words_of
from journal_tools.records.record import Record
from journal_tools.records.settings import Settings
from journal_tools.records.warp import Band, BandSizes, Piece, Planned, Stretch, Warp, WarpYarn, YarnUse
from journal_tools.records.yarn import Yarn

KINDS: Mapping[str, type[Record]] = {
    "warps": Warp,
    "yarns": Yarn,
    "drafts": Draft,
    "looms": Loom,
    "finishes": Finish,
}
"""Folder of the journal, and the kind of record that stands in it."""

INSIDE_A_WARP: tuple[type[Model], ...] = (
    Stretch, Piece, Planned, WarpYarn, Weft, YarnUse, Band, BandSizes, SizeAt, Hem, Fringe, Draft,
)  # fmt: skip
"""What may stand below the keys of a warp."""


def keys_at(file: str, column: int) -> Mapping[str, FieldWords]:
    """The keys that may begin a line of this file in this column; below a key, those of every part.

    file: path inside the journal. A file that is no record of any kind has none.
    """
    kind: type[Model] | None = Settings if file == "journal.md" else KINDS.get(file.split("/")[0])
    if kind is None:
        return {}
    models: tuple[type[Model], ...] = INSIDE_A_WARP if column and kind is Warp else (kind,)
    return {key: words for model in models for key, (_, words) in words_of(model).items()}
