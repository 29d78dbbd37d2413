"""What the forecast knows, in so few numbers that a page can plan from them with sums alone.

Every answer of the forecast is a sum of a few effects (weave, fibre, yarn, finish, closeness), so its
mean is the sum of theirs, and its doubt the sum over each pair of them. For every span there are then
one mean an effect and one figure a pair: with 60 yarns some thousand small whole numbers, exact for
any yarn in any weave with any finish. How heavy the tails are is told once for what was woven before
and once for what is new.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Literal

from journal_tools.forecast.chain import span
from journal_tools.forecast.kind import ClothKind

if TYPE_CHECKING:
    from journal_tools.forecast.belief import Belief
    from journal_tools.forecast.columns import Column
    from journal_tools.forecast.forecast import Forecast
    from journal_tools.forecast.small import Floats, Indices

SPANS = (
    ("width", "in_reed", "on_loom"),
    ("width", "off_loom", "washed 1"),
    ("width", "off_loom", "settled"),
    ("width", "in_reed", "washed 1"),
    ("width", "in_reed", "settled"),
    ("length", "warp", "on_loom"),
    ("length", "off_loom", "washed 1"),
    ("length", "off_loom", "settled"),
    ("length", "on_loom", "washed 1"),
    ("length", "on_loom", "settled"),
)
"""Direction, first and last moment of what a plan asks."""

CHANCES = (0.005, 0.025, 0.05, 0.1, 1 / 6, 0.25, 0.5, 0.75, 5 / 6, 0.9, 0.95, 0.975, 0.995)
MEAN, DOUBT = 1e-5, 1e-8
"""Units of what is written: a thousandth of a point of loss, and (a hundredth of a point) squared."""

UNNAMED = ("level", "year", "closeness")
"""Effects that every question has, or that have no name."""


class Pocket:
    """What is known of every span that pages ask about, for any yarn, weave, finish and closeness."""

    def __init__(self, forecasts: Mapping[str, Forecast], known: ClothKind) -> None:
        """forecasts: by direction. known: the kind of cloth that was woven most."""
        self.tables = {direction: Table(forecast) for direction, forecast in forecasts.items()}
        self.spans = {asked: self.tables[asked[0]].span(asked[1], asked[2], known) for asked in SPANS}

    def answer(self, kind: ClothKind, asked: tuple[str, str, str]) -> Answer:
        """What to expect of a kind of cloth over one of SPANS; a sum over the pairs of its few effects."""
        from journal_tools.forecast.columns import terms_of

        table, figures = self.tables[asked[0]], self.spans[asked]
        terms = {name: share for name, share in terms_of(kind, asked[0], None).items() if name[0] != "year"}
        known = [(table.at[name], share) for name, share in terms.items() if name in table.at]
        fresh = [(figures.fresh[name[0]], share) for name, share in terms.items() if name not in table.at]
        mean = sum(share * float(figures.mean[at]) for at, share in known)
        doubt = sum(a * b * float(figures.doubt[i, j]) for i, a in known for j, b in known)
        doubt += sum(share * share * variance for variance, share in fresh)
        return Answer(
            mean,
            math.sqrt(max(0.0, doubt) + figures.warp),
            math.sqrt(figures.piece),
            figures.tail_new if fresh else figures.tail,
        )

    def as_data(self) -> dict[str, Any]:
        """For the page's script: see `Span.as_data`. columns: where each name stands, by direction and effect."""
        return {
            "chances": [round(chance, 5) for chance in CHANCES],
            "shares": {direction: table.shares for direction, table in self.tables.items()},
            "columns": {direction: table.places for direction, table in self.tables.items()},
            "spans": {" ".join(asked): figures.as_data() for asked, figures in self.spans.items()},
        }


@dataclass(frozen=True)
class Answer:
    """What to expect of ln(last / first) of a batch. shared, own: spread of its mean, and of a piece beside it."""

    mean: float
    shared: float
    own: float
    tail: tuple[float, ...]

    @property
    def sd(self) -> float:
        """Spread of one piece."""
        return math.hypot(self.shared, self.own)

    def quantile(self, chance: float, of: Literal["piece", "batch"] = "piece") -> float:
        """The ln ratio that a piece, or the mean of the batch, stays below with one of CHANCES."""
        return self.mean + (self.sd if of == "piece" else self.shared) * self.tail[CHANCES.index(round(chance, 6))]

    def range(self, share: float = 0.9) -> tuple[float, float]:
        """The ln ratios of a piece that hold with this chance, as much below as above."""
        return self.quantile((1 - share) / 2), self.quantile((1 + share) / 2)

    def loss(self) -> float:
        """The middle loss, a fraction; negative where it grows."""
        return -math.expm1(self.quantile(0.5))

    def loss_range(self, share: float = 0.9) -> tuple[float, float]:
        """The least and the greatest loss of a piece that hold with this chance."""
        low, high = self.range(share)
        return -math.expm1(high), -math.expm1(low)


class Table:
    """One direction: its effects, what they do and how sure that is, over all nodes together.

    order: the effects, the level and the slope first; places: where the others stand, by term and name.
    """

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
        self.shares = {"weft": first, "warp": other} if nodes.direction == "width" else {"weft": other, "warp": first}
        named = sorted((name for name in nodes.index if name[0] not in UNNAMED), key=str)
        self.order: Sequence[Column] = [LEVEL, SLOPE, *named]
        self.at = {name: at for at, name in enumerate(self.order)}
        self.places: dict[str, dict[str, int]] = {}
        for at, (term, name) in enumerate(named, start=2):
            self.places.setdefault(term, {})[str(name)] = at

    def span(self, first: str, last: str, known: ClothKind) -> Span:
        """Everything about one span. known: a kind of cloth to take the tails from."""
        import numpy as np

        from journal_tools.forecast.columns import BLOCKS
        from journal_tools.forecast.forecast import PARTS
        from journal_tools.forecast.normal import t_weights_of

        forecast, nodes = self.forecast, self.forecast.nodes
        way = np.array(span(nodes.direction, first, last))
        nowhere = np.full(len(way), -1)
        place = np.array([nodes.place[nodes.index[name]] if name in nodes.index else nowhere for name in self.order])
        prior = np.array([nodes.weights @ nodes.effect_sd[:, block] ** 2 @ way**2 for block in range(len(BLOCKS))])
        unseen = np.where(place < 0, way**2, 0.0)
        fresh = [
            nodes.weights @ nodes.effect_sd[:, BLOCKS.index(name[0])] ** 2 @ unseen[row]
            for row, name in enumerate(self.order)
        ]
        mean, doubt = np.zeros(len(place)), np.diag(fresh)
        newest = self._newest(len(way))
        rows = np.vstack([place, newest])
        at, share = np.where(rows < 0, 0, rows), np.where(rows < 0, 0.0, way)
        spread = np.zeros((len(rows), len(rows)))
        moved = np.nonzero(way)[0] if len(self.effects) else ()
        for a in moved:
            for b in moved:
                spread += self.covariance[at[:, a][:, None], at[:, b]] * (share[:, a][:, None] * share[:, b])
        means = np.sum(self.effects[at] * share, axis=1) if len(self.effects) else np.zeros(len(rows))
        mean += means[:-1]
        doubt += spread[:-1, :-1]
        mean[0] += means[-1] + forecast.hyper.level @ way  # a cloth to come is of the newest year
        mean[1] += forecast.hyper.slope_mean @ way
        doubt[0] += spread[-1, :-1]
        doubt[:, 0] += spread[:-1, -1]
        doubt[0, 0] += spread[-1, -1]
        scatter = float(np.mean([1 / weight for weight in t_weights_of(forecast.nu, PARTS)]))
        return Span(
            mean,
            doubt,
            {term: float(prior[BLOCKS.index(term)]) for term in BLOCKS if term not in UNNAMED},
            float(way @ np.tensordot(nodes.weights, nodes.warp, 1) @ way) * scatter,
            float(way @ np.tensordot(nodes.weights, nodes.piece, 1) @ way),
            tail(forecast.belief(known, first, last)),
            tail(forecast.belief(ClothKind(), first, last)),
        )

    def _newest(self, steps: int) -> Indices:
        """Where the newest year of the walk stands; -1 where there is none, or only the first."""
        import numpy as np

        nodes = self.forecast.nodes
        row = nodes.index.get(("year", nodes.last_year)) if nodes.last_year is not None else None
        alone = row is None or nodes.last_year == nodes.first_year
        return np.full(steps, -1) if row is None or alone else nodes.place[row]


@dataclass(frozen=True)
class Span:
    """One span: of each effect its mean, of each pair of them the doubt, in ln ratio.

    fresh: doubt of what nothing is known of, by term. warp, piece: variances of a warp and of a piece
    beside it. tail, tail_new: how many spreads the mean of a batch lies off at each of CHANCES, for
    cloth like what was woven and for what is all new.
    """

    mean: Floats
    doubt: Floats
    fresh: Mapping[str, float]
    warp: float
    piece: float
    tail: tuple[float, ...]
    tail_new: tuple[float, ...]

    def as_data(self) -> dict[str, Any]:
        """For the page's script, in whole numbers."""
        import numpy as np

        lower = np.tril_indices(len(self.mean))
        return {
            "mean": np.rint(self.mean / MEAN).astype(int).tolist(),
            "doubt": np.rint(self.doubt[lower] / DOUBT).astype(int).tolist(),
            "unit": DOUBT,
            "fresh": {term: round(value / DOUBT) for term, value in self.fresh.items()},
            "warp": round(self.warp / DOUBT),
            "piece": round(self.piece / DOUBT),
            "tail": self.tail,
            "tail_new": self.tail_new,
        }


def tail(belief: Belief) -> tuple[float, ...]:
    """How many spreads the mean of a batch lies from its own mean, at each of CHANCES; alike on both sides.

    What skew one kind of cloth has says nothing of another's.
    """
    import numpy as np

    from journal_tools.forecast.normal import below

    away = np.linspace(-6, 6, 481)
    places = belief.mean + belief.batch_sd * away
    chance = below((places[:, None] - belief.means) / np.sqrt(belief.shared)) @ belief.weights
    found = np.interp(CHANCES, chance, away)
    return tuple(round(float(each), 3) for each in (found - found[::-1]) / 2)
