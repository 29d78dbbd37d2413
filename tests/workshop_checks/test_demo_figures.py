"""Whether the demonstration journal's figures hang together: losses, ends, warp, weights.

Limits are common practice, no source. Arithmetic here is written out apart from the project's own.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from itertools import pairwise

import pytest

from journal_tools.records import Journal, Piece, Stretch, Warp, read_journal
from journal_tools.records.cloth import Cloth
from tests.workshop.design import Stretch as Woven
from tests.workshop.orders import ends_in_a_dent, threads
from tests.workshop.physics import CLOTHS
from tests.workshop.shelf import WASHED_OUT
from tests.workshop.warps import WARPS
from tests.workshop.write_entries import ENTRIES

MAY_STRETCH = {"cot-blanket", "school-scarf", "fog-shawl", "driftline-scarves"}
NOT_TO_LEARN_FROM = {"the-shrunk-scarf", "sett-sampler"}
DESIGNS = {design.name: design for design in WARPS}


@cache
def _journal() -> Journal:
    return read_journal(ENTRIES)


def _stretches() -> Iterator[tuple[Warp, Stretch, Woven]]:
    for warp in _journal().warps.values():
        yield from ((warp, *pair) for pair in zip(warp.woven(), DESIGNS[warp.name].stretches, strict=True))


def _pieces(stretch: Stretch) -> tuple[Piece | Stretch, ...]:
    return stretch.pieces or (stretch,)


def _reed_mm(warp: Warp, stretch: Stretch) -> float:
    reed = stretch.in_reed or warp.in_reed
    assert reed is not None
    assert reed.length is not None
    return float(reed.length.mm) * (2 if reed.fold == "folded" else 1)


def _mm(piece: Cloth, state: str) -> tuple[float | None, float | None]:
    at = piece.washed[0] if state == "washed" and piece.washed else getattr(piece, state) if state != "washed" else None
    if at is None or at.size is None:
        return None, None
    width, length = at.size.width_mm, at.size.length_mm
    return (float(width) if width else None, float(length) if length else None)


def _mean_losses() -> Iterator[tuple[str, str, float | None, float | None]]:
    """Name, kind of cloth, and mean whole loss to wash 1 in width and in length, in per cent."""
    for warp, stretch, woven in _stretches():
        if warp.name in NOT_TO_LEARN_FROM or stretch.name == "bookmarks":
            continue
        width, length = [], []
        for piece in _pieces(stretch):
            across, along = _mm(piece, "washed")
            _, loom = _mm(piece, "on_loom")
            if across:
                width.append(100 * (1 - across / _reed_mm(warp, stretch)))
            if along and loom and piece.hemmed is None:
                length.append(100 * (1 - along / loom))
        yield (
            warp.name,
            woven.cloth,
            sum(width) / len(width) if width else None,
            sum(length) / len(length) if length else None,
        )


def test_whole_losses_lie_in_the_range_of_the_cloth() -> None:
    """Every warp's mean loss to the first wash is one that its fibre and weave really have."""
    outside = [
        (name, cloth, round(loss, 1))
        for name, cloth, width, length in _mean_losses()
        for loss, (low, high) in (
            (width, CLOTHS[cloth].width_range),
            (length, CLOTHS[cloth].length_range),
        )
        if loss is not None and not low <= loss <= high
    ]

    assert [] == outside


def test_nearly_every_warp_says_what_its_cloth_lost() -> None:
    """The range holds for 45 stretches and more in width, and for 40 and more in length: it was really asked."""
    losses = list(_mean_losses())

    assert sum(width is not None for _, _, width, _ in losses) >= 45
    assert sum(length is not None for _, _, _, length in losses) >= 40


def test_the_disaster_is_one() -> None:
    """The scarf that was boiled lost more than any merino should, in both directions."""
    warp = _journal().warps["the-shrunk-scarf"]
    across, along = _mm(warp, "washed")
    _, loom = _mm(warp, "on_loom")
    assert across is not None
    assert along is not None
    assert loom is not None

    assert 100 * (1 - across / _reed_mm(warp, warp)) > CLOTHS["worsted"].width_range[1] + 10
    assert 100 * (1 - along / loom) > CLOTHS["worsted"].length_range[1] + 10


def test_cloth_gets_smaller_at_every_state() -> None:
    """No state is larger than the one before it, but in the yarns that stretch. Hems stand apart."""
    grown = []
    for warp, stretch, _ in _stretches():
        if warp.name in MAY_STRETCH:
            continue
        for piece in _pieces(stretch):
            states = [state for state in (piece.on_loom, piece.off_loom) if state]
            after = [state for state in (piece.hemmed, *piece.washed) if state]
            for before, later in [*pairwise(states), *pairwise(after)]:
                assert before.size is not None
                assert later.size is not None
                if before.size.fold != later.size.fold:
                    continue
                across = before.size.width_mm, later.size.width_mm
                along = before.size.length_mm, later.size.length_mm
                if any(was and now and now > was for was, now in (across, along)):
                    grown.append((warp.name, before.size.text, later.size.text))

    assert [] == grown


def test_ends_sley_and_reed_make_the_width() -> None:
    """Ends over ends to the inch is the width in the reed, to the nearest mark of the tape."""
    asked = 0
    for warp in _journal().warps.values():
        wound = warp.warp[0] if warp.warp else None
        if wound is None or wound.order is None or warp.reed is None or warp.sley is None or warp.layers:
            continue
        ends = len(threads(wound.order.text)) + (2 if wound.floating_selvedges else 0)
        sley = ends_in_a_dent("-".join(str(number) for number in warp.sley))
        exact = ends / float(sley) / float(warp.reed.per_m) * 1000
        asked += 1

        assert exact == pytest.approx(_reed_mm(warp, warp), abs=4), warp.name

    assert asked >= 25


def test_the_warp_adds_up() -> None:
    """Lines, fringes and cloth leave 3 to 8 per cent for take-up; waffle and rep take more, one warp was misread."""
    shares = {}
    for warp in _journal().warps.values():
        wound = warp.warp[0].wound if warp.warp else None
        if wound is None or not warp.where_it_went:
            continue
        pieces = [piece for stretch in warp.woven() for piece in _pieces(stretch)]
        lengths = [_mm(piece, "on_loom")[1] for piece in pieces]
        if None in lengths:
            continue
        cloth = sum(
            (piece.number if isinstance(piece, Piece) else 1) * (length or 0)
            for piece, length in zip(pieces, lengths, strict=True)
        )
        left = float(wound.mm) - sum(float(line.mm) for line in warp.where_it_went.values()) - cloth
        shares[warp.name] = left / (left + cloth)
    rep, plover = shares.pop("slipway-runner"), shares.pop("plover-napkins")
    waffle = [shares.pop(name) for name in ("samphire-bath-towels", "lobster-pot-mats")]

    assert len(shares) >= 20
    assert {name: share for name, share in shares.items() if not 0.025 <= share <= 0.085} == {}
    assert 0.10 <= rep <= 0.25
    assert all(0.05 <= share <= 0.13 for share in waffle)
    assert plover > 0.3


def _warp_mm(warp: Warp, stretch: Stretch, piece: Cloth, kind: str) -> float:
    """Warp in one piece: cloth over one less the usual take-up, and its fringes."""
    _, loom = _mm(piece, "on_loom")
    assert loom is not None
    fringe = stretch.fringe or warp.fringe
    allowed = float(fringe.allowed.mm) if fringe and fringe.allowed else 0.0
    return loom / (1 - CLOTHS[kind].length[0] / 100) + allowed


def test_pieces_weigh_what_their_yarn_does() -> None:
    """Ends, picks, the usual crimp and the yarn's number give each weighed piece to 5 per cent."""
    asked, far = 0, []
    for warp, stretch, woven in _stretches():
        design = DESIGNS[warp.name]
        for piece in _pieces(stretch):
            if not piece.weight or _mm(piece, "on_loom")[1] is None:
                continue
            wound = warp.warp[0]
            ends = len(threads(wound.order.text)) if wound.order else 0
            ends += 2 if wound.floating_selvedges else 0
            _, loom = _mm(piece, "on_loom")
            assert loom is not None
            beat = woven.beat / (25.4 if design.unit == "in" else 10)
            picks = piece.picks.number if piece.picks else beat * loom
            weft = woven.weft or design.yarn
            tex = {name: float(_journal().yarns[name].tex or 0) for name in (design.yarn, weft)}
            in_warp = ends * _warp_mm(warp, stretch, piece, woven.cloth) * tex[design.yarn] / 1e6
            width = _reed_mm(warp, stretch) / (2 if warp.layers else 1)
            in_weft = picks * width * 1.045 * tex[weft] / 1e6
            for state, weight in piece.weight.items():
                lost = [WASHED_OUT.get(name, 0) if state == "washed" else 0 for name in (design.yarn, weft)]
                reckoned = in_warp * (1 - lost[0]) + in_weft * (1 - lost[1])
                asked += 1
                if abs(float(weight.grams) / reckoned - 1) > 0.05:
                    far.append((warp.name, state, float(weight.grams), round(reckoned)))

    assert asked >= 25
    assert [] == far


def test_plans_miss_by_what_honest_plans_miss() -> None:
    """Planned and washed sizes of pieces differ, by eighths mostly: half of them between 1/8 and 3/4 in."""
    misses = []
    for warp, stretch, _ in _stretches():
        for plan in stretch.plan:
            if not plan.washed or plan.washed[0].size is None or warp.name == "cove-blanket":
                continue
            wanted = plan.washed[0].size
            for piece in stretch.pieces:
                if piece.name == "half a napkin":
                    continue
                for want, got in zip((wanted.width_mm, wanted.length_mm), _mm(piece, "washed"), strict=True):
                    if want and got:
                        misses.append(abs(float(want) - got) / 25.4)

    assert len(misses) >= 80
    assert 0.5 <= sum(0.12 <= miss <= 0.76 for miss in misses) / len(misses)
    assert max(misses) <= 4
