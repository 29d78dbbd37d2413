"""Plan a warp: the form, and the figures that the page reckons with, in a script beside it."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from journal_tools.pages.archive import Archive
from journal_tools.pages.plan_shelf import Shelf, reed_of
from journal_tools.pages.style_assets import PLANNING
from journal_tools.pages.views import PlanView
from journal_tools.planning import allowances
from journal_tools.planning.yarn_needs import put_up_of
from journal_tools.quantities import INCH, parse_density

DATA = "plan-data.js"

PLACES = 6


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
    steps, per = allowances.STEPS[unit], settings.units.density
    tape = float(settings.tape.mm) if settings.tape else float(INCH / 8) if unit == "in" else 1.0
    told: dict[str, Any] = {
        "units": {"length": unit, "density": settings.units.density, "weight": settings.weight},
        "steps": {"weave": steps.weave, "wind": steps.wind, "tape": max(tape, steps.tape)},
        "usual": {
            "header": allowances.HEADER,
            "gap": allowances.GAP,
            "waste": allowances.WASTE,
            "retie": allowances.RETIE,
            "risk": allowances.RISK,
            "mended": allowances.RISK_MENDED,
            "too_wide": allowances.TOO_WIDE,
            "worth_a_sample": allowances.WORTH_A_SAMPLE,
            "sample": allowances.SAMPLE,
            "sample_for_length": allowances.SAMPLE_FOR_LENGTH,
            "spare_yarn": allowances.SPARE_YARN,
            "sett_off": allowances.SETT_OFF,
            "reeds": [reed_of(parse_density(f"{dents:g}/{per}")) for dents in allowances.USUAL_REEDS[per]],
        },
        **shelf.as_data(),
        "forecast": forecast,
    }
    if not archive.public:
        told["stock"] = stock(archive)
    text = json.dumps(told, separators=(",", ":"), ensure_ascii=True)
    return f"window.tenterhook = window.tenterhook || {{}};\nwindow.tenterhook.journal = {text};\n".encode()


def stock(archive: Archive) -> dict[str, Any]:
    """What is on the shelf and what a put-up weighs, for the weaver alone."""
    found = {}
    for name, yarn in archive.journal.yarns.items():
        if yarn.on_hand is not None:
            put_up, word = put_up_of(yarn)
            found[name] = {
                "on_hand": round(float(yarn.on_hand.grams), 1), "text": yarn.on_hand.text,
                **({"put_up": put_up, "word": word} if put_up else {}),
            }
    return found
