"""Sections drawn: all words find a place, and none stands on the goods"""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from builder.drawing import draw
from builder.drawing.box import Box
from builder.drawing.font import Lettering
from builder.drawing.layout import lay_out
from builder.drawing.margins import estimated, frame_within
from builder.model import ATKINSON
from builder.view import FigureView
from tests.drawing.gallery_sections import section_gallery


@pytest.mark.parametrize("figure", section_gallery(), ids=lambda one: one.name)
def test_a_section_finds_room_for_its_words(figure: FigureView, tmp_path: Path) -> None:
    """At the width of a sheet's figure. With SEAMBOARD_GALLERY set to a folder the pictures stay there."""
    drawing = draw(figure)
    folder = Path(os.environ.get("SEAMBOARD_GALLERY", tmp_path))
    (folder / f"{figure.name}.svg").write_text(drawing.svg, encoding="utf-8")
    assert drawing.problems == ()
    needles = sum(stroke.role == "needle" for stroke in figure.strokes)
    named = "needle from above" if needles == 1 else "needles from above"
    assert named in " ".join(" ".join(one.text for one in drawing.texts).split())


@pytest.mark.parametrize("figure", section_gallery(), ids=lambda one: one.name)
def test_no_word_stands_on_the_goods_or_a_thread(figure: FigureView) -> None:
    """Whatever keeps clear is left clear, in every try at placing the words."""
    paper = Box(0.0, 0.0, figure.width_mm, figure.height_mm)
    lettering = Lettering(ATKINSON, figure.text_mm)
    layout = lay_out(figure, frame_within(figure, estimated(figure, lettering, paper), paper), paper, lettering)
    texts = [text.box for art, _ in layout.labels for text in art.texts]
    assert texts
    assert not [text for text in texts for block in layout.work.blocked if text.overlaps(block)]
