"""Woollen and rug wool: a scarf, cushions, cloth for a jacket."""

from __future__ import annotations

from tests.workshop.design import Design, Fringe, Piece, Plan, Stretch, Waste

WARPS = (
    Design(
        name="peat-scarf",
        title="Peat smoke scarf",
        yarn="woollen-8-2",
        head={
            "started": "2022-10-08",
            "finished": "2022-10-23",
            "loom": "small-loom",
            "share": "yes",
            "tags": ["scarves"],
            "yarns": {
                "peat": "woollen-8-2 peat",
                "fog": "woollen-8-2 fog",
                "bracken": "woollen-8-2 bracken",
            },
            "warp": {"order": "48 peat, 24 bracken, 84 peat", "floating_selvedges": "peat"},
            "reed": "15/in",
            "sley": "1",
        },
        waste=Waste(5, 2, 17),
        stretches=(
            Stretch(
                cloth="woollen scoured",
                usual=(14.5, 13),
                beat=13,
                keys={"weave": "herringbone", "draft": "herringbone-four", "weft": "fog"},
                show_beat=True,
                fringe=Fringe(6, "twisted before washing", 5, 4.5),
                plan=Plan("scarf", 1, 72, (4, 2, 6), (5, 7), "in_reed on_loom washed"),
                pieces=(
                    Piece(
                        "scarf", 72, "on_loom off_loom washed", weighed="in_oil washed",
                        extra={"now": "given away"},
                    ),
                ),
            ),
        ),
        tail={"finish": "scoured-flat", "hours": "11"},
    ),
    Design(
        name="moor-cloth",
        title="Moor cloth for a jacket",
        yarn="woollen-8-2",
        unit="cm",
        head={
            "started": "2025-11-22",
            "finished": "2026-01-10",
            "loom": "long-loom",
            "units": "cm",
            "tags": ["yardage"],
            "yarns": {
                "peat": "woollen-8-2 peat",
                "bracken": "woollen-8-2 bracken",
                "moss": "woollen-8-2 moss",
                "heather": "woollen-8-2 heather",
            },
            "warp": {"order": "20 times (12 peat, 2 bracken, 12 peat, 2 heather), 12 peat, 2 bracken, 12 peat"},
            "reed": "40 per 10 cm",
            "sley": "1-2",
        },
        waste=Waste(15, 5, 80, more={"a sample for the washtub, cut off and re-tied": 52}),
        stretches=(
            Stretch(
                cloth="woollen scoured",
                usual=(5.8, 5.2),
                beat=5.2,
                keys={"weave": "2/2 twill", "draft": "herringbone-four", "weft": "moss"},
                show_beat=True,
                plan=Plan("length", 1, 380, (4, 2, 7), (5, 7), "in_reed on_loom off_loom washed"),
                pieces=(
                    Piece(
                        "length", 380, "on_loom off_loom washed", weighed="in_oil washed", widths=3,
                        how={"on_loom": {"taken": "ribbon"}, "washed 1": {"taken": "tape"}},
                    ),
                ),
            ),
        ),
        tail={"finish": "scoured-flat", "hours": "44", "cost": "92 EUR"},
    ),
    Design(
        name="fish-ladder-cushions",
        title="Fish ladder cushions",
        yarn="linen-16-2",
        head={
            "started": "2024-06-22",
            "finished": "2024-08-04",
            "loom": "long-loom",
            "share": "yes",
            "temple": "yes",
            "tension": "hard",
            "tags": ["cushions", "weft-faced"],
            "yarns": {
                "natural": "linen-16-2 natural",
                "undyed": "rug-wool-5-2 undyed",
                "madder": "rug-wool-5-2 madder",
                "indigo": "rug-wool-5-2 indigo",
                "weld": "rug-wool-5-2 weld",
            },
            "warp": {"order": "144 natural"},
            "reed": "8/in",
            "sley": "1",
        },
        waste=Waste(7, 4, 31, 2, "gap between cushions"),
        stretches=(
            Stretch(
                cloth="weft-faced",
                usual=(8, 36),
                beat=36,
                weft="rug-wool-5-2",
                keys={
                    "weave": "weft-faced, point on three",
                    "draft": "fish-ladder",
                    "weft": {
                        "order": (
                            "6 times (3 indigo), 4 times (indigo, madder, indigo), 4 times (undyed, madder, indigo), "
                            "4 times (undyed, madder, weld), 2 times (3 weld), 4 times (undyed, madder, weld), "
                            "4 times (undyed, madder, indigo), 4 times (indigo, madder, indigo)"
                        ),
                    },
                },
                plan=Plan("cushion front", 2, 18.5, (1.5, 0.5, 1), (1.5, 1.5), "in_reed on_loom washed"),
                pieces=(
                    Piece("cushion front 1", 18.5, "on_loom off_loom washed", picks=True, weighed="off_loom"),
                    Piece("cushion front 2", 18.5, "on_loom off_loom washed", picks=True),
                ),
            ),
        ),
        tail={"finish": "steamed-on-the-board", "hours": "48", "cost": "39 EUR"},
    ),
)
