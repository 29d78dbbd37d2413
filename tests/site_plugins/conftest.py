"""The demonstration journal's site, built once a worker, and served on a port of its own."""

from __future__ import annotations

import threading
from collections.abc import Iterator
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

import pytest

from tests.house import PROJECT
from tests.site_plugins.building import build_with


class Quiet(SimpleHTTPRequestHandler):
    """A file server that does not talk."""

    def log_message(self, format: str, *args: object) -> None:
        """Say nothing."""


@pytest.fixture(scope="session")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of the demonstration journal's built site."""
    folder = tmp_path_factory.mktemp("demo")
    for name in ("mkdocs.yml", "entries"):
        (folder / name).symlink_to(PROJECT / name)
    built = build_with("mkdocs", folder)
    assert 0 == built.returncode, built.stderr
    return folder / "site"


@pytest.fixture(scope="session")
def demo_address(demo: Path) -> Iterator[str]:
    """Where the demonstration journal's site is served, with a slash at the end."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(Quiet, directory=demo))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}/"
    server.shutdown()
    server.server_close()
