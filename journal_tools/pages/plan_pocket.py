"""What the forecast knows, in so few numbers that a page can plan from them with sums alone.

Every answer of the forecast is a sum of a few effects (weave, fibre, yarn, finish, closeness), so its
mean is the sum of theirs, and its doubt the sum over each pair of them. For every span there are then
one mean an effect and one figure a pair: with 60 yarns some thousand small whole numbers, exact for
any yarn in any weave with any finish. How heavy the tails are is told once for what was woven before
and once for what is new.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Any

from journal_tools.forecast.kind import ClothKind

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    from journal_tools.forecast.belief import Belief
    from journal_tools.forecast.forecast import Forecast

    Floats = NDArray[np.float64]

SPANS = (
    ("width", "in_reed", "on_loom"),
    ("width", "off_loom", "washed 1"),
    ("width", "in_reed", "washed 1"),
    ("width", "in_reed", "settled"),
    ("length", "warp", "on_loom"),
    ("length", "off_loom", "washed 1"),
    ("length", "on_loom", "washed 1"),
    ("length", "on_loom", "settled"),
)
"""Direction, first and last moment of what a plan asks."""

CHANCES = (0.005, 0.025, 0.05, 0.1, 1 / 6, 0.25, 0.5, 0.75, 5 / 6, 0.9, 0.95, 0.975, 0.995)
MEAN, DOUBT = 1e-5, 1e-8
"""Units of what is written: a thousandth of a point of loss, and (a hundredth of a point) squared."""

FORGOTTEN = ("level", "year", "closeness")
"""Effects that every question has, or that have no name."""


def pocket_data(forecasts: Mapping[str, Forecast], known: ClothKind) -> dict[str, Any]:
    """All of it, for the page's script.

    forecasts: by direction. known: the kind of cloth that was woven most. columns: where
    each name stands, by direction and effect; spans: means (MEAN) an effect, doubts (DOUBT) of each pair
    below the diagonal, row by row, `fresh` doubts of what nothing is known of, and what warps and pieces
    scatter; tail: spreads of the shared part below each of `chances`.
    """
    tables = {direction: Table(forecast) for direction, forecast in forecasts.items()}
    spans = {
        " ".join(span): tables[span[0]].span(span[1], span[2], known) for span in SPANS if span[0] in tables
    }
    return {
        "chances": [round(chance, 5) for chance in CHANCES],
        "shares": {direction: table.shares for direction, table in tables.items()},
        "columns": {direction: table.places for direction, table in tables.items()},
        "spans": spans,
    }


class Table:
    """One direction: its effects, what they do and how sure that is, over all nodes together."""

    def __init__(self, forecast: Forecast) -> None:
        import numpy as np

        from journal_tools.forecast.columns import FIRST_SHARE, LEVEL, SLOPE

        self.forecast = forecast
        nodes = forecast.nodes
        weights = nodes.weights
        self.effects: Floats = weights @ nodes.effects
        off = nodes.effects - self.effects
        self.covariance: Floats = np.tensordot(weights, nodes.covariance, 1) + (off * weights[:, None]).T @ off
        first, other = FIRST_SHARE, round(1 - FIRST_SHARE, 6)
        self.shares = (
            {"weft": first, "warp": other} if nodes.direction == "width" else {"weft": other, "warp": first}
        )
        named = sorted((name for name in nodes.index if name[0] not in FORGOTTEN), key=str)
        self.order: Sequence[tuple[str, str | int]] = [LEVEL, SLOPE, *named]
        self.places: dict[str, dict[str, int]] = {}
        for at, (term, name) in enumerate(named, start=2):
            self.places.setdefault(term, {})[str(name)] = at

    def span(self, first: str, last: str, known: ClothKind) -> dict[str, Any]:
        """The figures of one span."""
        import numpy as np

        from journal_tools.forecast.chain import span
        from journal_tools.forecast.columns import BLOCKS
        from journal_tools.forecast.forecast import PARTS
        from journal_tools.forecast.normal import t_weights_of

        forecast, nodes = self.forecast, self.forecast.nodes
        way = np.array(span(nodes.direction, first, last))
        turned = np.zeros((len(self.order), len(self.effects)))
        fresh = np.zeros(len(self.order))
        believed = {block: nodes.weights @ (nodes.effect_sd[:, at] ** 2 @ way**2) for at, block in enumerate(BLOCKS)}
        for row, name in enumerate(self.order):
            place = nodes.place[nodes.index[name]] if name in nodes.index else np.full(len(way), -1)
            there = place >= 0
            turned[row, place[there]] = way[there]
            prior = nodes.weights @ nodes.effect_sd[:, BLOCKS.index(name[0])] ** 2
            fresh[row] = prior[~there] @ way[~there] ** 2
        self._with_year(turned, way)
        mean = turned @ self.effects
        mean[0] += forecast.hyper.level @ way
        mean[1] += forecast.hyper.slope_mean @ way
        doubt = turned @ self.covariance @ turned.T + np.diag(fresh)
        lower = np.tril_indices(len(mean))
        scatter = float(np.mean([1 / weight for weight in t_weights_of(forecast.nu, PARTS)]))
        return {
            "mean": np.rint(mean / MEAN).astype(int).tolist(),
            "doubt": np.rint(doubt[lower] / DOUBT).astype(int).tolist(),
            "unit": DOUBT,
            "fresh": {term: round(float(value) / DOUBT) for term, value in believed.items() if term not in FORGOTTEN},
            "warp": round(float(way @ np.tensordot(nodes.weights, nodes.warp, 1) @ way) * scatter / DOUBT),
            "piece": round(float(way @ np.tensordot(nodes.weights, nodes.piece, 1) @ way) / DOUBT),
            "tail": tail(forecast.belief(known, first, last)),
            "tail_new": tail(forecast.belief(ClothKind(), first, last)),
        }

    def _with_year(self, turned: Floats, way: Floats) -> None:
        """A cloth to come is of the newest year, which goes with the level."""
        nodes = self.forecast.nodes
        year = nodes.index.get(("year", nodes.last_year)) if nodes.last_year is not None else None
        if year is not None and nodes.last_year != nodes.first_year:
            place = nodes.place[year]
            turned[0, place[place >= 0]] += way[place >= 0]


def tail(belief: Belief) -> list[float]:
    """How many spreads the mean of a batch lies from its own mean, at each of CHANCES."""
    sd = belief.batch_sd
    return [round((belief.quantile(chance, "batch") - belief.mean) / sd, 3) for chance in CHANCES]
