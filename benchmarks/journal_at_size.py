"""How long a big journal takes, beside a bare site of the same notes on the same machine.

    python -m benchmarks.journal_at_size              1,000 warps, five rounds, some minutes
    python -m benchmarks.journal_at_size --warps 200 --rounds 3

Bare is MkDocs with Material building the same notes in the same number of pages, all out of the
navigation, with nothing reckoned. Everything stands on a disk in memory where there is one, the
rounds go through all builds in turn so that a busy machine slows all of them alike, and each figure
is the median of its rounds. Ratios travel between machines; seconds do not.
"""

from __future__ import annotations

import argparse
import io
import os
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from collections import defaultdict
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import NamedTuple

from benchmarks.made_journal import MadeJournal

BARE_SITE = """\
site_name: Bare
use_directory_urls: false
theme: {name: material, font: false}
plugins: [search]
markdown_extensions: [attr_list, md_in_html]
nav: [index.md]
not_in_nav: /**
"""


class Run(NamedTuple):
    """What one run took."""

    seconds: float
    processor: float
    """Seconds of the processor, which a busy machine does not stretch."""
    peak: float
    """MB of the largest process at its peak."""


class Build:
    """One folder and what builds it."""

    def __init__(self, folder: Path, *command: str) -> None:
        self.folder = folder
        self.command = [sys.executable, "-m", *command]

    def cold(self) -> Run:
        """Build with nothing kept."""
        for made in ("site", ".cache"):
            shutil.rmtree(self.folder / made, ignore_errors=True)
        return self.again()

    def again(self) -> Run:
        """Build once more."""
        return measured(self.command, self.folder)

    def pages(self) -> list[str]:
        """The addresses of all pages, without their suffix."""
        site = self.folder / "site"
        return sorted(path.relative_to(site).with_suffix("").as_posix() for path in site.rglob("*.html"))


def measured(command: list[str], folder: Path) -> Run:
    """Run it in a process of its own. Stop when it fails."""
    around = os.environ | {"NO_MKDOCS_2_WARNING": "1", "SOURCE_DATE_EPOCH": "1700000000"}
    with tempfile.TemporaryFile() as said:
        began = time.perf_counter()
        process = subprocess.Popen(command, cwd=folder, env=around, stdout=said, stderr=subprocess.STDOUT)
        _, status, used = os.wait4(process.pid, 0)
        took = time.perf_counter() - began
        process.returncode = os.waitstatus_to_exitcode(status)
        if process.returncode:
            said.seek(0)
            sys.exit(f"{' '.join(command)} failed:\n{said.read().decode(errors='replace')[-3000:]}")
    peak = used.ru_maxrss / (1024 * 1024 if sys.platform == "darwin" else 1024)
    return Run(took, used.ru_utime + used.ru_stime, peak)


def journal_of(warps: int, parent: Path) -> Build:
    """A journal begun as a weaver begins one, filled with made records."""
    folder = parent / f"journal-{warps}"
    measured([sys.executable, "-m", "journal_tools", "begin", str(folder)], parent)
    for kind in ("warps", "yarns", "drafts", "looms", "finishes"):
        shutil.rmtree(folder / "entries" / kind, ignore_errors=True)
    MadeJournal(warps).write(folder / "entries")
    return Build(folder, "journal_tools", "build")


def bare_beside(journal: Build, parent: Path) -> Build:
    """The same notes in as many pages."""
    folder = parent / "bare"
    notes = {f"{name}": text.split("---\n", 2)[2] for name, text in read_entries(journal).items()}
    docs = folder / "docs"
    pages = [page for page in journal.pages() if page != "404"]
    for number, page in enumerate(pages):
        text = notes.get(f"{page}.md", "")
        path = docs / ("index.md" if page == "index" else f"{page}.md")
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(f"---\ntitle: Page {number}\n---\n\n# Page {number}\n{text}", encoding="utf-8")
    (folder / "mkdocs.yml").write_text(BARE_SITE, encoding="utf-8")
    return Build(folder, "mkdocs", "build", "--quiet")


def read_entries(journal: Build) -> dict[str, str]:
    """The made records by their path under entries/."""
    entries = journal.folder / "entries"
    return {p.relative_to(entries).as_posix(): p.read_text(encoding="utf-8") for p in sorted(entries.glob("*/*.md"))}


def cloth_picture_ratio(rounds: int) -> tuple[float, float]:
    """ms from an array of 400 × 400 threads to a picture at 4 px, and of Pillow writing it as RGB."""
    import numpy as np
    from PIL import Image

    from journal_tools.pictures.cloth import cloth_picture

    over = np.add.outer(np.arange(400), np.arange(400)) % 4 < 2  # a 2/2 twill in four colours and two
    warp = ["e8dfcb", "43536b", "9c4a2f", "6a7349"] * 100
    weft = ["43536b", "e8dfcb"] * 200

    def ours() -> bytes:
        return cloth_picture(over, warp, weft, 24, 24, px_per_thread=4)

    rgb = Image.open(io.BytesIO(ours())).convert("RGB")
    assert rgb.size == (1600, 1600)

    def pillow() -> None:
        rgb.save(io.BytesIO(), "PNG")

    times: dict[Callable[[], object], list[float]] = defaultdict(list)
    for _ in range(max(rounds, 5)):
        for work in (ours, pillow):
            began = time.perf_counter()
            work()
            times[work].append(time.perf_counter() - began)
    return 1000 * statistics.median(times[ours]), 1000 * statistics.median(times[pillow])


@contextmanager
def fast_folder() -> Iterator[Path]:
    """A folder in memory where there is one, gone afterwards."""
    memory = Path("/dev/shm")
    with tempfile.TemporaryDirectory(dir=memory if memory.is_dir() else None) as folder:
        yield Path(folder)


def main() -> None:
    """Measure and print the table."""
    asked = argparse.ArgumentParser(description=(__doc__ or "").split("\n")[0])
    asked.add_argument("--warps", type=int, default=1000, help="how many in the middle journal (1000)")
    asked.add_argument("--rounds", type=int, default=5, help="how often each is built (5)")
    options = asked.parse_args()
    with fast_folder() as parent:
        print_table(measure(parent, options.warps, options.rounds), options.warps)


def measure(parent: Path, warps: int, rounds: int) -> dict[str, float]:
    """Every figure by its name: the median of its rounds."""
    sizes = (warps // 2, warps, warps * 2)
    journals = {size: journal_of(size, parent) for size in sizes}
    middle = journals[warps]
    middle.cold()
    bare = bare_beside(middle, parent)
    bare.cold()
    found: dict[str, list[float]] = defaultdict(list)

    def note(name: str, run: Run) -> None:
        found[name].append(run.seconds)
        found[f"{name} processor"].append(run.processor)
        found[f"{name} MB"].append(run.peak)

    for round_ in range(rounds):
        print(f"round {round_ + 1} of {rounds}", file=sys.stderr, flush=True)
        note("bare", bare.cold())
        note("cold", middle.cold())
        note("again", middle.again())
        note("half", journals[sizes[0]].cold())
        note("double", journals[sizes[2]].cold())
        command = [sys.executable, "-m", "journal_tools"]
        note("help", measured([*command, "--help"], middle.folder))
        note("past", measured([*command, "past", "yarn-000"], middle.folder))
    found["picture"], found["pillow"] = ([ms] for ms in cloth_picture_ratio(rounds))
    return {"pages": len(middle.pages())} | {name: statistics.median(values) for name, values in found.items()}


def print_table(found: dict[str, float], warps: int) -> None:
    """The figures beside those to reach, as a Markdown table."""

    def beside_bare(name: str) -> tuple[float, str]:
        of_processor = found[f"{name} processor"] / found["bare processor"]
        told = f"{found[name]:.2f} s, bare {found['bare']:.2f} s; of the processor {of_processor:.2f} ×"
        return found[name] / found["bare"], told

    below = (found["cold"] - found["half"]) / (warps - warps // 2)
    above = (found["double"] - found["cold"]) / warps
    memory = f"{found['cold MB']:.0f} MB, bare {found['bare MB']:.0f} MB"
    picture = f"{found['picture']:.0f} ms, Pillow {found['pillow']:.0f} ms"
    rows = [
        ("cold build", "≤ 3.5 × bare", *beside_bare("cold")),
        ("build again, nothing changed", "≤ 1.3 × bare", *beside_bare("again")),
        ("a warp more, above to below", "≤ 1.2 ×", above / below, f"{1000 * above:.1f} ms, {1000 * below:.1f} ms"),
        ("peak memory", "≤ 3 × bare", found["cold MB"] / found["bare MB"], memory),
        ("cloth picture, 400 × 400 threads", "≤ 0.4 × RGB", found["picture"] / found["pillow"], picture),
        ("command line: help", "≤ 0.3 s", found["help"], f"processor {found['help processor']:.2f} s"),
        ("command line: a yarn's past", "≤ 0.8 s", found["past"], f"processor {found['past processor']:.2f} s"),
    ]
    print(f"{warps} warps, {found['pages']:.0f} pages, Python {sys.version.split()[0]}, {os.cpu_count()} cores\n")
    print("| what | reach | measured | figures |\n|---|---|---|---|")
    for what, reach, figure, told in rows:
        print(f"| {what} | {reach} | {figure:.2f} | {told} |")


if __name__ == "__main__":
    main()
