"""Every record of a journal, read once, with every problem found on the way."""

from __future__ import annotations

import dataclasses
import os
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import Any, TypeVar, cast

from journal_tools.problems import Problem, nearest
from journal_tools.quantities import Units, Unreadable, parse_yarn_number
from journal_tools.records.draft import Draft
from journal_tools.records.fences import lines_of
from journal_tools.records.finish import Finish
from journal_tools.records.front_matter import FrontMatter, read_file, read_front_matter
from journal_tools.records.kinds import KINDS
from journal_tools.records.loom import Loom
from journal_tools.records.model import Model, read_model
from journal_tools.records.new_names import old_names, with_new_names
from journal_tools.records.readers import NAME, slug
from journal_tools.records.record import Record
from journal_tools.records.settings import Settings
from journal_tools.records.spot import Reading, Spot
from journal_tools.records.warp import Warp
from journal_tools.records.yarn import Yarn

R = TypeVar("R", bound=Record)

@dataclass(frozen=True)
class Journal:
    """The records of one folder, by name.

    What could be read of an entry that has faults is among them, and a page can show it beside the
    problem: see `problems_of`.
    """

    folder: Path
    settings: Settings = dataclasses.field(default_factory=Settings)
    warps: Mapping[str, Warp] = dataclasses.field(default_factory=dict)
    yarns: Mapping[str, Yarn] = dataclasses.field(default_factory=dict)
    drafts: Mapping[str, Draft] = dataclasses.field(default_factory=dict)
    looms: Mapping[str, Loom] = dataclasses.field(default_factory=dict)
    finishes: Mapping[str, Finish] = dataclasses.field(default_factory=dict)
    problems: tuple[Problem, ...] = ()

    def kind(self, folder: str) -> Mapping[str, Record]:
        """The records of one folder."""
        return cast(Mapping[str, Record], getattr(self, folder))

    @cached_property
    def yarns_by_any_name(self) -> Mapping[str, Yarn]:
        """Yarns by their names, their titles as names, and their old names; the first of these counts."""
        found: dict[str, Yarn] = {}
        for yarn in self.yarns.values():
            found.update(dict.fromkeys(yarn.was, yarn))
        found.update({slug(yarn.title): yarn for yarn in self.yarns.values() if yarn.title})
        return found | dict(self.yarns)

    @cached_property
    def yarns_by_label(self) -> Mapping[str, tuple[Yarn, ...]]:
        """Yarns by what their labels say, written as names are: several may share one."""
        found: dict[str, tuple[Yarn, ...]] = {}
        for yarn in self.yarns.values():
            for label in sorted(yarn.labels):
                found[label] = (*found.get(label, ()), yarn)
        return found

    def problems_of(self, file: str) -> tuple[Problem, ...]:
        """The problems of one file."""
        return tuple(problem for problem in self.problems if problem.file == file)

    def warps_newest_first(self) -> list[Warp]:
        """Warps by date, newest first; undated ones come last, by name."""
        return sorted(self.warps.values(), key=_newest_first)


def _newest_first(warp: Warp) -> tuple[object, ...]:
    when = warp.started or warp.finished
    if when is None:
        return (1, (), warp.name)
    return (0, tuple(-part for part in when.key), warp.name)


def read_journal(folder: Path, *, about_yarn: str | None = None) -> Journal:
    """Read every record under a folder. Never raises for what a weaver wrote: see `problems`.

    about_yarn: a yarn as it is typed. Only the warps whose text names it, by any of its names, are
    read then: looking up one yarn need not read what a thousand others did.
    """
    problems: list[Problem] = []
    settings = _read_settings(folder, problems)
    found: dict[str, Mapping[str, Record]] = {}
    words: tuple[str, ...] = ()
    for sub in ("yarns", *(sub for sub in KINDS if sub != "yarns")):
        naming = words if sub == "warps" else ()
        records = _read_kind(folder, sub, KINDS[sub], settings, problems, naming)
        found[sub] = {record.name: record for record in records}
        if sub == "yarns" and about_yarn is not None:
            words = _names_of_yarn(cast(Mapping[str, Yarn], found[sub]), about_yarn)
    _check_names(found, problems)
    old = [old_names(found[sub]) for sub in ("looms", "drafts", "finishes")]
    if any(old):
        found["warps"] = {name: with_new_names(cast(Warp, warp), *old) for name, warp in found["warps"].items()}
    return Journal(folder, settings, problems=tuple(sorted(problems)), **found)  # type: ignore[arg-type]


def with_warp_text(journal: Journal, warp: Warp, text: str) -> Journal:
    """The journal as it would be with another text in the file of one warp. Nothing is written."""
    problems = [problem for problem in journal.problems if problem.file != warp.file]
    front = read_front_matter(text, warp.file)
    read = _read_front(front, Warp, journal.settings.units, problems)
    read = dataclasses.replace(read, name=warp.name, notes=front.notes, file=warp.file)
    read = with_new_names(read, *(old_names(journal.kind(sub)) for sub in ("looms", "drafts", "finishes")))
    return dataclasses.replace(journal, warps={**journal.warps, warp.name: read}, problems=tuple(sorted(problems)))


def _names_of_yarn(yarns: Mapping[str, Yarn], typed: str) -> tuple[str, ...]:
    """Every word that a warp can name this yarn by, as names are written."""
    said = {slug(typed), slug(typed.split()[0]) if typed.split() else ""} - {""}
    for yarn in yarns.values():
        names = {yarn.name, *yarn.was, slug(yarn.title or ""), *yarn.labels} - {""}
        if names & said:
            said |= names
    return tuple(sorted(said)) or ("-",)


def _read_settings(folder: Path, problems: list[Problem]) -> Settings:
    path = folder / "journal.md"
    if not path.is_file():
        return Settings()
    front = read_file(path, "journal.md")
    settings = _read_front(front, Settings, _said_units(front), problems)
    return dataclasses.replace(settings, notes=front.notes, file="journal.md")


def _read_kind(
    folder: Path, sub: str, kind: type[R], settings: Settings, problems: list[Problem], naming: tuple[str, ...] = ()
) -> Iterator[R]:
    """The records of one folder; with words in `naming`, those alone whose text has one of them."""
    if not (folder / sub).is_dir():
        return
    if (folder / sub).is_symlink():
        right = "this folder is a link; a journal's records stand in folders of its own."
        problems.append(Problem(sub, 0, "folder", sub, right, slug="link"))
        return
    with os.scandir(folder / sub) as listing:
        names = sorted((entry.name, entry.is_symlink()) for entry in listing if entry.name.endswith(".md"))
    for file_name, is_link in names:
        if is_link and not _inside(folder / sub / file_name, folder):
            right = "this is a link to a file outside the journal, which is not read; put the record itself here."
            problems.append(Problem(f"{sub}/{file_name}", 0, "file", file_name, right, slug="link"))
            continue
        file, name = f"{sub}/{file_name}", file_name.removesuffix(".md")
        if name.lower() in ("readme", "index") or name.startswith((".", "_")):
            continue
        if not NAME.fullmatch(name):
            tidy = slug(name) or "a-name"
            problems.append(
                Problem(
                    file,
                    0,
                    "file name",
                    file_name,
                    "the name of an entry is small letters, digits"
                    f" and hyphens, since it is its address; call the file `{tidy}.md`.",
                    slug="file-name",
                )
            )
            continue
        if naming and not _names_one(folder / sub / file_name, naming):
            continue
        front = read_file(folder / sub / file_name, file)
        record = _read_front(front, kind, settings.units, problems)
        record = dataclasses.replace(record, name=name, notes=front.notes, file=file)
        if isinstance(record, Yarn):
            record = cast(R, _counted(record, front, settings, problems))
        yield record


def _inside(path: Path, folder: Path) -> bool:
    """Whether a link leads to a file inside the journal."""
    try:
        return path.resolve().is_relative_to(folder.resolve())
    except (OSError, RuntimeError):  # a link that leads to itself
        return False


def _names_one(path: Path, words: tuple[str, ...]) -> bool:
    try:
        text = path.read_text(encoding="utf-8", errors="replace")
    except OSError:
        return True  # what is wrong with it is told when it is read
    written = f"-{slug(text)}-"
    return any(f"-{word}-" in written for word in words)


M = TypeVar("M", bound=Model)


def _read_front(front: FrontMatter, kind: type[M], units: Units, problems: list[Problem]) -> M:
    problems.extend(front.problems)
    if front.node is None:
        return kind()
    reading = Reading(front.file, front.first_line, _own_units(front, units), lines_of(front.header))
    spot = Spot(front.node, reading)
    record = spot.read(lambda at: read_model(at, kind))
    problems.extend(reading.problems)
    return record if record is not None else kind()


def _said_units(front: FrontMatter) -> Units:
    """What a bare number means among the settings themselves: what the settings say."""
    choices = {
        "length": ("in", "cm", "mm"),
        "weight": ("g", "oz"),
        "density": ("in", "cm"),
        "comma": ("decimal", "thousands"),
    }
    said = {
        key.value: value.value
        for key, value in (front.node.value if front.node is not None else ())
        if value.value in choices.get(key.value, ())
    }
    return Settings(**cast(Any, said)).units


def _own_units(front: FrontMatter, units: Units) -> Units:
    """The units of this record: `units:` holds for every bare number in it, wherever it stands."""
    for key, value in front.node.value if front.node is not None else ():
        if key.value == "units" and value.value in ("in", "cm", "mm"):
            return dataclasses.replace(units, length=value.value, density="in" if value.value == "in" else "cm")
    return units


def _counted(yarn: Yarn, front: FrontMatter, settings: Settings, problems: list[Problem]) -> Yarn:
    """The yarn with its number read, which wants its fibre, so it waits for the whole record."""
    if yarn.number is None:
        return yarn
    try:
        number = parse_yarn_number(yarn.number, _fibre_word(yarn), settings.units)
    except Unreadable as unreadable:
        if yarn.length_weight is None and yarn.yield_ is None and front.node is not None:
            reading = Reading(front.file, front.first_line, settings.units, lines_of(front.header))
            at = next(at for key, _, at in Spot(front.node, reading).entries() if key == "number")
            mended = at.line_with(value=unreadable.mended) if unreadable.mended else ""
            at.complain(unreadable.read, unreadable.right, slug="yarn-number", mended=mended)
            problems += reading.problems
        return yarn
    return dataclasses.replace(yarn, counted=number)


def _fibre_word(yarn: Yarn) -> str | None:
    if not yarn.fibre:
        return None
    if {"cotton", "linen"} <= set(yarn.fibre):
        return "cottolin"
    return yarn.main_fibre


def _check_names(found: Mapping[str, Mapping[str, Record]], problems: list[Problem]) -> None:
    """An old name may not be another record's name or old name: an address leads to one page."""
    for sub, records in found.items():
        owners: dict[str, str] = dict.fromkeys(records, "")
        for record in records.values():
            for old in record.was:
                if old in owners:
                    problems.append(
                        Problem(
                            record.file,
                            record.line("was"),
                            "was",
                            old,
                            f"another entry in {sub} has this name; an old name leads to one entry only.",
                            slug="name-taken",
                        )
                    )
                owners[old] = record.name


def nearest_name(name: str, records: Mapping[str, object]) -> str | None:
    """The name that was probably meant."""
    return nearest(name, records)
