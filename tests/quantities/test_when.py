"""Dates, as exact as they are known."""

from __future__ import annotations

import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal_tools.quantities import When, parse_when
from tests.quantities.refusals import refusal_of


@pytest.mark.parametrize(
    "text",
    ["2024-04-20", "2024/04/20", "2024-4-20", "20 April 2024", "20 Apr 2024", "20th April 2024",
     "April 20, 2024", "20/04/2024", "20.4.2024", "04/20/2024"],
)  # fmt: skip
def test_a_day(text: str) -> None:
    """The twentieth of April is the same day however it is written."""
    assert When(2024, 4, 20, None, False, text) == parse_when(text)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("2024-04", (2024, 4, None, None, False)),
        ("April 2016", (2016, 4, None, None, False)),
        ("Sept 2016", (2016, 9, None, None, False)),
        ("may 2016", (2016, 5, None, None, False)),
        ("2016", (2016, None, None, None, False)),
        ("spring 2016", (2016, None, None, "spring", False)),
        ("Fall 2016", (2016, None, None, "autumn", False)),
        ("~2016", (2016, None, None, None, True)),
        ("about 2016", (2016, None, None, None, True)),
        ("ca. March 2016", (2016, 3, None, None, True)),
    ],
)
def test_as_exact_as_known(text: str, expected: tuple[int, int | None, int | None, str | None, bool]) -> None:
    """A month, a season or a year will do, and "about" is kept."""
    assert When(*expected, text) == parse_when(text)


def test_two_readings() -> None:
    """04/05/2024 is a day in May to one weaver and in April to another: both are told."""
    right = refusal_of(parse_when, "04/05/2024").right

    assert "2024-05-04" in right
    assert "2024-04-05" in right


def test_same_either_way() -> None:
    """04/04/2024 is the fourth of April either way."""
    assert (4, 4) == (parse_when("04/04/2024").month, parse_when("04/04/2024").day)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("2024-13", "no month 13"),
        ("2024-00-10", "no month 0"),
        ("2024-02-30", "February 2024 has 29 days"),
        ("2023-02-29", "February 2023 has 28 days"),
        ("1900-02-29", "February 1900 has 28 days"),
        ("31 April 2024", "April 2024 has 30 days"),
        ("31/02/2024", "February 2024 has 29 days"),
        ("2024-04-00", "April 2024 has 30 days"),
        ("13/13/2024", "no month 13"),
        ("20 spring 2024", "no month or season"),
        ("Octember 2024", "no month or season"),
        ("1066", "The year 1066"),
        ("3024-01-01", "The year 3024"),
        ("20.4.24", "A date looks like"),
        ("April", "A date looks like"),
        ("", "A date looks like"),
        ("2024-04-20 10:00", "A date looks like"),
        ("yesterday", "A date looks like"),
    ],
)
def test_refused(text: str, words: str) -> None:
    """A day that never was is refused, and the calendar is told."""
    refusal = refusal_of(parse_when, text)

    assert text == refusal.read
    assert words in refusal.right


def test_order() -> None:
    """A year stands before its seasons and months, and a month before its days."""
    in_order = ["2015-12-31", "2016", "2016-01", "2016-03-01", "2016-03-02", "summer 2016", "2016-12-31", "2017"]
    dates = [parse_when(text) for text in reversed(in_order)]

    assert in_order == [when.text for when in sorted(dates, key=lambda when: when.key)]


@pytest.mark.parametrize(
    ("later", "earlier", "surely"),
    [
        ("2024-04-21", "2024-04-20", True),
        ("2024-04-20", "2024-04-20", False),
        ("2024-04", "2024-04-20", False),
        ("2024-05", "2024-04-20", True),
        ("2024", "2024-04-20", False),
        ("2025", "spring 2024", True),
        ("2025-02", "winter 2024", False),
        ("2025-04", "winter 2024", True),
        ("2017", "about 2016", False),
        ("2018", "about 2016", True),
    ],
)
def test_surely_after(later: str, earlier: str, surely: bool) -> None:
    """A date is only after another if it is so whichever days were meant."""
    assert surely == parse_when(later).surely_after(parse_when(earlier))


@pytest.mark.parametrize("text", ["20 April 2024", "March 2025", "spring 2016", "2016", "about 2016", "about May 2016"])
def test_shown(text: str) -> None:
    """A date is shown in words, and only as exactly as it is known."""
    assert text == parse_when(text).show()


@given(st.dates(datetime.date(1700, 1, 1), datetime.date(2199, 12, 31)))
def test_every_day_reads_back(day: datetime.date) -> None:
    """Every day of the calendar is read, and is the same when what is shown is read."""
    read = parse_when(day.isoformat())

    assert (day.year, day.month, day.day) == read.key == parse_when(read.show()).key
    assert read.key == read.first_day == read.last_day


@given(st.integers(1700, 2199), st.integers(1, 12))
def test_months_end_where_the_calendar_says(year: int, month: int) -> None:
    """The last day of a month is the day before the first of the next."""
    following = datetime.date(year + month // 12, month % 12 + 1, 1)
    last = following - datetime.timedelta(days=1)

    assert (last.year, last.month, last.day) == parse_when(f"{year}-{month:02}").last_day
