"""What is made of a journal: pages, the panels around their notes, and the files that they show."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from pathlib import Path

from journal_tools.pages.panels import Panels
from journal_tools.problems import Problem


@dataclass(frozen=True)
class Page:
    """One page. address: without a suffix, "warps/tideline-towels". title: plain text.

    kind: the template's name. notes: the weaver's Markdown. search: plain words that a search should
    find it by. moved_to: for an old address, the new one; such a page has nothing else.
    """

    address: str
    title: str
    kind: str
    notes: str = ""
    search: str = ""
    searchable: bool = True
    moved_to: str = ""


@dataclass(frozen=True)
class Site:
    """Pages with their panels, the files of the pictures they show, and every problem met on the way.

    assets: files by their address; they are all there once `finish` has been called, which waits for
    those still being drawn.
    """

    pages: tuple[Page, ...]
    panels: Panels
    assets: Mapping[str, Path]
    problems: tuple[Problem, ...]
    finish: Callable[[], None] = field(default=lambda: None, compare=False)
