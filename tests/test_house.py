"""The house rules that no linter knows."""

from __future__ import annotations

import ast
import re

import click
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

from tests.house import PROJECT, name_of, own_files, pyproject, python_files, text_of

README = PROJECT / "README.md"


def found(pattern: str) -> list[str]:
    """Every line of the project's text that matches, with its place."""
    wanted = re.compile(pattern)
    return [
        f"{name_of(path)}:{number}: {line.strip()[:80]}"
        for path in own_files()
        for number, line in enumerate(text_of(path).splitlines(), 1)
        if wanted.search(line)
    ]


class TestFiles:
    def test_no_path_of_one_machine(self) -> None:
        """No file holds a path that only one person's machine has."""

        assert [] == found(r"/(?:ho[m]e|Use[r]s)/[a-z]\w+/|/(?:r[o]ot|w[o]rk)/|[A-Z]:\\U[s]ers\\")

    def test_no_host_of_a_package_list(self) -> None:
        """Packages are asked for by their names, so that any mirror will do."""

        assert [] == found(r"p[y]pi\.org|p[y]thonhosted|registry\.n[p]mjs|d[e]b\.debian\.org")

    def test_one_noun_a_file(self) -> None:
        """No file of code is over 400 lines: that would be two nouns."""
        code = {".py", ".js", ".html"}  # a stylesheet is one file, because a page fetches one
        lengths = {name_of(p): len(text_of(p).splitlines()) for p in own_files() if p.suffix in code}

        assert {} == {name: length for name, length in lengths.items() if length > 400}

    def test_every_file_says_what_it_holds(self) -> None:
        """No file is a drawer for odds and ends, by its name."""
        drawers = {"utils", "util", "helpers", "misc", "common", "tools"}

        assert [] == [name_of(path) for path in own_files() if path.stem in drawers]

    def test_nothing_large_is_kept(self) -> None:
        """No file is over a megabyte, so that a clone stays quick."""

        assert [] == [name_of(path) for path in own_files() if path.stat().st_size > 1_000_000]


class TestTests:
    def test_every_test_says_its_rule(self) -> None:
        """Every test says in a sentence what it holds true."""
        silent = [
            f"{name_of(path)}:{node.lineno} {node.name}"
            for path in python_files("tests/")
            for node in ast.walk(ast.parse(text_of(path)))
            if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef) and node.name.startswith("test_")
            if not (ast.get_docstring(node) or "").rstrip().endswith((".", "?", "!", ".)"))
        ]

        assert [] == silent

    def test_nothing_is_skipped(self) -> None:
        """No test is left out, be it for a missing browser or a missing package."""

        assert [] == found(r"pytest\.(?:ski[p]|importorski[p])|mark\.(?:ski[p]|xfai[l])")


class TestThePackage:
    def test_every_folder_of_code_is_packed(self) -> None:
        """The packages listed by hand are the folders that hold code."""
        folders = {path.parent for path in python_files("journal_tools/", "site_plugins/")}
        expected = sorted(name_of(folder).replace("/", ".") for folder in folders)

        assert expected == sorted(pyproject()["tool"]["setuptools"]["packages"])

    def test_every_other_file_is_packed_too(self) -> None:
        """What the code reads, templates and styles, goes into the package with it."""
        patterns = pyproject()["tool"]["setuptools"]["package-data"]
        packed = {path for package in patterns for glob in patterns[package] for path in (PROJECT / package).glob(glob)}
        beside = [path for path in own_files() if name_of(path).startswith(("journal_tools/", "site_plugins/"))]

        assert [] == [name_of(path) for path in beside if path.suffix != ".py" and path not in packed]

    def test_the_version_is_the_newest_of_the_changelog(self) -> None:
        """The package has the version that the changelog tells of first."""
        newest = re.search(r"^## (\S+)", text_of(PROJECT / "CHANGELOG.md"), re.MULTILINE)

        assert newest is not None
        assert pyproject()["project"]["version"] == newest[1]

    def test_pins_are_exact(self) -> None:
        """What the starter installs is named to the exact version."""
        for name in ("requirements.txt", "requirements-tests.txt"):
            for line in text_of(PROJECT / name).splitlines():
                plain = line.split("#")[0].strip()
                assert not plain or plain == "-r requirements.txt" or re.fullmatch(r"[\w.-]+==[\w.]+", plain)

    def test_pins_lie_in_the_ranges(self) -> None:
        """Every package that pyproject.toml asks for is pinned, to a version that its range allows."""
        pins = {}
        for line in text_of(PROJECT / "requirements.txt").splitlines():
            if "==" in (plain := line.split("#")[0]):
                name, version = plain.strip().split("==")
                pins[canonicalize_name(name)] = version

        for asked in map(Requirement, pyproject()["project"]["dependencies"]):
            assert pins[canonicalize_name(asked.name)] in asked.specifier

    def test_versions_that_break_live_reload_are_refused(self) -> None:
        """The releases of click under which saving an entry shows nothing are outside the range."""
        click_range = next(
            Requirement(text).specifier
            for text in pyproject()["project"]["dependencies"]
            if text.startswith("click")
        )

        assert [] == [bad for bad in ("8.2.2", "8.3.0", "8.3.1", "8.3.2", "8.3.3") if bad in click_range]
        assert [] == [good for good in ("8.2.1", "8.4.0", "8.5.1") if good not in click_range]


class TestTheWords:
    def test_the_two_commands(self) -> None:
        """README names the two commands, and the checks of every change run the second."""
        readme = text_of(README)

        assert "\npython3 start.py\n" in readme
        assert "\npython3 start.py test\n" in readme
        assert "start.py test" in text_of(PROJECT / ".ci" / "run")

    def test_every_command_is_explained(self) -> None:
        """Every command of tenterhook stands in README and shows an example in its own help."""
        from journal_tools.commands.main import main

        assert isinstance(main, click.Group)
        above = click.Context(main, info_name="tenterhook")
        names = main.list_commands(above)
        assert {"begin", "build", "check", "measure", "new", "past", "serve"} <= set(names)
        for name in names:
            command = main.get_command(above, name)
            assert command is not None
            told = command.get_help(click.Context(command, parent=above, info_name=name))
            examples = [line for line in told.splitlines() if f"tenterhook {name}" in line]
            assert f"`tenterhook {name}" in text_of(README) or f"\ntenterhook {name}" in text_of(README)
            assert [line for line in examples if not line.startswith("Usage")], f"{name} shows no example"

    def test_readme_points_at_what_is_there(self) -> None:
        """Every file that README and DEVELOPERS.md link to exists."""
        missing = []
        for name in ("README.md", "DEVELOPERS.md"):
            for link in re.findall(r"\]\(([^)#]+)", text_of(PROJECT / name)):
                if "://" not in link and not (PROJECT / link).exists():
                    missing.append(f"{name}: {link}")

        assert [] == missing
