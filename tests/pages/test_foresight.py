"""What pages say of the next warp, and of how far off they were: as the commands say it, and nothing private."""

from __future__ import annotations

from pathlib import Path

import pytest

from journal_tools.forecast.expected import Asked, expected_of
from journal_tools.forecast.score import Score, Scored
from journal_tools.forecast.words import rests_words
from journal_tools.pages import score_part
from journal_tools.pages.archive import Archive
from journal_tools.pages.expect_part import bands, expect_part
from journal_tools.pages.expect_part import expected_of as pocketed
from journal_tools.pages.yarn_page import yarn_view
from journal_tools.pictures.scatter import LossBand, LossPoint, LossScatter
from journal_tools.pictures.store import PictureStore
from journal_tools.records import public, read_journal
from tests.built import TINY
from tests.house import PROJECT

JOURNAL = read_journal(PROJECT / "entries")
POINT = 0.01


@pytest.fixture(scope="module")
def archive(tmp_path_factory: pytest.TempPathFactory) -> Archive:
    """The demonstration journal while its pages are made."""
    return Archive(JOURNAL, PictureStore(tmp_path_factory.mktemp("cache") / "pictures"))


@pytest.fixture(scope="module")
def shared(tmp_path_factory: pytest.TempPathFactory) -> Archive:
    """The same for others."""
    return Archive(public(JOURNAL), PictureStore(tmp_path_factory.mktemp("shared") / "pictures"), public=True)


class TestWhatToExpect:
    @pytest.mark.parametrize("name", ["cottolin-22-2", "woollen-8-2", "rug-wool-5-2", "mystery-cone"])
    def test_as_the_command_says(self, archive: Archive, name: str) -> None:
        """A yarn's page means the same cloth as the command, rests it on the same warps, and tells the same loss."""
        told = expected_of(JOURNAL, archive.memory, Asked(name))
        shown = pocketed(archive, JOURNAL.yarns[name])

        assert (told.kind, told.sett_per_m, told.usual) == (shown.kind, shown.sett_per_m, shown.usual)
        assert rests_words(JOURNAL, told).removeprefix("A guess: ") == expect_part(archive, JOURNAL.yarns[name]).rests
        for figure in shown.figures:
            same = told.figure(figure.direction, figure.first, figure.last)
            assert same.label == figure.label
            assert pytest.approx(same.loss, abs=POINT / 10) == figure.loss
            assert pytest.approx(same.range, abs=POINT) == figure.range

    def test_what_hands_do(self, archive: Archive) -> None:
        """It says a width to sley and a length to weave, and leads to a plan in the yarn and its weave."""
        part = expect_part(archive, JOURNAL.yarns["cottolin-22-2"])

        assert ["sley" in part.said[0], "weave" in part.said[1]] == [True, True]
        assert "plan.html#warp=cottolin-22-2&weave=plain%20weave" == part.plan.href
        assert not part.guess

    def test_fulled_cloth_by_the_minute(self, archive: Archive) -> None:
        """A yarn that was fulled with a watch is answered by minutes too."""
        parts = {name: expect_part(archive, JOURNAL.yarns[name]) for name in ("cottolin-22-2", "woollen-8-2")}

        assert () == parts["cottolin-22-2"].fulling
        assert len([line for line in parts["woollen-8-2"].fulling if "minutes" in line]) > 2

    def test_nobodys_warps(self, shared: Archive) -> None:
        """To others no warp is called yours, and what is rested on is shared."""
        for yarn in shared.journal.yarns.values():
            view = yarn_view(shared, yarn)
            assert view.expect is not None
            words = " ".join((view.expect.rests, *view.expect.said, *view.expect.fulling, view.expect.small))
            assert "your" not in words

    def test_the_bands_of_the_chart(self, archive: Archive) -> None:
        """The chart's bars are the yarn's own range, to a quarter of a point, width before length."""
        wide, long = bands(archive, JOURNAL.yarns["cotton-8-2"], ("width", "length"))
        figure = pocketed(archive, JOURNAL.yarns["cotton-8-2"]).figures[0]

        assert ("width", "length") == (wide.direction, long.direction)
        assert pytest.approx((*figure.range, figure.loss), abs=POINT / 8) == (wide.low, wide.high, wide.likely)

    def test_the_chart_is_drawn(self) -> None:
        """A chart with a bar for the next warp says `next` where its years end, and holds the bar whole."""
        points = tuple(LossPoint(when, 0.1, 0.01, "plain weave", f"{when}") for when in (2023.2, 2024.5))
        chart = LossScatter("losses", points, bands=(LossBand("plain weave", "width", 0.02, 0.1, 0.2),))
        low, high = chart.percents()

        assert b">next<" in chart.draw()
        assert (low <= 2, high >= 20) == (True, True)


class TestTheScore:
    def test_the_sentence(self, archive: Archive) -> None:
        """Of four forecasts of which one lay outside, three held; half were within a point."""
        kind = archive.woven_kinds[0][1]
        warp = next(iter(JOURNAL.warps))
        scored = tuple(
            Scored(warp, kind, -0.1 + off, -0.1, place, (-0.1, -0.1, -0.1))
            for off, place in ((0.0, 0.5), (0.01, 0.7), (-0.01, 0.3), (0.05, 0.99))
        )
        (said,) = score_part.said(archive, {"width": Score("width", scored)})

        assert "Width, reed to washed: 4 forecasts from the warps before." in said
        assert "held 3 of 4 times; half came within 0.9 points." in said

    def test_the_tables(self, archive: Archive) -> None:
        """Every rule stands beside the forecast, every range beside how often it held, and guesswork is named."""
        found = score_part.scores(archive)
        rules, held, guesses = score_part.tables(archive, found)

        assert 4 * len(found) == len(rules.rows)
        assert ["50 %", "80 %", "95 %"] == [row[0].text.split(" of")[0] for row in held.rows]
        assert 1 <= len(guesses.rows) <= score_part.GUESSES
        assert 1 == sum(row[-1].strong for row in guesses.rows)

    def test_a_large_journal(self, archive: Archive, monkeypatch: pytest.MonkeyPatch) -> None:
        """Where the score would take longer than all the rest, the page says which command tells it."""
        monkeypatch.setattr(score_part, "LARGE", 3)

        assert {} == score_part.scores(archive)
        assert "`tenterhook score`" in " ".join(score_part.said(archive, {}))

    def test_it_is_kept(self, tmp_path: Path) -> None:
        """What was reckoned of the score is kept beside the pictures, the shared journal's by itself."""
        tiny = read_journal(TINY / "entries")
        for journal, for_others, file in ((tiny, False, "score.json"), (public(tiny), True, "score-shared.json")):
            score_part.scores(Archive(journal, PictureStore(tmp_path / "pictures"), public=for_others))
            assert (tmp_path / file).is_file()
