"""Where the warp went, for its page."""

from __future__ import annotations

from collections.abc import Iterator

from journal_tools.ledger import Account, Ledger
from journal_tools.ledger.uncertainty import tape_unit
from journal_tools.ledger.words import per_cent
from journal_tools.pages.views import Went
from journal_tools.quantities import show_length


def went(ledger: Ledger) -> tuple[tuple[Went, ...], str]:
    """The lines of the account and a note under them; nothing where nobody wrote where it went."""
    account = ledger.account
    if account is None or not account.lines:
        return (), ""
    wound = next(each.wound for each in ledger.warp.warp if each.wound is not None)
    unit = tape_unit(wound.unit)
    mark = ledger.tape.inches_mm if unit == "in" else ledger.tape.metric_mm

    def line(what: str, mm: float, kind: str, note: str = "") -> Went:
        return Went(what, show_length(mm, unit, mark), max(0.0, mm / account.wound_mm), kind, note)

    lines = [line(each.name, each.mm, "cloth" if each.is_cloth else "waste", each.how) for each in account.lines]
    lines += [line(*rest) for rest in _rest(account)]
    lines.append(line("wound", account.wound_mm, "total"))
    return tuple(lines), _note(account)


def _rest(account: Account) -> Iterator[tuple[str, float, str]]:
    if account.taken_up_mm is not None and account.unaccounted_mm is not None:
        yield "take-up, by marks", account.taken_up_mm, "rest"
        yield "unaccounted for", account.unaccounted_mm, "rest"
        return
    unmeasured = f", with {', '.join(account.unmeasured)}" if account.unmeasured else ""
    yield f"take-up and unaccounted{unmeasured}", account.remainder_mm, "rest"


def _note(account: Account) -> str:
    if account.unmeasured:
        few = ", ".join(account.unmeasured)
        return (
            f"Nobody measured {few} on the loom, so that cloth is still in the last line, and take-up is not reckoned."
        )
    if account.take_up is None:
        return ""
    figure = per_cent(account.take_up.loss)
    if account.take_up.basis == "at most":
        said = f"Take-up on the loom is at most {figure} of the warp that was woven"
        return f"{said}; only marks on the warp would tell it from what went astray."
    return f"Take-up on the loom is {figure}, {account.take_up.words}."
