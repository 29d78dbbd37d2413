"""The panels of all pages, in a file: they are large, and are wanted one page at a time."""

from __future__ import annotations

import os
from collections.abc import Mapping
from pathlib import Path
from types import TracebackType
from typing import BinaryIO


class Panels:
    """Panels that can be read again. places: where each page's two are in the file, by its address."""

    def __init__(self, path: Path, places: Mapping[str, tuple[int, int, int]]) -> None:
        self.path = path
        self.places = places

    @property
    def whole(self) -> bool:
        """Whether the file is there and holds every panel."""
        try:
            size = self.path.stat().st_size
        except OSError:
            return False
        return size == max((end for _, _, end in self.places.values()), default=0)

    def of(self, address: str) -> tuple[str, str]:
        """The safe HTML above and below a page's notes."""
        start, middle, end = self.places[address]
        with self.path.open("rb") as file:
            file.seek(start)
            both = file.read(end - start)
        return both[: middle - start].decode(), both[middle - start :].decode()


class PanelsFile:
    """A file of panels while it is written."""

    def __init__(self, path: Path) -> None:
        self.panels = Panels(path, {})
        self._places: dict[str, tuple[int, int, int]] = {}
        self._file: BinaryIO
        self._part: Path

    def __enter__(self) -> PanelsFile:
        self.panels.path.parent.mkdir(parents=True, exist_ok=True)
        self._part = self.panels.path.with_suffix(f".{os.getpid()}")
        self._file = self._part.open("wb")
        return self

    def add(self, address: str, both: tuple[str, str]) -> None:
        """Write one page's panels."""
        start = self._file.tell()
        middle = start + self._file.write(both[0].encode())
        self._places[address] = (start, middle, middle + self._file.write(both[1].encode()))

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._file.close()
        if error is None:
            self._part.replace(self.panels.path)  # whole or not at all: another build may be reading it
        self.panels = Panels(self.panels.path, self._places)
