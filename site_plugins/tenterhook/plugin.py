"""The hooks that MkDocs calls. Each unpacks, calls a function and keeps the result."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Literal

from jinja2 import Environment
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.plugins import BasePlugin, event_priority
from mkdocs.structure.files import Files
from mkdocs.structure.pages import Page as SitePage

from journal_tools.pages import site_of
from site_plugins.tenterhook import build
from site_plugins.tenterhook.config import TenterhookConfig

if TYPE_CHECKING:
    from mkdocs.structure.nav import Navigation
    from mkdocs.utils.templates import TemplateContext

    from journal_tools.pages import Page, Site


class TenterhookPlugin(BasePlugin[TenterhookConfig]):
    """A journal's records become the pages of a site."""

    serving = False
    """Whether this is a preview, in which a fault is shown on its page and nothing stops."""
    folder: Path
    site: Site
    pages: dict[str, Page]
    """The journal's pages by the file that MkDocs knows them by."""

    def on_startup(self, *, command: Literal["build", "gh-deploy", "serve"], dirty: bool) -> None:
        """Learn whether this is a preview."""
        self.serving = command == "serve"

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Tell MkDocs what the journal's site needs."""
        self.folder = Path(self.config.journal or config.docs_dir)
        build.prepare(config, self.folder)
        return config

    def on_pre_build(self, *, config: MkDocsConfig) -> None:
        """Make every page, and stop a build that cannot be right, while the old site still stands."""
        beside = Path(config.config_file_path or ".").parent
        self.site = site_of(
            self.folder,
            beside / self.config.cache,
            public=build.wants_public(self.config.public),
            serving=self.serving,
        )
        if not self.serving:
            build.stop_on_faults(self.site, config.site_dir)
        build.tell(self.site.problems)

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """Give MkDocs the pages in place of the records."""
        self.pages = {f"{page.address}.md": page for page in self.site.pages}
        return build.site_files(self.site, files, config)

    def on_env(self, env: Environment, *, config: MkDocsConfig, files: Files) -> Environment:
        """Tell the theme what its bar and its foot lead to, and wait for the last pictures."""
        self.site.finish()  # they were drawn while MkDocs read the pages; now it copies them
        env.globals["rooms"] = build.rooms(self.site, build.ROOMS)
        env.globals["cellar"] = build.rooms(self.site, build.CELLAR)
        env.globals["search_page"] = build.has_search(config) and f"{build.SEARCH}.html"
        return env

    def on_page_markdown(self, markdown: str, *, page: SitePage, config: MkDocsConfig, files: Files) -> str:
        """Name the page as its record does."""
        if made := self.pages.get(page.file.src_uri):
            page.meta = build.meta_of(made)
        elif page.file.src_uri == f"{build.SEARCH}.md":
            page.meta = {"title": "Search", "kind": "search", "search": {"exclude": True}}
        return markdown

    def on_page_content(self, html: str, *, page: SitePage, config: MkDocsConfig, files: Files) -> str:
        """Add the words that a search finds the page by."""
        made = self.pages.get(page.file.src_uri)
        return build.found_by(made) + html if made else html

    @event_priority(-100)  # after the search has read the page
    def on_page_context(
        self, context: TemplateContext, *, page: SitePage, config: MkDocsConfig, nav: Navigation
    ) -> TemplateContext:
        """Give the panels to the template, and keep the search's words off the page."""
        if made := self.pages.get(page.file.src_uri):
            page.content = (page.content or "").removeprefix(build.found_by(made))
            context.update(build.panels_of(self.site, made))  # type: ignore[typeddict-item]
        return context

    @event_priority(-100)  # after the search has written its index
    def on_post_build(self, *, config: MkDocsConfig) -> None:
        """Let the search work from a disk too."""
        build.search_without_server(config.site_dir)
