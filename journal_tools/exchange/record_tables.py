"""The tables of the records themselves: warps, where each warp went, yarns, drafts, looms, finishes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from journal_tools.exchange.csv_cells import Cell
from journal_tools.exchange.table import Table, Told, columns, figure
from journal_tools.exchange.typed import fields_of
from journal_tools.quantities import SYSTEMS
from journal_tools.records.yarns_used import all_yarns


def _warps(told: Told) -> Iterator[tuple[Cell, ...]]:
    for name in told.warps:
        warp, ledger = told.journal.warps[name], told.ledgers[name]
        when = warp.started or warp.finished
        account = ledger.account
        yield (
            name,
            warp.heading,
            warp.started.text if warp.started else "",
            warp.finished.text if warp.finished else "",
            when.year if when else None,
            "; ".join(dict.fromkeys(each.weave or "" for each in (warp, *warp.stretches) if each.weave)),
            "; ".join(yarn.heading for yarn in all_yarns(told.journal, warp)),
            warp.loom or "",
            warp.temple,
            warp.tension or "",
            figure(account.wound_mm, 4) if account else None,
            figure(account.take_up.loss) if account and account.take_up else None,
            account.take_up.words if account and account.take_up else "",
            warp.hours or "",
            warp.cost.text if warp.cost else "",
            warp.share,
            "; ".join(warp.tags),
            warp.notes_for_everyone or "",
            warp.notes.strip(),
        )


WARPS = Table(
    "warps",
    "one warp",
    columns(
        """
warp | words | Its name: of its record's file, and in the other tables.
title | words | What the weaver calls it.
started | words | When it went on the loom, as typed: a day, a month, a season or a year.
finished | words | When the last of it was done, as typed.
year | count | The year of it.
weaves | words | Its weaves, with ; between.
yarns | words | Its yarns, warp yarns first, with ; between.
loom | words | The loom, by its name.
temple | yes or no | Whether a temple was used.
tension | words | How tight the warp was.
wound_mm | figure | How long it was wound.
take_up_fraction | figure | Take-up on the loom: 1 - length on the loom / warp that wove it.
take_up_basis | words | What that rests on: marks, a measured warp, or at most.
hours | words | Time it took, as typed.
cost | words | What it cost, as typed.
share | yes or no | Whether the journal for others shows it.
tags | words | Words to find it by, with ; between.
notes_for_everyone | words | Notes that the journal for others shows too.
notes | words | The free notes.
"""
    ),
    _warps,
)


def _went(told: Told) -> Iterator[tuple[Cell, ...]]:
    for name in told.warps:
        account = told.ledgers[name].account
        if account is not None:
            for line in account.lines:
                yield name, line.name, figure(line.mm, 4), line.how, line.is_cloth
            yield name, "take-up and unaccounted", figure(account.remainder_mm, 4), "", False


WENT = Table(
    "where_the_warp_went",
    "one line of where a warp went",
    columns(
        """
warp | words | Name of the warp.
line | words | What the warp went into.
length_mm | figure | How much of it; the last line of a warp is what no other accounts for.
how | words | How the figure comes about, as typed.
cloth | yes or no | Whether it is cloth, at its length on the loom.
"""
    ),
    _went,
)


def _yarns(told: Told) -> Iterator[tuple[Cell, ...]]:
    for name, yarn in sorted(told.journal.yarns.items()):
        typed = fields_of(yarn)
        yield (
            name,
            yarn.heading,
            _text(typed, "fibre"),
            yarn.number or "",
            figure(yarn.tex, 4),
            figure(SYSTEMS["yd/lb"].number_of(yarn.tex), 1) if yarn.tex else None,
            figure(SYSTEMS["m/kg"].number_of(yarn.tex), 1) if yarn.tex else None,
            figure(yarn.wraps.per_cm, 4) if yarn.wraps else None,
            yarn.put_up or "",
            yarn.price.text if yarn.price else "",
            figure(yarn.on_hand.grams, 2) if yarn.on_hand else None,
            "; ".join(f"{colour} {digits}" for colour, digits in (yarn.colours or {}).items()),
            yarn.lot or "",
            yarn.wetted,
            yarn.in_oil,
            yarn.raw,
            yarn.grey,
            yarn.notes_for_everyone or "",
            yarn.notes.strip(),
        )


YARNS = Table(
    "yarns",
    "one yarn",
    columns(
        """
yarn | words | Its name: of its record's file.
title | words | What the weaver calls it.
fibre | words | Fibres with their share of the weight.
number | words | The yarn number on its label, as typed.
tex | figure | Its linear density in g/km: by a weighed length, a stated yield, or the label, in this order.
yards_per_lb | figure | The same in yards to the pound.
m_per_kg | figure | The same in metres to the kilogram.
wraps_per_cm | figure | Wraps to the centimetre.
put_up | words | How it is sold.
price | words | Its price, as typed.
on_hand_g | figure | How much is on the shelf.
colours | words | Its colours, each with its six digits, with ; between.
lot | words | The dye lot.
wetted | yes or no | Whether it has been wetted before.
in_oil | yes or no | Whether it is in spinning oil.
raw | yes or no | Whether silk still has its gum.
grey | yes or no | Whether linen is unboiled and unbleached.
notes_for_everyone | words | Notes that the journal for others shows too.
notes | words | The free notes.
"""
    ),
    _yarns,
)


def _drafts(told: Told) -> Iterator[tuple[Cell, ...]]:
    keys = ("threading", "tie_up", "treadling", "lift_plan", "shed", "warp_colours", "weft_colours")
    for name, draft in sorted(told.journal.drafts.items()):
        typed = {"shed": draft.shed, **fields_of(draft)}
        parts = (_text(typed, key) for key in keys)
        yield name, draft.heading, draft.weave or "", draft.highest_shaft or None, *parts, draft.notes.strip()


DRAFTS = Table(
    "drafts",
    "one draft",
    columns(
        """
draft | words | Its name: of its record's file.
title | words | What the weaver calls it.
weave | words | The name of its weave.
shafts | count | The shafts that it takes.
threading | words | The shaft of each end, in the journal's notation.
tie_up | words | The shafts tied to each treadle.
treadling | words | The treadle of each pick.
lift_plan | words | The shafts of each pick, in place of tie-up and treadling.
shed | words | rising or sinking.
warp_colours | words | Colour order of the warp.
weft_colours | words | Colour order of the weft.
notes | words | The free notes.
"""
    ),
    _drafts,
)


def _looms(told: Told) -> Iterator[tuple[Cell, ...]]:
    for name, loom in sorted(told.journal.looms.items()):
        yield (
            name,
            loom.heading,
            loom.shafts.number if loom.shafts else None,
            loom.treadles.number if loom.treadles else None,
            figure(loom.width.mm, 4) if loom.width else None,
            "; ".join(reed.text for reed in loom.reeds),
            figure(loom.waste.mm, 4) if loom.waste else None,
            figure(loom.retie.mm, 4) if loom.retie else None,
            loom.notes.strip(),
        )


LOOMS = Table(
    "looms",
    "one loom",
    columns(
        """
loom | words | Its name: of its record's file.
title | words | What the weaver calls it.
shafts | count | Its shafts.
treadles | count | Its treadles.
width_mm | figure | Its weaving width.
reeds | words | The reeds that there are for it, as typed, with ; between.
waste_mm | figure | Its usual loom waste.
retie_mm | figure | What a cut-off and re-tie costs.
notes | words | The free notes.
"""
    ),
    _looms,
)


def _finishes(told: Told) -> Iterator[tuple[Cell, ...]]:
    for name, finish in sorted(told.journal.finishes.items()):
        done = (finish.done, finish.water, finish.agitation, finish.drying, finish.pressing)
        words = (each or "" for each in (*done, finish.care, finish.cautions))
        yield name, finish.heading, *words, finish.fulling, finish.notes.strip()


FINISHES = Table(
    "finishes",
    "one finishing recipe",
    columns(
        """
finish | words | Its name: of its record's file.
title | words | What the weaver calls it.
done | words | What is done, in order.
water | words | Temperature of the water.
agitation | words | How it is moved.
drying | words | How it is dried.
pressing | words | How it is pressed.
care | words | Care words for the owner.
cautions | words | What can hurt, and how not to be hurt.
fulling | yes or no | Whether the cloth is fulled on purpose.
notes | words | The free notes.
"""
    ),
    _finishes,
)


def _text(fields: Mapping[str, Any], key: str) -> str:
    value = fields.get(key, "")
    return value if isinstance(value, str) else ", ".join(map(str, value))
