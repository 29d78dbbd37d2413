"""Blankets: scoured, fulled, and double width."""

from __future__ import annotations

from tests.workshop.design import Design, Fringe, Hem, Piece, Plan, Stretch, Waste

WARPS = (
    Design(
        name="cove-blanket",
        title="Cove blanket",
        yarn="woollen-8-2",
        unit="cm",
        head={
            "started": "2022-11-05",
            "finished": "2022-12-18",
            "loom": "long-loom",
            "units": "cm",
            "share": "yes",
            "tags": ["blankets", "plaids"],
            "yarns": {
                "cream": "woollen-8-2 cream",
                "fog": "woollen-8-2 fog",
                "moss": "woollen-8-2 moss",
                "heather": "woollen-8-2 heather",
            },
            "warp": {"order": "23 fog, 10 times (4 heather, 20 moss, 4 heather, 20 cream, 1 fog), 12 fog"},
            "reed": "50 per 10 cm",
            "sley": "1",
        },
        waste=Waste(16, 5, 82),
        stretches=(
            Stretch(
                cloth="woollen fulled",
                usual=(4.9, 4.7),
                beat=4.6,
                keys={
                    "weave": "2/2 twill",
                    "draft": "straight-four",
                    "weft": {"order": "4 heather, 20 moss, 4 heather, 20 cream, 1 fog"},
                },
                show_beat=True,
                fringe=Fringe(16, "twisted before fulling", 12.5, 10),
                fulling=(4, 8, 11),
                plan=Plan("blanket", 1, 215, (4, 2, 18), (5, 18), "in_reed on_loom off_loom washed"),
                pieces=(
                    Piece("blanket", 215, "on_loom off_loom washed", weighed="in_oil washed"),
                ),
            ),
        ),
        tail={"finish": "fulled-in-the-tub", "hours": "34", "cost": "61 EUR"},
    ),
    Design(
        name="fold-blanket",
        title="Fold blanket",
        yarn="woollen-8-2",
        unit="cm",
        head={
            "started": "2024-01-06",
            "finished": "2024-02-04",
            "loom": "long-loom",
            "units": "cm",
            "share": "yes",
            "tags": ["blankets", "double cloth"],
            "yarns": {"peat": "woollen-8-2 peat", "moss": "woollen-8-2 moss"},
            "warp": {"order": "860 peat", "wound": "3.9 m"},
            "layers": "2",
            "opens": "along the left edge",
            "reed": "50 per 10 cm",
            "sley": "2",
            "in_reed": "86 cm folded",
        },
        stretches=(
            Stretch(
                cloth="woollen fulled",
                keys={
                    "weave": "2/2 twill, double width",
                    "draft": "double-width-twill",
                    "weft": "moss",
                    "picks": "2300",
                    "on_loom": "83 x 250 folded",
                    "off_loom": "163 x 236 opened",
                    "fringe": {
                        "allowed": "20 cm each end",
                        "style": "twisted before fulling",
                        "after_twist": "16 cm",
                        "finished": "12 cm",
                    },
                    "fulling": {
                        "0 min scoured only": "153 x 220",
                        "8 min": "141 x 203",
                        "12 min stopped at size": "132 x 190",
                    },
                    "washed": "132 x 190",
                    "weight": {"in_oil": "1155 g", "washed": "1025 g"},
                },
                pieces=(),
            ),
        ),
        tail={
            "where_it_went": {
                "front tie-on": "12 cm",
                "header": "4 cm",
                "fringes": "2 of 20 cm",
                "thrums": "74 cm",
            },
            "finish": "fulled-in-the-tub",
            "hours": "41",
            "cost": "68 EUR",
            "accepted": ["wider than loom"],
        },
    ),
    Design(
        name="lookout-blanket",
        title="Lookout blanket",
        yarn="woollen-8-2",
        head={
            "started": "2025-01-11",
            "finished": "2025-02-16",
            "loom": "long-loom",
            "share": "yes",
            "tags": ["blankets", "plaids"],
            "yarns": {
                "navy": "woollen-8-2 navy",
                "cream": "woollen-8-2 cream",
                "ochre": "woollen-8-2 ochre",
            },
            "warp": {"order": "14 times (14 navy, 10 cream, 2 ochre, 10 cream), 14 navy"},
            "reed": "12/in",
            "sley": "1",
        },
        waste=Waste(7, 2, 32),
        stretches=(
            Stretch(
                cloth="woollen scoured",
                usual=(12.5, 12),
                beat=12,
                keys={
                    "weave": "2/2 twill",
                    "draft": "straight-four",
                    "weft": {"order": "14 navy, 10 cream, 2 ochre, 10 cream"},
                },
                show_beat=True,
                fringe=Fringe(6, "twisted before washing", 4.75, 4.25),
                plan=Plan("blanket", 1, 80, (4, 2, 7), (5, 6), "in_reed on_loom off_loom washed"),
                pieces=(
                    Piece(
                        "blanket", 80, "on_loom off_loom washed", weighed="in_oil washed", widths=3, picks=True,
                        how={"off_loom": {"rested": "24 hours"}},
                        extra={"price": "260 EUR", "now": "the pilot's house, up on the hill"},
                    ),
                ),
            ),
        ),
        tail={"finish": "scoured-flat", "hours": "36", "cost": "58 EUR"},
    ),
    Design(
        name="lap-blanket",
        title="Lap blanket for the boat",
        yarn="woollen-8-2",
        in_reed=40,
        flat=True,
        head={
            "started": "2025-12-28",
            "finished": "2025-01-18",
            "yarn": "woollen-8-2 bracken",
            "weave": "2/2 twill",
        },
        stretches=(Stretch("woollen scoured", {}, (Piece("", 58, "on_loom off_loom washed"),)),),
        tail={"finish": "scoured-flat"},
    ),
    Design(
        name="cot-blanket",
        seed=11,
        title="Cot blanket in superwash",
        yarn="superwash-12-2",
        head={
            "started": "2024-05-25",
            "finished": "2024-06-16",
            "loom": "long-loom",
            "share": "yes",
            "tags": ["blankets", "plaids", "gifts"],
            "yarns": {
                "oatmeal": "superwash-12-2 oatmeal",
                "lagoon": "superwash-12-2 lagoon",
                "mustard": "superwash-12-2 mustard",
                "buoy": "superwash-12-2 buoy",
            },
            "warp": {
                "order": (
                    "24 oatmeal, 11 times (16 lagoon, 6 oatmeal, 2 buoy, 6 oatmeal, 8 mustard, "
                    "6 oatmeal, 2 buoy, 6 oatmeal), 16 lagoon, 24 oatmeal"
                ),
            },
            "reed": "10/in",
            "sley": "2",
        },
        waste=Waste(6, 2, 30),
        stretches=(
            Stretch(
                cloth="superwash",
                usual=(20, 19),
                beat=19,
                keys={
                    "weave": "2/2 twill",
                    "draft": "straight-four",
                    "weft": {
                        "order": (
                            "16 lagoon, 6 oatmeal, 2 buoy, 6 oatmeal, 8 mustard, 6 oatmeal, 2 buoy, 6 oatmeal"
                        ),
                    },
                },
                hem=Hem(1, 0.25, "both ends", "after washing", "lagoon"),
                plan=Plan("blanket", 1, 42, (4, 2, 4), (4, 2), "in_reed on_loom off_loom washed made_up"),
                pieces=(Piece("blanket", 42, "on_loom off_loom washed made_up", 2, weighed="washed"),),
            ),
        ),
        tail={"finish": ["hand-30-flat", "machine-40-line-pressed"], "hours": "22", "accepted": ["grew"]},
    ),
)
