"""The weaver's notes as Markdown that can only be text, pictures and links.

Notes are data like everything else in a record: a tag shows as it was typed, a link leads to a
page and never into a script, and a picture of another host becomes a link to it, because no page
of the journal asks another host for anything.
"""

from __future__ import annotations

from urllib.parse import urlsplit
from xml.etree.ElementTree import Element

from markdown import Markdown
from markdown.extensions import Extension
from markdown.treeprocessors import Treeprocessor

LINKED = {"", "http", "https", "mailto", "tel"}
BEFORE_LINKS_ARE_RESOLVED = 15
"""MkDocs resolves links to pages at 0; links are made out of Markdown at 20."""


class PlainNotes(Extension):
    """Raw HTML is text, and links and pictures are harmless."""

    def extendMarkdown(self, md: Markdown) -> None:  # noqa: N802 - the name is Markdown's
        """Take the HTML readers out and put the link check in."""
        md.preprocessors.deregister("html_block", strict=False)
        md.inlinePatterns.deregister("html", strict=False)
        md.treeprocessors.register(HarmlessLinks(md), "harmless_links", BEFORE_LINKS_ARE_RESOLVED)


class HarmlessLinks(Treeprocessor):
    """No script in an address or an attribute, no picture from elsewhere."""

    def run(self, root: Element) -> None:
        """Go through every element once."""
        for element in root.iter():
            for name in [name for name in element.keys() if name.lower().startswith("on")]:  # noqa: SIM118
                del element.attrib[name]
            if element.tag == "a" and scheme_of(element.get("href", "")) not in LINKED:
                element.tag = "span"  # MkDocs wants every <a> to lead somewhere
                del element.attrib["href"]
            elif element.tag == "img" and is_elsewhere(element.get("src", "")):
                become_link(element)


def scheme_of(address: str) -> str:
    """The scheme of an address, "?" for one that cannot be read; blanks and controls do not hide it."""
    seen = "".join(letter for letter in address if letter > " ")
    try:
        return urlsplit(seen).scheme.lower()
    except ValueError:
        return "?"


def is_elsewhere(address: str) -> bool:
    """Whether a picture's address leads out of the journal."""
    return scheme_of(address) != "" or address.strip().startswith("//")


def become_link(image: Element) -> None:
    """Turn a picture into a link to where it is, in place."""
    address, words = image.get("src", ""), image.get("alt", "")
    image.attrib.clear()
    image.tag = "a" if scheme_of(address) in LINKED else "span"
    image.text = words or address
    if image.tag == "a":
        image.set("href", address)
