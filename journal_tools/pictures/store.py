"""Pictures kept on disk by all that decides how they look, so that only new ones are drawn.

A thousand cloth pictures and sixty charts take longer to draw than all else in a build, so where
there is much of it they are drawn beside, in processes of their own, while pages are made.
"""

from __future__ import annotations

import hashlib
import os
from collections.abc import Callable
from concurrent.futures import Future, ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from importlib import import_module
from importlib.metadata import version
from multiprocessing import get_context
from pathlib import Path
from typing import Any

AT_ONCE = max(1, min(4, (os.cpu_count() or 2) - 1))
"""One core stays with the pages, which are made meanwhile."""
BATCH = 24
"""Pictures handed to a process at once: each hand-over costs a millisecond."""
LIBRARIES = ("Pillow", "matplotlib", "numpy")

Task = tuple[Path, Callable[..., bytes], tuple[Any, ...]]


class PictureStore:
    """A folder of pictures. It may be deleted at any time; files in it are whole or not there.

    beside: whether missing pictures are drawn in processes of their own, worth it for hundreds.
    """

    def __init__(self, folder: Path, *, beside: bool = False) -> None:
        self.folder = folder
        self._beside = beside
        self._pool: ProcessPoolExecutor | None = None
        self._waiting: list[Task] = []
        self._given: list[tuple[list[Task], Future[None]]] = []
        self._asked: set[str] = set()
        self._drawn_by = drawn_by()
        folder.mkdir(parents=True, exist_ok=True)
        if beside:
            self._begin()

    def name(self, what: bytes, suffix: str) -> str:
        """The name of the file that is decided by `what`, by the code that draws and by its libraries."""
        return hashlib.sha256(self._drawn_by + what).hexdigest()[:24] + suffix

    def has(self, name: str) -> bool:
        """Whether a picture is there already, or has been asked for; one that is there counts as used now."""
        if name in self._asked:
            return True
        try:
            os.utime(self.folder / name)
        except OSError:
            return False
        return True

    def draw(self, name: str, drawing: Callable[..., bytes], *given: Any) -> None:
        """Have a picture drawn unless it is there. drawing: a function of a module, which gives the file."""
        if self.has(name):
            return
        self._asked.add(name)
        self._waiting.append((self.folder / name, drawing, given))
        if not self._beside:
            self._draw_waiting_here()
        elif len(self._waiting) >= BATCH:
            self._give()

    def put(self, name: str, content: bytes) -> None:
        """Keep a file that is made already."""
        write_whole(self.folder / name, content)

    def finish(self) -> None:
        """Wait until every picture asked for is there, and draw what the others have not begun."""
        self._draw_waiting_here()
        if self._pool is None:
            return
        for tasks, given in reversed(self._given):
            if given.cancel():
                draw_tasks(tasks)
        for tasks, given in self._given:
            if given.cancelled():
                continue
            try:
                given.result()
            except (BrokenProcessPool, OSError):  # no other process here: what is missing is drawn in this one
                self._waiting += [task for task in tasks if not task[0].is_file()]
        self._pool.shutdown()
        self._draw_waiting_here()

    def _begin(self) -> None:
        """Start the others now: they take most of a second until they can draw."""
        try:
            self._pool = ProcessPoolExecutor(AT_ONCE, mp_context=get_context("spawn"))
            for _ in range(AT_ONCE):
                self._pool.submit(make_ready)
        except (BrokenProcessPool, OSError, RuntimeError):
            self._beside, self._pool = False, None

    def _give(self) -> None:
        tasks, self._waiting = self._waiting, []
        if not tasks or self._pool is None:
            self._waiting = tasks
            return
        try:
            self._given.append((tasks, self._pool.submit(draw_tasks, tasks)))
        except (BrokenProcessPool, OSError, RuntimeError):
            self._beside = False
            self._waiting = tasks

    def _draw_waiting_here(self) -> None:
        draw_tasks(self._waiting)
        self._waiting = []


def make_ready() -> None:
    """Read what drawing needs."""
    import_module("matplotlib.backends.backend_svg")
    import_module("PIL.PngImagePlugin")


def draw_tasks(tasks: list[Task]) -> None:
    """Draw each of some pictures into its file."""
    for path, drawing, given in tasks:
        write_whole(path, drawing(*given))


def write_whole(path: Path, content: bytes) -> None:
    """Write a file whole, or not at all when this is stopped halfway."""
    half = path.with_name(f"{path.name}.{os.getpid()}")
    half.write_bytes(content)
    half.replace(path)


def drawn_by() -> bytes:
    """What draws: the code of this folder, and the libraries."""
    found = hashlib.sha256(repr([version(name) for name in LIBRARIES]).encode())
    for path in sorted(Path(__file__).parent.glob("*.py")):
        found.update(path.read_bytes())
    return found.digest()
