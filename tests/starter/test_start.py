"""start.py: what it says and does before, between and after the long installs."""

from __future__ import annotations

import json
import os
import shutil
import socket
import subprocess
import sys
import textwrap
from collections.abc import Iterator
from pathlib import Path

import pytest

from starter import environment as making
from starter.checks import find_chromium, need_chromium, need_driver
from starter.environment import UNFINISHED, Environment
from starter.main import called_as, read_port, start
from starter.serving import answers, journal_folder, stop_if_taken
from starter.speech import Stop, show_installing

PROJECT = Path(__file__).parents[2]


@pytest.fixture
def project(tmp_path: Path) -> Path:
    """A folder with the starter and the lists, in a place with blanks and letters beyond ASCII."""
    folder = tmp_path / "My Jöurnal (1)"
    folder.mkdir()
    for name in ("start.py", "requirements.txt", "requirements-tests.txt", "pyproject.toml"):
        shutil.copy(PROJECT / name, folder)
    shutil.copytree(PROJECT / "starter", folder / "starter")
    return folder


@pytest.fixture
def finished(project: Path) -> Environment:
    """An environment that says of itself that all its steps are done."""
    environment = Environment(project)
    Path(environment.python).parent.mkdir(parents=True)
    Path(environment.python).touch()
    environment.remember(environment.wanted(tests=True))
    return environment


@pytest.fixture
def taken_port() -> Iterator[int]:
    """A port that something else listens at."""
    with socket.socket() as other:
        other.bind(("127.0.0.1", 0))
        other.listen()
        yield other.getsockname()[1]


class TestTheSteps:
    def test_nothing_is_done_twice(self, finished: Environment) -> None:
        """When nothing has changed, a second start has no step to do."""

        assert [] == finished.missing(tests=True)

    def test_a_changed_list_begins_anew(self, finished: Environment) -> None:
        """When a pinned package changes, every step is done again."""
        pins = finished.project / "requirements.txt"
        pins.write_text(pins.read_text(encoding="utf-8").replace("click==", "click==9."), encoding="utf-8")

        assert ["packages", "project"] == finished.missing(tests=False)

    def test_another_python_begins_anew(
        self, finished: Environment, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        """An environment made by one Python is not used by another."""
        monkeypatch.setattr(sys, "version", "3.99.0 (some other build)")

        assert ["packages", "project"] == finished.missing(tests=False)

    def test_a_moved_folder_is_only_told_its_new_place(self, finished: Environment) -> None:
        """After a move no package is fetched: only the project itself is put in again, offline."""
        moved = finished.project.with_name("moved")
        finished.project.rename(moved)

        assert ["project"] == Environment(moved).missing(tests=True)

    def test_the_tests_are_added_to_what_is_there(self, finished: Environment) -> None:
        """The first `test` after a first start only adds what the tests need."""
        finished.remember(finished.wanted(tests=False))

        assert [] == finished.missing(tests=False)
        assert ["tests"] == finished.missing(tests=True)

    def test_an_unfinished_step_begins_anew(self, finished: Environment) -> None:
        """An install that was cut short is thrown away by the next start that wants it, and by no other."""
        finished.remember({**finished.wanted(tests=True), "tests": UNFINISHED})

        assert ["packages", "project", "tests"] == finished.missing(tests=True)
        assert [] == finished.missing(tests=False)

    @pytest.mark.parametrize("state", ["", "{", "[]", '"done"'])
    def test_a_spoilt_note_begins_anew(self, finished: Environment, state: str) -> None:
        """When the note of what was done cannot be read, all is done again."""
        finished.state_file.write_text(state, encoding="utf-8")

        assert ["packages", "project"] == finished.missing(tests=False)

    def test_a_lost_python_begins_anew(self, finished: Environment) -> None:
        """When the machine's Python went away under the environment, all is done again."""
        Path(finished.python).unlink()

        assert ["packages", "project"] == finished.missing(tests=False)


class TestMaking:
    def test_nothing_half_made_without_venv(self, project: Path) -> None:
        """Where Python came without venv, the one line to type is told and no file is made."""
        before = sorted(project.rglob("*"))
        pretend = "import sys, runpy; sys.dont_write_bytecode = True; sys.modules['ensurepip'] = None\n"
        script = pretend + "sys.argv = ['start.py', 'build']; runpy.run_path('start.py', run_name='__main__')"
        ran = subprocess.run(
            [sys.executable, "-c", f"import sys; sys.path.insert(0, '.')\n{script}"],
            cwd=project,
            capture_output=True,
            text=True,
        )

        assert 1 == ran.returncode
        assert f"sudo apt install python3.{sys.version_info.minor}-venv" in ran.stderr
        assert "Traceback" not in ran.stderr
        assert before == sorted(project.rglob("*"))

    def test_a_failed_install_leaves_nothing(self, project: Path, monkeypatch: pytest.MonkeyPatch) -> None:
        """When the packages cannot be had, pip's words are told and no environment is left."""
        (project / "requirements.txt").write_text("no-such-package-for-weavers==1\n", encoding="utf-8")
        monkeypatch.setenv("PIP_NO_INDEX", "1")

        with pytest.raises(Stop, match="no-such-package-for-weavers"):
            Environment(project).make()
        assert not (project / ".venv").exists()

    def test_a_strange_venv_is_left_alone(self, project: Path) -> None:
        """A .venv that the weaver made for something else is never thrown away."""
        own = project / ".venv" / "own.txt"
        own.parent.mkdir()
        own.write_text("mine", encoding="utf-8")

        with pytest.raises(Stop, match="did not make"):
            Environment(project).make()
        assert "mine" == own.read_text(encoding="utf-8")

    def test_steps_are_marked_before_they_run(
        self, finished: Environment, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        """A step reads as unfinished while it runs, and as done when it is."""
        finished.remember(finished.wanted(tests=False))
        seen = []

        def look(_self: Environment, *_words: str, total: int) -> None:
            seen.append(json.loads(finished.state_file.read_text(encoding="utf-8"))["tests"])

        monkeypatch.setattr(Environment, "pip", look)
        finished.make(tests=True)

        assert [UNFINISHED] == seen
        assert finished.wanted(tests=True) == finished.state()

    def test_one_start_waits_for_another(self, tmp_path: Path) -> None:
        """While one start changes the environment, a second one cannot have the lock."""
        lock = tmp_path / ".cache" / "start.lock"
        with making.only_one(lock), lock.open("a+") as second:
            assert not making.take(second.fileno())
        with lock.open("a+") as third:
            assert making.take(third.fileno())

    def test_surroundings_lead_nothing_astray(self, monkeypatch: pytest.MonkeyPatch) -> None:
        """Settings of another Python do not reach this one, and a proxy does."""
        monkeypatch.setenv("PYTHONHOME", "/elsewhere")
        monkeypatch.setenv("PIP_PREFIX", "/elsewhere")
        monkeypatch.setenv("HTTPS_PROXY", "http://127.0.0.1:9")
        around = making.surroundings(MORE="1")

        assert "PYTHONHOME" not in around
        assert "PIP_PREFIX" not in around
        assert "http://127.0.0.1:9" == around["HTTPS_PROXY"]
        assert "1" == around["MORE"]

    def test_progress_is_counted(self, capsys: pytest.CaptureFixture[str]) -> None:
        """While packages come in, the starter says how many of how many are here."""
        lines = [f"Collecting package{n}==1\n" for n in range(20)] + ["Installing collected packages: all\n"]
        kept = show_installing(lines, 24)

        assert 21 == len(kept)
        assert "  10 of 24\n  20 of 24\n  20 fetched, putting them in place\n" == capsys.readouterr().err


class TestThePort:
    def test_a_taken_port_stops_with_the_reason(self, taken_port: int) -> None:
        """When another program holds the port, the starter says so and takes no other by itself."""
        with pytest.raises(Stop, match=rf"Port {taken_port} cannot be had.*\n.*\n.*--port {taken_port + 1}"):
            stop_if_taken(taken_port)

    def test_it_stops_before_anything_is_installed(self, project: Path, taken_port: int) -> None:
        """A taken port is told at once, not after the install."""
        with pytest.raises(Stop, match="cannot be had"):
            start(["--port", str(taken_port)], "", project)
        assert not (project / ".venv").exists()

    def test_a_free_port_is_free(self, taken_port: int) -> None:
        """A port that was closed again can be had, and nothing answers there."""
        with socket.socket() as short:
            short.bind(("127.0.0.1", 0))
            port = short.getsockname()[1]
        stop_if_taken(port)

        assert not answers(port)
        assert answers(taken_port)

    @pytest.mark.parametrize("words", [[], ["80"], ["x"], ["8400", "8401"], ["65535"], ["-1"]])
    def test_a_port_that_is_none(self, words: list[str]) -> None:
        """After --port comes one number that anyone may open; all else is refused with an example."""
        with pytest.raises(Stop, match="--port 8400"):
            read_port(words)

    def test_the_port_that_was_asked_for(self) -> None:
        """`--port 8400` means 8400."""

        assert 8400 == read_port(["8400"])


class TestTheWords:
    def test_an_unknown_option(self, project: Path) -> None:
        """An option that start.py does not know is named, with the way to its help."""
        with pytest.raises(Stop, match=r"--fast.*--help"):
            start(["--fast"], "", project)

    def test_the_journal_one_stands_in(self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
        """In a weaver's own journal that one is served; anywhere else, the demonstration."""
        monkeypatch.chdir(tmp_path)
        assert PROJECT == journal_folder(PROJECT)

        (tmp_path / "entries").mkdir()
        assert tmp_path == journal_folder(PROJECT)

    def test_commands_know_what_they_are_called(
        self, finished: Environment, capfd: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
    ) -> None:
        """A command is told the words that started it, and these words start it from any folder."""
        python = Path(finished.python)
        python.write_text('#!/bin/sh\necho "$TENTERHOOK_CALLED"\n', encoding="utf-8")
        python.chmod(0o755)
        monkeypatch.chdir(finished.project.parent)

        assert 0 == start(["begin", "my-journal"], "", finished.project)
        called = capfd.readouterr().out.strip()
        assert called == called_as(finished.project)
        helped = subprocess.run(f"{called} --help", shell=True, cwd="/", capture_output=True, text=True, check=True)
        assert helped.stdout.startswith("Tenterhook in one command")

    def test_an_old_python_is_told(self) -> None:
        """The first lines of start.py are plain enough for a Python of twenty years ago to read."""
        text = (PROJECT / "start.py").read_text(encoding="ascii")
        gate = text[: text.index("from starter")]

        assert "f'" not in gate
        assert 'f"' not in gate
        told = textwrap.dedent(
            """
            import sys
            sys.version_info = (3, 10, 0)
            exec(compile(open("start.py").read(), "start.py", "exec"))
            """
        )
        ran = subprocess.run([sys.executable, "-c", told], cwd=PROJECT, capture_output=True, text=True)
        assert 1 == ran.returncode
        assert ran.stderr.startswith("Tenterhook needs Python 3.11 or newer, and this is Python 3.10.")
        assert 1 == ran.stderr.count("\n")


class TestTheBrowser:
    def test_a_driver_that_cannot_run(self, tmp_path: Path) -> None:
        """Where a library is missing for the browser's driver, its own words and the line to type are told."""
        broken = tmp_path / "python"
        broken.write_text("#!/bin/sh\necho libatomic.so.1: not found >&2\nexit 127\n", encoding="utf-8")
        broken.chmod(0o755)

        with pytest.raises(Stop, match=r"libatomic.so.1: not found\n(.*\n)+.*sudo apt install libatomic1"):
            need_driver(str(broken))
        need_driver(sys.executable)

    def test_a_browser_on_the_path(self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
        """Chromium is found under each of its names."""
        monkeypatch.delenv("TENTERHOOK_CHROMIUM", raising=False)
        for name in ("chromium", "chromium-browser", "google-chrome"):
            folder = tmp_path / name
            folder.mkdir()
            program = folder / (f"{name}.exe" if os.name == "nt" else name)
            program.touch(mode=0o755)
            monkeypatch.setenv("PATH", str(folder))

            assert str(program) == find_chromium()

    def test_no_browser_no_tests(self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
        """Without a browser the tests stop before they begin, with the line that brings one."""
        monkeypatch.delenv("TENTERHOOK_CHROMIUM", raising=False)
        monkeypatch.setenv("PATH", str(tmp_path))
        monkeypatch.setattr("starter.checks.usual_places", lambda: [tmp_path / "none"])

        with pytest.raises(Stop, match="sudo apt install chromium"):
            need_chromium()
