"""How forecast, score and plan are reckoned, in words, with the priors as they stand in the code."""

from __future__ import annotations

from journal_tools.forecast.chain import STEPS
from journal_tools.forecast.closeness import FIRM, SOFT, WORKING
from journal_tools.forecast.columns import FIRST_SHARE
from journal_tools.forecast.priors import LEVELS, MEDIANS
from journal_tools.pages.score_part import LARGE
from journal_tools.pages.view_parts import Cell, Column, Table
from journal_tools.planning import allowances

OWN = "this journal's own model"
JUDGEMENT = "judgement"

FORECAST = (
    (
        "forecast",
        "Losses add as ln(later / earlier). Each step of the cloth is a level + weave + fibre + yarn +"
        " finish + closeness"
        " of sett + year + what is this warp's own + what is this piece's own, all reckoned at once from every size of"
        f" every warp. The weft counts for {FIRST_SHARE * 100:.0f} % of the width and the warp for as much of the"
        " length; a finish counts from"
        " the first water on. A state that nobody measured is a span over two steps, and nothing measured is"
        " thrown away.",
        OWN,
    ),
    (
        "why steps and whole agree",
        "What a cloth does not lose on the loom it tends to lose in the water, so the steps of one warp are reckoned"
        " with their correlation, and the whole loss is their sum in that one reckoning, with a range that is narrower"
        " than the steps would give each by itself.",
        OWN,
    ),
    (
        "range",
        "Nine times in ten: between the 5 % and the 95 % point. How much warps scatter is not taken as"
        " known: the answer"
        " is averaged over some thirty likely sets of scatters, each weighed by how well it fits. A warp's own"
        " departure has long"
        " tails (Student's t, some 7 degrees of freedom), so that one wild warp moves the others little.",
        OWN,
    ),
    (
        "a batch, a piece, the worst",
        "A batch's range is of the mean of many pieces, a piece's is wider, and the worst is what the"
        " smallest of so many"
        " pieces stays above: pieces of one warp are alike in what the warp did and scatter in what is their own.",
        "definition",
    ),
    (
        "closeness",
        "Ends to the length in the reed over the greatest sett that the yarn takes in that weave: yarn diameters"
        f" × w / (w + i), for w ends and i interlacings in the repeat. Diameters to the inch are k√(yards to"
        f" the pound),"
        f" k = {FIRM} for firm yarns and {SOFT} for soft woollen ones. A working sett is about"
        f" {WORKING * 100:.0f} % of it.",
        "Ashenhurst's rule",
    ),
    (
        "settled",
        "In the forecast: after the third wash. The second is taken to do 0.7 of what the third is still short of.",
        JUDGEMENT,
    ),
    (
        "rests on",
        "The warps that measured any of these steps in the yarn; the one named first, in the same weave where"
        " there is one, moves the answer most when it is"
        " left out. What finish, weave or yarn did each by itself is not told, because few journals can tell"
        " them apart.",
        OWN,
    ),
    (
        "fulled cloth",
        "It is stopped at its size, so what it lost is a decision and not learned from, beyond its scouring. What is"
        " learned is time: ln(ln(scoured / now)) rises in a line with ln(minutes). A plan goes by what past fullings"
        " came to, as Student's t with a little of a guess in it: two cloths that agree promise nothing.",
        OWN,
    ),
    (
        "score",
        "Each dated warp forecast from the warps before it alone, beside ten per cent, the yarn's own mean so far, and"
        f" the last warp in the same yarns and weave. A journal of more than {LARGE} dated warps has it by command.",
        "definition",
    ),
)

PLAN = (
    (
        "width in the reed, planned",
        "(Wanted + hems) / e to the mean ln(washed / reed), then whole repeats, balanced, then whole dents. A hem sewn"
        " before washing shrinks too, and is taken as small as it will be.",
        "arithmetic",
    ),
    (
        "length to weave",
        "(Wanted + hems) / e to the mean ln(washed / loom), tension on, upward to a quarter inch or half a centimetre;"
        " its picks are length × beat.",
        "arithmetic",
    ),
    (
        "picks to the inch",
        "The middle of past warps in these yarns and this weave, counted before stated, carried to another sett by"
        " picks to ends unless warp or weft hides the other; with none, as many picks as ends, or as the weave"
        " usually has.",
        JUDGEMENT,
    ),
    (
        "fringe",
        f"As the record says; of one with a finished length alone, twisted, the twist takes"
        f" {allowances.TWIST_TAKES * 100:.0f} % of its warp.",
        "common practice, no source",
    ),
    (
        "length to wind",
        "Header, pieces, gaps or fringes, a sample and its re-tie, loom waste, and take-up: cloth / (1 −"
        " take-up) − cloth."
        " Upward to a quarter yard or a quarter metre.",
        "arithmetic",
    ),
    (
        "yarn",
        f"Ends × length wound × tex; picks × width in the reed × {allowances.WEFT_OVER_REED:g} × tex; and"
        f" {allowances.SPARE_YARN:.0%} to spare.".replace("%", " %"),
        "definition; allowances: common practice, no source",
    ),
    (
        "sley order",
        "Of every order of up to four dents, the one that gives the sett most nearly, with a little against"
        " long, crowded"
        " and gappy ones.",
        JUDGEMENT,
    ),
    (
        "hours",
        f"The middle of past hours / work, and what the tenth and the ninth tenth of past warps say; work is"
        f" {allowances.END_TO_PICKS:g} × ends + picks, since an end is wound, threaded and sleyed in the time of so"
        f" many picks. From {allowances.PAST_PACE} warps with their hours on.",
        JUDGEMENT,
    ),
    (
        "what is left of a warp",
        "Wound, less the cloth woven so far / (1 − take-up), less every line of where it went, less what will not"
        " weave. Take-up is by marks on the warp itself where there are any. The next piece fits where its length on"
        " the loom / (1 − take-up), with its gap or fringe, is no more than that.",
        "definition",
    ),
    (
        "a warp on the loom, planned again",
        "What the record says of the reed holds, and every size that was measured of this warp counts as its own;"
        " what the other warps alone would say is reckoned without it.",
        OWN,
    ),
    (
        "risk",
        "A size that the smallest piece is under about one time in six, and how much more to weave until it is one in"
        " twenty.",
        JUDGEMENT,
    ),
    (
        "sample first",
        f"Said where half of a nine-in-ten range is over {allowances.TOO_WIDE:.0%} of the size. A sample's worth is the"
        " range with its width known beside the range without.".replace("%", " %"),
        JUDGEMENT,
    ),
)

TERMS = ("weave", "fibre", "yarn", "finish", "closeness", "year", "warp", "piece")


def definitions(title: str, lines: tuple[tuple[str, str, str], ...]) -> Table:
    """Quantities in words, as on the rest of the page."""
    columns = (Column("quantity"), Column("what it is"), Column("from"))
    rows = tuple((Cell(name, strong=True), Cell(words), Cell(source)) for name, words, source in lines)
    return Table(title, columns, rows, prose=True)


def priors(direction: str) -> Table:
    """What is believed of a direction before the first warp."""
    steps = STEPS[direction]
    level = (
        Cell("level", strong=True),
        *(
            Cell(f"{LEVELS[direction][step][0]:g}".replace("-", "−"), small=f"± {LEVELS[direction][step][1]:g}")
            for step in steps
        ),
    )
    rows = tuple(
        (
            Cell(term, strong=True),
            *(Cell(f"{scatter:g}" if (scatter := MEDIANS[direction][term].get(step)) else "") for step in steps),
        )
        for term in TERMS
    )
    return Table(
        f"Believed of {direction} before the first warp",
        (Column("points of ln(later / earlier)"), *(Column(step, number=True) for step in steps)),
        (level, *rows),
        note="All of it is judgement from practice, no measured sample: a level with its doubt, and how much each term"
        " scatters (the middle of what is likely; a journal soon overrules it).",
        stacked=True,
    )


def foresight_tables() -> tuple[Table, ...]:
    """Forecast, plan and priors."""
    return (
        definitions("Forecast and score", FORECAST),
        definitions("Planning", PLAN),
        priors("width"),
        priors("length"),
    )
