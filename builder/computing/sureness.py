"""How far each kind of time may be off: what the engineer typed, else the plant's default, else ours.

A range is what the true value lies in 95 times in 100, so one standard deviation is half its width ÷ 1.96.
"""

from __future__ import annotations

from dataclasses import dataclass

from builder.computing.spread import z_quantile
from builder.model import Element, Estimate, Plant, Precision, Station, StepStudy

RANGE_CONFIDENCE = 0.95
ESTIMATE_RANGE = 0.25
"""An estimate is taken to lie within a quarter of the truth where the plant says nothing. Ours, no source."""
MODEL_RANGE = 0.10
"""The same for a machine model with constants measured in the plant. Ours, no source."""


@dataclass(frozen=True, slots=True)
class Sureness:
    """Errors of one plant's times, as one standard deviation in seconds."""

    precision: Precision
    estimate_range: float
    model_range: float

    @property
    def _z(self) -> float:
        return z_quantile(RANGE_CONFIDENCE)

    def of_estimate(self, estimate: Estimate) -> float:
        """A typed time: half its own range, or the plant's share of it."""
        if estimate.low is not None and estimate.high is not None:
            return float(estimate.high - estimate.low) / 2 / self._z
        return self.of_guess(float(estimate.seconds))

    def of_guess(self, seconds: float) -> float:
        """Any time that counts as an estimate."""
        return abs(seconds) * self.estimate_range / self._z

    def of_element(self, element: Element, seconds: float) -> float:
        """A line of the table of element times; a studied one is taken to keep the plant's precision."""
        default = self.precision.within if element.basis == "studied" else self.estimate_range
        share = float(element.range) if element.range is not None else default
        return seconds * share / self._z

    def of_model(self, station: Station, seconds: float) -> float:
        """What a station's machine model says."""
        default = self.model_range if station.pace.calibrated is not None else self.estimate_range
        share = float(station.pace.range) if station.pace.range is not None else default
        return abs(seconds) * share / self._z

    def of_study(self, study: StepStudy, each: float) -> float:
        """The standard error of a mean; of a single reading nobody knows it, so it is taken for an estimate's."""
        error = study.error_s
        return self.of_guess(each) if error is None else error * each / study.basic_s


def sureness_of(plant: Plant) -> Sureness:
    """A plant's own shares, with ours where it says nothing."""
    return Sureness(
        precision_of(plant),
        float(plant.estimate_range) if plant.estimate_range is not None else ESTIMATE_RANGE,
        float(plant.model_range) if plant.model_range is not None else MODEL_RANGE,
    )


def precision_of(plant: Plant) -> Precision:
    """What the plant asks of a mean."""
    asked = plant.precision
    return Precision() if asked is None else Precision(float(asked.within), float(asked.confidence), asked.method)


def rating_error(plant: Plant) -> float:
    """One standard deviation of all ratings together, as a share; 0 where the plant takes them for true."""
    return float(plant.rating_range) / z_quantile(RANGE_CONFIDENCE) if plant.rating_range is not None else 0.0


def allowance_error(plant: Plant) -> float:
    """One standard deviation of the allowances, as a share of what they add; 0 where they are decided."""
    return float(plant.allowance_range) / z_quantile(RANGE_CONFIDENCE) if plant.allowance_range is not None else 0.0
