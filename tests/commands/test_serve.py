"""`serve`: the journal at its port, made anew at every save, whatever is in it."""

from __future__ import annotations

import contextlib
import socket
import subprocess
import sys
import threading
from collections.abc import Iterator
from pathlib import Path
from urllib.error import HTTPError
from urllib.request import urlopen

import pytest

from tests.commands.shell import TIDELINE, Shell, in_a_process

PATIENCE = 60.0
"""Seconds until a preview that says nothing is given up."""


@pytest.fixture
def free_port() -> int:
    """A port that nothing listens at."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port: int = probe.getsockname()[1]
    return port


class Preview:
    """A journal that is being served. said: the lines so far."""

    def __init__(self, folder: Path, port: int) -> None:
        self.top = f"http://127.0.0.1:{port}/"
        self.said: list[str] = []
        self.process = subprocess.Popen(
            [sys.executable, "-m", "journal_tools", "serve", "--port", str(port)],
            cwd=folder,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
            encoding="utf-8",
        )
        alarm = threading.Timer(PATIENCE, self.process.kill)
        alarm.start()
        assert self.process.stdout is not None
        for line in self.process.stdout:
            self.said.append(line)
            if "Serving on" in line:
                break
        alarm.cancel()

    def page(self, address: str) -> tuple[int, str]:
        """The status and the text of a page, once it is made."""
        try:
            with urlopen(self.top + address, timeout=PATIENCE) as answer:
                return answer.status, answer.read().decode("utf-8")
        except HTTPError as error:
            return error.code, error.read().decode("utf-8")

    def save(self, path: Path, text: str) -> None:
        """Save a record, and wait for the browser to be told that the site was made anew."""
        epoch = self._told(0)
        for _ in range(3):  # a save in the very moment when watching begins is not seen
            path.write_text(text, encoding="utf-8")
            with contextlib.suppress(TimeoutError):
                self._told(epoch)
                return
        raise AssertionError("the save was not seen")

    def _told(self, epoch: int) -> int:
        """The time of the site that stands, once it is younger than this one."""
        with urlopen(f"{self.top}livereload/{epoch}/1", timeout=PATIENCE / 3) as answer:
            return int(answer.read())


@pytest.fixture
def preview(tenterhook: Shell, free_port: int) -> Iterator[Preview]:
    """A journal of one warp, served until the test ends."""
    tenterhook.write("warps/tideline-towels", TIDELINE)
    served = Preview(tenterhook.folder, free_port)
    yield served
    served.process.terminate()
    served.process.communicate(timeout=PATIENCE)


class TestAPreview:
    def test_a_save_is_seen_and_a_fault_stops_nothing(self, tenterhook: Shell, preview: Preview) -> None:
        """A save shows at once; a fault is shown on its page while the rest works, and goes when mended."""
        path = tenterhook.folder / "entries" / "warps" / "tideline-towels.md"
        assert "11.7" in preview.page("warps/tideline-towels.html")[1]

        preview.save(path, TIDELINE.replace("17 7/8", "17 3/4"))
        assert "12.3" in preview.page("warps/tideline-towels.html")[1]

        preview.save(path, TIDELINE.replace("17 7/8 x 30 1/8", "a bit narrow"))
        status, page = preview.page("warps/tideline-towels.html")
        assert 200 == status
        assert "One thing to mend" in page
        assert "a bit narrow" in page
        assert "One thing to mend" in preview.page("index.html")[1]
        assert 200 == preview.page("how-it-is-reckoned.html")[0]

        preview.save(path, "---\ntitle: [Tideline\n---\n")  # not even YAML
        status, page = preview.page("warps/tideline-towels.html")
        assert 200 == status
        assert "One thing to mend" in page

        preview.save(path, TIDELINE)
        page = preview.page("warps/tideline-towels.html")[1]
        assert "thing to mend" not in page
        assert "11.7" in page

    def test_its_end_is_the_end_of_it(self, preview: Preview) -> None:
        """When it is ended, nothing goes on holding the port."""
        preview.process.terminate()
        preview.process.communicate(timeout=PATIENCE)

        with socket.socket() as caller:
            assert 0 != caller.connect_ex(("127.0.0.1", int(preview.top.rpartition(":")[2].strip("/"))))


class TestThePort:
    def test_a_port_that_is_taken(self, tenterhook: Shell) -> None:
        """A port that something else holds is not had, and the reason is told, with status 1."""
        with socket.socket() as other:
            other.bind(("127.0.0.1", 0))
            other.listen()
            port = other.getsockname()[1]
            said = tenterhook("serve", "--port", str(port))

        assert 1 == said.exit_code
        assert f"Port {port} is taken, perhaps by this journal served in another window." in said.stderr
        assert f"--port {port + 1}" in said.stderr

    def test_without_its_site_settings(self, tenterhook: Shell, free_port: int) -> None:
        """Without mkdocs.yml there is nothing to serve: it says so and ends."""
        (tenterhook.folder / "mkdocs.yml").unlink()
        ended = in_a_process(tenterhook.folder, "serve", "--port", str(free_port))

        assert 2 == ended.returncode
        assert "has no mkdocs.yml" in ended.stderr
