"""The weft round the outermost ends, and pieces in another weave."""

from __future__ import annotations

from pathlib import Path

from tests.dressing.made import dressed

SATIN = "threading: 1-5\ntie_up: 1, 2, 3, 4, 5\ntreadling: 1, 3, 5, 2, 4\n"
PLAIN = "threading: 1, 2\ntie_up: 1, 2\ntreadling: 1, 2\n"
WARP = "title: A\nwarp: {order: 395 black}\ndraft: point\n"


def test_a_satin_misses(tmp_path: Path) -> None:
    """The outermost end of a satin stays on one side for four picks of five: the weft turns without it."""
    turns = dressed(tmp_path, WARP, draft=SATIN).turns
    assert turns is not None

    assert not turns.catches


def test_the_last_end_is_the_warps(tmp_path: Path) -> None:
    """With one end over the whole repeats the last end is threaded as the first, and misses as it does."""
    turns = dressed(tmp_path, WARP.replace("395", "396"), draft=SATIN).turns
    assert turns is not None

    assert (True, True) == (turns.missed_left > 0, turns.missed_right > 0)


def test_plain_weave_catches(tmp_path: Path) -> None:
    """In plain weave every end changes sides with every pick, and none is missed."""
    turns = dressed(tmp_path, WARP, draft=PLAIN).turns
    assert turns is not None

    assert turns.catches


def test_floating_selvedges_catch(tmp_path: Path) -> None:
    """Where there are floating selvedges nothing is asked of the end beside them."""
    assert dressed(tmp_path, WARP, draft=SATIN + "floating_selvedges: 1\n").turns is None


def test_layers_are_not_asked(tmp_path: Path) -> None:
    """Of cloth in two layers nothing is said of its edges."""
    assert dressed(tmp_path, WARP + "layers: 2\n", draft=SATIN).turns is None


def test_a_piece_in_another_weave(tmp_path: Path) -> None:
    """Plain weave drawn straight over four carries 2/2 twill: its piece is tied 1+2, 2+3, 3+4, 4+1 in some order."""
    warp = "title: S\nloom: loom\nwarp: {order: 80 bone}\nweave: plain weave\npieces:\n"
    pieces = "  - name: a\n  - {name: b, weave: 2/2 twill}\n"
    (other,) = dressed(tmp_path, warp + pieces).also
    assert other.tied is not None

    assert ("2/2 twill", ("b",)) == (other.weave, other.pieces)
    assert {frozenset({1, 2}), frozenset({2, 3}), frozenset({3, 4}), frozenset({1, 4})} == set(other.tied.treadles)


def test_a_weave_that_the_threading_does_not_carry(tmp_path: Path) -> None:
    """A point draft carries no five-end satin by its name: there is nothing to tie."""
    (other,) = dressed(tmp_path, "title: S\nwarp: {order: 80 bone}\ndraft: point\npieces: [{weave: satin}]\n").also

    assert other.tied is None
