"""A desk to work at by hand: the journal of fixtures, small journals made on the spot, and the ± formulas.

± of a size (k = 2) is the larger of 2 d / √12, where d is the tape's mark, and a floor: 1/8 in (3 mm)
in width, 1/4 in in 30 in (6 mm in 75 cm) in length. A width in the reed is read off the reed, not off
cloth, so it has no floor; dents that were counted have no ± at all.
"""

from __future__ import annotations

import math
from functools import cache
from pathlib import Path

from journal_tools.ledger import Ledger, PieceLedger, Row, ledger_of
from journal_tools.records import Journal, read_journal

JOURNAL = Path(__file__).parent / "journal"

REED = 2 * (1 / 8) / math.sqrt(12)
"""± of a width in the reed, in inches, with a tape marked in eighths."""

WIDTH = 1 / 8
"""± of a width of cloth, in inches, with a tape marked in eighths: the floor, since 2 d / √12 is 0.07."""

LENGTH = (1 / 4) / 30
"""± of a length of cloth, as a share of it."""


def pm(ratio: float, *relative: float) -> float:
    """± of a loss: later/earlier x the root of the sum of the squared relative ± of the sizes."""
    return ratio * math.sqrt(sum(each**2 for each in relative))


@cache
def journal() -> Journal:
    """The journal of fixtures."""
    return read_journal(JOURNAL)


@cache
def ledger(name: str) -> Ledger:
    """The ledger of one warp of the fixtures."""
    return ledger_of(journal(), journal().warps[name])


def piece(name: str, called: str) -> PieceLedger:
    """One piece of a fixture."""
    return next(each for each in ledger(name).pieces if each.name == called)


def losses(rows: tuple[Row, ...]) -> dict[str, float]:
    """Every loss by its label: "width, reed to washed"."""
    return {row.label: row.loss for row in rows}


def plus_minus(rows: tuple[Row, ...]) -> dict[str, float]:
    """Every ± by its label."""
    return {row.label: row.uncertainty for row in rows}


def gaps(rows: tuple[Row, ...]) -> dict[str, list[str]]:
    """What nobody measured on the way, by the label of the loss that goes over it."""
    return {row.label: [state.name for state in row.between] for row in rows if row.between}


def write(folder: Path, **files: str) -> Journal:
    """A journal of these records, `warps__a_towel="…"` for warps/a-towel.md, each its front matter alone."""
    for key, header in files.items():
        path = folder / (key.replace("__", "/").replace("_", "-") + ".md")
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(f"---\n{header.strip()}\n---\n", encoding="utf-8")
    return read_journal(folder)


def woven(folder: Path, header: str, **files: str) -> Ledger:
    """The ledger of one warp in a journal that has little else, and no fault."""
    made = write(folder, warps__cloth=header, **files)
    assert () == tuple(problem.sentence() for problem in made.problems)
    return ledger_of(made, made.warps["cloth"])


def the_row(rows: tuple[Row, ...], label: str) -> Row:
    """The row of this label."""
    return next(row for row in rows if row.label == label)
