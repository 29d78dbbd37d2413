"""The threading in groups with boxes."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal_tools.dressing.runs import root_of, runs_of
from journal_tools.dressing.sections import Section, sections_of, threaded
from journal_tools.notation import Sets, parse_threading

THREADINGS = st.lists(st.sets(st.integers(1, 8), max_size=2).map(frozenset), min_size=1, max_size=60)


def told(threading: str, ends: int) -> list[tuple[int, list[Sets]]]:
    """Each section: how often, and its groups."""
    sections = sections_of(parse_threading(threading), ends)
    return [(each.times, list(each.groups)) for each in sections]


def of(times: int, *groups: str) -> tuple[int, list[Sets]]:
    """So many times these groups."""
    return times, [parse_threading(group) for group in groups]


class TestGroups:
    def test_a_repeat_is_a_group(self) -> None:
        """A point on four over 72 ends is twelve times the six of its repeat, with a box each."""
        assert [of(12, "1-4, 3-2")] == told("1-4, 3-2", 72)

    def test_the_last_repeat_is_broken_off(self) -> None:
        """73 ends of it are twelve repeats, and the first end once more."""
        assert [of(12, "1-4, 3-2"), of(1, "1")] == told("1-4, 3-2", 73)
        assert [False, True] == [each.broken for each in sections_of(parse_threading("1-4, 3-2"), 73)]

    def test_two_shafts_fill_a_hand(self) -> None:
        """Plain weave over 28 ends is drawn in by eights, and the four left over last."""
        assert [of(3, "4 times (1, 2)"), of(1, "1, 2, 1, 2")] == told("1, 2", 28)

    @pytest.mark.parametrize(
        ("threading", "groups"),
        [
            ("3 times (1-4), 3 times (2, 1, 4, 3)", ["1-4"] * 3 + ["2, 1, 4, 3"] * 3),
            ("1-8, 7-2", ["1-8", "7-2"]),
            ("1, 3, 1, 3, 1, 2, 4, 2, 4, 2", ["1, 3, 1, 3, 1, 2, 4, 2, 4, 2"]),
            (
                "6 times (1, 2), 3 times (3, 4), 2 times (1, 2), 3 times (3, 4)",
                ["3 times (1, 2)", "3 times (1, 2)", "3 times (3, 4)", "1, 2, 1, 2", "3 times (3, 4)"],
            ),
        ],
    )
    def test_a_long_repeat_is_cut_where_it_turns_or_repeats(self, threading: str, groups: list[str]) -> None:
        """Ten ends are one group; more are cut into four to eight, at the ends of small repeats and at turns."""
        ends = 5 * len(parse_threading(threading))

        assert [of(5, *groups)] == told(threading, ends)

    def test_borders(self) -> None:
        """A threading for the whole width tells its borders once and its middle as often as it stands."""
        assert [of(1, "1-4, 1-4"), of(10, "1-4, 3-2"), of(1, "1, 4-1, 4-1")] == told(
            "2 times (1-4), 10 times (1-4, 3-2), 1, 2 times (4-1)", 77
        )

    @pytest.mark.parametrize(
        ("threading", "ends", "boxes", "each"),
        [("1-4", 96, 24, 4), ("1-4", 100, 12, 8), ("1-4", 544, 34, 16), ("1-4", 2000, 83, 24), ("1, 2", 400, 25, 16)],
    )
    def test_several_repeats_to_a_box(self, threading: str, ends: int, boxes: int, each: int) -> None:
        """544 ends of a straight draw on four are 34 boxes of 16 and not 136 of 4; up to 24 keep one repeat each."""
        first, *rest = sections_of(parse_threading(threading), ends)

        assert (boxes, each) == (first.boxes, first.repeat_ends)
        assert ends - boxes * each == sum(section.ends for section in rest) < each

    def test_boxes_begin_with_colours(self) -> None:
        """Where 8 and 16 ends would both do, stripes that begin after every 16 ends choose."""
        straight = parse_threading("1-4")

        assert 8 == sections_of(straight, 160)[0].repeat_ends
        assert 8 == sections_of(straight, 160, {40, 80, 120})[0].repeat_ends
        assert 24 == sections_of(straight, 480, {24, 72, 408})[0].repeat_ends

    def test_rows_count_ends(self) -> None:
        """Each box is numbered by the end that it brings the count to: 5 and 9, then 14 and 18."""
        two = (parse_threading("1-5"), parse_threading("1-4"))

        assert [(5, 9), (14, 18)] == list(Section(two, 2, 1).rows())


class TestEveryThreading:
    @given(THREADINGS, st.integers(1, 500))
    def test_boxes_times_groups_are_the_ends(self, threading: list[frozenset[int]], ends: int) -> None:
        """The groups of all boxes, one after the other, are the threading end by end, and so count up to the ends."""
        sections = sections_of(tuple(threading), ends)
        drawn_in = [end for each in sections for _ in range(each.times) for group in each.groups for end in group]
        counted = [to for each in sections for row in each.rows() for to in row]

        assert list(threaded(tuple(threading), ends)) == drawn_in
        assert ends == sum(sum(map(len, each.groups)) * each.times for each in sections)
        assert sum(each.boxes for each in sections) == len(counted)
        assert ends == counted[-1]
        assert all(1 <= len(group) <= 24 for each in sections for group in each.groups)

    @given(st.lists(st.sampled_from("ab c"), max_size=80))
    def test_runs_are_the_row(self, items: list[str]) -> None:
        """Blocks, each as often as it stands, put end to end are the row."""
        assert items == [item for run in runs_of(items) for item in run.block * run.times]

    @given(st.lists(st.sampled_from("ab c"), max_size=40))
    def test_what_covers_most_is_kept_whole(self, items: list[str]) -> None:
        """Of all blocks that follow themselves, one that stands for most other ends is among those found."""
        found = max((len(run.block) * (run.times - 1) for run in runs_of(items)), default=0)
        most = 0
        for start in range(len(items)):
            for length in range(1, (len(items) - start) // 2 + 1):
                times = 1
                while items[start + times * length :][:length] == items[start:][:length]:
                    times += 1
                most = max(most, length * (times - 1))

        assert most == found

    @given(st.lists(st.sampled_from("ab"), min_size=1, max_size=12), st.integers(1, 5))
    def test_the_root(self, items: list[str], times: int) -> None:
        """The shortest repeat of a row is that of the row repeated."""
        assert root_of(items) == root_of(items * times)
        assert tuple(items) == root_of(items) * (len(items) // len(root_of(items)))
