"""Plan a warp: the form, and the figures that the page reckons with, in a script beside it."""

from __future__ import annotations

import json
import math
from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from journal_tools.forecast import closeness, kind
from journal_tools.forecast.expected import kinds_of
from journal_tools.forecast.kind import ClothKind
from journal_tools.ledger.past import uses_of
from journal_tools.notation.sequence import MOST_THREADS
from journal_tools.pages import plan_pocket
from journal_tools.pages.archive import Archive
from journal_tools.pages.plan_shelf import Shelf, reed_of
from journal_tools.pages.style_assets import PLANNING
from journal_tools.pages.views import PlanView
from journal_tools.planning import allowances, along, arithmetic, phrases, sample, sleying
from journal_tools.planning.pace import hours_for
from journal_tools.planning.steered import belief_from, whole
from journal_tools.planning.yarn_needs import put_up_of
from journal_tools.quantities import parse_density

DATA = "plan-data.js"


def plan_view(archive: Archive, shelf: Shelf) -> PlanView:
    """What can be chosen, most used first."""
    journal = archive.journal
    inches = journal.settings.length == "in"
    unit = journal.settings.length
    return PlanView(
        "Plan a warp",
        "From the size you want to what hands do, by what this journal has learned. It changes as you type, and"
        " nothing leaves this page.",
        tuple(shelf.yarns.items()),
        tuple((weave, weave) for weave in shelf.weaves),
        tuple((name, finish.heading) for name, finish in journal.finishes.items()),
        tuple((name, loom.heading) for name, loom in shelf.looms.items()),
        "inch" if journal.settings.units.density == "in" else "centimetre",
        f"such as {'18 1/4' if inches else '46.5' if unit == 'cm' else '465'}; a bare number is in {unit}",
        "18" if inches else "45" if unit == "cm" else "450",
        "28" if inches else "70" if unit == "cm" else "700",
        PLANNING,
    )


def plan_data(archive: Archive, shelf: Shelf, forecast: Mapping[str, Any]) -> bytes:
    """The script with the journal's figures. forecast: see `plan_pocket.pocket_data`."""
    settings = archive.journal.settings
    unit = settings.length
    told: dict[str, Any] = {
        "units": {"length": unit, "density": settings.units.density, "weight": settings.weight},
        "steps": {each: steps._asdict() for each, steps in allowances.STEPS.items()},
        "usual": {
            "header": allowances.HEADER,
            "gap": allowances.GAP,
            "waste": allowances.WASTE,
            "retie": allowances.RETIE,
            "risk": allowances.RISK,
            "risk_least": allowances.RISK_LEAST,
            "mended": allowances.RISK_MENDED,
            "too_wide": allowances.TOO_WIDE,
            "worth_a_sample": allowances.WORTH_A_SAMPLE,
            "sample": allowances.SAMPLE,
            "sample_for_length": allowances.SAMPLE_FOR_LENGTH,
            "spare_yarn": allowances.SPARE_YARN,
            "sett_off": allowances.SETT_OFF,
            "reeds": {
                per: [reed_of(parse_density(f"{dents:g}/{per}")) for dents in reeds]
                for per, reeds in allowances.USUAL_REEDS.items()
            },
        },
        "sums": {
            "weft_over_reed": allowances.WEFT_OVER_REED,
            "most_in_a_dent": sleying.MOST_IN_A_DENT,
            "longer": sleying.LONGER,
            "crowded": sleying.CROWDED,
            "streaks": sleying.STREAKS,
            "centre": kind.CENTRE,
            "per_unit": kind.PER_UNIT,
            "clip": kind.CLIP,
            "mean": plan_pocket.MEAN,
            "cloth_sd": sample.CLOTH_SD,
            "length_share": sample.LENGTH_SHARE,
            "working": closeness.WORKING,
            "near": arithmetic.NEAR,
            "low": along.LOW,
            "high": along.HIGH,
            "most_steps": along.MOST_STEPS,
            "rarest": phrases.RAREST,
            "end_to_picks": allowances.END_TO_PICKS,
            "most_threads": MOST_THREADS,
        },
        **shelf.as_data(),
        "forecast": forecast,
        "woven": woven(archive, shelf),
        "fulled": fulled(archive),
        "mostly": mostly(archive),
        "shared": archive.public,
    }
    if (pace := hours_for(archive.journal, 0, 1)) is not None:
        told["pace"] = {"hours": pace.hours, "low": pace.low, "high": pace.high, "warps": pace.warps}
    if not archive.public:
        told["stock"] = stock(archive)
    text = json.dumps(told, separators=(",", ":"), ensure_ascii=True)
    return f"window.tenterhook = window.tenterhook || {{}};\nwindow.tenterhook.journal = {text};\n".encode()


def woven(archive: Archive, shelf: Shelf) -> list[list[int]]:
    """Whose width was measured: warp, yarns and weave, as numbers in the order of the page's own lists."""
    yarns = {name: at for at, name in enumerate(shelf.yarns)}
    weaves = {name: at for at, name in enumerate(shelf.weaves)}
    warps = {name: at for at, name in enumerate(archive.journal.warps)}
    found = [
        (warps[warp], yarns.get(its.warp_yarn, -1), yarns.get(its.weft_yarn, -1), weaves.get(its.weave, -1))
        for warp, its in kinds_of(archive.memory.observed["width"])
    ]
    return [list(each) for each in dict.fromkeys(found)]


def mostly(archive: Archive) -> dict[str, dict[str, str]]:
    """The title of the warp that tells the most: by yarn and weave, of a yarn under "", of a weave under "" and it."""
    cloths: dict[tuple[str, str], ClothKind] = {}
    for _, its in archive.woven_kinds:
        for yarn, fibre in ((its.warp_yarn, its.warp_fibre), (its.weft_yarn, its.weft_fibre)):
            of_yarn = replace(its, warp_yarn=yarn, weft_yarn=yarn, warp_fibre=fibre, weft_fibre=fibre, year=None)
            cloths.setdefault((yarn, its.weave), of_yarn)
            cloths.setdefault(("", its.weave), ClothKind(weave=its.weave))
    found: dict[str, dict[str, str]] = {}
    for (yarn, weave), cloth in cloths.items():
        on = archive.rests_on(cloth, ("width", "in_reed", "washed 1"))
        told = found.setdefault(yarn, {})
        for key, warps in ((weave, on.both if yarn else on.weave_warps), ("", on.yarn_warps if yarn else ())):
            if warps:
                told.setdefault(key, archive.journal.warps[warps[0]].heading)
    return found


def fulled(archive: Archive) -> dict[str, Any]:
    """What past fullings came to, by yarn and ("") of all together; see `planning.steered`."""
    figures: dict[str, dict[str, dict[str, list[float]]]] = {"": {}}
    for name, ledger in archive.ledgers.items():
        for row in ledger.warp_rows:
            if row.steered and whole(row):
                for yarn in ("", *uses_of(archive.journal, ledger.warp)):
                    found = figures.setdefault(yarn, {}).setdefault(row.direction, {})
                    found.setdefault(name, []).append(math.log(1 - row.loss))
    every = figures[""]
    told: dict[str, Any] = {}
    for yarn, ways in figures.items():
        own = {way: ways.get(way) or every.get(way, {}) for way in ("width", "length")}
        beliefs = {way: as_belief(way, [logs[-1] for logs in own[way].values()]) for way in own}
        told[yarn] = {**beliefs, "warps": len(own["width"])}
    return told


def as_belief(direction: str, figures: list[float]) -> dict[str, float]:
    """A normal law as the page's script takes it."""
    found = belief_from(direction, figures)
    return {"mean": round(found.mean, 5), "shared": round(found.shared, 5), "own": found.own}


def stock(archive: Archive) -> dict[str, Any]:
    """What is on the shelf and what a put-up weighs, for the weaver alone."""
    found: dict[str, Any] = {}
    currency = archive.journal.settings.currency or ""
    for name, yarn in archive.journal.yarns.items():
        if yarn.on_hand is not None:
            put_up, word = put_up_of(yarn)
            found[name] = {
                "on_hand": round(float(yarn.on_hand.grams), 1), "text": yarn.on_hand.text,
                **({"put_up": put_up, "word": word} if put_up else {}),
                **({"price": round(float(yarn.price.amount), 2), "currency": yarn.price.currency or currency}
                   if yarn.price else {}),
            }  # fmt: skip
    return found
