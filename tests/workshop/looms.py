"""The two looms of the workshop."""

from __future__ import annotations

from tests.workshop.block_yaml import Value

LOOMS: dict[str, dict[str, Value]] = {
    "long-loom": {
        "title": "The long loom",
        "shafts": "8",
        "treadles": "10",
        "width": "48 in",
        "heddles": "240",
        "reeds": ["8/in", "9/in", "10/in", "12/in", "15/in", "40 per 10 cm", "50 per 10 cm"],
        "waste": "30 in",
        "retie": "9 in",
    },
    "small-loom": {
        "title": "The small loom",
        "shafts": "4",
        "treadles": "4",
        "width": "24 in",
        "heddles": "160",
        "reeds": ["8/in", "10/in", "12/in", "15/in"],
        "waste": "18 in",
        "retie": "8 in",
    },
}
