"""`check`: every problem in one run, and an exit status that means something."""

from __future__ import annotations

import json
import re

from tests.commands.shell import TIDELINE, Shell


class TestExitStatus:
    def test_an_empty_journal(self, tenterhook: Shell) -> None:
        """An empty journal has nothing to mend and nothing to ask: 0."""
        said = tenterhook("check")

        assert 0 == said.exit_code
        assert "no records yet: nothing to mend and nothing to ask.\n" == said.output

    def test_a_question_is_no_failure(self, tenterhook: Shell) -> None:
        """A yarn without a record is asked about, and the status is 0."""
        tenterhook.write("warps/tideline-towels", TIDELINE)
        said = tenterhook("check")

        assert 0 == said.exit_code
        assert "warps/tideline-towels.md:3 question yarn:" in said.output
        assert said.output.endswith("1 warp: 1 question.\n")

    def test_a_fault_fails(self, tenterhook: Shell) -> None:
        """A size that cannot be read is a fault, and the status is 1."""
        tenterhook.write("warps/tideline-towels", TIDELINE.replace("17 7/8 x 30 1/8", "narrower than I hoped"))
        said = tenterhook("check")

        assert 1 == said.exit_code
        assert "1 thing to mend" in said.output

    def test_every_problem_in_one_run(self, tenterhook: Shell) -> None:
        """Faults of several lines and several files are told together, each with its place and what was read."""
        tenterhook.write("warps/tideline-towels", TIDELINE.replace("20 1/4", "wide").replace("19 3/8 x 33", "long"))
        tenterhook.write("looms/big-loom", "---\ntitle: Big loom\nshafts: many\n---\n")
        said = tenterhook("check")

        for place, read in (
            ("warps/tideline-towels.md:5 to mend in_reed", "wide"),
            ("warps/tideline-towels.md:6 to mend on_loom", "long"),
            ("looms/big-loom.md:3 to mend shafts", "many"),
        ):
            assert f'{place}: read "{read}".' in said.output
        assert "3 things to mend" in said.output

    def test_what_to_paste(self, tenterhook: Shell) -> None:
        """A line to paste stands behind its word; one that is set in, or several, stand by themselves as typed."""
        tenterhook.write("warps/one", "---\nwash: 17 x 30\npieces:\n  - name: a\n    wash: 17 x 30\n---\n")
        tenterhook.write("warps/two", "---\nwashed: 17 x 30\nwashed: 16 x 29\n---\n")
        said = tenterhook("check").output

        assert "    to paste: washed: 17 x 30\n" in said
        assert "    to paste:\n    washed: 17 x 30\n" in said
        assert "    to paste:\nwashed:\n  - 17 x 30\n  - 16 x 29\n" in said
        assert "3 things to mend" in said

    def test_no_colours_where_nobody_looks(self, tenterhook: Shell) -> None:
        """Colours are for a terminal: what goes into a file has none."""
        tenterhook.write("warps/tideline-towels", TIDELINE)

        assert "\x1b" not in tenterhook("check").output

    def test_figures_beyond_belief(self, tenterhook: Shell) -> None:
        """A width that the other warps make incredible is asked about, and no more once it is accepted."""
        for number in range(10):
            other = TIDELINE.replace("17 7/8", f"17 {number % 3 + 5}/8").replace("30 1/8", f"30 {number % 4 + 1}/8")
            tenterhook.write(f"warps/towels-{number}", other)
        wild = TIDELINE.replace("17 7/8", "13 1/4")
        tenterhook.write("warps/wild-towels", wild)
        said = tenterhook("check")
        tenterhook.write("warps/wild-towels", wild.replace("in_reed", "accepted: incredible figure\nin_reed"))

        assert 0 == said.exit_code
        assert ["warps/wild-towels.md:7"] == re.findall(
            r"^(\S+) question.*incredible figure", said.output, re.MULTILINE
        )
        assert "incredible figure" not in tenterhook("check").output


class TestJson:
    KEYS = ["file", "line", "field", "read", "right", "severity", "slug", "mended"]

    def test_an_empty_list(self, tenterhook: Shell) -> None:
        """Without a problem it is an empty list and nothing else."""
        assert [] == json.loads(tenterhook("check", "--json").output)

    def test_one_object_a_problem(self, tenterhook: Shell) -> None:
        """Each problem is an object with its file, line, field, what was read and what would be right."""
        tenterhook.write("warps/tideline-towels", TIDELINE.replace("17 7/8 x 30 1/8", "narrow"))
        said = tenterhook("check", "--json")
        problems = json.loads(said.output)
        fault = next(problem for problem in problems if problem["severity"] == "fault")

        assert 1 == said.exit_code
        assert all(self.KEYS == list(problem) for problem in problems)
        assert ("warps/tideline-towels.md", 7, "washed", "narrow") == tuple(
            fault[key] for key in ("file", "line", "field", "read")
        )
        assert ["question"] == [problem["severity"] for problem in problems if problem is not fault]
