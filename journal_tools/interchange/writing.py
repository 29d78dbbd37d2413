"""Writing a draft as an interchange file: the same draft gives the same bytes."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import cycle, islice

from journal_tools.drafts import Draft
from journal_tools.interchange.colours import OURS, plain_name
from journal_tools.interchange.lines import without_unseen
from journal_tools.interchange.threads import NO_COLOUR
from journal_tools.interchange.what_was_read import Kept, ReadDraft
from journal_tools.interchange.words import TEXT
from journal_tools.notation import Sets

PLAIN = ("e8dfcb", "43536b", "9c4a2f", "6a7349", "c8a24a", "7b6a8d", "2e2b26", "b8b2a4")
"""Hexes for colours that have only a name, in turn."""

CRLF = "\r\n"


@dataclass(frozen=True)
class Extras:
    """What goes into the file beside the draft. colours: hex by the draft's names. developers: for [WIF],
    which is the journal's owner's to fill. ends_per_m, picks_per_m: the sett, and end_mm, pick_mm: how thick a
    usual thread is, where they are known. shafts, treadles: as many as there are, where that is more than are used."""

    text: Mapping[str, str] = field(default_factory=dict)
    notes: str = ""
    colours: Mapping[str, str] = field(default_factory=dict)
    ends_per_m: float | None = None
    picks_per_m: float | None = None
    developers: str = ""
    kept: Sequence[Kept] = ()
    profile: bool = False
    end_mm: float | None = None
    pick_mm: float | None = None
    shafts: int | None = None
    treadles: int | None = None

    @classmethod
    def of(cls, read: ReadDraft) -> Extras:
        """All that a file held beside its draft."""
        return cls(
            read.text, read.notes, read.colours, read.ends_per_m, read.picks_per_m, read.developers, read.kept,
            read.profile, read.end_mm, read.pick_mm, read.shafts, read.treadles,
        )  # fmt: skip

    @classmethod
    def of_changed(cls, read: ReadDraft) -> Extras:
        """What of it holds when the draft has been changed: words and colours.

        Sett and thickness may have changed sides, and what is kept may go thread by thread.
        """
        return cls(read.text, read.notes, read.colours, developers=read.developers)


def write_wif(draft: Draft, extras: Extras | None = None) -> bytes:
    """The file, in UTF-8 with CRLF, sections and keys in one fixed order."""
    extras = extras or Extras()
    sections = list(_sections(draft, extras))
    head = _section(
        "WIF",
        [("Version", "1.1"), ("Date", "April 20, 1997"), ("Developers", extras.developers),
         ("Source Program", "Tenterhook")],
    )  # fmt: skip
    names = [name for name, _ in sections] + [kept.name for kept in extras.kept if _can_be_listed(kept.name)]
    contents = _section("CONTENTS", [(name, "true") for name in dict.fromkeys(names)])
    bodies = [body for _, body in sections] + [
        CRLF.join([f"[{kept.name}]", *kept.lines]) + CRLF for kept in extras.kept
    ]
    return CRLF.join([head, contents, *bodies]).encode("utf-8")


def _can_be_listed(name: str) -> bool:
    """Whether a section's name can be a key."""
    return bool(name) and "=" not in name and not name.startswith(";")


def _section(name: str, entries: Sequence[tuple[str, object]]) -> str:
    return CRLF.join([f"[{name}]", *(f"{key}={value}" for key, value in entries)]) + CRLF


def _sections(draft: Draft, extras: Extras) -> Iterator[tuple[str, str]]:
    def made(name: str, entries: Sequence[tuple[str, object]]) -> tuple[str, str]:
        return name, _section(name, entries)

    text = [(key, extras.text[key]) for key in TEXT if extras.text.get(key)]
    text += [(key, value) for key, value in sorted(extras.text.items()) if key not in TEXT and value]
    if text:
        yield made("TEXT", [(key, _line(value)) for key, value in text])
    if extras.notes:
        yield made("NOTES", [(str(n), _line(line)) for n, line in enumerate(extras.notes.split("\n"), 1)])
    ends, picks = len(draft.threading), len(draft.picks)
    profile = [("Profile", "true")] if extras.profile else []
    shed = ("Rising Shed", "true" if draft.rising else "false")
    sizes = [("Shafts", max(draft.shafts, extras.shafts or 0)), ("Treadles", max(draft.treadles, extras.treadles or 0))]
    yield made("WEAVING", [*sizes, shed, *profile])
    given = dict.fromkeys((*draft.warp_colours, *draft.weft_colours, *extras.colours))
    names = [name for name in given if name != NO_COLOUR or name in extras.colours]
    hexes = _hexes(names, extras.colours)
    if names:
        yield made("COLOR PALETTE", [("Entries", len(names)), ("Form", "RGB"), ("Range", "0,255")])
        yield made("COLOR TABLE", [(str(n), _rgb(hexes[name])) for n, name in enumerate(names, 1)])
    warp, weft = (extras.ends_per_m, extras.end_mm), (extras.picks_per_m, extras.pick_mm)
    yield made("WARP", [("Threads", ends), *_usual(draft.warp_colours, names, *warp)])
    yield made("WEFT", [("Threads", picks), *_usual(draft.weft_colours, names, *weft)])
    yield made("THREADING", _sets(draft.threading))
    if draft.tie_up is not None and draft.treadling is not None:
        yield made("TIEUP", _sets(draft.tie_up))
        yield made("TREADLING", _sets(draft.treadling))
    else:
        yield made("LIFTPLAN", _sets(draft.picks))
    numbers = {name: n for n, name in enumerate(names, 1)}
    for name, order, many in (("WARP", draft.warp_colours, ends), ("WEFT", draft.weft_colours, picks)):
        if len(set(order)) > 1:
            whole = enumerate(islice(cycle(order), many), 1)
            yield made(f"{name} COLORS", [(str(n), numbers[each]) for n, each in whole if each in numbers])
    for name, figures, many, usual in (
        ("WARP SPACING", draft.warp_spacing, ends, _spacing(extras.ends_per_m)),
        ("WEFT SPACING", draft.weft_spacing, picks, _spacing(extras.picks_per_m)),
        ("WARP THICKNESS", draft.warp_thickness, ends, _thickness(extras.end_mm)),
        ("WEFT THICKNESS", draft.weft_thickness, picks, _thickness(extras.pick_mm)),
    ):
        if usual and any(figure != 1 for figure in figures):
            beside = islice(cycle(figures), many)
            yield made(name, [(str(n), _real(each * usual)) for n, each in enumerate(beside, 1)])
    if ours := list(_ours(draft, extras, names, hexes)):
        yield made(OURS, ours)


def _ours(
    draft: Draft, extras: Extras, names: Sequence[str], hexes: Mapping[str, str]
) -> Iterator[tuple[str, object]]:
    """What the standard has no place for.

    Among it how threads stand beside one another where nobody knows their sett or their thickness: under the
    standard's own keys it would say that a usual thread is one unit wide.
    """
    for number, name in enumerate(names, 1):
        if name != plain_name(hexes[name]):
            yield f"colour {number}", name
    for key, order in (("warp order", draft.warp_order), ("weft order", draft.weft_order)):
        if order:
            yield key, ", ".join(order)
    if draft.floating_selvedges:
        yield "floating selvedges", draft.floating_selvedges
    for key, figures, usual in (
        ("warp spacing", draft.warp_spacing, extras.ends_per_m),
        ("weft spacing", draft.weft_spacing, extras.picks_per_m),
        ("warp thickness", draft.warp_thickness, extras.end_mm),
        ("weft thickness", draft.weft_thickness, extras.pick_mm),
    ):
        if not usual and any(figure != 1 for figure in figures):
            yield key, ", ".join(repr(figure).removesuffix(".0") for figure in figures)


def _usual(
    colours: Sequence[str], names: Sequence[str], per_m: float | None, mm: float | None
) -> Iterator[tuple[str, object]]:
    """What holds for every thread of a system that is not listed."""
    if colours and all(colour in names for colour in set(colours)):
        yield "Color", names.index(colours[0]) + 1
    if per_m or mm:
        yield "Units", "Centimeters"
    if spacing := _spacing(per_m):
        yield "Spacing", _real(spacing)
    if thickness := _thickness(mm):
        yield "Thickness", _real(thickness)


def _sets(sets: Sets) -> list[tuple[str, object]]:
    return [(str(n), ",".join(map(str, sorted(each)))) for n, each in enumerate(sets, 1)]


def _spacing(per_m: float | None) -> float | None:
    """Centimetres to a thread."""
    return 100 / per_m if per_m else None


def _thickness(mm: float | None) -> float | None:
    """Centimetres through a thread."""
    return mm / 10 if mm else None


def _real(figure: float) -> str:
    return f"{figure:.9g}"


def _rgb(hex_: str) -> str:
    return ",".join(str(int(hex_[n : n + 2], 16)) for n in (0, 2, 4))


def _hexes(names: Sequence[str], known: Mapping[str, str]) -> dict[str, str]:
    return {name: known.get(name, PLAIN[n % len(PLAIN)]).lstrip("#").lower() for n, name in enumerate(names)}


def _line(text: str) -> str:
    """A text as one line of a file, its inner blanks kept."""
    return re.sub(r"[\r\n]+", " ", without_unseen(text)[0]).strip()
