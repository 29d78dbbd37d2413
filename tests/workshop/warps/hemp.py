"""Hemp, which behaves like linen with a temper."""

from __future__ import annotations

from tests.workshop.design import Design, Piece, Plan, Stretch, Waste

WARPS = (
    Design(
        name="bread-cloths",
        title="Bread cloths",
        yarn="hemp-16-2",
        in_reed=21.5,
        flat=True,
        head={
            "started": "2024-03",
            "share": "yes",
            "yarn": "hemp-16-2 raw",
            "weave": "plain weave",
            "sett": "20/in",
        },
        stretches=(
            Stretch("linen plain", {}, (Piece("", 27, "on_loom off_loom washed"),), usual=(20, 18), sett=20),
        ),
        tail={"finish": "machine-60-line"},
    ),
    Design(
        name="sailroom-cloth",
        title="Sailroom cloth by the metre",
        yarn="hemp-16-2",
        unit="cm",
        head={
            "started": "2025-10-18",
            "finished": "2025-11-15",
            "loom": "long-loom",
            "units": "cm",
            "share": "yes",
            "tags": ["yardage", "stripes"],
            "yarns": {"pale": "hemp-16-2 pale", "bark": "hemp-16-2 bark", "raw": "hemp-16-2 raw"},
            "warp": {
                "order": (
                    "24 pale, 8 times (4 bark, 4 pale, 16 raw, 4 pale, 4 bark, 40 pale), "
                    "4 bark, 4 pale, 16 raw, 4 pale, 4 bark, 24 pale"
                ),
            },
            "reed": "40 per 10 cm",
            "sley": "2",
        },
        waste=Waste(15, 5, 80),
        marked=(100,),
        stretches=(
            Stretch(
                cloth="linen plain",
                usual=(8, 7.2),
                beat=7,
                keys={"weave": "plain weave", "draft": "plain-two", "weft": "pale"},
                show_beat=True,
                plan=Plan("length", 1, 310, (3, 0.5, 4), (1, 4), "in_reed on_loom off_loom washed"),
                pieces=(
                    Piece(
                        "length", 310, "on_loom off_loom washed", 2, weighed="washed", widths=3,
                        how={"on_loom": {"taken": "ribbon"}},
                    ),
                ),
            ),
        ),
        tail={"finish": ["machine-60-line", "machine-60-line"], "hours": "30"},
    ),
)
