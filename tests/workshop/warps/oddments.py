"""What fits nowhere else."""

from __future__ import annotations

from tests.workshop.design import Design, Piece, Stretch

WARPS = (
    Design(
        name="mystery-scarf",
        title="Scarf from the mystery cone",
        yarn="mystery-cone",
        in_reed=8.5,
        flat=True,
        head={"started": "autumn 2022", "yarn": "mystery-cone pond", "weave": "2/2 twill"},
        stretches=(Stretch("worsted", {}, (Piece("", 60, "on_loom washed"),)),),
        tail={"finish": "hand-30-flat"},
    ),
)
