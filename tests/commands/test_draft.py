"""`draft`: a draft looked through, changed and turned into other files, as a weaver types it."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from PIL import Image

from journal_tools.interchange import read_wif
from journal_tools.pictures.png import png_size
from tests.commands.shell import Shell

TWILL = "---\ntitle: Straight four\nthreading: 1-4\ntie_up: 1+2, 2+3, 3+4, 4+1\ntreadling: 1-4\nweave: {weave}\n---\n"


@pytest.fixture
def shelf(tenterhook: Shell, monkeypatch: pytest.MonkeyPatch) -> Shell:
    """One twill, in the folder that one stands in."""
    tenterhook.write("drafts/straight-four", TWILL.format(weave="2/2 twill"))
    monkeypatch.chdir(tenterhook.folder)
    return tenterhook


def test_in_words(shelf: Shell) -> None:
    """It says the threading, draws the cloth, and names weave, floats with their length, and plain weave."""
    said = shelf("draft", "straight-four", "--sett", "20").output

    assert said.startswith(
        "Straight four\nweave: 2/2 twill\nthreading: 1-4\ntie-up: 1+2, 2+3, 3+4, 4+1\ntreadling: 1-4\n\n"
        ". . . 4   . . x x\n. . 3 .   . x x .\n. 2 . .   x x . .\n1 . . .   x . . x\n\n"
        "████      1 . . .\n  ████    . 2 . .\n    ████  . . 3 .\n██    ██  . . . 4\n\n"
        "End 1 is at the left and pick 1 at the top; on the loom the cloth grows upwards.\n\n"
    )
    assert "2/2 twill, its lines rising to the right as it is woven, first end at the left, balanced.\n" in said
    assert "Longest float of the warp: over 2 picks, 0.10 in at 20/in, on both sides, ends 1, 2, 3 and 4.\n" in said
    assert "Plain weave can be woven on this threading: lift 1+3 and 2+4 in turn.\n" in said


def test_for_programs(shelf: Shell) -> None:
    """With --json it is one object, floats in mm, shafts counted from 1."""
    found = json.loads(shelf("draft", "Straight four", "--sett", "20", "--beat", "10", "--json").output)

    assert (True, "together", "2/2 twill") == (found["hangs_together"], found["verdict"], found["weave"])
    assert 5.08 == next(one["mm"] for one in found["floats"] if one["system"] == "warp")
    assert [[1, 3], [2, 4]] == found["plain_weave_lifts"]


def test_a_record_outside_the_journal(shelf: Shell) -> None:
    """A path to a file is that file, though the journal has a draft of its name, and its own problems are told."""
    outside = shelf.folder / "elsewhere"
    outside.mkdir()
    text = TWILL.format(weave="2/2 twill").replace("Straight four", "Clean twill")
    (outside / "straight-four.md").write_text(text.replace("weave:", "weeve:"), encoding="utf-8")
    (outside / "broken.md").write_text(text.replace("threading: 1-4", "threading: 12 x (1-4), 1;"), encoding="utf-8")
    read = shelf("draft", "elsewhere/straight-four.md")
    broken = shelf("draft", "elsewhere/broken.md")

    assert "\nClean twill\nthreading: 1-4\n" in read.output
    assert read.output.startswith("elsewhere/straight-four.md:6 to mend weeve:")
    assert (1, "elsewhere/broken.md:3 to mend threading:") == (broken.exit_code, broken.stdout[:40])
    assert "A draft wants a threading" not in broken.output
    assert "It can be drawn once that is mended." in broken.stderr


@pytest.mark.parametrize(
    "typed", ["drafts/straight-four.md", "drafts/straight-four", "entries/drafts/straight-four.md"]
)
def test_a_record_by_its_path(shelf: Shell, typed: str) -> None:
    """A draft of the journal is found by its path too, as messages write it or from where one stands."""
    assert shelf("draft", typed).output == shelf("draft", "straight-four").output


def test_problems_of_a_record_come_first(shelf: Shell) -> None:
    """What is wrong in a record is told with its line before anything that follows from it."""
    shelf.write("drafts/slip", TWILL.format(weave="2/2 twill").replace("threading: 1-4", "threading: 3 times 1-4, 1"))
    said = shelf("draft", "slip")
    [checked] = [line for line in shelf("check").output.splitlines() if "drafts/slip.md" in line]

    assert (1, checked) == (said.exit_code, said.stdout.splitlines()[0])
    assert "A draft wants a threading" not in said.output + said.stderr


def test_a_long_list_of_drafts(shelf: Shell) -> None:
    """Of many drafts those that are nearly called so are named, else ten and how many more there are."""
    for number in range(20):
        shelf.write(f"drafts/other-{number:02d}", TWILL.format(weave="2/2 twill"))
    nothing, near = (shelf("draft", typed).stderr for typed in ("zzz", "other-7"))

    assert nothing.endswith("other-08, other-09, and 11 more.\n")
    assert near.endswith("Did you mean other-17, other-07 or other-19?\n")


def test_said_to_be_another(shelf: Shell) -> None:
    """A draft that does not weave what its record says is asked about."""
    shelf.write("drafts/straight-four", TWILL.format(weave="plain weave"))

    assert "It is said to be plain weave, and what it weaves is 2/2 twill." in shelf("draft", "straight-four").output


def test_floats_that_the_use_does_not_bear(shelf: Shell) -> None:
    """Floats longer than --bears are warned of."""
    said = shelf("draft", "straight-four", "--sett", "10", "--bears", "1/8 in").output

    assert "Some floats are longer than the 1/8 in that its use bears; they are marked in the drawing." in said
    assert "\n▓▓▓▓░░░░  1 . . .\n░░▓▓▓▓░░  . 2 . .\n" in said
    assert "▓▓ (warp) and ░░ (weft) are crossings in a float that is longer than its use bears." in said
    assert "▓" not in shelf("draft", "straight-four", "--sett", "10").output


def test_floats_without_a_sett(shelf: Shell) -> None:
    """How long a float may be says nothing without a sett, and that is told."""
    assert "with --bears goes --sett" in shelf("draft", "straight-four", "--bears", "1/8 in").stderr
    assert "" == shelf("draft", "straight-four", "--bears", "1/8 in", "--sett", "10").stderr


def test_a_dash_for_a_plus(shelf: Shell) -> None:
    """The likely cause of threads that nothing binds is told with the draft too."""
    shelf.write("drafts/dash", TWILL.format(weave="2/2 twill").replace("1+2, 2+3, 3+4, 4+1", "1-2, 2-3, 3-4, 1-4"))

    assert "`1-2` is two treadles, `1+2` one treadle on two shafts." in shelf("draft", "dash").output


def test_marked_in_the_picture(shelf: Shell) -> None:
    """Crossings in floats longer than --bears have a dot in the picture, and the picture has its numbers."""
    shelf("draft", "straight-four", "--to", "plain.png", "--sett", "10")
    shelf("draft", "straight-four", "--to", "dotted.png", "--sett", "10", "--bears", "1/8 in")
    shelf.write("drafts/nine", "---\nthreading: 1-4, 1-4, 1\nlift_plan: 1+2, 2+3\n---\n")
    shelf("draft", "nine", "--to", "nine.png")
    plain, dotted = (picture(Path(name)) for name in ("plain.png", "dotted.png"))

    assert plain.size == dotted.size
    assert 16 == sum(
        plain.getpixel((3 + 7 * end, 38 + 7 * pick)) != dotted.getpixel((3 + 7 * end, 38 + 7 * pick))
        for end in range(4)
        for pick in range(4)
    )
    assert (4 + 1 + 2) * 7 + 1 < picture(Path("nine.png")).size[1]


def picture(path: Path) -> Image.Image:
    """A picture with its colours as they are seen."""
    with Image.open(path) as opened:
        return opened.convert("RGB")


def test_to_a_file_and_back(shelf: Shell) -> None:
    """Turned and written as an interchange file, it is read again; as a record, it is one of the journal's."""
    shelf("draft", "straight-four", "--change", "mirrored", "--to", "mirror.wif")
    read = read_wif(Path("mirror.wif").read_bytes(), "mirror.wif")
    assert read.draft is not None
    shelf("draft", "mirror.wif", "--to", "entries/drafts/mirror.md")

    assert [frozenset({shaft}) for shaft in (4, 3, 2, 1)] == list(read.draft.threading)
    assert "threading: 4-1\n" in Path("entries/drafts/mirror.md").read_text(encoding="utf-8")
    assert 0 == shelf("check").exit_code
    assert "falling to the right" in shelf("draft", "mirror").output


FRIENDS = """\
[WIF]
Version=1.1
[TEXT]
Title=A friend's
[WEAVING]
Rising Shed=false
Shafts=2
Treadles=2
[WARP]
Threads=2
Units=centimeters
Spacing=0.1
[WEFT]
Threads=2
Units=centimeters
Spacing=0.2
[THREADING]
1=1
2=2
[TIEUP]
1=1
2=2
[TREADLING]
1=1
2=1
[WARP SYMBOLS]
1=a
[WEFT SYMBOLS]
1=b
[PRIVATE FRIEND]
liked=yes
"""


def changed_file(shelf: Shell, change: str) -> tuple[str, str]:
    """The friend's file with a change, as text, and what was told of it."""
    Path("friend.wif").write_text(FRIENDS, encoding="utf-8")
    told = shelf("draft", "friend.wif", "--change", change, "--to", f"{change}.wif").stderr
    return Path(f"{change}.wif").read_text(encoding="utf-8"), told


def test_what_stands_beside_a_turned_draft(shelf: Shell) -> None:
    """Turned, a file's setts change places, its title says so, and what went thread by thread is left out and told."""
    text, told = changed_file(shelf, "turned")

    assert "[TEXT]\nTitle=A friend's, turned\n" in text
    assert "[WARP]\nThreads=2\nUnits=Centimeters\nSpacing=0.2\n" in text
    assert "[WEFT]\nThreads=2\nUnits=Centimeters\nSpacing=0.1\n" in text
    assert "[PRIVATE FRIEND]\nliked=yes\n" in text
    assert "SYMBOLS" not in text
    assert "[WARP SYMBOLS] is left out: it goes by numbers, which mean others now (turned)." in told
    assert "[WEFT SYMBOLS] is left out" in told
    assert "Rising Shed=false" in text


@pytest.mark.parametrize(
    ("change", "kept", "left_out"),
    [("mirrored", ["[WEFT SYMBOLS]"], ["[WARP SYMBOLS]"]), ("picks-reversed", ["[WARP SYMBOLS]"], ["[WEFT SYMBOLS]"]),
     ("lift-plan", ["[WARP SYMBOLS]", "[WEFT SYMBOLS]"], [])],
)  # fmt: skip
def test_what_stands_beside_a_changed_draft(shelf: Shell, change: str, kept: list[str], left_out: list[str]) -> None:
    """Mirrored only the ends are elsewhere, reversed only the picks; by a lift plan neither, and the setts stay."""
    text, told = changed_file(shelf, change)

    assert kept == [each for each in ("[WARP SYMBOLS]", "[WEFT SYMBOLS]") if f"\n{each}\n" in text]
    assert left_out == [line.split(" is left out")[0] for line in told.splitlines()]
    assert text.index("Spacing=0.1") < text.index("Spacing=0.2")


def test_a_file_unchanged(shelf: Shell) -> None:
    """Written again as it is, a file keeps its title."""
    Path("friend.wif").write_text(FRIENDS, encoding="utf-8")
    shelf("draft", "friend.wif", "--to", "again.wif")

    assert "Title=A friend's\n" in Path("again.wif").read_text(encoding="utf-8")


def test_a_file_for_programs(shelf: Shell) -> None:
    """With --json what was odd in a file is told aside, so that a program can read the rest."""
    Path("friend.wif").write_text(FRIENDS, encoding="utf-8")
    told = shelf("draft", "friend.wif", "--json")

    assert (2, 1) == tuple(json.loads(told.stdout)[key] for key in ("repeat_ends", "repeat_picks"))
    assert "WARP SYMBOLS" in told.stderr


def test_colours_of_the_shelf(shelf: Shell) -> None:
    """A colour is written as the yarn that has its name has it; one that no yarn has is another, in a plain tone."""
    shelf.write("yarns/wool", "---\ntitle: Wool\nnumber: 2/8\ncolours:\n  rust: 9c4a2f\n---\n")
    shelf.write("drafts/striped", "---\nthreading: 1, 2\nlift_plan: 1, 2\nwarp_colours: rust, moss\n---\n")
    shelf("draft", "striped", "--to", "striped.wif")
    shelf("draft", "striped", "--to", "striped.md")
    shelf("draft", "striped", "--to", "striped.png")
    read = read_wif(Path("striped.wif").read_bytes(), "striped.wif")

    assert ("9c4a2f", {"rust", "moss"}) == (read.colours["rust"], set(read.colours))
    assert read.colours["moss"] != read.colours["rust"]
    assert "9c4a2f" not in Path("striped.md").read_text(encoding="utf-8")
    assert ((2 + 1 + 2 + 2) * 7 + 1, (2 + 2 + 1 + 2) * 7 + 1) == png_size(Path("striped.png").read_bytes())


def test_what_cannot_be_changed(shelf: Shell) -> None:
    """A change that cannot be made is told of, and no file is begun."""
    shelf.write("drafts/open", "---\nthreading: 1, none\nlift_plan: 1, 2\n---\n")
    said = shelf("draft", "open", "--change", "other-shed", "--to", "other.wif")

    assert (2, False) == (said.exit_code, Path("other.wif").exists())
    assert "--change other-shed: End 2 is on no shaft; the shed cannot be changed for it." in said.stderr


def test_the_changes(shelf: Shell) -> None:
    """The help says of every change what becomes of the cloth."""
    said = shelf("draft", "--help").output

    assert "  turned          warp and weft exchanged\n" in said
    assert "  two-feet        the same cloth with two treadles at once, on fewer treadles\n" in said


def test_a_picture(shelf: Shell) -> None:
    """The whole drawing is a picture of every end and pick."""
    shelf("draft", "straight-four", "--to", "drawn.png")

    assert ((4 + 1 + 4) * 7 + 1, (4 + 1 + 4) * 7 + 1) == png_size(Path("drawn.png").read_bytes())


def test_a_picture_too_large(shelf: Shell) -> None:
    """A long draft is drawn in smaller squares, and one that no picture holds is refused with what would hold it."""
    shelf.write("drafts/long", "---\nthreading: 200 times (1-8)\nlift_plan: 250 times (1, 2, 3, 4)\n---\n")
    shelf.write("drafts/vast", "---\nthreading: 1000 times (1-8)\nlift_plan: 1000 times (1, 2, 3, 4)\n---\n")
    shelf("draft", "long", "--to", "long.png")
    said = shelf("draft", "vast", "--to", "vast.png")

    assert 4 * 1000 <= png_size(Path("long.png").read_bytes())[1] < 5 * 1000 + 100
    assert "8,000 ends and 4,000 picks are too many for one picture." in said.stderr
    assert not Path("vast.png").exists()


def test_nothing_is_written_over(shelf: Shell) -> None:
    """A file that is there stays as it was."""
    Path("kept.txt").write_text("mine", encoding="utf-8")
    said = shelf("draft", "straight-four", "--to", "kept.txt")

    assert (2, "mine") == (said.exit_code, Path("kept.txt").read_text(encoding="utf-8"))
    assert "kept.txt is there already, and is left as it is" in said.output


@pytest.mark.parametrize(
    ("words", "status", "said"),
    [
        (("nothing-such",), 1, 'There is no file and no draft called "nothing-such". Drafts here: straight-four.'),
        (("strait-four",), 1, "Did you mean straight-four?"),
        (("elsewhere/straight-four.md",), 1, 'There is no file and no draft called "elsewhere/straight-four.md".'),
        (("missing.wif",), 2, "missing.wif cannot be read: No such file or directory."),
        (("straight-four", "--sett", "close"), 2, "'--sett'"),
        (("straight-four", "--to", "cloth.doc"), 2, "cloth.doc should end in .wif, .md, .png, .txt."),
        (("straight-four", "--change", "upside"), 2, "'upside' is not one of"),
    ],
)
def test_what_cannot_be(shelf: Shell, words: tuple[str, ...], status: int, said: str) -> None:
    """What is not there or cannot be read is told, and nothing more."""
    told = shelf("draft", *words)

    assert status == told.exit_code
    assert said in told.output + told.stderr


def test_garbage(shelf: Shell) -> None:
    """A file that holds no draft is refused with the reason."""
    Path("noise.wif").write_bytes(bytes(range(256)) * 9)
    said = shelf("draft", "noise.wif")

    assert 1 == said.exit_code
    assert "This is no interchange file" in said.output
