"""The faces cut down for the site."""

from __future__ import annotations

from io import BytesIO

from fontTools.ttLib import TTFont

from builder.rendering.site_fonts import BASICS, font_files, font_paths


def _letters(content: bytes) -> set[str]:
    return set(map(chr, TTFont(BytesIO(content)).getBestCmap()))


def test_the_basics_are_always_in_and_the_family_has_what_our_own_words_use() -> None:
    for path, content in font_files(""):
        if path.endswith(".ttf"):
            letters = _letters(content)
            assert set("AZaz09 äéłß°±×−…–·½≥") <= letters
            assert letters <= BASICS | {"\r", "\x00"}


def test_a_letter_the_pages_use_is_added() -> None:
    extra = "†"
    for path, content in font_files(extra):
        if path.endswith(".ttf"):
            assert extra in _letters(content)


def test_the_same_letters_in_any_order_give_the_same_bytes() -> None:
    from builder.rendering import site_fonts

    first = dict(font_files("xyz†"))
    site_fonts._subset.cache_clear()
    assert dict(font_files("†zyx")) == first


def test_the_licence_travels_with_the_fonts() -> None:
    assert b"SIL Open Font License" in dict(font_files(""))["assets/fonts/LICENSE-atkinson-hyperlegible.txt"]


def test_a_subset_is_small() -> None:
    for path, content in font_files(""):
        assert len(content) < 40_000, path


def test_the_paths_are_known_without_making_the_files() -> None:
    assert font_paths() == [path for path, _ in font_files("")]
