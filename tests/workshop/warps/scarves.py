"""Merino and superwash for necks, and one that went wrong."""

from __future__ import annotations

from tests.workshop.design import Design, Fringe, Piece, Plan, Stretch, Waste

WARPS = (
    Design(
        name="chequer-scarf",
        title="Chequer scarf",
        yarn="merino-2-20",
        head={
            "started": "2024-11-16",
            "finished": "2024-12-01",
            "loom": "small-loom",
            "share": "yes",
            "tags": ["scarves", "colour-and-weave"],
            "yarns": {"black": "merino-2-20 black", "ecru": "merino-2-20 ecru"},
            "warp": {"order": "38 times (4 black, 4 ecru), 4 black", "floating_selvedges": "black"},
            "reed": "15/in",
            "sley": "2",
        },
        waste=Waste(5, 2, 18),
        stretches=(
            Stretch(
                cloth="worsted",
                usual=(28, 26),
                beat=26,
                keys={
                    "weave": "2/2 twill",
                    "draft": "houndstooth",
                    "weft": {"order": "4 black, 4 ecru"},
                },
                show_beat=True,
                fringe=Fringe(5, "twisted before washing", 4, 3.75),
                plan=Plan("scarf", 1, 74, (4, 2, 6), (4, 6), "in_reed on_loom off_loom washed"),
                pieces=(
                    Piece(
                        "scarf", 74, "on_loom off_loom washed", picks=True, weighed="washed",
                        extra={"price": "85 EUR", "now": "sold"},
                    ),
                ),
            ),
        ),
        tail={"finish": "hand-30-flat", "hours": "17", "cost": "19 EUR"},
    ),
    Design(
        name="heron-shawl",
        title="Heron shawl",
        yarn="merino-2-20",
        head={
            "started": "2023-01-07",
            "finished": "2023-02-05",
            "loom": "long-loom",
            "share": "yes",
            "tags": ["shawls", "stripes"],
            "yarns": {
                "ecru": "merino-2-20 ecru",
                "gull": "merino-2-20 gull",
                "slate": "merino-2-20 slate",
                "black": "merino-2-20 black",
                "mustard": "merino-2-20 mustard",
            },
            "warp": {
                "order": (
                    "16 black, 4 ecru, 60 slate, 8 times (slate, gull), 92 gull, 8 times (gull, ecru), "
                    "120 ecru, 8 times (ecru, gull), 92 gull, 8 times (gull, slate), 60 slate, 4 ecru, "
                    "12 mustard, 4 ecru, 16 black"
                ),
            },
            "reed": "12/in",
            "sley": "2",
        },
        waste=Waste(7, 2, 31),
        stretches=(
            Stretch(
                cloth="worsted",
                usual=(25, 23),
                beat=22,
                keys={"weave": "2/2 twill", "draft": "straight-four", "weft": "gull"},
                show_beat=True,
                fringe=Fringe(6, "twisted before washing", 4.75, 4.5),
                plan=Plan("shawl", 1, 82, (4, 2, 5), (4, 5), "in_reed on_loom washed"),
                pieces=(
                    Piece("shawl", 82, "on_loom off_loom washed", 2, weighed="washed", widths=3),
                ),
            ),
        ),
        tail={"finish": ["hand-30-flat", "hand-30-flat"], "hours": "26", "cost": "41 EUR"},
    ),
    Design(
        name="petrel-scarves",
        title="Petrel scarves, two from one warp",
        yarn="merino-2-20",
        unit="cm",
        head={
            "started": "2025-12-06",
            "finished": "2026-01-05",
            "loom": "small-loom",
            "units": "cm",
            "share": "yes",
            "tags": ["scarves"],
            "yarns": {
                "slate": "merino-2-20 slate",
                "sea": "merino-2-20 sea",
                "gull": "merino-2-20 gull",
                "wine": "merino-2-20 wine",
            },
            "warp": {"order": "36 sea, 6 times (12 slate, 24 sea), 12 slate, 36 sea", "floating_selvedges": "sea"},
            "reed": "12/in",
            "sley": "2",
        },
        waste=Waste(13, 5, 45),
        stretches=(
            Stretch(
                name="the grey one",
                cloth="worsted",
                usual=(10.5, 9.8),
                beat=9.6,
                keys={"weave": "broken twill", "draft": "broken-four", "weft": "gull"},
                fringe=Fringe(14, "twisted before washing", 11, 10.5),
                plan=Plan("scarf", 1, 185, (4, 2, 6), (4, 6), "on_loom washed"),
                pieces=(Piece("scarf 1", 185, "on_loom off_loom washed", weighed="washed"),),
            ),
            Stretch(
                name="the wine one",
                cloth="worsted",
                usual=(10.5, 9.8),
                beat=9.2,
                keys={"weave": "broken twill", "draft": "broken-four", "weft": "wine"},
                fringe=Fringe(14, "twisted before washing", 11, 10.5),
                plan=Plan("scarf", 1, 185, (4, 2, 6), (4, 6), "on_loom washed"),
                pieces=(Piece("scarf 2", 185, "on_loom off_loom washed", weighed="washed"),),
            ),
        ),
        tail={"finish": "hand-30-flat", "hours": "21"},
    ),
    Design(
        name="the-shrunk-scarf",
        title="The scarf that is now a pot holder",
        yarn="merino-2-20",
        head={
            "started": "2023-12-02",
            "finished": "2023-12-22",
            "loom": "small-loom",
            "tags": ["scarves", "disasters"],
            "yarns": {"wine": "merino-2-20 wine", "mustard": "merino-2-20 mustard"},
            "warp": {"order": "34 times (4 wine, 4 mustard), 4 wine"},
            "reed": "15/in",
            "sley": "2",
            "in_reed": "9 1/4",
        },
        stretches=(
            Stretch(
                cloth="worsted",
                keys={
                    "weave": "2/2 twill",
                    "draft": "houndstooth",
                    "weft": {"order": "4 wine, 4 mustard"},
                    "on_loom": "8 7/8 x 72",
                    "off_loom": "8 3/4 x 69 1/4",
                    "washed": "5 1/2 x 44 1/2",
                },
                pieces=(),
            ),
        ),
        tail={
            "finish": "machine-60-line",
            "hours": "16",
            "learn": "no, it went through the machine at 60 inside a duvet cover",
        },
    ),
    Design(
        name="school-scarf",
        seed=12,
        title="School scarf",
        yarn="superwash-12-2",
        in_reed=9,
        flat=True,
        head={"started": "2023-02", "yarn": "superwash-12-2 night", "weave": "2/2 twill"},
        stretches=(Stretch("superwash", {}, (Piece("", 64, "on_loom off_loom washed"),)),),
        tail={"finish": "machine-40-line-pressed"},
    ),
)
