"""What the two numbers on a yarn's label mean: fibre x order -> a reading, or several.

This table is data. One reading: the label is read so. Several: it is refused, and all of them are
told with their yards in a pound, because the wrong one makes a cloth of half or twice the sett.

The columns are named by an example of the order, four plies being the most that are usual:

    8/2  only the second number can be the plies       2/8  only the first can
    3/2  either, the larger stands first               2/3  either, the larger stands last
    2/2  the two are the same, and so is the reading   8    one number alone, a single

Sources. Cotton and linen are labelled size/plies (8/2) and worsted plies/size (2/20); the yarn is
size / plies either way: J. T. Taylor, "Cotton Weaving and Designing", 6th ed. Spun silk is his
exception: "40's-2" is already the number of the finished yarn. Rayon follows cotton (ASTM D2260).
Nm stands on labels in both orders. That "the larger number is the size" is common practice, no more:
so it is used only where that order is the fibre's own, or where the other reading would need more
than four plies. Wool that does not say worsted, silk, hemp and blends are sold in several systems.
"""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from fractions import Fraction
from typing import Literal, NamedTuple

Shape = Literal["8/2", "2/8", "3/2", "2/3", "2/2", "8"]
MOST_USUAL_PLIES = 4


class Order(StrEnum):
    """Which of the two numbers is the size of a ply."""

    SIZE_FIRST = "size/plies"
    PLIES_FIRST = "plies/size"
    FINISHED = "number of the finished yarn, then plies"


class Reading(NamedTuple):
    """One way to read a label: in which system, and in which order."""

    system: str
    order: Order


_S, _P = Order.SIZE_FIRST, Order.PLIES_FIRST
NE, NE_P = Reading("Ne", _S), Reading("Ne", _P)
LEA, LEA_P = Reading("lea", _S), Reading("lea", _P)
WORSTED, WORSTED_P = Reading("worsted", _S), Reading("worsted", _P)
RUN, RUN_P = Reading("run", _S), Reading("run", _P)
CUT, CUT_P = Reading("cut", _S), Reading("cut", _P)
SKEIN, SKEIN_P = Reading("skein", _S), Reading("skein", _P)
NM, NM_P = Reading("Nm", _S), Reading("Nm", _P)
FINISHED = Reading("Ne", Order.FINISHED)

# fmt: off
LABELS: Mapping[str, Mapping[Shape, tuple[Reading, ...]]] = {
    # Read, but for an order that this fibre's labels do not have.
    "cotton": {
        "8/2": (NE,), "2/8": (NE_P,), "3/2": (NE,), "2/3": (NE, NE_P), "2/2": (NE,), "8": (NE,)},
    "rayon": {
        "8/2": (NE,), "2/8": (NE_P,), "3/2": (NE,), "2/3": (NE, NE_P), "2/2": (NE,), "8": (NE,)},
    "linen": {
        "8/2": (LEA,), "2/8": (LEA_P,), "3/2": (LEA,), "2/3": (LEA, LEA_P), "2/2": (LEA,), "8": (LEA,)},
    # Labelled in both orders: refused where both are possible.
    "worsted": {
        "8/2": (WORSTED,), "2/8": (WORSTED_P,), "3/2": (WORSTED, WORSTED_P),
        "2/3": (WORSTED, WORSTED_P), "2/2": (WORSTED,), "8": (WORSTED,)},
    "metric": {
        "8/2": (NM,), "2/8": (NM_P,), "3/2": (NM, NM_P), "2/3": (NM, NM_P), "2/2": (NM,), "8": (NM,)},
    "run": {
        "8/2": (RUN,), "2/8": (RUN_P,), "3/2": (RUN, RUN_P), "2/3": (RUN, RUN_P), "2/2": (RUN,), "8": (RUN,)},
    "cut": {
        "8/2": (CUT,), "2/8": (CUT_P,), "3/2": (CUT, CUT_P), "2/3": (CUT, CUT_P), "2/2": (CUT,), "8": (CUT,)},
    "skein": {
        "8/2": (SKEIN,), "2/8": (SKEIN_P,), "3/2": (SKEIN, SKEIN_P),
        "2/3": (SKEIN, SKEIN_P), "2/2": (SKEIN,), "8": (SKEIN,)},
    # Sold in more systems than one: refused.
    "silk": {
        "8/2": (NE, FINISHED, NM), "2/8": (NE_P, NM_P), "3/2": (NE, NE_P, FINISHED, NM, NM_P),
        "2/3": (NE, NE_P, FINISHED, NM, NM_P), "2/2": (NE, FINISHED, NM), "8": (NE, NM)},
    "cottolin": {
        "8/2": (NE, LEA, NM), "2/8": (NE_P, LEA_P, NM_P), "3/2": (NE, LEA, NM, NM_P),
        "2/3": (NE, NE_P, LEA, LEA_P, NM, NM_P), "2/2": (NE, LEA, NM), "8": (NE, LEA, NM)},
    "hemp": {
        "8/2": (LEA, NM), "2/8": (LEA_P, NM_P), "3/2": (LEA, NM, NM_P),
        "2/3": (LEA, LEA_P, NM, NM_P), "2/2": (LEA, NM), "8": (LEA, NM)},
    "wool": {
        "8/2": (WORSTED, NM), "2/8": (WORSTED_P, NM_P), "3/2": (WORSTED, WORSTED_P, NM, NM_P),
        "2/3": (WORSTED, WORSTED_P, NM, NM_P), "2/2": (WORSTED, NM), "8": (WORSTED, NM)},
    "woollen": {
        "8/2": (RUN, CUT, SKEIN, NM), "2/8": (RUN_P, CUT_P, SKEIN_P, NM_P),
        "3/2": (RUN, RUN_P, CUT, CUT_P, SKEIN, SKEIN_P, NM, NM_P),
        "2/3": (RUN, RUN_P, CUT, CUT_P, SKEIN, SKEIN_P, NM, NM_P),
        "2/2": (RUN, CUT, SKEIN, NM), "8": (RUN, CUT, SKEIN, NM)},
    "synthetic": {
        "8/2": (NE, WORSTED, NM), "2/8": (NE_P, WORSTED_P, NM_P),
        "3/2": (NE, WORSTED, WORSTED_P, NM, NM_P), "2/3": (NE, NE_P, WORSTED, WORSTED_P, NM, NM_P),
        "2/2": (NE, WORSTED, NM), "8": (NE, WORSTED, NM)},
    # Nobody has said what it is, or it is a blend of several.
    "unknown": {
        "8/2": (NE, WORSTED, LEA, NM), "2/8": (NE_P, WORSTED_P, LEA_P, NM_P),
        "3/2": (NE, NE_P, WORSTED, WORSTED_P, LEA, LEA_P, NM, NM_P),
        "2/3": (NE, NE_P, WORSTED, WORSTED_P, LEA, LEA_P, NM, NM_P),
        "2/2": (NE, WORSTED, LEA, NM), "8": (NE, WORSTED, LEA, NM)},
}
# fmt: on

# The name of a system settles the matter, whatever the fibre is.
SYSTEM_WORDS = {
    **dict.fromkeys(("ne", "nec", "cc"), "cotton"),
    **dict.fromkeys(("worsted", "nek"), "worsted"),
    **dict.fromkeys(("lea", "leas", "nel"), "linen"),
    **dict.fromkeys(("run", "runs"), "run"),
    **dict.fromkeys(("cut", "cuts"), "cut"),
    **dict.fromkeys(("skein", "skeins"), "skein"),
    **dict.fromkeys(("nm", "metric"), "metric"),
}
FIBRE_WORDS = {
    **dict.fromkeys(("cotton", "cottons"), "cotton"),
    **dict.fromkeys(("rayon", "viscose", "modal", "lyocell", "bamboo", "cupro"), "rayon"),
    **dict.fromkeys(("linen", "flax"), "linen"),
    **dict.fromkeys(("hemp", "ramie", "nettle", "jute"), "hemp"),
    **dict.fromkeys(("cottolin", "cottolins"), "cottolin"),
    **dict.fromkeys(("silk", "tussah", "noil", "bourette"), "silk"),
    **dict.fromkeys(("wool", "merino", "lambswool", "alpaca", "mohair", "cashmere"), "wool"),
    **dict.fromkeys(("yak", "camel", "llama", "angora", "shetland"), "wool"),
    **dict.fromkeys(("woollen", "woolen"), "woollen"),
    **dict.fromkeys(("acrylic", "nylon", "polyamide", "polyester", "polypropylene"), "synthetic"),
}
# Said of a yarn on its label, and no matter for its number.
OTHER_WORDS = frozenset(
    (
        "yarn count counts s single singles ply plies plied unequal and of the new virgin pure natural "
        "white undyed dyed bleached unbleached mercerised mercerized unmercerised unmercerized pearl perle "
        "carded combed ring spun reeled wet dry line tow organic boucle gassed soft fine superwash washed "
        "yorkshire"
    ).split()
)


def shape_of(first: Fraction, second: Fraction) -> Shape:
    """The column for two numbers. A broken number is a size: nobody plies half a thread."""
    if first == second:
        return "2/2"
    could_be_plies = [n.denominator == 1 and n <= MOST_USUAL_PLIES for n in (first, second)]
    if second.denominator == 1 and (first.denominator != 1 or could_be_plies == [False, True]):
        return "8/2"
    if first.denominator == 1 and (second.denominator != 1 or could_be_plies == [True, False]):
        return "2/8"
    return "3/2" if first > second else "2/3"


def family_of(words: list[str]) -> str:
    """The row for the words about a yarn; "unknown" where none, or several that do not go together."""
    families = {FIBRE_WORDS[w] for w in words if w in FIBRE_WORDS}
    if families == {"cotton", "linen"} or "cottolin" in families:
        return "cottolin"
    if families == {"wool", "woollen"}:
        return "woollen"
    if families == {"cotton", "rayon"}:
        return "cotton"
    return families.pop() if len(families) == 1 else "unknown"
