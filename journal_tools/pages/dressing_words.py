"""What a dressing sheet says of the draft, of what is short, and of later stretches."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from journal_tools.dressing import Dressing, NextStretch
from journal_tools.dressing.tied import Tied
from journal_tools.notation import Sets
from journal_tools.pages.archive import Archive
from journal_tools.pages.dressing_sley import order_words, reed_words
from journal_tools.pages.dressing_tie_up import hitched
from journal_tools.quantities import show_length
from journal_tools.quantities.density import PerUnit


def draft_words(archive: Archive, made: Dressing) -> str:
    """What the threading comes from: `Huck lace, small squares`, or the weave's name where there is no draft."""
    return _threaded_by(archive, made.tied) if made.tied is not None else ""


def _threaded_by(archive: Archive, tied: Tied) -> str:
    if tied.weave:
        spread = f", drawn straight over {tied.shafts} shafts so that none is crowded" if tied.spread else ""
        return f"no draft is named: threaded as {tied.weave}, from the weave's name{spread}"
    if tied.draft:
        return f"draft: {archive.link('drafts', tied.draft).text}"
    return "draft: its own"


def short_words(made: Dressing) -> Iterator[str]:
    """What the loom has not got, and what the record does not tell."""
    loom = made.loom.heading if made.loom is not None else ""
    if made.shafts_short and made.tied is not None:
        own = made.tied.shafts - made.shafts_short
        yield f"The draft takes {made.tied.shafts} shafts, and {_lower(loom)} has {own}."
    if made.treadles_short and made.tied is not None:
        own = len(made.tied.treadles) - made.treadles_short
        yield f"The tie-up takes {len(made.tied.treadles)} treadles, and {_lower(loom)} has {own}."
    for each in made.miscounted:
        yield f"{each.words[:1].upper()}{each.words[1:]}, the record says {each.said}."
    if short := [on.shaft for on in made.shafts if on.short]:
        yield f"Short of heddles on shaft{'s' if len(short) > 1 else ''} {' and '.join(map(str, short))}: see below."
    if made.tied is None and made.sleyed is not None and made.sleyed.layers > 1:
        yield "There is no threading: cloth of several layers wants a draft, and there is none that can be read."
    elif made.tied is None:
        yield "There is no threading: the record names no draft that can be read, nor a weave that can be drawn."
    elif not made.sections:
        yield "There is no threading: nobody wrote down how many ends there are."


def _lower(heading: str) -> str:
    return heading[:1].lower() + heading[1:] if heading.startswith("The ") else heading


def later_words(archive: Archive, made: Dressing, unit: PerUnit, first: str) -> Iterator[str]:
    """What is done again at the loom before each later stretch. first: the first one's name."""
    drawn = hitched(made, first)
    for stretch in made.later:
        name = stretch.called[:1].upper() + stretch.called[1:]
        if stretch.only_woven:
            yield f"{name}: nothing is threaded or tied anew."
            continue
        yield f"{name}: {'; '.join(_again(archive, stretch, unit, drawn))}."


def _again(
    archive: Archive, stretch: NextStretch, unit: PerUnit, drawn: Mapping[tuple[Sets, bool], tuple[int, str]]
) -> Iterator[str]:
    ends = f"{stretch.ends} ends" if stretch.ends else "the ends"
    which = f"{ends} from the middle" if stretch.from_the_middle else ends
    if stretch.unread:
        yield f"how it is threaded and tied is not known, since {stretch.unread} cannot be read or drawn"
    if stretch.rethreaded:
        by = f", {_threaded_by(archive, stretch.tied)}" if stretch.tied is not None else ""
        yield f"thread {which} anew{by}"
    if stretch.resleyed and stretch.sleyed is None:
        yield "how it is sleyed is not written down"
    elif stretch.resleyed and stretch.sleyed is not None:
        orders = " and ".join(dict.fromkeys(order_words(band) for band in stretch.sleyed.bands))
        reed = reed_words(stretch.sleyed.reed.per_m, stretch.sleyed.reed.unit, unit)
        yield f"sley {orders} in reed {reed}, {show_length(stretch.sleyed.mm, unit)} wide"
    if stretch.retied and stretch.tied is not None:
        number, like = drawn[stretch.tied.hitch]
        where = "as drawn below" if number == stretch.number else f"as for {like}"
        yield f"{'tie the treadles' if stretch.tied.treadles else 'lift the shafts'} {where}"
