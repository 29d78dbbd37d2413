"""What one build knows: the journal, its ledgers and problems, and where every page is."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any

from journal_tools.checking import check
from journal_tools.ledger import Ledger, ledger_of
from journal_tools.ledger.past import Past, PastWarp, past_from, uses_of
from journal_tools.pages.view_parts import Card, Chart, Link, Neighbours, Table
from journal_tools.pictures.photo import MOST_BYTES, photo_sizes
from journal_tools.pictures.store import PictureStore
from journal_tools.problems import Problem
from journal_tools.records import Journal, Record, Warp
from journal_tools.records.colours_named import hexes_named
from journal_tools.records.yarns_used import YarnInUse, all_yarns

if TYPE_CHECKING:
    from journal_tools.dressing import Dressing
    from journal_tools.forecast.fulling import FulledCloth, Fulling
    from journal_tools.forecast.kind import ClothKind
    from journal_tools.forecast.memory import Memory
    from journal_tools.forecast.rests_on import RestsOn
    from journal_tools.pages.patterns import Patterns
    from journal_tools.pages.plan_pocket import Pocket
    from journal_tools.pages.plan_shelf import Shelf
    from journal_tools.pages.swatch import Swatch
    from journal_tools.pictures.foretold import ForetoldTrend
    from journal_tools.pictures.scatter import LossScatter
    from journal_tools.pictures.trend import OffByYarn, OffTrend

    Drawn = LossScatter | OffTrend | OffByYarn | ForetoldTrend

KIND_WORDS = {"warps": "Warps", "yarns": "Yarns", "drafts": "Drafts", "looms": "Looms", "finishes": "Finishes"}


@dataclass
class Archive:
    """One journal while its pages are made.

    store: where pictures are drawn and kept. public: whether the journal is the shared one.
    assets: files of the pictures that pages have asked for, by their address.
    refused: photos that could not be shown. cards, swatches, dressings: those made already.
    """

    journal: Journal
    store: PictureStore
    public: bool = False
    assets: dict[str, Path] = field(default_factory=dict)
    refused: list[Problem] = field(default_factory=list)
    cards: dict[tuple[str, str], Card] = field(default_factory=dict)
    swatches: dict[tuple[str, int], Swatch | None] = field(default_factory=dict)
    dressings: dict[str, Dressing] = field(default_factory=dict)
    _rests: dict[tuple[ClothKind, tuple[str, str, str]], RestsOn] = field(default_factory=dict)
    _orders: dict[str, tuple[list[str], Mapping[str, int]]] = field(default_factory=dict)

    @cached_property
    def ledgers(self) -> Mapping[str, Ledger]:
        """The ledger of every warp, by name."""
        return {name: ledger_of(self.journal, warp) for name, warp in self.journal.warps.items()}

    @cached_property
    def memory(self) -> Memory:
        """What the journal has learned, once for all pages; of a shared journal from shared warps alone."""
        from journal_tools.forecast.memory import Memory

        return Memory.of(self.journal, self.ledgers)

    @cached_property
    def patterns(self) -> Patterns:
        """Every draft, looked through once for all pages."""
        from journal_tools.pages.patterns import Patterns

        return Patterns(self)

    @cached_property
    def colours(self) -> Mapping[str, str]:
        """Six digits for each colour that a yarn names."""
        return hexes_named(self.journal)

    @cached_property
    def shelf(self) -> Shelf:
        """What can be chosen for a plan, and what is usual."""
        from journal_tools.pages.plan_shelf import Shelf

        return Shelf(self.journal, self.warps)

    @cached_property
    def pocket(self) -> Pocket:
        """What the journal has learned, in so few numbers that every page may ask."""
        from journal_tools.pages.plan_pocket import Pocket

        return Pocket(self.memory.forecasts, self.shelf.most_woven)

    @cached_property
    def woven_kinds(self) -> tuple[tuple[str, ClothKind], ...]:
        """Each kind of cloth once for each warp that has it, with the warp's name."""
        from journal_tools.forecast.expected import kinds_of

        return kinds_of(self.memory.observed["width"] + self.memory.observed["length"])

    def rests_on(self, kind: ClothKind, asked: tuple[str, str, str]) -> RestsOn:
        """Which warps tell the most of a kind of cloth, by direction, first and last moment."""
        if (kind, asked) not in self._rests:
            self._rests[kind, asked] = self.memory.rests_on(asked[0], kind, *asked[1:])
        return self._rests[kind, asked]

    def fulling(self, yarn: str) -> Fulling:
        """What is known of fulling a yarn."""
        from journal_tools.forecast.fulling import Fulling

        return Fulling.of(self.journal, yarn, self._fulled)

    @cached_property
    def _fulled(self) -> tuple[FulledCloth, ...]:
        from journal_tools.forecast.fulling import fulled_cloths

        return fulled_cloths(self.journal, self.ledgers)

    @cached_property
    def problems(self) -> tuple[Problem, ...]:
        """Every problem; none in a shared journal, where they are the weaver's own affair."""
        if self.public:
            return ()
        from journal_tools.forecast.incredible import with_incredible, worth_asking

        found = check(self.journal, self.ledgers)
        if not worth_asking(self.journal, found, self.ledgers):
            return found
        return with_incredible(self.journal, self.memory, found, self.ledgers)

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

    def drawn(self, what: bytes, suffix: str, drawing: Callable[..., bytes], *given: Any) -> str:
        """The address of a picture, which is drawn unless it is kept. what: all that decides how it looks."""
        name = self.store.name(what, suffix)
        self.store.draw(name, drawing, *given)
        return self._asset(name)

    def keep(self, address: str, content: bytes) -> None:
        """Put a file that is made already at an address of the site."""
        name = self.store.name(content, f".{address.rpartition('.')[2]}")
        if not self.store.has(name):
            self.store.put(name, content)
        self.assets[address] = self.store.folder / name

    def chart(self, chart: Drawn, title: str, alt: str, table: Table) -> Chart:
        """A chart, with the same figures as a table."""
        from journal_tools.pictures.chart_paper import chart_svg

        address = self.drawn(repr(chart).encode(), ".svg", chart_svg, chart)
        return Chart(title, address, alt, *chart.size, table)

    def photo(self, path: Path) -> tuple[tuple[str, int, int], ...]:
        """Address, width and height of every size of a photo, smallest first. Raises PhotoRefused.

        Sizes are kept by the photo's own content, with a list of them beside.
        """
        content = path.read_bytes() if path.stat().st_size <= MOST_BYTES else b""
        listing = self.store.name(b"photo" + content, ".txt")
        if not self.store.has(listing):
            self._keep_photo(path, content, listing)
        sizes = [tuple(map(int, size.split("x"))) for size in (self.store.folder / listing).read_text().split()]
        names = [self.store.name(b"photo %d" % width + content, ".webp") for width, _ in sizes]
        if not all(self.store.has(name) for name in names):
            self._keep_photo(path, content, listing)
        return tuple((self._asset(name), width, height) for name, (width, height) in zip(names, sizes, strict=True))

    def _keep_photo(self, path: Path, content: bytes, listing: str) -> None:
        sizes = photo_sizes(path)
        for each in sizes:
            self.store.put(self.store.name(b"photo %d" % each.width + content, ".webp"), each.data)
        self.store.put(listing, " ".join(f"{each.width}x{each.height}" for each in sizes).encode())

    def _asset(self, name: str) -> str:
        address = f"pictures/{name}"
        self.assets[address] = self.store.folder / name
        return address
