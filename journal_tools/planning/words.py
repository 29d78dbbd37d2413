"""A plan in a weaver's words: what it rests on first, then what hands do, per cent small and last."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from journal_tools.planning import arithmetic as sums
from journal_tools.planning.allowances import STEPS
from journal_tools.planning.along import Expected
from journal_tools.planning.at_the_loom import hem_words, in_dents, loom_words, picks_words, reed_words, spread_words
from journal_tools.planning.phrases import odds_of, on_the_scale, repeats_of, to_wind
from journal_tools.planning.planned import Plan, PlannedPiece, PlannedStretch
from journal_tools.planning.yarn_needs import YarnNeed
from journal_tools.quantities import show_density, show_length, show_weight

EIGHTH = Fraction(127, 40)
"""An eighth of an inch in mm."""

TOLD_OFF = 0.005
"""A true sett as near as this to the wanted one is the wanted one."""


class Words:
    """The sentences of one plan, in its record's unit."""

    def __init__(self, plan: Plan) -> None:
        self.plan, self.wants = plan, plan.wants
        self.unit = plan.wants.unit
        self.mark = EIGHTH if self.unit == "in" else Fraction(5)

    def size(self, mm: float) -> str:
        """A size of cloth, to an eighth of an inch or half a centimetre."""
        return show_length(mm, self.unit, self.mark)

    def hand(self, mm: float) -> str:
        """A length at the loom, to a quarter inch or half a centimetre."""
        return show_length(mm, self.unit, Fraction(127, 20) if self.unit == "in" else Fraction(5))

    def wind(self, mm: float) -> str:
        """A warp: quarter yards, or quarter metres."""
        return to_wind(mm, self.unit)

    def limits(self) -> list[str]:
        """What the loom cannot do, before a thread is wound."""
        return list(dict.fromkeys(limit.words for each in self.plan.stretches for limit in each.limits))

    def loom(self) -> str:
        """`On The big loom, 36 in wide, 4 shafts.`; "" where none is named that is known."""
        return loom_words(self.wants.loom, self.unit)

    def rests(self, each: PlannedStretch) -> str:
        """What the figures of a stretch rest on."""
        journal, on, kind = self.wants.journal, each.rests_on, each.wanted.kind
        if each.fulled is not None:
            from_ = f"{each.fulled} fulled warps of yours" if each.fulled > 1 else "one fulled warp of yours"
            rest = f"its end sizes go by {from_}" if each.fulled else "its end sizes are a guess from common practice"
            return f"Fulled cloth is stopped at its size: {rest}."
        yarn = next((found.heading for found in [journal.yarns.get(kind.warp_yarn)] if found), kind.warp_yarn)
        number = len(on.yarn_warps)
        seen = f" {self.plan.seen} pieces of this very warp count too." if self.plan.seen > 1 else ""
        seen = " A piece of this very warp counts too." if self.plan.seen == 1 else seen
        if not number:
            others = len(on.weave_warps)
            ours = "one of your warps" if others == 1 else f"{others} of your warps"
            by = f"It goes by {ours} in {kind.weave}." if others else "It goes by common practice."
            return f"A guess: nothing of yours in {yarn.replace('-', ' ') or 'this yarn'}. {by}{seen}"
        first = journal.warps.get((on.both or on.yarn_warps)[0])
        mostly = f", mostly {first.heading}" if first is not None and number > 1 else ""
        said = f"Rests on {number if number > 1 else 'one'} of your warps{mostly}."
        if kind.weave and len(on.both) < number:
            said += f" {len(on.both) or 'None'} in {kind.weave}."
        if kind.weave and not on.both and on.weave_warps:
            other = journal.warps.get(on.weave_warps[0])
            such = "one warp" if len(on.weave_warps) == 1 else f"{len(on.weave_warps)} warps"
            said += f" The weave goes by {such} in other yarns"
            said += f", {'mostly ' if len(on.weave_warps) > 1 else ''}{other.heading}." if other else "."
        return said + seen

    def sley(self, each: PlannedStretch) -> str:
        """`Sley 20 1/4 in: 243 dents of the 12/in, 2 in a dent (24/in), 486 ends.`"""
        across = each.across
        reed = self.reed(each)
        sett = show_density(across.sleying.sett, self.wants.density_unit)
        if abs(across.sleying.off) > TOLD_OFF:
            sett += f" for the {show_density(each.wanted.sett.per_m, self.wants.density_unit)} wanted"
        verb = "Sleyed already:" if across.sleyed else "Sley"
        said = f"{verb} {self.size(across.mm)}: {across.dents} dents of the {reed}, {in_dents(across.sleying)} ({sett})"
        said += f", {across.ends} ends"
        if across.floating:
            said += ", two of them floating selvedges without heddles"
        return said + "."

    def reed(self, each: PlannedStretch) -> str:
        """The reed that is taken, `12/in`."""
        return reed_words(each.across.sleying, self.wants.density_unit)

    def other_reeds(self, each: PlannedStretch) -> str:
        """`Other reeds: 10/in, 2-2-3 in the dents, 23.3/in.`; "" where the loom has none, or it is sleyed."""
        others = each.across.others
        if not others or self.wants.loom is None or not self.wants.loom.reeds:
            return ""
        unit = self.wants.density_unit
        said = [f"{reed_words(one, unit)}, {in_dents(one)}, {show_density(one.sett, unit)}" for one in others]
        return f"Other reed{'s' if len(said) > 1 else ''}: {'; '.join(said)}."

    def repeats(self, each: PlannedStretch) -> Iterator[str]:
        """Whole repeats of the colours and of the draft, how it is threaded, and how close it is beaten."""
        across, threaded = each.across, each.wanted.threaded
        if across.order is not None and not across.order.one_colour:
            edges = "the edges match" if across.mirrored else "the edges differ"
            yield f"{'Wound' if across.sleyed else 'Wind'} {across.order.written(across.times)}: {edges}."
        if spread := spread_words(each):
            yield spread
        if threaded is not None and across.draft_repeats and len(threaded.threading) > 2:
            yield f"That is {repeats_of(across.heddled, threaded.threading, threaded.name)}."
        if each.wanted.sett.how:
            yield f"The sett is {each.wanted.sett.how}."
        if any(piece.picks for piece in each.pieces):
            yield picks_words(each, self.wants.density_unit)
        yield from hem_words(each.pieces)
        if each.wanted.washed_as:
            yield f"The wash is {each.wanted.washed_as}."

    def expects(self, each: PlannedStretch, piece: PlannedPiece) -> Iterator[str]:
        """What comes of it, nine times in ten, the worst, and the risk in the direction that hurts."""
        wanted = piece.wanted
        state = wanted.told_state.capitalize()
        if each.fulled is not None:
            yield "Stop the fulling at the size wanted; what follows is how far off past ones were stopped."
            if piece.minutes is not None:
                likely, least, most = (round(each) for each in piece.minutes)
                between = f"{least} to {most}: look first at {least}"
                yield f"From scoured to that width takes about {likely} minutes, {between}."
        elif piece.useless:
            yield "Sample first: what it will come to is too little known to weave by."
        sizes = ((piece.width, "wide"), (piece.length, "long"))
        if piece.useless and each.fulled is None:  # a range that nobody can weave by is not printed
            about = [f"{self.size(size.mm)} {way}" for size, way in sizes if size is not None]
            yield f"{state}, about {' and '.join(about)}, give or take more than a plan can bear."
            return
        parts = [
            f"{self.size(size.mm)} {way}, nine times in ten {self.between(size.low, size.high)}"
            for size, way in sizes
            if size is not None
        ]
        if parts:
            yield f"{state}, expect {'; and '.join(parts)}."
        if other := self._other_repeat(each, piece):
            yield other
        if piece.blind is not None:
            yield from self._blind(piece)
        if wanted.count > 1 and piece.length is not None:
            narrow = f", the narrowest under {self.size(piece.width.worst)}" if piece.width is not None else ""
            short = f"The shortest of the {wanted.count} is under {self.size(piece.length.worst)}"
            yield f"{short}{narrow} only once in twenty times."
        if piece.risk is not None:
            yield from self._risk(piece)

    def _other_repeat(self, each: PlannedStretch, piece: PlannedPiece) -> str:
        """What a repeat more or less would come to, where whole repeats are a quarter inch off; else ""."""
        across, wanted = each.across, piece.wanted.width_mm
        if wanted is None or piece.width is None or across.sleyed:
            return ""
        off = piece.width.mm - wanted
        striped = across.order is not None and (not across.order.one_colour or across.order.beside > 0)
        threading = each.wanted.threaded.threading if each.wanted.threaded is not None else ()
        ends = across.order.repeat_ends if across.order is not None and striped else len(threading)
        if abs(off) < STEPS[self.unit].weave or ends < 2 or across.heddled <= ends:
            return ""
        repeat = ends / across.sleying.sett * 1000 * (1 - piece.width_loss) * each.wanted.laid.opens_by
        way, more = ("more", repeat) if off < 0 else ("less", -repeat)
        other = self.size(piece.width.mm + more)
        return f"For {self.size(wanted)} there are no whole repeats: one {way} comes to {other}."

    def _blind(self, piece: PlannedPiece) -> Iterator[str]:
        """What this warp's own cloth has changed; nothing where it has changed less than a tape shows."""
        now, before = (piece.width, piece.length), piece.blind or (None, None)
        parts = [
            f"{self.size(was.mm)} {way} ({self.between(was.low, was.high)})"
            for way, is_, was in zip(("wide", "long"), now, before, strict=True)
            if is_ is not None and was is not None and self._differs(is_, was)
        ]
        if parts:
            yield f"Your other warps alone would say {' and '.join(parts)}; this warp's own cloth has spoken since."

    def _differs(self, one: Expected, other: Expected) -> bool:
        ends = ((one.mm, other.mm), (one.low, other.low), (one.high, other.high))
        return any(self.size(here) != self.size(there) for here, there in ends)

    def _risk(self, piece: PlannedPiece) -> Iterator[str]:
        risk = piece.risk
        assert risk is not None
        one = "one of them" if piece.wanted.count > 1 else "it"
        said = f"{odds_of(risk.chance, '1 time in')} {one} comes up under {self.hand(risk.limit_mm)}"
        if risk.more_mm is None or risk.after is None:
            yield said + "."
            return
        each = " each" if piece.wanted.count > 1 else ""
        warp = f" ({self.hand(sums.upward(piece.risk_warp_mm, STEPS[self.unit].weave))} of warp)"
        yield f"{said}; weave {self.hand(risk.more_mm)} more{each}{warp} and it is {odds_of(risk.after)}."

    def weave(self, piece: PlannedPiece) -> str:
        """`Weave each to 33 1/4 in, tension on, or 665 picks.`"""
        if piece.weave_mm is None:
            return ""
        each = f"each of {piece.wanted.count}" if piece.wanted.count > 1 else "it"
        name = f"{piece.wanted.name}: weave" if piece.wanted.name else "Weave"
        picks = f", or {piece.picks} picks" if piece.picks else ""
        return f"{name[0].upper()}{name[1:]} {each} to {self.hand(piece.weave_mm)}, tension on{picks}."

    def wound(self) -> str:
        """`Wind 5 1/4 yd. Should it take up as much as it may, 5 1/2.`"""
        wound = next((each.wound for each in self.wants.warp.warp if each.wound is not None), None)
        if wound is not None and any(each.across.sleyed for each in self.plan.stretches):
            return f"It is wound {wound.text}; all of the plan takes {self.wind(self.plan.length.wind_mm)}."
        said = f"Wind {self.wind(self.plan.length.wind_mm)}."
        if self.plan.long_mm > self.plan.length.wind_mm + 1:
            said += f" Should it take up as much as it may, {self.wind(self.plan.long_mm)}."
        return said

    def lines(self) -> Iterator[tuple[str, str, str]]:
        """Where each inch goes: what, length, how."""
        for line in self.plan.length.lines:
            how = [f"{line.count} of {self.hand(line.each_mm)}"] if line.count > 1 else []
            how += [line.how] if line.how else []
            if line.hems_mm:
                how.append(f"{self.hand(line.hems_mm)} of {'each' if line.count > 1 else 'it'} in hems")
            yield line.name, self.hand(line.mm), ", ".join(how)
        yield "in all", self.hand(self.plan.length.mm), ""
        yield "to wind", self.hand(self.plan.length.wind_mm), self.wind(self.plan.length.wind_mm)

    def yarn(self, need: YarnNeed) -> Iterator[str]:
        """How much of a yarn, by colour, what is short and what to buy."""
        weight = self.wants.journal.settings.weight
        if need.grams is None:
            metres = sum(colour.warp_mm + colour.weft_mm for colour in need.colours) / 1000
            long = f"{metres / 0.9144:,.0f} yd" if self.unit == "in" else f"{metres:,.0f} m"
            yield f"{need.heading}: {long}. How much that weighs nobody can say: its record has no yarn number."
            return
        parts = [f"{on_the_scale(each.grams or 0, weight)} {each.named}" for each in need.colours]
        listed = f": {', '.join(parts)}" if len(need.colours) > 1 else ""
        said = f"{need.heading}: {on_the_scale(need.grams, weight)}{listed}"
        several = need.record is not None and len(need.record.colours or {}) > 1
        if need.on_hand_g is not None:
            said += f"; you have {show_weight(need.on_hand_g, weight)}{' in all its colours' if several else ''}"
        if need.short_g:
            said += f", {on_the_scale(need.short_g, weight)} short"
        elif need.on_hand_g is not None:
            said += ", enough if the colours are" if several else ", enough"
        if need.cones:
            said += f". Buy {need.cones} {need.put_up}{'s' if need.cones > 1 else ''}"
            said += f" ({need.buy_cost:.2f} {need.currency})".replace(" )", ")") if need.buy_cost is not None else ""
        yield said + "."

    def money(self) -> str:
        """What the yarn in it costs, and how long past warps like it took."""
        said = [f"{cost:.2f} {currency}".strip() for currency, cost in self.plan.costs.items()]
        words = f"The yarn in it costs {' and '.join(said)}." if said else ""
        hours = self.plan.hours
        if hours is not None:
            between = f"{hours.low:.0f} to {hours.high:.0f}"
            words += f" At the pace of {hours.warps} past warps it takes {hours.hours:.0f} hours, {between}."
        return words.strip()

    def sample(self, each: PlannedStretch) -> str:
        """What a sample would cost and save, where it is worth it; "" where it is not."""
        sample = each.sample
        if sample is None or not sample.worth or self.plan.washed:
            return ""
        doubt = f"± {self.size(sample.now)} to ± {self.size(sample.then)}"
        length = "It says little of length."
        if sample.length is not None:
            length = f"Of length it leaves ± {self.size(sample.length.then)} of ± {self.size(sample.length.now)}."
        return (
            f"A sample of {self.hand(sample.woven)}, washed first, costs {self.hand(sample.warp)} of warp and would"
            f" cut the doubt in width from {doubt}. {length}"
        )

    def left_out(self) -> str:
        """Stretches that nothing is planned for, "" for none: their warp is not in what is to be wound."""
        names = self.plan.left_out
        if not names:
            return ""
        listed = f"{', '.join(names[:-1])} and {names[-1]}" if len(names) > 1 else names[0]
        return f"Nothing is planned for {listed}, so no warp is reckoned for {'it' if len(names) == 1 else 'them'}."

    def losses(self, piece: PlannedPiece) -> Iterator[str]:
        """Both directions of each per cent: what is lost, and what a wanted size is divided by."""
        for way, loss, shown in (
            ("width, from the reed", piece.width_loss, piece.width),
            ("length, from the loom", piece.length_loss, piece.length),
        ):
            if shown is not None:
                verb = "loses" if loss >= 0 else "gains"
                yield f"{way}: {verb} {abs(loss) * 100:.0f} %; a size wanted is divided by {1 - loss:.2f}".replace(
                    "by 0.", "by ."
                )

    def between(self, low: float, high: float) -> str:
        """`17 5/8 to 18 3/8 in`."""
        return f"{self.size(low).removesuffix(' ' + self.unit)} to {self.size(high)}"
