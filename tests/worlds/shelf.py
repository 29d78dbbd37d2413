"""Who weaves what in a made world: yarns with their fibres, habits of weave and finish, warps year by year."""

from __future__ import annotations

import numpy as np

from journal_tools.forecast.kind import ClothKind

FIBRES = ("cotton", "linen", "wool", "silk")
WEAVES = ("plain weave", "2/2 twill", "lace", "waffle weave", "broken twill")
WEAVE_SHARES = (0.45, 0.25, 0.15, 0.10, 0.05)
FINISHES = ("machine 40", "machine 60", "hand wash", "steamed", "tumbled")
FIRST_YEAR = 2010
WARPS_A_YEAR = 12


class Shelf:
    """The yarns and habits of one weaver, enough for so many warps: sixty yarns for a thousand, eleven for sixty."""

    def __init__(self, rng: np.random.Generator, warps: int, one_warp_a_yarn: bool = False) -> None:
        self.rng = rng
        self.one_warp_a_yarn = one_warp_a_yarn
        count = warps if one_warp_a_yarn else max(2, round(0.95 * warps**0.6))
        self.fibres = {f"yarn {n}": str(rng.choice(FIBRES, p=(0.4, 0.25, 0.25, 0.1))) for n in range(count)}
        self.yarns = list(self.fibres)
        popular = 1 / (1 + np.arange(count))
        self.shares = popular / popular.sum()

    def kinds(self, warps: int) -> list[ClothKind]:
        """What the warps of the journal are, in the order of their years; some years have no warps."""
        year, made = FIRST_YEAR, []
        for n in range(warps):
            if n and n % WARPS_A_YEAR == 0:
                year += 1 + int(self.rng.random() < 0.15)
            fresh = self.yarns[n] if self.one_warp_a_yarn else ""
            made.append(self.kind(year, fresh))
        return made

    def next_kinds(self, count: int, year: int) -> list[ClothKind]:
        """Warps not yet woven, half of them in the year after the last; one in ten in a yarn never used."""
        made = []
        for n in range(count):
            fresh = self.rng.random() < 0.1 or self.one_warp_a_yarn
            made.append(self.kind(year + n % 2, self.new_yarn() if fresh else ""))
        return made

    def new_yarn(self) -> str:
        """Buy a yarn that no warp has used."""
        name = f"yarn {len(self.fibres)}"
        self.fibres[name] = str(self.rng.choice(FIBRES))
        return name

    def kind(self, year: int, warp_yarn: str = "") -> ClothKind:
        """One warp: the weft is the warp's yarn three times in five, the finish goes with the fibre as often as not."""
        rng = self.rng
        warp_yarn = warp_yarn or str(rng.choice(self.yarns, p=self.shares))
        weft_yarn = warp_yarn if rng.random() < 0.6 else str(rng.choice(self.yarns, p=self.shares))
        usual = FIBRES.index(self.fibres[weft_yarn])
        finish = FINISHES[usual] if rng.random() < 0.7 else str(rng.choice(FINISHES))
        close = None if rng.random() < 0.1 else float(np.clip(rng.normal(0.75, 0.12), 0.52, 1.1))
        return ClothKind(
            weave=str(rng.choice(WEAVES, p=WEAVE_SHARES)),
            warp_yarn=warp_yarn,
            weft_yarn=weft_yarn,
            warp_fibre=self.fibres[warp_yarn],
            weft_fibre=self.fibres[weft_yarn],
            finish=finish,
            closeness=close,
            year=year,
        )
