"""A design and the physics together: the front matter of one warp's record."""

from __future__ import annotations

from fractions import Fraction
from random import Random

from tests.workshop import tape
from tests.workshop.block_yaml import Value
from tests.workshop.design import Design, Piece, Plan, Stretch
from tests.workshop.measuring import Measured, measure, planned
from tests.workshop.orders import ends_in_a_dent, threads
from tests.workshop.physics import CLOTHS, Conditions, creep, piece_steps, warp_steps, within


def record(design: Design) -> dict[str, Value]:
    """The front matter of a design, in the order in which a weaver would write it."""
    rng = Random(f"{design.name} {design.seed}")
    width = width_in_reed(design)
    woven = [_weave(rng, design, stretch, stretch.in_reed or width) for stretch in design.stretches]
    fields: dict[str, Value] = {"title": design.title, **design.head}
    if design.temple:
        fields["temple"] = "yes"
    if width and not design.stretches[0].in_reed:
        fields["in_reed"] = tape.show(Fraction(width), design.unit)
    account = _account(design, woven)
    if account:
        warp = dict(_mapping(fields["warp"]))
        warp["wound"] = account.pop("wound")
        if design.marked:
            warp["marked"] = _marks(design, woven[0])
        fields["warp"] = warp
    alone = len(design.stretches) == 1 and not design.stretches[0].name
    if alone:
        fields |= _stretch(design, design.stretches[0], woven[0])
    if account:
        fields["where_it_went"] = dict(account)
    if not alone:
        fields["stretches"] = [
            {"name": stretch.name, **_stretch(design, stretch, cloth)}
            for stretch, cloth in zip(design.stretches, woven, strict=True)
        ]
    return fields | dict(design.tail)


def width_in_reed(design: Design) -> float:
    """Width in the reed, to the tape: of the ends, the reed and the sley. 0 where the head types it."""
    if design.in_reed or "reed" not in design.head or "in_reed" in design.head:
        return design.in_reed
    warp = _mapping(design.head["warp"])
    ends = len(threads(str(warp["order"]))) if "order" in warp else int(str(warp["ends"]))
    ends += 2 if "floating_selvedges" in warp else 0
    exact = ends / float(sett(design))
    return float(tape.read(exact, tape.width_mark(design.unit, exact)))


def sett(design: Design) -> Fraction:
    """Ends to the record's unit in the reed."""
    reed = str(design.head["reed"])
    if "per 10 cm" in reed:
        dents, unit = Fraction(reed.split()[0]) / 10, "cm"
    else:
        dents, unit = Fraction(reed.split("/")[0]), reed.split("/")[1]
    dents *= Fraction(tape.MM[design.unit] / tape.MM[unit]).limit_denominator(1000)
    return dents * ends_in_a_dent(str(design.head["sley"]))


def _weave(rng: Random, design: Design, stretch: Stretch, width: float) -> list[Measured]:
    """Every piece of a stretch as measured. Rolled again until the warp's mean lies in its range."""
    real = [piece for piece in stretch.pieces if isinstance(piece, Piece)]
    if not real:
        return []
    cloth = CLOTHS[stretch.cloth]
    close = stretch.sett or (float(sett(design)) if "reed" in design.head else 0.0)
    usual_ends, usual_picks = stretch.usual
    conditions = Conditions(
        closeness=close / usual_ends if usual_ends and close else 1.0,
        picks=stretch.beat / usual_picks if usual_picks and stretch.beat else 1.0,
        temple=design.temple,
        tumbled=design.tumbled,
    )
    while True:
        warp = warp_steps(rng, cloth, conditions)
        gained = creep(rng)
        pieces = []
        for place, piece in enumerate(real):
            steps = piece_steps(rng, cloth, warp, place=place, of=len(real), creep=gained)
            pieces.append(measure(rng, design, stretch, piece, steps, width))
        across = [100 * (1 - piece.washed[0] / width) for piece in pieces if piece.washed]
        along = [100 * (1 - piece.washed[1] / piece.on_loom) for piece in pieces if piece.washed]
        fits_across = not across or within(sum(across) / len(across), cloth.width_range)
        fits_along = not along or within(sum(along) / len(along), cloth.length_range)
        if fits_across and fits_along:
            return pieces


def _stretch(design: Design, stretch: Stretch, woven: list[Measured]) -> dict[str, Value]:
    fields: dict[str, Value] = {}
    if stretch.name and stretch.in_reed:
        fields["in_reed"] = tape.show(Fraction(stretch.in_reed), design.unit)
    fields |= stretch.keys
    if stretch.show_beat:
        fields["beat"] = f"{stretch.beat:g}/{design.unit}"
    if stretch.hem:
        hem = stretch.hem
        fields["hem"] = {
            "depth": f"{tape.show(hem.depth, design.unit)} {design.unit}",
            "turn": f"{tape.show(hem.turn, design.unit)} {design.unit}",
            "edges": hem.edges,
            "sewn": hem.sewn,
            **({"weft": hem.weft} if hem.weft else {}),
        }
    if stretch.fringe:
        fringe = stretch.fringe
        made: dict[str, Value] = {
            "allowed": f"{tape.show(fringe.allowed, design.unit)} {design.unit} each end",
            "style": fringe.style,
        }
        for key, long in (("after_twist", fringe.after_twist), ("finished", fringe.finished)):
            if long:
                made[key] = f"{tape.show(long, design.unit)} {design.unit}"
        fields["fringe"] = made
    if stretch.plan:
        fields["plan"] = [_plan(design, stretch, stretch.plan)]
    rolled = iter(woven)
    pieces = [next(rolled).fields if isinstance(each, Piece) else dict(each) for each in stretch.pieces]
    if design.flat:
        fields |= {key: value for key, value in pieces[0].items() if key != "name"}
    elif pieces:
        fields["pieces"] = list(pieces)
    return fields | dict(stretch.tail)


def _plan(design: Design, stretch: Stretch, plan: Plan) -> dict[str, Value]:
    width = stretch.in_reed or width_in_reed(design)
    return {
        "piece": plan.piece,
        "count": str(plan.count),
        **({"picks": str(plan.picks)} if plan.picks else {}),
        **planned(plan, width, stretch.hem, design.unit),
    }


def _account(design: Design, woven: list[list[Measured]]) -> dict[str, Value]:
    """Where the warp went, with `wound` first: everything but the cloth and its take-up."""
    waste = design.waste
    if waste is None:
        return {}
    unit = design.unit
    lines: dict[str, tuple[int, float]] = {"front tie-on": (1, waste.front), "header": (1, waste.header)}
    number = sum(piece.count for pieces in woven for piece in pieces)
    for stretch, pieces in zip(design.stretches, woven, strict=True):
        if stretch.fringe and pieces:
            ends = 2 * sum(piece.count for piece in pieces)
            lines[f"fringes of {stretch.name}" if stretch.name else "fringes"] = (ends, stretch.fringe.allowed)
    if waste.gap and number > 1:
        lines[waste.gaps] = (number - 1, waste.gap)
    lines |= {name: (1, long) for name, long in waste.more.items()}
    spent = sum(times * long for times, long in lines.values())
    used = sum(piece.count * piece.warp_used for pieces in woven for piece in pieces)
    least = spent + used + waste.thrums
    if unit == "in":
        wound = -(-least // 9) * 9
        shown = f"{tape.show(Fraction(int(wound + waste.misread), 36), 'in')} yd"
    else:
        wound = -(-least // 10) * 10
        shown = f"{(wound + waste.misread) / 100:g} m"
    lines["thrums"] = (1, round(wound - spent - used))
    account: dict[str, Value] = {"wound": shown}
    for name, (times, long) in lines.items():
        each = f"{tape.show(long, unit)} {unit}"
        account[name] = f"{times} of {each}" if times > 1 else each
    return account


def _marks(design: Design, woven: list[Measured]) -> Value:
    """What a marked length of warp wove, for each length marked: the take-up under tension."""
    took_up = woven[0].steps.take_up / 100
    lines: list[Value] = []
    for marked in design.marked:
        wove = tape.read(marked * (1 - took_up), tape.length_mark(design.unit, 30))
        shown = tape.show(marked, design.unit)
        lines.append(f"{shown} {design.unit} wove {tape.show(wove, design.unit)} {design.unit}")
    return lines[0] if len(lines) == 1 else lines


def _mapping(value: Value) -> dict[str, Value]:
    if not isinstance(value, dict):
        raise TypeError("this warp has no mapping of its own")
    return value
