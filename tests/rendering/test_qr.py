"""The QR symbol is drawn as the encoder made it, with its quiet zone."""

from __future__ import annotations

import re

import pytest
import segno

from builder.rendering.qr import QUIET_ZONE, qr_code

TEXT = "HND-20 7F3KQ2MX4"


def modules_of(svg: str) -> set[tuple[int, int]]:
    """Column and row of each dark module, read back from the path."""
    dark: set[tuple[int, int]] = set()
    for x, y, width, back in re.findall(r"M(\d+) (\d+)h(\d+)v1h-(\d+)z", svg):
        assert width == back
        dark |= {(int(x) + step, int(y)) for step in range(int(width))}
    return dark


def test_path_holds_exactly_the_dark_modules_of_level_m() -> None:
    symbol = segno.make(TEXT, error="m", micro=False, boost_error=False)
    expected = {
        (x + QUIET_ZONE, y + QUIET_ZONE) for y, row in enumerate(symbol.matrix) for x, bit in enumerate(row) if bit
    }
    assert symbol.error == "M"
    assert modules_of(qr_code(TEXT).svg) == expected


def test_quiet_zone_of_four_modules_stays_empty() -> None:
    code = qr_code(TEXT)
    inside = range(4, code.modules - 4)
    assert f'viewBox="0 0 {code.modules} {code.modules}"' in code.svg
    assert all(x in inside and y in inside for x, y in modules_of(code.svg))


def test_alt_says_the_text() -> None:
    assert qr_code(TEXT).alt == f"QR code: {TEXT}"
    assert qr_code(TEXT, "Code {text}").alt == f"Code {TEXT}"


def test_a_longer_text_takes_a_larger_symbol() -> None:
    assert qr_code("A" * 200).modules > qr_code("A").modules


def test_an_empty_text_is_refused() -> None:
    with pytest.raises(ValueError, match="needs a text"):
        qr_code("")


def test_a_text_no_symbol_holds_is_refused() -> None:
    with pytest.raises(ValueError, match="too large"):
        qr_code("x" * 5000)
