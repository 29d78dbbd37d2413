"""Whether a cloth is the weave that it is said to be."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import TYPE_CHECKING, Literal

from journal_tools.drafts.interlacement import drawdown
from journal_tools.drafts.likeness import same_cloth
from journal_tools.drafts.naming import NOT_NAMED, Name
from journal_tools.drafts.threadings import is_called, is_of_a_threading, threaded_as
from journal_tools.drafts.weaves import Face, NamedWeave, named_weave

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

Answer = Literal["it is", "its other side", "another", ""]
"""What there is to say: "" where a cloth or a word without a name, or one that says too little, tells nothing."""

SHAPES = {"broken": "broken", "herringbone": "broken", "zigzag": "pointed", "point": "pointed", "rosepath": "pointed"}
"""Words for twills that do not go straight on. A dornick is a herringbone in short lines, and point is said of
threadings that weave zigzags: of such a pair neither contradicts the other (judgement)."""

KINDS = ("satin", "sateen", "basket", "huck", "waffle")


def agreement_of(repeat: NDArray[np.bool_], name: Name, said: str, threading: Sequence[frozenset[int]] = ()) -> Answer:
    """What to say of a cloth (picks, ends; of this name) that is said to be a weave.

    threading: where the weave may be called by it; of a name that is a threading's the treadling tells nothing.
    """
    said = re.split("[,;(]", said)[0].lower()
    if is_of_a_threading(said):
        return "it is" if is_called(said, name.text) or (threading and threaded_as(said, threading)) else ""
    weave = named_weave(said) if said else None
    if weave is None:
        return ""
    meant = drawdown(weave.draft)
    if name.kind != NOT_NAMED and name.text == weave.name:
        return "it is"
    if same_cloth(repeat, meant):
        return "it is" if repeat.mean() == meant.mean() else "its other side"
    if "plain" in weave.name and (name.kind == "rib" or weave.face is not Face.BALANCED):
        return ""  # "weft-faced" is said of many a weave
    if name.kind == NOT_NAMED:
        return ""
    found, told = _shape(name.text), _shape(weave.name)
    if found and told:
        return _of_twills(name.text, found, told, said)
    return _of_kinds(name.text, weave, said)


def _of_twills(name: str, found: str, told: str, said: str) -> Answer:
    """Of two twills: by the way their lines go, and by their figures where they are said."""
    generic = told == "straight" and "straight" not in said
    if found != told and not generic:
        return "another"
    figures, meant = _figures(name) or (2, 2), _figures(said)
    if meant is None or figures == meant:
        return "it is" if found == told and not _more_to_say(name, said) else ""
    return "its other side" if figures == _turned_over(meant) else "another"


def _of_kinds(name: str, weave: NamedWeave, said: str) -> Answer:
    """Of satins, baskets and the like: by the word, and by the figure where it is said."""
    found, told = (next((kind for kind in KINDS if kind in text), "") for text in (name, weave.name))
    figure = re.search(r"\d[\d/]*", said)
    same_size = figure is None or figure.group().split("/")[0] == name.split("-")[0].split("/")[0]
    if {found, told} == {"satin", "sateen"} and same_size:
        return "its other side"
    if found and found == told and (same_size or found in ("huck", "waffle")):
        return "it is" if figure is None and found in ("satin", "sateen") else ""
    return "another"


def _shape(name: str) -> str:
    """How a twill's lines go by its name: "straight", "pointed" or "broken"; "" where it is no twill's."""
    for word, shape in SHAPES.items():
        if word in name:
            return shape
    return "straight" if "twill" in name else ""


def _more_to_say(name: str, said: str) -> bool:
    """Whether a name says of how the lines go what was not said, or the other way about."""
    return any((word in name) != (word in said) for word in (*SHAPES, "its", "doubled"))


def _figures(name: str) -> tuple[int, ...] | None:
    """A twill's figures, from the highest; None where the name has none."""
    found = re.search(r"\d+(?:\s*[/-]\s*\d+)+", name)
    if found is None:
        return None
    figures = [int(figure) for figure in re.findall(r"\d+", found.group())]
    return max(tuple(figures[n:] + figures[:n]) for n in range(0, len(figures), 2))


def _turned_over(figures: tuple[int, ...]) -> tuple[int, ...]:
    """The figures of the back: over and under exchanged."""
    turned = [*figures[1:], figures[0]]
    return max(tuple(turned[n:] + turned[:n]) for n in range(0, len(turned), 2))
