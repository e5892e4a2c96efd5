"""Photos: how large they are, and a smaller copy. Which step shows one is no business of this module."""

from __future__ import annotations

import io
import struct
import warnings
import zlib
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from builder.reading.photo_area import NO_EDIT, PhotoEdit, hide, pixels_of
from builder.reading.photo_fault import PhotoFault
from builder.reading.svg_clean import read_svg

if TYPE_CHECKING:
    from PIL.Image import Image

MAX_PIXELS = 40_000_000
"""Largest photo that is decoded; more would need hundreds of megabytes of memory."""

_FORMATS = {"JPEG": (".jpg", ".jpeg"), "PNG": (".png",), "WEBP": (".webp",)}
# Phones keep a depth picture behind the photo itself; the first picture of such a file is a plain JPEG.
_SAME = {"MPO": "JPEG"}
SVG = ".svg"
_ORIENTATION = 0x0112  # the Exif tag of how the camera was held; the values 5 to 8 swap width and height
_QUALITY = 85
# What the decoders raise on damaged photos: whatever they happen to stumble over.
_DAMAGE = (
    OSError,
    SyntaxError,
    ValueError,
    EOFError,
    LookupError,
    TypeError,
    OverflowError,
    struct.error,
    zlib.error,
)


@dataclass(frozen=True, slots=True)
class PhotoData:
    """Size of a photo as it is seen, after the camera's turn [px], and its format (JPEG, PNG, WEBP).

    An SVG drawing's size is its ratio, the longer side 1000; `dropped` says what was left out of it.
    """

    width: int
    height: int
    format: str
    dropped: tuple[str, ...] = ()


def read_photo(path: Path) -> PhotoData:
    """Read a photo to its end. Raises PhotoFault if it is too large, cut off, moving, or no JPEG, PNG, WebP or SVG."""
    if path.suffix.lower() == SVG:
        drawing = read_svg(path)
        # Sides of a thousand units or so, whatever the units are: only their ratio counts.
        scale = 1000 / max(drawing.width, drawing.height)
        width, height = (max(1, round(side * scale)) for side in (drawing.width, drawing.height))
        return PhotoData(width, height, "SVG", drawing.dropped)
    with _opened(path) as image:
        width, height = image.size
        # A JPEG is read to its end all the same, but its pixels are made at an eighth of their size: much faster.
        image.draft(None, (max(width // 8, 1), max(height // 8, 1)))
        image.load()
        if image.getexif().get(_ORIENTATION, 1) in (5, 6, 7, 8):
            width, height = height, width
        return PhotoData(width, height, _format(image))


def scaled_jpeg(path: Path, max_px: int, edit: PhotoEdit = NO_EDIT) -> bytes:
    """The photo as a JPEG, turned upright, without any of the camera's notes.

    max_px : the longer side is at most this [px], > 0; a smaller photo keeps its size
    edit   : areas made unreadable, and the part of the photo that is kept

    Colours are sRGB, what was transparent is white. The same photo and library give the same bytes.
    Raises PhotoFault as `read_photo` does.
    """
    if max_px < 1:
        raise ValueError(f"max_px is {max_px}")
    with _opened(path) as image:
        from PIL import Image, ImageOps

        # Lets a JPEG be decoded at half size or less; not where less of it is shown or hidden to the pixel.
        if edit == NO_EDIT:
            image.draft("RGB", (max_px, max_px))
        ImageOps.exif_transpose(image, in_place=True)  # a copy would be 160 MB more
        upright = _in_srgb(image)
        # Hidden before it is made smaller, so that no pixel outside an area mixes with one inside it.
        hide(upright, edit.hidden)
        if edit.crop is not None:
            upright = upright.crop(pixels_of(edit.crop, upright.size))
        upright.thumbnail((max_px, max_px), Image.Resampling.LANCZOS)
        # A new image carries over pixels only: no place, no date, no camera, no comment.
        clean = Image.new("RGB", upright.size, "white")
        clean.paste(upright, mask=upright.getchannel("A") if upright.mode == "RGBA" else None)
        out = io.BytesIO()
        clean.save(out, "JPEG", quality=_QUALITY)
        return out.getvalue()


def _in_srgb(image: Image) -> Image:
    """The photo in RGB or RGBA, its colours moved to sRGB if it says which it has."""
    profile = image.info.get("icc_profile")
    see_through = image.mode in ("RGBA", "LA", "PA") or "transparency" in image.info
    if profile and image.mode in ("RGB", "RGBA", "CMYK"):
        from PIL import ImageCms

        mode = "RGBA" if image.mode == "RGBA" else "RGB"
        try:
            source = ImageCms.ImageCmsProfile(io.BytesIO(profile))
            moved = ImageCms.profileToProfile(image, source, ImageCms.createProfile("sRGB"), outputMode=mode)
        except (ImageCms.PyCMSError, OSError):
            moved = None  # a damaged profile: the colours as they are do
        if moved is not None:
            return moved
    mode = "RGBA" if see_through else "RGB"
    return image if image.mode == mode and "transparency" not in image.info else image.convert(mode)


@contextmanager
def _opened(path: Path) -> Iterator[Image]:
    """The photo, not yet decoded; whatever the library raises while it is used becomes a PhotoFault."""
    from PIL import Image, UnidentifiedImageError

    try:
        with warnings.catch_warnings():
            # Our own limit is lower than the library's, and comes with a remedy.
            warnings.simplefilter("ignore", Image.DecompressionBombWarning)
            with Image.open(path) as image:
                _check(image, path)
                yield image
    except PhotoFault:
        raise
    except UnidentifiedImageError:
        raise PhotoFault("This is no photo, or its beginning is damaged.", remedy=_SAVE_AGAIN) from None
    except Image.DecompressionBombError:
        raise PhotoFault(_too_large(), remedy=_SHRINK) from None
    except PermissionError:
        raise PhotoFault("The photo can't be opened.", remedy="Allow reading it.") from None
    except FileNotFoundError:
        raise PhotoFault("There is no such photo.", remedy="Copy it into the folder photos.") from None
    except _DAMAGE:
        raise PhotoFault("The photo is cut off or damaged.", remedy=_COPY_AGAIN) from None


_SAVE_AGAIN = "Save it as JPEG, PNG or WebP."
_COPY_AGAIN = "Copy it from the camera again."
_SHRINK = "Save it smaller; 4000 pixels on the longer side are plenty."
_STILL = "Save the frame that teaches as a JPEG, or two as a pair."


def _format(image: Image) -> str:
    """The format of a photo, as its ending should name it."""
    return _SAME.get(str(image.format), str(image.format))


def _check(image: Image, path: Path) -> None:
    form = _format(image)
    if form not in _FORMATS:
        raise PhotoFault(f"The photo is in the format {form}.", remedy=_SAVE_AGAIN)
    if image.width * image.height > MAX_PIXELS:
        raise PhotoFault(_too_large(image.width, image.height), remedy=_SHRINK)
    frames = getattr(image, "n_frames", 1)
    if image.format != "MPO" and frames > 1:
        raise PhotoFault(f"This moves: it has {frames} frames.", remedy=_STILL)
    ending = path.suffix.lower()
    if ending not in _FORMATS[form]:
        named = f"its name ends in {ending}" if ending else "its name has no ending"
        raise PhotoFault(f"The photo is a {form}, but {named}.", remedy=f"Rename it to end in {_FORMATS[form][0]}.")


def _too_large(width: int = 0, height: int = 0) -> str:
    size = f" ({width} × {height} pixels)" if width else ""
    return f"The photo has more than {MAX_PIXELS // 1_000_000} megapixels{size}."
