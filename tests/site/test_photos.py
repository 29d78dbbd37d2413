"""Photographs: shown upright and small, with nothing in them but the picture."""

from __future__ import annotations

import io
import struct
from collections.abc import Iterator
from pathlib import Path

import pytest
from PIL import Image

from journal_tools.pictures.photo import PhotoRefused, photo_sizes
from tests.built import seen
from tests.photographs import CORNERS, NEEDLES, corner, photograph

SITES = ["tiny_site", "tiny_public_site"]


@pytest.fixture(params=SITES)
def site(request: pytest.FixtureRequest) -> Path:
    """The small journal's site, for oneself and for others."""
    folder: Path = request.getfixturevalue(request.param)
    return folder


def opened(path: Path) -> Image.Image:
    """A picture, read whole."""
    return Image.open(io.BytesIO(path.read_bytes()))


def chunks(webp: bytes) -> Iterator[str]:
    """The names of a WebP file's chunks. Source: RFC 9649, WebP image format."""
    at = 12
    while at < len(webp):
        name, size = struct.unpack("<4sI", webp[at : at + 8])
        yield name.decode("ascii")
        at += 8 + size + size % 2


class TestInASite:
    def test_the_camera_wrote_them(self) -> None:
        """The photograph that these tests use does hold what they look for."""
        whole = photograph(400, 300)

        assert [] == [needle for needle in NEEDLES if needle not in whole]
        assert (300, 400) == Image.open(io.BytesIO(whole)).size

    def test_nothing_but_the_picture(self, site: Path) -> None:
        """No place, maker, owner, comment or profile is in any byte of the site's pictures, and no file is a JPEG."""
        shown = [path for path in site.rglob("*") if path.is_file() and "assets" not in path.parts]

        for path in shown:
            content = path.read_bytes()
            assert [] == [needle for needle in NEEDLES if needle in content]
            assert path.suffix.lower() not in (".jpg", ".jpeg")

    def test_a_file_of_one_part(self, site: Path) -> None:
        """A shown photograph is a file with a single part, its pixels: there is no room for anything else."""
        photos = list((site / "pictures").glob("*.webp"))

        assert photos
        for path in photos:
            assert ["VP8 "] == list(chunks(path.read_bytes()))

    def test_upright(self, site: Path) -> None:
        """A photograph that lies on its side in the file is shown upright, each corner where it belongs."""
        [picture] = [each for each in self.photos(site) if "Napkins on the line" in each["alt"]]
        shown = opened(site / "warps" / picture["src"])

        assert shown.width > shown.height
        for name, colour in CORNERS.items():
            assert all(abs(a - b) < 24 for a, b in zip(colour, corner(shown, name), strict=True))

    def test_in_several_widths(self, site: Path) -> None:
        """A photograph of 2000 pixels is there in 480, 960 and 1600, and the page says so to the browser."""
        [picture] = [each for each in self.photos(site) if "Napkins on the line" in each["alt"]]
        wide = [part.split() for part in picture["srcset"].split(",")]

        assert ["480w", "960w", "1600w"] == [width for _, width in wide]
        for address, width in wide:
            shown = opened(site / "warps" / address)
            assert int(width[:-1]) == shown.width
            assert 0.75 == round(shown.height / shown.width, 2)
        assert ("480", "360") == (picture["width"], picture["height"])

    def test_none_wider_than_itself(self, tiny_site: Path) -> None:
        """A photograph of 1200 pixels is not blown up: its widest is its own."""
        [picture] = [each for each in self.photos(tiny_site) if "The shed" in each["alt"]]

        assert ["480w", "960w", "1200w"] == [part.split()[1] for part in picture["srcset"].split(",")]

    def test_for_others_only_those_marked(self, tiny_site: Path, tiny_public_site: Path) -> None:
        """For others there is the photograph that is marked for everyone, and not the other one."""
        line, shed = "Napkins on the line, in wind", "The shed, from above"

        assert [line, shed] == [each["alt"] for each in self.photos(tiny_site)]
        assert [line] == [each["alt"] for each in self.photos(tiny_public_site)]
        assert 3 == len(list((tiny_public_site / "pictures").glob("*.webp")))

    @pytest.mark.parametrize("address", ["yarns/linen-20-2.html", "drafts/huck-squares.html", "looms/small-loom.html"])
    def test_beside_a_record_of_any_kind(self, tiny_site: Path, tiny_public_site: Path, address: str) -> None:
        """A photograph beside a yarn, a draft or a loom is on its page, and for others only when it is marked so."""
        assert ["480w", "600w"] == [
            part.split()[1] for each in self.photos(tiny_site, address) for part in each["srcset"].split(",")
        ]
        assert [] == self.photos(tiny_public_site, address)

    @staticmethod
    def photos(site: Path, address: str = "warps/gannet-napkins.html") -> list[dict[str, str]]:
        """The photographs on a page, the napkins' page if no other."""
        pictures = seen(site, address).all("img")
        return [picture for picture in pictures if "photo" in picture.get("class", "").split()]


class TestFilesOfOtherKinds:
    @pytest.mark.parametrize("kind", ["PNG", "WEBP", "TIFF"])
    def test_other_formats(self, tmp_path: Path, kind: str) -> None:
        """PNG, WebP and TIFF are photographs too, and what they carry is left behind."""
        path = tmp_path / f"photo.{kind.lower()}"
        taken = Image.open(io.BytesIO(photograph(600, 400)))
        taken.save(path, kind, exif=taken.getexif())
        sizes = photo_sizes(path)

        assert b"CANARYMAKER" in path.read_bytes()
        assert [(480, 320), (600, 400)] == [(each.width, each.height) for each in sizes]
        for each in sizes:
            assert ["VP8 "] == list(chunks(each.data))

    def test_see_through_parts_are_white(self, tmp_path: Path) -> None:
        """What can be seen through in a picture is shown white and not black."""
        path = tmp_path / "photo.png"
        Image.new("RGBA", (40, 40), (0, 0, 0, 0)).save(path)
        [shown] = photo_sizes(path)

        assert all(part > 250 for part in corner(Image.open(io.BytesIO(shown.data)), "top left"))

    @pytest.mark.parametrize(
        ("content", "why"),
        [
            (b"no picture", "it is no picture that can be read"),
            (photograph(400, 300)[:4000], "it cannot be read as a picture"),
        ],
    )
    def test_a_file_that_is_no_picture(self, tmp_path: Path, content: bytes, why: str) -> None:
        """A broken file is refused with the reason, and never with a traceback."""
        path = tmp_path / "photo.jpg"
        path.write_bytes(content)

        with pytest.raises(PhotoRefused, match=why):
            photo_sizes(path)

    def test_more_pixels_than_any_camera(self, tmp_path: Path) -> None:
        """A small file that would unfold to more than 100 million pixels is refused before it is unfolded."""
        path = tmp_path / "photo.png"
        Image.new("1", (20_000, 6_000)).save(path)

        with pytest.raises(PhotoRefused, match="more than 100 million pixels"):
            photo_sizes(path)
