"""A warp's dressing sheet: what is read at the warping board and at the loom."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import groupby

from journal_tools.dressing import Dressing, Section, dressing_of
from journal_tools.dressing.runs import root_of
from journal_tools.dressing.tied import Tied
from journal_tools.notation import Sets
from journal_tools.pages.archive import Archive
from journal_tools.pages.dressing_view import Card, DressingView, Group, Line, Part, Ticks, WindingPart
from journal_tools.pages.dressing_winding import winding_parts
from journal_tools.pages.dressing_words import draft_words, heddle_words, later_words, short_words, sley_words
from journal_tools.pages.views import Link
from journal_tools.records import Warp

IN_A_ROW = 10
"""Boxes of one repeat each in a row, so that ten of them are counted at a glance."""
ACROSS = 60
"""Letters in a row of a sheet, in the large size."""
MOST_LIFTS = 16
"""Picks of a lift plan that are drawn as a card; a longer one stands in notation."""


def dressing_address(warp: Warp) -> str:
    """Where a warp's dressing sheet is, without a suffix."""
    return f"warps/{warp.name}/dressing"


def dressing_link(archive: Archive, warp: Warp) -> Link | None:
    """The way to a warp's dressing sheet; None where there is neither a threading nor an order to dress by."""
    if not _dressing(archive, warp).worth_a_page:
        return None
    return Link("dressing sheet, to print", f"{dressing_address(warp)}.html")


def _dressing(archive: Archive, warp: Warp) -> Dressing:
    """A warp's dressing, made once in a build."""
    if warp.name not in archive.dressings:
        archive.dressings[warp.name] = dressing_of(archive.journal, warp)
    return archive.dressings[warp.name]


def dressing_view(archive: Archive, warp: Warp) -> DressingView:
    """Everything on a dressing sheet."""
    made = _dressing(archive, warp)
    unit = "in" if _unit(archive, warp, made) == "in" else "cm"
    about = " · ".join(word for word in (made.loom.heading if made.loom else "", draft_words(archive, made)) if word)
    windings = tuple(winding_parts(archive, made, unit))
    threading = _threading(made) if made.sections else None
    card = _card(made.tied) if made.tied is not None else None
    heddles = Part("Heddles", *heddle_words(made, archive.public)) if made.shafts else None
    sley = Part("Sleying", *sley_words(made, unit)) if made.sleyed is not None else None
    first = 50 + sum(_winding_height(part) for part in windings)
    second = (60 + _lines_height(threading.lines) if threading else 0) + (90 + 21 * len(card.rows) if card else 0)
    if threading is None and card is None:
        second = first  # one sheet holds it all
    heddles, first, second = _on_a_sheet(heddles, first, second)
    sley, _, _ = _on_a_sheet(sley, first, second)
    return DressingView(
        f"Dressing the loom: {warp.heading}",
        about,
        Link(warp.heading, f"warps/{warp.name}.html"),
        tuple(short_words(made)),
        windings,
        sley,
        heddles,
        threading,
        card,
        tuple(later_words(archive, made, unit)),
    )


def _on_a_sheet(part: Part | None, first: int, second: int) -> tuple[Part | None, int, int]:
    """The part on the sheet that has more room, and what then stands on both, in points."""
    if part is None:
        return None, first, second
    height = 30 + 20 * -(-sum(map(len, part.large)) // ACROSS) + 16 * len(part.said)
    early = first <= second
    return replace(part, early=early), first + height * early, second + height * (not early)


def _winding_height(part: WindingPart) -> int:
    """About how high a winding is on paper, in points: its title, sentences and heads, then every line."""
    return 130 + 22 * len(part.strands.rows) + _lines_height(part.bouts)


def _lines_height(lines: Sequence[Line]) -> int:
    """About how high lines are: each with its words, its boxes twenty in a row, groups that stand once by threes."""
    points = 0
    for line in lines:
        words = sum(map(len, line.groups)) + (len(line.once[0].words) if len(line.once) == 1 else 0)
        points += 29 + 20 * (words // ACROSS) + 18 * -(-sum(len(row.boxes) for row in line.rows) // 20)
        points += 20 * -(-len(line.once) // 3) if len(line.once) > 1 else 0
    return points


def _unit(archive: Archive, warp: Warp, made: Dressing) -> str:
    """The unit that the width in the reed was written in, else the reed's, else the journal's."""
    width = warp.woven()[0].in_reed or warp.in_reed
    if width is not None and width.length is not None:
        return width.length.unit
    if made.sleyed is not None:
        return made.sleyed.reed.unit
    return warp.units or archive.journal.settings.length


def _threading(made: Dressing) -> Part:
    floating = made.floating // 2
    each = f"{floating} floating selvedge{'s' if floating > 1 else ''}"
    said = [f"{made.ends} ends have heddles."]
    if floating:
        said.append(f"At each edge, {each} outside of these: sleyed, tied on and weighted, but in no heddle.")
    if made.doubled:
        shaft = "+".join(map(str, sorted(made.threading[0])))
        said.append(f"Doubled selvedges: the first {made.doubled} ends share shaft {shaft}, the last ones theirs.")
    return Part("Threading", (), tuple(said), tuple(_lines(made.sections)))


def _lines(sections: Sequence[Section]) -> Iterator[Line]:
    number = 0
    for section in sections:
        ends = f"{section.repeat_ends} end{'s' if section.repeat_ends > 1 else ''}"
        if section.times == 1:
            last = section is sections[-1] and len(sections) > 1
            note = f"{ends}, the beginning of a repeat" if section.broken else ends
            yield Line("Last" if last else "Once", (), (), note, tuple(_once(section, number)))
        else:
            rows = _rows_of_one(section, number) if len(section.groups) == 1 else _rows_of_many(section, number)
            yield Line(f"{section.times} times", tuple(_joined(section.groups)), tuple(rows), f"{ends} each time")
        number += section.boxes


def _once(section: Section, number: int) -> Iterator[Group]:
    for counts in section.rows():
        for box, (group, to) in enumerate(zip(section.groups, counts, strict=True), number + 1):
            yield Group(box, _shafts(group), to)


def _rows_of_one(section: Section, number: int) -> Iterator[Ticks]:
    for start in range(0, section.times, IN_A_ROW):
        end = min(start + IN_A_ROW, section.times)
        yield Ticks(tuple(range(number + start + 1, number + end + 1)), section.first - 1 + end * section.repeat_ends)


def _rows_of_many(section: Section, number: int) -> Iterator[Ticks]:
    """A row for each repeat, a box for each of its groups."""
    for at, counts in enumerate(section.rows()):
        start = number + at * len(counts)
        yield Ticks(tuple(range(start + 1, start + len(counts) + 1)), counts[-1])


def _joined(groups: Sequence[Sets]) -> Iterator[str]:
    """Each group as its shafts, with how often it stands where it stands again beside itself."""
    for group, same in groupby(groups):
        times = len(list(same))
        yield f"{_shafts(group)} ({times} times)" if times > 1 else _shafts(group)


def _shafts(group: Sets) -> str:
    """The shafts of each end, with room between them: `1 2 3 4`, `1+3 2`; `none` for an end without a heddle."""
    return " ".join("+".join(map(str, sorted(end))) or "none" for end in group)


def _card(tied: Tied) -> Card:
    moves = "go up" if tied.rising else "go down"
    shed = f"{'Rising' if tied.rising else 'Sinking'} shed: the shafts tied {moves}."
    shafts = range(tied.shafts, 0, -1)
    if tied.treadles:
        heads = tuple(map(str, range(1, len(tied.treadles) + 1)))
        rows = tuple((f"shaft {n}", tuple(str(n) if n in tied_to else "" for tied_to in tied.treadles)) for n in shafts)
        said = (f"Treadling: {tied.written}; then again from the first.",)
        return Card("Tie-up", shed, ("treadle", *heads), rows, said)
    lifts = root_of(tied.picks)
    said = ("Then again from the first.",)
    if len(lifts) > MOST_LIFTS:
        return Card("Lift plan", shed.replace("tied", "named"), (), (), (f"{tied.written}.", *said))
    heads = tuple(map(str, range(1, len(lifts) + 1)))
    rows = tuple((f"shaft {n}", tuple(str(n) if n in lifted else "" for lifted in lifts)) for n in shafts)
    return Card("Lift plan", shed.replace("tied", "named"), ("pick", *heads), rows, said)

