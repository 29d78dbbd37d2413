"""The record of a yarn."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from journal_tools.quantities import (
    Density,
    Money,
    Unreadable,
    Weight,
    YarnNumber,
    parse_wraps,
    parse_yarn_number,
)
from journal_tools.records import readers
from journal_tools.records.model import says
from journal_tools.records.record import Record
from journal_tools.records.spot import Spot


def fibres(spot: Spot) -> Mapping[str, Fraction | None]:
    """Fibres with their share of the weight; a fibre alone is all of it, `unknown` is unknown."""
    typed = spot.text()
    if typed.lower() in ("unknown", "mystery", "?"):
        return {}
    shares: dict[str, Fraction | None] = {}
    for part in re.split(r"\s*,\s+|\s+and\s+", typed):
        match = re.fullmatch(r"(?:(\d+(?:[.,]\d+)?)\s*%\s*)?([^\d%]+?)", part.strip())
        if not match:
            raise Unreadable(read=typed, right="fibres with their share are wanted, such as `55 % cotton, 45 % linen`.")
        shares[match[2].strip().lower()] = Fraction(match[1].replace(",", ".")) / 100 if match[1] else None
    if len(shares) == 1 and None in shares.values():
        return {next(iter(shares)): Fraction(1)}
    total = sum((share or Fraction(0) for share in shares.values()), Fraction(0))
    if None not in shares.values() and abs(total - 1) > Fraction(2, 100):
        raise Unreadable(
            read=typed, right=f"the shares of the fibres add up to {float(total) * 100:g} %; 100 % is wanted."
        )
    return shares


@dataclass(frozen=True, kw_only=True)
class Yarn(Record):
    """A yarn on the shelf."""

    title: str | None = says(readers.text, "What you call it.", "Linen 20/2", public=True)
    fibre: Mapping[str, Fraction | None] | None = says(
        fibres, "Fibres and their share of the weight.", "55 % cotton, 45 % linen", public=True
    )
    number: str | None = says(readers.text, "The yarn number on the label.", "8/2 cotton", public=True)
    length_weight: YarnNumber | None = says(
        lambda spot: parse_yarn_number(spot.text(), None, spot.units), "A length that was weighed.", "50 m = 12.3 g"
    )
    yield_: YarnNumber | None = says(
        lambda spot: parse_yarn_number(spot.text(), None, spot.units),
        "Length to the weight.",
        "3360 yd/lb",
        key="yield",
    )
    wraps: Density | None = says(lambda spot: parse_wraps(spot.text()), "Wraps to the inch or centimetre.", "30/in")
    put_up: str | None = says(readers.text, "How it is sold.", "250 g cones")
    price: Money | None = says(readers.money, "Its price.", "14.50 EUR")
    colours: Mapping[str, str] | None = says(
        readers.by_name(readers.colour),
        "Its colours, six digits each, without `#`.",
        "\n  bone: efe8d8\n  slate: 43536b",
        public=True,
    )
    lot: str | None = says(readers.text, "The dye lot.", "7")
    on_hand: Weight | None = says(readers.weight, "How much is on the shelf.", "640 g")
    wetted: bool | None = says(readers.yes_no, "Whether it has been wetted before, as dyed skeins have.", "yes")
    in_oil: bool | None = says(readers.yes_no, "Whether it is in spinning oil.", "yes")
    raw: bool | None = says(readers.yes_no, "Whether silk still has its gum.", "no")
    grey: bool | None = says(readers.yes_no, "Whether linen is unboiled and unbleached.", "no")
    counted: YarnNumber | None = None

    @property
    def tex(self) -> Fraction | None:
        """Linear density in g/km. A weighed length or a stated length to the weight wins over the label."""
        best = self.length_weight or self.yield_ or self.counted
        return best.tex if best else None

    @property
    def labels(self) -> frozenset[str]:
        """What its label says, written as names are: the number, and with its fibre where that is one."""
        if not self.number:
            return frozenset()
        fibres = list(self.fibre or {})
        said = [self.number, *(f"{self.number} {fibre}" for fibre in fibres if len(fibres) == 1)]
        return frozenset(readers.slug(each) for each in said) - {""}

    @property
    def main_fibre(self) -> str | None:
        """The fibre with the largest share."""
        if not self.fibre:
            return None
        shares = self.fibre
        return max(shares, key=lambda fibre: shares[fibre] or Fraction(0))
