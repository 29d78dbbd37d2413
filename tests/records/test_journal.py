"""Records by name: names and old names, the order of warps, which files are records."""

from __future__ import annotations

from pathlib import Path

import pytest

from journal_tools.checking import check
from journal_tools.ledger import ledger_of
from journal_tools.records import read_journal
from journal_tools.records.yarns_used import all_yarns, warp_threads, weft_threads, yarn_in_use
from tests.ledger.desk import write


class TestNames:
    """The folder says the kind, the file's name is the identity."""

    def test_kinds(self, tmp_path: Path) -> None:
        """Each folder holds its own kind, and the same name may stand in each."""
        made = write(tmp_path, warps__a="", yarns__a="", drafts__a="", looms__a="", finishes__a="")

        assert [["a"]] * 5 == [list(made.kind(kind)) for kind in ("warps", "yarns", "drafts", "looms", "finishes")]
        assert [] == list(made.problems)

    @pytest.mark.parametrize(("file", "tidy"), [("Blue Towels", "blue-towels"), ("tücher", "t-cher"), ("a--b", "a-b")])
    def test_a_name_that_is_no_address(self, tmp_path: Path, file: str, tidy: str) -> None:
        """A file whose name is no address is told of, with the name that would do."""
        (tmp_path / "warps").mkdir()
        (tmp_path / "warps" / f"{file}.md").write_text("---\ntitle: Towels\n---\n", encoding="utf-8")
        (problem,) = write(tmp_path).problems

        assert ("file-name", f"{file}.md") == (problem.slug, problem.read)
        assert f"`{tidy}.md`" in problem.right

    @pytest.mark.parametrize("file", ["README.md", "index.md", "_draft.md", ".hidden.md", "photo.jpg", "notes.txt"])
    def test_files_that_are_no_records(self, tmp_path: Path, file: str) -> None:
        """A readme, a hidden file or a photo is no entry, and no fault."""
        (tmp_path / "warps").mkdir()
        (tmp_path / "warps" / file).write_text("anything", encoding="utf-8")
        made = write(tmp_path)

        assert ({}, ()) == (made.warps, made.problems)

    def test_a_heading(self, tmp_path: Path) -> None:
        """A record without a title is called by its name."""
        made = write(tmp_path, warps__blue_towels="yarn: linen", warps__x="title: Towels")

        assert ["Blue towels", "Towels"] == [warp.heading for warp in made.warps.values()]


class TestLinks:
    """A journal's records are its own files; a shared journal must not bring along what a link leads to."""

    def test_a_file_elsewhere(self, tmp_path: Path) -> None:
        """A link to a file outside the journal is a fault, and nothing of the file is read."""
        (tmp_path / "diary.md").write_text("---\ntitle: My diary\n---\n", encoding="utf-8")
        folder = tmp_path / "journal"
        (folder / "warps").mkdir(parents=True)
        (folder / "warps" / "w.md").symlink_to(tmp_path / "diary.md")
        journal = read_journal(folder)

        assert {} == journal.warps
        assert [("warps/w.md", "link")] == [(problem.file, problem.slug) for problem in journal.problems]

    def test_a_folder_elsewhere(self, tmp_path: Path) -> None:
        """So is a folder that is a link."""
        write(tmp_path / "hers", warps__w="title: Hers")
        folder = tmp_path / "journal"
        folder.mkdir()
        (folder / "warps").symlink_to(tmp_path / "hers" / "warps")
        journal = read_journal(folder)

        assert {} == journal.warps
        assert [("warps", "link")] == [(problem.file, problem.slug) for problem in journal.problems]

    def test_a_link_to_nothing(self, tmp_path: Path) -> None:
        """A link that leads to itself is a fault, and no crash."""
        (tmp_path / "warps").mkdir()
        (tmp_path / "warps" / "w.md").symlink_to(tmp_path / "warps" / "w.md")

        assert [1] == [len(read_journal(tmp_path).problems)]

    def test_inside(self, tmp_path: Path) -> None:
        """A link from one entry to another of the same journal is read."""
        journal = write(tmp_path, warps__w="title: One")
        (tmp_path / "warps" / "v.md").symlink_to(tmp_path / "warps" / "w.md")

        assert ["w"] == list(journal.warps)
        assert ["v", "w"] == sorted(read_journal(tmp_path).warps)


class TestOldNames:
    """`was:` keeps old names alive."""

    def test_warps_that_say_the_old_name(self, tmp_path: Path) -> None:
        """A loom, draft, finish or yarn renamed since is still the one that a warp means, and nothing is asked."""
        made = write(
            tmp_path,
            looms__small="title: Small\nwas: little\nshafts: 4",
            drafts__huck="threading: 1-4\nlift_plan: 1+2, 3+4\nwas:\n  - lace\n  - huck-lace",
            finishes__tub="title: Tub\nwas: bucket\nfulling: yes",
            yarns__flax="title: Flax\nwas: linen",
            warps__w=(
                "loom: little\nyarn: linen\ndraft: lace\nin_reed: 20\nstretches:\n  - name: a\n    draft: huck-lace\n"
                "    washed:\n      - size: 18 x 30\n        finish: bucket\n  - name: b\n    finish: bucket\n"
                "    pieces:\n      - finish: bucket\n        washed: 17 x 30"
            ),
        )
        warp = made.warps["w"]

        assert [] == [problem.sentence() for problem in check(made)]
        assert ("small", "huck", "huck") == (warp.loom, warp.draft, warp.stretches[0].draft)
        assert "tub" == warp.stretches[0].washed[0].finish
        assert (("tub",), ("tub",)) == (warp.stretches[1].finish, warp.stretches[1].pieces[0].finish)
        assert ["flax"] == [yarn.name for yarn in all_yarns(made, warp)]
        assert [False, True] == [row.steered for row in ledger_of(made, warp).rows]

    @pytest.mark.parametrize("others", [{"yarns__b": "title: B"}, {"yarns__c": "was: b"}])
    def test_one_name_leads_to_one_entry(self, tmp_path: Path, others: dict[str, str]) -> None:
        """An old name that is another's name, or another's old name, is a fault."""
        (problem,) = write(tmp_path, yarns__a="title: A\nwas: b", **others).problems

        assert ("name-taken", "was", "b", True) == (problem.slug, problem.field, problem.read, problem.is_fault)

    def test_other_kinds_do_not_matter(self, tmp_path: Path) -> None:
        """A loom may have been called what a yarn is called."""
        assert () == write(tmp_path, looms__a="was: b", yarns__b="title: B").problems


class TestOrder:
    """Newest first, undated last, by the record and never by the file."""

    def test_all_kinds_of_dates(self, tmp_path: Path) -> None:
        """A day, a month, a season, a year and "about" one; two undated by name."""
        made = write(
            tmp_path,
            warps__year="started: 2016",
            warps__zebra="title: Undated",
            warps__day="started: 2024-04-20",
            warps__season="started: spring 2019",
            warps__about="started: ~2012",
            warps__month="finished: 2024-05",
            warps__ant="title: Undated",
        )

        assert ["month", "day", "season", "year", "about", "ant", "zebra"] == [
            warp.name for warp in made.warps_newest_first()
        ]


class TestYarnsOfAWarp:
    """Which yarns a warp used, under which of its names."""

    YARNS = {
        "yarns__linen_20_2": "title: Bleached linen\nfibre: linen\ncolours:\n  bone: efe8d8\n  slate: 43536b",
        "yarns__wool": "title: Brown wool\ncolours:\n  brown: 4a3b30",
    }

    @pytest.mark.parametrize(
        ("header", "found"),
        [
            ("yarn: linen-20-2", [("linen-20-2", "", "efe8d8")]),
            ("yarn: linen-20-2 slate", [("linen-20-2", "slate", "43536b")]),
            ("yarn: Bleached linen", [("linen-20-2", "", "efe8d8")]),
            ("yarns:\n  a: linen-20-2 bone\nwarp:\n  order: 4 a", [("linen-20-2", "bone", "efe8d8")]),
            ("warp:\n  yarn: linen-20-2\n  order: 4 bone, 2 slate",
             [("linen-20-2", "bone", "efe8d8"), ("linen-20-2", "slate", "43536b")]),
            ("yarn: linen-20-2\nwarp:\n  order: 4 bone, 2 slate",
             [("linen-20-2", "bone", "efe8d8"), ("linen-20-2", "slate", "43536b"), ("linen-20-2", "", "efe8d8")]),
            ("warp:\n  yarn: mystery-wool\n  order: 4 red", [("mystery-wool", "red", None)]),
            ("warp:\n  yarn: wool\nweft:\n  yarn: linen-20-2\n  colour: slate",
             [("wool", "", "4a3b30"), ("linen-20-2", "slate", "43536b")]),
            ("yarn: a cone from the attic", [("a-cone-from-the-attic", "", None)]),
            ("yarn: sea-silk 7", [("sea-silk", "7", None)]),
        ],
    )  # fmt: skip
    def test_found(self, tmp_path: Path, header: str, found: list[tuple[str, str, str | None]]) -> None:
        """By name, by title, by a short name, by a colour beside its yarn; or by what was typed, without a record."""
        made = write(tmp_path, **self.YARNS, warps__w=header)

        assert found == [(yarn.name, yarn.colour, yarn.hex) for yarn in all_yarns(made, made.warps["w"])]

    def test_threads(self, tmp_path: Path) -> None:
        """Ends are counted by yarn, floating selvedges among them; picks by their order."""
        header = (
            "yarns:\n  a: linen-20-2 bone\n  b: wool\nwarp:\n  order: 20 a, 4 b, 20 a\n  floating_selvedges: b\n"
            "weft:\n  order: 3 a, 1 b"
        )
        made = write(tmp_path, **self.YARNS, warps__w=header)
        warp = made.warps["w"]

        assert [("a", 40), ("b", 6)] == [(yarn.alias, ends) for yarn, ends in warp_threads(made, warp)]
        assert [("a", 3), ("b", 1)] == [(yarn.alias, picks) for yarn, picks in weft_threads(made, warp, warp.weft)]

    def test_a_short_name_comes_first(self, tmp_path: Path) -> None:
        """A short name of the warp's own hides a yarn of the same name."""
        made = write(tmp_path, **self.YARNS, warps__w="yarns:\n  wool: linen-20-2 slate")

        assert "linen-20-2" == yarn_in_use(made, made.warps["w"], "wool").name
