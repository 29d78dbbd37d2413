"""The threading part of a dressing sheet, and the heddles that it takes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from journal_tools.dressing import Dressing, OnShaft, Section
from journal_tools.dressing.along import Begins
from journal_tools.dressing.colour_words import colour_words
from journal_tools.dressing.runs import root_of
from journal_tools.dressing.sections import MOST
from journal_tools.notation import Sets
from journal_tools.pages.dressing_view import Group, Line, Part, Shown, Ticks

IN_A_ROW = 10
"""Boxes of one repeat each in a row, so that ten of them are counted at a glance."""
END_ONE = "End 1 is at the left edge, seen from the front: box 1, the first bout and the first dent are there."


def threading_part(made: Dressing, named: Mapping[str, str]) -> Part:
    """The groups with their boxes, and the colours along them. named: what each colour is called."""
    heddled = sum(1 for end in made.threading if end)
    bare = len(made.threading) - heddled
    none = f", {bare} none" if bare else ""
    said = [f"{heddled} ends have heddles{none}.", END_ONE, *_edges(made)]
    order = made.windings[0].order if len(made.windings) == 1 else ()
    if len(set(order)) == 1 and order[0] in named:
        said.append(f"All of them are {named[order[0]]}.")
    elif any(each.colours for each in made.sections):
        said.append("The colours of each group stand below it.")
    begins = tuple(_begins(each, named) for each in made.begins)
    if begins:
        said.append(
            "The colours do not repeat with the threading. Below the boxes stands where each begins: "
            "3·2 is box 3, from its second end on."
        )
    return Part("threading", "Threading", (), tuple(said), tuple(_lines(made.sections, named)), begins)


def _edges(made: Dressing) -> Iterator[str]:
    """What is done with the outermost ends."""
    if made.floating:
        floating = made.floating // 2
        each = f"{floating} floating selvedge{'s' if floating > 1 else ''}"
        yield f"At each edge, {each} outside of these: sleyed, tied on and weighted, but in no heddle."
    if made.turns is not None and not made.turns.catches:
        left, right = bool(made.turns.missed_left), bool(made.turns.missed_right)
        where = "at both edges" if left and right else f"at the {'left' if left else 'right'} edge"
        yield (
            f"The weft misses the outermost end {where} as it turns, from whichever side it begins: "
            "put a floating selvedge at each edge."
        )
    elif made.turns is not None and made.turns.begin and made.turns.missed_otherwise:
        yield f"Throw the first pick from the {made.turns.begin}: then the weft catches the outermost ends."
    if made.doubled:
        shaft = "+".join(map(str, sorted(made.threading[0])))
        yield f"Doubled selvedges: the first {made.doubled} ends share shaft {shaft}, the last ones theirs."


def _begins(each: Begins, named: Mapping[str, str]) -> str:
    """`3·7: 6 indigo`, from the seventh end of box 3."""
    colours = [named.get(colour, colour) for colour in each.stripe.colours]
    place = f"{each.box}" + (f"·{each.end}" if each.end > 1 else "")
    return f"{place}: {colour_words((colours * each.stripe.ends)[: each.stripe.ends])}"


def _lines(sections: Sequence[Section], named: Mapping[str, str]) -> Iterator[Line]:
    number = 0
    for section in sections:
        ends = f"{section.repeat_ends} end{'s' if section.repeat_ends > 1 else ''}"
        shown = tuple(_shown(section, named))
        if section.times == 1:
            last = section is sections[-1] and len(sections) > 1
            note = f"{ends}, the beginning of a repeat" if section.broken else ends
            yield Line("Last" if last else "Once", (), (), note, tuple(_once(section, shown, number)))
        else:
            rows = _rows_of_one(section, number) if len(section.groups) == 1 else _rows_of_many(section, number)
            yield Line(f"{section.times} times", shown, tuple(rows), f"{ends} each time{_repeats(section)}")
        number += section.boxes


def _repeats(section: Section) -> str:
    """How many repeats of the threading share each box, where several do."""
    group = section.groups[0]
    several = len(group) // len(root_of(group))
    return f", {several} repeats to a box" if len(section.groups) == 1 and len(group) > MOST and several > 1 else ""


def _shown(section: Section, named: Mapping[str, str]) -> Iterator[Shown]:
    for at, group in enumerate(section.groups):
        colours = section.colours[at] if section.colours else ()
        yield Shown(_shafts(group), colour_words([named.get(each, each) for each in colours]) if colours else "")


def _once(section: Section, shown: Sequence[Shown], number: int) -> Iterator[Group]:
    for counts in section.rows():
        for box, (group, to) in enumerate(zip(shown, counts, strict=True), number + 1):
            yield Group(box, group, to)


def _rows_of_one(section: Section, number: int) -> Iterator[Ticks]:
    for start in range(0, section.times, IN_A_ROW):
        end = min(start + IN_A_ROW, section.times)
        yield Ticks(tuple(range(number + start + 1, number + end + 1)), section.first - 1 + end * section.repeat_ends)


def _rows_of_many(section: Section, number: int) -> Iterator[Ticks]:
    """A row for each repeat, a box for each of its groups."""
    for at, counts in enumerate(section.rows()):
        start = number + at * len(counts)
        yield Ticks(tuple(range(start + 1, start + len(counts) + 1)), counts[-1])


def _shafts(group: Sets) -> str:
    """The shafts of each end, with room between them: `1 2 3 4`, `1+3 2`; `none` for an end without a heddle.

    Several repeats that share a box: `4 times (1 2 3 4)`.
    """
    unit = root_of(group) if len(group) > MOST else group
    words = " ".join("+".join(map(str, sorted(end))) or "none" for end in unit)
    return f"{len(group) // len(unit)} times ({words})" if len(unit) < len(group) else words


def heddles_part(made: Dressing, public: bool) -> Part:
    """The heddles of each shaft, large; and against what they are held, small.

    public: whether the sheet is for others, who are not told what a loom has.
    """
    used = [each for each in made.shafts if each.needed]
    large = tuple(f"Shaft {each.shaft}: {each.needed}{_has(each)}" for each in used)
    if made.loom is None or all(each.has is None for each in used):
        said: tuple[str, ...] = () if public else ("How many heddles the loom has is not written down.",)
    elif not made.moves:
        said = ("The loom has enough on every shaft.",)
    else:
        said = tuple(_moves(made))
    return Part("heddles", "Heddles", large, said)


def _moves(made: Dressing) -> Iterator[str]:
    if made.instead is not None:
        shafts, most = made.instead
        odd, even = ("+".join(map(str, range(first, shafts + 1, 2))) for first in (1, 2))
        yield f"Thread straight over {shafts} shafts, {most} heddles each at most, and tie {odd} for 1, {even} for 2."
    for at, move in enumerate(made.moves):
        many = f"{move.heddles} heddle{'s' if move.heddles > 1 else ''}"
        source = f" from shaft {move.source}" if move.source is not None else ""
        do = "move" if source else "add"
        words = f"{do} {many} to shaft {move.shaft}{source}."
        yield f"Or {words}" if made.instead is not None and at == 0 else words[0].upper() + words[1:]


def _has(each: OnShaft) -> str:
    if each.has is None:
        return ""
    return f" of {each.has}, {each.short} short" if each.short else f" of {each.has}"
