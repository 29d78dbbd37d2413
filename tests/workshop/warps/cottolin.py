"""Kitchen towels in cottolin: the bread and butter."""

from __future__ import annotations

from tests.workshop.design import Design, Hem, Piece, Plan, Stretch, Waste

TOWEL_HEM = Hem(1, 0.25, "both ends", "after washing")

WARPS = (
    # The first of them, kept as it was written down: six lines and no date.
    Design(
        name="tideline-towels",
        title="Tideline towels",
        yarn="cottolin-22-2",
        flat=True,
        stretches=(
            Stretch(
                cloth="cottolin plain",
                keys={
                    "yarn": "cottolin-22-2",
                    "weave": "plain weave",
                    "in_reed": "20 1/4",
                    "on_loom": "19 3/8 x 33",
                    "washed": "17 7/8 x 30 1/8",
                },
                pieces=({},),
            ),
        ),
    ),
    # Its fuller sister, typed out as well: same width, same reed, and this time with a plan.
    Design(
        name="tideline-towels-again",
        title="Tideline towels, the second warp",
        yarn="cottolin-22-2",
        head={
            "started": "2025-03-02",
            "finished": "2025-03-29",
            "loom": "long-loom",
            "share": "yes",
            "tags": ["towels", "stripes"],
            "yarns": {
                "flax": "cottolin-22-2 flax",
                "indigo": "cottolin-22-2 indigo",
                "rust": "cottolin-22-2 rust",
            },
            "warp": {
                "order": (
                    "2 flax, 11 times (20 flax, 6 indigo, 4 flax, 2 rust, 4 flax, 6 indigo), 22 flax"
                ),
                "wound": "5 1/4 yd",
                "marked": "36 in wove 33 7/8 in",
            },
            "reed": "12/in",
            "sley": "2",
            "in_reed": "20 1/4",
        },
        stretches=(
            Stretch(
                cloth="cottolin plain",
                keys={
                    "weave": "plain weave",
                    "draft": "plain-two",
                    "weft": "flax",
                    "beat": "20/in",
                    "hem": {
                        "depth": "1 in",
                        "turn": "1/2 in",
                        "edges": "both ends",
                        "sewn": "after washing",
                    },
                    "plan": [
                        {
                            "piece": "towel",
                            "count": "4",
                            "in_reed": "20 1/4",
                            "on_loom": "19 1/2 x 33",
                            "off_loom": "19 1/4 x 32 1/4",
                            "washed": "18 x 30 3/8",
                            "made_up": "18 x 27 3/8",
                        }
                    ],
                },
                pieces=(
                    {
                        "name": "towel 1",
                        "picks": "660",
                        "on_loom": "19 3/8 x 33",
                        "off_loom": "19 1/4 x 32 1/8",
                        "washed": "17 7/8 x 30 1/8",
                        "made_up": "17 7/8 x 27 1/8",
                        "weight": "124 g",
                        "price": "34 EUR",
                        "now": "sold at the spring market",
                    },
                    {
                        "name": "towel 2",
                        "picks": "660",
                        "on_loom": "19 3/8 x 33",
                        "off_loom": "19 1/4 x 32 1/4",
                        "washed": "17 7/8 x 30 1/4",
                        "made_up": "17 7/8 x 27 1/4",
                        "price": "34 EUR",
                        "now": "sold at the spring market",
                    },
                    {
                        "name": "towel 3",
                        "picks": "662",
                        "on_loom": "19 1/4 x 33 1/8",
                        "washed": "17 3/4 x 30 1/8",
                        "made_up": "17 3/4 x 27 1/8",
                        "now": "by the sink, on trial",
                    },
                    {
                        "name": "towel 4",
                        "picks": "655",
                        "on_loom": "19 1/4 x 32 7/8",
                        "off_loom": "19 1/8 x 32 1/8",
                        "washed": "17 3/4 x 30",
                        "made_up": "17 3/4 x 27",
                        "now": "on the shelf",
                    },
                ),
            ),
        ),
        tail={
            "where_it_went": {
                "front tie-on": "6 in",
                "header": "2 in",
                "gaps between towels": "3 of 1/2 in",
                "thrums": "38 in",
            },
            "finish": "machine-40-line-pressed",
            "hours": "13",
            "cost": "29 EUR",
        },
    ),
    Design(
        name="rockpool-towels",
        title="Rockpool towels",
        yarn="cottolin-22-2",
        head={
            "started": "2023-06-04",
            "finished": "2023-07-01",
            "loom": "long-loom",
            "share": "yes",
            "tags": ["towels", "stripes"],
            "yarns": {
                "bone": "cottolin-22-2 bone",
                "sea": "cottolin-22-2 sea",
                "slate": "cottolin-22-2 slate",
                "lichen": "cottolin-22-2 lichen",
            },
            "warp": {
                "order": (
                    "20 bone, 6 times (12 sea, 2 bone, 4 slate, 2 bone, 12 lichen, 2 bone, 4 slate, "
                    "2 bone, 12 sea, 12 bone), 8 bone"
                ),
                "floating_selvedges": "bone",
            },
            "reed": "10/in",
            "sley": "2",
        },
        waste=Waste(6, 2, 31, 0.5, "gaps between towels"),
        stretches=(
            Stretch(
                cloth="cottolin plain",
                usual=(21, 19),
                beat=18,
                keys={
                    "weave": "plain weave",
                    "draft": "plain-two",
                    "weft": {"yarn": "bone", "order": "60 bone, 4 slate, 8 lichen, 4 slate"},
                },
                show_beat=True,
                hem=TOWEL_HEM,
                plan=Plan("towel", 5, 32, (4, 1, 5), (3, 6), "in_reed on_loom washed made_up"),
                pieces=(
                    Piece("towel 1", 32, "on_loom off_loom washed made_up", weighed="washed", picks=True),
                    Piece("towel 2", 32, "on_loom washed made_up", picks=True),
                    Piece("towel 3", 32, "on_loom washed made_up", picks=True),
                    Piece("towel 4", 32, "washed made_up"),
                    Piece("towel 5", 32, "on_loom off_loom washed made_up", weighed="washed"),
                ),
            ),
        ),
        tail={"finish": "machine-40-line-pressed", "hours": "17", "cost": "34 EUR"},
    ),
    Design(
        name="ebb-towels",
        seed=7,
        title="Ebb towels",
        yarn="cottolin-22-2",
        temple=True,
        head={
            "started": "2024-02-10",
            "finished": "2024-03-03",
            "loom": "long-loom",
            "share": "yes",
            "tension": "firm",
            "tags": ["towels", "stripes"],
            "yarns": {"bone": "cottolin-22-2 bone", "indigo": "cottolin-22-2 indigo"},
            "warp": {
                "order": (
                    "5 times (12 indigo, 2 bone, 10 indigo, 4 bone, 8 indigo, 6 bone, 6 indigo, 8 bone, "
                    "4 indigo, 10 bone, 2 indigo, 12 bone)"
                ),
            },
            "reed": "12/in",
            "sley": "2",
        },
        waste=Waste(6, 1.5, 30, 0.5, "gaps between towels", {"a broken end and a bad inch": 4}),
        stretches=(
            Stretch(
                cloth="cottolin plain",
                usual=(22, 20),
                beat=20,
                keys={"weave": "plain weave", "draft": "plain-two", "weft": "bone"},
                show_beat=True,
                hem=TOWEL_HEM,
                plan=Plan("towel", 4, 31, (3, 2, 5), (2.5, 5.5), "on_loom off_loom washed"),
                pieces=(
                    Piece("towel 1", 31, "on_loom off_loom washed made_up", 2, weighed="washed", picks=True),
                    Piece("towel 2", 31, "on_loom off_loom washed made_up", 2),
                    Piece("towel 3", 31, "on_loom off_loom washed", 2),
                    Piece("towel 4", 31, "on_loom washed", extra={"note": "the bad inch is in the hem"}),
                ),
            ),
        ),
        tail={
            "finish": ["machine-40-line-pressed", "machine-60-line"],
            "hours": "15",
        },
    ),
    Design(
        name="lichen-towels",
        title="Lichen towels",
        yarn="cottolin-22-2",
        head={
            "started": "2025-09-06",
            "finished": "2025-10-05",
            "loom": "small-loom",
            "share": "yes",
            "tags": ["towels"],
            "yarns": {
                "bone": "cottolin-22-2 bone",
                "lichen": "cottolin-22-2 lichen",
                "rust": "cottolin-22-2 rust",
            },
            "warp": {"order": "12 bone, 4 rust, 402 bone, 4 rust, 10 bone", "floating_selvedges": "bone"},
            "reed": "12/in",
            "sley": "2",
        },
        waste=Waste(5, 2, 18, 0.75, "gaps between towels"),
        stretches=(
            Stretch(
                cloth="cottolin twill",
                usual=(24, 22),
                beat=22,
                keys={"weave": "point twill", "draft": "birds-eye", "weft": "lichen"},
                show_beat=True,
                hem=TOWEL_HEM,
                plan=Plan("towel", 4, 30, (3, 1, 5), (2.5, 6), "in_reed on_loom washed made_up"),
                pieces=(
                    Piece("towel 1", 30, "on_loom off_loom washed made_up", picks=True, weighed="washed"),
                    Piece("towel 2", 30, "on_loom washed made_up", picks=True),
                    Piece("towels 3-4", 30, "on_loom washed made_up", count=2),
                ),
            ),
        ),
        tail={"finish": "machine-40-line-pressed", "hours": "19"},
    ),
    Design(
        name="oystercatcher-towels",
        title="Oystercatcher towels",
        yarn="cottolin-22-2",
        in_reed=19.5,
        flat=True,
        head={"started": "2023-03", "yarn": "cottolin-22-2 charcoal", "weave": "plain weave"},
        stretches=(Stretch("cottolin plain", {}, (Piece("", 34, "on_loom washed"),)),),
        tail={"finish": "machine-60-line"},
    ),
)
