"""Looking up one yarn reads only the warps that name it, and finds the same as reading all."""

from __future__ import annotations

from pathlib import Path

import pytest

from journal_tools.ledger.past import as_json, past_of
from journal_tools.records import read_journal
from tests.house import PROJECT

DEMO = PROJECT / "entries"


@pytest.mark.parametrize(
    "typed", ["cottolin-22-2", "Cottolin 22/2", "linen-20-2 bone", "linen-tow-8-1", "no such yarn"]
)
def test_a_look_up_finds_what_reading_everything_finds(typed: str) -> None:
    """By its name, its title, its name with a colour, or the name of a yarn without a record."""
    whole = past_of(read_journal(DEMO), typed)
    part = past_of(read_journal(DEMO, about_yarn=typed), typed)

    assert as_json(whole) == as_json(part)


def test_warps_in_other_yarns_are_not_read() -> None:
    """Of the demonstration's warps, a yarn that six were woven in needs few to be read."""
    part = read_journal(DEMO, about_yarn="cottolin-22-2")

    assert 0 < len(part.warps) < 15


def test_an_old_name_of_a_yarn_is_looked_for_too(tmp_path: Path) -> None:
    """A warp that still names a yarn by its old name is found by the new one."""
    for folder, text in (
        ("yarns/flax.md", "---\ntitle: Flax\nwas: old-flax\n---\n"),
        ("warps/one.md", "---\nyarn: old-flax\nin_reed: 20\non_loom: 19 x 30\n---\n"),
    ):
        path = tmp_path / folder
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    past = past_of(read_journal(tmp_path, about_yarn="flax"), "flax")

    assert ["one"] == [each.warp.name for each in past.warps]
