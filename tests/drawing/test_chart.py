"""Charts: nothing overlaps, nothing leaves the paper, values lie where they belong."""

from __future__ import annotations

import random
import re
from itertools import combinations
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import builder.drawing.chart as chart_module
from builder.drawing import Drawing, draw_chart
from builder.drawing.axis import Axis, linear_ticks, log_ticks, tick_step
from builder.view import (
    AnyChart,
    ChartMark,
    ChartPoint,
    CurvePoint,
    FitChart,
    Histogram,
    HistogramBar,
    RunChart,
)

WORDS = {"name": "c", "title": "A chart", "alt": "A chart of values.", "x_title": "cycle", "y_title": "seconds, rated"}


def run_chart(values: list[float], flagged: tuple[int, ...] = (), out: tuple[int, ...] = ()) -> RunChart:
    """A run chart of values, some of them flagged or out."""
    points = tuple(
        ChartPoint(
            float(n),
            value,
            "flagged" if n in flagged else "out" if n in out else "kept",
            f"{n}: {value:.1f} s" if n in (*flagged, *out) else "",
        )
        for n, value in enumerate(values, start=1)
    )
    mean = sum(values) / len(values)
    marks = (ChartMark(len(values) / 2 + 0.5, "2026-10-16, E4"),) if len(values) > 6 else ()
    band = (mean * 0.97, mean * 1.03) if len(values) > 1 else None
    return RunChart(**WORDS, points=points, centre=(mean, f"mean {mean:.2f}"), band=band, marks=marks, width_mm=118)


def gallery() -> dict[str, AnyChart]:
    """Easy and hard charts by name."""
    rolls = random.Random(5)
    many = [rolls.gauss(4, 0.4) for _ in range(500)]
    odd = [rolls.gauss(4, 0.2) for _ in range(30)]
    odd[0], odd[1], odd[2], odd[27], odd[28], odd[29] = 9.0, 8.9, 0.5, 0.4, 9.2, 9.1
    line = tuple(CurvePoint(x, 2 + 0.01 * x - 0.3, 2 + 0.01 * x, 2 + 0.01 * x + 0.3) for x in range(100, 600, 20))
    dots = tuple(ChartPoint(float(x), 2 + 0.01 * x + rolls.gauss(0, 0.1), label=f"op-{x}") for x in range(100, 600, 60))
    learning = tuple(CurvePoint(float(n), 28 * n**-0.23, 30 * n**-0.23, 32 * n**-0.23) for n in (1, 10, 100, 1000))
    pieces = tuple(ChartPoint(float(n), 30 * n**-0.23 * rolls.uniform(0.9, 1.1)) for n in (1, 3, 8, 20, 70, 200, 900))
    return {
        "plain run": run_chart([4.1, 3.9, 4.4, 4.0, 3.8, 4.2, 4.1, 3.7]),
        "five hundred": run_chart(many),
        "odd at both ends": run_chart(odd, (1, 2, 3, 28, 29, 30), (15,)),
        "out far away": run_chart([4.1, 3.9, 40.0, 4.0, 3.8, 4.2], out=(3,)),
        "all equal": run_chart([3.0] * 12),
        "two": run_chart([3.0, 3.4]),
        "thousands of seconds": run_chart([3000.0, 3100.5, 2900.0, 2950.0]),
        "bars": Histogram(
            **WORDS,
            bars=tuple(
                HistogramBar(2 + n / 5, 2 + (n + 1) / 5, c, int(n == 6)) for n, c in enumerate((1, 4, 9, 7, 3, 0, 1))
            ),
            centre=(2.5, "mean 2.50"),
            width_mm=68,
        ),
        "mean at the right end": Histogram(
            **WORDS, bars=(HistogramBar(0, 1, 1), HistogramBar(1, 2, 12)), centre=(1.95, "mean 1.95"), width_mm=68
        ),
        "fit": FitChart(**{**WORDS, "x_title": "length, mm"}, points=dots, curve=line),
        "learning": FitChart(**{**WORDS, "x_title": "piece"}, points=pieces, curve=learning, log=True),
    }


def legible(drawing: Drawing, chart: AnyChart) -> None:
    """No two texts overlap, none leaves the paper."""
    for one, other in combinations(drawing.texts, 2):
        assert not one.box.overlaps(other.box), (one.text, other.text)
    for text in drawing.texts:
        x0, y0, x1, y1 = text.box
        assert min(x0, y0, chart.width_mm - x1, chart.height_mm - y1) >= 0, text


@pytest.mark.parametrize("name", list(gallery()))
def test_the_gallery_is_legible(name: str) -> None:
    """Both titles, ticks on both axes, no text on another."""
    chart = gallery()[name]
    drawing = draw_chart(chart)
    legible(drawing, chart)
    shown = [text.text for text in drawing.texts]
    assert chart.x_title in shown
    assert chart.y_title in shown
    numbers = [text for text in shown if re.fullmatch(r"[\d.]+", text)]
    assert len(numbers) >= 4
    assert not drawing.problems


def test_the_drawing_is_plain_svg_with_its_text_alternative() -> None:
    """No script, no style, no id; the same chart twice is the same bytes."""
    chart = gallery()["odd at both ends"]
    root = ElementTree.fromstring(draw_chart(chart).svg)
    assert root.get("role") == "img"
    assert root.get("aria-label") == chart.alt
    assert not [one for one in root.iter() if {"style", "id", "class"} & set(one.attrib) or one.tag.endswith("script")]
    chart_module._drawn.cache_clear()
    assert draw_chart(gallery()["odd at both ends"]).svg == draw_chart(chart).svg


VALUES = st.lists(st.floats(0.2, 500), min_size=2, max_size=60)


@settings(max_examples=60)
@given(VALUES, st.sets(st.integers(1, 60), max_size=8), st.sets(st.integers(1, 60), max_size=3))
def test_no_study_makes_texts_overlap(values: list[float], flagged: set[int], out: set[int]) -> None:
    chart = run_chart(values, tuple(flagged), tuple(out - flagged))
    legible(draw_chart(chart), chart)


@given(st.floats(-1e4, 1e4), st.floats(1e-3, 1e4), st.integers(2, 12))
def test_ticks_are_pleasant_few_and_inside(low: float, span: float, most: int) -> None:
    ticks = linear_ticks(low, low + span, most)
    assert len(ticks) <= most + 1
    assert all(low - span * 1e-6 <= value <= low + span * (1 + 1e-6) for value, _ in ticks)
    step = tick_step(low, low + span, most)
    assert f"{step:e}"[0] in "125"


def test_logarithmic_ticks_and_places() -> None:
    """A tenfold is the same distance everywhere."""
    assert [text for _, text in log_ticks(1, 100, 9)] == ["1", "2", "5", "10", "20", "50", "100"]
    assert [text for _, text in log_ticks(1, 1e6, 7)] == ["1", "10", "100", "1000", "10000", "100000", "1000000"]
    axis = Axis(1, 100, 0, 20, log=True)
    assert axis.at(10) == pytest.approx(10)
