"""The arithmetic of a plan against a table worked by hand, which the page in the browser is held to as well."""

from __future__ import annotations

import inspect
import json
from pathlib import Path
from typing import Any

import pytest

from journal_tools.planning import arithmetic

CASES: list[tuple[str, list[Any], float, str]] = json.loads(
    (Path(__file__).parent / "cases.json").read_text(encoding="utf-8")
)


@pytest.mark.parametrize(("function", "given", "gives", "why"), CASES)
def test_the_table(function: str, given: list[Any], gives: float, why: str) -> None:
    """Every function gives what a pencil does."""
    assert pytest.approx(gives, rel=1e-6) == getattr(arithmetic, function)(*given), why


def test_every_function_is_in_it() -> None:
    """None is left out of the table."""
    functions = {
        name
        for name, each in inspect.getmembers(arithmetic, inspect.isfunction)
        if each.__module__.startswith("journal_tools.")
    }

    assert functions == {function for function, *_ in CASES}
