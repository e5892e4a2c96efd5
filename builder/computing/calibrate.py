"""Constants of a sewing station's machine model from timed seams: top speed, fixed time and corner stop.

Acceleration and braking are given. What is fitted, and how sure it is, is for the engineer to type under `pace:`;
nothing here changes a station. numpy and scipy are imported where they are used.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from builder.computing.sew_time import running_time

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    _Numbers = NDArray[np.float64]

LEAST_SEAMS = 4
"""Fewer observations leave nothing over to judge the fit of three constants by."""
LEAST_RATIO = 1.5
"""Longest ÷ shortest seam below which lengths hardly differ, and speed can't be told from fixed time. Ours."""
_SLOWEST_ST_S, _FASTEST_ST_S, _STARTS = 1.0, 250.0, 120
_UNSURE = 1e-4
"""Smallest ÷ largest singular value, columns scaled to length 1, below which two constants can't be told apart."""


@dataclass(frozen=True, slots=True)
class TimedSeam:
    """A seam sewn under the watch.

    legs_mm   : lengths from corner to corner, from rest to rest
    corners   : stops with the needle down
    tacks_mm  : lengths of tacks sewn, each way counted
    stitch_mm : stitch length
    seconds   : from the foot's touch of the treadle to the cut thread
    """

    legs_mm: tuple[float, ...]
    corners: int
    tacks_mm: tuple[float, ...]
    stitch_mm: float
    seconds: float


@dataclass(frozen=True, slots=True)
class Constant:
    """A fitted constant and its standard error, in the same unit."""

    value: float
    error: float


@dataclass(frozen=True, slots=True)
class Calibration:
    """Constants that fit the timed seams best.

    top_speed_st_s : top speed [stitches/s]
    fixed_s        : start and finish together [s]; they can't be told apart
    corner_s       : stop at a corner [s]; None where all seams have as many corners, whose stops are then in fixed_s
    residual_s     : standard deviation of the seams' times about the fit [s]
    """

    top_speed_st_s: Constant
    fixed_s: Constant
    corner_s: Constant | None
    residual_s: float
    seams: int


def calibrate(seams: Sequence[TimedSeam], up_mm_s2: float, down_mm_s2: float) -> tuple[Calibration | None, str]:
    """The constants with the least sum of squares, and '' or why there are none.

        t = fixed + Σ running time of legs and tacks (top speed, a, d) + corners·stop

    Fixed time and stop are linear, so for each of a row of top speeds they follow at once; the best of them is where
    the search in all constants begins. Covariance s²·(JᵀJ)⁻¹ with s² = Σ r²/(n − p).

    up_mm_s2, down_mm_s2 : a, d > 0, as stated for the station
    Source: least squares and its linearised errors, textbook; the model of time is sew_time.py.
    """
    if (refused := _refusal(seams)) is not None:
        return None, refused
    with_corners = len({seam.corners for seam in seams}) > 1
    unknowns = 3 if with_corners else 2
    fit = _Fit(tuple(seams), up_mm_s2, down_mm_s2, with_corners)
    found, slopes, residuals = fit.solve()
    if (refused := _unreached(seams, found[0], up_mm_s2, down_mm_s2)) is not None:
        return None, refused
    errors = _errors(slopes, residuals, unknowns)
    if errors is None:
        return None, "corners and lengths grow together: time long seams with few corners and short ones with many"
    constants = [Constant(value, error) for value, error in zip(found, errors, strict=True)]
    spread = math.sqrt(sum(one * one for one in residuals) / (len(seams) - unknowns))
    corner = constants[2] if with_corners else None
    return Calibration(constants[0], constants[1], corner, spread, len(seams)), ""


def _refusal(seams: Sequence[TimedSeam]) -> str | None:
    if len(seams) < LEAST_SEAMS:
        return f"{LEAST_SEAMS} timed seams are needed, there are {len(seams)}"
    lengths = [sum(seam.legs_mm) for seam in seams]
    if max(lengths) < LEAST_RATIO * min(lengths):
        return "the lengths hardly differ: speed can't be told from the time at start and finish"
    return None


def _unreached(seams: Sequence[TimedSeam], speed_st_s: float, up: float, down: float) -> str | None:
    """Refuses a top speed that hardly any seam reaches: nothing in the times says how high it is."""
    reached = 0
    for seam in seams:
        needed = (speed_st_s * seam.stitch_mm) ** 2 / 2 * (1 / up + 1 / down)
        reached += max(seam.legs_mm) > needed
    if reached >= 2:
        return None
    return "too few seams reach top speed: time longer ones, without corners"


@dataclass(frozen=True, slots=True)
class _Fit:
    """Seams whose times are to be fitted. Constants stand in the order top speed, fixed time, corner stop."""

    seams: tuple[TimedSeam, ...]
    up: float
    down: float
    with_corners: bool

    def solve(self) -> tuple[list[float], _Numbers, list[float]]:
        """Constants, slopes of the times by the constants, residuals."""
        import numpy as np
        from scipy.optimize import least_squares

        times = self._timed()
        speeds = np.geomspace(_SLOWEST_ST_S, _FASTEST_ST_S, _STARTS)
        start = min((self._linear(float(speed), times) for speed in speeds), key=lambda one: one[0])[1]
        found = least_squares(
            self._off,
            start,
            bounds=(
                [_SLOWEST_ST_S / 2, *[-np.inf] * (len(start) - 1)],
                [_FASTEST_ST_S * 2, *[np.inf] * (len(start) - 1)],
            ),
            x_scale=np.maximum(np.abs(start), 0.1),
            xtol=1e-12,
            ftol=1e-12,
            gtol=1e-12,
        )
        return (
            [float(one) for one in found.x],
            np.asarray(found.jac, dtype=np.float64),
            [float(one) for one in found.fun],
        )

    def _running(self, speed_st_s: float) -> _Numbers:
        import numpy as np

        return np.array(
            [
                running_time([*one.legs_mm, *one.tacks_mm], speed_st_s * one.stitch_mm, self.up, self.down)
                for one in self.seams
            ]
        )

    def _columns(self) -> _Numbers:
        import numpy as np

        ones = [1.0] * len(self.seams)
        corners = [float(seam.corners) for seam in self.seams]
        return np.array([ones, corners] if self.with_corners else [ones]).T

    def _linear(self, speed_st_s: float, times: _Numbers) -> tuple[float, _Numbers]:
        """Sum of squares and constants at a given top speed."""
        import numpy as np

        columns, rest = self._columns(), times - self._running(speed_st_s)
        linear = np.linalg.lstsq(columns, rest, rcond=None)[0]
        return float(np.sum((columns @ linear - rest) ** 2)), np.array([speed_st_s, *linear])

    def _timed(self) -> _Numbers:
        import numpy as np

        return np.array([seam.seconds for seam in self.seams])

    def _off(self, trial: _Numbers) -> _Numbers:
        """What the model says with these constants, less what was timed."""
        found: _Numbers = self._running(float(trial[0])) + self._columns() @ trial[1:] - self._timed()
        return found


def _errors(slopes: _Numbers, residuals: Sequence[float], unknowns: int) -> list[float] | None:
    """Standard errors; None where two constants can't be told apart."""
    import numpy as np

    sizes = np.linalg.norm(slopes, axis=0)
    if float(sizes.min()) <= 0:
        return None
    singular = np.linalg.svd(slopes / sizes, compute_uv=False)
    if singular[-1] < _UNSURE * singular[0]:
        return None
    variance = sum(one * one for one in residuals) / (len(residuals) - unknowns)
    spreads = np.diag(np.linalg.inv(slopes.T @ slopes)) * variance
    return [math.sqrt(max(float(one), 0.0)) for one in spreads]
