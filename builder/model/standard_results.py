"""The plant's standard data: what the readings of several steps say of one element of work. Plain numbers.

Lengths in mm, times in seconds, corners counted. Intervals have the confidence the plant asks of a mean.
"""

from __future__ import annotations

from dataclasses import dataclass

Interval = tuple[float, float]

UNREADABLE_STEPS = ("no operation", "other work", "machine run", "left out", "no length")
"""Why the readings of a step can't count: no operation names the study; its head names another operation; they hold
the run of a machine; every one is left out; nothing says how long the work is."""


@dataclass(frozen=True, slots=True)
class ElementStep:
    """The readings of one step an element is derived from, for the element done once.

    seconds, sd_s : mean and standard deviation of the rated readings; sd None for one reading
    n             : readings that count
    length_mm, corners : of what the step works on, in the size the study was taken in; None where nothing says it
    why           : one of UNREADABLE_STEPS where they don't count, else ''
    """

    study: str
    step: str
    seconds: float
    sd_s: float | None
    n: int
    length_mm: float | None = None
    corners: float | None = None
    why: str = ""

    @property
    def name(self) -> str:
        """As typed under `from:`."""
        return f"{self.study}/{self.step}"

    @property
    def about(self) -> tuple[str, str]:
        """What a finding on it concerns."""
        return f"study:{self.study}", f"step:{self.step}"

    def variable(self, name: str) -> float | None:
        """Its length or its corners."""
        return {"length": self.length_mm, "corners": self.corners}[name]


@dataclass(frozen=True, slots=True)
class Pooled:
    """The time of a constant element.

    error_s      : half the interval as one standard deviation of a normal distribution; None with the interval
    interval_s   : of the mean; None for a single reading
    within_sd_s  : of a step's readings about their mean; between_sd_s: of the steps' true means, None for one step
    f, p         : ratio of the mean squares between and within steps, and the chance of one so large in equal work
    homogeneous  : p isn't small; None where nothing can be said
    """

    mean_s: float
    n: int
    error_s: float | None = None
    interval_s: Interval | None = None
    within_sd_s: float | None = None
    between_sd_s: float | None = None
    f: float | None = None
    p: float | None = None
    homogeneous: bool | None = None

    @property
    def half_s(self) -> float | None:
        """Half the interval; None for a single reading."""
        return (self.interval_s[1] - self.interval_s[0]) / 2 if self.interval_s is not None else None


@dataclass(frozen=True, slots=True)
class Coefficient:
    """A number of a fit: of what (`constant`, `length` [s/mm], `corners` [s]), its value and its interval."""

    of: str
    value: float
    interval: Interval


@dataclass(frozen=True, slots=True)
class Fit:
    """The time of a variable element: constant + slope · length (+ slope · corners).

    ranges      : of each variable among the steps; the fit says nothing beyond
    covariance  : of the coefficients
    residual_sd_s : of a step's mean about the line; freedom: what it rests on
    r2          : share of the steps' spread the line explains
    quantile    : of Student's t for the plant's confidence
    middle_s, middle_half_s : the time in the middle of the ranges and half its interval
    """

    coefficients: tuple[Coefficient, ...]
    ranges: tuple[Interval, ...]
    covariance: tuple[tuple[float, ...], ...]
    residual_sd_s: float
    freedom: int
    r2: float
    quantile: float
    middle_s: float = 0.0
    middle_half_s: float = 0.0

    @property
    def variables(self) -> tuple[str, ...]:
        """What the time goes by."""
        return tuple(one.of for one in self.coefficients[1:])

    @property
    def middle(self) -> tuple[float, ...]:
        """The middle of each range."""
        return tuple((low + high) / 2 for low, high in self.ranges)


@dataclass(frozen=True, slots=True)
class Refusal:
    """Why no time can be derived.

    kind : `no readings`, `few steps` (`needed` in all), `hardly varies` (`variable`, from `low` to `high`), `vary
           together`, `not above zero` (somewhere in its range the fit gives no time)
    """

    kind: str
    variable: str = ""
    low: float = 0.0
    high: float = 0.0
    needed: int = 0


@dataclass(frozen=True, slots=True)
class ElementData:
    """What the studies say of an element derived from them. Exactly one of pooled, fit and refusal is there.

    steps : those that count; left_out : those that don't, each with why
    blind : some of its studies belong to operations with errors, so what is missing may not be judged
    """

    element: str
    varies_with: tuple[str, ...]
    steps: tuple[ElementStep, ...]
    left_out: tuple[ElementStep, ...] = ()
    pooled: Pooled | None = None
    fit: Fit | None = None
    refusal: Refusal | None = None
    blind: bool = False

    @property
    def readings(self) -> int:
        """All that count."""
        return sum(one.n for one in self.steps)

    @property
    def about(self) -> tuple[str, ...]:
        """What a finding on it concerns: all its studies and their steps."""
        return tuple(name for one in (*self.steps, *self.left_out) for name in one.about)


@dataclass(frozen=True, slots=True)
class Beyond:
    """A step whose length or corners lie outside what an element was fitted with; `value` None if nobody knows it."""

    element: str
    variable: str
    value: float | None
    low: float
    high: float
