"""The chart of a variable element says what the fit says."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.computing import fit_line, fitted
from builder.drawing import draw_chart
from builder.model import Element, ElementData, ElementStep, Fit
from builder.pipeline import check_plant
from builder.view import element_chart, fit_words

ROWS = ((100.0, 2.1), (200.0, 3.2), (320.0, 4.3), (500.0, 6.6))


def fold() -> tuple[Element, ElementData]:
    """Four folds that lie near a line."""
    fit = fit_line([(x,) for x, _ in ROWS], [y for _, y in ROWS], [20] * 4, ["length"], 0.95)
    steps = tuple(ElementStep(f"hem-{n}", "fold", y, 0.2, 20, x, 0.0) for n, (x, y) in enumerate(ROWS))
    element = Element.model_validate({"title": "Fold an edge", "from": "hem-0/fold"})
    return element, ElementData("fold-edge", ("length",), steps, fit=fit)


def test_points_and_line_are_those_of_the_fit() -> None:
    element, data = fold()
    chart = element_chart(element, data, "mm")
    assert chart is not None
    assert data.fit is not None
    assert [(point.x, point.y) for point in chart.points] == list(ROWS)
    assert (chart.curve[0].x, chart.curve[-1].x) == (100.0, 500.0)
    for one in chart.curve:
        assert one.mid == pytest.approx(fitted(data.fit, (one.x,)))
        assert one.low < one.mid < one.high
    assert "100 mm to 500 mm" in chart.alt
    assert "80 readings" in chart.alt


def test_only_steps_off_the_line_are_named() -> None:
    """Some of them lie nearer than steps do on average, some further."""
    element, data = fold()
    chart = element_chart(element, data, "mm")
    assert chart is not None
    labels = {point.label for point in chart.points}
    assert "" in labels
    assert labels - {""} <= {step.name for step in data.steps}


def test_a_plant_in_inches_reads_inches() -> None:
    element, data = fold()
    chart = element_chart(element, data, "in")
    assert chart is not None
    assert chart.points[0].x == pytest.approx(100 / 25.4)
    assert chart.x_title == "length, in"


def test_the_line_in_words() -> None:
    fit = fit_line([(100.0,), (200.0,), (300.0,)], [1.5, 3.0, 4.5], [1] * 3, ["length"], 0.95)
    both = fit_line(
        [(100.0, 0.0), (200.0, 4.0), (300.0, 1.0), (400.0, 3.0)],
        [3.0, 1.0, 4.0, 3.0],
        [1] * 4,
        ["length", "corners"],
        0.9,
    )
    assert fit_words(fit, "mm") == "0.00 s + 1.50 s for each 100 mm"
    assert fit_words(fit, "in") == "0.00 s + 1.52 s for each 4 in"
    assert fit_words(both, "mm").endswith(f"- {-corners(both):.2f} s for each corner")


def corners(fit: Fit) -> float:
    """Seconds for a corner."""
    return fit.coefficients[2].value


def test_an_element_without_a_fit_has_no_chart() -> None:
    element, data = fold()
    assert element_chart(element, ElementData("fold-edge", (), data.steps), "mm") is None


def test_the_demo_s_fits_can_be_drawn(demo: Path) -> None:
    """Three elements of it vary with length."""
    checked = check_plant(demo)
    assert checked.results is not None
    assert checked.linked is not None
    model = checked.linked.model
    charts = [
        chart
        for name, data in checked.results.standard_data.items()
        if (chart := element_chart(model.elements[name], data, model.plant.units)) is not None
    ]
    assert len(charts) == 3
    assert all(draw_chart(chart).svg.startswith("<svg") for chart in charts)
