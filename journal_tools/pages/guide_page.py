"""The field guide: every key of every kind, made from the models that read them."""

from __future__ import annotations

from collections.abc import Iterator

from journal_tools.notation import NOTATION
from journal_tools.pages.guide_records import as_markdown
from journal_tools.pages.view_parts import Cell, Column, Table
from journal_tools.pages.views import ThingView
from journal_tools.records import KINDS, Piece, Planned, Settings, Stretch, Warp
from journal_tools.records.cloth import Cloth, SizeAt, Weft
from journal_tools.records.draft_parts import AccentEnd, Block
from journal_tools.records.hem import Fringe, Hem
from journal_tools.records.model import Model, words_of
from journal_tools.records.warp import Band, BandSizes, WarpYarn, YarnUse

PARTS: tuple[tuple[str, type[Model], type[Model] | None], ...] = (
    ("The journal's settings, in journal.md", Settings, None),
    ("A warp, in warps/", Warp, Stretch),
    ("A stretch of a warp, and a warp that is one stretch", Stretch, Cloth),
    ("A piece", Piece, Cloth),
    ("Cloth: what a warp, a stretch or a piece may say", Cloth, None),
    ("A size at one state, when more than the size is said", SizeAt, None),
    ("A plan", Planned, None),
    ("A warp as wound, under warp:", WarpYarn, None),
    ("A weft, under weft:", Weft, None),
    ("A yarn in this warp, under yarns:", YarnUse, None),
    ("A hem", Hem, None),
    ("A fringe", Fringe, None),
    ("A band, under across:", Band, None),
    ("What a band of a piece measured", BandSizes, None),
    ("A yarn, in yarns/", KINDS["yarns"], None),
    ("A draft, in drafts/, or under draft:", KINDS["drafts"], None),
    ("A block of a draft, under blocks:", Block, None),
    ("An accent end of a draft, under accents:", AccentEnd, None),
    ("A loom, in looms/", KINDS["looms"], None),
    ("A finish, in finishes/", KINDS["finishes"], None),
)
"""Title, kind, and the kind whose keys it has as well and that have a table of their own."""

NOTES = f"{as_markdown()}\n## Drafts and colour orders\n\n{NOTATION}"
"""What stands above the tables, as Markdown."""

ABOUT = "Everything but a title is optional. One value stands on a line; a size is always width × length."


def guide_view() -> ThingView:
    """The field guide."""
    said = (
        "A bare number has the journal's unit. 18 1/4 in, 46.5 cm, 3 yd 12 in, 24/in, 9.5/cm, 152 g and"
        " ~18 (about) are all understood. A comma is asked about where it could mean two things.",
        "What is marked as shared is all that the shared journal can show, and only of warps that say share: yes.",
        "The notes of a record, below its second line of three hyphens, are Markdown and are never shared;"
        " the notes of journal.md are the words on the front page, and are.",
    )
    return ThingView("Field guide", ABOUT, said=said, tables=tuple(_tables()))


def _tables() -> Iterator[Table]:
    columns = (Column("key"), Column("what it is"), Column("for example"), Column("shared"))
    for title, model, shown_elsewhere in PARTS:
        elsewhere = set(words_of(shown_elsewhere)) if shown_elsewhere else set()
        rows = tuple(
            (Cell(key), Cell(words.meaning), Cell(typed(key, words.example)), Cell("yes" if words.public else ""))
            for key, (_, words) in words_of(model).items()
            if key not in elsewhere
        )
        yield Table(title, columns, rows, prose=True)


def typed(key: str, example: str) -> str:
    """An example as it is typed: what stands below its key with the key, in lines; else the value alone."""
    return f"{key}:{example}" if example.startswith("\n") else example
