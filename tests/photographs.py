"""Photographs as a telephone writes them, with everything in them that nobody else should have."""

from __future__ import annotations

import io

from PIL import Image, ImageCms, ImageDraw

CORNERS = {
    "top left": (200, 40, 40),
    "top right": (40, 160, 60),
    "bottom left": (40, 70, 190),
    "bottom right": (220, 190, 40),
}
"""The colours of a photograph's quarters, as they are seen when it is upright."""

NEEDLES = (
    *(b"CANARYMAKER", b"CANARYMODEL", b"CANARYOWNER", b"CANARYCOMMENT", b"CANARYXMP"),
    *(b"Exif", b"ICC_PROFILE", b"http://ns.adobe"),
)
"""What stands in the file besides the picture."""

XMP = b'<x:xmpmeta xmlns:x="adobe:ns:meta/"><dc:title>CANARYXMP</dc:title></x:xmpmeta>'


def photograph(width: int = 2000, height: int = 1500) -> bytes:
    """A JPEG that is `width` x `height` pixels when upright, and lies on its side in the file.

    It holds a place (51 degrees 30 minutes north), maker, model, owner, a comment, an XMP packet,
    a colour profile, and the orientation 6: to be turned a quarter clockwise.
    """
    upright = Image.new("RGB", (width, height))
    draw = ImageDraw.Draw(upright)
    for name, colour in CORNERS.items():
        top = 0 if name.startswith("top") else height // 2
        left = 0 if name.endswith("left") else width // 2
        draw.rectangle((left, top, left + width // 2, top + height // 2), fill=colour)
    exif = Image.Exif()
    exif[0x0112] = 6
    exif[0x010F], exif[0x0110], exif[0x013B] = "CANARYMAKER", "CANARYMODEL", "CANARYOWNER"
    place = exif.get_ifd(0x8825)
    place[1], place[2] = "N", (51.0, 30.0, 0.0)
    place[3], place[4] = "W", (0.0, 7.0, 0.0)
    written = io.BytesIO()
    upright.transpose(Image.Transpose.ROTATE_90).save(
        written,
        "JPEG",
        quality=90,
        exif=exif,
        comment=b"CANARYCOMMENT",
        xmp=XMP,
        icc_profile=ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes(),
    )
    return written.getvalue()


def corner(picture: Image.Image, name: str) -> tuple[int, ...]:
    """The colour in the middle of one quarter."""
    across = 1 if name.endswith("left") else 3
    down = 1 if name.startswith("top") else 3
    colour = picture.convert("RGB").getpixel((picture.width * across // 4, picture.height * down // 4))
    assert isinstance(colour, tuple)
    return colour
