"""Which measured top speed of a station fits a seam. What a machine could do at most is no matter of this file."""

from __future__ import annotations

from builder.geometry.goods import Goods
from builder.geometry.measure import smallest_radius
from builder.geometry.shape import FeatureShape
from builder.model import Seam, SeamSpeed, Station

_SLACK_MM = 1e-6


def measured_speed(seam: FeatureShape, station: Station, goods: Goods | None = None) -> SeamSpeed | None:
    """The first of the station's measured speeds for a seam held so, in all that speed was measured for.

    It fits a seam with curves no tighter, no thicker and of no more layers than measured; a fact nobody knows isn't
    judged. None when the seam doesn't say how it is held, or none fits.
    """
    return next((one for one in _held_so(seam, station) if _curves_fit(seam, one) and fits_goods(goods, one)), None)


def speeds_short_of_goods(seam: FeatureShape, station: Station, goods: Goods) -> tuple[SeamSpeed, ...]:
    """The measured speeds that fit a seam but for the goods it goes through, when none fits with them."""
    if measured_speed(seam, station, goods) is not None:
        return ()
    return tuple(one for one in _held_so(seam, station) if _curves_fit(seam, one))


def fits_goods(goods: Goods | None, speed: SeamSpeed) -> bool:
    """Whether a speed was measured on goods at least so thick and of so many layers."""
    if goods is None:
        return True
    thick = float(speed.thickest.value) if speed.thickest is not None else goods.thickness_mm
    layers = speed.layers if speed.layers is not None else goods.layers
    return goods.thickness_mm <= thick + _SLACK_MM and goods.layers <= layers


def _held_so(seam: FeatureShape, station: Station) -> tuple[SeamSpeed, ...]:
    feature = seam.feature
    if not isinstance(feature, Seam) or feature.held is None or not seam.paths:
        return ()
    return tuple(speed for speed in station.seam_speeds if speed.held == feature.held)


def _curves_fit(seam: FeatureShape, speed: SeamSpeed) -> bool:
    if speed.smallest_radius is None:
        return True
    return min(smallest_radius(path) for path in seam.paths) >= float(speed.smallest_radius.value) - _SLACK_MM
