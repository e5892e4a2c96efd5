"""Bars of the time chart."""

from xml.etree import ElementTree

import pytest

from builder.drawing import time_bar_svg

SVG = "{http://www.w3.org/2000/svg}"


def rects(svg: str) -> list[dict[str, str]]:
    """The attributes of the rectangles: the track, then the bar."""
    return [dict(element.attrib) for element in ElementTree.fromstring(svg).iter(SVG + "rect")]


def test_a_measured_bar_is_solid_and_as_long_as_its_share() -> None:
    """It starts where the steps before end."""
    bar = rects(time_bar_svg(0.25, 0.5, False, 200, 10))[1]
    assert (float(bar["x"]), float(bar["width"])) == (50, 100)
    assert "<path" not in time_bar_svg(0.25, 0.5, False, 200, 10)


def test_an_estimate_is_hatched_inside_its_outline() -> None:
    """No pattern and no clip: the lines are cut by computing."""
    svg = time_bar_svg(0.1, 0.3, True, 200, 10)
    data = ElementTree.fromstring(svg).find(SVG + "path")
    assert data is not None
    numbers = [float(n) for n in data.get("d", "").replace("M", " ").replace("L", " ").split()]
    assert all(20 <= x <= 80 for x in numbers[::2])
    assert all(0 <= y <= 10 for y in numbers[1::2])
    assert "url(" not in svg


def test_the_shortest_step_is_still_seen() -> None:
    """Even at the very end of the chart."""
    bar = rects(time_bar_svg(1.0, 0.0, False, 200, 10))[1]
    assert float(bar["width"]) > 0
    assert float(bar["x"]) + float(bar["width"]) <= 200


@pytest.mark.parametrize("shares", [(-0.1, 0.2), (0.5, 0.6), (0.2, -0.1)])
def test_shares_outside_the_whole_are_refused(shares: tuple[float, float]) -> None:
    """A bar that leaves its chart would lie."""
    with pytest.raises(ValueError, match="whole"):
        time_bar_svg(*shares, False, 200, 10)
