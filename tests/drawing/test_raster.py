"""PNGs of figures, with texts as paths."""

import io
import re
from xml.etree import ElementTree

import pytest

from builder.drawing import draw_figure, png_of, raster_available
from builder.drawing.font import Lettering
from builder.drawing.raster import outlined
from builder.model import ATKINSON
from tests.drawing.figures import box_and_cross, plain_panel

SVG = "{http://www.w3.org/2000/svg}"
needs_cairo = pytest.mark.skipif(not raster_available(), reason="the system has no libcairo")


def test_no_text_is_left_to_the_system_fonts() -> None:
    """Each text element becomes one path of the same colour."""
    svg = draw_figure(box_and_cross())
    before, after = ElementTree.fromstring(svg), ElementTree.fromstring(outlined(svg))
    texts, paths = list(before.iter(SVG + "text")), list(before.iter(SVG + "path"))
    assert texts
    assert "<text" not in outlined(svg)
    assert len(list(after.iter(SVG + "path"))) == len(paths) + len(texts)


def test_the_glyph_outlines_are_as_wide_as_the_text_is_measured() -> None:
    """The face drawn is the face measured."""
    size = Lettering(ATKINSON, 2.8)
    text = f'<text x="10" y="5" font-size="{size.em(False)}" fill="#000">HHHH</text>'
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 50 10">{text}</svg>'
    path = ElementTree.fromstring(outlined(svg)).find(SVG + "path")
    assert path is not None
    xs = [float(x) for x in re.findall(r"[MLH](-?[\d.]+)", path.get("d", ""))]
    assert max(xs) - min(xs) == pytest.approx(size.width("HHHH"), rel=0.12)
    assert min(xs) > 10


@needs_cairo
def test_a_png_has_the_width_asked_for_and_the_figure_on_white() -> None:
    """And ink where the part's edge is."""
    from PIL import Image

    image = Image.open(io.BytesIO(png_of(draw_figure(plain_panel()), 380))).convert("RGB")
    assert image.width == 380
    assert image.getpixel((0, 0)) == (255, 255, 255)
    darkest = min(sum(image.getpixel((x, image.height // 2))) for x in range(30))  # type: ignore[arg-type]
    assert darkest < 250


def test_a_picture_without_pixels_is_refused() -> None:
    """Before any library is asked."""
    with pytest.raises(ValueError, match="pixels"):
        png_of("<svg/>", 0)
