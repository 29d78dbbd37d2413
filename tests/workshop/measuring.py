"""One piece on its way through the states: its true size by the physics, then what the tape says."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from random import Random

from tests.workshop import tape
from tests.workshop.block_yaml import Value
from tests.workshop.design import Design, Hem, Piece, Plan, Stretch
from tests.workshop.orders import threads
from tests.workshop.physics import CLOTHS, Steps, fulled_to, later_wash, weft_length
from tests.workshop.shelf import TEX, WASHED_OUT

METRES = {"in": 0.0254, "cm": 0.01}


@dataclass(frozen=True)
class Measured:
    """A piece as written down. on_loom: its length as read; washed: width and length of wash 1 as
    read, of the cloth without hems, None where hems hide it or it was not measured.
    """

    fields: dict[str, Value]
    steps: Steps
    count: int
    on_loom: float
    washed: tuple[float, float] | None
    warp_used: float


class Tape:
    """Sizes as read, one state after the other; cloth that reads larger than before is read again."""

    def __init__(self, rng: Random, unit: str, may_grow: bool) -> None:
        self.rng, self.unit, self.may_grow = rng, unit, may_grow
        self.last: tuple[Fraction, Fraction] | None = None
        self.widest: Fraction | None = None

    def read(self, width: float, length: float) -> tuple[Fraction, Fraction]:
        """Width and length to the tape; cloth wanders a little, so the tape is not quite the cloth."""
        width += self.rng.gauss(0, 0.0008 * width)
        length += self.rng.gauss(0, 0.0012 * length)
        across = tape.read(width, tape.width_mark(self.unit, width))
        along = tape.read(length, tape.length_mark(self.unit, length))
        if self.widest is not None:
            across = min(across, self.widest)
        if self.last is not None and not self.may_grow:
            across, along = min(across, self.last[0]), min(along, self.last[1])
        self.last = across, along
        return across, along


def measure(
    rng: Random, design: Design, stretch: Stretch, piece: Piece, steps: Steps, width_in_reed: float
) -> Measured:
    """Weave, cut, hem, wash and weigh one piece."""
    cloth, unit, states = CLOTHS[stretch.cloth], design.unit, piece.shows.split()
    reader = Tape(rng, unit, cloth.may_grow)
    reader.widest = Fraction(width_in_reed)
    fields: dict[str, Value] = {"name": piece.name} if piece.name else {}
    on_loom = piece.long * (1 + rng.gauss(0, 0.002))
    width = width_in_reed * (1 - steps.draw / 100)
    loom = reader.read(width, on_loom)
    warp_used = on_loom / (1 - steps.take_up / 100)
    picks = round(stretch.beat * rng.gauss(1, 0.008) * on_loom)
    if piece.picks:
        fields["picks"] = str(picks)
    if piece.warp_used:
        fields["warp_used"] = f"{tape.show(tape.read(warp_used, tape.length_mark(unit, warp_used)), unit)} {unit}"
    if "on_loom" in states:
        fields["on_loom"] = _state(piece, "on_loom", loom, unit)
    width *= 1 - steps.off_width / 100
    length = on_loom * (1 - steps.off_length / 100)
    off = reader.read(width, length)
    if "off_loom" in states:
        fields["off_loom"] = _state(piece, "off_loom", off, unit)
    hem = stretch.hem
    hemmed_first = hem is not None and hem.sewn == "before washing" and "hemmed" in states
    if hem is not None and hemmed_first:
        width, length = width - hem.eats[0], length - hem.eats[1]
        reader.last = None
        fields["hemmed"] = _state(piece, "hemmed", reader.read(width, length), unit)
    before = width, length
    width *= 1 - steps.wash_width / 100
    length *= 1 - steps.wash_length / 100
    washed = [reader.read(width, length)]
    if stretch.fulling:
        fields["fulling"] = _fulling(rng, stretch.fulling, before, washed[0], unit)
    for number in range(2, piece.washes + 1):
        across, along = later_wash(rng, cloth, number)
        width, length = width * (1 - across / 100), length * (1 - along / 100)
        washed.append(reader.read(width, length))
    if "washed" in states:
        fields["washed"] = _washed(rng, piece, washed, unit)
    if "made_up" in states:
        eats = hem.eats if hem is not None and not hemmed_first else (0.0, 0.0)
        reader.last = washed[-1][0] - Fraction(eats[0]), washed[-1][1] - Fraction(eats[1])
        reader.may_grow = False
        fields["made_up"] = _state(piece, "made_up", reader.read(width - eats[0], length - eats[1]), unit)
    if piece.weighed:
        fields["weight"] = _weights(rng, design, stretch, piece, width_in_reed, warp_used, picks)
    if piece.count > 1 and not _says_how_many(piece):
        fields["count"] = str(piece.count)
    fields |= piece.extra
    first = (float(washed[0][0]), float(washed[0][1]))
    known = "washed" in states and not hemmed_first
    return Measured(fields, steps, piece.count, float(loom[1]), first if known else None, warp_used)


def planned(plan: Plan, width: float, hem: Hem | None, unit: str) -> dict[str, Value]:
    """The sizes that were expected, by state, from the believed losses."""
    mark = Fraction(1, 4) if unit == "in" else Fraction(1, 2)
    states = plan.shows.split()
    fields: dict[str, Value] = {}
    if "in_reed" in states:
        fields["in_reed"] = tape.show(Fraction(width), unit)
    across, along = width * (1 - plan.width[0] / 100), plan.long
    sizes = {"on_loom": (across, along)}
    across, along = across * (1 - plan.width[1] / 100), along * (1 - plan.length[0] / 100)
    sizes["off_loom"] = (across, along)
    hemmed_first = hem is not None and hem.sewn == "before washing" and "hemmed" in states
    if hem is not None and hemmed_first:
        across, along = across - hem.eats[0], along - hem.eats[1]
        sizes["hemmed"] = (across, along)
    across, along = across * (1 - plan.width[2] / 100), along * (1 - plan.length[1] / 100)
    sizes["washed"] = (across, along)
    eats = hem.eats if hem is not None and not hemmed_first else (0.0, 0.0)
    sizes["made_up"] = (across - eats[0], along - eats[1])
    for state, (wide, long) in sizes.items():
        if state in states:
            fields[state] = tape.size(tape.read(wide, mark), tape.read(long, mark), unit)
    return fields


def _state(piece: Piece, state: str, size: tuple[Fraction, Fraction], unit: str) -> Value:
    shown = tape.size(*size, unit)
    how = piece.how.get(state)
    return {"size": shown, **how} if how else shown


def _washed(rng: Random, piece: Piece, sizes: list[tuple[Fraction, Fraction]], unit: str) -> Value:
    shown: list[Value] = []
    for number, (across, along) in enumerate(sizes, start=1):
        text = tape.size(across, along, unit)
        if piece.widths > 1 and number == len(sizes):
            mark = tape.width_mark(unit, float(across))
            others = [across + mark * rng.choice((-1, 0, 0)) for _ in range(piece.widths - 1)]
            between = ", ".join(tape.show(each, unit) for each in (across, *others))
            text = f"{between} x {tape.show(along, unit)}"
        how = piece.how.get(f"washed {number}")
        shown.append({"size": text, **how} if how else text)
    return shown[0] if len(shown) == 1 else shown


def _fulling(
    rng: Random,
    checks: tuple[int, ...],
    before: tuple[float, float],
    stopped: tuple[Fraction, Fraction],
    unit: str,
) -> dict[str, Value]:
    """Size when only scoured, then at each check until it was stopped, at the size it kept."""
    scoured = before[0] * (1 - rng.uniform(6, 8) / 100), before[1] * (1 - rng.uniform(6, 8) / 100)
    reader = Tape(rng, unit, may_grow=False)
    lines: dict[str, Value] = {"0 min scoured only": tape.size(*reader.read(*scoured), unit)}
    for minutes in checks[:-1]:
        now = [fulled_to(s, float(t), minutes, checks[-1]) for s, t in zip(scoured, stopped, strict=True)]
        lines[f"{minutes} min"] = tape.size(*reader.read(now[0], now[1]), unit)
    lines[f"{checks[-1]} min stopped"] = tape.size(*stopped, unit)
    return lines


def _weights(
    rng: Random, design: Design, stretch: Stretch, piece: Piece, width: float, warp_used: float, picks: int
) -> Value:
    """Grams of warp and weft in the piece, fringe and hems and all; the scale is good to a per cent."""
    weft = stretch.weft or design.yarn
    long = warp_used + 2 * (stretch.fringe.allowed if stretch.fringe else 0.0)
    metres = METRES[design.unit]
    warp_grams = ends_of(design, stretch) * long * metres * TEX[design.yarn] / 1000
    weft_grams = picks * weft_length(rng, width) * metres * TEX[weft] / 1000
    in_water = warp_grams * (1 - WASHED_OUT.get(design.yarn, 0)) + weft_grams * (1 - WASHED_OUT.get(weft, 0))
    scale = rng.uniform(0.99, 1.01)
    grams = {"off_loom": warp_grams + weft_grams, "in_oil": warp_grams + weft_grams, "washed": in_water}
    shown: dict[str, Value] = {}
    for state in piece.weighed.split():
        reading = grams[state] * scale
        shown[state] = f"{round(reading / 5) * 5 if reading > 400 else round(reading)} g"
    return shown["washed"] if list(shown) == ["washed"] else shown


def ends_of(design: Design, stretch: Stretch) -> int:
    """Ends in the cloth, floating selvedges and all."""
    warp: Mapping[str, Value] = design.head.get("warp", {})  # type: ignore[assignment]
    if "ends" in stretch.keys:
        return int(str(stretch.keys["ends"]).split()[0])
    ends = len(threads(str(warp["order"]))) if "order" in warp else int(str(warp["ends"]))
    return ends + (2 if "floating_selvedges" in warp else 0)


def _says_how_many(piece: Piece) -> bool:
    return bool(piece.name) and piece.name.split()[-1].count("-") == 1
