"""`learn:`, by which a weaver keeps cloth out of what the journal learns, and the names it may speak of."""

from __future__ import annotations

import re
from dataclasses import dataclass

from journal_tools.quantities import Unreadable
from journal_tools.records import readers
from journal_tools.records.spot import Spot


@dataclass(frozen=True)
class Learn:
    """What is kept out of what the journal learns.

    direction: "width", "length" or None for both. state: a state as typed, or None for all.
    source: name of the stretch, piece or band it is of, or None for the whole of where it stands.
    """

    yes: bool
    direction: str | None
    state: str | None
    source: str | None
    reason: str


LEARN = re.compile(
    r"no(?:\s+(?P<what>widths?|lengths?|on[_ ]loom|off[_ ]loom|hemmed|washed(?: \d+)?|made[_ ]up))?"
    r"(?:\s+from\s+(?P<source>[^,]+?))?\s*(?:,\s*(?P<reason>.*))?",
    re.IGNORECASE,
)


def learn(spot: Spot) -> tuple[Learn, ...]:
    """`no, beamed badly`, `no widths from bookmarks, pulled in on purpose`, `yes`; one or a list."""
    return readers.several(_learn)(spot)


def _learn(spot: Spot) -> Learn:
    typed = " ".join(spot.text().split())
    if typed.lower() in ("yes", "true"):
        return Learn(True, None, None, None, "")
    match = LEARN.fullmatch(typed)
    if not match:
        raise Unreadable(
            read=typed,
            right="say `no, and why`, `no widths from NAME, and why`, `no lengths, and why` or `no washed 1, and why`.",
        )
    what = (match["what"] or "").lower().replace(" ", "_")
    direction = next((each for each in ("width", "length") if what.startswith(each)), None)
    return Learn(False, direction, None if direction else what or None, match["source"], match["reason"] or "")


def names(called: str, name: str) -> bool:
    """Whether a word of the weaver's is the name of this stretch, piece or band, or its kind.

    `napkin` and `napkins` call "napkin 1" and "napkins 2-6"; a word with a number calls that one only.
    """
    said, known = _plain(called), _plain(name)
    return said == known or (not re.search(r"\d$", said) and kind_of(said) == kind_of(known))


def kind_of(name: str) -> str:
    """What a piece is one of: "napkin" for "napkin 1" and for "napkins 2-6"."""
    words = re.sub(r"[\s\d–-]+$", "", _plain(name)) or _plain(name)
    return words.removesuffix("s") if not words.endswith("ss") else words


def _plain(name: str) -> str:
    return " ".join(name.lower().split())
