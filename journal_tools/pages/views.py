"""What the templates are given: plain frozen values, nothing to reckon and nothing to look up.

Every text is plain (the templates escape it). Every `href` and `src` is an address from the
top of the site ("yarns/cottolin-22-2.html", "pictures/3fa9.png"); "" means there is no link.
Every tuple may be empty and every `| None` may be None: the part is then left out.
"""

from __future__ import annotations

from dataclasses import dataclass

from journal_tools.pages.view_parts import Card, Chart, DraftPart, Fact, Link, Neighbours, Picture, Table
from journal_tools.pictures.tape import TapeBar
from journal_tools.problems import Problem


@dataclass(frozen=True)
class StateRow:
    """One state of the cloth on one tape's table. Empty `measured` shows "not measured"."""

    state: str
    planned: str = ""
    measured: str = ""
    uncertain: str = ""
    """ "± 1/8 in" """
    so: str = ""
    """ "1/8 in narrower than planned" """
    beyond: bool = False


@dataclass(frozen=True)
class Tape:
    """One tape with its table. direction: "width" or "length"; unit: "in" or "cm"."""

    direction: str
    unit: str
    title: str
    bars: tuple[TapeBar, ...]
    rows: tuple[StateRow, ...]


@dataclass(frozen=True)
class Loss:
    """One step: what was planned, what was measured and what follows, as words."""

    step: str
    """ "width, reed to washed" """
    planned: str = ""
    measured: str = ""
    uncertain: str = ""
    """ "0.7", in points """
    so: str = ""
    whole: bool = False
    """True for a whole loss, set in bold."""
    beyond: bool = False
    note: str = ""
    """ "across the loom, which nobody measured", "mean of 4, 6.5 to 7.9" """


@dataclass(frozen=True)
class Measured:
    """What a cloth did: two tapes and the losses. The same for a warp, a stretch and a piece."""

    width: Tape | None = None
    length: Tape | None = None
    losses: tuple[Loss, ...] = ()
    said: tuple[str, ...] = ()
    """Sentences above the tapes: "Washed, it is 1/8 in narrower than planned." """
    shown: str = ""
    """Whose sizes the tapes show, where there are several pieces."""
    note: str = ""
    """Said once below the losses."""


@dataclass(frozen=True)
class Stretch:
    """A stretch with its pieces. A warp with one plain stretch gives none of these."""

    title: str
    anchor: str
    facts: tuple[Fact, ...] = ()
    picture: Picture | None = None
    measured: Measured | None = None
    pieces: Table | None = None
    notes: tuple[str, ...] = ()


@dataclass(frozen=True)
class Went:
    """One line of where the warp went.

    share: part of the wound length, 0 to 1. kind: "cloth", "waste", "rest" or "total".
    """

    what: str
    length: str
    share: float
    kind: str
    note: str = ""


@dataclass(frozen=True)
class WarpView:
    """A warp's page. The weaver's notes stand between the losses and the stretches."""

    title: str
    about: str = ""
    picture: Picture | None = None
    whole: Picture | None = None
    """The whole width, edge to edge."""
    facts: tuple[Fact, ...] = ()
    measured: Measured | None = None
    stretches: tuple[Stretch, ...] = ()
    pieces: Table | None = None
    """The pieces of a warp without stretches."""
    went: tuple[Went, ...] = ()
    went_note: str = ""
    draft: DraftPart | None = None
    tables: tuple[Table, ...] = ()
    """Anything else that is a table: yarn used against reckoned, weights, fulling, washes."""
    written: tuple[Fact, ...] = ()
    """What the record says besides, of the warp and of each of its parts."""
    photos: tuple[Picture, ...] = ()
    taught: tuple[str, ...] = ()
    problems: tuple[Problem, ...] = ()
    neighbours: Neighbours | None = None


@dataclass(frozen=True)
class Expect:
    """What a yarn will do the next time. about: the cloth that is meant. guess: nothing of it was measured yet."""

    about: str
    rests: str
    guess: bool
    said: tuple[str, ...]
    small: str
    table: Table | None
    fulling: tuple[str, ...]
    plan: Link


@dataclass(frozen=True)
class YarnView:
    """A yarn's page: what it is, what it did, every warp in it."""

    title: str
    about: str = ""
    colours: tuple[tuple[str, str], ...] = ()
    """(name, "#c9b58b") for each colour of the yarn."""
    facts: tuple[Fact, ...] = ()
    expect: Expect | None = None
    said: tuple[str, ...] = ()
    """Sentences: "In 6 warps, width, reed to washed, lost 11.2 % (9.8 to 12.9)." """
    charts: tuple[Chart, ...] = ()
    tables: tuple[Table, ...] = ()
    cards: tuple[Card, ...] = ()
    problems: tuple[Problem, ...] = ()
    neighbours: Neighbours | None = None
    photos: tuple[Picture, ...] = ()


@dataclass(frozen=True)
class DraftView:
    """A draft's page."""

    title: str
    draft: DraftPart
    about: str = ""
    cards: tuple[Card, ...] = ()
    tables: tuple[Table, ...] = ()
    problems: tuple[Problem, ...] = ()
    neighbours: Neighbours | None = None
    photos: tuple[Picture, ...] = ()
    asked: tuple[str, ...] = ()
    """What to look at before it is threaded."""
    said: tuple[str, ...] = ()
    pieces: tuple[tuple[Picture, ...], ...] = ()
    """The whole drawing in rows of pieces, too long floats marked."""
    of_pieces: str = ""
    files: tuple[Link, ...] = ()


@dataclass(frozen=True)
class ThingView:
    """A loom's or a finish's page, and any other that is facts, tables and cards."""

    title: str
    about: str = ""
    facts: tuple[Fact, ...] = ()
    said: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    charts: tuple[Chart, ...] = ()
    tables: tuple[Table, ...] = ()
    cards: tuple[Card, ...] = ()
    problems: tuple[Problem, ...] = ()
    neighbours: Neighbours | None = None
    photos: tuple[Picture, ...] = ()


@dataclass(frozen=True)
class FrontView:
    """The front page. The journal's own words stand between the title and the cards."""

    title: str
    maker: str = ""
    newest: tuple[Card, ...] = ()
    best: tuple[Card, ...] = ()
    counts: tuple[Link, ...] = ()
    """ "42 warps" -> warps.html, "12 yarns" -> yarns.html """
    problems: tuple[Problem, ...] = ()


@dataclass(frozen=True)
class Choice:
    """A field of the filter. name: in the address. every: the answer that leaves nothing out.

    answers: (value, words). of: the heading of the table's column that tells; of a number, as many at most.
    Without it the card tells.
    """

    name: str
    label: str
    every: str
    answers: tuple[tuple[str, str], ...]
    of: str = ""


@dataclass(frozen=True)
class ListView:
    """A list of everything of one kind: cards with a filter, or a table, or both.

    With choices the table has the same things as the cards. counted: what there is a number of: "drafts".
    """

    title: str
    about: str = ""
    cards: tuple[Card, ...] = ()
    filters: bool = False
    """True offers the filter: words, and the choices; yarn, weave and year where there are none."""
    choices: tuple[Choice, ...] = ()
    counted: str = ""
    tables: tuple[Table, ...] = ()
    problems: tuple[Problem, ...] = ()


@dataclass(frozen=True)
class PlanView:
    """The form of the page that plans a warp. Choices are (value, words), the likeliest first."""

    title: str
    about: str
    yarns: tuple[tuple[str, str], ...] = ()
    weaves: tuple[tuple[str, str], ...] = ()
    finishes: tuple[tuple[str, str], ...] = ()
    looms: tuple[tuple[str, str], ...] = ()
    per: str = "inch"
    length_hint: str = ""
    width: str = "18"
    long: str = "28"
    """What the page begins with."""
    scripts: tuple[str, ...] = ()
