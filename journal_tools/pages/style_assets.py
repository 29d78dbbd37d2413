"""The look of the site: one stylesheet and small scripts, system fonts, nothing from outside."""

from __future__ import annotations

from pathlib import Path

STYLESHEET = "style/tenterhook.css"
STYLES = (STYLESHEET, "style/dressing.css")
"""What the one stylesheet is put together from, in order."""
SCRIPT = "style/tenterhook.js"
SCRIPTS = (SCRIPT, "style/narrowing.js")
"""What the one script of every page is put together from, in order."""
SEARCH_FROM_FILE = "style/search-from-file.js"
"""Lets the search page work when it is opened from a disk, where browsers allow no workers."""


PLANNING = tuple(
    f"style/plan-{part}.js"
    for part in (
        *("figures", "arithmetic", "order", "belief", "pocket", "reckoning"),
        *("words", "record", "tape", "wanted", "page"),
    )
)
"""The page that plans a warp, in the order in which they build on each other; classic scripts run from a disk."""


def style_assets() -> dict[str, bytes]:
    """Address in the site -> bytes, for the stylesheet and the scripts."""
    here = Path(__file__).parent
    made = {name: (here / name).read_bytes() for name in (SEARCH_FROM_FILE, *PLANNING)}
    for whole, parts in ((STYLESHEET, STYLES), (SCRIPT, SCRIPTS)):
        made[whole] = b"\n".join((here / name).read_bytes() for name in parts)
    return made
