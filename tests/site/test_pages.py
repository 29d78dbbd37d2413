"""The pages of a site: one for everything, and nothing that no page asked for."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tests.built import pages, seen

EVERYWHERE = {
    "404.html",
    "drafts.html",
    "finishes.html",
    "how-it-is-reckoned.html",
    "index.html",
    "looms.html",
    "search.html",
    "plan.html",
    "trends.html",
    "warps.html",
    "yarns.html",
}
RECORDS = {
    "drafts/double-width.html",
    "drafts/huck-squares.html",
    "drafts/straight-four.html",
    "finishes/fulled-in-the-tub.html",
    "finishes/hand-40-line.html",
    "looms/small-loom.html",
    "warps/estuary-towels.html",
    "warps/estuary-towels/dressing.html",
    "warps/fold-blanket.html",
    "warps/fold-blanket/dressing.html",
    "warps/gannet-napkins.html",
    "warps/gannet-napkins/dressing.html",
    "yarns/cottolin-22-2.html",
    "yarns/cotton-8-2.html",
    "yarns/linen-20-2.html",
    "yarns/woollen-8-2.html",
}
OWN = {
    "field-guide.html",
    "warps/blue-towels.html",
    "warps/lost-scarf.html",
    "warps/sett-sampler.html",
    "warps/sett-sampler/dressing.html",
    "warps/tideline-towels.html",
}
THEME = re.compile(r"assets/|404\.html$|sitemap\.xml(\.gz)?$|search/search_index\.js(on)?$")
"""What the site builder puts there by itself."""
MADE = re.compile(
    r"style/[\w-]+\.(css|js)$|pictures/[0-9a-f]{24}\.(png|webp|svg)$|figures/[\w.]+\.(csv|json|txt)$|plan-data\.js$"
    r"|drafts/[\w-]+\.wif$|[\w/-]+\.html$"
)


def boxes(site: Path, address: str) -> list[str]:
    """The boxes of problems on a page, and the corners of cards that tell of some."""
    kinds = [attributes.get("class", "").split() for _, attributes in seen(site, address).tags]
    return [" ".join(kind) for kind in kinds if "problem" in kind]


class TestEveryKind:
    def test_a_page_for_everything(self, tiny_site: Path) -> None:
        """There is a page for every record of every kind, a list of each kind, and those about the whole."""
        assert sorted(EVERYWHERE | RECORDS | OWN) == pages(tiny_site)

    def test_for_others_only_what_is_shared(self, tiny_public_site: Path) -> None:
        """For others there are the shared warps and what they use; a name that a warp had before is its maker's."""
        assert sorted(EVERYWHERE | RECORDS) == pages(tiny_public_site)

    @pytest.mark.parametrize("site", ["tiny_site", "tiny_public_site"])
    def test_nothing_else(self, site: str, request: pytest.FixtureRequest) -> None:
        """Nothing of the journal's folder is in the site but what a page asked for, under names of its own."""
        folder: Path = request.getfixturevalue(site)
        names = [path.relative_to(folder).as_posix() for path in folder.rglob("*") if path.is_file()]

        assert [] == [name for name in names if not THEME.match(name) and not MADE.match(name)]

    @pytest.mark.parametrize("site", ["tiny_site", "tiny_public_site"])
    def test_no_picture_that_no_page_shows(self, site: str, request: pytest.FixtureRequest) -> None:
        """Every picture and every chart in the site is shown by a page."""
        folder: Path = request.getfixturevalue(site)
        text = "".join(path.read_text(encoding="utf-8") for path in folder.rglob("*.html"))
        drawn = [path.name for path in (folder / "pictures").iterdir()]

        assert [] == [name for name in drawn if name not in text]

    def test_an_old_name_leads_on(self, tiny_site: Path) -> None:
        """A name that a warp had before leads to where it is now, without scripts too."""
        page = seen(tiny_site, "warps/blue-towels.html")
        refresh = [meta["content"] for meta in page.all("meta") if meta.get("http-equiv") == "refresh"]

        assert ["0; url=estuary-towels.html"] == refresh
        assert "estuary-towels.html" in [link.get("href") for link in page.all("a")]

    @pytest.mark.parametrize("address", sorted(EVERYWHERE | RECORDS | OWN))
    def test_one_title_and_one_heading(self, tiny_site: Path, address: str) -> None:
        """Every page has one heading of the first rank, one title, and says which language it is in."""
        page = seen(tiny_site, address)

        assert 1 == len(page.all("h1"))
        assert 1 == len(page.all("title"))
        assert page.all("html")[0]["lang"]

    @pytest.mark.parametrize("address", sorted(EVERYWHERE | RECORDS | OWN))
    def test_every_picture_is_described(self, tiny_site: Path, address: str) -> None:
        """Every picture has words for whoever cannot see it, and its size, so that nothing jumps."""
        for picture in seen(tiny_site, address).all("img"):
            assert picture["alt"].strip()
            assert int(picture["width"]) > 0
            assert int(picture["height"]) > 0


class TestWhatAPageSays:
    def test_a_warp_in_six_lines(self, tiny_site: Path) -> None:
        """Six lines are enough for a card with its size, for losses with both ends named, and for the yarn's page."""
        page = seen(tiny_site, "warps/tideline-towels.html").text

        assert re.search(r"width, reed to washed (not measured off the loom )?11\.7 % ± 0\.7", page)
        assert re.search(r"length, loom to washed (not measured off the loom )?8\.7 % ± 1\.1", page)
        assert "off the loom not measured" in page
        assert "11.7 % narrower" in seen(tiny_site, "warps.html").text
        assert "Tideline towels" in seen(tiny_site, "yarns/cottolin-22-2.html").text

    def test_stretches_hems_and_washes(self, tiny_site: Path) -> None:
        """A warp of stretches shows each with its pieces, two washes, the made-up size and its plan in words."""
        page = seen(tiny_site, "warps/gannet-napkins.html").text

        for words in (
            "Stretches, in the order woven",
            "Napkins",
            "Bookmarks",
            "napkins 2-6",
            "washed 2",
            "made up",
            "than planned",
            "Where the warp went",
            "cut off and re-tied after napkin 6",
        ):
            assert words in page

    def test_fulling_and_double_cloth(self, tiny_site: Path) -> None:
        """A fulled double cloth shows its size by the minute, and is reckoned by its opened width."""
        page = seen(tiny_site, "warps/fold-blanket.html").text

        for words in ("Size while it was fulled", "8 min", "2, opening along the left edge"):
            assert words in page

    def test_bands_side_by_side(self, tiny_site: Path) -> None:
        """Of a sampler with bands, each band has sizes of its own between its marks: 92 of 100 mm is 8.0 %."""
        page = seen(tiny_site, "warps/sett-sampler.html").text

        assert "loose" in page
        assert "close" in page
        assert "8.0 %" in page

    def test_what_is_not_learned_says_so(self, tiny_site: Path) -> None:
        """A warp that is kept out of what the journal learns says why."""
        assert "it went through the hot wash" in seen(tiny_site, "warps/lost-scarf.html").text

    def test_the_weavers_notes(self, tiny_site: Path) -> None:
        """Notes stay as the weaver set them: stress, links to other records, lists with boxes."""
        page = seen(tiny_site, "warps/gannet-napkins.html")

        assert "The gulls watched. Napkin 4 has a skipped shed" in page.text
        assert "../drafts/huck-squares.html" in [link.get("href") for link in page.all("a")]

    def test_a_question_is_on_its_warps_page(self, tiny_site: Path, tiny_public_site: Path) -> None:
        """A question is asked on the page of its warp, and never on a page for others."""
        asked = [address for address in pages(tiny_site) if boxes(tiny_site, address)]

        assert ["warps/lost-scarf.html"] == asked
        assert [] == [address for address in pages(tiny_public_site) if boxes(tiny_public_site, address)]

    def test_a_preview_shows_them(self, tiny_problems: Path) -> None:
        """In a preview a broken warp has a page with what is to be mended, and the front page has them all."""
        broken, odd = seen(tiny_problems, "warps/broken.html").text, seen(tiny_problems, "warps/odd.html").text
        front = seen(tiny_problems, "index.html").text

        assert "to mend" in broken
        assert "read “twelve”" in odd
        assert "One question" in odd
        assert "warps/broken.md" in front
        assert "warps/odd.md:4" in front
        assert "11.7 %" in seen(tiny_problems, "warps/tideline-towels.html").text
