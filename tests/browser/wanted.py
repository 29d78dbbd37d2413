"""Warps that are wanted: as the form of the page has them, and as a record has them."""

from __future__ import annotations

WANTED: dict[str, dict[str, str]] = {
    "towels, hemmed after washing": {
        "piece": "towel", "count": "4", "width": "18", "long": "28", "sized": "made_up", "hem": "1", "turn": "3/8",
        "warp": "cottolin-22-2", "weave": "plain weave", "finish": "machine-40-line-pressed", "sett": "24",
        "beat": "22", "loom": "long-loom",
    },
    "scarves with a fringe": {
        "piece": "scarf", "count": "2", "width": "9", "long": "66", "sized": "washed", "fringe": "4", "sett": "24",
        "warp": "merino-2-20", "weave": "2/2 twill", "finish": "hand-30-flat", "beat": "24", "loom": "small-loom",
    },
    "napkins, hemmed all round before washing": {
        "piece": "napkin", "count": "6", "width": "18", "long": "18", "sized": "made_up", "hem": "1/2",
        "turn": "1/4", "edges": "all four", "sewn": "before washing", "warp": "linen-20-2", "weave": "huck lace",
        "sett": "18",
        "finish": "hand-40-line-pressed", "beat": "18", "loom": "long-loom",
    },
    "a runner of two yarns": {
        "piece": "runner", "count": "1", "width": "14", "long": "48", "sized": "washed", "warp": "hemp-16-2",
        "weft": "linen-16-1", "weave": "point twill", "finish": "machine-60-line", "sett": "20", "beat": "18",
        "loom": "long-loom",
    },
    "a shawl in a weave never woven in that yarn": {
        "piece": "shawl", "count": "1", "width": "30", "long": "80", "sized": "washed", "warp": "alpaca-12-2",
        "weave": "waffle weave", "finish": "hand-30-flat", "sett": "16", "beat": "14", "loom": "long-loom",
    },
    "washed towels, hemmed before washing": {
        "piece": "towel", "count": "3", "width": "46,5 cm", "long": "70 cm", "sized": "washed", "hem": "2.5 cm",
        "turn": "1 cm", "sewn": "before washing", "warp": "cottolin-22-2", "weave": "plain weave",
        "finish": "machine-40-line-pressed", "sett": "24", "loom": "small-loom",
    },
    "a tablecloth made up once settled, too wide for the loom": {
        "piece": "tablecloth", "count": "1", "width": "52", "long": "80", "sized": "made_up", "wash": "settled",
        "hem": "1", "turn": "3/8", "warp": "linen-16-2", "weave": "plain weave", "finish": "machine-60-line",
        "sett": "20", "loom": "small-loom",
    },
    "a wool of which no blanket was ever fulled": {
        "piece": "throw", "count": "1", "width": "30", "long": "60", "sized": "washed", "warp": "merino-2-20",
        "weave": "2/2 twill", "finish": "fulled-in-the-tub", "sett": "20", "beat": "18", "loom": "long-loom",
    },
    "a runner of two yarns, set and beaten as such a one was": {
        "piece": "runner", "count": "2", "width": "14", "long": "48", "sized": "made_up", "hem": "1/2",
        "warp": "hemp-16-2", "weft": "linen-16-1", "weave": "point twill", "loom": "small-loom",
    },
    "towels in centimetres": {
        "piece": "towel", "count": "2", "width": "45 cm", "long": "70 cm", "sized": "made_up", "hem": "2 cm",
        "turn": "1 cm", "warp": "cottolin-22-2", "weave": "plain weave", "finish": "machine-40-line-pressed",
        "sett": "9.5/cm", "loom": "long-loom",
    },
    "too close, with more treadles than the loom has": {
        "piece": "face cloth", "count": "4", "width": "12", "long": "12", "sized": "washed", "warp": "cotton-8-2",
        "weave": "waffle weave", "finish": "machine-60-line", "sett": "100", "beat": "20", "loom": "small-loom",
    },
    "towels with borders": {
        "piece": "towel", "count": "3", "width": "18", "long": "28", "sized": "made_up", "hem": "1", "sett": "20",
        "warp": "cottolin-22-2", "weave": "plain weave", "finish": "machine-40-line-pressed", "loom": "long-loom",
        "order": "20 bone, 9 times (4 slate, 24 bone), 4 slate, 20 bone",
    },
    "a scarf in stripes that balance": {
        "piece": "scarf", "count": "1", "width": "9", "long": "60", "sized": "washed", "sett": "24", "beat": "24",
        "warp": "merino-2-20", "weave": "2/2 twill", "finish": "hand-30-flat", "loom": "small-loom",
        "order": "8 ecru, 4 sea, 2 mustard, 4 sea",
    },
    "a satin on four shafts, with a sample": {
        "piece": "scarf", "count": "2", "width": "9", "long": "60", "sized": "washed", "sample": "20", "gap": "2",
        "warp": "silk-30-2", "weave": "5-end satin", "sett": "37", "loom": "small-loom",
    },
    "a blanket that is fulled, wider than the loom": {
        "piece": "blanket", "count": "1", "width": "44", "long": "70", "sized": "washed", "warp": "woollen-8-2",
        "weave": "2/2 twill", "finish": "fulled-in-the-tub", "sett": "12", "beat": "11", "loom": "long-loom",
    },
}


def record(wanted: dict[str, str]) -> str:
    """The same wants as a warp's record."""
    said = {key: wanted.get(key) for key in ("loom", "weft", "weave", "sett", "beat", "finish")}
    lines = ["---", "title: Wanted", f"yarn: {wanted['warp']}"]
    lines += [f"{key}: {value}" for key, value in said.items() if value]
    if "hem" in wanted:
        lines += ["hem:", f"  depth: {wanted['hem']}", *([f"  turn: {wanted['turn']}"] if "turn" in wanted else [])]
        lines += [f"  edges: {wanted.get('edges', 'both ends')}", f"  sewn: {wanted.get('sewn', 'after washing')}"]
    if "order" in wanted:
        lines += ["warp:", f"  yarn: {wanted['warp']}", f"  order: {wanted['order']}"]
    if "fringe" in wanted:
        lines += ["fringe:", f"  allowed: {wanted['fringe']} in each end"]
    if "wash" in wanted:
        lines[lines.index(f"finish: {wanted['finish']}")] = f"finish: [{', '.join([wanted['finish']] * 3)}]"
    size = f"{wanted['sized']}: {wanted['width']} x {wanted['long']}"
    plan = ["plan:", f"  - piece: {wanted['piece']}", f"    count: {wanted['count']}", f"    {size}"]
    return "\n".join([*lines, *plan, "---\n"])
