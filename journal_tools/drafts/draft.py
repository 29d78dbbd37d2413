"""What is threaded and how it is treadled: everything that decides which thread lies on top."""

from __future__ import annotations

from dataclasses import dataclass

from journal_tools.drafts.unfitting import Unfitting
from journal_tools.notation import Sets, print_sets
from journal_tools.quantities import Unreadable

MOST_CROSSINGS = 40_000_000
"""Ends times picks of the largest draft that is drawn: 5,000 ends by 8,000 picks."""

MOST_TIMES = 100
"""The thickest thread beside the usual one, and the most room that one takes."""


@dataclass(frozen=True)
class Draft:
    """Threading, and either a tie-up with a treadling or a lift plan.

    threading: the shafts of each end (an end on several shafts moves when any of them moves).
    tie_up: the shafts of each treadle. treadling: the treadles of each pick.
    lift_plan: the shafts of each pick. rising: whether the shafts named go up; else they sink and
    all others stay up, for tie-up and lift plan alike.
    warp_colours, weft_colours: a colour name each thread, repeated over the cloth; may be empty.
    warp_order, weft_order: the role or shuttle of each thread, such as ground and pattern, begun again likewise.
    warp_thickness, weft_thickness: how thick each thread is beside the usual 1; warp_spacing, weft_spacing:
    the room that each takes beside the usual 1, less where crammed; begun again likewise.
    floating_selvedges: ends at each edge without a heddle, not in the threading: the shuttle goes over them
    going in and under them coming out.

    Raises Unreadable when these do not fit together.
    """

    threading: Sets
    tie_up: Sets | None = None
    treadling: Sets | None = None
    lift_plan: Sets | None = None
    rising: bool = True
    warp_colours: tuple[str, ...] = ()
    weft_colours: tuple[str, ...] = ()
    warp_order: tuple[str, ...] = ()
    weft_order: tuple[str, ...] = ()
    warp_thickness: tuple[float, ...] = ()
    weft_thickness: tuple[float, ...] = ()
    warp_spacing: tuple[float, ...] = ()
    weft_spacing: tuple[float, ...] = ()
    floating_selvedges: int = 0

    def __post_init__(self) -> None:
        self._refuse_sizes()
        if not self.threading:
            raise Unreadable("", "A draft wants a threading: threading: 1-4.")
        if self.lift_plan is not None and (self.tie_up is not None or self.treadling is not None):
            right = "Write either a lift plan, or a tie-up and a treadling, and not both."
            raise Unfitting("", right, part="lift_plan")
        if not self.lift_plan and not (self.tie_up and self.treadling):
            wanted = "A draft wants a tie-up and a treadling, or a lift plan"
            given, part = self._given()
            raise Unfitting("", f"{wanted}; here is {given}.", part=part)
        self._refuse_untied()
        if len(self.threading) * len(self.picks) > MOST_CROSSINGS:
            sizes = f"{len(self.threading):,} ends by {len(self.picks):,} picks"
            most = f"{MOST_CROSSINGS:,} crossings at most"
            raise Unreadable(sizes, f"That is too much to draw: {most}. Write one repeat.")

    @property
    def picks(self) -> Sets:
        """The shafts named for each pick: the lift plan, or the shafts of the treadles pressed."""
        if self.lift_plan is not None:
            return self.lift_plan
        tied, treadling = self.tie_up or (), self.treadling or ()
        return tuple(frozenset().union(*(tied[treadle - 1] for treadle in pressed)) for pressed in treadling)

    @property
    def shafts(self) -> int:
        """How many shafts the draft takes: the highest that is threaded, tied or lifted."""
        named = (self.threading, self.tie_up or (), self.lift_plan or ())
        return max((shaft for sets in named for some in sets for shaft in some), default=0)

    @property
    def treadles(self) -> int:
        """How many treadles are tied; none with a lift plan."""
        return len(self.tie_up or ())

    def refuse_beyond(self, shafts: int | None = None, treadles: int | None = None) -> None:
        """Raise Unreadable where the draft takes more shafts or treadles than there are."""
        if shafts is not None and self.shafts > shafts:
            self._refuse_shaft_beyond(shafts)
        if treadles is not None and self.treadles > treadles:
            right = f"The tie-up has {self.treadles} treadles, and there are {treadles}."
            raise Unfitting(str(self.treadles), right, part="tie_up")

    def _refuse_shaft_beyond(self, shafts: int) -> None:
        for part, name, thread, sets in (
            ("threading", "threading", "end", self.threading),
            ("tie_up", "tie-up", "treadle", self.tie_up or ()),
            ("lift_plan", "lift plan", "pick", self.lift_plan or ()),
        ):
            for number, some in enumerate(sets, 1):
                if max(some, default=0) > shafts:
                    right = f"The {name} has it at {thread} {number}, and there are {shafts} shafts."
                    raise Unfitting(f"shaft {max(some)}", right, part=part)

    def _refuse_untied(self) -> None:
        for pick, pressed in enumerate(self.treadling or (), 1):
            if max(pressed, default=0) > self.treadles:
                right = f"Pick {pick} presses treadle {max(pressed)}, and the tie-up has {self.treadles}."
                raise Unfitting(print_sets([pressed]), right, part="treadling")

    def _refuse_sizes(self) -> None:
        for part in ("warp_thickness", "weft_thickness", "warp_spacing", "weft_spacing"):
            for figure in getattr(self, part):
                if not 0 < figure <= MOST_TIMES:
                    right = f"A thread is more than 0 and at most {MOST_TIMES} times the usual one."
                    raise Unfitting(f"{figure:g}", right, part=part)

    def _given(self) -> tuple[str, str]:
        """Which of tie-up and treadling there is, in words and as its key."""
        parts = (("a tie-up", self.tie_up, "tie_up"), ("a treadling", self.treadling, "treadling"))
        return next(((f"{name} alone", key) for name, part, key in parts if part), ("neither", ""))
