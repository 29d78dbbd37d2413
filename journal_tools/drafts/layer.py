"""One of the cloths that lie on one another, looked at by itself."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from journal_tools.drafts.floats import Float, floats, most_whole, too_long
from journal_tools.drafts.hanging import hanging
from journal_tools.drafts.naming import NOT_NAMED, Name, name_of

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

KIND = "layers"

OF_LAYERS = ("double", "triple", "layer", "width", "tube", "tubular", "pocket")
"""Words in a weave's name by which its layers are meant."""


@dataclass(frozen=True)
class Layer:
    """ends, picks: the threads of one repeat that are its own, by their places from 0 in the whole.

    over: (picks, ends), its own crossings. floats: of it alone, with threads numbered as in the whole.
    ends_share, picks_share: how much of all ends and picks it has, and so of each length.
    """

    ends: tuple[int, ...]
    picks: tuple[int, ...]
    over: NDArray[np.bool_]
    name: Name
    floats: tuple[Float, ...]
    ends_share: float
    picks_share: float


def in_layers(said: str) -> bool:
    """Whether what a weave is said to be is more than one cloth."""
    return any(word in said.lower() for word in OF_LAYERS)


def layers_of(repeat: NDArray[np.bool_], goes_on: tuple[bool, bool] = (True, True)) -> tuple[Layer, ...]:
    """The cloths that a repeat (picks, ends) falls into, from the top. goes_on: as for `floats`."""
    import numpy as np

    found = []
    for number, part in enumerate(hanging(repeat).layers):
        over = repeat[np.ix_(part.picks, part.ends)]
        shares = over.shape[1] / repeat.shape[1], over.shape[0] / repeat.shape[0]
        own = tuple(
            replace(
                one,
                at=tuple(
                    (part.ends[thread], part.picks[start])
                    if one.system == "warp"
                    else (part.picks[thread], part.ends[start])
                    for thread, start in one.at
                ),
                layer=number,
                share=shares[1] if one.system == "warp" else shares[0],
            )
            for one in floats(over, goes_on)
        )
        found.append(Layer(part.ends, part.picks, over, name_of(over), own, *shares))
    return tuple(found)


def name_of_layers(layers: tuple[Layer, ...]) -> Name:
    """What all layers together are called: "2 layers, each plain weave"; nothing where one has no name."""
    if any(layer.name.kind == NOT_NAMED for layer in layers):
        return Name(NOT_NAMED, NOT_NAMED)
    names = [layer.name.text for layer in layers]
    alike = len(set(names)) == 1
    return Name(KIND, f"{len(layers)} layers, {f'each {names[0]}' if alike else ' over '.join(names)}")


def too_long_in(
    layers: tuple[Layer, ...],
    like: NDArray[np.bool_],
    warp: float | None,
    weft: float | None,
    goes_on: tuple[bool, bool] = (True, True),
) -> NDArray[np.bool_]:
    """The crossings of all layers that lie in a float of more than so many threads of the whole (shape as `like`)."""
    import numpy as np

    found = np.zeros(like.shape, dtype=bool)
    for layer in layers:
        picks, ends = (
            most_whole(None if most is None else most * share)
            for most, share in ((warp, layer.picks_share), (weft, layer.ends_share))
        )
        found[np.ix_(layer.picks, layer.ends)] = too_long(layer.over, picks, ends, goes_on)
    return found


def turn_at_the_fold(layers: tuple[Layer, ...]) -> bool:
    """Whether lines of two layers run the same way seen from above: opened, one of them is turned over."""
    ways = [layer.name.direction for layer in layers]
    return len(ways) == 2 and ways[0] != "" and ways[0] == ways[1]
