"""What a reader says when it refuses, for the tests that look at it."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from journal_tools.quantities import Unreadable


def refusal_of(read: Callable[..., object], text: str, *more: object) -> Unreadable:
    """The refusal that reading this text ends in; the test fails where it is read after all."""
    with pytest.raises(Unreadable) as caught:
        read(text, *more)
    return caught.value


def refusal_or_none(read: Callable[..., object], text: str, *more: object) -> Unreadable | None:
    """The refusal that reading this text ends in, or None where it is read."""
    try:
        read(text, *more)
    except Unreadable as refusal:
        return refusal
    return None
