"""One whole record of each kind for the field guide; together they are a small journal that reads."""

from __future__ import annotations

from typing import NamedTuple


class WholeRecord(NamedTuple):
    """A record as a file. about: what it shows. entry: its path without the ending. text: all of it."""

    about: str
    entry: str
    text: str


SIX_LINES = """\
---
title: Tideline towels
yarn: cottolin-22-2
weave: plain weave
in_reed: 20 1/4
on_loom: 19 3/8 x 33
washed: 17 7/8 x 30 1/8
---

What happened, in your own words.
"""

WARP = """\
---
title: Gannet napkins, bookmarks off the end
started: 2024-04-20
finished: 2024-05-19
loom: small-loom
share: yes
yarns:
  bone: linen-20-2 bone
  slate: linen-20-2 slate
warp:
  order: 20 bone, 12 times (4 slate, 24 bone), 4 slate, 20 bone
  floating_selvedges: bone
  wound: 7 1/2 yd
reed: 12/in
sley: 1-2
in_reed: 21 3/8
stretches:
  - name: napkins
    weave: huck lace
    draft: huck-squares
    weft: bone
    hem:
      depth: 1/2 in
      turn: 1/4 in
      edges: all four
      sewn: after washing
    plan:
      - piece: napkin
        count: 6
        washed: 19 3/4 x 20
        made_up: 18 x 18
    pieces:
      - name: napkin 1
        picks: 378
        on_loom: 20 1/2 x 21
        off_loom: 20 3/8 x 20 3/4
        washed:
          - 19 3/4 x 20
          - 19 5/8 x 19 7/8
        made_up: 18 1/8 x 18 3/8
      - name: napkins 2-6
        on_loom: 20 3/8 x 21
        washed:
          - 19 3/4 x 19 7/8
          - 19 5/8 x 19 3/4
        made_up: 18 1/8 x 18 1/4
  - name: bookmarks
    weave: 2/2 twill
    ends: 48 from the middle
    in_reed: 2 5/8
    weft: slate
    fringe:
      allowed: 2 in each end
      style: twisted before washing
    pieces:
      - name: bookmarks 1-8
        on_loom: 2 1/2 x 7 5/8
        washed: 2 1/8 x 7
where_it_went:
  front tie-on: 5 in
  header: 2 in
  gaps between napkins: 5 of 1/2 in
  cut off and re-tied after napkin 6: 9 in
  fringes of bookmarks: 16 of 2 in
  thrums: 22 in
finish: hand-40-line
learn: no widths from bookmarks, pulled in on purpose
hours: 29
notes_for_everyone: |
  Huck lace in small squares, hemmed on all four sides by hand.
---

Napkin 1 got its picks counted, and the others were woven to its ribbon.
"""

YARN = """\
---
title: Linen 20/2
fibre: linen
number: 20/2 linen
put_up: 250 g cones
price: 18.50 EUR
on_hand: 960 g
colours:
  bone: e8dfca
  slate: 4a5a68
---

A shade finer than the towel linen, and even.
"""

COTTOLIN = """\
---
title: Cottolin 22/2
fibre: 60 % cotton, 40 % linen
length_weight: 100 m = 5.4 g
colours:
  natural: cdbf9f
---
"""

DRAFT = """\
---
title: Huck lace, small squares
shafts: 4
treadles: 4
threading: 1, 3, 1, 3, 1, 2, 4, 2, 4, 2
tie_up: 1+4, 2+4, 2+3, 1+3
treadling: 1, 2, 1, 2, 1, 3, 4, 3, 4, 3
weave: huck lace
---

Tabby is tied on the first and the third treadle.
"""

BLOCKS = """\
---
title: Two blocks, pattern and tabby
shafts: 4
treadles: 4
blocks:
  A:
    threading: 1, 2, 1, 2
    treadling: 1, 1
  B:
    threading: 3, 4, 3, 4
    treadling: 2, 2
profile: 3 A, 2 B, A, 2 B, 3 A
profile_treadling: 3 A, 2 B, A, 2 B, 3 A
tie_up: 1+2, 3+4, 1+3, 2+4
tabby_between: 3, 4
weft_order: pattern, tabby
weft_colours: slate, bone
---

A thick pattern pick and a fine tabby pick in turn, two shuttles.
"""

CRAMMED = """\
---
title: Crammed stripes with a line of gold
shafts: 2
treadles: 2
threading: 16 times (1, 2)
tie_up: 1, 2
treadling: 1, 2
warp_colours: bone
ends_in_dents: 4 times (2), 3 times (4), none, 6 times (2)
accents:
  - end: 9
    shaft: 1
    colour: gold
    way: replacing
floating_selvedges: 1
weave: plain weave
---
"""

DOUBLE = """\
---
title: Two cloths, tabby over twill
upper:
  threading: 1, 2
  lift_plan: 1, 2
  warp_colours: rust
  weft_colours: rust
lower:
  threading: 1-4
  lift_plan: 1+2, 2+3, 3+4, 4+1
  warp_colours: bone
  weft_colours: bone
weave: double cloth
---
"""

LOOM = """\
---
title: The small loom
shafts: 4
treadles: 4
width: 24 in
heddles: 160
reeds:
  - 10/in
  - 12/in
waste: 18 in
retie: 8 in
---
"""

FINISH = """\
---
title: By hand at 40, on the line
done: Soak an hour with a little soap, squeeze through, rinse twice, line.
water: 40 C
agitation: squeezed, never wrung
drying: on the line, out of the sun
pressing: damp, both sides, hot iron
care: Wash by hand at 40 C. Line dry, iron damp.
cautions: Steam scalds. Keep the other hand off the cloth you press.
---
"""

WHOLE: tuple[WholeRecord, ...] = (
    WholeRecord("A warp in six lines", "warps/tideline-towels", SIX_LINES),
    WholeRecord("A warp with all that was measured", "warps/gannet-napkins", WARP),
    WholeRecord("A yarn", "yarns/linen-20-2", YARN),
    WholeRecord("A yarn that was weighed", "yarns/cottolin-22-2", COTTOLIN),
    WholeRecord("A draft", "drafts/huck-squares", DRAFT),
    WholeRecord("A draft in blocks, by its profile, with tabby between", "drafts/two-blocks", BLOCKS),
    WholeRecord("A draft with crammed and spaced ends and an accent", "drafts/crammed-stripes", CRAMMED),
    WholeRecord("A draft of two layers", "drafts/two-cloths", DOUBLE),
    WholeRecord("A loom", "looms/small-loom", LOOM),
    WholeRecord("A finish", "finishes/hand-40-line", FINISH),
)


def as_markdown() -> str:
    """The records one below the other, each under its heading with the file it stands in."""
    parts = [f"### {each.about}\n\n`{each.entry}.md`\n\n```yaml\n{each.text}```\n" for each in WHOLE]
    return "## Whole records\n\n" + "\n".join(parts)
