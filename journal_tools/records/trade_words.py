"""Words of the trade that mean a key under another name. Our own list, from what weavers say; no source."""

from __future__ import annotations

from collections.abc import Mapping

_SAID: Mapping[str, tuple[str, ...]] = {
    "sett": ("epi", "e p i", "epc", "ends per inch", "ends per cm", "ends per centimetre", "set"),
    "beat": ("ppi", "p p i", "ppc", "picks per inch", "picks per cm", "picks per centimetre"),
    "reed": ("dpi", "dents per inch", "dents per cm", "dents"),
    "sley": ("sleying", "sleyed", "ends per dent", "per dent"),
    "in_reed": ("reed width", "width in reed", "width in the reed", "in the reed", "weaving width", "warp width"),
    "on_loom": ("loom width", "width on loom", "width on the loom", "on the loom", "loom size", "loom"),
    "off_loom": ("take off", "taken off", "cut off", "off the loom", "loom state", "before washing", "unwashed"),
    "washed": (
        "after washing", "after wash", "after finishing", "wet finished", "finished", "finished size",
        "finished width", "washed size", "laundered", "finish",
    ),
    "hemmed": ("hem", "after hemming"),
    "weave": ("structure", "weave structure", "pattern"),
    "draft": ("pattern", "threading draft"),
    "started": ("date", "begun", "warped", "dressed"),
    "finished": ("completed", "done", "ended"),
    "title": ("name", "called", "project"),
    "buyer": ("customer", "sold to"),
    "price": ("sold for",),
    "fibre": ("fiber", "fibers", "content", "material"),
    "colour": ("color",),
    "colours": ("color", "colors", "colour"),
    "number": ("count", "grist", "yarn number", "yarn count"),
    "yield": ("ypp", "yards per pound", "grist"),
    "wraps": ("wpi", "wraps per inch"),
    "width": ("weaving width", "loom width"),
    "waste": ("loom waste",),
    "shafts": ("harnesses", "harness"),
}  # fmt: skip


def _by_word() -> Mapping[str, tuple[str, ...]]:
    found: dict[str, tuple[str, ...]] = {}
    for key, words in _SAID.items():
        for word in words:
            found[word] = (*found.get(word, ()), key)
    return found


TRADE: Mapping[str, tuple[str, ...]] = _by_word()
"""A word in small letters, with the keys that it can mean; some are keys themselves, and mean another here."""

_LOST = "what cloth lost is reckoned; write what it measured, under `in_reed:`, `on_loom:`, `off_loom:` and `washed:`."
_WOUND = "how long the warp was wound stands as `wound:` below `warp:`."
_WENT = "where the rest of the warp went stands below `where_it_went:`, a line for each loss."
_NOTES = "what you have to say of it stands in the notes, below the second `---`."

TOLD_ELSEWHERE: Mapping[str, str] = {
    **dict.fromkeys(("shrinkage", "shrink", "loss", "draw in", "drawin", "take up", "takeup", "crimp"), _LOST),
    **dict.fromkeys(("warp length", "length of warp", "length", "wound"), _WOUND),
    **dict.fromkeys(("loom waste", "waste", "thrums"), _WENT),
    **dict.fromkeys(("notes", "note", "remark", "remarks", "comment", "comments"), _NOTES),
}
"""Words that are no key of a warp's, with the sentence that says where the thing stands."""
