"""The short notation for threadings, tie-ups, treadlings, lift plans and colour orders.

    sequence = item { "," item }
    item     = [ number "times" | "mirrored" | "pointed" ] "(" sequence ")" | thread
    thread   = run | set | "none"        in threadings, tie-ups, treadlings and lift plans
             | [ number ] colour         in colour orders
    run      = number "-" number         both ends counted, up or down
    set      = number { "+" number }

Blanks and line ends mean nothing. No text begins with a character that YAML refuses, and whatever
is printed reads back as the same. Shafts and treadles are counted from 1.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import TypeAlias

from journal_tools.notation.manner import Apart, Stripes, Threads
from journal_tools.notation.mended import offers_what_reads
from journal_tools.notation.sequence import how_many, read_sequence
from journal_tools.notation.shorthand import shorthand
from journal_tools.notation.slips import Blanks
from journal_tools.quantities import Unreadable

Sets: TypeAlias = tuple[frozenset[int], ...]
"""One set of shafts an end, a pick or a treadle; or one set of treadles a pick."""

HIGHEST = 200
"""The highest shaft or treadle that is read, so that a slip such as 1-4000 is caught."""

NOTATION = """\
Threadings, tie-ups, treadlings, lift plans and colour orders are short lists: items in order,
with commas between them.

| written | read |
|---|---|
| `1, 2, 3, 4` | one end on each of the shafts 1 to 4 |
| `1-4` | the same; a run counts both of its ends |
| `4-1` | the same the other way: 4, 3, 2, 1 |
| `1+3` | both at once: shafts 1 and 3 lifted together, or treadles 1 and 3 pressed together |
| `none` | an end without a heddle, a treadle with nothing tied, a pick with nothing lifted |
| `12 times (1-4, 3-2)` | what the brackets hold, twelve times over |
| `2 times (3 times (1, 2), 4-1)` | brackets within brackets |
| `pointed (1-8)` | 1 to 8 and back to 1, turning on 8, which stands once |
| `mirrored (1-8)` | 1 to 8 and back to 1, with 8 twice |
| `20 bone, 4 slate` | twenty threads of one colour, then four of another |

- **threading**: the shaft of each end, from the first end to the last.
- **tie_up**: the shafts of each treadle. `1+2, 2+3, 3+4, 4+1` ties shafts 1 and 2 to the first
  treadle, 2 and 3 to the second, and so on.
- **treadling**: the treadle of each pick, from the first pick to the last.
- **lift_plan**: the shafts of each pick. It takes the place of tie-up and treadling.
- **ends_in_dents**: the number of ends in each dent, `none` for an empty one: `20 times (2), none, 4 times (4)`.
- **shed**: `rising`, the shafts named go up and all others stay down (meant when nothing is said),
  or `sinking`, the shafts named go down and all others stay up.
- **warp_colours**, **weft_colours**: the colour of each thread:
  `20 bone, 12 times (4 slate, 24 bone), 4 slate, 20 bone`. A colour without a number is one
  thread. Its name is one word, with a hyphen where it needs two: `dark-slate`.

Words may have capitals or not. Shafts and treadles are counted from 1 to 200.

Where there are more threads than a list has items, the list begins again.
"""

_NONE = re.compile(r"none\b", re.I)
_NUMBER = re.compile(r"[0-9]+")
_RUN = re.compile(r"([0-9]+)\s*-\s*([0-9]+)(?!\s*\+|[0-9])")
_SET = re.compile(r"[0-9]+(?:\s*\+\s*[0-9]+)*")
_COLOUR = re.compile(r"(?:([0-9]+)\s+)?([^\W_][\w-]*)")
_SECOND_WORD = re.compile(r"\s+((?!times\b|x\b)[^\W\d_][\w-]*)", re.I)
_NO_COLOUR = re.compile(r"[0-9_-]*(?:times|x)?$", re.I)
_BLANK_BETWEEN = re.compile(r"(?<=[0-9)])\s+(?=[0-9(])")
_FIGURES = re.compile(r"\s*[1-9]{2,}(?:[\s,]+[1-9]{2,})*\s*")
_MOST_FIGURES = 2_000
_STUCK = re.compile(r"([0-9]+)(?![0-9-])(.+)")


@offers_what_reads
def parse_threading(text: str) -> Sets:
    """The shafts of each end; an end without a heddle has none. Raises Unreadable."""
    return _read_sets(text, "shaft", "1-4, 3-2", _ONE_BY_ONE)


@offers_what_reads
def parse_tie_up(text: str) -> Sets:
    """The shafts tied to each treadle, treadle 1 first. Raises Unreadable."""
    treadles = _read_sets(text, "shaft", "1+2, 2+3, 3+4, 4+1", _TOGETHER)
    if len(treadles) > HIGHEST:
        right = f"A tie-up has one set a treadle: {HIGHEST} at most, and here are {len(treadles):,}."
        raise Unreadable(text, right)
    return treadles


@offers_what_reads
def parse_treadling(text: str) -> Sets:
    """The treadles pressed for each pick. Raises Unreadable."""
    return _read_sets(text, "treadle", "12 times (1-4)", _ONE_BY_ONE)


@offers_what_reads
def parse_lift_plan(text: str) -> Sets:
    """The shafts named for each pick. Raises Unreadable."""
    return _read_sets(text, "shaft", "1+2, 2+3, 3+4, 4+1", _TOGETHER)


@offers_what_reads
def parse_colours(text: str) -> tuple[str, ...]:
    """The name of each thread's colour. Raises Unreadable."""

    def stripe(plain: str, column: int) -> tuple[list[str], int] | None:
        found = _COLOUR.match(plain, column)
        if not found or _NO_COLOUR.match(found.group(2)):
            return None
        if stuck := _STUCK.match(found.group(2)):
            start, number, colour = found.start(2), stuck.group(1), stuck.group(2).lstrip("_")
            parted = f"{number} {colour}"
            right = (
                f"A blank is wanted between number and colour at column {start + 1}: {parted}. "
                f"Where it is all one name, a hyphen: {number}-{colour}."
            )
            mended = "" if found.group(1) else text[:start] + parted + text[found.end() :]
            raise Unreadable(text, right, start, mended)
        if more := _SECOND_WORD.match(plain, found.end()):
            word, start = more.group(1), more.start(1)
            right = (
                f'A comma is wanted before "{word}" at column {start + 1}, '
                f"or a hyphen if {found.group(2)}-{word} is one colour."
            )
            raise Unreadable(text, right, start)
        return [found.group(2)] * how_many(text, found.group(1) or "1", column), found.end()

    return read_sequence(text, stripe, "The colour of a thread is wanted", "20 bone, 4 slate")


def is_colour(name: str) -> bool:
    """Whether this can stand for a colour in a colour order."""
    found = _COLOUR.fullmatch(name)
    if found is None or found.group(1):
        return False
    return not _NO_COLOUR.match(name) and not _STUCK.match(name)


def print_sets(sets: Sequence[frozenset[int]]) -> str:
    """The notation of a threading or treadling, with runs and repeats.

    Raises Unreadable for a shaft or treadle that could not be read again, above HIGHEST.
    """
    _refuse_unwritable(sets)
    return shorthand(sets, Threads())


def print_tie_up(sets: Sequence[frozenset[int]]) -> str:
    """The notation of a tie-up, a treadle after the other and each written out.

    `1-4` would be read by any weaver as one treadle with four shafts. Raises Unreadable as print_sets.
    """
    _refuse_unwritable(sets)
    return Apart().run(sets)


def print_lift_plan(sets: Sequence[frozenset[int]]) -> str:
    """The notation of a lift plan, with repeats and no runs. Raises Unreadable as print_sets."""
    _refuse_unwritable(sets)
    return shorthand(sets, Apart())


def _refuse_unwritable(sets: Sequence[frozenset[int]]) -> None:
    for place, numbers in enumerate(sets, 1):
        if numbers and not 1 <= min(numbers) <= max(numbers) <= HIGHEST:
            odd = max(numbers) if max(numbers) > HIGHEST else min(numbers)
            counted = f"Shafts and treadles are counted from 1 to {HIGHEST}"
            raise Unreadable(str(odd), f"{counted}, and {odd} stands at place {place}: it cannot be written.")


def print_colours(colours: Sequence[str]) -> str:
    """The notation of a colour order: "20 bone, 12 times (4 slate, 24 bone)"."""
    return shorthand(colours, Stripes())


def _read_sets(text: str, what: str, example: str, blanks: Blanks) -> Sets:
    """Read a sequence of sets. what: "shaft" or "treadle". blanks: what is meant by those between numbers."""

    def number(digits: str, column: int) -> int:
        if len(digits) > len(str(HIGHEST)) or not 1 <= int(digits) <= HIGHEST:
            counted = f"{what.capitalize()}s are counted from 1 to {HIGHEST}"
            right = f"{counted}; {digits[:30]} at column {column + 1} is none of them."
            if blanks is _ONE_BY_ONE and (each := _each_figure(text)):
                raise Unreadable(text, f"{right} Where each figure is a {what}: {each}.", column, each)
            raise Unreadable(text, right, column)
        return int(digits)

    def thread(plain: str, column: int) -> tuple[list[frozenset[int]], int] | None:
        if none := _NONE.match(plain, column):
            return [frozenset()], none.end()
        if run := _RUN.match(plain, column):
            first, last = number(run.group(1), run.start(1)), number(run.group(2), run.start(2))
            step = 1 if first <= last else -1
            return [frozenset({n}) for n in range(first, last + step, step)], run.end()
        found = _SET.match(plain, column)
        if not found:
            return None
        numbers = [number(n.group(), n.start()) for n in _NUMBER.finditer(plain, column, found.end())]
        if len(set(numbers)) < len(numbers):
            raise Unreadable(text, f"A {what} stands twice in the set at column {column + 1}.", column)
        return [frozenset(numbers)], found.end()

    return read_sequence(text, thread, f"The number of a {what} is wanted", example, blanks=blanks)


def _one_by_one(text: str) -> str:
    """A threading or treadling with a comma at every blank between numbers, or each figure for itself."""
    if all(len(number) > 2 for number in _NUMBER.findall(text)) and (each := _each_figure(text)):
        return each
    return _BLANK_BETWEEN.sub(", ", text)


def _together(text: str) -> str:
    """A tie-up or lift plan whose blanks part the shafts of one set, `1 2, 2 3`; "" where they may part the sets."""
    if "," not in text and "+" not in text:
        return ""
    return ",".join(_BLANK_BETWEEN.sub(", " if "+" in item else "+", item) for item in text.split(","))


def _each_figure(text: str) -> str:
    """What `1234 1234` means where each figure is a shaft; "" where the text holds anything else."""
    if len(text) > _MOST_FIGURES or not _FIGURES.fullmatch(text):
        return ""
    return print_sets([frozenset({int(figure)}) for figure in text if figure.isdigit()])


_ONE_BY_ONE = Blanks(_one_by_one)
_TOGETHER = Blanks(_together, " Where both go together, a plus: 1+2.")
