"""Which measured top speed of a station fits a seam. What a machine could do at most is no matter of this file."""

from __future__ import annotations

from builder.geometry.measure import smallest_radius
from builder.geometry.shape import FeatureShape
from builder.model import Seam, SeamSpeed, Station


def measured_speed(seam: FeatureShape, station: Station) -> SeamSpeed | None:
    """The first of the station's measured speeds for a seam held so, round curves no tighter than measured.

    None when the seam doesn't say how it is held, or none fits.
    """
    feature = seam.feature
    if not isinstance(feature, Seam) or feature.held is None or not seam.paths:
        return None
    tightest = min(smallest_radius(path) for path in seam.paths)
    for speed in station.seam_speeds:
        least = float(speed.smallest_radius.value) if speed.smallest_radius is not None else 0.0
        if speed.held == feature.held and tightest >= least - 1e-6:
            return speed
    return None
