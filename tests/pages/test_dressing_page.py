"""What stands on a dressing sheet, in its order and in its words."""

from __future__ import annotations

from pathlib import Path

import pytest

from journal_tools.pages.archive import Archive
from journal_tools.pages.dressing_page import dressing_view
from journal_tools.pages.dressing_view import DressingView, Part
from journal_tools.pictures.store import PictureStore
from tests.dressing.made import LOOM, NAPKINS, POINT
from tests.dressing.test_crammed import CURTAIN, STRIPES
from tests.ledger.desk import write

YARN = "title: Linen 20/2\ncolours: {bone: ebe3d0, slate: 4a5a68}\n"
SATIN = "threading: 1-5\ntie_up: 1, 2, 3, 4, 5\ntreadling: 1, 3, 5, 2, 4\n"
PLAIN = "threading: 1, 2\ntie_up: 1, 2\ntreadling: 1, 2\n"


def view(folder: Path, warp: str, draft: str = POINT, loom: str = LOOM) -> DressingView:
    """A made warp's sheets."""
    journal = write(folder, looms__loom=loom, drafts__point=draft, yarns__linen_20_2=YARN, warps__made=warp)
    return dressing_view(Archive(journal, PictureStore(folder / "pictures")), journal.warps["made"])


def parts(folder: Path, warp: str, draft: str = POINT, loom: str = LOOM) -> dict[str, Part]:
    """The parts of a made warp's sheets, by their keys, in order."""
    return {part.key: part for sheet in view(folder, warp, draft, loom).sheets for part in sheet.parts}


def text(part: Part) -> str:
    """All sentences of a part."""
    return " ".join((*part.large, *part.said))


def test_one_order(tmp_path: Path) -> None:
    """A sheet is wound, sleyed, threaded and tied in this order, woven then, and has a line for date and notes."""
    made = parts(tmp_path, NAPKINS + "weft: bone\nbeat: 20/in\n")

    assert ["winding-1", "sleying", "heddles", "threading", "tie-up", "weaving", "notes"] == list(made)
    assert ("Dressed on", "Notes") == made["notes"].blanks
    assert ("Weft bone, beat 20/in.",) == made["weaving"].large


def test_where_the_first_end_is(tmp_path: Path) -> None:
    """The threading says on which side end 1 is, seen from where."""
    said = parts(tmp_path, NAPKINS)["threading"].said

    assert "End 1 is at the left edge, seen from the front: box 1, the first bout and the first dent are there." in said


def test_ends_without_a_heddle(tmp_path: Path) -> None:
    """Ends that go through no heddle are not counted among those that do, and are no doubled selvedges."""
    bare = POINT.replace("1-4, 3-2", "none, none, 1-4, none, none", 1)
    some = text(parts(tmp_path / "a", "title: N\nwarp: {order: 16 bone}\ndraft: point\n", bare)["threading"])
    none = POINT.replace("1-4, 3-2", "none", 1)
    every = text(parts(tmp_path / "b", "title: N\nwarp: {order: 40 bone}\ndraft: point\n", none)["threading"])

    assert some.startswith("8 ends have heddles, 8 none.")
    assert every.startswith("0 ends have heddles, 40 none.")
    assert "Doubled" not in some + every


def test_ends_that_do_not_add_up(tmp_path: Path) -> None:
    """An order with other ends than the record says is told at the top of the sheet."""
    order = "warp: {order: '50 bone, 50 slate'"

    for number, warp in enumerate((f"ends: 120\n{order}}}", f"{order}, ends: 120}}")):
        asked = view(tmp_path / str(number), f"title: A\nreed: 10/in\nsley: 2\n{warp}\ndraft: point\n").asked
        assert ("The order has 100 ends, the record says 120.",) == asked
    assert () == view(tmp_path / "same", f"title: A\nends: 100\n{order}}}\ndraft: point\n").asked


def test_the_width_that_the_record_says(tmp_path: Path) -> None:
    """80 dents of a 12 are 6 5/8 in: a record that says 6 1/4 in is told that this is 3/8 in less; 6 5/8 in is not."""
    assert "The record says 6 1/4 in in the reed, 3/8 in less than these dents." in text(
        parts(tmp_path / "a", NAPKINS)["sleying"]
    )
    assert "in the reed," not in text(parts(tmp_path / "b", NAPKINS.replace("6 1/4", "6 5/8"))["sleying"])


def test_bands_that_do_not_add_up(tmp_path: Path) -> None:
    """Bands that hold 90 of 100 ends are shown, and it is said that they do."""
    bands = "across: {open: {ends: 40, sley: 2}, close: {ends: 50, sley: 1}}\n"
    sleying = parts(tmp_path, f"title: B\nreed: 10/in\nends: 100\nyarn: linen-20-2\n{bands}")["sleying"]

    assert "open: reed 10/in, 2 in every dent: 40 ends in 20 dents" == sleying.large[0]
    assert "hold 90 of 100 ends" in sleying.said[0]


STRETCHES = "title: L\nwarp: {order: 40 bone}\nreed: 10/in\nstretches: [{name: one, %s}, {name: two, %s}]\n"


@pytest.mark.parametrize(
    ("first", "second", "said"),
    [
        ("sley: 2", "sley: 1", "Two: sley 1 in reed 10/in, 4 in wide."),
        ("sley: 2", "sley: 2", "Two: nothing is threaded or tied anew."),
        ("sley: 2", "beat: 20/in", "Two: how it is sleyed is not written down."),
        (
            "draft: point",
            "draft: nosuch",
            "Two: how it is threaded and tied is not known, since the draft `nosuch` cannot be read or drawn.",
        ),
    ],
)
def test_later_stretches(tmp_path: Path, first: str, second: str, said: str) -> None:
    """What a later stretch takes is told with a draft and without, and what nobody knows of it too."""
    assert (said,) == parts(tmp_path, STRETCHES % (first, second))["later"].large


def test_a_later_tie_up_is_drawn(tmp_path: Path) -> None:
    """A later stretch with another tie-up has it drawn; a third one tied as the first refers to that."""
    twill = "{name: %s, weave: 2/2 twill}"
    three = f"stretches: [{twill % 'one'}, {{name: two, draft: point}}, {twill % 'three'}]\n"
    made = parts(tmp_path, "title: L\nwarp: {order: 40 bone}\n" + three)
    card = made["tie-up-for-2"].card
    assert card is not None

    assert "Tie-up for two" == made["tie-up-for-2"].title
    assert ("shaft 4", ("", "", "4", "4")) == card.rows[0]
    assert "tie-up-for-3" not in made
    assert "tie the treadles as drawn below" in made["later"].large[0]
    assert "tie the treadles as for one" in made["later"].large[1]


def test_crammed_dents(tmp_path: Path) -> None:
    """Dents are told in runs, with a box for each run of every round, the average sett and that of crammed dents."""
    sleying = parts(tmp_path, CURTAIN, STRIPES)["sleying"]
    (line,) = sleying.lines

    assert ["8 dents of 2", "4 dents of 4", "2 dents empty", "8 dents of 2", "2 dents of 4"] == [
        group.words for group in line.groups
    ]
    assert (5, 25, 280) == (len(line.rows), line.rows[-1].boxes[-1], line.rows[-1].to)
    assert "True sett 28/in on the average, empty dents among them: 24/in at 2 a dent and 48/in" in text(sleying)
    assert "do not agree" not in text(sleying)


def test_dents_that_do_not_agree(tmp_path: Path) -> None:
    """Where ends in dents and threading do not come out together, both counts are told."""
    added = STRIPES + "accents:\n  - {end: 13, shaft: 1, way: added, colour: rust}\nwarp_colours: bone\n"

    assert "These do not agree: the ends in dents hold 56, and the threading's repeat has 57" in text(
        parts(tmp_path, CURTAIN, added)["sleying"]
    )


def test_a_missing_sleying_is_told(tmp_path: Path) -> None:
    """A sheet without a sleying says that it is missing, and what would tell it."""
    sleying = parts(tmp_path, "title: A\nwarp: {order: 40 bone}\ndraft: point\n")["sleying"]

    missing = "How it is sleyed is missing: in the warp's record neither `reed` nor `sley` nor `sett` is named."
    assert (missing,) == sleying.large


def test_one_unit(tmp_path: Path) -> None:
    """A warp in centimetres has its setts and its raddle in them; the reed has its own mark beside."""
    metric = NAPKINS.replace("in_reed: 6 1/4", "units: cm\nin_reed: 16")
    sleying = text(parts(tmp_path, metric)["sleying"])

    assert "Reed 12/in (4.7/cm), 1-2 in the dents" in sleying
    assert "True sett 7.1/cm: 1 1/2 ends a dent." in sleying
    assert "Raddle with spaces of 1 cm:" in sleying


def test_one_end_a_dent(tmp_path: Path) -> None:
    """One end in every dent is `1 end a dent`."""
    assert "True sett 12/in: 1 end a dent." in text(parts(tmp_path, NAPKINS.replace("1-2", "1"))["sleying"])


def test_a_floating_selvedge_is_asked_for(tmp_path: Path) -> None:
    """A satin, whose weft misses the outermost end, is reminded of floating selvedges; with them it is not."""
    bare = NAPKINS.replace("  floating_selvedges: bone\n", "")

    assert "put a floating selvedge at each edge" in text(parts(tmp_path / "a", bare, SATIN)["threading"])
    assert "put a floating selvedge at each edge" not in text(parts(tmp_path / "b", NAPKINS, SATIN)["threading"])


def test_more_shafts_before_moved_heddles(tmp_path: Path) -> None:
    """Plain weave crowded on two shafts is first offered four, and the moving of heddles after that."""
    said = parts(tmp_path, "title: P\nloom: loom\nwarp: {order: 200 bone}\ndraft: point\n", PLAIN)["heddles"].said

    assert "Thread straight over 4 shafts, 50 heddles each at most, and tie 1+3 for 1, 2+4 for 2." == said[0]
    assert said[1].startswith("Or move 40 heddles to shaft 1")


def test_several_repeats_to_a_box(tmp_path: Path) -> None:
    """Repeats that share a box stand once, with how many they are."""
    straight = POINT.replace("1-4, 3-2", "1-4", 1)
    (line,) = parts(tmp_path, "title: S\nwarp: {order: 544 bone}\ndraft: point\n", straight)["threading"].lines

    assert ("34 times", "4 times (1 2 3 4)") == (line.times, line.groups[0].words)
    assert "16 ends each time, 4 repeats to a box" == line.note
    assert 34 == sum(len(row.boxes) for row in line.rows)


def test_boxes_match_what_is_printed(tmp_path: Path) -> None:
    """A repeat in several groups has a box for each group that is printed."""
    blocks = POINT.replace("1-4, 3-2", "6 times (1, 2), 3 times (3, 4), 2 times (1, 2), 3 times (3, 4)", 1)
    (line,) = parts(tmp_path, "title: B\nwarp: {order: 140 bone}\ndraft: point\n", blocks)["threading"].lines

    assert [len(line.groups)] * 5 == [len(row.boxes) for row in line.rows]
    assert "1 2 1 2 1 2" == line.groups[0].words == line.groups[1].words


def test_colours_under_the_groups(tmp_path: Path) -> None:
    """Colours that repeat with the threading stand with its groups; others are told by box and end."""
    by_fours = POINT.replace("1-4, 3-2", "1-4", 1)
    order = "title: C\nwarp: {order: '10 times (4 bone, 4 slate)'}\ndraft: point\n"
    (line,) = parts(tmp_path / "a", order, by_fours)["threading"].lines
    told = parts(tmp_path / "b", "title: C\nwarp: {order: '8 bone, 10 slate, 6 bone'}\ndraft: point\n")["threading"]

    assert ["4 bone, 4 slate"] == [group.colours for group in line.groups]
    assert ("1: 8 bone", "2·3: 10 slate", "4: 6 bone") == told.begins


def test_every_tie_up_says_what_for(tmp_path: Path) -> None:
    """A piece in another weave has its own tie-up, and each says which weave and which pieces it is for."""
    warp = "title: S\nloom: loom\nwarp: {order: 80 bone}\nweave: plain weave\npieces:\n"
    made = parts(tmp_path, warp + "  - name: a\n  - {name: b, weave: 2/2 twill}\n")

    assert "Tie-up for plain weave (a)" == made["tie-up"].title
    assert "Tie-up for 2/2 twill (b)" == made["tie-up-2"].title


def test_spools_of_a_whole_bout(tmp_path: Path) -> None:
    """In all, a whole bout at once takes no more spools than the largest bout has ends."""
    table = parts(tmp_path, "title: W\nwarp: {order: '40 bone, 40 slate'}\n")["winding-1"].table
    assert table is not None

    assert ["40", "40", "40 at most"] == [row[-1].text for row in table.rows]
