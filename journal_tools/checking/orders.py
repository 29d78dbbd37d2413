"""Orders of roles and colours beside the threads that they are for: a role nearly known, an order a thread short."""

from __future__ import annotations

import difflib
from collections.abc import Iterator, Sequence

from journal_tools.checking.woven import comes_out_even, woven_draft
from journal_tools.drafts import Draft as Woven
from journal_tools.problems import Problem, Severity
from journal_tools.records import Draft
from journal_tools.records.notated import ColourOrder
from journal_tools.records.warp import ROLES

NEAR = 0.8
"""How alike two words are from which on one is taken for the other, mistyped (judgement)."""

A_SLIP = 2
"""Threads that an order of colours may be off by to be asked about: else it is a stripe of its own (judgement)."""

LONG = 12
"""Threads of an order of colours from which on it is held against the threads (judgement)."""


def odd_orders(draft: Draft, made: Woven, accepted: Sequence[str], file: str, field: str = "") -> Iterator[Problem]:
    """Every question about the orders of one draft; of a double cloth those of each layer.

    accepted: by the whole. field: the keys that lead to it.
    """
    for name, layer in (("upper", draft.upper), ("lower", draft.lower)):
        if layer is not None:
            path = ": ".join(filter(None, (field, name)))
            yield from odd_orders(layer, woven_draft(layer), (*accepted, *layer.accepted), file, path)
    ends, picks = len(made.threading), len(made.picks)
    added = sum(accent.way == "added" for accent in draft.accents)
    for key, threads, word, beside in (
        ("warp_order", ends, "ends", added),
        ("weft_order", picks, "picks", 0),
        ("warp_colours", ends, "ends", added),
        ("weft_colours", picks, "picks", 0),
    ):
        order: ColourOrder | None = getattr(draft, key)
        if order is None:
            continue
        path = ": ".join(filter(None, (field, key)))
        of_roles = key.endswith("_order")
        if of_roles:
            near = () if "no-such-role" in accepted else _roles(order)
            for role, right in near:
                yield Problem(file, draft.line(key), path, role, right, Severity.QUESTION, "no-such-role")
        numbers = {threads, threads - beside}
        fits = any(_fits(len(order.items), number, of_roles) for number in numbers)
        if not fits and "uneven-order" not in accepted:
            right = (
                f"the order has {len(order.items)} threads and there are {threads} {word}: neither goes into the"
                " other a whole number of times. If it is so, write `accepted: uneven order`."
            )
            yield Problem(file, draft.line(key), path, order.text, right, Severity.QUESTION, "uneven-order")


def _fits(ordered: int, threads: int, of_roles: bool) -> bool:
    """Whether an order is one for so many threads. Colours may be striped over several repeats of a threading."""
    if comes_out_even(ordered, threads):
        return True
    return not of_roles and (abs(ordered - threads) > A_SLIP or min(ordered, threads) < LONG)


def _roles(order: ColourOrder) -> Iterator[tuple[str, str]]:
    """Roles that are nearly ones with a meaning here, with the question. `pattern-2` is a shuttle of its own."""
    for role in dict.fromkeys(order.items):
        near = difflib.get_close_matches(role.lower(), ROLES, n=1, cutoff=NEAR)
        if near and role not in ROLES and not role.lower().startswith(near[0]):
            meant = f"is it {near[0]}? Any word will do, but that one has a meaning here."
            yield role, f"{meant} If it is so, write `accepted: no such role`."
