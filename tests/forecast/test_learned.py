"""What the journal learns from: which sizes of a record are taken in, at which moment and on which yardstick."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from journal_tools.forecast.learned import AGAIN, MARKS, learned_of, observed_of
from journal_tools.forecast.observed import Observed
from journal_tools.ledger import ledger_of
from journal_tools.records import read_journal
from tests.ledger.desk import REED, WIDTH, journal, write

INCH = 25.4


def observed(folder: Path, header: str, **files: str) -> dict[str, dict[str, Observed]]:
    """What one warp teaches: by direction, then by piece."""
    made = write(folder, warps__cloth=header, **files)
    assert () == tuple(problem.sentence() for problem in made.problems)
    return {direction: {piece.piece: piece for piece in pieces} for direction, pieces in observed_of(made).items()}


def sizes(piece: Observed) -> list[tuple[str, float]]:
    """The moments of a piece with their sizes in inches, the yardstick beside all but cloth."""
    return [
        (
            reading.moment + ("" if reading.yardstick == "cloth" else f" {reading.yardstick}"),
            round(math.exp(reading.log) / INCH, 3),
        )
        for reading in piece.readings
    ]


PLAIN = "weave: plain weave\nin_reed: 20\non_loom: 19 x 33\n"


class TestSixLines:
    HEADER = "weave: plain weave\nin_reed: 20 1/4\non_loom: 19 3/8 x 33\nwashed: 17 7/8 x 30 1/8"

    def test_sizes(self, tmp_path: Path) -> None:
        """Six lines teach a width at three moments and a length at two."""
        found = observed(tmp_path, self.HEADER)

        assert [("in_reed", 20.25), ("on_loom", 19.375), ("washed 1", 17.875)] == sizes(found["width"][""])
        assert [("on_loom", 33), ("washed 1", 30.125)] == sizes(found["length"][""])

    def test_uncertainty_is_half_of_the_tape(self, tmp_path: Path) -> None:
        """Each reading carries half of the ± that is shown, which is twice the standard uncertainty."""
        width = observed(tmp_path, self.HEADER)["width"][""]
        expected = [REED / 20.25 / 2, WIDTH / 19.375 / 2, WIDTH / 17.875 / 2]

        assert [round(sd, 9) for sd in expected] == [round(reading.sd, 9) for reading in width.readings]

    def test_dents_have_none(self, tmp_path: Path) -> None:
        """Dents that were counted are exact."""
        header = self.HEADER.replace("in_reed: 20 1/4", "reed: 12/in\nin_reed: 243 dents")
        width = observed(tmp_path, header)["width"][""]

        assert [("in_reed", 20.25)] == sizes(width)[:1]
        assert 0 == width.readings[0].sd

    def test_one_size_alone_teaches_nothing(self, tmp_path: Path) -> None:
        """A size with nothing to compare it with is not taken in."""
        assert {"width": {}, "length": {}} == observed(tmp_path, "washed: 17 7/8 x 30 1/8")


class TestWashes:
    def test_first_second_third(self, tmp_path: Path) -> None:
        """Wash 1 and 2 have moments of their own; from wash 3 cloth is settled."""
        width = observed(tmp_path, PLAIN + "washed:\n  - 18 x 30\n  - 17 1/2 x 29\n  - 17 x 28")["width"][""]

        assert [("washed 1", 18), ("washed 2", 17.5), ("settled", 17)] == sizes(width)[2:]

    def test_a_wash_that_took_nothing(self, tmp_path: Path) -> None:
        """A second wash that took under half a per cent left the cloth settled, in that direction alone."""
        found = observed(tmp_path, PLAIN + "washed:\n  - 18 x 30\n  - 18 x 29")

        assert [("washed 1", 18), ("settled", 18)] == sizes(found["width"][""])[2:]
        assert [("washed 1", 30), ("washed 2", 29)] == sizes(found["length"][""])[1:]

    def test_a_late_wash_alone(self, tmp_path: Path) -> None:
        """Measured only after wash 4, cloth is settled, and the washes before it are a gap."""
        width = observed(tmp_path, PLAIN + "washed 4: 17 x 28")["width"][""]

        assert [("in_reed", 20), ("on_loom", 19), ("settled", 17)] == sizes(width)

    def test_settled_twice(self, tmp_path: Path) -> None:
        """Of several settled sizes the last is the one that the owner has."""
        header = PLAIN + "washed 1: 18 x 30\nwashed 3: 17 x 28\nwashed 5: 16 7/8 x 28"
        width = observed(tmp_path, header)["width"][""]

        assert [("washed 1", 18), ("settled", 16.875)] == sizes(width)[2:]

    def test_damp_cloth(self, tmp_path: Path) -> None:
        """A size of damp cloth is another size, and teaches nothing."""
        header = PLAIN + "washed:\n  - size: 18 x 30\n    dry: damp\n  - 17 1/2 x 29"
        width = observed(tmp_path, header)["width"][""]

        assert [("in_reed", 20), ("on_loom", 19), ("washed 2", 17.5)] == sizes(width)

    def test_another_recipe_stands_apart(self, tmp_path: Path) -> None:
        """What a later wash by another recipe took is that recipe's, and not the first one's."""
        header = PLAIN + "washed:\n  - 18 x 30\n  - 17 1/2 x 29\nfinish:\n  - by-hand\n  - by-machine"
        width = observed(tmp_path, header)["width"]
        first, again = width[""], width[AGAIN.removeprefix(", ")]

        assert ("by-hand", "by-machine") == (first.kind.finish, again.kind.finish)
        assert [("in_reed", 20), ("on_loom", 19), ("washed 1", 18)] == sizes(first)
        assert [("washed 1", 18), ("washed 2", 17.5)] == sizes(again)

    def test_one_recipe_for_all(self, tmp_path: Path) -> None:
        """One recipe named holds for every wash."""
        header = PLAIN + "washed:\n  - 18 x 30\n  - 17 1/2 x 29\nfinish: by-hand"
        width = observed(tmp_path, header)["width"]

        assert [""] == list(width)
        assert "by-hand" == width[""].kind.finish

    def test_made_up_is_no_wash(self, tmp_path: Path) -> None:
        """What the owner measures, hems inside, is not learned."""
        width = observed(tmp_path, PLAIN + "washed: 18 x 30\nmade_up: 17 x 27")["width"][""]

        assert [("in_reed", 20), ("on_loom", 19), ("washed 1", 18)] == sizes(width)


class TestYardsticks:
    def test_hemmed_before_washing(self) -> None:
        """Hemmed with hemmed: the length of the first linen towel is one chain of cloth and one of hemmed cloth."""
        towel = next(
            each
            for each in observed_of(journal())["length"]
            if each.warp == "estuary-towels" and each.piece == "towel 1"
        )
        found = sizes(towel)

        assert [("on_loom", 33), ("off_loom", 32.5)] == [each for each in found if each[0] in ("on_loom", "off_loom")]
        assert [("off_loom hemmed", 29.75), ("washed 1 hemmed", 28.5)] == [
            each for each in found if "hemmed" in each[0]
        ]

    def test_hemmed_at_the_ends_is_as_wide_as_before(self, tmp_path: Path) -> None:
        """A hem at both ends leaves the width alone: it is not a second measuring of the same cloth."""
        header = PLAIN + "off_loom: 18 3/4 x 32\nhem: 1 in\nhemmed: 18 5/8 x 28\nwashed: 18 x 27"
        found = observed(tmp_path, header)

        assert [("off_loom", 18.75), ("washed 1", 18)] == sizes(found["width"][""])[2:]
        assert [("off_loom hemmed", 28), ("washed 1 hemmed", 27)] == sizes(found["length"][""])[2:]

    def test_hemmed_in_place_of_off(self, tmp_path: Path) -> None:
        """Where nobody measured the width off the loom, the one of the hemmed cloth stands for it."""
        width = observed(tmp_path, PLAIN + "hem: 1 in\nhemmed: 18 5/8 x 28\nwashed: 18 x 27")["width"][""]

        assert [("off_loom", 18.625), ("washed 1", 18)] == sizes(width)[2:]

    def test_marks_of_a_sampler(self) -> None:
        """Bands of a sampler are cloths of their own, by marks, each as close as it was set."""
        bands = {each.piece: each for each in observed_of(journal())["length"] if each.warp == "cotton-sett-sampler"}
        close = [bands[f"a, s{sett}"].kind.closeness for sett in (16, 20, 24)]

        assert [("off_loom marks", 3.937), ("washed 1 marks", 3.661)] == sizes(bands["a, s20"])
        assert [16 / 20, 24 / 20] == [round((each or 0) / (close[1] or 1), 9) for each in (close[0], close[2])]

    def test_double_cloth_is_opened(self) -> None:
        """A cloth that opens is twice as wide as on the loom: 86 cm folded in the reed are 172."""
        blanket = next(each for each in observed_of(journal())["width"] if each.warp == "fold-blanket")
        cm = [(moment, round(inches * 2.54, 1)) for moment, inches in sizes(blanket)]

        assert [("in_reed", 172.0), ("on_loom", 166.0), ("off_loom", 163.0), ("washed 1", 153.0)] == cm


class TestLeftOut:
    def test_fulled_after_the_scouring(self) -> None:
        """Fulled cloth is stopped at its size: it teaches up to the scouring, and no further."""
        blankets = [
            each for pieces in observed_of(journal()).values() for each in pieces if each.warp == "fold-blanket"
        ]

        assert ["washed 1", "washed 1"] == [each.readings[-1].moment for each in blankets]
        assert [153.0, 220.0] == [round(math.exp(each.readings[-1].log) / 10, 1) for each in blankets]

    def test_a_recipe_that_fulls(self, tmp_path: Path) -> None:
        """A cloth washed by a recipe that fulls it teaches nothing of its wash."""
        found = observed(tmp_path, PLAIN + "washed: 14 x 22\nfinish: tub", finishes__tub="fulling: yes")

        assert [("in_reed", 20), ("on_loom", 19)] == sizes(found["width"][""])
        assert {} == found["length"]

    @pytest.mark.parametrize(
        ("said", "width", "length"),
        [
            ("no, beamed badly", [], []),
            ("no widths, pulled in", [], ["on_loom", "washed 1"]),
            ("no lengths, slack", ["in_reed", "on_loom", "washed 1"], []),
            ("no on_loom, read at the fell", ["in_reed", "washed 1"], []),
            ("no washed, left as found", ["in_reed", "on_loom"], []),
            ("yes", ["in_reed", "on_loom", "washed 1"], ["on_loom", "washed 1"]),
        ],
    )
    def test_by_the_weaver(self, tmp_path: Path, said: str, width: list[str], length: list[str]) -> None:
        """What `learn:` keeps out is kept out: all of it, a direction, or a state."""
        found = observed(tmp_path, f"{PLAIN}washed: 18 x 30\nlearn: {said}")
        moments = {
            direction: [reading.moment for piece in pieces.values() for reading in piece.readings]
            for direction, pieces in found.items()
        }

        assert {"width": width, "length": length} == moments

    def test_one_piece(self) -> None:
        """`no widths from bookmarks` keeps their widths out, and neither their lengths nor the napkins."""
        found = observed_of(journal())
        taught = {
            direction: sorted({each.piece.partition(",")[0] for each in pieces if each.warp == "gannet-napkins"})
            for direction, pieces in found.items()
        }

        assert {"width": ["napkins"], "length": ["bookmarks", "napkins"]} == taught

    def test_accepted_oddities_stay(self, tmp_path: Path) -> None:
        """Cloth that grew, and that the weaver has accepted, teaches like any other."""
        header = "in_reed: 20\non_loom: 19 x 33\noff_loom: 18 x 31\nwashed: 17 1/2 x 32\naccepted: grew"
        length = observed(tmp_path, header)["length"][""]

        assert [("on_loom", 33), ("off_loom", 31), ("washed 1", 32)] == sizes(length)

    def test_alike_pieces_are_one_measuring(self, tmp_path: Path) -> None:
        """Five napkins written down as alike were measured once."""
        width = observed(tmp_path, "in_reed: 20\npieces:\n  - name: napkins 2-6\n    washed: 18 x 18")["width"]

        assert {"napkins 2-6": 5} == {name: piece.number for name, piece in width.items()}


class TestByThreads:
    def test_marks_on_the_warp(self, tmp_path: Path) -> None:
        """36 in of warp that wove 33 1/4 in teach take-up, beside the pieces."""
        header = PLAIN + "washed: 18 x 30\nwarp:\n  wound: 5 yd\n  marked: 36 in wove 33 1/4 in"
        length = observed(tmp_path, header)["length"]

        assert [("warp", 36), ("on_loom", 33.25)] == sizes(length[MARKS])
        assert [("on_loom", 33), ("washed 1", 30)] == sizes(length[""])

    def test_warp_of_one_piece(self, tmp_path: Path) -> None:
        """Warp measured for a piece is a reading of that piece."""
        length = observed(tmp_path, PLAIN + "washed: 18 x 30\nwarp_used: 36 1/2")["length"][""]

        assert [("warp", 36.5), ("on_loom", 33), ("washed 1", 30)] == sizes(length)

    def test_what_is_left_over_is_no_take_up(self, tmp_path: Path) -> None:
        """A take-up "at most" holds whatever went astray, and is not learned."""
        header = PLAIN + "washed: 18 x 30\nwarp:\n  wound: 2 yd\nwhere_it_went:\n  thrums: 24 in"
        found = observed(tmp_path, header)["length"]

        assert {"": ["on_loom", "washed 1"]} == {
            name: [reading.moment for reading in piece.readings] for name, piece in found.items()
        }

    @pytest.mark.parametrize(
        ("more", "inches"),
        [
            ("beat: 20/in", 33),  # 660 picks at 20 to the inch
            ("sett: 22/in", 30),  # no beat: as far apart as the ends
            ("beat: 20/in\nsett: 22/in", 33),
            ("beat: 20/in\ntabby: counted", 33),
            ("beat: 20/in\ntabby: not counted", None),
            ("", None),
        ],
    )
    def test_picks(self, tmp_path: Path, more: str, inches: float | None) -> None:
        """Counted picks are a length where their pitch is known: as beaten, else as the ends are set."""
        length = observed(tmp_path, f"{PLAIN}washed: 18 x 30\npicks: 660\n{more}")["length"][""]
        picks = [size for moment, size in sizes(length) if moment == "picks"]

        assert ([] if inches is None else [inches]) == picks

    def test_weft_that_hides_the_warp(self, tmp_path: Path) -> None:
        """In weft-faced cloth ends say nothing of picks, nor where a pattern weft floats over tabby."""
        faced = PLAIN.replace("plain weave", "weft-faced") + "washed: 18 x 30\npicks: 660\nsett: 8/in"
        tabby = PLAIN + "washed: 18 x 30\npicks: 660\nsett: 20/in\ntabby: counted"

        for folder, header in ((tmp_path / "faced", faced), (tmp_path / "tabby", tabby)):
            assert ["on_loom", "washed 1"] == [
                reading.moment for reading in observed(folder, header)["length"][""].readings
            ]


class TestKind:
    def test_names(self, tmp_path: Path) -> None:
        """A weave goes by its plain name, yarns by most threads, fibres by the most of their weight."""
        header = """
started: spring 2019
weave: Tabby
warp:
  order: 30 silk, 10 lin
yarns:
  silk: silk-30-2
  lin: cottolin-22-2
weft: cottolin-22-2
finish: by-hand
in_reed: 10
washed: 9 x 60
"""
        yarns = {"yarns__silk_30_2": "fibre: silk", "yarns__cottolin_22_2": "fibre: 55 % cotton, 45 % linen"}
        kind = observed(tmp_path, header, **yarns)["width"][""].kind

        assert ("plain weave", "silk-30-2", "cottolin-22-2") == (kind.weave, kind.warp_yarn, kind.weft_yarn)
        assert ("silk", "cottolin", "by-hand", 2019) == (kind.warp_fibre, kind.weft_fibre, kind.finish, kind.year)

    def test_weave_of_the_draft(self, tmp_path: Path) -> None:
        """Where a warp does not say its weave, its draft's record does."""
        found = observed(tmp_path, "draft: squares\nin_reed: 20\nwashed: 18 x 18", drafts__squares="weave: huck lace")

        assert "huck lace" == found["width"][""].kind.weave

    def test_nobody_knows(self, tmp_path: Path) -> None:
        """What a record does not say is left unknown."""
        kind = observed(tmp_path, "in_reed: 20\nwashed: 18 x 18")["width"][""].kind

        assert ("", "", "", "", "", "", None, None) == (
            *(kind.weave, kind.warp_yarn, kind.weft_yarn, kind.warp_fibre, kind.weft_fibre, kind.finish),
            *(kind.closeness, kind.year),
        )


class TestAll:
    def test_every_reading_has_its_size(self) -> None:
        """Behind every reading but those by threads stands a size of the ledger, of the same mm."""
        for learned in learned_of(journal()):
            for reading, measure in learned.measures.items():
                assert round(math.log(measure.mm), 12) == round(reading.log, 12)
            by_threads = {reading.moment for reading in set(learned.observed.readings) - set(learned.measures)}
            assert by_threads <= {"warp", "picks"} or learned.observed.piece == MARKS

    def test_ledgers_at_hand(self) -> None:
        """With the ledgers at hand nothing is learned otherwise."""
        ledgers = {name: ledger_of(journal(), warp) for name, warp in journal().warps.items()}

        assert observed_of(journal()) == observed_of(journal(), ledgers)

    def test_an_empty_journal(self, tmp_path: Path) -> None:
        """An empty journal has observed nothing."""
        assert {"width": (), "length": ()} == observed_of(read_journal(tmp_path))
