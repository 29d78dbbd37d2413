"""What the notation makes of every draft of the demonstration, and how its time grows with the ends.

    python -m benchmarks.notation_speed
"""

from __future__ import annotations

import random
import time
from pathlib import Path

from journal_tools.checking import woven_draft
from journal_tools.notation import found_blocks, parse_threading, print_profile, print_sets
from journal_tools.records import read_journal

ENTRIES = Path(__file__).parents[1] / "entries"
SIZES = (100, 400, 1_000, 2_500, 5_000)


def demonstration() -> None:
    """A line for each draft: its ends and picks, and what they are written as."""
    print("| draft | ends, letters one by one | threading | treadling or lifts |")
    print("|---|---|---|---|")
    for name, record in read_journal(ENTRIES).drafts.items():
        draft = woven_draft(record)
        assert parse_threading(print_sets(draft.threading)) == draft.threading
        long = len(", ".join("+".join(map(str, sorted(end))) or "none" for end in draft.threading))
        text = print_sets(draft.threading)
        if (blocks := found_blocks(draft.threading)) is not None:
            units = "; ".join(f"{letter}: {print_sets(unit)}" for letter, unit in blocks.units.items())
            text += f" (blocks {print_profile(blocks.order)}, {units})"
        sheds = draft.treadling if draft.treadling is not None else draft.picks
        print(f"| {name} | {len(draft.threading)}, {long} | {text} | {print_sets(sheds)} |")


def orders(dice: random.Random, ends: int) -> dict[str, list[frozenset[int]]]:
    """Orders of so many ends: no order at all, a mirror of none, a repeat, blocks."""
    loose = [frozenset({dice.randint(1, 8)}) for _ in range(ends)]
    units = [[frozenset({a}), frozenset({3}), frozenset({a}), frozenset({4})] for a in (1, 2)]
    return {
        "random": loose,
        "mirrored": loose[: ends // 2] + loose[: ends // 2][::-1],
        "repeated": (loose[:37] * (ends // 37 + 1))[:ends],
        "blocks": [end for _ in range(ends // 4) for end in dice.choice(units)],
    }


def growth() -> None:
    """Milliseconds to print, and to look for blocks, by ends."""
    print("\n| order | " + " | ".join(f"{size} ends" for size in SIZES) + " |")
    print("|---|" + "---|" * len(SIZES))
    dice = random.Random(1)
    made = {size: orders(dice, size) for size in SIZES}
    for kind in made[SIZES[0]]:
        cells = []
        for size in SIZES:
            began = time.perf_counter()
            text = print_sets(made[size][kind])
            printed = time.perf_counter() - began
            found_blocks(made[size][kind])
            blocks = time.perf_counter() - began - printed
            cells.append(f"{printed * 1000:.0f} + {blocks * 1000:.0f} ms, {len(text)} letters")
        print(f"| {kind} | " + " | ".join(cells) + " |")


if __name__ == "__main__":
    demonstration()
    growth()
