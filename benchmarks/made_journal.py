"""A journal of any size, made up and the same each time: for measuring, not for reading."""

from __future__ import annotations

import random
from pathlib import Path

WEAVES = ("plain weave", "2/2 twill", "1/3 twill", "waffle weave", "huck lace", "basket weave")
FIBRES = ("100 % cotton", "55 % cotton, 45 % linen", "100 % linen", "100 % wool", "100 % silk")
NUMBERS = ("Ne 8/2", "Ne 16/2", "Nm 20/2", "Nm 28/2", "R74 tex/2")
COLOURS = {"bone": "e8dfcb", "slate": "43536b", "rust": "9c4a2f", "moss": "6a7349", "ink": "22283a", "straw": "d8bd72"}
WORDS = (
    "beat selvedge drew narrower cones washed warm dried line pressed damp twill dark light rain window "
    "threaded evenly tension crept header skipped dent mended fringe twisted corner soft drape crisp again"
).split()


class MadeJournal:
    """So many warps with their yarns and drafts, written as records.

    For a thousand warps there are sixty yarns and a hundred drafts. Two warps in three hold a plan and
    three pieces, one in three is six lines.
    """

    def __init__(self, warps: int, seed: int = 1) -> None:
        self.random = random.Random(seed)
        self.warps = [f"warp-{n:04}" for n in range(warps)]
        self.yarns = [f"yarn-{n:03}" for n in range(max(3, warps * 60 // 1000))]
        self.drafts = [f"draft-{n:03}" for n in range(max(3, warps // 10))]

    def records(self) -> dict[str, str]:
        """The text of every record by its path under entries/."""
        made = {f"yarns/{name}.md": self.yarn(n) for n, name in enumerate(self.yarns)}
        made |= {f"drafts/{name}.md": self.draft(n) for n, name in enumerate(self.drafts)}
        made |= {
            f"warps/{name}.md": self.full_warp(n) if n % 3 else self.six_lines(n) for n, name in enumerate(self.warps)
        }
        return made

    def write(self, entries: Path) -> None:
        """Write all of them, each kind in its folder."""
        for name, text in self.records().items():
            path = entries / name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text, encoding="utf-8")

    def yarn(self, n: int) -> str:
        colours = "".join(f"  {name}: {hex_}\n" for name, hex_ in COLOURS.items())
        return (
            f"---\ntitle: Yarn {n}\nfibre: {FIBRES[n % len(FIBRES)]}\nnumber: {NUMBERS[n % len(NUMBERS)]}\n"
            f"colours:\n{colours}---\n{self.notes()}"
        )

    def draft(self, n: int) -> str:
        shafts = 4 if n % 2 else 8
        order = self.random.sample(range(1, shafts + 1), shafts)
        tie_up = ", ".join(
            "+".join(str(1 + (start + k) % shafts) for k in range(shafts // 2)) for start in range(shafts)
        )
        return (
            f"---\ntitle: Draft {n}\nshafts: {shafts}\ntreadles: {shafts}\n"
            f"threading: 3 times (1-{shafts}), {', '.join(map(str, order))}\n"
            f"tie_up: {tie_up}\ntreadling: 2 times (1-{shafts}), {shafts}-1\n---\n{self.notes()}"
        )

    def six_lines(self, n: int) -> str:
        reed, loom, washed = self.sizes()
        return (
            f"---\ntitle: Warp {n}\nyarn: {self.yarns[n % len(self.yarns)]} bone\nweave: {WEAVES[n % len(WEAVES)]}\n"
            f"in_reed: {eighths(reed[0])}\non_loom: {size(loom)}\nwashed: {size(washed)}\n---\n{self.notes()}"
        )

    def full_warp(self, n: int) -> str:
        yarn = self.yarns[n % len(self.yarns)]
        colours = self.random.sample(sorted(COLOURS), 2)
        weave = f"draft: {self.drafts[n % len(self.drafts)]}" if n % 2 else f"weave: {WEAVES[n % len(WEAVES)]}"
        reed, loom, washed = self.sizes()
        pieces = ""
        for piece in range(1, 4):
            wander = self.random.gauss(1, 0.006)
            off = (loom[0] * 0.99 * wander, loom[1] * 0.98 * wander)
            pieces += (
                f"  - name: piece {piece}\n    on_loom: {size(loom)}\n    off_loom: {size(off)}\n"
                f"    washed:\n      - {size((washed[0] * wander, washed[1] * wander))}\n"
                f"      - {size((washed[0] * wander * 0.995, washed[1] * wander * 0.993))}\n"
            )
        return (
            f"---\ntitle: Warp {n}\nstarted: {2004 + n % 20}-{1 + n % 12:02}\n"
            f"yarns:\n  light: {yarn} {colours[0]}\n  dark: {yarn} {colours[1]}\n"
            f"warp:\n  order: 20 light, 8 times (4 dark, 24 light), 4 dark, 20 light\n  wound: 6 yd\n"
            f"weft: light\n{weave}\nreed: 12/in\nsley: 1-2\nin_reed: {eighths(reed[0])}\nbeat: 18/in\n"
            f"plan:\n  - piece: towel\n    count: 3\n    on_loom: {size((loom[0] * 1.01, loom[1]))}\n"
            f"    washed: {size((washed[0] * 1.01, washed[1] * 1.01))}\n"
            f"pieces:\n{pieces}where_it_went:\n  front tie-on: 5 in\n  thrums: 22 in\n---\n{self.notes()}"
        )

    def sizes(self) -> tuple[tuple[float, float], tuple[float, float], tuple[float, float]]:
        """In the reed, on the loom, washed: inches, with losses as cloth has them."""
        reed = (self.random.uniform(12, 32), self.random.uniform(25, 80))
        loom = (reed[0] * self.random.gauss(0.95, 0.008), reed[1])
        washed = (loom[0] * self.random.gauss(0.92, 0.01), loom[1] * self.random.gauss(0.91, 0.012))
        return reed, loom, washed

    def notes(self) -> str:
        """Forty to a hundred and twenty words in paragraphs."""
        paragraphs = []
        for _ in range(self.random.randint(2, 4)):
            words = self.random.choices(WORDS, k=self.random.randint(20, 30))
            paragraphs.append(" ".join(words).capitalize() + ".")
        return "\n" + "\n\n".join(paragraphs) + "\n"


def eighths(inches: float) -> str:
    """As read off a tape with eighths."""
    whole, part = divmod(round(inches * 8), 8)
    return f"{whole} {part}/8" if part else str(whole)


def size(inches: tuple[float, float]) -> str:
    """Width × length as a weaver types it."""
    return f"{eighths(inches[0])} x {eighths(inches[1])}"
