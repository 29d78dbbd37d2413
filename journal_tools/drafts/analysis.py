"""All that can be told of a draft before a single end is threaded."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from journal_tools.drafts.draft import Draft
from journal_tools.drafts.fewest import Needs, needs, plain_weave_on
from journal_tools.drafts.floats import Float, floats, too_long
from journal_tools.drafts.hanging import Hanging, hanging
from journal_tools.drafts.interlacement import drawdown
from journal_tools.drafts.likeness import same_cloth
from journal_tools.drafts.naming import NOT_NAMED, Name, name_of
from journal_tools.drafts.repeat import true_repeat
from journal_tools.drafts.selvedge import Selvedge, selvedge
from journal_tools.drafts.slips import Slip, slip_in
from journal_tools.drafts.symmetry import Symmetry, symmetry
from journal_tools.drafts.weaves import Face, named_weave

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

MOSTLY = 0.6
"""The share of crossings from which on one system is said to face the cloth (judgement)."""

HIDES = 3.0
"""Ends to picks, or picks to ends, at which the closer of the two hides the other (judgement)."""

WORN, HELD, FREE = 6.0, 10.0, 20.0
"""Floats in mm that cloth bears which is worn or wiped with, handled, or only looked at (judgement)."""


@dataclass(frozen=True)
class Analysis:
    """What a draft makes. over: (picks, ends). ends_per_m, picks_per_m: of the finished cloth, where known.

    floats: of one true repeat, woven on and on. bears_mm: the longest float that its use bears. plain: the two
    lifts that weave plain on this threading. agrees: whether it is the weave that it is said to be; None
    where that cannot be told.
    """

    draft: Draft
    over: NDArray[np.bool_]
    ends_per_m: float | None
    picks_per_m: float | None
    said: str
    bears_mm: float | None
    hanging: Hanging
    floats: tuple[Float, ...]
    name: Name
    repeat: tuple[int, int]
    symmetry: Symmetry
    selvedge: Selvedge
    needs: Needs
    plain: tuple[frozenset[int], frozenset[int]] | None
    threading_slip: Slip[frozenset[int]] | None
    agrees: bool | None

    @property
    def block(self) -> NDArray[np.bool_]:
        """One true repeat (picks, ends), of which all else is told."""
        picks, ends = self.repeat
        return self.over[:picks, :ends]

    @property
    def face(self) -> str:
        """What is seen: "warp-faced", "weft-faced" or "balanced"."""
        share = float(self.over.mean())
        if self.name.kind in ("plain", "basket", "rib") and self.ends_per_m and self.picks_per_m:
            ratio = self.ends_per_m / self.picks_per_m
            return "warp-faced" if ratio >= HIDES else "weft-faced" if ratio <= 1 / HIDES else "balanced"
        return "warp-faced" if share > MOSTLY else "weft-faced" if share < 1 - MOSTLY else "balanced"

    @property
    def borne(self) -> tuple[int | None, int | None]:
        """The most picks that an end, and ends that a pick, may run over for the use; None without a sett."""
        if self.bears_mm is None:
            return None, None
        warp, weft = (
            None if not per_m else max(1, int(self.bears_mm * per_m / 1000 + 1e-6))
            for per_m in (self.picks_per_m, self.ends_per_m)
        )
        return warp, weft

    @property
    def marked(self) -> NDArray[np.bool_]:
        """The crossings (picks, ends) that lie in a float longer than the use bears."""
        import numpy as np

        picks, ends = self.repeat
        marked = too_long(self.over[:picks, :ends], *self.borne)
        return marked[np.ix_(np.arange(self.over.shape[0]) % picks, np.arange(self.over.shape[1]) % ends)]

    def float_mm(self, one: Float) -> float | None:
        """The length of a float in the finished cloth."""
        return one.mm(self.picks_per_m if one.system == "warp" else self.ends_per_m)

    def as_json(self) -> Mapping[str, Any]:
        """Plain values: ends, picks, shafts and treadles counted from 1, lengths in mm."""
        slip, plain = self.threading_slip, self.plain
        return {
            "ends": len(self.draft.threading),
            "picks": len(self.draft.picks),
            "shafts": self.draft.shafts,
            "treadles": self.draft.treadles,
            "hangs_together": self.hanging.together,
            "verdict": self.hanging.verdict,
            "layers": [
                {"ends": [end + 1 for end in part.ends], "picks": [pick + 1 for pick in part.picks]}
                for part in self.hanging.layers
            ],
            "loose_ends": [end + 1 for end in self.hanging.loose_ends],
            "loose_picks": [pick + 1 for pick in self.hanging.loose_picks],
            "floats": [
                {
                    "system": one.system,
                    "side": one.side,
                    "threads": one.threads,
                    "mm": None if (mm := self.float_mm(one)) is None else round(mm, 2),
                    "at": [[thread + 1, start + 1] for thread, start in one.at],
                }
                for one in self.floats
            ],
            "bears_mm": self.bears_mm,
            "crossings_in_floats_too_long": int(self.marked.sum()),
            "weave": self.name.text,
            "weave_kind": self.name.kind,
            "twill_direction": self.name.direction or None,
            "satin_step": self.name.step or None,
            "said_weave": self.said or None,
            "agrees": self.agrees,
            "face": self.face,
            "warp_on_top": round(float(self.over.mean()), 4),
            "repeat_ends": self.repeat[1],
            "repeat_picks": self.repeat[0],
            "symmetry": dict(vars(self.symmetry)),
            "plain_weave_lifts": None if plain is None else [sorted(lift) for lift in plain],
            "selvedge": dict(vars(self.selvedge)),
            "shafts_that_would_do": self.needs.shafts_that_would_do,
            "unused_shafts": list(self.needs.unused_shafts),
            "idle_shafts": list(self.needs.idle_shafts),
            "unused_treadles": list(self.needs.unused_treadles),
            "threading_slip": None
            if slip is None
            else {
                "kind": slip.kind,
                "end": slip.place + 1,
                "repeat": slip.repeat,
                "read": None if slip.read is None else sorted(slip.read),
                "right": None if slip.right is None else sorted(slip.right),
            },
        }


def analysed(
    draft: Draft,
    *,
    ends_per_m: float | None = None,
    picks_per_m: float | None = None,
    said_weave: str = "",
    bears_mm: float | None = None,
) -> Analysis:
    """Look a draft through. ends_per_m, picks_per_m: of the finished cloth. said_weave: what its record calls it."""
    over = drawdown(draft)
    repeat = true_repeat(over)
    name = name_of(repeat)
    return Analysis(
        draft,
        over,
        ends_per_m,
        picks_per_m,
        said_weave,
        bears_mm,
        hanging(over),
        floats(repeat),
        name,
        (len(repeat), len(repeat.T)),
        symmetry(repeat),
        selvedge(over),
        needs(draft),
        plain_weave_on(draft),
        None if "accent" in draft.warp_order else slip_in(draft.threading),
        _agrees(repeat, name, said_weave),
    )


def agreement(draft: Draft, said: str) -> str:
    """What a draft weaves, where that is another weave than it is said to be; "" where it is, or nobody can tell."""
    if named_weave(said) is None:
        return ""
    repeat = true_repeat(drawdown(draft))
    name = name_of(repeat)
    return name.text if _agrees(repeat, name, said) is False else ""


def _agrees(repeat: NDArray[np.bool_], name: Name, said: str) -> bool | None:
    """Whether a cloth is the weave that it is said to be; a cloth or a word without a name tells nothing."""
    weave = named_weave(said) if said else None
    if weave is None:
        return None
    meant = drawdown(weave.draft)
    if same_cloth(repeat, meant):
        return True
    if name.kind == "rib" and "plain" in weave.name:
        return None
    if weave.face is not Face.BALANCED and "plain" in weave.name:
        return None  # "weft-faced" is said of many a weave
    if any(kind in name.text and kind in weave.name for kind in ("broken", "herringbone", "zigzag", "point")):
        return True
    return None if name.kind == NOT_NAMED or _kin(name.text, weave.name) else False


def _kin(found: str, said: str) -> bool:
    """Whether one name may be a kind of the other: a point twill of eight shafts and a twill that is said to be one."""
    kinds = ("twill", "satin", "basket", "huck", "waffle")
    return any(kind in found and kind in said and not (found[:1].isdigit() and said[:1].isdigit()) for kind in kinds)
