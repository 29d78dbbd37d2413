"""`draft --to x.md` and the text of a draft: nothing that a record holds is lost unsaid."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from journal_tools.commands.draft_dents import dents_of
from journal_tools.drafts.making import spacing_in_dents
from journal_tools.interchange import read_wif
from journal_tools.notation import parse_dents, print_sets
from tests.commands.shell import Shell

WHOLE = """\
---
title: Blocks and tabby
tags: [gifts, two words]
blocks:
  A: 1, 2
  B: 3, 4
profile: 2 A, B   # as on the shelf
tie_up: 1+2, 3+4, 1+3, 2+4
treadling: 1, 2
tabby_between: 3, 4
ends_in_dents: 2, 1, none, 3
floating_selvedges: 1
weave: a weft of my own
accepted: woven otherwise
---

Woven *twice*, with [this](notes.md).
"""

SUPPLEMENTARY = """\
---
threading: 1, 2, 3, 1, 2
lift_plan: 1+3, 2+3, 1, 2
warp_order: 2 ground, supplementary, 2 ground
---
"""

TWILL = "---\ntitle: {title}\nthreading: {threading}\ntie_up: {tie_up}\ntreadling: {treadling}\n---\n"


@pytest.fixture
def shelf(tenterhook: Shell, monkeypatch: pytest.MonkeyPatch) -> Shell:
    """One draft with most that a record can hold, in the folder that one stands in."""
    tenterhook.write("drafts/whole", WHOLE)
    monkeypatch.chdir(tenterhook.folder)
    return tenterhook


def test_without_a_change(shelf: Shell) -> None:
    """A record written to another file is that record, letter for letter."""
    shelf("draft", "whole", "--to", "again.md")

    assert WHOLE == Path("again.md").read_text(encoding="utf-8")


def test_with_a_change(shelf: Shell) -> None:
    """Changed, it keeps title, tags, weave, dents and notes, and says what it wrote out or left out."""
    told = shelf("draft", "whole", "--change", "mirrored", "--to", "entries/drafts/mirrored.md").stderr
    text = Path("entries/drafts/mirrored.md").read_text(encoding="utf-8")

    assert 'title: "Blocks and tabby, mirrored"\n' in text
    assert "threading: 4-1, 2, 1\n" in text
    assert "treadling: 1, 3, 2, 4\n" in text
    assert "tags: [gifts, two words]\n" in text
    assert "weave: a weft of my own\n" in text
    assert "ends_in_dents: 3, none, 1, 2\n" in text
    assert "floating_selvedges: 1\n" in text
    assert text.endswith("\n---\n\nWoven *twice*, with [this](notes.md).\n")
    assert "Written out thread by thread: blocks, profile, tabby_between.\n" in told
    assert "Left out, since it held for the draft before: accepted.\n" in told
    assert 0 == shelf("check").exit_code


def test_a_weave_that_changes(shelf: Shell) -> None:
    """With warp and weft exchanged a name that nobody knows is left out, and said; a known one stays where it holds."""
    text = TWILL.format(title="Twill", threading="1-4", tie_up="{tie_up}", treadling="1-4")
    shelf.write("drafts/even", text.format(tie_up="1+2, 2+3, 3+4, 4+1").replace("title:", "weave: 2/2 twill\ntitle:"))
    shelf.write("drafts/uneven", text.format(tie_up="1, 2, 3, 4").replace("title:", "weave: 1/3 twill\ntitle:"))
    told = {name: shelf("draft", name, "--change", "turned", "--to", f"{name}.md").stderr
            for name in ("whole", "even", "uneven")}  # fmt: skip
    written = {name: "\nweave: " in Path(f"{name}.md").read_text(encoding="utf-8") for name in told}

    assert {"whole": False, "even": True, "uneven": False} == written
    assert "accepted, weave" in told["whole"].replace("weave, accepted", "accepted, weave")
    assert "Left out, since it held for the draft before: weave." in told["uneven"]


@pytest.mark.parametrize(
    "dents",
    ["20 times (2), 4", "2, 2, none, 2, 4", "2 times (2), 1, none, 3, 2", "none, 2, 2, 3", "3 times (2), 1, 2, none"],
)
def test_room_as_dents(dents: str) -> None:
    """The room of each end comes back as the ends in each dent that it was made of."""
    assert parse_dents(dents) == dents_of(spacing_in_dents(parse_dents(dents)))


def test_room_that_no_dents_give() -> None:
    """Room that no reed gives is no dents, and neither is a warp that stands alike everywhere."""
    assert [None, None] == [dents_of(spacing) for spacing in ((1, 1.3, 0.8), (1, 1, 1))]


def test_ends_of_a_usual_dent() -> None:
    """Where it is known how many ends a usual dent holds, the others are counted by it."""
    spacing = spacing_in_dents(parse_dents("4 times (3), 6"))

    assert "3, 3, 3, 3, 6" == print_sets(dents_of(spacing, usual=3) or ())


def test_all_that_a_record_holds(shelf: Shell) -> None:
    """Floating selvedges, the weave and the tags stand in the text of a draft, on screen and in a file."""
    shelf("draft", "whole", "--to", "whole.txt")
    shelf("draft", "whole", "--change", "lift-plan", "--to", "changed.txt")
    text, changed = (Path(name).read_text(encoding="utf-8") for name in ("whole.txt", "changed.txt"))

    for line in ("floating selvedges: 1", "weave: a weft of my own", "tags: gifts, two words", "profile: 2 A, B"):
        assert f"\n{line}\n" in text
        assert f"\n{line}\n" in shelf("draft", "whole").output
    assert "\nfloating selvedges: 1\n" in changed
    assert "\nends in dents: 2, 1, none, 3\n" in changed
    assert "\nweft order: pattern, tabby\n" in changed


def test_a_supplementary_warp(shelf: Shell) -> None:
    """It is said what the ground weaves without its supplementary ends, and their order stands in the text."""
    shelf.write("drafts/spots", SUPPLEMENTARY)
    shelf("draft", "spots", "--change", "mirrored", "--to", "spots.txt")

    assert "Without its supplementary ends: plain weave.\n" in shelf("draft", "spots").output
    assert "\nwarp order: 2 ground, supplementary, 2 ground\n" in Path("spots.txt").read_text(encoding="utf-8")
    assert "plain weave" == json.loads(shelf("draft", "spots", "--json").stdout)["ground_weave"]
    assert None is json.loads(shelf("draft", "whole", "--json").stdout)["ground_weave"]


SPACED = """\
[WIF]
Version=1.1
[WEAVING]
Rising Shed=true
Shafts=2
Treadles=2
[WARP]
Threads=2
Units=inches
Spacing=0.05
[WEFT]
Threads=2
Units=inches
Spacing=0.1
[THREADING]
1=1
2=2
[TIEUP]
1=1
2=2
[TREADLING]
1=1
2=2
"""


@pytest.mark.parametrize(
    ("words", "mm", "setts_from"),
    [
        ((), (2.54, 1.27), "file"),
        (("--change", "turned"), (1.27, 2.54), "file"),
        (("--sett", "10"), (2.54, 2.54), "typed"),
        (("--sett", "20", "--beat", "5"), (5.08, 1.27), "typed"),
    ],
)
def test_the_sett_of_a_file(
    shelf: Shell, words: tuple[str, ...], mm: tuple[float, float], setts_from: str
) -> None:
    """Floats have lengths by the file's spacing, 20 ends and 10 picks to the inch, where no sett is typed."""
    Path("spaced.wif").write_text(SPACED, encoding="utf-8")
    found = json.loads(shelf("draft", "spaced.wif", *words, "--json").stdout)
    long = {one["system"]: one["mm"] for one in found["floats"]}

    assert (*mm, setts_from) == (long["warp"], long["weft"], found["setts_from"])


def test_the_sett_of_a_file_is_said(shelf: Shell) -> None:
    """In words it is said that the file's spacing was taken."""
    Path("spaced.wif").write_text(SPACED, encoding="utf-8")

    assert "The file spaces its threads at 20/in and 10/in" in shelf("draft", "spaced.wif").output
    assert "The file spaces" not in shelf("draft", "spaced.wif", "--sett", "12").output


@pytest.mark.parametrize(
    ("change", "title"),
    [
        ("two-feet", "Twill, for two feet"),
        ("picks-reversed", "Twill, trodden backwards"),
        ("other-shed", "Twill, for a sinking shed"),
        ("lift-plan", "Twill, by a lift plan"),
        ("fewest-shafts", "Twill, on the fewest shafts"),
    ],
)
def test_titles(shelf: Shell, change: str, title: str) -> None:
    """The title says in words what was changed."""
    tie_up = "1+2, 2+3, 3+4, 4+1"
    shelf.write("drafts/twill", TWILL.format(title="Twill", threading="1-4", tie_up=tie_up, treadling="1-4"))

    assert title == shelf("draft", "twill", "--change", change).output.splitlines()[0]


def turned(shelf: Shell, header: str) -> tuple[str, str]:
    """Tie-up and treadling, or the lift plan, of a draft with warp and weft exchanged."""
    shelf.write("drafts/one", f"---\n{header}\n---\n")
    shelf("draft", "one", "--change", "turned", "--to", "one.wif")
    read = read_wif(Path("one.wif").read_bytes(), "one.wif").draft
    Path("one.wif").unlink()
    assert read is not None
    if read.tie_up is None:
        return print_sets(read.picks), ""
    return print_sets(read.tie_up), print_sets(read.treadling or ())


def test_turned_for_treadles(shelf: Shell) -> None:
    """Turned, a treadled draft has treadles in the order of their first use, the two that weave plain last.

    Worked by hand: an end on shaft 1 is up in picks 1 and 4, so that as a pick it lies under ends 2 and 3.
    """
    twill = turned(shelf, "threading: 1-4\ntie_up: 1+2, 2+3, 3+4, 4+1\ntreadling: 1-4")
    with_tabby = turned(shelf, "threading: 5, 1-4, 6\ntie_up: 1+2+5, 2+3+6, 3+4+5, 4+1+6\ntreadling: 1-4")

    assert ("2+3, 3+4, 1+4, 1+2", "1-4") == twill
    assert ("2+3, 3+4, 1+4, 1+2, 2+4, 1+3", "5, 1-4, 6") == with_tabby


def test_turned_beyond_a_loom(shelf: Shell) -> None:
    """What would take more than fourteen treadles, or came by a lift plan, is thrown by a lift plan."""
    lifts = turned(shelf, "threading: 1, 2\nlift_plan: 1, 2")
    point = turned(shelf, f"threading: 1-15\ntie_up: {', '.join(map(str, range(1, 16)))}\ntreadling: 1-15")

    assert ("2, 1", "") == lifts
    assert "" == point[1]


def test_other_systems_letters(shelf: Shell) -> None:
    """That a file was read in another system's letters is said once."""
    Path("letters.wif").write_bytes(SPACED.replace("[WEAVING]", "[TEXT]\nTitle=Tr\u00e4d\n[WEAVING]").encode("cp1252"))

    assert 1 == shelf("draft", "letters.wif").output.count("Windows-1252")


def test_dents_that_nobody_counted(shelf: Shell) -> None:
    """Of a file that has no dents they are told from the room of each end, and it is said that this is a guess."""
    file = SPACED.replace("[WEFT]", "[WARP SPACING]\n1=0.05\n2=0.1\n[WEFT]")
    Path("crammed.wif").write_text(file, encoding="utf-8")
    told = shelf("draft", "crammed.wif", "--to", "crammed.md").stderr

    assert "ends_in_dents is by the room of each end" in told
    assert "\nends_in_dents: " in Path("crammed.md").read_text(encoding="utf-8")
