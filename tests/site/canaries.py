"""A journal with a word of its own, or a figure of its own, in every field of every kind of record.

The fields are those of the models, so a field that is added later is planted too, or the tests ask
for what to plant in it.
"""

from __future__ import annotations

import calendar
import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml

from journal_tools.records import KINDS, Draft, Finish, Piece, Planned, Settings, Stretch, Warp, Yarn, readers
from journal_tools.records.cloth import Fringe, Hem, SizeAt, Weft
from journal_tools.records.draft_parts import AccentEnd, Block
from journal_tools.records.model import FieldWords, Model, words_of
from journal_tools.records.warp import Band, BandSizes, WarpYarn, YarnUse
from tests.photographs import photograph

FIGURES: Mapping[Callable[..., Any], str] = {
    readers.length: "{} in",
    readers.some_length: "{} in",
    readers.density: "{}/in",
    readers.weight: "{} g",
    readers.money: "{} EUR",
    readers.count: "{}",
    readers.pick_count: "{}",
}
"""How a figure is typed for each reader that takes one."""

SPELLED = {
    "length_weight": "50 m = 12.{} g",
    "yield": "{} yd/lb",
    "wraps": "{}/in",
    "marked": "{} in wove 9 in",
    "reeds": "{}/in",
}
"""The same for fields with a reader of their own."""


@dataclass(frozen=True)
class Canary:
    """What was planted, and where. needle: in small letters."""

    field: str
    needle: str
    public: bool


class Planter:
    """Plants one record after the other. brood: a word in all of its words."""

    def __init__(self, brood: str, first: int) -> None:
        self.brood = brood
        self.number = first
        self.canaries: list[Canary] = []
        self.planted: set[tuple[type[Model], str]] = set()
        self.wordless: set[str] = set()
        self.alias = self.word("name of a yarn in this warp")
        self.band = self.word("name of a band")

    def word(self, field: str, public: bool = False) -> str:
        """A word that stands nowhere else."""
        word = "-".join(re.findall(r"[a-z]+", f"canary {self.brood} {field}".lower()))
        self.canaries.append(Canary(field, word, public))
        return word

    def figure(self, field: str, pattern: str) -> str:
        """A figure that stands nowhere else."""
        self.number += 7
        self.canaries.append(Canary(field, str(self.number), False))
        return pattern.format(self.number)

    def day(self, field: str, public: bool) -> str:
        """A day that stands nowhere else."""
        self.number += 7
        place = self.number // 7
        year, month, day = 1900 + place // 228 % 100, 1 + place // 19 % 12, 10 + place % 19
        shown = f"{day} {calendar.month_name[month].lower()} {year}"
        self.canaries += [Canary(field, f"{year}-{month:02}-{day:02}", public), Canary(field, shown, public)]
        return f"{year}-{month:02}-{day:02}"

    def fields(self, model: type[Model], *without: str, **instead: Any) -> dict[str, Any]:
        """A record, or a part of one, with every key planted but those left out. instead: values given."""
        made = {}
        for key, (_, words) in words_of(model).items():
            if key in instead:
                made[key] = instead[key]
            elif key not in without:
                made[key] = self.value(model, key, words)
                self.planted.add((model, key))
        return made

    def value(self, model: type[Model], key: str, words: FieldWords) -> Any:
        """What is planted in one field."""
        field = f"{model.__name__} {key}"
        if (model, key) in BELOW or key in BELOW:
            return BELOW.get((model, key), BELOW.get(key))(self, field)  # type: ignore[misc]
        if words.read in (readers.text, readers.texts):
            return self.word(field, words.public)
        if words.read is readers.when:
            return self.day(field, words.public)
        pattern = SPELLED.get(key) or FIGURES.get(words.read)
        if pattern is not None and not words.public:
            return self.figure(field, pattern)
        if not words.public:
            self.wordless.add(f"{model.__name__} {key}")
        return words.example


OTHERWISE = ("lift_plan", "profile", "profile_treadling", "upper", "lower")
"""Keys of a draft that say otherwise what others of its keys say."""


def of_its_own(self: Planter, _: str) -> list[Any]:
    """Two stretches: one with a draft's name, one with a draft of its own."""
    draft = self.fields(Draft, *OTHERWISE, "photos", "photos_for_everyone", "was")
    return [self.fields(Stretch), self.fields(Stretch, draft=draft)]


BELOW: Mapping[object, Callable[[Planter, str], Any]] = {
    (Warp, "yarn"): lambda self, field: f"{self.brood}-yarn",
    (Yarn, "number"): lambda self, field: "8/2 cotton",
    (Finish, "fulling"): lambda self, field: "no",
    (Draft, "blocks"): lambda self, field: {"A": self.fields(Block)},
    (Draft, "accents"): lambda self, field: [self.fields(AccentEnd)],
    (Piece, "across"): lambda self, field: {self.band: self.fields(BandSizes)},
    (Settings, "weight"): lambda self, field: "g",
    (Settings, "tape"): lambda self, field: "1/8 in",
    (Hem, "weft"): lambda self, field: self.word(field),
    "was": lambda self, field: self.word(field),
    "loom": lambda self, field: f"{self.brood}-loom",
    "draft": lambda self, field: f"{self.brood}-draft",
    "finish": lambda self, field: f"{self.brood}-finish",
    "yarns": lambda self, field: {self.alias: self.fields(YarnUse, "colour", yarn=f"{self.brood}-yarn")},
    "warp": lambda self, field: [
        self.fields(WarpYarn, "yarn", order=f"20 {self.alias}", floating_selvedges=self.alias)
    ],
    "weft": lambda self, field: [self.fields(Weft, "colour", "order", yarn=self.alias)],
    "stretches": of_its_own,
    "pieces": lambda self, field: [self.fields(Piece), self.fields(Piece, "across", "fulling", "marks")],
    "plan": lambda self, field: [self.fields(Planned)],
    "across": lambda self, field: {self.band: self.fields(Band)},
    "washed": lambda self, field: [self.fields(SizeAt), self.fields(SizeAt)],
    "fulling": lambda self, field: {f"8 min {self.word(field)}": "141 x 203 cm"},
    "hem": lambda self, field: self.fields(Hem),
    "fringe": lambda self, field: self.fields(Fringe),
    "where_it_went": lambda self, field: {self.word(field): self.figure(field, "{} in")},
    "weight": lambda self, field: {"washed": self.figure(field, "{} g")},
    "heddles": lambda self, field: {"1": self.figure(field, "{}")},
    "learn": lambda self, field: f"no, {self.word(field)}",
    "accepted": lambda self, field: self.word(field),
    "photos": lambda self, field: {
        f"{self.word('file of a photo')}.jpg": self.word("caption of a photo"),
        "for-all.jpg": "a caption for all",
    },
    "photos_for_everyone": lambda self, field: ["for-all.jpg"],
    "colours": lambda self, field: {self.word(field, public=True): "c9b58b"},
    **{
        state: lambda self, field: self.fields(SizeAt)
        for state in ("on_loom", "off_loom", "hemmed", "made_up")
    },
}
"""Fields that hold fields below them, names of the weaver's own, or another record's name."""


def plant(folder: Path) -> Planter:
    """Write a journal with two shared warps and two that are not, and say what was planted.

    Of the warps that are not shared, and of what only they use, everything is private.
    """
    shared, hidden = Planter("seen", 40_000), Planter("hidden", 60_000)
    write(folder / "journal.md", shared.fields(Settings), "The words on the front page.")
    for planter in (shared, hidden):
        brood = planter.brood
        for kind, one in (("yarns", "yarn"), ("drafts", "draft"), ("looms", "loom"), ("finishes", "finish")):
            record = planter.fields(KINDS[kind], *OTHERWISE)
            write(folder / kind / f"{brood}-{one}.md", record, planter.word(f"notes of {kind}"))
            take(folder / kind / f"{brood}-{one}", record["photos"])
        share = "yes" if planter is shared else "no"
        deep = planter.fields(Warp, "pieces", share=share)
        flat = planter.fields(Warp, "stretches", share=share, was=planter.word("another old name"))
        for name, record in ((f"{brood}-deep", deep), (f"{brood}-flat", flat)):
            write(folder / "warps" / f"{name}.md", record, planter.word("notes of warps"))
            take(folder / "warps" / name, record["photos"])
    names = [f"hidden-{what}" for what in ("deep", "flat", "yarn", "draft", "loom", "finish")]
    shared.canaries += [Canary(each.field, each.needle, False) for each in hidden.canaries]
    shared.canaries += [Canary("name of a record", name, False) for name in names]
    return shared


def take(folder: Path, names: Iterable[str]) -> None:
    """Photographs of these names in the folder beside a record."""
    folder.mkdir()
    for name in names:
        (folder / name).write_bytes(photograph(120, 90))


def write(path: Path, record: Mapping[str, Any], notes: str) -> None:
    """One record, one value a line."""
    path.parent.mkdir(parents=True, exist_ok=True)
    fields = yaml.safe_dump(record, sort_keys=False, allow_unicode=True, width=10_000)
    path.write_text(f"---\n{fields}---\n\n{notes}\n", encoding="utf-8")
