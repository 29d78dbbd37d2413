"""What one build knows: the journal, its ledgers and problems, and where every page is."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path

from journal_tools.checking import check
from journal_tools.ledger import Ledger, ledger_of
from journal_tools.ledger.past import Past, PastWarp, past_from, uses_of
from journal_tools.pages.views import Card, Link, Neighbours
from journal_tools.pictures.photo import Sized
from journal_tools.problems import Problem
from journal_tools.records import Journal, Record, Warp
from journal_tools.records.yarns_used import YarnInUse, all_yarns

KIND_WORDS = {"warps": "Warps", "yarns": "Yarns", "drafts": "Drafts", "looms": "Looms", "finishes": "Finishes"}


@dataclass
class Archive:
    """One journal while its pages are made.

    public: whether the journal is the shared one. cache: where drawn pictures are kept by content,
    None to keep none. assets: pictures that pages have asked for, by their address.
    refused: photos that could not be shown. cards: of warps that were made already, by name.
    """

    journal: Journal
    public: bool = False
    cache: Path | None = None
    assets: dict[str, bytes] = field(default_factory=dict)
    refused: list[Problem] = field(default_factory=list)
    cards: dict[str, Card] = field(default_factory=dict)
    _orders: dict[str, tuple[list[str], Mapping[str, int]]] = field(default_factory=dict)

    @cached_property
    def ledgers(self) -> Mapping[str, Ledger]:
        """The ledger of every warp, by name."""
        return {name: ledger_of(self.journal, warp) for name, warp in self.journal.warps.items()}

    @cached_property
    def problems(self) -> tuple[Problem, ...]:
        """Every problem; none in a shared journal, where they are the weaver's own affair."""
        return () if self.public else check(self.journal, self.ledgers)

    @cached_property
    def _by_file(self) -> Mapping[str, tuple[Problem, ...]]:
        found: dict[str, list[Problem]] = {}
        for problem in self.problems:
            found.setdefault(problem.file, []).append(problem)
        return {file: tuple(problems) for file, problems in found.items()}

    def problems_of(self, record: Record) -> tuple[Problem, ...]:
        """The problems of one record."""
        return self._by_file.get(record.file, ())

    @cached_property
    def warps(self) -> tuple[Warp, ...]:
        """Every warp, newest first, undated last."""
        return tuple(self.journal.warps_newest_first())

    @cached_property
    def _yarns(self) -> Mapping[str, tuple[YarnInUse, ...]]:
        return {name: all_yarns(self.journal, warp) for name, warp in self.journal.warps.items()}

    def yarns(self, warp: Warp) -> tuple[YarnInUse, ...]:
        """The yarns of a warp."""
        return self._yarns[warp.name]

    def link(self, kind: str, name: str, text: str = "") -> Link:
        """A link to a record's page, or its name alone when it has no page."""
        record = self.journal.kind(kind).get(name)
        if record is None:
            return Link(text or name.replace("-", " "))
        return Link(text or record.heading, f"{kind}/{name}.html")

    def neighbours(self, kind: str, name: str) -> Neighbours:
        """The way on from a record's page: the one before, the one after, and the list."""
        names, places = self._order(kind)
        at = places[name]
        before = self.link(kind, names[at - 1]) if at > 0 else None
        after = self.link(kind, names[at + 1]) if at + 1 < len(names) else None
        return Neighbours(before, after, Link(KIND_WORDS[kind], f"{kind}.html"))

    def _order(self, kind: str) -> tuple[list[str], Mapping[str, int]]:
        """The names of a kind in the order of their pages, and the place of each."""
        if kind not in self._orders:
            names = [warp.name for warp in self.warps] if kind == "warps" else list(self.journal.kind(kind))
            self._orders[kind] = (names, {name: place for place, name in enumerate(names)})
        return self._orders[kind]

    def past(self, yarn: str) -> Past:
        """What one yarn did before."""
        return past_from(yarn, tuple(self._pasts.get(yarn, ())))

    @cached_property
    def _pasts(self) -> Mapping[str, list[PastWarp]]:
        found: dict[str, list[PastWarp]] = {}
        for warp in self.warps:
            for name, use in uses_of(self.journal, warp).items():
                found.setdefault(name, []).append(PastWarp(warp, self.ledgers[warp.name], use))
        return found

    def kept(self, what: bytes, suffix: str, draw: Callable[[], bytes]) -> str:
        """The address of a picture, drawn unless the cache has it. what: all that it depends on."""
        name = hashlib.sha256(what).hexdigest()[:20] + suffix
        address = f"pictures/{name}"
        if address not in self.assets:
            self.assets[address] = self._from_cache(name, draw)
        return address

    def _from_cache(self, name: str, draw: Callable[[], bytes]) -> bytes:
        if self.cache is None:
            return draw()
        path = self.cache / "pictures" / name
        try:
            return path.read_bytes()
        except OSError:
            drawn = draw()
        path.parent.mkdir(parents=True, exist_ok=True)
        part = path.with_suffix(path.suffix + ".part")
        part.write_bytes(drawn)
        part.replace(path)  # whole or not at all, should the build be stopped here
        return drawn

    def photo(self, path: Path, draw: Callable[[], tuple[Sized, ...]]) -> tuple[tuple[str, int, int], ...]:
        """Address, width and height of every size of a photo, smallest first. Raises PhotoRefused.

        Sizes are kept by the photo's own content, with a list of them beside.
        """
        key = hashlib.sha256(b"photo 1" + path.read_bytes()).hexdigest()[:20]
        listing = self.kept(f"photo list {key}".encode(), ".txt", lambda: self._draw_photo(key, draw))
        sizes = self.assets.pop(listing).decode().split()
        found = []
        for size in sizes:
            width, height = (int(part) for part in size.split("x"))
            address = self.kept(f"photo {key} {size}".encode(), ".webp", lambda w=width: _of_width(draw(), w))  # type: ignore[misc]
            found.append((address, width, height))
        return tuple(found)

    def _draw_photo(self, key: str, draw: Callable[[], tuple[Sized, ...]]) -> bytes:
        sizes = draw()
        for each in sizes:
            size = f"{each.width}x{each.height}"
            self.kept(f"photo {key} {size}".encode(), ".webp", lambda data=each.data: data)  # type: ignore[misc]
        return " ".join(f"{each.width}x{each.height}" for each in sizes).encode()


def _of_width(sizes: tuple[Sized, ...], width: int) -> bytes:
    return next(each.data for each in sizes if each.width == width)
