"""One build of a journal's site: what MkDocs is told, and the files it is given."""

from __future__ import annotations

import json
import logging
import os
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from html import escape
from pathlib import Path
from typing import TYPE_CHECKING, Any

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.structure.files import File, Files, InclusionLevel

from journal_tools.pages.style_assets import SCRIPT, STYLESHEET, style_assets
from journal_tools.problems import Problem
from site_plugins.tenterhook.notes import PlainNotes

if TYPE_CHECKING:
    from journal_tools.pages import Page, Site

log = logging.getLogger("mkdocs.plugins.tenterhook")

THEME = Path(__file__).parent / "theme"
ROOMS = ("warps", "yarns", "drafts", "looms", "finishes", "trends", "plan")
"""The pages that the bar at the top leads to, in this order, where they exist."""
CELLAR = ("how-it-is-reckoned", "field-guide")
"""The pages that the foot leads to."""
SEARCH = "search"
SHIELD = "---\nkind: page\n---\n\n"
"""Stands before every page's notes: whatever looks like front matter in them stays text."""
PALETTE = [
    {
        "media": "(prefers-color-scheme: light)",
        "scheme": "default",
        "primary": "custom",
        "accent": "custom",
        "toggle": {"icon": "material/weather-night", "name": "Switch to dark"},
    },
    {
        "media": "(prefers-color-scheme: dark)",
        "scheme": "slate",
        "primary": "custom",
        "accent": "custom",
        "toggle": {"icon": "material/weather-sunny", "name": "Switch to light"},
    },
]


def prepare(config: MkDocsConfig, journal: Path) -> None:
    """Tell MkDocs what a journal's site needs, and leave to mkdocs.yml what it has set itself."""
    config.use_directory_urls = False
    config.theme["font"] = False
    if "palette" not in config.theme:
        config.theme["palette"] = PALETTE
    config.theme.dirs.insert(1 if config.theme.custom_dir else 0, str(THEME))
    config.extra_css.insert(0, STYLESHEET)
    config.extra_javascript.insert(0, SCRIPT)
    config.markdown_extensions.append(PlainNotes())  # type: ignore[arg-type]
    if not journal.is_relative_to(config.docs_dir):
        config.watch.append(str(journal))


def wants_public(option: bool, environment: Mapping[str, str] = os.environ) -> bool:
    """Whether to build for others: the environment's word, else the option's."""
    said = environment.get("TENTERHOOK_PUBLIC", "").strip().lower()
    if said in ("", "yes", "no", "true", "false", "1", "0"):
        return said in ("yes", "true", "1") if said else option
    raise PluginError(f"TENTERHOOK_PUBLIC: read {said!r}; it is yes or no.")


def stop_on_faults(site: Site, site_dir: str) -> None:
    """Say every fault and end the build, before the site that stands is touched."""
    faults = sorted({problem for problem in site.problems if problem.is_fault})
    for fault in faults:
        log.error(fault.sentence())
        if fault.mended:
            log.error("    to paste: %s", fault.mended)
    if faults:
        site.finish()
        count = "1 fault" if len(faults) == 1 else f"{len(faults)} faults"
        kept = f" {site_dir} is left as it was." if Path(site_dir).is_dir() else ""
        raise PluginError(f"{count} to mend, so nothing was built.{kept}")


def tell(problems: Iterable[Problem]) -> None:
    """Log what a build or a preview does not stop for."""
    told = sorted(set(problems))
    for fault in (problem for problem in told if problem.is_fault):
        log.warning(fault.sentence())
    questions = sum(not problem.is_fault for problem in told)
    if questions:
        asked = "1 question" if questions == 1 else f"{questions} questions"
        log.info("%s about the records: `tenterhook check` asks them.", asked)


@dataclass(frozen=True)
class Room:
    """A page that the bar leads to."""

    title: str
    address: str

    def holds(self, url: str) -> bool:
        """Whether a page is this one or stands in it."""
        return url == f"{self.address}.html" or url.startswith(f"{self.address}/")


def rooms(site: Site, addresses: Iterable[str]) -> tuple[Room, ...]:
    """Those of the addresses that the site has, under their titles."""
    titles = {page.address: page.title for page in site.pages}
    return tuple(Room(titles[address], address) for address in addresses if address in titles)


def site_files(site: Site, files: Files, config: MkDocsConfig) -> Files:
    """The files of the site: the pages and assets of the journal, and nothing else of docs_dir."""
    for file in [file for file in files if file.src_dir == config.docs_dir]:
        files.remove(file)
    made: dict[str, str | bytes] = {f"{page.address}.md": SHIELD + page.notes for page in site.pages}
    if has_search(config):
        made[f"{SEARCH}.md"] = SHIELD
    inclusion = InclusionLevel.NOT_IN_NAV
    for name, content in (made | style_assets()).items():
        put(files, File.generated(config, name, content=content, inclusion=inclusion))
    for name, path in site.assets.items():
        put(files, File.generated(config, name, abs_src_path=str(path.resolve()), inclusion=inclusion))
    return files


def put(files: Files, file: File) -> None:
    """Add a file, in the place of any other of its name."""
    if (shadowed := files.get_file_from_path(file.src_uri)) is not None:
        files.remove(shadowed)
    files.append(file)


def has_search(config: MkDocsConfig) -> bool:
    """Whether the search plugin is there, under either of its names."""
    return "search" in config.plugins or "material/search" in config.plugins


def meta_of(page: Page) -> dict[str, Any]:
    """What the theme and the search read about a page. The title is HTML by then."""
    meta: dict[str, Any] = {"title": escape(page.title), "kind": page.kind}
    if not page.searchable:
        meta["search"] = {"exclude": True}
    return meta


def panels_of(site: Site, page: Page) -> dict[str, str]:
    """What the template puts around the notes; for an old address, where the page is now."""
    top, bottom = site.panels.of(page.address)
    return {"panel_top": top, "panel_bottom": bottom, "moved_to": page.moved_to and f"{page.moved_to}.html"}


def found_by(page: Page) -> str:
    """A line that the search reads and the page does not show: its words stand in the panels."""
    return f'<p class="found-by">{escape(page.search)}</p>\n' if page.search else ""


def search_without_server(site_dir: str) -> None:
    """The search's index once more as a script, for a site that is opened from a disk."""
    index = Path(site_dir) / "search" / "search_index.json"
    if index.is_file():
        read = json.dumps(json.loads(index.read_text(encoding="utf-8")), separators=(",", ":"))
        index.with_suffix(".js").write_text(f"var __index = {read}", encoding="utf-8")
