"""What a search finds a page by reads as words: names as a reader says them, and none of them twice."""

from __future__ import annotations

from pathlib import Path

from journal_tools.pages.site import make_site
from tests.ledger.desk import write

NAPKINS = """\
title: Napkins
tags: lace
started: 2024-04
loom: small-loom
yarn: linen-20-2 bone
stretches:
  - weave: huck lace
    draft: huck-squares
  - weave: huck lace
"""
YARN = "title: Linen 20/2\nfibre: linen\nnumber: 20/2 linen\ncolours:\n  bone: efe8d8"


def found_by(folder: Path, **more: str) -> dict[str, str]:
    """The words of every page, by its address."""
    journal = write(folder / "journal", warps__napkins=NAPKINS, yarns__linen_20_2=YARN, **more)
    site = make_site(journal, folder / "cache", folder / "panels.json")
    site.finish()
    return {page.address: page.search for page in site.pages}


def test_a_warp(tmp_path: Path) -> None:
    """A warp is found by its tags, weave, yarn and colour, draft, loom and month, parted by semicolons."""
    found = found_by(tmp_path, looms__small_loom="title: The small loom")

    assert "lace; huck lace; Linen 20/2, bone; huck squares; The small loom; April 2024" == found["warps/napkins"]


def test_a_name_that_says_more(tmp_path: Path) -> None:
    """A name whose words its title does not hold is added, as words."""
    found = found_by(tmp_path, looms__small_loom="title: The loom under the roof")

    assert "The loom under the roof; small loom;" in found["warps/napkins"]


def test_a_yarn(tmp_path: Path) -> None:
    """A yarn is found by its fibre, its colours and its label."""
    assert "linen; bone; 20/2 linen" == found_by(tmp_path)["yarns/linen-20-2"]
