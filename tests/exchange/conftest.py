"""A journal for every test of the exchange."""

from __future__ import annotations

from pathlib import Path

import pytest

from journal_tools.records import Journal
from tests.ledger.desk import write


@pytest.fixture
def journal(tmp_path: Path) -> Journal:
    """A journal in inches with no record yet."""
    return write(tmp_path / "book", journal="length: in")
