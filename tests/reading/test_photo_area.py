"""Hidden areas of photos can't be read back, crops keep what they say, and copies carry no notes."""

from __future__ import annotations

import io
import random
from fractions import Fraction
from pathlib import Path

import pytest
from PIL import Image, ImageCms, PngImagePlugin

from builder.reading import PhotoEdit, PhotoFault, read_photo, scaled_jpeg

AREA = (Fraction(1, 5), Fraction(1, 4), Fraction(3, 5), Fraction(1, 2))
SIZE = (320, 240)


def noise(seed: int, size: tuple[int, int] = SIZE) -> Image.Image:
    return Image.frombytes("RGB", size, random.Random(seed).randbytes(size[0] * size[1] * 3))


def with_secret(path: Path, seed: int) -> Path:
    """One picture around, another one in the area."""
    image = noise(1)
    box = tuple(int(share * side) for share, side in zip(AREA, (*SIZE, *SIZE), strict=True))
    image.paste(noise(seed, (box[2] - box[0], box[3] - box[1])), box[:2])
    image.save(path)
    return path


@pytest.mark.parametrize("ending", ["png", "webp"])
@pytest.mark.parametrize("more", [(), ((Fraction(3, 5), Fraction(1, 4), Fraction(4, 5), Fraction(1, 2)),)])
def test_what_was_hidden_leaves_no_trace(
    tmp_path: Path, ending: str, more: tuple[tuple[Fraction, Fraction, Fraction, Fraction], ...]
) -> None:
    """Two photos that differ only inside the area give the same bytes, beside another hidden area too."""
    save = {} if ending == "png" else {"lossless": True}
    paths = []
    for seed in (2, 3):
        png = with_secret(tmp_path / f"{seed}.png", seed)
        path = tmp_path / f"x{seed}.{ending}"
        Image.open(png).save(path, **save)
        paths.append(path)
    edit = PhotoEdit((AREA, *more))
    assert scaled_jpeg(paths[0], 200, edit) == scaled_jpeg(paths[1], 200, edit)
    assert scaled_jpeg(paths[0], 200) != scaled_jpeg(paths[1], 200)


def test_a_hidden_area_takes_the_colour_around_it(tmp_path: Path) -> None:
    """It doesn't shine out of the picture."""
    image = Image.new("RGB", SIZE, (200, 40, 40))
    image.paste((0, 0, 255), (80, 70, 180, 110))
    image.save(tmp_path / "a.png")
    shown = Image.open(io.BytesIO(scaled_jpeg(tmp_path / "a.png", 320, PhotoEdit((AREA,)))))
    red, _, blue = shown.getpixel((128, 90))  # type: ignore[misc]
    assert red > 140
    assert blue < 60


def test_a_wholly_hidden_photo_is_grey(tmp_path: Path) -> None:
    """There is no colour around it to take."""
    noise(4).save(tmp_path / "a.png")
    whole = PhotoEdit(((Fraction(0), Fraction(0), Fraction(1), Fraction(1)),))
    shown = Image.open(io.BytesIO(scaled_jpeg(tmp_path / "a.png", 320, whole)))
    assert all(high - low < 40 for low, high in shown.getextrema())  # type: ignore[misc]


def test_a_crop_keeps_its_part_only(tmp_path: Path) -> None:
    """In pixels of the photo as it is seen."""
    image = Image.new("RGB", SIZE, (250, 250, 250))
    image.paste((10, 10, 10), (160, 120, 320, 240))
    image.save(tmp_path / "a.png")
    cut = Image.open(
        io.BytesIO(
            scaled_jpeg(
                tmp_path / "a.png", 999, PhotoEdit((), (Fraction(1, 2), Fraction(1, 2), Fraction(1), Fraction(1)))
            )
        )
    )
    assert cut.size == (160, 120)
    assert max(high for _, high in cut.getextrema()) < 30  # type: ignore[misc]


def test_a_crop_follows_the_turn_of_the_camera(tmp_path: Path) -> None:
    """What is stored on top is seen on the right when the camera lay on its side."""
    image = Image.new("RGB", SIZE, (250, 250, 250))
    image.paste((10, 10, 10), (0, 0, 320, 120))
    exif = Image.Exif()
    exif[0x0112] = 6
    image.save(tmp_path / "a.jpg", exif=exif, quality=95)
    right = PhotoEdit((), (Fraction(11, 20), Fraction(0), Fraction(1), Fraction(1)))
    assert max(h for _, h in Image.open(io.BytesIO(scaled_jpeg(tmp_path / "a.jpg", 999, right))).getextrema()) < 40  # type: ignore[misc]


NOTES = (b"SECRETPLACE", b"Exif", b"http://ns.adobe.com/xap", b"Photoshop", b"ICC_PROFILE", b"8BIM", b"tEXt")


def test_a_copy_holds_nothing_but_pixels(tmp_path: Path) -> None:
    """No place, device, thumbnail, XMP, IPTC, comment, text of a PNG or colour profile."""
    exif = Image.Exif()
    exif[0x010F] = "SECRETPLACE"
    exif.get_ifd(0x8825)[1] = "SECRETPLACE"
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    texts = PngImagePlugin.PngInfo()
    texts.add_text("Comment", "SECRETPLACE")
    texts.add_itxt("XML:com.adobe.xmp", "<x>SECRETPLACE http://ns.adobe.com/xap</x>")
    noise(5).save(tmp_path / "a.png", pnginfo=texts, exif=exif, icc_profile=profile)
    noise(5).save(tmp_path / "a.webp", exif=exif, icc_profile=profile, xmp=b"<x>SECRETPLACE</x>")
    noise(5).save(tmp_path / "a.jpg", exif=exif, icc_profile=profile, comment=b"SECRETPLACE", xmp=b"<x>SECRETPLACE</x>")
    data = (tmp_path / "a.jpg").read_bytes()
    iptc = b"Photoshop 3.0\x008BIM\x04\x04\x00\x00SECRETPLACE"
    marker = b"\xff\xed" + (len(iptc) + 2).to_bytes(2, "big") + iptc
    (tmp_path / "a.jpg").write_bytes(data[:2] + marker + data[2:])
    for path in sorted(tmp_path.iterdir()):
        assert b"SECRETPLACE" in path.read_bytes()
        copy = scaled_jpeg(path, 100)
        assert not [note for note in NOTES if note in copy]
        assert set(_markers(copy)) <= {0xE0, 0xDB, 0xC0, 0xC2, 0xC4, 0xDA}


def _markers(jpeg: bytes) -> list[int]:
    """The kinds of segments before the pixels."""
    found, at = [], 2
    while jpeg[at + 1] != 0xDA:
        found.append(jpeg[at + 1])
        at += 2 + int.from_bytes(jpeg[at + 2 : at + 4], "big")
    return found


@pytest.mark.parametrize(("form", "ending"), [("WEBP", "webp"), ("PNG", "png"), ("GIF", "gif")])
def test_what_moves_is_refused(tmp_path: Path, form: str, ending: str) -> None:
    """A frame is for the engineer to choose."""
    path = tmp_path / f"a.{ending}"
    noise(1).save(path, form, save_all=True, append_images=[noise(2), noise(3)])
    with pytest.raises(PhotoFault, match=r"moves: it has 3 frames|in the format GIF"):
        read_photo(path)


def test_a_wrong_ending_is_told(tmp_path: Path) -> None:
    """With the right one."""
    noise(1).save(tmp_path / "a.jpg", "PNG")
    with pytest.raises(PhotoFault, match=r"is a PNG, but its name ends in \.jpg") as caught:
        read_photo(tmp_path / "a.jpg")
    assert caught.value.remedy == "Rename it to end in .png."


def test_a_phones_two_pictures_in_one_file_are_a_photo(tmp_path: Path) -> None:
    """The depth picture behind it is left out."""
    noise(1).save(tmp_path / "a.jpg", "MPO", save_all=True, append_images=[noise(2)])
    assert read_photo(tmp_path / "a.jpg").format == "JPEG"
    assert Image.open(io.BytesIO(scaled_jpeg(tmp_path / "a.jpg", 999))).size == SIZE
