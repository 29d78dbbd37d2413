"""What the workshop does to cloth off the loom, with what can hurt."""

from __future__ import annotations

from tests.workshop.block_yaml import Value

FINISHES: dict[str, dict[str, Value]] = {
    "hand-40-line-pressed": {
        "title": "By hand at 40, line dried, pressed damp",
        "done": "Soak an hour with a little soap, squeeze through, rinse twice, roll in a towel, line, press.",
        "water": "40 C",
        "agitation": "squeezed, never wrung",
        "drying": "on the line, out of the sun",
        "pressing": "damp, both sides, hot iron",
        "care": "Wash by hand or on a gentle machine cycle at 40 C. Line dry, iron damp.",
        "cautions": "A steam iron burns quicker than a kettle. Keep the other hand off the cloth you press.",
    },
    "machine-40-line-pressed": {
        "title": "Machine at 40, line dried, pressed damp",
        "done": "A full cotton cycle at 40, shaken out while wet, line dried, pressed before quite dry.",
        "water": "40 C",
        "agitation": "a whole machine cycle, 1000 turns a minute at the end",
        "drying": "on the line",
        "pressing": "damp, hot iron",
        "care": "Machine wash at 40 C, line dry, iron damp.",
        "cautions": (
            "Cut ends and raw edges shed in the drum. Clean the machine's lint filter after each new cloth. "
            "A towel is no oven cloth, and damp it lets the heat of a pan through at once."
        ),
    },
    "machine-60-line": {
        "title": "Machine at 60, line dried, not pressed",
        "done": "A cotton cycle at 60 with the household wash, line dried in the wind.",
        "water": "60 C",
        "agitation": "a whole machine cycle",
        "drying": "on the line",
        "pressing": "none",
        "care": "Machine wash at 60 C, line dry.",
        "cautions": "Strong colours bleed into pale ones at 60. Test a tail of each dark yarn in hot water first.",
    },
    "machine-60-tumble": {
        "title": "Machine at 60 and the tumble dryer",
        "done": "A cotton cycle at 60, then the dryer until it says dry.",
        "water": "60 C",
        "agitation": "a whole machine cycle and the dryer",
        "drying": "tumbled hot",
        "pressing": "none",
        "care": "Machine wash at 60 C. May be tumbled; it will come out a little smaller the first time.",
        "cautions": "Lint burns. Empty the dryer's filter every load and leave no dryer running in an empty house.",
    },
    "hand-30-flat": {
        "title": "By hand at 30, dried flat",
        "done": "Soak twenty minutes without rubbing, rinse at the same warmth, roll, pat out flat, leave alone.",
        "water": "30 C, rinse at the same",
        "agitation": "none to speak of",
        "drying": "flat on a towel",
        "pressing": "cool iron under a cloth, or none",
        "care": "Wash by hand at 30 C, without rubbing or wringing, and dry flat.",
        "cautions": "Twisted fringe comes undone in small hands and mouths. Keep it away from babies and their cots.",
    },
    "scoured-flat": {
        "title": "Scoured warm, dried flat",
        "done": "Two soaks in hand-hot soapy water until it runs clear of oil, two rinses, spun, dried flat.",
        "water": "45 C, then cooler by steps",
        "agitation": "pressed down and turned, a dozen times",
        "drying": "flat, edges straightened with a stick",
        "pressing": "steamed under a wet cloth",
        "care": "Wash by hand, lukewarm. Dry flat. Never in the machine, not even on wool.",
        "cautions": "Oily water makes a floor slippery. Wet wool for a blanket is too heavy to lift alone.",
    },
    "fulled-in-the-tub": {
        "title": "Scoured, then fulled in the tub",
        "done": "Scour, then tread in hot soapy water, look and measure every few minutes, stop at size, rinse cool.",
        "water": "50 C",
        "agitation": "trodden in rubber boots",
        "drying": "pinned square on the drying frame",
        "pressing": "steamed, brushed while damp",
        "fulling": "yes",
        "care": "Wash by hand, barely warm, without rubbing; dry flat. It can shrink again.",
        "cautions": (
            "Water at 50 C hurts bare feet and hands, and the tub is slippery, so boots and a rail. "
            "Felt cannot be undone, so measure before you think you need to. "
            "Loose fringe is not for small children."
        ),
    },
    "steamed-on-the-board": {
        "title": "Wetted out and steamed on the board",
        "done": "Wet out cold with a spray, pin to size, steam with the iron held above, leave pinned until dry.",
        "water": "cold spray",
        "agitation": "none",
        "drying": "pinned on the board",
        "pressing": "steam only, the iron never down",
        "care": "Sponge with cool water. Air out of doors. Guard against moth.",
        "cautions": (
            "Steam scalds at arm's length. "
            "Brushing old wool raises dust and moth, so do it outside with a mask."
        ),
    },
}
