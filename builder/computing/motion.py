"""Time to travel along a path whose speed has to be built up and taken off: the speed trapezoid.

Equations are ours, from kinematics: constant acceleration and braking, top speed held between. Speeds in mm/s,
lengths in mm, times in s.
"""

from __future__ import annotations

import math
from collections.abc import Sequence


def segment_time(
    length_mm: float, entry_mm_s: float, exit_mm_s: float, cap_mm_s: float, up_mm_s2: float, down_mm_s2: float
) -> float:
    """Time over one segment, entered and left at given speeds, never faster than a cap.

    p = min(v, √((2·a·d·L + d·u² + a·w²)/(a + d)))
    t = (p − u)/a + (p − w)/d + (L − (p² − u²)/2a − (p² − w²)/2d)/p

    length_mm : L ≥ 0; entry_mm_s, exit_mm_s : u, w ≥ 0; cap_mm_s : v > 0; up_mm_s2, down_mm_s2 : a, d > 0
    Entry and exit must be reachable over L (see `corner_speeds`). Source: kinematics, ours.

    >>> round(segment_time(300, 0, 0, 128, 400, 800), 3)
    2.584
    >>> round(segment_time(20, 0, 0, 128, 400, 800), 3)
    0.387
    """
    if length_mm == 0:
        return 0.0
    a, d, u, w = up_mm_s2, down_mm_s2, entry_mm_s, exit_mm_s
    peak = min(cap_mm_s, math.sqrt((2 * a * d * length_mm + d * u * u + a * w * w) / (a + d)))
    cruise = length_mm - (peak * peak - u * u) / (2 * a) - (peak * peak - w * w) / (2 * d)
    return (peak - u) / a + (peak - w) / d + max(cruise, 0.0) / peak


def corner_speeds(
    lengths_mm: Sequence[float], corners_mm_s: Sequence[float], up_mm_s2: float, down_mm_s2: float
) -> list[float]:
    """Speeds at the ends of segments, starting and ending at rest, reachable with the given acceleration.

    corners_mm_s : highest speed allowed at each of the len(lengths) − 1 inner corners
    Backward pass w² ≤ u² + 2aL, forward pass u² ≤ w² + 2dL. Returns len(lengths) + 1 speeds. Source: kinematics, ours.

    >>> corner_speeds([40.0], [], 3000, 3000)
    [0.0, 0.0]
    """
    speeds = [0.0, *corners_mm_s, 0.0]
    for i in range(len(lengths_mm) - 1, -1, -1):
        speeds[i] = min(speeds[i], math.sqrt(speeds[i + 1] ** 2 + 2 * down_mm_s2 * lengths_mm[i]))
    for i, length in enumerate(lengths_mm):
        speeds[i + 1] = min(speeds[i + 1], math.sqrt(speeds[i] ** 2 + 2 * up_mm_s2 * length))
    return speeds


def path_time(
    lengths_mm: Sequence[float],
    corners_mm_s: Sequence[float],
    caps_mm_s: Sequence[float],
    up_mm_s2: float,
    down_mm_s2: float,
) -> float:
    """Time over a path that starts and ends at rest; `caps_mm_s` is the top speed on each segment.

    >>> round(path_time([40.0], [], [300.0], 3000, 3000), 3)
    0.233
    """
    speeds = corner_speeds(lengths_mm, corners_mm_s, up_mm_s2, down_mm_s2)
    return sum(
        segment_time(length, min(speeds[i], cap), min(speeds[i + 1], cap), cap, up_mm_s2, down_mm_s2)
        for i, (length, cap) in enumerate(zip(lengths_mm, caps_mm_s, strict=True))
    )
