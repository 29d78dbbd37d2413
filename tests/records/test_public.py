"""The shared journal: nothing in it but what the allow-list lets through, and every loss as it was.

What may be shared is title, date, yarns, weave, sett, sizes, losses, draft, and photos and notes that are
marked for everyone. Never cost, price, hours, buyers, where pieces went, stock, place, other notes.
"""

from __future__ import annotations

import dataclasses
import re
from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest

from journal_tools.ledger import Row, ledger_of
from journal_tools.records import KINDS, Journal, Piece, Planned, Settings, Stretch, public, read_journal
from journal_tools.records.cloth import SizeAt, Weft
from journal_tools.records.draft_parts import AccentEnd, Block
from journal_tools.records.hem import Fringe, Hem
from journal_tools.records.model import Model, words_of
from journal_tools.records.warp import Band, BandSizes, WarpYarn, YarnUse
from tests.house import PROJECT
from tests.ledger.desk import JOURNAL, write
from tests.records.canaries import FREE, every_word, free, full_of_canaries, word

SHARED = {
    Settings: "title maker length weight density comma tape",
    KINDS[
        "warps"
    ]: """title notes_for_everyone photos_for_everyone started finished loom units tape yarn yarns warp weft
        weave draft reed sley sett ends in_reed layers opens on_loom off_loom hemmed washed made_up fulling marks picks
        beat hem fringe finish across stretches pieces count share""",
    Stretch: """weave draft weft ends reed sley sett in_reed on_loom off_loom hemmed washed made_up fulling marks picks
        beat hem fringe finish across pieces count""",
    Piece: """weave weft ends reed sley sett in_reed on_loom off_loom hemmed washed made_up fulling marks picks beat hem
        fringe finish across count""",
    Planned: "",
    WarpYarn: "yarn order ends sett floating_selvedges role",
    Weft: "yarn colour order role",
    YarnUse: "yarn colour role",
    SizeAt: "size finish",
    Hem: "depth turn edges sewn",
    Fringe: "allowed after_twist finished",
    Band: "ends reed sley sett in_reed",
    BandSizes: "in_reed on_loom off_loom washed",
    KINDS["yarns"]: "title notes_for_everyone photos_for_everyone fibre number colours",
    KINDS[
        "drafts"
    ]: """title notes_for_everyone photos_for_everyone shafts treadles threading tie_up treadling lift_plan
        shed warp_colours weft_colours weave blocks profile profile_treadling tabby_between warp_order weft_order
        ends_in_dents accents floating_selvedges upper lower""",
    Block: "threading treadling",
    AccentEnd: "end shaft colour way",
    KINDS["looms"]: "title notes_for_everyone photos_for_everyone shafts treadles width",
    KINDS["finishes"]: "title notes_for_everyone photos_for_everyone care cautions fulling",
}
"""The allow-list once more, field by field, as a person would write it down."""

NEVER = """cost price hours buyer now on_hand place note tags lot put_up accepted half_kept liked where_it_went wound
    amount waste retie currency temple tension tabby plan learn was marked wound_on heddles reeds rested
    taken""".split()
"""What no kind may share, by the names of the fields."""

UNUSED = word(KINDS["yarns"], "colours")
"""A colour that no shared warp used is the stock, and not shared."""

OPENS = word(KINDS["warps"], "opens")
"""It may be shared that a cloth opens, and not in the weaver's words."""


@pytest.fixture(scope="module")
def canaries(tmp_path_factory: pytest.TempPathFactory) -> Journal:
    """A journal full of canaries."""
    return full_of_canaries(tmp_path_factory.mktemp("canaries"))


def singing(journal: Journal) -> set[str]:
    """Every canary in a journal, wherever it is in it."""
    said = repr(dataclasses.replace(journal, folder=Path()))
    return set(re.findall(r"canary-[a-z-]+[a-z]", said))


def every_model(value: object) -> Iterator[Model]:
    """Every record and part in a value, in depth."""
    if isinstance(value, Model):
        yield value
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        for field in dataclasses.fields(value):
            yield from every_model(getattr(value, field.name))
    elif isinstance(value, Mapping):
        for each in value.values():
            yield from every_model(each)
    elif isinstance(value, tuple | list):
        for each in value:
            yield from every_model(each)


class TestAllowList:
    """What the models say may be shared."""

    @pytest.mark.parametrize("kind", SHARED, ids=lambda kind: kind.__name__)
    def test_it_is_the_list(self, kind: type[Model]) -> None:
        """The fields marked as shared are those on the list, and no other."""
        marked = {key for key, (_, words) in words_of(kind).items() if words.public}

        assert set(SHARED[kind].split()) == marked

    def test_what_is_never_shared(self) -> None:
        """Cost, price, hours, buyers, stock, place and the like are shared in no kind."""
        shared = {key for kind in SHARED for key, (_, words) in words_of(kind).items() if words.public}

        assert set() == shared & set(NEVER)
        assert "weight" not in SHARED[KINDS["warps"]].split()

    def test_every_kind_is_here(self, canaries: Journal) -> None:
        """The list speaks of every kind of record and part that there is."""
        assert {type(model) for model in every_model(canaries)} == set(SHARED)


class TestCanaries:
    """A word in every field that takes one, and which of them are left."""

    def test_they_were_planted(self, canaries: Journal) -> None:
        """The whole journal has every one of them, and reads without a fault."""
        assert [] == [problem.sentence() for problem in canaries.problems]
        assert set(every_word()) | {free(what) for what in FREE} <= singing(canaries)
        assert 80 < len(every_word())

    def test_every_field_was_filled(self, canaries: Journal) -> None:
        """No field of any kind was left out, words or not."""
        filled = {
            (type(model), key)
            for model in every_model(canaries)
            for key, (attribute, _) in words_of(type(model)).items()
            if getattr(model, attribute) not in (None, (), {})
        }

        assert set() == {(kind, key) for kind in SHARED for key in words_of(kind)} - filled

    def test_words_that_are_left(self, canaries: Journal) -> None:
        """What is left are the words of the fields on the list, the captions of shared photos, the front page."""
        allowed = {said for said, shared in every_word().items() if shared}
        captions = {word(kind, "photos") for kind in KINDS.values()}
        expected = allowed - {OPENS, UNUSED} | captions | {word(Settings, "notes")}

        assert expected == singing(public(canaries))

    @pytest.mark.parametrize("what", FREE)
    def test_free_names_are_left_behind(self, canaries: Journal, what: str) -> None:
        """Names of bands, short names of yarns, lines of the account, words at a fulling, other photos: gone."""
        assert free(what) not in singing(public(canaries))

    @pytest.mark.parametrize("kind", SHARED, ids=lambda kind: kind.__name__)
    def test_no_field_but_the_allowed(self, canaries: Journal, kind: type[Model]) -> None:
        """Figures too: a field that may not be shared is as if nobody had written it."""
        blank = kind()
        kept = {
            key
            for model in every_model(public(canaries))
            if type(model) is kind
            for key, (attribute, words) in words_of(kind).items()
            if not words.public and getattr(model, attribute) != getattr(blank, attribute)
        }

        # A piece or stretch is called by its number; a rule of learning has lost its reason and its names.
        assert set() == kept - {"name", "learn", "photos"}

    def test_no_problem_comes_along(self, canaries: Journal) -> None:
        """What is wrong with the records is nobody else's business."""
        (problem,) = write(canaries.folder / "other", warps__w="share: perhaps").problems

        assert () == public(dataclasses.replace(canaries, problems=(problem,))).problems


class TestWhatIsShared:
    """Warps that say yes, and what they use."""

    RECORDS = {
        "yarns__a": "title: A\nwas: old-a",
        "yarns__b": "title: B",
        "yarns__c": "title: C",
        "looms__one": "title: One",
        "looms__two": "title: Two",
        "drafts__x": "threading: 1\nlift_plan: 1",
        "drafts__y": "threading: 1\nlift_plan: 1",
        "finishes__wash": "title: Wash",
        "finishes__full": "title: Full",
        "finishes__other": "title: Other",
    }

    def test_only_what_says_yes(self, tmp_path: Path) -> None:
        """Nothing is shared unless it says `share: yes`."""
        made = write(
            tmp_path, warps__a="share: yes", warps__b="share: no", warps__c="title: C", warps__d="share: maybe"
        )

        assert ["a"] == list(public(made).warps)

    def test_only_what_is_used(self, tmp_path: Path) -> None:
        """Yarns, looms, drafts and finishes that only unshared warps use are gone with them."""
        made = write(
            tmp_path,
            **self.RECORDS,
            warps__shown=(
                "share: yes\nyarn: old-a\nloom: one\nstretches:\n  - name: s\n    draft: x\n    finish: wash\n"
                "    pieces:\n      - washed:\n          size: 18 x 30\n          finish: full"
            ),
            warps__hidden="yarn: b\nweft: c\nloom: two\ndraft: y\nfinish: other",
        )
        shared = public(made)

        assert ["shown"] == list(shared.warps)
        assert [["a"], ["one"], ["x"], ["full", "wash"]] == [
            sorted(shared.kind(kind)) for kind in ("yarns", "looms", "drafts", "finishes")
        ]

    def test_colours_that_were_used(self, tmp_path: Path) -> None:
        """A shared yarn brings the colours that shared warps used; the others in the stock are nobody's business."""
        colours = "colours:\n  natural: d8cba8\n  blue: 336699\n  red: 993333"
        made = write(
            tmp_path,
            yarns__a=colours,
            yarns__b=colours,
            warps__shown="share: yes\nyarn: a blue\nweft: b",
            warps__hidden="yarn: a red",
        )
        yarns = public(made).yarns

        assert {"blue": "336699"} == yarns["a"].colours
        assert {"natural": "d8cba8"} == yarns["b"].colours

    def test_names_without_a_record(self, tmp_path: Path) -> None:
        """A loom, a draft or a finish without a record is free text, and stays at home."""
        made = write(
            tmp_path,
            finishes__wash="title: Wash",
            warps__w=(
                "share: yes\nloom: aunt-maud\ndraft: for-the-doctor\nfinish: [grandmother, wash]\n"
                "pieces:\n  - finish: neighbour\n    washed:\n      size: 9 x 9\n      finish: hers"
            ),
        )
        warp = public(made).warps["w"]

        assert (None, None, ("", "wash")) == (warp.loom, warp.draft, warp.finish)
        assert (("",), None) == (warp.pieces[0].finish, warp.pieces[0].washed[0].finish)
        assert not [word for word in ("maud", "doctor", "grandmother", "neighbour", "hers'") if word in repr(warp)]

    def test_nothing_at_all(self, tmp_path: Path) -> None:
        """A journal that shares no warp shares no record, and keeps its front page."""
        made = write(tmp_path, **self.RECORDS, journal="title: Mine\nplace: Upstairs", warps__a="yarn: a")
        shared = public(made)

        assert [{}] * 5 == [shared.kind(kind) for kind in KINDS]
        assert ("Mine", None) == (shared.settings.title, shared.settings.place)

    def test_photos(self, tmp_path: Path) -> None:
        """Captions come along for the photos marked for everyone alone, in every kind."""
        photos = "photos:\n  a.jpg: On the line\n  b.jpg: The buyer's kitchen\nphotos_for_everyone: a.jpg"
        made = write(tmp_path, warps__w=f"share: yes\nyarn: y\n{photos}", yarns__y=photos)
        shared = public(made)

        assert {"a.jpg": "On the line"} == shared.warps["w"].photos == shared.yarns["y"].photos

    def test_names_made_plain(self, tmp_path: Path) -> None:
        """Pieces, stretches and bands are called by their numbers; a short name by its yarn."""
        header = (
            "share: yes\nyarns:\n  aunt-s-colour: a blue\nwarp:\n  yarn: aunt-s-colour\n  order: 4 aunt-s-colour\n"
            "  floating_selvedges: aunt-s-colour\nweft: aunt-s-colour\n"
            "across:\n  for-mother:\n    ends: 4\nstretches:\n  - name: wedding\n    pieces:\n"
            "      - name: for the neighbours 1-3\n        across:\n          for-mother: 9 x 9\n"
            "      - name: for the doctor"
        )
        shared = public(write(tmp_path, yarns__a="colours:\n  blue: 336699", warps__w=header))
        warp = shared.warps["w"]
        (stretch,) = warp.stretches

        assert ["stretch 1", "pieces 1-3", "piece 4"] == [stretch.name, *(piece.name for piece in stretch.pieces)]
        assert [3, 1] == [piece.number for piece in stretch.pieces]
        assert (["band 1"], ["band 1"]) == (list(warp.across or {}), list(stretch.pieces[0].across or {}))
        (wound,) = warp.warp
        assert {"a blue"} == {*(warp.yarns or {}), *(weft.yarn or "" for weft in warp.weft)}
        assert ("a blue", ("a blue",) * 4, "a blue") == (
            wound.yarn,
            wound.order.items if wound.order else (),
            wound.floating_selvedges,
        )
        assert not [word for word in ("aunt", "wedding", "neighbour", "doctor", "mother") if word in repr(shared.warps)]


def unnamed(rows: tuple[Row, ...]) -> list[Row]:
    """Rows without what is not shared: free names, reasons and plans."""
    return [dataclasses.replace(row, stretch="", piece="", reason="", planned=None) for row in rows]


class TestLosses:
    """The shared journal reckons what the whole one does."""

    @pytest.mark.parametrize("folder", [JOURNAL, PROJECT / "entries"], ids=["fixtures", "demonstration"])
    def test_same_rows(self, folder: Path) -> None:
        """Every loss, ±, gap and what is learned is the same from the shared journal, for every warp that is in it."""
        whole = read_journal(folder)
        whole = dataclasses.replace(
            whole, warps={name: dataclasses.replace(warp, share=True) for name, warp in whole.warps.items()}
        )
        shared = public(whole)

        assert len(whole.warps) == len(shared.warps)
        for name, warp in whole.warps.items():
            mine, theirs = ledger_of(whole, warp), ledger_of(shared, shared.warps[name])
            assert unnamed(mine.rows) == unnamed(theirs.rows)
            assert unnamed(mine.stretch_rows) == unnamed(theirs.stretch_rows)
            assert unnamed(mine.warp_rows) == unnamed(theirs.warp_rows)
            assert [piece.counts for piece in mine.pieces] == [piece.counts for piece in theirs.pieces]

    @pytest.mark.parametrize(
        "learn",
        [
            "no from napkin 1, cut short",
            "no widths from napkins, wide",
            "no lengths from bookmark, hard weft",
            "no from left, at the edge",
            "no washed 2, dryer",
            "no, moths",
        ],
    )
    @pytest.mark.parametrize("where", ["warp", "stretch", "piece"])
    def test_what_is_kept_out(self, tmp_path: Path, learn: str, where: str) -> None:
        """A rule about something by name holds in the shared journal too, where the names are gone."""
        said = f"learn: {learn}"
        header = (
            "share: yes\nin_reed: 20\nstretches:\n  - name: napkins\n    pieces:\n"
            "      - name: napkin 1\n        washed:\n          - 18 x 30\n          - 17 x 29\n"
            "      - name: napkins 2-3\n        across:\n          left: 9 x 9\n          right: 8 x 8\n"
            "    marks: 10 x 10\n  - name: bookmarks\n    pieces:\n"
            "      - name: bookmark 1\n        on_loom: 3 x 8\n        washed: 2 x 7\n"
        )
        header = {
            "warp": f"{header}{said}",
            "stretch": header.replace("    pieces:\n", f"    {said}\n    pieces:\n"),
            "piece": header.replace("        across:\n", f"        {said}\n        across:\n"),
        }[where]
        whole = write(tmp_path, warps__w=header)
        shared = public(whole)

        assert () == whole.problems
        assert unnamed(ledger_of(whole, whole.warps["w"]).rows) == unnamed(ledger_of(shared, shared.warps["w"]).rows)

    def test_order_of_the_hem(self, tmp_path: Path) -> None:
        """Where `hemmed:` stands among the washes is known there too."""
        header = "share: yes\non_loom: 20 x 33\nhem: 1 in\nwashed 1: 19 x 31\nhemmed: 19 x 28\nwashed 2: 18 x 27"
        whole = write(tmp_path, warps__w=header)
        shared = public(whole)

        assert unnamed(ledger_of(whole, whole.warps["w"]).rows) == unnamed(ledger_of(shared, shared.warps["w"]).rows)
