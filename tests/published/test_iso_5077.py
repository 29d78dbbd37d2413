"""Dimensional change by ISO 5077:2007: change % = (final - original) / original x 100.

The formula, and that three specimens are taken where possible, as quoted in published summaries of the
standard (texfire.net, "ISO 5077 estabilidad dimensional"; the text itself is sold). That a minus means
shrinkage is from memory. Marks are sewn or inked, as ISO 3759 allows.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.ledger.desk import losses, the_row, woven


def change(final: float, original: float) -> float:
    """Dimensional change as ISO 5077 has it, per cent."""
    return (final - original) / original * 100


class TestMarkedSquare:
    """A square of cloth, marked before the wash and measured after it, in mm."""

    @pytest.mark.parametrize(
        ("original", "final"), [((350, 350), (332, 340)), ((500, 500), (455, 470)), ((350, 350), (352, 350))]
    )
    def test_loss_is_the_negative_of_the_change(
        self, tmp_path: Path, original: tuple[int, int], final: tuple[int, int]
    ) -> None:
        """A loss is dimensional change with its sign turned: shrinkage is a loss, growth a negative one."""
        header = f"units: mm\nmarks: {original[0]} x {original[1]}\nwashed: {final[0]} x {final[1]}"
        lost = losses(woven(tmp_path, header).rows)

        assert pytest.approx(-change(final[0], original[0])) == lost["width, off to washed"] * 100
        assert pytest.approx(-change(final[1], original[1])) == lost["length, off to washed"] * 100

    def test_each_direction_by_itself(self, tmp_path: Path) -> None:
        """Length and width are reported separately, never as one figure."""
        lost = losses(woven(tmp_path, "units: mm\nmarks: 350 x 350\nwashed: 332 x 340").rows)

        assert {"width", "length"} == {label.split(",")[0] for label in lost}


class TestSpecimens:
    """Three specimens of the same cloth."""

    def test_mean(self, tmp_path: Path) -> None:
        """Specimens are averaged in each direction (from memory), the changes of 350 mm marks here by hand."""
        finals = [(332, 340), (334, 341), (330, 339)]
        pieces = "".join(f"\n  - name: {n}\n    washed: {w} x {h}" for n, (w, h) in zip("abc", finals, strict=True))
        rows = woven(tmp_path, f"units: mm\nmarks: 350 x 350\npieces:{pieces}").warp_rows
        widths = [change(w, 350) for w, _ in finals]
        lengths = [change(h, 350) for _, h in finals]

        assert pytest.approx(-sum(widths) / 3) == the_row(rows, "width, off to washed").loss * 100
        assert pytest.approx(-sum(lengths) / 3) == the_row(rows, "length, off to washed").loss * 100


def test_several_washes_from_the_same_marks(tmp_path: Path) -> None:
    """Change after any agreed wash is from the original marks, so the steps multiply to it.

    That it is taken after the first, the third or another agreed wash: a public summary of AATCC TM135,
    https://freestandardsdocuments.com/test-method-for-dimensional-changes.html ; the base is from memory.
    """
    lost = losses(woven(tmp_path, "units: mm\nmarks: 500 x 500\nwashed:\n  - 475 x 470\n  - 470 x 460").rows)
    first, second = lost["width, off to washed 1"], lost["width, washed 1 to washed 2"]

    assert pytest.approx(-change(470, 500)) == lost["width, off to washed 2"] * 100
    assert pytest.approx(1 - (1 - first) * (1 - second)) == lost["width, off to washed 2"]
