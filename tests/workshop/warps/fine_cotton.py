"""Cotton 16/2 and mercerised 10/2: napkins, lace and things for a table."""

from __future__ import annotations

from tests.workshop.design import Design, Fringe, Hem, Piece, Plan, Stretch, Waste

WARPS = (
    Design(
        name="harbour-check-napkins",
        title="Harbour check napkins",
        yarn="cotton-16-2",
        head={
            "started": "2022-06-25",
            "finished": "2022-07-24",
            "loom": "small-loom",
            "share": "yes",
            "tags": ["napkins", "checks"],
            "yarns": {"white": "cotton-16-2 white", "ink": "cotton-16-2 ink"},
            "warp": {"order": "16 white, 17 times (16 ink, 16 white)"},
            "reed": "15/in",
            "sley": "2",
        },
        waste=Waste(5, 2, 18, 0.5, "gaps between napkins"),
        stretches=(
            Stretch(
                cloth="cotton plain",
                usual=(30, 28),
                beat=27,
                keys={"weave": "plain weave", "draft": "plain-two", "weft": {"order": "16 white, 16 ink"}},
                hem=Hem(0.5, 0.25, "all four", "after washing"),
                plan=Plan("napkin", 6, 20, (4, 1.5, 6), (3, 6), "in_reed on_loom washed made_up"),
                pieces=(
                    Piece("napkin 1", 20, "on_loom off_loom washed made_up"),
                    Piece("napkin 2", 20, "on_loom washed made_up", picks=True, widths=3),
                    Piece("napkins 3-6", 20, "washed made_up", count=4),
                ),
            ),
        ),
        tail={"finish": "machine-40-line-pressed", "hours": "24", "cost": "21 EUR"},
    ),
    Design(
        name="cradle-shawl",
        title="Cradle shawl",
        yarn="cotton-16-2",
        head={
            "started": "2023-04-08",
            "finished": "2023-04-30",
            "loom": "long-loom",
            "share": "yes",
            "tags": ["shawls", "lace", "gifts"],
            "yarns": {"white": "cotton-16-2 white", "rose": "cotton-16-2 rose"},
            "warp": {"order": "10 rose, 20 white, 10 rose, 880 white, 10 rose, 20 white, 10 rose"},
            "reed": "12/in",
            "sley": "2",
        },
        waste=Waste(6, 3, 32),
        stretches=(
            Stretch(
                cloth="cotton lace",
                usual=(24, 22),
                beat=21,
                keys={"weave": "huck lace", "draft": "huck-squares", "weft": "white"},
                show_beat=True,
                plan=Plan("shawl", 1, 46, (5, 2, 7), (3, 7), "in_reed on_loom washed"),
                pieces=(Piece("shawl", 46, "on_loom off_loom washed", 2, weighed="washed", widths=3),),
                tail={"hem": "none"},
            ),
        ),
        tail={"finish": ["hand-40-line-pressed", "machine-40-line-pressed"], "hours": "20"},
    ),
    Design(
        name="landing-window",
        title="Panel for the landing window",
        yarn="cotton-16-2",
        in_reed=23,
        flat=True,
        head={"started": "2026-02", "yarn": "cotton-16-2 white", "weave": "huck lace", "share": "yes"},
        stretches=(Stretch("cotton lace", {}, (Piece("", 58, "on_loom washed"),)),),
        tail={"finish": "hand-40-line-pressed"},
    ),
    Design(
        name="slipway-runner",
        title="Slipway runner",
        yarn="cotton-10-2-mercerised",
        head={
            "started": "2024-09-07",
            "finished": "2024-09-29",
            "loom": "long-loom",
            "share": "yes",
            "tension": "as tight as the loom bears",
            "tags": ["runners", "stripes"],
            "yarns": {
                "midnight": "cotton-10-2-mercerised midnight",
                "copper": "cotton-10-2-mercerised copper",
                "saffron": "cotton-10-2-mercerised saffron",
                "ivory": "cotton-10-2-mercerised ivory",
                "filler": "cotton-filler dark",
            },
            "warp": {
                "order": (
                    "24 midnight, 6 times (16 times (midnight, copper), 8 saffron, 4 midnight, "
                    "16 times (midnight, ivory), 4 midnight, 8 saffron, 16 times (copper, midnight), "
                    "6 midnight), 18 midnight"
                ),
            },
            "reed": "12/in",
            "sley": "4",
        },
        marked=(36,),
        waste=Waste(7, 4, 30, 3, "gap with a ribbon in it"),
        stretches=(
            Stretch(
                cloth="rep",
                usual=(48, 8),
                beat=8,
                weft="cotton-filler",
                keys={"weave": "warp-faced rep", "draft": "plain-two", "weft": "filler"},
                show_beat=True,
                hem=Hem(1, 0.5, "both ends", "before washing", "midnight"),
                plan=Plan("runner", 2, 52, (2, 0.5, 2), (3, 5), "in_reed on_loom hemmed washed"),
                pieces=(
                    Piece("runner 1", 52, "on_loom off_loom hemmed washed", picks=True, weighed="off_loom"),
                    Piece("runner 2", 52, "on_loom off_loom hemmed washed", picks=True),
                ),
            ),
        ),
        tail={"finish": "hand-40-line-pressed", "hours": "28", "cost": "44 EUR"},
    ),
    Design(
        name="lighthouse-runner",
        title="Lighthouse runner",
        yarn="cotton-10-2-mercerised",
        head={
            "started": "2025-05-10",
            "finished": "2025-06-08",
            "loom": "long-loom",
            "share": "yes",
            "tags": ["runners"],
            "yarns": {
                "ivory": {"yarn": "cotton-10-2-mercerised ivory", "role": "ground"},
                "deep": {"yarn": "cotton-8-2 teal", "role": "pattern"},
            },
            "warp": {"order": "12 times (28 ivory), 12 ivory", "floating_selvedges": "ivory"},
            "reed": "12/in",
            "sley": "2",
        },
        waste=Waste(6, 2, 29),
        stretches=(
            Stretch(
                cloth="mercerised plain",
                usual=(24, 40),
                beat=42,
                keys={
                    "weave": "pattern weft on two blocks",
                    "draft": "belt-and-ladder",
                    "weft": {"order": "20 times (deep, ivory), 20 ivory"},
                    "tabby": "counted",
                },
                hem=Hem(1.5, 0.5, "both ends", "after washing", "ivory"),
                plan=Plan("runner", 1, 60, (4, 1, 5), (3, 5), "in_reed on_loom washed made_up"),
                pieces=(
                    Piece("runner", 60, "on_loom off_loom washed made_up", picks=True),
                ),
            ),
        ),
        tail={"finish": "hand-40-line-pressed", "hours": "27", "cost": "31 EUR"},
    ),
    Design(
        name="guest-napkins",
        title="Napkins for the guest house",
        yarn="cotton-10-2-mercerised",
        in_reed=21,
        flat=True,
        head={
            "started": "2023-11",
            "yarn": "cotton-10-2-mercerised kelp",
            "weave": "plain weave",
            "sett": "24/in",
        },
        stretches=(Stretch("mercerised plain", {}, (Piece("", 21, "on_loom off_loom washed"),)),),
        tail={"finish": "machine-60-line"},
    ),
    Design(
        name="lobster-pot-mats",
        title="Lobster pot mats",
        yarn="cotton-10-2-mercerised",
        head={
            "was": "six-shaft-mats",
            "started": "2026-05-02",
            "finished": "2026-05-31",
            "loom": "long-loom",
            "share": "yes",
            "tags": ["mats"],
            "yarns": {
                "deep": "cotton-10-2-mercerised deep",
                "saffron": "cotton-10-2-mercerised saffron",
                "ivory": "cotton-10-2-mercerised ivory",
            },
            "warp": {"order": "20 times (10 deep, 4 ivory, 2 saffron, 4 ivory), 10 deep"},
            "reed": "12/in",
            "sley": "2",
        },
        waste=Waste(6, 2, 30, 1, "gaps"),
        stretches=(
            Stretch(
                cloth="cotton waffle",
                usual=(24, 22),
                beat=23,
                keys={
                    "weave": "waffle weave",
                    "draft": "six-shaft-waffle",
                    "weft": {"order": "10 deep, 4 ivory, 2 saffron, 4 ivory"},
                },
                fringe=Fringe(1, "cut, with a line of stitching"),
                plan=Plan("mat", 4, 22, (5, 4, 12), (5, 12), "on_loom washed"),
                pieces=(
                    Piece("mat 1", 22, "on_loom off_loom washed"),
                    Piece("mats 2-4", 22, "on_loom washed", count=3),
                ),
            ),
        ),
        tail={"finish": "machine-40-line-pressed", "hours": "18"},
    ),
)
