"""Photos: their size after the camera's turn, what is refused, and the smaller copy."""

from __future__ import annotations

import io
import struct
import zlib
from pathlib import Path

import pytest
from PIL import Image, ImageCms

from builder.reading import PhotoData, PhotoFault, read_photo, scaled_jpeg

RED, BLUE = (200, 30, 30), (30, 30, 200)


def two_colours(width: int = 60, height: int = 40) -> Image.Image:
    """Red above, blue below."""
    image = Image.new("RGB", (width, height), RED)
    image.paste(BLUE, (0, height // 2, width, height))
    return image


def turned(orientation: int) -> Image.Exif:
    exif = Image.Exif()
    exif[0x0112] = orientation
    exif[0x010F] = "a camera"
    return exif


def near(pixel: object, colour: tuple[int, int, int]) -> bool:
    assert isinstance(pixel, tuple)
    return all(abs(a - b) < 12 for a, b in zip(pixel, colour, strict=True))


def copy_of(path: Path, max_px: int) -> Image.Image:
    return Image.open(io.BytesIO(scaled_jpeg(path, max_px)))


@pytest.mark.parametrize(("ending", "form"), [("jpg", "JPEG"), ("png", "PNG"), ("webp", "WEBP")])
def test_size_and_format(tmp_path: Path, ending: str, form: str) -> None:
    path = tmp_path / f"a.{ending}"
    two_colours().save(path)
    assert read_photo(path) == PhotoData(60, 40, form)


@pytest.mark.parametrize("orientation", range(1, 9))
def test_size_is_that_of_the_photo_as_it_is_seen(tmp_path: Path, orientation: int) -> None:
    path = tmp_path / "a.jpg"
    two_colours().save(path, exif=turned(orientation))
    width, height = (40, 60) if orientation >= 5 else (60, 40)
    assert read_photo(path) == PhotoData(width, height, "JPEG")
    assert copy_of(path, 100).size == (width, height)


def test_copy_is_upright(tmp_path: Path) -> None:
    """Orientation 6 is a camera held on its side: what is stored on top is seen on the right."""
    path = tmp_path / "a.jpg"
    two_colours().save(path, exif=turned(6))
    copy = copy_of(path, 100)
    assert near(copy.getpixel((35, 30)), RED)
    assert near(copy.getpixel((5, 30)), BLUE)


def test_copy_fits_and_is_never_enlarged(tmp_path: Path) -> None:
    path = tmp_path / "a.jpg"
    two_colours(600, 400).save(path)
    assert copy_of(path, 150).size == (150, 100)
    assert copy_of(path, 900).size == (600, 400)


def test_copy_carries_no_notes_of_the_camera(tmp_path: Path) -> None:
    path = tmp_path / "a.jpg"
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    two_colours().save(path, exif=turned(1), comment=b"taken by", icc_profile=profile, dpi=(300, 300))
    data = scaled_jpeg(path, 100)
    copy = Image.open(io.BytesIO(data))
    assert not copy.getexif()
    assert {"comment", "icc_profile", "exif", "dpi"}.isdisjoint(copy.info)
    assert b"a camera" not in data


def test_copy_is_the_same_each_time(tmp_path: Path) -> None:
    path = tmp_path / "a.jpg"
    two_colours(600, 400).save(path)
    assert scaled_jpeg(path, 100) == scaled_jpeg(path, 100)


@pytest.mark.parametrize("mode", ["RGBA", "LA", "L", "P", "1"])
def test_every_kind_of_pixel_can_be_copied(tmp_path: Path, mode: str) -> None:
    path = tmp_path / "a.png"
    Image.new("RGB", (20, 10), "white").convert(mode).save(path)
    copy = copy_of(path, 100)
    assert (copy.mode, copy.size) == ("RGB", (20, 10))
    assert near(copy.getpixel((5, 5)), (255, 255, 255))


def test_what_was_transparent_is_white(tmp_path: Path) -> None:
    path = tmp_path / "a.png"
    Image.new("RGBA", (20, 10), (0, 0, 0, 0)).save(path)
    assert near(copy_of(path, 100).getpixel((5, 5)), (255, 255, 255))


def test_damaged_colour_profile_is_no_reason_to_refuse(tmp_path: Path) -> None:
    path = tmp_path / "a.jpg"
    two_colours().save(path, icc_profile=b"no profile")
    assert near(copy_of(path, 100).getpixel((30, 5)), RED)


def png_header(width: int, height: int) -> bytes:
    """The beginning of a PNG that claims a size without holding its pixels."""
    chunk = b"IHDR" + struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    idat = b"IDAT" + zlib.compress(b"")
    parts = [struct.pack(">I", len(one) - 4) + one + struct.pack(">I", zlib.crc32(one)) for one in (chunk, idat)]
    return b"\x89PNG\r\n\x1a\n" + b"".join(parts)


@pytest.mark.parametrize("size", [(8000, 5001), (12_000, 12_000), (60_000, 60_000)])
def test_too_many_pixels_are_refused_before_decoding(tmp_path: Path, size: tuple[int, int]) -> None:
    path = tmp_path / "a.png"
    path.write_bytes(png_header(*size))
    for use in (read_photo, lambda one: scaled_jpeg(one, 100)):
        with pytest.raises(PhotoFault, match="more than 40 megapixels") as caught:
            use(path)
        assert "4000 pixels" in caught.value.remedy


@pytest.mark.parametrize("ending", ["jpg", "png", "webp"])
def test_cut_off_photo_is_refused(tmp_path: Path, ending: str) -> None:
    path = tmp_path / f"a.{ending}"
    Image.effect_noise((200, 200), 80).convert("RGB").save(path)
    path.write_bytes(path.read_bytes()[:-2000])
    for use in (read_photo, lambda one: scaled_jpeg(one, 100)):
        with pytest.raises(PhotoFault):
            use(path)


def test_other_formats_are_refused_by_name(tmp_path: Path) -> None:
    path = tmp_path / "a.jpg"
    two_colours().save(path, format="BMP")
    with pytest.raises(PhotoFault, match="BMP") as caught:
        read_photo(path)
    assert caught.value.remedy == "Save it as JPEG, PNG or WebP."


@pytest.mark.parametrize("data", [b"", b"no photo", b"\xff\xd8\xff", b"\x89PNG\r\n\x1a\n", b"RIFF\x00\x00\x00\x00WEBP"])
def test_no_photo_at_all(tmp_path: Path, data: bytes) -> None:
    path = tmp_path / "a.jpg"
    path.write_bytes(data)
    with pytest.raises(PhotoFault):
        read_photo(path)


def test_missing_photo(tmp_path: Path) -> None:
    with pytest.raises(PhotoFault, match="no such photo"):
        read_photo(tmp_path / "a.jpg")


def test_size_of_a_copy_must_be_positive(tmp_path: Path) -> None:
    with pytest.raises(ValueError, match="max_px"):
        scaled_jpeg(tmp_path / "a.jpg", 0)


def test_importing_the_room_does_not_load_the_photo_library() -> None:
    """Start-up is felt: pillow is loaded by the first photo."""
    import subprocess
    import sys

    code = "import sys, builder.reading; sys.exit('PIL' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], cwd=Path(__file__).parents[2], check=False).returncode == 0
