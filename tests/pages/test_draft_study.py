"""What a draft's page tells: likes, heddles, files, sides of layers; and where drafts are found."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from journal_tools.checking import woven_draft
from journal_tools.drafts import drawdown
from journal_tools.interchange import read_wif
from journal_tools.pages.archive import Archive
from journal_tools.pages.draft_page import draft_view
from journal_tools.pages.draft_part import DOTTED, colour_places, thread_hexes
from journal_tools.pages.faces import back_of, face_of
from journal_tools.pages.list_pages import list_view
from journal_tools.pages.swatch import own_unevenness, swatch_of
from journal_tools.pictures.colour import plain_tone
from journal_tools.pictures.store import PictureStore
from tests.ledger.desk import write

TWILL = "threading: 1-4\ntie_up: 1+2, 2+3, 3+4, 4+1\ntreadling: 1-4\nweave: 2/2 twill"
DRAFTS = {
    "drafts__twill": f"title: Twill\n{TWILL}",
    "drafts__another": "title: Another name\nthreading: 2 times (4-1)\nlift_plan: 1+4, 4+3, 3+2, 2+1",
    "drafts__plain": "title: Plain\nthreading: 1, 2\ntie_up: 1, 2\ntreadling: 1, 2\ntags:\n  - easy",
    "drafts__layers": "title: Layers\nupper:\n  threading: 1, 2\n  lift_plan: 1, 2\nlower:\n  threading: 1-4\n"
    "  lift_plan: 1+2, 2+3, 3+4, 4+1",
    "drafts__broken": "title: Broken\nthreading: 1-4",
}


@pytest.fixture
def archive(tmp_path: Path) -> Archive:
    """Five drafts: a twill under two names, plain weave, two layers, and one that cannot be woven."""
    return Archive(write(tmp_path / "journal", **DRAFTS), PictureStore(tmp_path / "pictures"))


def test_the_same_cloth_under_two_names(archive: Archive) -> None:
    """Mirrored, threaded twice over and lifted by hand, a twill is found as the same cloth as another."""
    view = draft_view(archive, archive.journal.drafts["twill"])
    [likes] = [table for table in view.tables if table.title == "Patterns like this one"]

    assert ("Another name", "drafts/another.html") == (likes.rows[0][0].text, likes.rows[0][0].href)
    same = "the same cloth, but for its colours, where it begins, how it is turned or which side is up"
    assert same == likes.rows[0][1].text


def test_heddles_for_a_width(archive: Archive) -> None:
    """At a guessed 20 to the inch 10 in of a straight draw take 50 heddles on each of four shafts."""
    view = draft_view(archive, archive.journal.drafts["twill"])
    [heddles] = [table for table in view.tables if table.title == "Heddles"]

    assert [("1", "1", "50", "100", "150")] == [tuple(cell.text for cell in row) for row in heddles.rows[:1]]
    assert "a guess" in heddles.note


def test_heddles_at_the_reed(tmp_path: Path) -> None:
    """Heddles are counted by the ends that the newest warp had in the reed, not by those of the washed cloth."""
    warp = "title: Cloth\ndraft: twill\nreed: 12/in\nsley: 2\nin_reed: 20\nbeat: 22/in"
    journal = write(tmp_path / "journal", drafts__twill=DRAFTS["drafts__twill"], warps__cloth=warp)
    known = Archive(journal, PictureStore(tmp_path / "pictures"))
    view = draft_view(known, journal.drafts["twill"])
    [heddles] = [table for table in view.tables if table.title == "Heddles"]

    assert [("1", "1", "60", "120", "180")] == [tuple(cell.text for cell in row) for row in heddles.rows[:1]]
    assert "At 24 ends to the inch in the reed, as the newest warp in it was sleyed." == heddles.note


def test_a_thicker_pattern_shuttle(tmp_path: Path) -> None:
    """Of pattern and tabby picks in turn the pattern's are drawn thicker, on both sides; thickness told stands."""
    text = f"title: Blocks\n{TWILL}\nweft_order: pattern, tabby"
    woven = woven_draft(write(tmp_path / "journal", drafts__blocks=text).drafts["blocks"])
    uneven = own_unevenness(woven)
    back = back_of(drawdown(woven), ("warp",), ("weft",), uneven)

    assert (1.4, 0.6) == uneven.weft_thickness
    assert uneven.weft_thickness * 2 == back.uneven.weft_thickness
    assert (2.0,) == own_unevenness(replace(woven, weft_thickness=(2.0,))).weft_thickness


def test_files_to_take_away(archive: Archive) -> None:
    """The interchange file in the site is the draft."""
    view = draft_view(archive, archive.journal.drafts["twill"])
    read = read_wif(archive.assets["drafts/twill.wif"].read_bytes(), "twill.wif")

    assert ["drafts/twill.wif"] == [one.href for one in view.files if one.href.endswith("wif")]
    assert archive.patterns.woven["twill"] == read.draft


def test_a_draft_that_cannot_be_woven(archive: Archive) -> None:
    """Its page stands, with nothing told that nobody can know."""
    view = draft_view(archive, archive.journal.drafts["broken"])

    assert ((), (), ()) == (view.said, view.files, view.pieces)


def test_where_drafts_are_found(archive: Archive) -> None:
    """The list has a line for each draft that can be woven, by shafts, weave, float, repeat and tag."""
    [table] = list_view(archive, "drafts").tables
    lines = {row[0].text: [cell.text for cell in row[1:]] for row in table.rows}

    assert {"Twill", "Another name", "Plain", "Layers"} == set(lines)
    assert ["4", "4", "2/2 twill", "2", "4", "4", "–", ""] == lines["Twill"]
    assert "easy" == lines["Plain"][-1]
    [plain] = [card for card in list_view(archive, "drafts").cards if card.title == "Plain"]
    assert "easy" in plain.found_by


def test_two_sides_of_layers(archive: Archive) -> None:
    """The face of two layers is the upper one alone, the back the lower one turned over, each in its colours."""
    over = drawdown(archive.patterns.woven["layers"])
    warp, weft = ("top", "below"), ("top", "below")
    face, back = face_of(over, warp, weft), back_of(over, warp, weft)
    twill = drawdown(archive.patterns.woven["twill"])

    assert ({"top"}, {"top"}) == (set(face.warp), set(face.weft))
    assert ({"below"}, {"below"}) == (set(back.warp), set(back.weft))
    assert np.array_equal(np.indices(face.over.shape).sum(axis=0) % 2 == 0, face.over)
    assert np.array_equal(~twill[:, ::-1], back.over)


def test_tones_of_a_tabby_yarn(tmp_path: Path) -> None:
    """A yarn that weaves tabby alone has the warp's tone, the pattern yarn the tone that is seen on it."""
    text = f"title: Blocks\n{TWILL}\nweft_order: pattern, tabby\nweft_colours: slate, bone"
    journal = write(tmp_path / "journal", drafts__blocks=text)
    woven = woven_draft(journal.drafts["blocks"])

    assert {"": 0, "slate": 1, "bone": 0} == colour_places(woven)
    assert {"": 0, "slate": 1} == colour_places(replace(woven, weft_colours=("slate",)))
    assert {"bone": 0, "slate": 1} == colour_places(replace(woven, warp_colours=("bone",)))


def test_what_a_draft_repeats(tmp_path: Path) -> None:
    """A draft written balanced, with its first end again at last, is told by its repeat and by what is written."""
    text = "title: Point\nthreading: 1-4, 3-1, 2-4, 3-1\ntie_up: 1+2, 2+3, 3+4, 4+1\ntreadling: 1-4"
    journal = write(tmp_path / "journal", drafts__point=text)
    known = Archive(journal, PictureStore(tmp_path / "pictures"))
    facts = {fact.label: fact.values[0].text for fact in draft_view(known, journal.drafts["point"]).draft.facts}

    assert "6 ends, 4 picks; written: 13 ends, 4 picks" == facts["repeat"]
    assert "warp 2, weft 3" == facts["longest float"]


def test_a_draft_in_its_own_colours(tmp_path: Path) -> None:
    """A colour that a yarn of the shelf has is drawn, and written to the file, as it is there."""
    journal = write(
        tmp_path / "journal",
        drafts__twill=f"title: Twill\n{TWILL}\nwarp_colours: rust\nweft_colours: bone, unheard-of",
        yarns__wool="title: Wool\nnumber: 2/8\nfibre: wool\ncolours:\n  rust: b05030\n  bone: efe8d8",
    )
    known = Archive(journal, PictureStore(tmp_path / "pictures"))
    view = draft_view(known, journal.drafts["twill"])
    read = read_wif(known.assets["drafts/twill.wif"].read_bytes(), "twill.wif")

    assert (("b05030",), ("efe8d8", plain_tone(2))) == thread_hexes(known, known.patterns.woven["twill"])
    assert "in its own colours" == view.draft.cloth[0].caption
    assert {"b05030", "efe8d8"} <= set(read.colours.values())


def test_the_card_of_the_stretch_that_used_it(tmp_path: Path) -> None:
    """Among the warps of a draft a warp of two stretches is shown by the one that was woven in it."""
    warp = (
        "title: Two cloths\nstretches:\n  - name: plain\n    draft: plain\n    pieces:\n      - washed: 10 x 20\n"
        "  - name: twill\n    draft: twill\n    pieces:\n      - washed: 9 x 18"
    )
    journal = write(tmp_path / "journal", warps__two=warp, **DRAFTS)
    known = Archive(journal, PictureStore(tmp_path / "pictures"))
    [shown] = draft_view(known, journal.drafts["twill"]).cards

    assert "2/2 twill" == shown.weave
    assert "9 × 18 in" == shown.figures[0].text


LONG = "threading: 9 times (1-8)\ntie_up: 1+2, 3+4, 5+6, 7+8\ntreadling: 70 times (1-4)"


def test_a_long_draft_is_drawn_in_pieces(tmp_path: Path) -> None:
    """What is written again and again is drawn once; what is too long for one drawing in rows of pieces."""
    again = write(tmp_path / "again", drafts__long=f"title: Long\n{LONG}")
    threads = ", ".join(str(1 + end * end % 8) for end in range(70))
    once = write(
        tmp_path / "once",
        drafts__long=f"title: Long\nthreading: {threads}, 8\ntie_up: 1-4, 5+6, 7+8, 2-6\ntreadling: 1-4".replace(
            "1-4, 5+6", "1+2+3+4, 5+6"
        ).replace("2-6", "2+3+4+5+6"),
    )
    views = [
        draft_view(Archive(journal, PictureStore(tmp_path / "pictures")), journal.drafts["long"])
        for journal in (again, once)
    ]

    assert () == views[0].pieces
    assert [["ends 1 to 64, picks 1 to 4", "ends 65 to 71, picks 1 to 4"]] == [
        [piece.caption for piece in row] for row in views[1].pieces
    ]


def test_floats_too_long_are_marked_in_the_drawing(tmp_path: Path) -> None:
    """At a known sett a float longer than handled cloth bears has dots, and the drawing says so; else not."""
    draft = "title: Long floats\nthreading: 1, 2\nlift_plan: 1, 9 times (2), 1\n"
    warp = "title: Cloth\ndraft: floats\nsett: 10/in\nbeat: 10/in\nin_reed: 10"
    marked = write(tmp_path / "marked", drafts__floats=draft, warps__cloth=warp)
    bare = write(tmp_path / "bare", drafts__floats=draft)
    captions = [
        draft_view(Archive(journal, PictureStore(tmp_path / "pictures")), journal.drafts["floats"]).draft.drawdown
        for journal in (marked, bare)
    ]

    assert [DOTTED, ""] == [picture.caption for picture in captions if picture is not None]


def test_a_fine_cloth_has_no_picture_to_print(tmp_path: Path) -> None:
    """Silk at 160 to the inch is printed in finer pixels; at 2,000 no real size is offered, and nothing breaks."""
    offered = {}
    for sett in (160, 2_000):
        warp = f"title: Cloth\ndraft: twill\nsett: {sett}/in\nbeat: {sett}/in\nin_reed: 2"
        journal = write(tmp_path / str(sett), drafts__twill=f"title: Twill\n{TWILL}", warps__cloth=warp)
        known = Archive(journal, PictureStore(tmp_path / "pictures"))
        view = draft_view(known, journal.drafts["twill"])
        offered[sett] = [file.text for file in view.files if "real size" in file.text]

    assert {160: ["cloth in its real size, 4 × 3 in (PNG, to print)"], 2_000: []} == offered


def test_a_layer_has_its_share_of_the_threads(tmp_path: Path) -> None:
    """Of a double cloth of 40 ends to the inch the upper layer is drawn with 20."""
    warp = "title: Cloth\ndraft: layers\nlayers: 2\nsett: 40/in\nbeat: 36/in\nin_reed: 10"
    journal = write(tmp_path / "journal", warps__cloth=warp, **DRAFTS)
    swatch = swatch_of(Archive(journal, PictureStore(tmp_path / "p")), journal.warps["cloth"], journal.warps["cloth"])

    assert swatch is not None
    assert (20, 18) == (round(swatch.epi, 6), round(swatch.ppi, 6))


def test_two_stretches_without_a_name(tmp_path: Path) -> None:
    """Each has its own cloth."""
    warp = "title: Cloth\nstretches:\n  - draft: twill\n  - draft: plain"
    journal = write(tmp_path / "journal", warps__cloth=warp, **DRAFTS)
    known, cloth = Archive(journal, PictureStore(tmp_path / "p")), journal.warps["cloth"]
    shapes = [swatch.over.shape for each in cloth.stretches if (swatch := swatch_of(known, cloth, each)) is not None]

    assert [(4, 4), (2, 2)] == shapes


def test_other_yarns_have_colours_enough(tmp_path: Path) -> None:
    """A draft of three colours is shown in a yarn of three, and not in one of two, where two would fall together."""
    journal = write(
        tmp_path / "journal",
        drafts__twill=f"title: Twill\n{TWILL}\nwarp_colours: a, b, c",
        yarns__two="title: Two\nnumber: 2/8\nfibre: wool\ncolours:\n  x: b05030\n  y: efe8d8",
        yarns__three="title: Three\nnumber: 2/8\nfibre: wool\ncolours:\n  x: b05030\n  y: efe8d8\n  z: 203040",
    )
    view = draft_view(Archive(journal, PictureStore(tmp_path / "p")), journal.drafts["twill"])

    assert ["as it would be in Three"] == [one.caption for one in view.draft.cloth if "would" in one.caption]


def test_the_repeat_with_its_colours(tmp_path: Path) -> None:
    """Four dark, four light over a twill of four: the weave comes again after four threads, the cloth after eight."""
    text = f"title: Check\n{TWILL}\nwarp_colours: 4 dark, 4 light\nweft_colours: 4 dark, 4 light"
    journal = write(tmp_path / "journal", drafts__check=text)
    known = Archive(journal, PictureStore(tmp_path / "pictures"))
    facts = {fact.label: fact.values[0].text for fact in draft_view(known, journal.drafts["check"]).draft.facts}

    assert "4 ends, 4 picks; with its colours 8 ends, 8 picks" == facts["repeat"]


def test_a_crammed_draft_is_drawn_crammed(tmp_path: Path) -> None:
    """Ends in dents, and yarns of different numbers in a warp's order, are seen in every picture of the cloth."""
    plain = "title: Plain\nthreading: 8 times (1, 2)\ntie_up: 1, 2\ntreadling: 1, 2"
    yarns = {
        f"yarns__{name}": f"title: {name}\nnumber: {number}\nfibre: wool\ncolours:\n  x: b05030\n  y: efe8d8"
        for name, number in (("thick", "Nm 8/2"), ("thin", "Nm 64/2"))
    }
    journal = write(
        tmp_path / "journal",
        drafts__even=plain,
        drafts__crammed=f"{plain}\nends_in_dents: 2, 4, none, 2",
        warps__cloth="title: Cloth\nyarns:\n  fat: thick x\n  fine: thin y\nwarp:\n  order: 4 fat, 4 fine\ndraft: even",
        **yarns,
    )
    known = Archive(journal, PictureStore(tmp_path / "pictures"))
    even, crammed = ([one.src for one in draft_view(known, journal.drafts[n]).draft.cloth] for n in ("even", "crammed"))
    swatch = swatch_of(known, journal.warps["cloth"], journal.warps["cloth"])

    assert not set(even) & set(crammed)
    assert swatch is not None
    assert [1.0, 0.35] == sorted(set(swatch.uneven.warp_thickness), reverse=True)


def test_floats_of_layers_lie_in_a_layer(archive: Archive) -> None:
    """Plain weave over a 2/2 twill floats over two threads at the most: passing by the other layer is no float."""
    facts = {
        fact.label: fact.values[0].text for fact in draft_view(archive, archive.journal.drafts["layers"]).draft.facts
    }

    assert "warp 2, weft 2" == facts["longest float"]


def test_a_double_width_cloth_is_counted_opened(tmp_path: Path) -> None:
    """400 ends opened to 20 in are 20 to the inch in either layer, and the drawing's floats are reckoned by them."""
    warp = (
        "title: Wide\ndraft: layers\nlayers: 2\nopens: along the left edge\nwarp:\n  ends: 400\nreed: 10/in\nsley: 4\n"
        "in_reed: 10 folded\npicks: 1440\non_loom: 10 x 40 folded\nwashed: 20 x 36\nweft: y"
    )
    journal = write(tmp_path / "journal", warps__wide=warp, **DRAFTS)
    known = Archive(journal, PictureStore(tmp_path / "pictures"))
    swatch = swatch_of(known, journal.warps["wide"], journal.warps["wide"])

    assert swatch is not None
    assert (20, 20) == (round(swatch.epi, 6), round(swatch.ppi, 6))
    found = known.patterns.found["layers"]
    assert [25.4 / 20] * 2 == [
        round(mm / (one.threads or 0), 6)
        for one in found.floats
        if one.system == "weft" and one.layer == 0 and (mm := found.float_mm(one)) is not None
    ]
