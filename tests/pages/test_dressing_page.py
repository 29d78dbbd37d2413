"""What stands on a dressing sheet, in its order and in its words."""

from __future__ import annotations

from pathlib import Path

from journal_tools.pages.archive import Archive
from journal_tools.pages.dressing_page import dressing_view
from journal_tools.pages.dressing_view import Part
from journal_tools.pictures.store import PictureStore
from tests.dressing.made import LOOM, NAPKINS, POINT
from tests.dressing.test_crammed import CURTAIN, STRIPES
from tests.ledger.desk import write

YARN = "title: Linen 20/2\ncolours: {bone: ebe3d0, slate: 4a5a68}\n"
SATIN = "threading: 1-5\ntie_up: 1, 2, 3, 4, 5\ntreadling: 1, 3, 5, 2, 4\n"
PLAIN = "threading: 1, 2\ntie_up: 1, 2\ntreadling: 1, 2\n"


def parts(folder: Path, warp: str, draft: str = POINT, loom: str = LOOM) -> dict[str, Part]:
    """The parts of a made warp's sheets, by their keys, in order."""
    journal = write(folder, looms__loom=loom, drafts__point=draft, yarns__linen_20_2=YARN, warps__made=warp)
    view = dressing_view(Archive(journal, PictureStore(folder / "pictures")), journal.warps["made"])
    return {part.key: part for sheet in view.sheets for part in sheet.parts}


def text(part: Part) -> str:
    """All sentences of a part."""
    return " ".join((*part.large, *part.said))


def test_one_order(tmp_path: Path) -> None:
    """A sheet is wound, sleyed, threaded and tied in this order, woven then, and has a line for date and notes."""
    made = parts(tmp_path, NAPKINS + "weft: bone\nbeat: 20/in\n")

    assert ["winding-1", "sleying", "heddles", "threading", "tie-up", "weaving", "notes"] == list(made)
    assert ("Dressed on", "Notes") == made["notes"].blanks
    assert ("Weft bone, beat 20/in.",) == made["weaving"].large


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
