"""The rules of the open interchange file, each on a small file written by hand.

Source: Weaving Information File, version 1.1, 20 April 1997, of whose text only the head was readable: version,
date, that version, date and developers stand in the section [WIF], that it is ASCII in the form of an INI file
and not limited to 64 K. Every rule that is marked so is from memory, and no conformance is claimed.
"""

from __future__ import annotations

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
Range=0,999

[COLOR TABLE]
1=999,999,999
2=0,0,499

[WEAVING]
Shafts=4
Treadles=4
Rising Shed=true

[WARP]
Threads=8
Color=1
Units=Inches
Spacing=0.125

[WEFT]
Threads=4
Color=2
Units=Centimeters
Spacing=0.125

[THREADING]
1=1
2=2
3=3
4=4
5=1
6=2
7=3
8=4

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


def read(text: str = FILE, *changed: tuple[str, str]) -> ReadDraft:
    """What a file comes to, with pieces of it changed."""
    for before, after in changed:
        assert before in text
        text = text.replace(before, after)
    return read_wif(text.encode(), "a.wif")


def slugs(found: ReadDraft) -> list[str]:
    """What was told, by kind."""
    return [problem.slug for problem in found.told]


def test_the_head() -> None:
    """Version, date and developers stand in the first section (read in the standard), and the last is the owner's."""
    found = read()
    assert found.draft is not None
    head = write_wif(found.draft, Extras(developers="me")).decode().split("\r\n")[:4]

    assert ("somebody", ()) == (found.developers, found.told)
    assert ["[WIF]", "Version=1.1", "Date=April 20, 1997", "Developers=me"] == head


def test_longer_than_64_k() -> None:
    """The file is not limited to 64 K (read in the standard)."""
    long = "[NOTES]\n" + "".join(f"{n}=a line of notes\n" for n in range(1, 5_001))
    found = read(FILE + long, ("WARP COLORS=yes\n", "WARP COLORS=yes\nNOTES=yes\n"))

    assert 5_000 == len(found.notes.split("\n"))
    assert () == found.told


class TestFromMemory:
    """Rules of the standard from memory, each to be held against its text by whoever can read it."""

    def test_names_in_any_capitals(self) -> None:
        """Sections, keys and truths are the same in capitals and without."""
        assert (
            read().draft
            == read(FILE.replace("[WEAVING]", "[Weaving]").replace("Rising Shed=true", "rising shed=ON")).draft
        )

    def test_comments(self) -> None:
        """A line that begins with a semicolon says nothing."""
        found = read(FILE, ("[TREADLING]\n", "; a note\n[TREADLING]\n; 1=4\n"))

        assert (read().draft, ()) == (found.draft, found.told)

    def test_only_exceptions_are_listed(self) -> None:
        """A thread that is not listed has the section's usual colour."""
        found = read()
        assert found.draft is not None

        assert ("dark-blue",) * 2 + ("white",) * 6 == found.draft.warp_colours
        assert ("dark-blue",) == found.draft.weft_colours

    def test_a_range_of_its_own(self) -> None:
        """Red, green and blue are shares of the palette's range; without one it is told which was taken."""
        assert {"white": "ffffff", "dark-blue": "00007f"} == dict(read().colours)
        found = read(FILE, ("Range=0,999\n", ""))
        assert {"white": "ffffff", "dark-blue": "00007f"} == dict(found.colours)
        assert ["range"] == slugs(found)

    def test_spacing_is_room(self) -> None:
        """A spacing of 0.125 in is 8 to the inch, of 0.125 cm 8 to the centimetre."""
        found = read()

        assert pytest.approx(8 / 0.0254) == found.ends_per_m
        assert pytest.approx(800) == found.picks_per_m

    def test_decipoints(self) -> None:
        """A decipoint is a 720th of an inch."""
        found = read(FILE, ("Units=Inches\nSpacing=0.125", "Units=Decipoints\nSpacing=90"))

        assert pytest.approx(8 / 0.0254) == found.ends_per_m

    def test_no_heddle(self) -> None:
        """An end that is not listed, is listed with nothing or with 0 has no shaft."""
        for empty in ("", "3=\n", "3=0\n"):
            found = read(FILE, ("[THREADING]\n1=1\n2=2\n3=3\n", f"[THREADING]\n1=1\n2=2\n{empty}"))
            assert found.draft is not None
            assert frozenset() == found.draft.threading[2]
            assert () == found.told

    def test_several_at_once(self) -> None:
        """An end may be on several shafts and a pick on several treadles."""
        found = read(
            FILE, ("3=3\n4=4\n5=1", "3=3,1\n4=4\n5=1"), ("\n4=4\n\n[WARP COLORS]", "\n4=4, 1\n\n[WARP COLORS]")
        )
        assert found.draft is not None
        assert found.draft.treadling is not None

        assert frozenset({1, 3}) == found.draft.threading[2]
        assert frozenset({1, 4}) == found.draft.treadling[3]

    def test_a_sinking_shed(self) -> None:
        """Where the shed sinks, the warp is over where no shaft of an end is tied."""
        rising, sinking = read().draft, read(FILE, ("Rising Shed=true", "Rising Shed=false")).draft
        assert rising is not None
        assert sinking is not None

        assert (drawdown(rising) == ~drawdown(sinking)).all()

    def test_no_word_of_the_shed(self) -> None:
        """Where nothing is said of the shed a rising one is taken, and told."""
        found = read(FILE, ("Rising Shed=true\n", ""))

        assert (read().draft, ["shed"]) == (found.draft, slugs(found))

    def test_a_lift_plan(self) -> None:
        """A lift plan stands for tie-up and treadling; where both are there the treadling counts, and it is told."""
        plan = "[LIFTPLAN]\n1=1,2\n2=2,3\n3=3,4\n4=1,4\n"
        alone = (
            FILE.replace("[TIEUP]", "[LIFTPLAN]").split("[TREADLING]\n1")[0] + FILE[FILE.index("[WARP COLORS]\n1") :]
        )
        alone = alone.replace("TIEUP=yes\nTREADLING=yes", "LIFTPLAN=yes")
        both = read(FILE + plan, ("TREADLING=yes\n", "TREADLING=yes\nLIFTPLAN=yes\n"))
        only, whole = read(alone).draft, read().draft
        assert only is not None
        assert whole is not None

        assert (drawdown(whole) == drawdown(only)).all()
        assert (whole, ["both"]) == (both.draft, slugs(both))

    def test_private_sections(self) -> None:
        """Private and unknown sections are kept word for word, with indents, blank lines and odd ones, and written."""
        private = "[PRIVATE LOOM SHOP Settings]\nA = 1\n\n   speed=40%\n; a remark\n\tno equals sign\n\n\n"
        private += "[Bits]\n 0110 \n"
        listed = ("TREADLING=yes\n", "TREADLING=yes\nPRIVATE LOOM SHOP SETTINGS=yes\nBITS=yes\n")
        found = read(FILE + private, listed)
        assert found.draft is not None

        assert ["kept BITS"] == slugs(found)
        assert ("A = 1", "", "   speed=40%", "; a remark", "\tno equals sign", "") == found.kept[0].lines
        assert private.replace("\n", "\r\n") in write_wif(found.draft, Extras.of(found)).decode()

    def test_sparse_spacing_and_thickness(self) -> None:
        """A thread's spacing or thickness stands beside the usual one of its section."""
        more = "[WARP SPACING]\n3=0.0625\n[WARP THICKNESS]\n1=2\n"
        found = read(
            FILE + more,
            ("WARP COLORS=yes\n", "WARP COLORS=yes\nWARP SPACING=yes\nWARP THICKNESS=yes\n"),
            ("Spacing=0.125\n\n[WEFT]", "Spacing=0.125\nThickness=1\n\n[WEFT]"),
        )
        assert found.draft is not None

        assert (1.0, 1.0, 0.5, 1.0, 1.0, 1.0, 1.0, 1.0) == found.draft.warp_spacing
        assert (2.0, *[1.0] * 7) == found.draft.warp_thickness


class TestWhatIsOdd:
    @pytest.mark.parametrize(
        ("before", "after", "slug"),
        [
            ("Spacing=0.125\n\n[WEFT]", "Spacing=0,125\n\n[WEFT]", "decimal-comma"),
            ("2=2\n3=3\n4=4\n5=1", "2=2\n2=2\n3=3\n4=4\n5=1", "doubled"),
            ("WARP COLORS=yes\n", "", "there WARP COLORS"),
            ("WARP COLORS=yes\n", "WARP COLORS=yes\nNOTES=yes\n", "listed NOTES"),
            ("Threads=8", "Threads=6", "threads"),
            ("Threads=4", "Threads=", "threads"),
            ("Version=1.1", "Version=1.0", "version"),
            ("Shafts=4", "Shafts=2", "sizes"),
            ("Units=Inches", "Units=Furlongs", "units"),
        ],
    )
    def test_is_told_and_read(self, before: str, after: str, slug: str) -> None:
        """What is odd is told, with its place, and the draft is read all the same."""
        found = read(FILE, (before, after))

        assert [slug] == slugs(found)
        assert read().draft == found.draft

    @pytest.mark.parametrize("encoding", ["utf-8-sig", "utf-16", "cp1252"])
    def test_encodings(self, encoding: str) -> None:
        """Files of other systems are read, and it is told as what."""
        text = FILE.replace("WEAVING=yes", "TEXT=yes\nWEAVING=yes") + "[TEXT]\nTitle=Hügelgewebe\n"
        found = read_wif(text.encode(encoding), "a.wif")

        assert ("Hügelgewebe", read().draft) == (found.title, found.draft)

    def test_more_threads_than_are_listed(self) -> None:
        """Ends that are counted and not listed are taken as empty, and it is told."""
        found = read(FILE, ("Threads=8", "Threads=10"))
        assert found.draft is not None

        assert (10, ["threads"]) == (len(found.draft.threading), slugs(found))

    def test_what_cannot_be_meant(self) -> None:
        """A shaft that no loom has is left out as a fault, with file, line and what would be right."""
        found = read(FILE, ("8=4\n", "8=4000\n"))

        assert [
            'a.wif:51 THREADING: 8: read "4000". Shafts are counted from 1 to 200; this one is left out'
        ] == [problem.sentence() for problem in found.told]
