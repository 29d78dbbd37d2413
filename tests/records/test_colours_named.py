"""What a colour's name looks like in a journal."""

from __future__ import annotations

from pathlib import Path

from journal_tools.records.colours_named import hexes_named
from tests.ledger.desk import write


def test_a_name_that_two_yarns_have(tmp_path: Path) -> None:
    """Of two yarns with a colour of one name that of the yarn in most warps is taken; a name of one yarn is its own."""
    journal = write(
        tmp_path / "journal",
        yarns__a="title: A\nnumber: 8/2\nfibre: cotton\ncolours:\n  bone: aaaaaa\n  rust: b05030",
        yarns__b="title: B\nnumber: 8/2\nfibre: cotton\ncolours:\n  bone: efe8d8",
        warps__cloth="title: Cloth\nwarp: b bone\nweft: b bone",
    )

    assert {"bone": "efe8d8", "rust": "b05030"} == hexes_named(journal)
