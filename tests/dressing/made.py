"""Made warps to dress a loom with, and a desk to write them on."""

from __future__ import annotations

from pathlib import Path

from journal_tools.dressing import Dressing, dressing_of
from tests.ledger.desk import write

LOOM = "title: The loom\nshafts: 4\ntreadles: 4\nheddles: 60\nreeds: [10/in, 12/in]\n"
NAPKINS = """\
title: Napkins
loom: loom
yarns: {bone: linen-20-2 bone, slate: linen-20-2 slate}
warp:
  order: 8 bone, 6 times (4 slate, 12 bone), 4 slate, 8 bone
  wound: 3 yd
  floating_selvedges: bone
reed: 12/in
sley: 1-2
in_reed: 6 1/4
draft: point
"""
"""8 + 6 x 16 + 4 + 8 = 116 ends."""
POINT = "threading: 1-4, 3-2\ntie_up: 1+2, 2+3, 3+4, 4+1\ntreadling: 1-4, 3-2\nshed: sinking\n"


def dressed(folder: Path, warp: str, loom: str = LOOM, draft: str = POINT) -> Dressing:
    """How a made warp is dressed."""
    yarn = "title: Linen 20/2\ncolours: {bone: ebe3d0, slate: 4a5a68}\n"
    journal = write(folder, looms__loom=loom, drafts__point=draft, yarns__linen_20_2=yarn, warps__made=warp)
    assert [] == [problem.sentence() for problem in journal.problems if problem.is_fault]
    return dressing_of(journal, journal.warps["made"])
