"""A journal that means harm: in every field of every kind stands what would run, break out or tear a page."""

from __future__ import annotations

import contextlib
import os
from pathlib import Path

from journal_tools.records import KINDS, Settings, Warp
from tests.photographs import photograph
from tests.site.canaries import OTHERWISE, Planter, write

LONG = "w" * 400
NASTY = (
    "<script>window.harmed=1</script>",
    "<img src=x onerror=window.harmed=2>",
    '"><svg onload=window.harmed=3>',
    "' onmouseover='window.harmed=4",
    "</title></textarea><script>window.harmed=5</script>",
    "{{ 7 * 7 }}{% raw %}{{ config.site_name }}{# gone #}",
    "${window.harmed=6}",
    "&lt;b&gt; &#60;b&#62;",
    "../../../../etc/passwd",
    "javascript:window.harmed=7",
    "[here](javascript:window.harmed=8)",
    "<!-- ]]> -->",
    "\u202ethgir ot tfel\u202c",
    LONG,
)
ALL = " ".join(NASTY)
KEY = "<img src=x onerror=window.harmed=9> \"'{{ 7 * 7 }}"
"""As much as fits where a name of the weaver's own stands before a colon."""
NOTES = """\
<script>window.harmed=10</script>

<iframe src="https://elsewhere.example/"></iframe> <b onclick="window.harmed=11">bold</b>

[a](javascript:window.harmed=12) [b](data:text/html,<script>window.harmed=13</script>) [c][d]
[e](JaVaScRiPt:window.harmed=14) <javascript:window.harmed=15> [f](vbscript:x) [g](//elsewhere.example/)

![a picture](https://elsewhere.example/x.png) ![another](//elsewhere.example/y.png "t")

[d]: javascript:window.harmed=16

{{ 7 * 7 }} {% raw %} ${window.harmed=17}

--8<-- "/etc/hostname"

---
title: not a title
---

# A heading {: onclick="window.harmed=18" }

| a | b |
|---|---|
| <img src=x onerror=window.harmed=19> | `<script>window.harmed=20</script>` |

    <script>window.harmed=21</script>

""" + ALL


class Harm(Planter):
    """Plants harm in place of canaries."""

    def word(self, field: str, public: bool = False) -> str:
        """All of it at once; plain words where a name must be a part of a notation or of a path."""
        plain = super().word(field, public)
        if field.startswith(("name of a yarn", "file of")) or field.endswith(" was"):
            return plain
        return KEY if field.endswith((" fulling", " where_it_went", " colours", " band")) else ALL


def harm(folder: Path) -> None:
    """Write the journal: one record of each kind with everything in it, and a warp for each piece of harm."""
    planter = Harm("seen", 40_000)
    write(folder / "journal.md", planter.fields(Settings), NOTES)
    for kind, one in (("yarns", "yarn"), ("drafts", "draft"), ("looms", "loom"), ("finishes", "finish")):
        write(folder / kind / f"seen-{one}.md", planter.fields(KINDS[kind], *OTHERWISE), NOTES)
    deep = planter.fields(Warp, "pieces", share="yes")
    flat = planter.fields(Warp, "stretches", "was", share="yes")
    for name, record in (("seen-deep", deep), ("seen-flat", flat)):
        photos = folder / "warps" / name
        photos.mkdir(parents=True)
        file = "it's <b> \"{{ 1 }}\" & $1 #2 ?.jpg"
        (photos / file).write_bytes(photograph(120, 90))
        with contextlib.suppress(OSError):  # a name that is no text, which some systems do not take
            Path(os.fsdecode(bytes(photos) + b"/caf\xe9.jpg")).write_bytes(photograph(120, 90))
        record["photos"] = {file: ALL}
        record["photos_for_everyone"] = [file]
        write(folder / "warps" / f"{name}.md", record, NOTES)
    for number, nasty in enumerate(NASTY):
        six = {"title": nasty, "yarn": "seen-yarn", "weave": nasty, "in_reed": "20", "on_loom": "19 x 33"}
        write(folder / "warps" / f"nasty-{number}.md", six | {"washed": "17 x 30"}, nasty)
