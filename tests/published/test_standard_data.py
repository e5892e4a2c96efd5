"""Pooling and fitting against certified results of the public reference data sets for statistical software."""

from __future__ import annotations

import math

import pytest

from builder.computing import fit_line, pooled

# NIST Statistical Reference Datasets, Linear Least Squares, Norris (read, as quoted in public test suites): 36
# observations (x, y) and certified values.
NORRIS = (
    *((0.2, 0.1), (337.4, 338.8), (118.2, 118.1), (884.6, 888.0), (10.1, 9.2), (226.5, 228.1), (666.3, 668.5)),
    *((996.3, 998.5), (448.6, 449.1), (777.0, 778.9), (558.2, 559.2), (0.4, 0.3), (0.6, 0.1), (775.5, 778.1)),
    *((666.9, 668.8), (338.0, 339.3), (447.5, 448.9), (11.6, 10.8), (556.0, 557.7), (228.1, 228.3), (995.8, 998.0)),
    *((887.6, 888.8), (120.2, 119.6), (0.3, 0.3), (0.3, 0.6), (556.8, 557.6), (339.1, 339.3), (887.2, 888.0)),
    *((999.0, 998.5), (779.0, 778.9), (11.1, 10.2), (118.3, 117.6), (229.2, 228.9), (669.1, 668.4), (448.9, 449.2)),
    (0.5, 0.2),
)

# NIST Statistical Reference Datasets, Analysis of Variance, SiRstv (read, as quoted in public test suites): five
# instruments, five readings each, and certified values.
SIRSTV = (
    (196.3052, 196.1240, 196.1890, 196.2569, 196.3403),
    (196.3042, 196.3825, 196.1669, 196.3257, 196.0422),
    (196.1303, 196.2005, 196.2889, 196.0343, 196.1811),
    (196.2795, 196.1748, 196.1494, 196.1485, 195.9885),
    (196.2119, 196.1051, 196.1850, 196.0052, 196.2090),
)


def test_a_line_through_norris() -> None:
    """Certified: -0.262323073774029 and 1.00211681802045, their deviations, residual deviation and R squared."""
    fit = fit_line([(x,) for x, _ in NORRIS], [y for _, y in NORRIS], [1.0] * len(NORRIS), ["length"], 0.95)
    constant, slope = fit.coefficients
    assert constant.value == pytest.approx(-0.262323073774029, rel=1e-9)
    assert slope.value == pytest.approx(1.00211681802045, rel=1e-12)
    assert math.sqrt(fit.covariance[0][0]) == pytest.approx(0.232818234301152, rel=1e-9)
    assert math.sqrt(fit.covariance[1][1]) == pytest.approx(0.429796848199937e-03, rel=1e-9)
    assert fit.residual_sd_s == pytest.approx(math.sqrt(0.782864662630069), rel=1e-9)
    assert fit.r2 == pytest.approx(0.999993745883712, rel=1e-12)
    assert fit.freedom == 34


def test_readings_of_five_instruments() -> None:
    """Certified: F 1.18046237440255, residual deviation 0.104076068334656, mean square between 0.0127865654."""
    found = pooled(SIRSTV, 0.95)
    assert found.f == pytest.approx(1.18046237440255, rel=1e-9)
    assert found.within_sd_s == pytest.approx(0.104076068334656, rel=1e-9)
    assert found.between_sd_s == pytest.approx(math.sqrt((0.0127865654 - 0.010831828) / 5), rel=1e-6)
    assert found.homogeneous is True
