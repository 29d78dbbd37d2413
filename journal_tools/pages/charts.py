"""Charts that pages ask for while they are made, drawn all together at the end."""

from __future__ import annotations

import hashlib
from concurrent.futures import Future, ThreadPoolExecutor
from pathlib import Path
from typing import TYPE_CHECKING

from journal_tools.pages.views import Chart, Table
from journal_tools.pictures.chart_store import chart_size, draw_all

if TYPE_CHECKING:
    from journal_tools.pictures.scatter import LossScatter
    from journal_tools.pictures.trend import OffByYarn, OffTrend

    Drawn = LossScatter | OffTrend | OffByYarn


class Charts:
    """The charts of one build. A page knows a chart's address before the chart is drawn.

    Drawing goes on beside the making of other pages: `start` once all charts are asked for, then
    `drawn` for what came of it.
    """

    def __init__(self) -> None:
        self._asked: dict[str, Drawn] = {}
        self._beside = ThreadPoolExecutor(1)
        self._drawn: Future[dict[str, bytes]] | None = None

    def ask(self, chart: Drawn, title: str, alt: str, table: Table | None = None, note: str = "") -> Chart:
        """Have a chart drawn, and what a page needs to show it."""
        address = f"charts/{hashlib.sha256(repr(chart).encode()).hexdigest()[:20]}.svg"
        self._asked[address] = chart
        width, height = chart_size(chart)
        return Chart(title, address, alt, width, height, table, note)

    def start(self, folder: Path) -> None:
        """Begin to draw every chart asked for; those kept in the folder are not drawn again."""
        self._drawn = self._beside.submit(draw_all, dict(self._asked), folder)
        self._beside.shutdown(wait=False)

    def drawn(self) -> dict[str, bytes]:
        """Every chart by its address, once all are drawn."""
        return self._drawn.result() if self._drawn is not None else {}
