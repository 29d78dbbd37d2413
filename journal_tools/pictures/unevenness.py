"""How the threads of a cloth differ, for its pictures."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Unevenness:
    """Thickness of each thread, and room that it takes, beside the usual 1; begun again when short."""

    warp_thickness: tuple[float, ...] = ()
    weft_thickness: tuple[float, ...] = ()
    warp_room: tuple[float, ...] = ()
    weft_room: tuple[float, ...] = ()

    @property
    def is_even(self) -> bool:
        """Whether there is nothing to draw otherwise."""
        figures = (*self.warp_thickness, *self.weft_thickness, *self.warp_room, *self.weft_room)
        return all(figure == 1 for figure in figures)


EVEN = Unevenness()
"""Threads that are all alike."""
