"""Files put together from pieces, right and wrong: each is answered, and what was read once stays what it is."""

from __future__ import annotations

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from journal_tools.drafts import Draft
from journal_tools.interchange import Extras, read_wif, record_text, write_wif
from journal_tools.interchange.colours import OURS
from journal_tools.interchange.what_was_read import Kept
from journal_tools.notation import parse_threading
from journal_tools.records import read_journal

KEYS = {
    "WEAVING": ["Shafts", "Treadles", "Rising Shed", "Profile"],
    "WARP": ["Threads", "Color", "Units", "Spacing", "Thickness", "Symbol"],
    "WEFT": ["Threads", "Color", "Units", "Spacing", "Thickness"],
    "COLOR PALETTE": ["Entries", "Form", "Range"],
    "TEXT": ["Title", "author", "EMail", "Mobile"],
    "WIF": ["Version", "Developers", "Source Program"],
    OURS: ["colour 1", "colour 2", "warp order", "weft order", "floating selvedges", "warp spacing", "weft thickness"],
}
NUMBERED = ["NOTES", "COLOR TABLE", "THREADING", "TIEUP", "TREADLING", "LIFTPLAN"] + [
    f"{system} {what}" for system in ("WARP", "WEFT") for what in ("COLORS", "SPACING", "THICKNESS", "SYMBOLS")
]
VALUES = st.one_of(
    st.integers(-1, 9).map(str),
    st.sampled_from(["true", "off", "1,2", "2,3", "1, 4", "9,255,0,0", "255,0,128", "0,255", "1,256", "0.5", "0,25"]),
    st.sampled_from(["Inches", "Centimeters", "Decipoints", "RGB", "x", "20bone", "sea-green", "a, 1a", "", "1e-3"]),
    st.text(max_size=8),
)
WHOLE = Draft(parse_threading("1-4"), parse_threading("1+2, 2+3, 3+4, 1+4"), parse_threading("1-4, 4-1"))


@st.composite
def sections(draw: st.DrawFn) -> str:
    """A section with entries that may mean something."""
    name = draw(st.sampled_from([*KEYS, *NUMBERED, *NUMBERED, "PRIVATE LOOM Things", "CONTENTS", "", "a=b", ";"]))
    keys = st.sampled_from(KEYS[name]) if name in KEYS else st.integers(0, 9).map(str)
    lines = draw(st.lists(st.tuples(keys, VALUES).map("=".join) | st.text(max_size=8), max_size=8))
    return "\n".join([f"[{name}]", *lines, ""])


@st.composite
def files(draw: st.DrawFn) -> str:
    """Pieces in any order behind a head, most of them with a draft among them."""
    parts = draw(st.lists(sections(), max_size=8))
    if draw(st.integers(0, 3)):
        parts.insert(draw(st.integers(0, len(parts))), write_wif(WHOLE).decode().replace("\r", ""))
    return "[WIF]\nVersion=1.1\n" + draw(st.sampled_from(["", "\n"])).join(parts)


@given(files())
def test_read_once_and_for_all(text: str) -> None:
    """What a file came to, once written, is read as the same, and written as the same bytes."""
    read = read_wif(text.encode(errors="replace"), "a.wif")
    if read.draft is None:
        assert any(problem.is_fault for problem in read.told)
        return
    first = write_wif(read.draft, Extras.of(read))
    again = read_wif(first, "a.wif")

    assert read.draft == again.draft
    assert (read.text, read.notes.rstrip(), read.kept) == (again.text, again.notes.rstrip(), again.kept)
    assert read.colours.items() <= again.colours.items()
    assert again.draft is not None
    assert first == write_wif(again.draft, Extras.of(again))


@given(files())
@settings(suppress_health_check=[HealthCheck.too_slow])
def test_any_file_makes_a_record(tmp_path_factory: pytest.TempPathFactory, text: str) -> None:
    """Whatever was read of a file, its record is read without a fault."""
    read = read_wif(text.encode(errors="replace"), "a.wif")
    folder = tmp_path_factory.getbasetemp() / "any"
    (folder / "drafts").mkdir(parents=True, exist_ok=True)
    (folder / "drafts" / "read.md").write_text(record_text(read) or "---\ntitle: None\n---\n", encoding="utf-8")

    assert [] == [problem.sentence() for problem in read_journal(folder).problems if problem.is_fault]


@given(
    st.lists(st.text("ab =;[]\t.é", max_size=8).filter(lambda line: not line.strip().startswith("[")), max_size=6),
    st.lists(st.text("ab =;\t.é", max_size=8), max_size=6),
)
def test_kept_lines(first: list[str], second: list[str]) -> None:
    """Kept sections come back line for line, blank ones and indents too, however often they are written."""
    kept = (Kept("PRIVATE LOOM One", tuple(first)), Kept("Other", tuple(second)))
    once = write_wif(WHOLE, Extras(kept=kept))
    read = read_wif(once, "a.wif")

    assert kept == read.kept
    assert once == write_wif(WHOLE, Extras.of(read))
