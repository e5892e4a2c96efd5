"""Drawings from elsewhere lettered in our faces."""

from __future__ import annotations

import re
from fractions import Fraction

from builder.drawing import draw_imported
from builder.reading import clean_svg

OPEN = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 50">'


def lettered(body: str) -> str:
    return draw_imported(clean_svg(f"{OPEN}{body}</svg>".encode()).svg)


def starts(svg: str) -> list[float]:
    """Where each path begins across."""
    return [float(found) for found in re.findall(r' d="M(-?[\d.]+)', svg)]


def test_no_text_is_left() -> None:
    svg = lettered('<text x="5" y="20" font-size="8" fill="red">Hem<tspan fill="blue">12</tspan></text>')
    assert "<text" not in svg
    assert "tspan" not in svg
    assert 'fill="red"' in svg
    assert 'fill="blue"' in svg


def test_size_and_weight_are_inherited() -> None:
    """A heavy letter is wider than a light one, a large one than a small one."""
    small = lettered('<g font-size="8"><text x="0" y="9">H</text></g>')
    assert small != lettered('<g font-size="9"><text x="0" y="9">H</text></g>')
    assert small != lettered('<g font-size="8" style="font-weight:bold"><text x="0" y="9">H</text></g>')
    assert small == lettered('<g font-size="8"><text x="0" y="9" font-family="Some Face">H</text></g>')


def test_a_text_is_lined_up_by_its_anchor() -> None:
    begin, middle, end = (
        starts(lettered(f'<text x="50" y="9" text-anchor="{anchor}">III</text>'))[0]
        for anchor in ("start", "middle", "end")
    )
    assert begin > middle > end
    assert abs((begin - middle) - (middle - end)) < 0.01


def test_each_given_place_begins_a_line() -> None:
    """Two lines of one text, both at their own place."""
    first, second = starts(lettered('<text><tspan x="10" y="9">H</tspan><tspan x="10" y="30">H</tspan></text>'))
    assert abs(first - second) < 0.001


def test_a_crop_is_a_smaller_view_box() -> None:
    svg = draw_imported(
        clean_svg(f"{OPEN}<rect/></svg>".encode()).svg, (Fraction(1, 4), Fraction(1, 2), Fraction(1), Fraction(1))
    )
    assert 'viewBox="25 25 75 25"' in svg
