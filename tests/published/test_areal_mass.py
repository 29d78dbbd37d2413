"""Areal mass from sett, yarn number and crimp: g/m² = Σ threads/m x (1 + crimp) x tex / 1000.

Yarn numbers by ASTM D2260: tex = 590.541 247 / Ne with exact pounds and yards. The worked cloth is on
https://www.textilecalculations.com/fabric-weight-calculation-gsm/ (120 x 70 threads to the inch, 40s x 30s
cotton, 3 % and 5 % crimp), which multiplies by 23.25 what it rounds to 3.09 + 2.45.
"""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from journal_tools.ledger.mass import areal_mass
from journal_tools.quantities import parse_yarn_number
from tests.ledger.desk import woven

PER_INCH = 1000 / 25.4
"""Threads to the metre for one to the inch."""


def tex(label: str) -> float:
    """The linear density of a cotton yarn, by the journal's own reading of its label."""
    return float(parse_yarn_number(label, "cotton").tex)


def test_the_worked_cloth() -> None:
    """120 x 70, 40s x 30s: the page's rounded bracket gives 128.8, the definition 128.80 g/m²."""
    found = areal_mass(120 * PER_INCH, tex("40/1 cotton"), 0.03, 70 * PER_INCH, tex("30/1 cotton"), 0.05)

    assert pytest.approx(23.25 * (3.09 + 2.45), rel=1e-3) == found
    assert 128.80 == round(found, 2)


@pytest.mark.parametrize(("crimp", "expected"), [(0, 232.50), (0.08, 251.10)])
def test_8_2_cotton(crimp: float, expected: float) -> None:
    """8/2 cotton at 20 x 20: computed from the definition, 590.541 247 / 4 tex at 20 / 0.0254 threads a metre."""
    by_hand = 2 * (20 / 0.0254) * (1 + crimp) * (590.541247 / (8 / 2)) / 1000
    found = areal_mass(20 * PER_INCH, tex("8/2 cotton"), crimp, 20 * PER_INCH, tex("8/2 cotton"), crimp)

    assert expected == round(found, 2)
    assert pytest.approx(by_hand) == found


def test_the_constant() -> None:
    """In inches and cotton counts the formula has the constant 23.249 655; computed from the definition."""
    found = areal_mass(PER_INCH, tex("1/1 cotton"), 0, 0, 1, 0)

    assert pytest.approx(23.249655, abs=5e-7) == found


def test_the_journal_s_reckoning_agrees(tmp_path: Path) -> None:
    """The journal weighs a piece by the length of its threads; over its area that is the same formula.

    A towel in 8/2 cotton, 400 ends and 600 picks, 18 x 28 in washed: the crimp of the warp is its length
    as wound into the piece over 28 in, the crimp of the weft its length over 18 in.
    """
    header = "yarn: cotton\nends: 400\nin_reed: 20\non_loom: 19 x 30\nwashed: 18 x 28\npicks: 600"
    made = woven(tmp_path, header, yarns__cotton="fibre: cotton\nnumber: 8/2 cotton").pieces[0]
    warp_crimp, weft_crimp = 30 / (1 - 0.06) / 28 - 1, 20 * 1.05 / 18 - 1
    ends, picks = made.counts.ends_per_m, made.counts.picks_per_m

    assert made.mass is not None
    assert made.mass.areal_mass is not None
    assert ends is not None
    assert picks is not None
    assert math.isclose(
        areal_mass(ends, tex("8/2 cotton"), warp_crimp, picks, tex("8/2 cotton"), weft_crimp), made.mass.areal_mass
    )
