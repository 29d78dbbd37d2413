"""Writing a draft as an interchange file: the same draft gives the same bytes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import cycle, islice

from journal_tools.drafts import Draft
from journal_tools.interchange.colours import plain_name
from journal_tools.interchange.what_was_read import Kept, ReadDraft
from journal_tools.interchange.words import OURS, TEXT
from journal_tools.notation import Sets

PLAIN = ("e8dfcb", "43536b", "9c4a2f", "6a7349", "c8a24a", "7b6a8d", "2e2b26", "b8b2a4")
"""Hexes for colours that have only a name, in turn."""

CRLF = "\r\n"


@dataclass(frozen=True)
class Extras:
    """What goes into the file beside the draft. colours: hex by the draft's names. developers: for [WIF],
    which is the journal's owner's to fill. ends_per_m, picks_per_m: the sett, where it is known."""

    text: Mapping[str, str] = field(default_factory=dict)
    notes: str = ""
    colours: Mapping[str, str] = field(default_factory=dict)
    ends_per_m: float | None = None
    picks_per_m: float | None = None
    developers: str = ""
    kept: Sequence[Kept] = ()
    profile: bool = False

    @classmethod
    def of(cls, read: ReadDraft) -> Extras:
        """All that a file held beside its draft."""
        return cls(
            read.text, read.notes, read.colours, read.ends_per_m, read.picks_per_m, read.developers, read.kept,
            read.profile,
        )  # fmt: skip


def write_wif(draft: Draft, extras: Extras | None = None) -> bytes:
    """The file, in UTF-8 with CRLF, sections and keys in one fixed order."""
    extras = extras or Extras()
    sections = list(_sections(draft, extras))
    head = _section(
        "WIF",
        [("Version", "1.1"), ("Date", "April 20, 1997"), ("Developers", extras.developers),
         ("Source Program", "Tenterhook")],
    )  # fmt: skip
    names = [name for name, _ in sections] + [kept.name for kept in extras.kept]
    contents = _section("CONTENTS", [(name, "true") for name in names])
    bodies = [body for _, body in sections] + [
        CRLF.join([f"[{kept.name}]", *kept.lines]) + CRLF for kept in extras.kept
    ]
    return CRLF.join([head, contents, *bodies]).encode("utf-8")


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
    yield made("WEAVING", [("Shafts", draft.shafts), ("Treadles", draft.treadles), shed, *profile])
    names = list(dict.fromkeys((*draft.warp_colours, *draft.weft_colours)))
    hexes = _hexes(names, extras.colours)
    if names:
        yield made("COLOR PALETTE", [("Entries", len(names)), ("Form", "RGB"), ("Range", "0,255")])
        yield made("COLOR TABLE", [(str(n), _rgb(hexes[name])) for n, name in enumerate(names, 1)])
    warp, weft = (("WARP", ends, extras.ends_per_m), ("WEFT", picks, extras.picks_per_m))
    yield made("WARP", _system(warp, draft.warp_colours, draft.warp_spacing, draft.warp_thickness, names))
    yield made("WEFT", _system(weft, draft.weft_colours, draft.weft_spacing, draft.weft_thickness, names))
    yield made("THREADING", _sets(draft.threading))
    if draft.tie_up is not None and draft.treadling is not None:
        yield made("TIEUP", _sets(draft.tie_up))
        yield made("TREADLING", _sets(draft.treadling))
    else:
        yield made("LIFTPLAN", _sets(draft.picks))
    numbers = {name: n for n, name in enumerate(names, 1)}
    for name, order, many in (("WARP", draft.warp_colours, ends), ("WEFT", draft.weft_colours, picks)):
        if len(set(order)) > 1:
            yield made(
                f"{name} COLORS", [(str(n), numbers[each]) for n, each in enumerate(islice(cycle(order), many), 1)]
            )
    for name, figures, many, usual in (
        ("WARP SPACING", draft.warp_spacing, ends, _spacing(extras.ends_per_m)),
        ("WEFT SPACING", draft.weft_spacing, picks, _spacing(extras.picks_per_m)),
        ("WARP THICKNESS", draft.warp_thickness, ends, 1.0),
        ("WEFT THICKNESS", draft.weft_thickness, picks, 1.0),
    ):
        if any(figure != 1 for figure in figures):
            beside = islice(cycle(figures), many)
            yield made(name, [(str(n), _real(each * usual)) for n, each in enumerate(beside, 1)])
    if ours := list(_ours(draft, names, hexes)):
        yield made(OURS, ours)


def _ours(draft: Draft, names: Sequence[str], hexes: Mapping[str, str]) -> Iterator[tuple[str, object]]:
    """What the standard has no place for."""
    for number, name in enumerate(names, 1):
        if name != plain_name(hexes[name]):
            yield f"colour {number}", name
    for key, order in (("warp order", draft.warp_order), ("weft order", draft.weft_order)):
        if order:
            yield key, ", ".join(order)
    if draft.floating_selvedges:
        yield "floating selvedges", draft.floating_selvedges


def _system(
    system: tuple[str, int, float | None],
    colours: Sequence[str],
    spacing: Sequence[float],
    thickness: Sequence[float],
    names: Sequence[str],
) -> list[tuple[str, object]]:
    _, threads, per_m = system
    found: list[tuple[str, object]] = [("Threads", threads)]
    if colours:
        found.append(("Color", names.index(colours[0]) + 1))
    if per_m:
        found += [("Units", "Centimeters"), ("Spacing", _real(_spacing(per_m)))]
    elif any(figure != 1 for figure in spacing):
        found.append(("Spacing", "1"))
    if any(figure != 1 for figure in thickness):
        found.append(("Thickness", "1"))
    return found


def _sets(sets: Sets) -> list[tuple[str, object]]:
    return [(str(n), ",".join(map(str, sorted(each)))) for n, each in enumerate(sets, 1)]


def _spacing(per_m: float | None) -> float:
    """Centimetres to a thread; 1 where nobody knows, so that others stand beside it."""
    return 100 / per_m if per_m else 1.0


def _real(figure: float) -> str:
    return f"{figure:.9g}"


def _rgb(hex_: str) -> str:
    return ",".join(str(int(hex_[n : n + 2], 16)) for n in (0, 2, 4))


def _hexes(names: Sequence[str], known: Mapping[str, str]) -> dict[str, str]:
    return {name: known.get(name, PLAIN[n % len(PLAIN)]).lstrip("#").lower() for n, name in enumerate(names)}


def _line(text: str) -> str:
    return " ".join(text.split())
