"""Pages: from a journal to everything a site builder needs, with no site builder in sight."""

from journal_tools.pages.kept_site import site_of
from journal_tools.pages.made import Page, Site

__all__ = ["Page", "Site", "site_of"]
