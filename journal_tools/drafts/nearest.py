"""Among many cloths those that are woven most like one of them."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray


class Nearest:
    """Cloths by name, each by its `windows`, held so that only those with windows in common are compared.

    What two of them have in common is the sum of the smaller share of each window, and their `distance`
    is what is left to 1. Time of a search grows with the windows of one cloth times the cloths.
    """

    def __init__(self, windows: Mapping[str, NDArray[np.float64]]) -> None:
        import numpy as np

        self._names = sorted(windows)
        self._place = {name: place for place, name in enumerate(self._names)}
        self._own = {name: np.flatnonzero(windows[name]) for name in self._names}
        members: dict[int, list[int]] = {}
        for name in self._names:
            for window in self._own[name].tolist():
                members.setdefault(window, []).append(self._place[name])
        self._members = {window: np.array(places) for window, places in members.items()}
        self._shares = {
            window: np.array([windows[self._names[place]][window] for place in places])
            for window, places in self._members.items()
        }

    def to(self, name: str, most: float) -> list[tuple[str, float]]:
        """The other cloths that are no further than `most` from one, with their distances, the nearest first."""
        import numpy as np

        if name not in self._place:
            return []
        common = np.zeros(len(self._names))
        here = self._place[name]
        for window in self._own[name].tolist():
            places, shares = self._members[window], self._shares[window]
            common[places] += np.minimum(shares, shares[np.searchsorted(places, here)])
        apart = 1 - common
        near = [place for place in np.flatnonzero(apart <= most + 1e-9).tolist() if place != here]
        found = [(self._names[place], max(0.0, float(apart[place]))) for place in near]
        return sorted(found, key=lambda pair: (round(pair[1], 9), pair[0]))
