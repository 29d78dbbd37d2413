"""How it is reckoned: every quantity once, in words, with where its definition is from."""

from __future__ import annotations

from journal_tools.ledger.mass import HUMIDITY, TAKE_UP_ELSE, TOLERANCE, WASHED_OUT, WEFT_OVER_REED
from journal_tools.pages.foresight_reckoned import definitions, foresight_tables
from journal_tools.pages.views import ThingView

PRACTICE = "common practice, no source"

QUANTITIES = (
    (
        "states of the cloth",
        "In the reed; on the loom, tension on, temple moved away, at the breast beam; off the loom, cut off and"
        " rested overnight; washed 1, 2, …, dry; made up.",
        PRACTICE,
    ),
    (
        "width in the reed",
        "Dents used over dents to the inch or centimetre. Counted in dents it is exact. It is not ends over sett:"
        " crammed, spaced and doubled ends and floating selvedges break that.",
        "definition",
    ),
    ("draw-in", "1 − width on the loom / width in the reed.", PRACTICE),
    ("relaxation", "1 − off the loom / on the loom, in width and in length.", PRACTICE),
    (
        "loss in the wash",
        "1 − washed / off the loom. It is the dimensional change with its sign turned round.",
        "ISO 5077: (final − original) / original × 100",
    ),
    (
        "whole loss",
        "1 − last / first: the product of the steps, never their sum, named by both of its ends. Where nobody"
        " measured a state, the loss spans it and says so; nothing is filled in.",
        "definition",
    ),
    (
        "settled",
        "From the third wash, or once a wash takes less than 0.5 %. Averages compare the same wash.",
        PRACTICE,
    ),
    (
        "hems",
        "Hemmed is compared with hemmed, cloth with cloth. A whole loss goes on over the hem as a product, only where"
        " the cloth was measured just before and just after it. A hem eats its depth and its turn-under on each"
        " hemmed edge.",
        PRACTICE,
    ),
    (
        "between marks",
        "Where marks were sewn a known distance apart, washed sizes are between the marks, and the loss is of them.",
        "ISO 3759 (marking), ISO 5077",
    ),
    (
        "take-up on the loom",
        "1 − length on the loom / warp that wove it, tension on. Marks on the warp, or warp measured for a piece,"
        " tell it; without them it is given as “at most”, since the remainder holds all that went astray as well.",
        PRACTICE,
    ),
    (
        "crimp of a strip",
        "Of yarn unpicked from resting cloth, with straightened length D and length in the cloth F: crimp is"
        " (D − F) / F, take-up is (D − F) / D. It is another quantity than take-up on the loom, 2 to 4 points larger.",
        "ASTM D3883, ISO 7211-3; the difference: common practice, no source",
    ),
    (
        "where the warp went",
        "Wound, less every line written down and every piece at its length on the loom. What remains is one line,"
        " “take-up and unaccounted”; only marks split it in two.",
        PRACTICE,
    ),
    (
        "finished epi and ppi",
        "Ends / washed width, and picks / washed length. Over a hem, picks / the last length before it, gone on by"
        " the hemmed piece's own loss.",
        "definition",
    ),
    (
        "weight of a piece",
        "Ends × length of an end × tex, and picks × length of a pick × tex. An end is the length on the loom undone"
        f" by its take-up ({TAKE_UP_ELSE:.0%} where the record tells none); a pick is the width in the reed ×"
        f" {WEFT_OVER_REED:g}. The first wash takes"
        f" {WASHED_OUT['in_oil'][0]:.0%} to {WASHED_OUT['in_oil'][1]:.0%} of yarn in oil,"
        f" {WASHED_OUT['raw'][0]:.0%} to {WASHED_OUT['raw'][1]:.0%} of raw silk,"
        f" {WASHED_OUT['grey'][0]:.0%} to {WASHED_OUT['grey'][1]:.0%} of grey linen. The journal asks beyond"
        f" {TOLERANCE:.0%}, and {HUMIDITY:.0%} more for the weather.",
        "definition; allowances: common practice, no source; moisture: ASTM D1909",
    ),
    (
        "yarn number",
        "tex is grams to the kilometre. Cotton count × 840, worsted × 560, linen lea × 300, woollen run × 1600 are"
        " yards to the pound; Nm is metres to the gram. A measured length to the weight wins over a label.",
        "ASTM D2260",
    ),
    (
        "±",
        "Twice the standard uncertainty (k = 2). A reading to the nearest mark d has u = d/√12, so U = 2d/√12. Cloth"
        " wanders more than a tape, so U is never below 1/8 in (3 mm) in width and 1/4 in in 30 in (6 mm in 75 cm)"
        " in length; several widths of a piece count by their scatter, 2s/√n, when that is larger. A width in the"
        " reed counted in dents is exact, and one read off a tape has no floor. U of a loss is later/earlier ×"
        " √(sum of the squared relative U). d is the tape stated, else the finest mark seen in the record.",
        "JCGM 100:2008, F.2.2.1 and 5.1; the floor: common practice, no source",
    ),
    (
        "means",
        "Each piece counts once; a line that stands for five alike counts five times in a mean and once in a spread,"
        " which is the sample standard deviation. What is not to be learned from stays out of a mean that has others.",
        "definition",
    ),
    (
        "off plan",
        "Measured less planned, to the nearest mark of the tape, in words. It is marked only where it is more than"
        " the ± of the measured size.",
        "definition",
    ),
    (
        "undoing a loss",
        "A loss of 10 % is undone by dividing by 0.9: 28 in finished wants 28 / 0.9 = 31 1/8 in, not"
        " 28 × 1.1 = 30 3/4 in.",
        "arithmetic",
    ),
)

CAUTIONS = (
    "Hot water and steam scald. Wet wool is heavy, and wet floors are slippery.",
    "Machines collect lint: clean the filter, and do not leave a hot dryer alone. Fibre and flax dust harm the lungs:"
    " wear a mask and clean damp. So do the powders of dyes and mordants.",
    "Loose fringe and long loops are no toys: a small child can be caught in them. Cloth near a flame or under a hot"
    " pan can burn or melt.",
    "Fibre content, care labels, fire safety and goods for children have laws of their own in most places. What is"
    " measured here is true of the cloth measured; for a label or a claim, ask what your law wants, or somebody"
    " qualified to say.",
)


def reckoned_view() -> ThingView:
    """The page of definitions."""
    about = "Every quantity has one definition. A loss always names both of its ends."
    tables = (definitions("Definitions", QUANTITIES), *foresight_tables())
    return ThingView("How it is reckoned", about, cautions=CAUTIONS, tables=tables)
