"""Scale bars: as long as they say, out of the part's way, left out rather than in the way."""

from __future__ import annotations

import re
from dataclasses import replace

from builder.drawing import draw
from tests.drawing.figures import plain_panel, tall_strap

WORDS = {"10 mm", "20 mm", "50 mm", "100 mm"}
LENGTHS = tuple((float(mm), f"{mm} mm") for mm in (10, 20, 50, 100))


def bar_of(svg: str) -> float:
    """Printed length of the filled half, doubled."""
    half = re.search(r'd="M(\S+) (\S+)L(\S+) \2L\3 \S+L\1 \S+Z" fill="#22201c"', svg)
    assert half is not None, "no bar"
    return 2 * (float(half[3]) - float(half[1]))


def test_a_bar_is_as_long_as_it_says() -> None:
    drawing = draw(replace(plain_panel(), scale_bar=LENGTHS))
    said = next(text.text for text in drawing.texts if text.text in WORDS)
    length = next(mm for mm, words in LENGTHS if words == said)
    assert abs(bar_of(drawing.svg) - length * drawing.scale) < 0.01


def test_a_bar_makes_no_figure_higher() -> None:
    assert draw(replace(plain_panel(), scale_bar=LENGTHS)).height_mm == draw(plain_panel()).height_mm


def test_a_broken_part_has_no_bar() -> None:
    """Its length is not to scale."""
    drawing = draw(replace(tall_strap(), scale_bar=LENGTHS))
    assert not {text.text for text in drawing.texts} & WORDS


def test_no_bar_where_no_length_fits() -> None:
    assert draw(replace(plain_panel(), scale_bar=((5000.0, "5 m"),))).problems == ()
