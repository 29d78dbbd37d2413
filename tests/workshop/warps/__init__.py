"""The warps of four and a half years, as they were put on the loom."""

from __future__ import annotations

from tests.workshop.design import Design
from tests.workshop.warps import (
    alpaca_and_silk,
    blankets,
    cottolin,
    cotton,
    fine_cotton,
    hemp,
    linen,
    oddments,
    scarves,
    wool,
)

WARPS: tuple[Design, ...] = (
    *cottolin.WARPS,
    *cotton.WARPS,
    *fine_cotton.WARPS,
    *linen.WARPS,
    *hemp.WARPS,
    *wool.WARPS,
    *blankets.WARPS,
    *scarves.WARPS,
    *alpaca_and_silk.WARPS,
    *oddments.WARPS,
)
