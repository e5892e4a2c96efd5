"""A line through the times of steps: recovered from synthetic steps, refused when there is none, never extrapolated."""

from __future__ import annotations

import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.computing import fit_half, fit_line, fit_refusal, fitted, prediction_half
from builder.computing.line_fit import clamped

LENGTHS = st.lists(st.integers(1, 60), min_size=3, max_size=9, unique=True).map(lambda all: [25.0 * n for n in all])
WEIGHTS = [20, 22, 16, 18, 30, 12, 25, 20, 15]


@given(LENGTHS, st.floats(0.2, 5), st.floats(0.001, 0.1))
def test_a_line_without_scatter_is_found_again(lengths: list[float], a: float, b: float) -> None:
    """Whatever the weights."""
    rows = [(length,) for length in lengths]
    if fit_refusal(rows, ["length"]) is not None:
        return
    fit = fit_line(rows, [a + b * length for length in lengths], WEIGHTS[: len(rows)], ["length"], 0.95)
    assert [one.value for one in fit.coefficients] == [pytest.approx(a, abs=1e-6), pytest.approx(b, rel=1e-6)]
    assert fit.residual_sd_s == pytest.approx(0, abs=1e-6)
    assert fit.ranges == ((min(lengths), max(lengths)),)
    assert fit.variables == ("length",)


def test_length_and_corners_are_told_apart() -> None:
    rows = [(100.0, 0.0), (200.0, 4.0), (300.0, 1.0), (400.0, 3.0), (500.0, 0.0)]
    fit = fit_line(rows, [1 + 0.02 * x + 0.7 * c for x, c in rows], [1] * 5, ["length", "corners"], 0.95)
    assert [one.value for one in fit.coefficients] == pytest.approx([1, 0.02, 0.7])
    assert fitted(fit, (250.0, 2.0)) == pytest.approx(7.4)


def test_the_intervals_hold_the_truth_about_as_often_as_they_say() -> None:
    """Six steps off the line by 0.3 s: 95 % intervals of the slope hold it in 90 to 99 of 100 trials."""
    chance, held = random.Random(3), 0
    rows = [(float(x),) for x in (120, 200, 280, 400, 520, 600)]
    for _ in range(300):
        times = [1.2 + 0.015 * x + chance.gauss(0, 0.3) for (x,) in rows]
        low, high = fit_line(rows, times, [1] * 6, ["length"], 0.95).coefficients[1].interval
        held += low <= 0.015 <= high
    assert 270 <= held <= 297


def test_weights_count_as_so_many_readings() -> None:
    """A step timed three times as often pulls as much as three steps there."""
    rows, times = [(100.0,), (300.0,), (500.0,)], [2.0, 6.0, 7.0]
    weighted = fit_line(rows, times, [3, 1, 1], ["length"], 0.95)
    repeated = fit_line([(100.0,), (100.0,), *rows], [2.0, 2.0, *times], [1] * 5, ["length"], 0.95)
    assert [one.value for one in weighted.coefficients] == pytest.approx([one.value for one in repeated.coefficients])
    twice = fit_line(rows, times, [6, 2, 2], ["length"], 0.95)
    assert twice.residual_sd_s == pytest.approx(weighted.residual_sd_s)


def test_surer_in_the_middle_than_at_the_ends_and_surer_of_the_mean_than_of_one_more_step() -> None:
    fit = fit_line([(100.0,), (200.0,), (320.0,), (500.0,)], [2.1, 3.2, 5.6, 7.9], [1] * 4, ["length"], 0.95)
    assert fit_half(fit, (300.0,)) < fit_half(fit, (100.0,))
    assert fit_half(fit, (300.0,)) < fit_half(fit, (500.0,))
    for x in (100.0, 300.0, 500.0):
        assert prediction_half(fit, (x,)) > fit_half(fit, (x,))
    assert fit.middle == (300.0,)
    assert fit.middle_half_s == fit_half(fit, (300.0,))


@given(LENGTHS, st.floats(-1e4, 1e4))
def test_a_fit_is_never_read_beyond_its_range(lengths: list[float], x: float) -> None:
    """Outside it refuses; the nearest end is inside."""
    rows = [(length,) for length in lengths]
    if fit_refusal(rows, ["length"]) is not None:
        return
    fit = fit_line(rows, [1 + 0.01 * length for length in lengths], [1] * len(rows), ["length"], 0.95)
    low, high = min(lengths), max(lengths)
    if low <= x <= high:
        assert clamped(fit, (x,)) == (x,)
    else:
        with pytest.raises(ValueError, match="beyond"):
            fitted(fit, (x,))
    assert fitted(fit, clamped(fit, (x,))) == pytest.approx(1 + 0.01 * min(max(x, low), high))


@pytest.mark.parametrize(
    ("rows", "variables", "kind"),
    [
        ([(100.0,), (300.0,)], ["length"], "few steps"),
        ([(100.0, 1.0), (300.0, 2.0), (400.0, 0.0)], ["length", "corners"], "few steps"),
        ([(300.0,), (310.0,), (320.0,)], ["length"], "hardly varies"),
        ([(0.0,), (0.0,), (0.0,)], ["corners"], "hardly varies"),
        ([(100.0, 1.0), (200.0, 2.0), (300.0, 3.0), (400.0, 4.0)], ["length", "corners"], "vary together"),
        ([(100.0,), (200.0,), (300.0,)], ["length"], None),
    ],
)
def test_refuses_a_line_that_would_say_nothing(
    rows: list[tuple[float, ...]], variables: list[str], kind: str | None
) -> None:
    """And so does the fit itself."""
    found = fit_refusal(rows, variables)
    assert (found.kind if found is not None else None) == kind
    if found is not None:
        with pytest.raises(ValueError, match=found.kind):
            fit_line(rows, [1.0] * len(rows), [1.0] * len(rows), variables, 0.95)
