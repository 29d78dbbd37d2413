"""Alpaca, which grows, and silk, which hardly moves."""

from __future__ import annotations

from tests.workshop.design import Design, Fringe, Hem, Piece, Plan, Stretch, Waste

WARPS = (
    Design(
        name="fog-shawl",
        seed=48,
        title="Fog shawl",
        yarn="alpaca-12-2",
        head={
            "started": "2023-11-18",
            "finished": "2023-12-10",
            "loom": "small-loom",
            "share": "yes",
            "tension": "slack, it stretches",
            "tags": ["shawls", "stripes"],
            "yarns": {
                "fog": "alpaca-12-2 fog",
                "fawn": "alpaca-12-2 fawn",
                "charcoal": "alpaca-12-2 charcoal",
            },
            "warp": {
                "order": (
                    "6 charcoal, 2 fog, 6 charcoal, 5 times (28 fog, 8 fawn, 2 charcoal, 8 fawn), 28 fog, "
                    "6 charcoal, 2 fog, 6 charcoal"
                ),
            },
            "reed": "15/in",
            "sley": "1",
        },
        waste=Waste(5, 2, 17),
        stretches=(
            Stretch(
                cloth="alpaca",
                usual=(15.5, 14),
                beat=13,
                keys={"weave": "plain weave", "draft": "plain-two", "weft": "fog"},
                show_beat=True,
                fringe=Fringe(5, "twisted before washing", 4, 4),
                plan=Plan("shawl", 1, 78, (5, 1, 4), (2, 3), "in_reed on_loom off_loom washed"),
                pieces=(Piece("shawl", 78, "on_loom off_loom washed", 2, weighed="washed"),),
            ),
        ),
        tail={"finish": ["hand-30-flat", "hand-30-flat"], "hours": "14", "accepted": ["grew"]},
    ),
    Design(
        name="driftline-scarves",
        seed=6,
        title="Driftline scarves in alpaca",
        yarn="alpaca-12-2",
        head={
            "started": "2026-03-07",
            "finished": "2026-03-29",
            "loom": "small-loom",
            "share": "yes",
            "tags": ["scarves"],
            "yarns": {
                "fog": "alpaca-12-2 fog",
                "fawn": "alpaca-12-2 fawn",
                "charcoal": "alpaca-12-2 charcoal",
            },
            "warp": {"order": "8 times (12 fawn, 12 fog)", "floating_selvedges": "fawn"},
            "reed": "12/in",
            "sley": "1-2",
        },
        waste=Waste(5, 2, 18),
        stretches=(
            Stretch(
                cloth="alpaca",
                usual=(18, 16),
                beat=15.5,
                keys={
                    "weave": "herringbone",
                    "draft": "herringbone-four",
                    "weft": "charcoal",
                },
                fringe=Fringe(5, "twisted before washing", 4, 4),
                plan=Plan("scarf", 2, 70, (4, 1, 4), (2, 2), "in_reed on_loom washed"),
                pieces=(
                    Piece("scarf 1", 70, "on_loom off_loom washed", weighed="washed"),
                    Piece("scarf 2", 70, "on_loom off_loom washed", weighed="washed"),
                ),
            ),
        ),
        tail={"finish": "hand-30-flat", "hours": "18", "cost": "37 EUR"},
    ),
    Design(
        name="lantern-shawl",
        title="Lantern shawl",
        yarn="silk-30-2",
        head={
            "started": "2024-05-11",
            "finished": "2024-06-09",
            "loom": "long-loom",
            "share": "yes",
            "tags": ["shawls", "colour-and-weave"],
            "yarns": {"black": "silk-30-2 black", "gold": "silk-30-2 gold"},
            "warp": {
                "order": "22 times (8 times (black, gold), 8 times (gold, black)), 8 times (black, gold)",
            },
            "reed": "15/in",
            "sley": "2",
        },
        waste=Waste(6, 2, 29),
        stretches=(
            Stretch(
                cloth="silk",
                usual=(30, 28),
                beat=28,
                keys={
                    "weave": "plain weave",
                    "draft": "log-cabin",
                    "weft": {"order": "8 times (black, gold), 8 times (gold, black)"},
                },
                show_beat=True,
                fringe=Fringe(5, "twisted after washing", 4, 4),
                plan=Plan("shawl", 1, 80, (4, 0.5, 3), (1.5, 2), "in_reed on_loom off_loom washed"),
                pieces=(
                    Piece(
                        "shawl", 80, "on_loom off_loom washed", picks=True, weighed="washed", widths=3,
                        extra={"price": "190 EUR", "now": "sold", "buyer": "the lighthouse keeper's sister"},
                    ),
                ),
            ),
        ),
        tail={"finish": "hand-30-flat", "hours": "33", "cost": "64 EUR"},
    ),
    Design(
        name="mackerel-scarf",
        title="Mackerel scarf",
        yarn="silk-30-2",
        head={
            "started": "2025-04-12",
            "finished": "2025-05-04",
            "loom": "long-loom",
            "share": "yes",
            "tags": ["scarves", "stripes"],
            "yarns": {
                "mackerel": "silk-30-2 mackerel",
                "pearl": "silk-30-2 pearl",
                "weed": "silk-30-2 weed",
                "black": "silk-30-2 black",
            },
            "warp": {
                "order": (
                    "15 black, 6 times (20 mackerel, 5 pearl, 5 black, 5 pearl, 15 weed, 5 black), "
                    "20 mackerel, 5 pearl, 5 black, 5 pearl, 15 black"
                ),
            },
            "reed": "15/in",
            "sley": "3",
        },
        waste=Waste(6, 2, 30),
        stretches=(
            Stretch(
                cloth="silk",
                usual=(44, 32),
                beat=32,
                keys={"weave": "5-end satin", "draft": "satin-five", "weft": "black"},
                hem=Hem(0.25, 0.25, "both ends", "after washing"),
                plan=Plan("scarf", 1, 68, (4, 0.5, 2.5), (1.5, 2.5), "in_reed on_loom washed made_up"),
                pieces=(Piece("scarf", 68, "on_loom off_loom washed made_up", weighed="washed"),),
            ),
        ),
        tail={"finish": "hand-30-flat", "hours": "29"},
    ),
    Design(
        name="attic-silk",
        title="Silk from the attic trunk",
        yarn="silk-30-2",
        in_reed=10.5,
        flat=True,
        head={"started": "2022-09", "yarn": "silk-30-2 pearl", "weave": "2/2 twill"},
        stretches=(Stretch("silk", {}, (Piece("", 66, "on_loom washed"),)),),
        tail={"finish": "hand-30-flat"},
    ),
)
