"""All that can be told of a draft before a single end is threaded."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from journal_tools.drafts.agreement import Answer, agreement_of
from journal_tools.drafts.binders import Binders, binders
from journal_tools.drafts.draft import Draft
from journal_tools.drafts.fewest import Needs, needs, plain_weave_on
from journal_tools.drafts.floats import Float, floats, most_whole, too_long
from journal_tools.drafts.hanging import Hanging, hanging
from journal_tools.drafts.interlacement import drawdown
from journal_tools.drafts.layer import Layer, in_layers, layers_of, name_of_layers, too_long_in
from journal_tools.drafts.naming import Name, name_of
from journal_tools.drafts.repeat import goes_on, true_repeat
from journal_tools.drafts.selvedge import UNTOLD, Selvedge, selvedge, shuttles
from journal_tools.drafts.slips import Slip, slips_in
from journal_tools.drafts.symmetry import Symmetry, symmetry
from journal_tools.drafts.weaves import named_weave

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

MOSTLY = 0.6
"""The share of crossings from which on one system is said to face the cloth (judgement)."""

HIDES = 3.0
"""Ends to picks, or picks to ends, at which the closer of the two hides the other (judgement)."""

ALIKE = 1.5
"""Ends to picks, or picks to ends, up to which neither is said to be more seen (judgement)."""

HELD = 10.0
"""The longest float in mm that cloth bears which is handled (judgement)."""


@dataclass(frozen=True)
class Analysis:
    """What a draft makes. over: (picks, ends). ends_per_m, picks_per_m: of the finished cloth, where known.

    repeat: picks and ends of one true repeat, of which all is told; goes_on: whether picks, and ends, begin again
    after it. layers: where whole cloths lie on one another, each by itself from the top; then name and floats are
    of these. binders: the few threads that alone keep it from falling into layers. bears_mm: the longest float that
    its use bears. plain: the two lifts that weave plain on this threading. selvedge: of one shuttle and one cloth;
    else nothing is told of it. slips: in the threading. answer: whether it is the weave that it is said to be.
    """

    draft: Draft
    over: NDArray[np.bool_]
    ends_per_m: float | None
    picks_per_m: float | None
    said: str
    bears_mm: float | None
    hanging: Hanging
    layers: tuple[Layer, ...]
    binders: Binders | None
    floats: tuple[Float, ...]
    name: Name
    repeat: tuple[int, int]
    goes_on: tuple[bool, bool]
    symmetry: Symmetry
    selvedge: Selvedge
    needs: Needs
    plain: tuple[frozenset[int], frozenset[int]] | None
    slips: tuple[Slip[frozenset[int]], ...]
    answer: Answer

    @property
    def agrees(self) -> bool | None:
        """Whether it is what it is said to be; None where that cannot be told, or it is the other side of that."""
        return {"it is": True, "another": False}.get(self.answer)

    @property
    def block(self) -> NDArray[np.bool_]:
        """One true repeat (picks, ends), of which all else is told."""
        picks, ends = self.repeat
        return self.over[:picks, :ends]

    @property
    def face(self) -> str:
        """What is seen: "warp-faced", "weft-faced", "more warp", "more weft" or "balanced".

        Where one system is three times as close as the other it hides it, whatever the weave. Else the weave
        tells, and where that shows both alike, the closer of the two is seen more. Without setts only the
        weave is known.
        """
        ratio = self.ends_per_m / self.picks_per_m if self.ends_per_m and self.picks_per_m else 1.0
        if ratio >= HIDES or ratio <= 1 / HIDES:
            return "warp-faced" if ratio > 1 else "weft-faced"
        share = float(self.over.mean())
        if share > MOSTLY or share < 1 - MOSTLY:
            return "warp-faced" if share > MOSTLY else "weft-faced"
        if ratio > ALIKE or ratio < 1 / ALIKE:
            return "more warp" if ratio > 1 else "more weft"
        return "balanced"

    @property
    def marked(self) -> NDArray[np.bool_]:
        """The crossings (picks, ends) that lie in a float longer than the use bears."""
        import numpy as np

        if self.bears_mm is None:
            return np.zeros(self.over.shape, dtype=bool)
        warp, weft = (
            None if not per_m else self.bears_mm * per_m / 1000 for per_m in (self.picks_per_m, self.ends_per_m)
        )
        if self.layers:
            marked = too_long_in(self.layers, self.block, warp, weft, self.goes_on)
        else:
            marked = too_long(self.block, most_whole(warp), most_whole(weft), self.goes_on)
        picks, ends = (np.arange(all_) % once for all_, once in zip(self.over.shape, self.repeat, strict=True))
        found: NDArray[np.bool_] = marked[np.ix_(picks, ends)]
        return found

    def float_mm(self, one: Float) -> float | None:
        """The length of a float in the finished cloth."""
        return one.mm(self.picks_per_m if one.system == "warp" else self.ends_per_m)

    def as_json(self) -> Mapping[str, Any]:
        """Plain values: ends, picks, shafts and treadles counted from 1, lengths in mm."""
        plain, slips = self.plain, [slip_as_json(slip) for slip in self.slips]
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
            "layer_weaves": [
                {"weave": layer.name.text, "twill_direction": layer.name.direction or None} for layer in self.layers
            ],
            "binding_ends": [end + 1 for end in self.binders.ends] if self.binders else [],
            "binding_picks": [pick + 1 for pick in self.binders.picks] if self.binders else [],
            "loose_ends": [end + 1 for end in self.hanging.loose_ends],
            "loose_picks": [pick + 1 for pick in self.hanging.loose_picks],
            "floats": [
                {
                    "system": one.system,
                    "side": one.side,
                    "threads": one.threads,
                    "mm": None if (mm := self.float_mm(one)) is None else round(mm, 2),
                    "at": [[thread + 1, start + 1] for thread, start in one.at],
                    "layer": None if one.layer is None else one.layer + 1,
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
            "is_other_side": self.answer == "its other side",
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
            "threading_slip": slips[0] if slips else None,
            "threading_slips": slips,
        }


def slip_as_json(slip: Slip[frozenset[int]]) -> Mapping[str, Any]:
    """A slip as plain values, ends counted from 1."""
    return {
        "kind": slip.kind,
        "end": slip.place + 1,
        "ends": slip.threads,
        "repeat": slip.repeat,
        "read": None if slip.read is None else sorted(slip.read),
        "right": None if slip.right is None else sorted(slip.right),
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
    joined = goes_on(over, repeat)
    hangs, meant = hanging(over), in_layers(said_weave)
    layers = layers_of(repeat, joined) if hangs.verdict == "layers" else ()
    name = name_of_layers(layers) if layers else name_of(repeat)
    return Analysis(
        draft,
        over,
        ends_per_m,
        picks_per_m,
        said_weave,
        bears_mm,
        hangs,
        layers,
        None if layers or not (meant or hangs.together) else binders(over, meant),
        tuple(one for layer in layers for one in layer.floats) if layers else floats(repeat, joined),
        name,
        (len(repeat), len(repeat.T)),
        joined,
        symmetry(repeat),
        UNTOLD if layers or shuttles(draft) > 1 else selvedge(over[: len(repeat)]),
        needs(draft),
        plain_weave_on(draft),
        () if "accent" in draft.warp_order else slips_in(draft.threading),
        _answer(draft, repeat, layers, name, said_weave),
    )


def agreement(draft: Draft, said: str) -> str:
    """What a draft weaves, where that is another weave than it is said to be; "" where it is, or nobody can tell."""
    if named_weave(said) is None:
        return ""
    over = drawdown(draft)
    repeat = true_repeat(over)
    layers = layers_of(repeat) if hanging(over).verdict == "layers" else ()
    name = name_of_layers(layers) if layers else name_of(repeat)
    return name.text if _answer(draft, repeat, layers, name, said) == "another" else ""


def _answer(draft: Draft, repeat: NDArray[np.bool_], layers: tuple[Layer, ...], name: Name, said: str) -> Answer:
    """Of layers only what holds of each: which of them is meant, nobody says."""
    answers = {agreement_of(layer.over, layer.name, said) for layer in layers} or {
        agreement_of(repeat, name, said, draft.threading)
    }
    return answers.pop() if len(answers) == 1 else ""
