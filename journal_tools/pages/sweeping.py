"""When Python looks for garbage while a big journal is read and its pages are made."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager

ALLOCATIONS = 5_000
"""New things between two sweeps of what is new."""


@contextmanager
def no_sweeping() -> Iterator[None]:
    """While records are read nearly everything is in use, and looking through it takes a sixth of the time."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()


@contextmanager
def only_what_is_new_swept() -> Iterator[None]:
    """While pages are made the records stay, and what a page leaves behind goes: a fifth of the memory."""
    was_on, thresholds = gc.isenabled(), gc.get_threshold()
    gc.freeze()
    gc.set_threshold(ALLOCATIONS, *thresholds[1:])
    gc.enable()
    try:
        yield
    finally:
        gc.unfreeze()
        gc.set_threshold(*thresholds)
        if not was_on:
            gc.disable()
