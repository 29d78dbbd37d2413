"""Nothing of a file is lost in silence: what is not read is kept, and what is not kept is told."""

from __future__ import annotations

import dataclasses

import pytest

from journal_tools.drafts import drawdown
from journal_tools.interchange import Extras, ReadDraft, read_wif, write_wif

FILE = """\
[WIF]
Version=1.1
Date=April 20, 1997
Developers=somebody

[CONTENTS]
COLOR PALETTE=yes
COLOR TABLE=yes
WEAVING=yes
WARP=yes
WEFT=yes
THREADING=yes
TIEUP=yes
TREADLING=yes
WARP COLORS=yes

[COLOR PALETTE]
Entries=2
Form=RGB
Range=0,255

[COLOR TABLE]
1=255,255,255
2=0,0,128

[WEAVING]
Shafts=4
Treadles=4
Rising Shed=true

[WARP]
Threads=4
Color=1
Units=Centimeters
Spacing=0.1

[WEFT]
Threads=4
Color=2

[THREADING]
1=1
2=2
3=3
4=4

[TIEUP]
1=1,2
2=2,3
3=3,4
4=1,4

[TREADLING]
1=1
2=2
3=3
4=4

[WARP COLORS]
1=2
2=2
"""
PLAN = "[LIFTPLAN]\n1=1,2\n2=2,3\n3=3,4\n4=1,4\n"


def read(*changed: tuple[str, str], more: str = "") -> ReadDraft:
    """What the file comes to, with pieces of it changed and sections added, which are listed."""
    text = FILE + more
    for name in (line[1:-1] for line in more.splitlines() if line.startswith("[")):
        text = text.replace("WARP COLORS=yes\n", f"WARP COLORS=yes\n{name}=yes\n")
    for before, after in changed:
        assert before in text
        text = text.replace(before, after)
    return read_wif(text.encode(), "a.wif")


def told(found: ReadDraft) -> list[tuple[str, str]]:
    """Kind, and what was read, of all that is told."""
    return [(problem.slug, problem.read) for problem in found.told]


def again(found: ReadDraft) -> ReadDraft:
    """The same, written and read again."""
    assert found.draft is not None
    return read_wif(write_wif(found.draft, Extras.of(found)), "again.wif")


def test_nothing_odd() -> None:
    """Of a file without anything odd nothing is told."""
    assert [] == told(read())


@pytest.mark.parametrize(
    ("before", "after", "slug", "seen"),
    [
        ("Spacing=0.1\n", "Spacing=0.1\nSymbol=X\nSpacing Zoom=2\n", "no-key", "Symbol=X, Spacing Zoom=2"),
        ("Units=Centimeters\n", "", "no-units", "Spacing=0.1"),
        ("Units=Centimeters\nSpacing=0.1", "Thickness=0.05", "no-units", "Thickness=0.05"),
        ("Form=RGB", "Form=HSV", "form", "HSV"),
        ("Entries=2", "Entries=7", "entries", "7"),
        ("Spacing=0.1", "Spacing=0.1_25", "number", "0.1_25"),
        ("Spacing=0.1", "Spacing=nan", "number", "nan"),
        ("Threads=4\nColor=1", "Threads=4", "no-usual-colour", ""),
        ("2=2\n", "9=2\n", "beyond", "9"),
        ("Color=1\n", "Color=1,0,0,0\n", "other-colour", "1,0,0,0"),
        ("Rising Shed=true", "Rising Shed=true\nRising Shed=true", "doubled", "true"),
        ("WARP COLORS=yes\n", "WARP COLORS=yes\nNOTES=maybe\n", "truth", "maybe"),
        ("Shafts=4", "Shafts=999", "sizes", "999"),
    ],
)
def test_is_told(before: str, after: str, slug: str, seen: str) -> None:
    """What has no place here, contradicts itself or says nothing is told, with what was read."""
    text = FILE[: FILE.rindex(before)] + after + FILE[FILE.rindex(before) + len(before) :]

    assert [(slug, seen)] == told(read_wif(text.encode(), "a.wif"))


@pytest.mark.parametrize(("line", "counted"), [("first=hello", "Lines of notes"), ("0=hello", "Lines of notes")])
def test_notes_are_counted_in_lines(line: str, counted: str) -> None:
    """A note under no number is told in words of notes, and what it says with it."""
    (problem,) = read(more=f"[NOTES]\n{line}\n").told

    assert (line, True) == (problem.read, problem.told.startswith(f"{counted} are counted from 1 to 20,000 here"))


@pytest.mark.parametrize(
    ("before", "after", "said"),
    [
        ("1=255,255,255", "1=255,255,255\n0=1,1,1", "Colours are counted from 1 to 4,096"),
        ("[TIEUP]\n", "[TIEUP]\nx=1\n", "Treadles are counted from 1 to 200"),
        ("[TREADLING]\n", "[TREADLING]\n0=1\n", "Picks are counted from 1 to 20,000"),
        ("[TREADLING]\n1=1", "[TREADLING]\n1=1,900", "Treadles are counted from 1 to 200"),
        ("[THREADING]\n", "[THREADING]\n0=1\n", "Ends are counted from 1 to 20,000"),
    ],
)
def test_each_by_its_name(before: str, after: str, said: str) -> None:
    """What is out of range is called by its name: colours, treadles, picks, ends."""
    assert [True] == [said in problem.told for problem in read((before, after)).told]


def test_shafts_and_treadles_to_spare() -> None:
    """A file of eight shafts and ten treadles of which four are used says so again when it is written."""
    found = read(("Shafts=4", "Shafts=8"), ("Treadles=4", "Treadles=10"))

    assert (8, 10) == (found.shafts, found.treadles) == (again(found).shafts, again(found).treadles)
    assert [] == told(found)


def test_a_changed_draft() -> None:
    """Of a file whose draft was turned words and colours hold, and not its sett, its sizes and its other sections."""
    found = read(("Shafts=4", "Shafts=8"), more="[NOTES]\n1=hello\n[WARP SYMBOLS]\n1=X\n")
    extras = Extras.of_changed(found)

    assert ("hello", dict(found.colours), "somebody") == (extras.notes, dict(extras.colours), extras.developers)
    assert (None, None, (), None) == (extras.ends_per_m, extras.shafts, extras.kept, extras.end_mm)


def test_thickness_with_a_unit() -> None:
    """Yarn half a millimetre thick is read, and is as thick when it is written again."""
    found = read(("Spacing=0.1\n", "Spacing=0.1\nThickness=0.05\n"))

    assert (0.5, 0.5, []) == (found.end_mm, again(found).end_mm, told(found))


def test_colours_that_no_thread_has() -> None:
    """A colour of the table that no thread has stays in the table."""
    found = read(("2=0,0,128\n", "2=0,0,128\n3=255,0,0\n"), ("Entries=2", "Entries=3"))

    assert "ff0000" == found.colours["red"] == again(found).colours["red"]


def test_two_colours_under_one_number() -> None:
    """Threads that bring their own red, green and blue under one number keep their own colours."""
    found = read(("[WARP COLORS]\n1=2\n2=2\n", "[WARP COLORS]\n1=9,255,0,0\n2=9,0,255,0\n"))
    assert found.draft is not None

    assert ["ff0000", "00ff00"] == [found.colours[name] for name in found.draft.warp_colours[:2]]


def test_a_range_that_does_not_begin_at_nothing() -> None:
    """Where the range is 1 to 256, 1 is none of a colour and 256 all of it."""
    found = read(("Range=0,255", "Range=1,256"), ("1=255,255,255", "1=256,256,256"), ("2=0,0,128", "2=1,1,129"))

    assert {"white": "ffffff", "dark-blue": "000080"} == dict(found.colours)


class TestBesideALiftPlan:
    def test_a_tie_up_alone(self) -> None:
        """A tie-up without a treadling beside a lift plan is left out, and told."""
        found = read(("[TREADLING]\n1=1\n2=2\n3=3\n4=4\n", ""), ("TREADLING=yes\n", ""), more=PLAN)

        assert ["half"] == [problem.slug for problem in found.told]
        assert "TIEUP" == found.told[0].field

    def test_a_treadling_alone(self) -> None:
        """A treadling without a tie-up beside a lift plan is left out, and told."""
        found = read(("[TIEUP]\n1=1,2\n2=2,3\n3=3,4\n4=1,4\n", ""), ("TIEUP=yes\n", ""), more=PLAN)

        assert ["TREADLING"] == [problem.field for problem in found.told]

    def test_a_treadling_of_nothing(self) -> None:
        """Where no pick presses a treadle and there is a full lift plan, the lift plan is woven."""
        found = read(("[TREADLING]\n1=1\n2=2\n3=3\n4=4\n", "[TREADLING]\n1=0\n2=0\n3=0\n4=0\n"), more=PLAN)
        whole = read().draft
        assert found.draft is not None
        assert whole is not None

        assert (drawdown(whole) == drawdown(found.draft)).all()
        assert ["TIEUP", "TREADLING"] == [problem.field for problem in found.told]


class TestWhatItIsWrittenAs:
    def test_no_thickness_that_nobody_knows(self) -> None:
        """Where thick and thin ends alternate and nobody knows how thick, the file gives a sett and no thickness."""
        whole = read().draft
        assert whole is not None
        uneven = dataclasses.replace(whole, warp_thickness=(2.0, 1.0), weft_thickness=(1.0, 1 / 3))
        data = write_wif(uneven, Extras(ends_per_m=1000))

        assert uneven == read_wif(data, "a.wif").draft
        assert "Units=Centimeters\r\nSpacing=0.1\r\n\r\n[WEFT]" in data.decode()
        assert "THICKNESS]" not in data.decode()

    def test_thickness_that_is_known(self) -> None:
        """Where the usual end is half a millimetre thick, one of twice that is written as 0.1 cm."""
        whole = read().draft
        assert whole is not None
        uneven = dataclasses.replace(whole, warp_thickness=(2.0, 1.0))
        data = write_wif(uneven, Extras(end_mm=0.5))

        assert "Units=Centimeters\r\nThickness=0.05\r\n" in data.decode()
        assert "[WARP THICKNESS]\r\n1=0.1\r\n2=0.05\r\n" in data.decode()
        assert (uneven, 0.5) == (read_wif(data, "a.wif").draft, read_wif(data, "a.wif").end_mm)

    def test_no_spacing_that_nobody_knows(self) -> None:
        """Where ends are crammed and nobody knows the sett, the file gives no spacing, and it is read back."""
        found = read(("Units=Centimeters\nSpacing=0.1", "Spacing=1"), more="[WARP SPACING]\n1=0.5\n2=1\n3=0.5\n4=1\n")
        assert found.draft is not None
        text = write_wif(found.draft, Extras.of(found)).decode()

        assert (False, False) == ("\r\nSpacing=" in text, "[WARP SPACING]" in text)
        assert (0.5, 1.0) == found.draft.warp_spacing
        assert again(found).draft == found.draft
        assert [] == told(again(found))


    def test_no_colour_that_nobody_gave(self) -> None:
        """Threads without a colour, where others have one, get none in the file, and have none when read again."""
        found = read(("Threads=4\nColor=1", "Threads=4"))
        assert found.draft is not None
        text = write_wif(found.draft, Extras.of(found)).decode()

        assert ("dark-blue", "dark-blue", "no-colour", "no-colour") == found.draft.warp_colours
        assert "[WARP COLORS]\r\n1=1\r\n2=1\r\n" in text
        assert "Color=1\r\n\r\n[THREADING]" in text
        assert "\r\nColor=" not in text.partition("[WEFT]")[0]
        assert "no-colour" not in text
        assert (found.draft, found.colours) == (again(found).draft, again(found).colours)


@pytest.mark.parametrize(
    ("line", "slug"),
    [
        ("warp thickness=1, thick", "figures warp thickness"),
        ("warp thickness=0", "figures warp thickness"),
        ("weft order=a,,b", "order"),
        ("floating selvedges=300", "floating"),
        ("colour 1=x", "colour-name"),
        ("colour 1=12", "colour-name"),
        ("colour 1=20bone", "colour-name"),
        ("colour 1=dark slate", "colour-name"),
    ],
)
def test_our_own_section_is_looked_at_too(line: str, slug: str) -> None:
    """What stands wrongly in the section of our own, such as a colour that no colour order can name, is told."""
    found = read(more=f"[PRIVATE TENTERHOOK DRAFT]\n{line}\n")

    assert [(slug, line.partition("=")[2])] == told(found)
    assert {"white", "dark-blue"} == set(found.colours)
