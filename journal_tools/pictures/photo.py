"""Photos for a page: turned upright, made smaller, with nothing in them but the picture.

Cameras write place, time, owner and their own number into a photo. Every photo on a page is drawn
anew from its pixels alone, so none of that can be in it; the original is never copied.
"""

from __future__ import annotations

import io
import warnings
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from PIL.Image import Image

WIDTHS = (480, 960, 1600)
MOST_BYTES = 60_000_000
MOST_PIXELS = 100_000_000
SUFFIXES = (".jpg", ".jpeg", ".png", ".webp", ".avif", ".tif", ".tiff")


class PhotoRefused(Exception):
    """This file is no photo that can be shown; the message says why, in the weaver's words."""


@dataclass(frozen=True)
class Sized:
    """One size of a photo, as WebP. width, height: in pixels."""

    width: int
    height: int
    data: bytes


def photo_sizes(path: Path) -> tuple[Sized, ...]:
    """A photo in the widths that pages use, none wider than the photo itself, smallest first.

    Colours are brought to sRGB. Raises PhotoRefused for what is no photo, or is too large.
    """
    from PIL import ImageOps, UnidentifiedImageError
    from PIL.Image import DecompressionBombError, DecompressionBombWarning
    from PIL.Image import open as open_image

    try:
        if path.stat().st_size > MOST_BYTES:
            raise PhotoRefused(f"it is larger than {MOST_BYTES // 1_000_000} MB; make it smaller")
        with warnings.catch_warnings(action="ignore", category=DecompressionBombWarning), open_image(path) as opened:
            if opened.width * opened.height > MOST_PIXELS:
                raise PhotoRefused(f"it has more than {MOST_PIXELS // 1_000_000} million pixels; make it smaller")
            opened.draft("RGB", (WIDTHS[-1], WIDTHS[-1]))
            pixels = _plain(ImageOps.exif_transpose(opened), opened.info.get("icc_profile"))
    except UnidentifiedImageError:
        raise PhotoRefused("it is no picture that can be read; JPEG, PNG, WebP, AVIF and TIFF can") from None
    except (OSError, ValueError, SyntaxError, DecompressionBombError) as error:
        raise PhotoRefused(f"it cannot be read as a picture ({error})") from error
    return tuple(_sized(pixels, width) for width in _widths(pixels.width))


def _widths(own: int) -> list[int]:
    fitting = [width for width in WIDTHS if width < own]
    return [*fitting, own] if len(fitting) < len(WIDTHS) else fitting


def _plain(image: Image, profile: bytes | None) -> Image:
    """The pixels alone, in sRGB, on a white ground, in an image that knows nothing else."""
    from PIL import ImageCms
    from PIL.Image import new

    if profile:
        try:
            source = ImageCms.ImageCmsProfile(io.BytesIO(profile))
            in_srgb = ImageCms.profileToProfile(image, source, ImageCms.createProfile("sRGB"), outputMode="RGB")
            image = in_srgb or image
        except (ImageCms.PyCMSError, OSError):
            pass  # a profile that cannot be used leaves the colours as they are
    if image.mode in ("RGBA", "LA", "PA") or "transparency" in image.info:
        layered = image.convert("RGBA")
        image = new("RGBA", layered.size, (255, 255, 255, 255))
        image.alpha_composite(layered)
    bare = new("RGB", image.size)
    bare.paste(image.convert("RGB"))
    return bare


def _sized(pixels: Image, width: int) -> Sized:
    from PIL.Image import Resampling

    height = max(1, round(pixels.height * width / pixels.width))
    small = pixels if width == pixels.width else pixels.resize((width, height), Resampling.LANCZOS)
    written = io.BytesIO()
    small.save(written, "WEBP", quality=78, method=4)
    return Sized(width, height, written.getvalue())
