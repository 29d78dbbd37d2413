"""A cloth picture in words."""

from __future__ import annotations

import pytest

from journal_tools.pictures.described import described


@pytest.mark.parametrize(
    ("expected", "given"),
    [
        (
            "2/2 twill in bone and slate, warp 24 and weft 20 threads to the inch",
            ("2/2 twill", ["bone", "slate", "bone"], 24, 20),
        ),
        ("plain weave in bone, 24 threads to the inch each way", ("plain weave", ["bone"], 24, 24)),
        ("plain weave in bone, warp 9.5 threads to the centimetre", ("plain weave", ["bone"], 9.5, None, "cm")),
        ("huck lace", ("huck lace", [])),
        ("woven cloth in bone, slate and gold", ("", ["bone", "slate", "gold"])),
        ("twill in a, b, c, d and e", ("twill", list("abcde"))),
        ("twill in a, b, c, d and 2 more colours", ("twill", list("abcdef"))),
    ],
)
def test_words(expected: str, given: tuple[str, list[str], float, float]) -> None:
    """A picture is told by weave, colours and setts, and nothing is told that nobody wrote down."""

    assert expected == described(*given)
