"""`export`: the whole journal as tables and as one file, into a folder that holds nothing else."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from journal_tools.exchange.downloads import downloads
from journal_tools.records import public, read_journal
from tests.commands.shell import Shell

TOWELS = """\
---
title: Tideline towels
yarn: cottolin-22-2
in_reed: 20 1/4
washed: 17 7/8 x 30 1/8
cost: 12 EUR
---
"""


@pytest.fixture
def journal(tenterhook: Shell) -> Shell:
    """A journal with a shared warp and one that is not."""
    tenterhook.write("warps/tideline-towels", TOWELS)
    tenterhook.write("warps/shown", TOWELS.replace("title:", "share: yes\ntitle:"))
    return tenterhook


def files_in(folder: Path) -> dict[str, bytes]:
    """Every file of a folder."""
    return {path.name: path.read_bytes() for path in folder.iterdir()}


def test_the_files(journal: Shell) -> None:
    """All files are written beside the entries, and the page of columns is named."""
    said = journal("export")

    assert downloads(read_journal(journal.folder / "entries")) == files_in(journal.folder / "export")
    assert said.output.endswith("README.txt there says what they are.\n")


def test_another_folder(journal: Shell, tmp_path: Path) -> None:
    """With --to they are written elsewhere; with --public only what is shared is."""
    journal("export", "--to", str(tmp_path / "out" / "deep"), "--public")
    found = files_in(tmp_path / "out" / "deep")

    assert downloads(public(read_journal(journal.folder / "entries"))) == found
    assert [] == [name for name, data in found.items() if b"tideline" in data or b"12 EUR" in data]


def test_up_to_date(journal: Shell) -> None:
    """A later export brings an earlier one up to date: new rows come in, and a table without rows goes."""
    journal.write("yarns/hemp", "---\ntitle: Hemp\n---\n")
    journal("export")
    mine = journal.folder / "export" / "mine.csv"
    mine.write_text("kept", encoding="utf-8")
    (journal.folder / "entries/yarns/hemp.md").unlink()
    journal("export")

    assert not (journal.folder / "export" / "yarns.csv").exists()
    assert "kept" == mine.read_text(encoding="utf-8")


def test_a_folder_of_something_else(journal: Shell, tmp_path: Path) -> None:
    """A folder that holds anything but an earlier export is left alone."""
    (tmp_path / "README.txt").write_text("mine", encoding="utf-8")
    said = journal("export", "--to", str(tmp_path))

    assert 2 == said.exit_code
    assert "holds no earlier export" in said.stderr
    assert "mine" == (tmp_path / "README.txt").read_text(encoding="utf-8")


def test_what_cannot_be_read(journal: Shell) -> None:
    """A record that cannot all be read is told of, the status is 1, and all of it stands in the file as typed."""
    journal.write("warps/broken", "---\ntitle: Broken\nin_reed: wide\ncolour: blue\n---\nNotes.\n")
    said = journal("export")
    whole = json.loads((journal.folder / "export" / "journal.json").read_bytes())

    assert 1 == said.exit_code
    assert 'warps/broken.md:3 to mend in_reed: read "wide".' in said.output
    assert {
        "fields": {"title": "Broken", "in_reed": "wide", "colour": "blue"},
        "notes": "Notes.\n",
    } == whole["warps"]["broken"]


def test_an_empty_journal(tenterhook: Shell) -> None:
    """A journal without a record has no table, and its settings leave all the same."""
    tenterhook("export")
    found = files_in(tenterhook.folder / "export")

    assert [] == [name for name in found if name.endswith(".csv")]
    assert b"{}\n" == found["tables.json"]
    assert "in" == json.loads(found["journal.json"])["journal"]["fields"]["length"]
