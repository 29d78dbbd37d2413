"""Pictures kept by all that decides how they look."""

from __future__ import annotations

from pathlib import Path

import pytest

from journal_tools.pictures import store as store_module
from journal_tools.pictures.chart_paper import chart_svg
from journal_tools.pictures.store import PictureStore
from tests.pictures.test_charts import CHARTS


def numbered(number: int) -> bytes:
    """A picture that is quickly drawn."""
    return b"<svg>%d</svg>" % number


def drawn(folder: Path, numbers: range, *, beside: bool = False) -> dict[str, bytes]:
    """The files of a folder once these pictures have been asked for."""
    store = PictureStore(folder, beside=beside)
    for number in numbers:
        store.draw(store.name(b"%d" % number, ".svg"), numbered, number)
    store.finish()
    return {path.name: path.read_bytes() for path in folder.iterdir()}


class TestPictureStore:
    """A folder of pictures."""

    def test_a_kept_picture_is_not_drawn_again(self, tmp_path: Path) -> None:
        """The second time, what is in the folder is taken as it is."""
        (name,) = drawn(tmp_path, range(1))
        (tmp_path / name).write_bytes(b"as kept")

        assert {name: b"as kept"} == drawn(tmp_path, range(1))

    def test_another_figure_is_another_picture(self, tmp_path: Path) -> None:
        """A changed figure is drawn anew beside the picture that is kept."""
        drawn(tmp_path, range(1))

        assert [b"<svg>0</svg>", b"<svg>1</svg>"] == sorted(drawn(tmp_path, range(2)).values())

    def test_other_code_draws_another_picture(self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
        """When the code that draws has changed, nothing that it drew before is shown."""
        before = PictureStore(tmp_path).name(b"1", ".png")
        monkeypatch.setattr(store_module, "drawn_by", lambda: b"other code")

        assert before != PictureStore(tmp_path).name(b"1", ".png")

    def test_nothing_is_there_by_half(self, tmp_path: Path) -> None:
        """A picture that could not be drawn to its end leaves no file that would be taken for it."""
        store = PictureStore(tmp_path)
        name = store.name(b"bad", ".svg")
        with pytest.raises(ValueError, match="int"):
            store.draw(name, int, "no number")

        assert [] == list(tmp_path.iterdir())

    def test_other_processes_draw_what_one_does(self, tmp_path: Path) -> None:
        """Many pictures are shared out, and come out the same, the last few of a batch as well."""
        many = range(store_module.BATCH * 2 + 5)

        assert drawn(tmp_path / "alone", many) == drawn(tmp_path / "shared", many, beside=True)

    def test_charts_can_be_drawn_elsewhere(self, tmp_path: Path) -> None:
        """Every kind of chart can be handed to another process and comes out the same there."""
        store = PictureStore(tmp_path, beside=True)
        names = [store.name(repr(chart).encode(), ".svg") for chart in CHARTS]
        for name, chart in zip(names, CHARTS, strict=True):
            store.draw(name, chart_svg, chart)
        store.finish()

        assert [chart.draw() for chart in CHARTS] == [(tmp_path / name).read_bytes() for name in names]
