"""Figures as a whole: nothing covered, nothing cut off, nothing too small, the same every time."""

from __future__ import annotations

import re
from dataclasses import replace
from itertools import combinations
from xml.etree import ElementTree

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from builder.drawing import Drawing, draw, draw_figure
from builder.drawing.any_figure import drawn
from builder.drawing.box import Box
from builder.model import ATKINSON, face_table
from builder.view import Callout, DimensionLine, FigureView, Stroke
from tests.drawing.figures import (
    GALLERY,
    PANEL,
    box_and_cross,
    figure,
    line_of,
    notch_top,
    plain_panel,
    rectangle,
    slanted,
)

SVG = "{http://www.w3.org/2000/svg}"
ALLOWED = {"svg", "title", "g", "path", "rect", "circle", "text"}


def check(view: FigureView, drawing: Drawing) -> None:
    """What holds for every drawing."""
    root = ElementTree.fromstring(drawing.svg)
    assert [float(n) for n in root.get("viewBox", "").split()] == [0, 0, view.width_mm, drawing.height_mm]
    assert (root.get("width"), root.get("height")) == (f"{view.width_mm:g}mm", f"{drawing.height_mm:.6g}mm")
    assert drawing.height_mm <= view.height_mm + 1e-6
    paper = Box(0, 0, drawing.width_mm, drawing.height_mm)
    for text in drawing.texts:
        assert text.box.inside(paper.grown(1e-3)), f"{text.text} leaves the figure"
    for a, b in combinations(drawing.texts, 2):
        assert not a.box.overlaps(b.box), f"{a.text} covers {b.text}"
    for element in root.iter():
        assert element.tag.removeprefix(SVG) in ALLOWED
        assert not {"style", "id", "class", "href"} & set(element.attrib)
        if element.tag == SVG + "text":
            bold = element.get("font-weight") == "700"
            table = face_table(ATKINSON, 700 if bold else 400)
            capital = float(element.get("font-size", "0")) * table.cap_height / table.units_per_em
            assert view.text_mm <= capital <= view.text_mm + 0.01
            assert table.has(element.text or "")


@pytest.mark.parametrize("make", GALLERY)
def test_every_figure_of_the_gallery_is_drawn_without_a_problem(make) -> None:  # type: ignore[no-untyped-def]
    """All labels placed, none covered, none cut off."""
    view = make()
    drawing = draw(view)
    check(view, drawing)
    assert drawing.problems == ()


@pytest.mark.parametrize("make", GALLERY)
def test_every_word_asked_for_is_printed(make) -> None:  # type: ignore[no-untyped-def]
    """Dimensions, labels, the side and the ends of the work."""
    view = make()
    said = {text.text for text in draw(view).texts}
    asked = {line.text for line in view.dimensions} | {note.text for note in view.callouts} | {view.side}
    asked |= {"start"} if view.start is not None else set()
    asked |= {"grain"} if view.grain is not None else set()
    asked |= {number for one in view.strokes for number in one.numbers}
    assert asked <= said


@pytest.mark.parametrize("turn", [0, 17, 45, 90, 135, 200, 290])
def test_dimensions_along_slanted_lines(turn: float) -> None:
    """In every direction."""
    view = slanted(turn)
    drawing = draw(view)
    check(view, drawing)
    assert drawing.problems == ()


def test_the_same_figure_gives_the_same_bytes() -> None:
    """Not only from the cache."""
    first = draw_figure(box_and_cross())
    drawn.cache_clear()
    assert draw_figure(box_and_cross()) == first


def test_the_outline_is_printed_at_the_scale_said() -> None:
    """Geometry read back from the SVG: the panel's width in mm of the part is its printed width over the scale."""
    view = figure("square", [Stroke("cut edge", "part", rectangle(5, 5, 200, 100), True, "ground")], (5, 5, 205, 105))
    drawing = draw(view)
    edges = [e for e in ElementTree.fromstring(drawing.svg).iter(SVG + "path") if e.get("stroke-width") == "0.7"]
    numbers = [float(n) for n in re.findall(r"-?\d+\.?\d*", edges[0].get("d", ""))]
    xs, ys = numbers[::2], numbers[1::2]
    assert (max(xs) - min(xs)) / drawing.scale == pytest.approx(200, abs=0.02)
    assert (max(ys) - min(ys)) / drawing.scale == pytest.approx(100, abs=0.02)
    assert max(xs) - min(xs) > 0.9 * view.width_mm


def test_work_to_come_is_not_drawn_and_work_now_is_thick_and_dashed() -> None:
    """Colour is never the only difference."""
    root = ElementTree.fromstring(draw_figure(box_and_cross(numbers=False)))
    accent = [e for e in root.iter(SVG + "path") if e.get("stroke") == "#a92f18" and e.get("stroke-width") == "0.9"]
    assert len(accent) == 6
    assert all(e.get("stroke-dasharray") for e in accent)


def test_an_alternative_text_and_a_title_are_there_and_escaped() -> None:
    """Readers of the page are told what the picture shows."""
    view = replace(plain_panel(), alt='Panel <1> & "notch"', title="A < B")
    root = ElementTree.fromstring(draw_figure(view))
    assert root.get("aria-label") == 'Panel <1> & "notch"'
    assert root.get("role") == "img"
    assert root.findtext(SVG + "title") == "A < B"


def test_what_finds_no_place_is_reported_not_dropped_in_silence() -> None:
    """A figure with more labels than room."""
    notes = tuple(Callout((10.0 + i, 20.0), f"a long label with number {i} in it") for i in range(40))
    view = figure("crowded", [PANEL], (0, 0, 310, 155), callouts=notes)
    drawing = draw(view)
    check(view, drawing)
    assert len(drawing.problems) + len(drawing.texts) == 40
    assert drawing.problems[0].startswith("No free place for the label a long label")


def test_order_numbers_are_all_printed_or_none_is() -> None:
    """Half an order would send the operator astray."""
    view = replace(box_and_cross(), width_mm=70.0, height_mm=16.0, text_mm=4.0)
    drawing = draw(view)
    numbers = {number for one in view.strokes for number in one.numbers}
    assert {text.text for text in drawing.texts} & numbers in (set(), numbers)
    assert drawing.problems


def test_a_small_figure_keeps_its_lettering() -> None:
    """Its lines get thinner with it, its capitals do not."""
    view = replace(plain_panel(), width_mm=50.0, height_mm=34.0, text_mm=2.5, callouts=(), grain=None)
    drawing = draw(view)
    match = re.search(r"scale\(([\d.]+)\)", drawing.svg)
    assert match is not None
    size = re.search(r'font-size="([\d.]+)"', drawing.svg)
    assert size is not None
    table = face_table(ATKINSON, 400)
    assert float(size[1]) * float(match[1]) * table.cap_height / table.units_per_em >= 2.5 - 1e-4


lengths = st.floats(20, 300)
labels = st.sampled_from(["notch", "drill holes", "fold under 20 mm", "tape ends overlap", "3 rows"])
values = st.sampled_from(["12 mm", "38 mm ±1 (1 1/2 in ±1/32)", "3.2 mm +1.5 −0 (1/8 in +1/16 −0)"])


@st.composite
def figures(draw_: st.DrawFn) -> FigureView:
    """Random panels with work, dimensions and labels."""
    wide, tall = draw_(lengths), draw_(lengths)
    points = st.tuples(st.floats(0.05, 0.95), st.floats(0.05, 0.95)).map(lambda p: (p[0] * wide, p[1] * tall))
    seam = draw_(st.lists(points, min_size=2, max_size=4, unique_by=lambda p: (round(p[0], 1), round(p[1], 1))))
    away = st.sampled_from([(0.0, 1.0), (0.0, -1.0), (1.0, 0.0), (-1.0, 0.0)])
    lines = draw_(st.lists(st.builds(DimensionLine, points, points, away, values, st.booleans()), max_size=3))
    path = line_of(*seam)
    return FigureView(
        name="random",
        title="random",
        strokes=(
            Stroke("cut edge", "part", rectangle(0, 0, wide, tall), True, draw_(st.sampled_from(["ground", "wrong"]))),
            notch_top(wide / 2, tall),
            Stroke(
                "seam",
                "now",
                path,
                stitch=draw_(st.sampled_from(["301", "401", "504"])),
                pitch=3,
                numbers=tuple(str(i + 1) for i in range(len(path))) if draw_(st.booleans()) else (),
            ),
        ),
        bounds=(0, 0, wide, tall),
        facts=(),
        alt="random",
        side=draw_(st.sampled_from(["", "right side", "wrong side"])),
        route=path,
        start=seam[0],
        end=seam[-1],
        grain=draw_(st.sampled_from([None, 0.0, 45.0, 90.0])),
        dimensions=tuple(lines),
        callouts=tuple(Callout(at, text) for at, text in draw_(st.lists(st.tuples(points, labels), max_size=3))),
        width_mm=draw_(st.sampled_from([60.0, 95.0, 120.0])),
        height_mm=draw_(st.sampled_from([40.0, 60.0, 90.0])),
        text_mm=2.8,
    )


@settings(max_examples=40, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
@given(figures())
def test_no_text_is_covered_or_cut_off_whatever_the_figure(view: FigureView) -> None:
    """Lettering of small figures is checked above."""
    drawing = draw(view)
    if view.width_mm >= 70:
        check(view, drawing)
    paper = Box(0, 0, drawing.width_mm, drawing.height_mm).grown(1e-3)
    assert all(text.box.inside(paper) for text in drawing.texts)
    assert not any(a.box.overlaps(b.box) for a, b in combinations(drawing.texts, 2))


def test_equal_pictures_of_other_names_are_drawn_once() -> None:
    """Only what they are called differs."""
    drawn.cache_clear()
    one, two = plain_panel(), replace(plain_panel(), name="other", title="Step 7", alt="The same again.")
    first, second = draw(one), draw(two)
    assert drawn.cache_info().misses == 1
    assert "Step 7" in second.svg
    assert "The same again." in second.svg
    assert first.svg.replace(one.title, two.title).replace(one.alt, two.alt) == second.svg
