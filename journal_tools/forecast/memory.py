"""What the journal remembers: the forecasts of width and of length together, fitted side by side."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass

from threadpoolctl import threadpool_limits

from journal_tools.forecast.belief import Belief
from journal_tools.forecast.forecast import Forecast
from journal_tools.forecast.kind import ClothKind
from journal_tools.forecast.learned import observed_of
from journal_tools.forecast.observed import Observed
from journal_tools.forecast.rests_on import RestsOn
from journal_tools.forecast.weighing import Surprise
from journal_tools.ledger import Ledger
from journal_tools.records import Journal


@dataclass(frozen=True)
class Memory:
    """Both directions of a journal. observed: what each was fitted to."""

    observed: Mapping[str, tuple[Observed, ...]]
    forecasts: Mapping[str, Forecast]

    @classmethod
    def of(cls, journal: Journal, ledgers: Mapping[str, Ledger] | None = None) -> Memory:
        """Learn a whole journal. ledgers: of warps, by name, where they are at hand."""
        return cls.from_observed(observed_of(journal, ledgers))

    @classmethod
    def from_observed(cls, observed: Mapping[str, tuple[Observed, ...]]) -> Memory:
        """Learn what was observed, by direction: each on a core of its own."""
        # Two libraries' threads on two cores would wait for each other.
        with threadpool_limits(1), ThreadPoolExecutor(len(observed)) as side_by_side:
            fits = side_by_side.map(lambda direction: Forecast.fit(observed[direction], direction), observed)
            return cls(observed, dict(zip(observed, fits, strict=True)))

    def belief(
        self, direction: str, kind: ClothKind, first: str, last: str, *, seen: Sequence[Observed] = ()
    ) -> Belief:
        """What to expect of ln(last / first); see `Forecast.belief`."""
        return self.forecasts[direction].belief(kind, first, last, seen=seen)

    def rests_on(self, direction: str, kind: ClothKind, first: str, last: str) -> RestsOn:
        """Which warps that rests on."""
        return self.forecasts[direction].rests_on(kind, first, last)

    def surprises(self, below: float = 0.001) -> tuple[tuple[str, Surprise], ...]:
        """Losses that the other warps make unlikely, with their direction; see `Forecast.surprises`."""
        return tuple(
            (direction, surprise)
            for direction, forecast in self.forecasts.items()
            for surprise in forecast.surprises(below)
        )
