"""A record in one weaver's own style, with all that makes writing into it hard."""

NAPKINS = """\
---
title: Gannet napkins        # aligned, and with a comment
started: 2024-04-20
yarns:
    bone:   linen-20-2 bone
    slate:  linen-20-2 slate

warp:
    order: 20 bone, 12 times (4 slate, 24 bone),
           4 slate, 20 bone
in_reed:
washed: 19 x 30   # dry
stretches:
    -   name: napkins
        hem: {depth: 1/2 in, turn: "1/4 in"}
        pieces:
        - name: napkin 1
          on_loom: 20 1/2 x 21
          washed:
          - 19 3/4 x 20
          # the second
          - 19 5/8 x 19 7/8
        - name: napkins 2-6

        # bookmarks come off the end
    -   name: bookmarks
finish: [hand-40, machine-40]
note: |  # as told
    one
    two

# the end
---
Woven in *spring*.

---
"""
