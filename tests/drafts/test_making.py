"""Drafts made of parts, each part held to what a weaver would thread."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given

from journal_tools.drafts import Draft, drawdown, parse_lift_plan, parse_threading, parse_tie_up, parse_treadling
from journal_tools.drafts.double_cloth import double_cloth
from journal_tools.drafts.hanging import hanging
from journal_tools.drafts.making import (
    Accent,
    from_blocks,
    refuse_what_is_not_held,
    spacing_in_dents,
    with_accents,
    with_tabby,
)
from journal_tools.drafts.unfitting import Unfitting
from journal_tools.quantities import Unreadable
from tests.drafts.any_draft import ONE, drafts


class TestMadeOfParts:
    def test_blocks(self) -> None:
        """Blocks stand for their threads in turn, and one that is missing is named."""
        units = {"A": parse_threading("1, 3, 1, 4"), "B": parse_threading("2, 3, 2, 4"), "C": None}

        assert parse_threading("1, 3, 1, 4, 2, 3, 2, 4, 1, 3, 1, 4") == from_blocks(units, "ABA", "threading")
        with pytest.raises(Unreadable) as caught:
            from_blocks(units, "AC", "threading")
        assert "Block C has no threading under blocks; those that have are A, B." == caught.value.right

    @pytest.mark.parametrize(("what", "key"), [("threading", "profile"), ("treadling", "profile_treadling")])
    def test_blocks_without_end(self, what: str, key: str) -> None:
        """Blocks that come to more threads than are read are refused at their order, before they are written out."""
        with pytest.raises(Unfitting) as caught:
            from_blocks({"A": parse_threading("5000 times (1-4)")}, "A" * 20_000, what)
        assert (key,) == caught.value.part
        assert "That is 400,000,000 threads; 20,000 are read at most. Write one repeat." == caught.value.right

    def test_tabby(self) -> None:
        """A tabby pick follows every pattern pick, the two sheds in turn."""
        assert parse_treadling("1, 3, 1, 4, 2, 3") == with_tabby(parse_treadling("1, 1, 2"), parse_treadling("3, 4"))

    def test_accents(self) -> None:
        """An added end moves the others on, one that replaces stands in place; both bear their colour."""
        plain = Draft(parse_threading("1, 2, 1, 2"), parse_tie_up("1, 2"), parse_treadling("1, 2"))
        made = with_accents(plain, [Accent(2, frozenset({3}), "gold"), Accent(4, frozenset(), "red", added=False)])

        assert parse_threading("1, 3, 2, 1, 2") == made.threading
        assert ("warp", "gold", "warp", "red", "warp") == made.warp_colours
        assert ("ground", "accent", "ground", "accent", "ground") == made.warp_order

    def test_accents_once_only(self) -> None:
        """A colour is kept where nothing else of the warp has one, though the accents can be told over but once."""
        plain = Draft(parse_threading("1, 2"), parse_tie_up("1, 2"), parse_treadling("1, 2"))

        assert ("warp", "gold", "warp") == with_accents(plain, iter([Accent(2, frozenset({1}), "gold")])).warp_colours

    def test_accents_among_uneven_ends(self) -> None:
        """An added end moves the sizes and the rooms of the others on with them, and has the usual ones."""
        plain = Draft(
            parse_threading("1, 2"), lift_plan=parse_lift_plan("1"), warp_spacing=(0.5, 2), warp_thickness=(1, 3)
        )
        made = with_accents(plain, [Accent(2, frozenset({1}))])

        assert ((0.5, 1, 2), (1, 1, 3)) == (made.warp_spacing, made.warp_thickness)

    def test_accents_in_a_long_colour_order(self) -> None:
        """Where the colours go on over two repeats of the threading, both are there beside the accent."""
        order = ("red", "red", "blue", "blue")
        plain = Draft(parse_threading("1, 2"), lift_plan=parse_lift_plan("1"), warp_colours=order)
        made = with_accents(plain, [Accent(5, frozenset({2}), "gold")])

        assert (parse_threading("1, 2, 1, 2, 2"), (*order, "gold")) == (made.threading, made.warp_colours)

    def test_crammed_and_spaced(self) -> None:
        """Two in a dent is usual here; four take half the room each, and an empty dent is room of the next end."""
        assert (1.0, 1.0, 0.5, 0.5, 0.5, 0.5, 3.0, 1.0) == spacing_in_dents(parse_treadling("2, 4, none, 2"))

    def test_dents_that_cannot_be(self) -> None:
        """A dent has one number of ends, and some dent has some."""
        for dents in (parse_treadling("1+2"), parse_treadling("none")):
            with pytest.raises(Unfitting) as caught:
                spacing_in_dents(dents)
            assert ("ends_in_dents",) == caught.value.part

    def test_empty_dents_at_the_end(self) -> None:
        """Empty dents after the last end are room of that end."""
        assert (1.0, 1.0, 1.0, 5.0) == spacing_in_dents(parse_treadling("2, 2, none, none"))

    def test_double_cloth(self) -> None:
        """Plain weave on twill: two layers, each of which weaves as it does alone, the upper one on top."""
        plain = Draft(parse_threading("1, 2"), lift_plan=parse_lift_plan("1, 2"))
        twill = Draft(parse_threading("1-4"), lift_plan=parse_lift_plan("1+2, 2+3, 3+4, 4+1"))
        over = drawdown(double_cloth(plain, twill))
        upper, lower = hanging(over).layers

        assert "layers" == hanging(over).verdict
        assert np.array_equal(np.tile(drawdown(plain), (2, 2)), over[np.ix_(upper.picks, upper.ends)])
        assert np.array_equal(drawdown(twill), over[np.ix_(lower.picks, lower.ends)])

    @given(drafts(ONE), drafts(ONE))
    def test_any_double_cloth(self, upper: Draft, lower: Draft) -> None:
        """Each layer weaves as it does alone, rising or sinking; upper ends lie over lower picks, lower ends under."""
        over = drawdown(double_cloth(upper, lower))
        for first, layer in enumerate((upper, lower)):
            part, alone = over[first::2, first::2], drawdown(layer)
            times = (len(part) // len(alone), part.shape[1] // alone.shape[1])
            assert np.array_equal(np.tile(alone, times), part)
        assert over[1::2, 0::2].all()
        assert not over[0::2, 1::2].any()

    def test_two_sinking_layers(self) -> None:
        """Where both layers sink, so does the whole."""
        layer = Draft(parse_threading("1, 2"), lift_plan=parse_lift_plan("1, 2"), rising=False)

        assert not double_cloth(layer, layer).rising

    def test_orders_of_layers(self) -> None:
        """Colours, roles and sizes of threads go with their threads into the double cloth."""
        layer = Draft(parse_threading("1, 2"), lift_plan=parse_lift_plan("1, 2"))
        other = Draft(
            parse_threading("1, 2"), lift_plan=parse_lift_plan("1, 2"), warp_colours=("red", "blue"),
            weft_order=("a", "b"), weft_thickness=(2, 3),
        )  # fmt: skip
        made = double_cloth(layer, other)

        assert ("upper", "red", "upper", "blue") == made.warp_colours
        assert (("upper", "a", "upper", "b"), (1, 2, 1, 3)) == (made.weft_order, made.weft_thickness)

    @pytest.mark.parametrize(
        ("upper", "lower", "part", "right"),
        [
            (("1, none", True), ("1, 2", True), "upper", "End 2 of the upper cloth is on no shaft, so that nothing"),
            (("1, 1+2", False), ("1, 2", True), "upper", "The upper cloth's shed sinks. End 2 is on several shafts;"),
            (("1, 2", True), ("none, 2", False), "lower", "The lower cloth's shed sinks. End 1 is on no shaft;"),
        ],
    )
    def test_layers_that_cannot_be(
        self, upper: tuple[str, bool], lower: tuple[str, bool], part: str, right: str
    ) -> None:
        """An end that nothing lifts, or that a change of the shed would not keep, is refused with its layer."""
        lifts = parse_lift_plan("1, 2")
        layers = [Draft(parse_threading(ends), lift_plan=lifts, rising=up) for ends, up in (upper, lower)]
        with pytest.raises(Unfitting) as caught:
            double_cloth(*layers)
        assert (part, "threading") == caught.value.part
        assert right in caught.value.right

    @pytest.mark.parametrize(
        "words",
        ["leno", "a pile weave", "Velvet", "gauze, with pile", "mock leno and leno", "weft-pile", "terry"],
    )
    def test_what_is_not_held(self, words: str) -> None:
        """What over and under cannot say is refused with the reason."""
        with pytest.raises(Unreadable) as caught:
            refuse_what_is_not_held([words])
        assert "A draft cannot hold it: its " in caught.value.right

    @pytest.mark.parametrize(
        "words",
        ["mock leno", "Mock-leno", "imitation gauze", "false leno", "twill without a cut pile", "not velvet"],
    )
    def test_what_only_sounds_like_it(self, words: str) -> None:
        """A mock leno is an ordinary shaft weave, and so is what is said to be without a pile."""
        refuse_what_is_not_held([words])
