"""Cotton 8/2: towels, mats, waffle, a sampler and a length for aprons."""

from __future__ import annotations

from tests.workshop.design import Design, Hem, Piece, Plan, Stretch, Waste

WARPS = (
    Design(
        name="first-towels",
        title="First towels off the long loom",
        yarn="cotton-8-2",
        in_reed=18,
        flat=True,
        head={"started": "spring 2022", "yarn": "cotton-8-2 natural", "weave": "plain weave"},
        stretches=(Stretch("cotton plain", {}, (Piece("", 30, "on_loom washed"),)),),
        tail={"finish": "machine-60-line"},
    ),
    Design(
        name="gorse-towels",
        title="Gorse towels",
        yarn="cotton-8-2",
        head={
            "started": "2022-05-14",
            "finished": "2022-06-12",
            "loom": "long-loom",
            "share": "yes",
            "tags": ["towels", "stripes"],
            "yarns": {
                "natural": "cotton-8-2 natural",
                "navy": "cotton-8-2 navy",
                "gorse": "cotton-8-2 gorse",
            },
            "warp": {
                "order": (
                    "24 natural, 8 times (6 navy, 6 natural, 4 gorse, 6 natural, 6 navy, 24 natural)"
                ),
                "floating_selvedges": "natural",
            },
            "reed": "12/in",
            "sley": "2",
        },
        waste=Waste(7, 3, 33, 1, "gaps between towels"),
        stretches=(
            Stretch(
                cloth="cotton twill",
                usual=(24, 22),
                beat=21,
                keys={
                    "weave": "2/2 twill",
                    "draft": "straight-four",
                    "weft": {
                        "order": "56 natural, 6 navy, 6 natural, 4 gorse, 6 natural, 6 navy",
                    },
                },
                hem=Hem(0.75, 0.25, "both ends", "after washing"),
                plan=Plan("towel", 4, 29, (3, 1, 6), (3, 5), "in_reed washed made_up"),
                pieces=(
                    Piece("towel 1", 29, "on_loom off_loom washed made_up"),
                    Piece("towel 2", 29, "on_loom off_loom washed made_up"),
                    Piece("towel 3", 29, "on_loom washed made_up"),
                    Piece("towel 4", 29, "washed made_up"),
                ),
            ),
        ),
        tail={"finish": "machine-60-line", "hours": "22", "cost": "26 EUR"},
    ),
    Design(
        name="sett-sampler",
        title="Cotton sett sampler, three setts side by side",
        yarn="cotton-8-2",
        head={
            "started": "2022-08-06",
            "finished": "2022-08-14",
            "loom": "small-loom",
            "share": "yes",
            "tags": ["sampler"],
            "yarns": {
                "natural": "cotton-8-2 natural",
                "teal": "cotton-8-2 teal",
                "ecru": "linen-16-2 ecru",
            },
            "warp": {"order": "240 natural", "wound": "3 yd"},
            "in_reed": "12",
        },
        stretches=(
            Stretch(
                cloth="cotton plain",
                keys={
                    "weave": "plain weave",
                    "weft": {"order": "56 teal, 4 natural"},
                    "across": {
                        "s16": {"ends": "64", "reed": "12/in", "sley": "1-1-2", "sett": "16/in"},
                        "s20": {"ends": "80", "reed": "12/in", "sley": "1-2-2", "sett": "20/in"},
                        "s24": {"ends": "96", "reed": "12/in", "sley": "2", "sett": "24/in"},
                    },
                    "marks": "100 x 100 mm",
                },
                pieces=(
                    {
                        "name": "a",
                        "beat": "18/in",
                        "across": {"s16": "92 x 92 mm", "s20": "93.5 x 93 mm", "s24": "95 x 93 mm"},
                        "half_kept": "unwashed",
                    },
                    {
                        "name": "b",
                        "weave": "2/2 twill",
                        "beat": "20/in",
                        "across": {"s16": "90.5 x 92 mm", "s20": "92 x 92.5 mm", "s24": "94 x 93 mm"},
                    },
                    {
                        "name": "c",
                        "weft": "ecru",
                        "beat": "16/in",
                        "across": {"s20": "95.5 x 93.5 mm"},
                        "liked": "yes",
                    },
                ),
            ),
        ),
        tail={"finish": "machine-60-tumble", "learn": "no widths, the outer bands draw in more than the middle one"},
    ),
    Design(
        name="samphire-bath-towels",
        title="Samphire bath towels",
        yarn="cotton-8-2",
        head={
            "started": "2023-09-02",
            "finished": "2023-10-01",
            "loom": "long-loom",
            "share": "yes",
            "tags": ["towels", "bath"],
            "yarns": {"natural": "cotton-8-2 natural", "sage": "cotton-8-2 sage", "teal": "cotton-8-2 teal"},
            "warp": {
                "order": "36 natural, 15 times (12 sage, 12 natural, 6 teal, 12 natural), 12 sage, 36 natural",
                "floating_selvedges": "natural",
            },
            "reed": "12/in",
            "sley": "2",
        },
        waste=Waste(6, 2, 30, 1, "gaps between towels"),
        marked=(36,),
        stretches=(
            Stretch(
                cloth="cotton waffle",
                usual=(24, 22),
                beat=22,
                keys={
                    "weave": "waffle weave",
                    "draft": "waffle-four",
                    "weft": {"order": "12 sage, 12 natural, 6 teal, 12 natural"},
                },
                show_beat=True,
                hem=Hem(1, 0.5, "both ends", "before washing"),
                plan=Plan("bath towel", 3, 62, (5, 4, 15), (6, 13), "in_reed on_loom hemmed washed"),
                pieces=(
                    Piece("bath towel 1", 62, "on_loom off_loom hemmed washed", 2, weighed="washed"),
                    Piece("bath towel 2", 62, "on_loom off_loom hemmed washed", 2),
                    Piece("bath towel 3", 62, "on_loom hemmed washed"),
                ),
            ),
        ),
        tail={"finish": ["machine-60-line", "machine-60-line"], "hours": "31", "cost": "58 EUR"},
    ),
    Design(
        name="porridge-cloths",
        title="Porridge waffle face cloths",
        yarn="cotton-8-2",
        in_reed=14,
        flat=True,
        head={"started": "2024-11", "yarn": "cotton-8-2 bleached", "weave": "waffle weave"},
        stretches=(Stretch("cotton waffle", {}, (Piece("", 14.5, "on_loom washed"),)),),
        tail={"finish": "machine-60-tumble"},
        tumbled=True,
    ),
    Design(
        name="net-loft-mats",
        title="Net loft mats",
        yarn="cotton-8-2",
        head={
            "started": "2024-10-05",
            "finished": "2024-10-27",
            "loom": "small-loom",
            "share": "yes",
            "tags": ["mats", "colour-and-weave"],
            "yarns": {"navy": "cotton-8-2 navy", "sand": "cotton-8-2 sand"},
            "warp": {
                "order": "10 times (8 times (navy, sand), 8 times (sand, navy))",
            },
            "reed": "10/in",
            "sley": "2",
        },
        waste=Waste(5, 2, 17, 1.5, "gaps to turn in"),
        stretches=(
            Stretch(
                cloth="cotton plain",
                usual=(20, 18),
                beat=17,
                keys={
                    "weave": "plain weave",
                    "draft": "log-cabin",
                    "weft": {"order": "8 times (navy, sand), 8 times (sand, navy)"},
                },
                show_beat=True,
                plan=Plan("mat", 6, 20, (5, 1.5, 6), (3, 6), "on_loom washed"),
                pieces=(
                    Piece("mat 1", 20, "on_loom off_loom washed", picks=True),
                    Piece("mat 2", 20, "on_loom off_loom washed", picks=True),
                    Piece("mats 3-6", 20, "on_loom washed", count=4),
                ),
            ),
        ),
        tail={"finish": "machine-40-line-pressed", "hours": "16", "cost": "18 EUR"},
    ),
    Design(
        name="dryer-towels",
        title="Towels for the dryer",
        yarn="cotton-8-2",
        tumbled=True,
        head={
            "started": "2024-07-13",
            "finished": "2024-08-11",
            "loom": "long-loom",
            "tags": ["towels", "trial"],
            "yarns": {"natural": "cotton-8-2 natural", "sky": "cotton-8-2 sky", "brick": "cotton-8-2 brick"},
            "warp": {
                "order": "4 natural, 13 times (16 sky, 4 natural, 2 brick, 4 natural), 16 sky, 4 natural",
            },
            "reed": "10/in",
            "sley": "2",
        },
        waste=Waste(6, 2, 30, 0.5, "gaps between towels"),
        stretches=(
            Stretch(
                cloth="cotton plain",
                usual=(20, 18),
                beat=18,
                keys={"weave": "plain weave", "draft": "plain-two", "weft": "sky"},
                hem=Hem(1, 0.25, "both ends", "before washing"),
                plan=Plan("towel", 3, 34, (4, 1.5, 7), (3, 9), "on_loom washed"),
                pieces=(
                    Piece("towel 1", 34, "on_loom off_loom hemmed washed", 3),
                    Piece("towel 2", 34, "on_loom off_loom hemmed washed", 3),
                    Piece("towel 3", 34, "on_loom off_loom hemmed washed", 3),
                ),
            ),
        ),
        tail={"finish": ["machine-60-tumble", "machine-60-tumble", "machine-60-tumble"], "hours": "12"},
    ),
    Design(
        name="apron-yardage",
        title="Apron cloth by the metre",
        yarn="cotton-8-2",
        unit="cm",
        head={
            "started": "2025-01-04",
            "finished": "2025-02-01",
            "loom": "long-loom",
            "units": "cm",
            "share": "yes",
            "tags": ["yardage"],
            "yarns": {"charcoal": "cotton-8-2 charcoal", "sky": "cotton-8-2 sky"},
            "warp": {"order": "800 charcoal"},
            "reed": "50 per 10 cm",
            "sley": "2",
        },
        waste=Waste(15, 5, 78),
        stretches=(
            Stretch(
                cloth="cotton twill",
                usual=(9.5, 8.7),
                beat=9,
                keys={"weave": "2/2 twill", "draft": "straight-four", "weft": "sky"},
                show_beat=True,
                plan=Plan("length", 1, 420, (3, 1.5, 7), (3, 6.5), "on_loom off_loom washed"),
                pieces=(
                    Piece(
                        "length", 420, "on_loom off_loom washed", weighed="washed", widths=3,
                        how={"on_loom": {"taken": "ribbon"}, "off_loom": {"rested": "two nights"}},
                    ),
                ),
            ),
        ),
        tail={"finish": "machine-60-line", "hours": "26"},
    ),
)
