"""The site for others: not one word, figure, name or picture in it that is not meant for them."""

from __future__ import annotations

import dataclasses
import gzip
from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest

from journal_tools.pages.guide_page import PARTS
from journal_tools.records import public, read_journal
from journal_tools.records.model import Model, words_of
from tests.built import TINY, build, copy_of, pages
from tests.site.canaries import Planter, plant


@dataclasses.dataclass(frozen=True)
class Grown:
    """The planted journal and its two sites. private, public: all bytes of each, in small letters."""

    folder: Path
    planter: Planter
    whole: bytes
    shared: bytes
    sites: Mapping[str, Path]


@pytest.fixture(scope="module")
def grown(tmp_path_factory: pytest.TempPathFactory) -> Grown:
    """A journal with a canary in every field, built for oneself and then for others."""
    folder = copy_of(TINY, tmp_path_factory.mktemp("canaries") / "journal")
    entries = folder / "entries"
    for record in entries.rglob("*.md"):
        record.unlink()
    planter = plant(entries)
    sites = {"whole": build(folder), "shared": folder / "for-others"}
    build(folder, "--public", "--out", "for-others")
    return Grown(folder, planter, every_byte(sites["whole"]), every_byte(sites["shared"]), sites)


def every_byte(site: Path) -> bytes:
    """The names and the contents of every file of a site, unpacked, in small letters."""
    found = []
    for path in sorted(each for each in site.rglob("*") if each.is_file()):
        content = path.read_bytes()
        name = path.relative_to(site).as_posix().encode()
        found += [name, gzip.decompress(content) if path.suffix == ".gz" else content]
    return b"\0".join(found).lower()


def models_in(value: object) -> Iterator[Model]:
    """Every record and every part of a record in a value."""
    if isinstance(value, Mapping):
        for each in value.values():
            yield from models_in(each)
    elif isinstance(value, tuple):
        for each in value:
            yield from models_in(each)
    elif dataclasses.is_dataclass(value) and not isinstance(value, type):
        if isinstance(value, Model):
            yield value
        for field in dataclasses.fields(value):
            yield from models_in(getattr(value, field.name))


class TestTheCanaries:
    def test_the_journal_is_sound(self, grown: Grown) -> None:
        """Every canary reads as what its field wants: the journal has nothing to mend."""
        assert () == read_journal(grown.folder / "entries").problems

    def test_every_field_has_one(self, grown: Grown) -> None:
        """There is a canary in every private field of every kind, and of every part, that the field guide tells of."""
        private = {
            (model, key)
            for _, model, _ in PARTS
            for key, (_, words) in words_of(model).items()
            if not words.public
        }

        planted = {(kind, key) for model, key in grown.planter.planted for kind in model.__mro__}

        assert set() == {f"{model.__name__} {key}" for model, key in private - planted}

    def test_which_of_them_have_no_word(self, grown: Grown) -> None:
        """Only a yes or no, one of a few words, and a planned width stand for themselves; all else has a word."""
        few = {"liked", "tabby", "in_reed", "dry", "pressed", "taken", "temple", "grey", "in_oil", "raw", "wetted"}

        assert few == {field.split()[1] for field in grown.planter.wordless}

    def test_they_would_be_seen(self, grown: Grown) -> None:
        """In the site for oneself canaries of notes, costs, hours, stock, tags and captions do stand."""
        for field in ("notes of warps", "Warp cost", "Warp hours", "Yarn on_hand", "Warp tags", "caption of a photo"):
            needles = [each.needle for each in grown.planter.canaries if each.field == field]
            assert [needle for needle in needles if needle.encode() in grown.whole]


class TestForOthers:
    def test_what_nobody_may_mark_as_public(self) -> None:
        """Money, hours, buyers, whereabouts, stock, place, remarks and accepted questions are of no kind public."""
        never = {"cost", "price", "hours", "buyer", "now", "on_hand", "lot", "put_up", "place", "note", "accepted"}
        never |= {"currency", "where_it_went", "tension", "tags", "was", "photos", "half_kept", "liked"}
        keys = {key: words.public for _, model, _ in PARTS for key, (_, words) in words_of(model).items()}

        assert dict.fromkeys(never, False) == {key: keys[key] for key in never}

    def test_no_canary_in_any_byte(self, grown: Grown) -> None:
        """No private word or figure stands in any page, index, picture, name or other file of the site for others."""
        private = [each for each in grown.planter.canaries if not each.public]
        assert len(private) > 500

        assert {} == {each.needle: each.field for each in private if each.needle.encode() in grown.shared}

    def test_what_is_allowed_is_there(self, grown: Grown) -> None:
        """Titles, weaves, colours, notes for everyone and cautions are in the site for others."""
        for field in ("Warp title", "Draft weave", "Yarn colours", "Warp notes_for_everyone", "Finish cautions"):
            needles = [each.needle for each in grown.planter.canaries if each.field == field and "seen" in each.needle]
            assert [needle for needle in needles if needle.encode() in grown.shared]

    def test_no_more_than_the_allow_list(self, grown: Grown) -> None:
        """In the journal for others every field that may not be shared is empty, in all its depth."""
        shared = public(read_journal(grown.folder / "entries"))
        # Names are numbers there, rules of learning have no reason, photographs are those for everyone.
        kept = {"name", "learn", "photos"}
        full = {
            f"{type(model).__name__} {key}"
            for model in models_in(shared)
            for key, (attribute, words) in words_of(type(model)).items()
            if not words.public and key not in kept
            if getattr(model, attribute) != type(model).__dataclass_fields__[attribute].default
        }

        assert set() == full

    def test_one_page_fewer_for_each_that_is_not_shared(self, grown: Grown) -> None:
        """What only a warp that is not shared has used has no page, and neither has the warp."""
        addresses = pages(grown.sites["shared"])

        assert [] == [address for address in addresses if "hidden" in address]
        assert "warps/seen-deep.html" in addresses
        assert "yarns/seen-yarn.html" in addresses

    def test_counts_are_of_what_is_shared(self, grown: Grown) -> None:
        """Numbers on the front page count what is shared and nothing else."""
        front = (grown.sites["shared"] / "index.html").read_text(encoding="utf-8")

        assert ">2 warps</a>" in front
        assert ">1 yarn</a>" in front

    def test_in_either_order(self, grown: Grown) -> None:
        """Building for oneself in between leaves nothing behind that the next site for others would hold."""
        before = every_byte(grown.sites["shared"])
        build(grown.folder)
        build(grown.folder, "--public", "--out", "for-others")

        assert before == every_byte(grown.sites["shared"])
