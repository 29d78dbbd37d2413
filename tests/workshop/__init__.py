"""The invented workshop behind the demonstration journal: what it wove, and what the cloth did.

    physics     what cloth does between the reed and the clothes line, with its scatter
    orders      counting threads in a colour order, and ends in a sley order
    tape        reading a size off a tape, and writing it down
    design      the words for one warp: what was put on the loom and which pieces were measured
    weaving     a design and the physics together: the front matter of one record
    block_yaml  front matter in block style, one value a line
    warps/      the warps themselves; yarns, drafts, looms and finishes stand beside them

`python -m tests.workshop.write_entries` writes entries/ anew, byte for byte the same each time.
"""
