"""A real browser that looks at a site, and writes down what it asked for and what went wrong."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread
from typing import Any

from playwright.sync_api import Browser, Page, Request

TOP = "/loom/"
"""Where sites are served, as mkdocs.yml of the small journal says."""

KINDS = {
    "front": "index.html",
    "list of warps": "warps.html",
    "list of yarns": "yarns.html",
    "list of drafts": "drafts.html",
    "list of looms": "looms.html",
    "list of finishes": "finishes.html",
    "warp of stretches": "warps/gannet-napkins.html",
    "warp of pieces": "warps/estuary-towels.html",
    "warp in six lines": "warps/tideline-towels.html",
    "fulled warp": "warps/fold-blanket.html",
    "warp with bands": "warps/sett-sampler.html",
    "dressing sheet": "warps/gannet-napkins/dressing.html",
    "yarn": "yarns/cottolin-22-2.html",
    "draft": "drafts/huck-squares.html",
    "loom": "looms/small-loom.html",
    "finish": "finishes/hand-40-line.html",
    "trends": "trends.html",
    "plan a warp": "plan.html",
    "how it is reckoned": "how-it-is-reckoned.html",
    "field guide": "field-guide.html",
    "search": "search.html",
    "nothing there": "404.html",
}
"""Every kind of page, and one of that kind in the small journal."""


TURN = "[data-md-component=palette] label:visible"
"""The button that turns a light page dark, and back."""


SIDEWAYS = "document.documentElement.scrollWidth - document.documentElement.clientWidth"
"""How many pixels a page can be scrolled to the side."""


class Look:
    """One tab. requests: every address asked for. wrong: errors of scripts, the console and the network."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.requests: list[str] = []
        self.wrong: list[str] = []
        self.dialogs: list[str] = []
        page.on("request", lambda request: self.requests.append(request.url))
        page.on("requestfailed", self._not_had)
        page.on("pageerror", lambda error: self.wrong.append(f"script: {error}"))
        page.on("console", lambda told: self.wrong.append(told.text) if told.type in ("error", "warning") else None)
        page.on("dialog", self._dialog)

    def _not_had(self, request: Request) -> None:
        if request.failure != "net::ERR_ABORTED":  # which is what it is called to go on before all is there
            self.wrong.append(f"not had: {request.url}")

    def _dialog(self, dialog: Any) -> None:
        self.dialogs.append(dialog.message)
        dialog.dismiss()

    def at(self, address: str) -> Page:
        """Go there, and wait until everything is loaded."""
        self.page.goto(address, wait_until="load")
        return self.page

    @property
    def elsewhere(self) -> list[str]:
        """Addresses asked for that are not of this machine."""
        own = ("http://127.0.0.1:", "file://", "data:", "blob:", "about:")
        return [address for address in self.requests if not address.startswith(own)]


@contextmanager
def looking(browser: Browser, **how: Any) -> Iterator[Look]:
    """A fresh browser profile with one tab. how: width, height, color_scheme and the like."""
    size = {"width": how.pop("width", 1280), "height": how.pop("height", 800)}
    context = browser.new_context(viewport=size, **how)
    context.set_default_timeout(8_000)
    try:
        yield Look(context.new_page())
    finally:
        context.close()


class Quiet(SimpleHTTPRequestHandler):
    """Serves one folder at TOP, and says nothing."""

    def translate_path(self, path: str) -> str:
        """The file of an address; what is not below TOP is not there."""
        return super().translate_path("/" + path.removeprefix(TOP) if path.startswith(TOP) else "/-")

    def log_message(self, *_: object) -> None:
        """Not a word."""


class Patient(ThreadingHTTPServer):
    """A server that does not mind a browser that goes on before it has everything."""

    def handle_error(self, *_: object) -> None:
        """Nothing: what a page does not get, its own tab tells of."""


@contextmanager
def serving(site: Path) -> Iterator[str]:
    """A site on this machine, for as long as it is wanted; gives the address of its top."""
    with Patient(("127.0.0.1", 0), partial(Quiet, directory=str(site))) as server:
        Thread(target=server.serve_forever, kwargs={"poll_interval": 0.02}, daemon=True).start()
        yield f"http://127.0.0.1:{server.server_address[1]}{TOP}"
        server.shutdown()
