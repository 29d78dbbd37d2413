"""`draft`: a draft looked through, changed and turned into other files, as a weaver types it."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

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

    assert said.startswith("Straight four\nthreading: 1-4\ntie-up: 1+2, 2+3, 3+4, 4+1\ntreadling: 1-4\n\n▀█▄\n▄ ▀█\n\n")
    assert "2/2 twill, its lines falling to the right as it is drawn, balanced.\n" in said
    assert "Longest float of the warp: over 2 picks, 0.10 in at 20/in, on both sides, ends 1, 2, 3 and 4.\n" in said
    assert "Plain weave can be woven on this threading: lift 1+3 and 2+4 in turn.\n" in said


def test_for_programs(shelf: Shell) -> None:
    """With --json it is one object, floats in mm, shafts counted from 1."""
    found = json.loads(shelf("draft", "Straight four", "--sett", "20", "--beat", "10", "--json").output)

    assert (True, "together", "2/2 twill") == (found["hangs_together"], found["verdict"], found["weave"])
    assert 5.08 == next(one["mm"] for one in found["floats"] if one["system"] == "warp")
    assert [[1, 3], [2, 4]] == found["plain_weave_lifts"]


def test_said_to_be_another(shelf: Shell) -> None:
    """A draft that does not weave what its record says is asked about."""
    shelf.write("drafts/straight-four", TWILL.format(weave="plain weave"))

    assert "It is said to be plain weave, and what it weaves is 2/2 twill." in shelf("draft", "straight-four").output


def test_floats_that_the_use_does_not_bear(shelf: Shell) -> None:
    """Floats longer than --bears are warned of."""
    said = shelf("draft", "straight-four", "--sett", "10", "--bears", "1/8 in").output

    assert "Some floats are longer than the 1/8 in that its use bears" in said


def test_to_a_file_and_back(shelf: Shell) -> None:
    """Turned and written as an interchange file, it is read again; as a record, it is one of the journal's."""
    shelf("draft", "straight-four", "--change", "mirrored", "--to", "mirror.wif")
    read = read_wif(Path("mirror.wif").read_bytes(), "mirror.wif")
    assert read.draft is not None
    shelf("draft", "mirror.wif", "--to", "entries/drafts/mirror.md")

    assert [frozenset({shaft}) for shaft in (4, 3, 2, 1)] == list(read.draft.threading)
    assert "threading: 4-1\n" in Path("entries/drafts/mirror.md").read_text(encoding="utf-8")
    assert 0 == shelf("check").exit_code
    assert "rising to the right" in shelf("draft", "mirror").output


def test_a_picture(shelf: Shell) -> None:
    """The whole drawing is a picture of every end and pick."""
    shelf("draft", "straight-four", "--to", "drawn.png")

    assert ((4 + 1 + 4) * 7 + 1, (4 + 1 + 4) * 7 + 1) == png_size(Path("drawn.png").read_bytes())


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
