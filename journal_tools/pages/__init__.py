"""Pages: from a journal to everything a site builder needs, with no site builder in sight."""

from journal_tools.pages.site import Page, Site, make_site

__all__ = ["Page", "Site", "make_site"]
