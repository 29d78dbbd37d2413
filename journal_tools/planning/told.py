"""A plan as plain values, for programs: every figure with its unit in its name."""

from __future__ import annotations

from typing import Any

from journal_tools.planning.along import Expected
from journal_tools.planning.planned import Plan, PlannedPiece, PlannedStretch
from journal_tools.planning.words import Words


def as_json(plan: Plan) -> dict[str, Any]:
    """The plan: see the command's help for its keys. Lengths in mm, weights in g, losses as fractions."""
    hours = plan.hours
    return {
        "warp": plan.wants.warp.name or None,
        "title": plan.wants.warp.heading,
        "loom": plan.wants.loom.heading if plan.wants.loom is not None else None,
        "pieces_of_this_warp_seen": plan.seen,
        "nothing_planned_for": list(plan.left_out),
        "limits": Words(plan).limits(),
        "stretches": [_stretch(each) for each in plan.stretches],
        "lines": [
            {
                "line": line.name,
                "count": line.count,
                "each_mm": _mm(line.each_mm),
                "mm": _mm(line.mm),
                "woven": line.woven,
                "hems_each_mm": _mm(line.hems_mm),
            }
            for line in plan.length.lines
        ],
        "warp_mm": _mm(plan.length.mm),
        "wind_mm": _mm(plan.length.wind_mm),
        "wind_long_mm": _mm(plan.long_mm),
        "yarns": [
            {
                "yarn": yarn.record.name if yarn.record else yarn.heading,
                "g": _g(yarn.grams),
                "on_hand_g": _g(yarn.on_hand_g),
                "short_g": _g(yarn.short_g),
                "put_up_g": _g(yarn.put_up_g),
                "put_ups_to_buy": yarn.cones,
                "cost": None if yarn.cost is None else round(yarn.cost, 2),
                "cost_to_buy": None if yarn.buy_cost is None else round(yarn.buy_cost, 2),
                "currency": yarn.currency or None,
                "colours": [
                    {
                        "colour": each.named,
                        "warp_mm": _mm(each.warp_mm),
                        "weft_mm": _mm(each.weft_mm),
                        "g": _g(each.grams),
                    }
                    for each in yarn.colours
                ],
            }
            for yarn in plan.yarns
        ],
        "hours": None
        if hours is None
        else {
            "hours": round(hours.hours, 1),
            "low": round(hours.low, 1),
            "high": round(hours.high, 1),
            "warps": hours.warps,
        },
    }


def _stretch(each: PlannedStretch) -> dict[str, Any]:
    across, on = each.across, each.rests_on
    return {
        "stretch": each.wanted.name or None,
        "rests_on": {
            "basis": on.basis,
            "yarn_warps": list(on.yarn_warps),
            "both": list(on.both),
            "heaviest": on.heaviest,
        },
        "fulled_warps": each.fulled,
        "in_reed_mm": _mm(across.mm),
        "wanted_in_reed_mm": _mm(across.wanted_mm),
        "dents": across.dents,
        "reed_per_m": round(across.sleying.dents_per_m, 3),
        "sley": across.sleying.written,
        "sett_per_m": round(across.sleying.sett, 2),
        "sett_off": round(across.sleying.off, 4),
        "ends": across.ends,
        "floating_selvedges": across.floating,
        "sleyed_already": across.sleyed,
        "repeats": across.draft_repeats,
        "ends_beyond_repeats": across.draft_over,
        "order": across.order.written(across.times) if across.order is not None else None,
        "picks_per_m": round(each.wanted.beat.per_m, 2),
        "picks_from": each.wanted.beat.how or None,
        "other_reeds": [
            {"reed_per_m": round(one.dents_per_m, 3), "sley": one.written, "sett_per_m": round(one.sett, 2)}
            for one in across.others
        ],
        "take_up": round(each.take_up, 4),
        "take_up_high": round(each.take_up_high, 4),
        "sample": None
        if each.sample is None
        else {
            "woven_mm": _mm(each.sample.woven),
            "warp_mm": _mm(each.sample.warp),
            "width_doubt_now_mm": _mm(each.sample.now),
            "width_doubt_after_mm": _mm(each.sample.then),
            "length_doubt_now_mm": _mm(each.sample.length.now if each.sample.length else None),
            "length_doubt_after_mm": _mm(each.sample.length.then if each.sample.length else None),
            "worth_it": each.sample.worth,
        },
        "pieces": [_piece(piece) for piece in each.pieces],
    }


def _piece(piece: PlannedPiece) -> dict[str, Any]:
    risk = piece.risk
    return {
        "piece": piece.wanted.name or None,
        "count": piece.wanted.count,
        "state": piece.wanted.state,
        "moment": piece.wanted.moment,
        "wanted_width_mm": _mm(piece.wanted.width_mm),
        "wanted_length_mm": _mm(piece.wanted.length_mm),
        "weave_mm": _mm(piece.weave_mm),
        "picks": piece.picks,
        "width_on_loom": _expected(piece.on_loom),
        "width": _expected(piece.width),
        "length": _expected(piece.length),
        "fulling_minutes": None
        if piece.minutes is None
        else dict(zip(("likely", "least", "most"), (round(each, 1) for each in piece.minutes), strict=True)),
        "before_this_warp_was_seen": None
        if piece.blind is None
        else {"width": _expected(piece.blind[0]), "length": _expected(piece.blind[1])},
        "width_loss": round(piece.width_loss, 4),
        "length_loss": round(piece.length_loss, 4),
        "sample_first": piece.useless,
        "risk": None
        if risk is None
        else {
            "under_mm": _mm(risk.limit_mm),
            "chance": round(risk.chance, 4),
            "more_each_mm": _mm(risk.more_mm),
            "chance_then": None if risk.after is None else round(risk.after, 4),
            "more_warp_mm": _mm(piece.risk_warp_mm),
        },
    }


def _expected(each: Expected | None) -> dict[str, float | None] | None:
    if each is None:
        return None
    return {
        "mm": _mm(each.mm),
        "low_mm": _mm(each.low),
        "high_mm": _mm(each.high),
        "worst_of_batch_mm": _mm(each.worst),
    }


def _mm(mm: float | None) -> float | None:
    return None if mm is None else round(mm, 2)


def _g(grams: float | None) -> float | None:
    return None if grams is None else round(grams, 1)
