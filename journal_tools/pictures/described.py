"""A cloth picture in words, for those who do not see it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

_MOST_NAMED = 4


def described(
    weave: str,
    colours: Sequence[str],
    epi: float | None = None,
    ppi: float | None = None,
    unit: Literal["in", "cm"] = "in",
) -> str:
    """What a picture of a cloth shows: "2/2 twill in bone and slate, warp 24 and weft 20 threads to the inch".

    weave: its name, or "" where it has none. colours: their names, warp first, each named once here
    however often it comes. epi, ppi: threads in one `unit`, or None where nobody wrote them down;
    nothing is said of what is not known.
    """
    names = list(dict.fromkeys(colours))
    if len(names) > _MOST_NAMED + 1:
        names = [*names[:_MOST_NAMED], f"{len(names) - _MOST_NAMED} more colours"]
    text = weave.strip() or "woven cloth"
    if names:
        text += " in " + (f"{', '.join(names[:-1])} and {names[-1]}" if len(names) > 1 else names[0])
    threads = f"threads to the {'inch' if unit == 'in' else 'centimetre'}"
    warp, weft = _figure(epi), _figure(ppi)
    if warp and warp == weft:
        return f"{text}, {warp} {threads} each way"
    sides = [f"{name} {figure}" for name, figure in (("warp", warp), ("weft", weft)) if figure]
    return f"{text}, {' and '.join(sides)} {threads}" if sides else text


def _figure(density: float | None) -> str:
    """A density to a tenth, without an idle .0; empty where it is not known."""
    return "" if density is None else f"{density:.1f}".removesuffix(".0")
