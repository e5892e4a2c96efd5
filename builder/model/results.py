"""What computing hands on to the rules, to view and to the commands: plain numbers with their origin.

Times are in seconds inside an operation and in minutes for standards, as engineers read them; never rounded here.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from builder.model.shift_results import StationShare, Tending, Week
from builder.model.spread_results import Spread
from builder.model.standard_results import Beyond, ElementData
from builder.model.study_results import Precision, StudySummary

NO_SOURCE = "none"


@dataclass(frozen=True, slots=True)
class TimePart:
    """A piece of a step's basic time with where it comes from and how sure it is.

    source    : what it shares with other times, all of which err together: `study:OPERATION/STEP`, `element:NAME`,
                `estimate:OPERATION/STEP`, `model:STATION`
    seconds   : each time the step is done; below 0 where a carried-over run became shorter
    error_s   : one standard deviation of it [s]
    run       : the machine's run; else hand work
    estimated : rests on an estimate
    rated     : an observer's ratings are in it
    """

    source: str
    seconds: float
    error_s: float
    run: bool = False
    estimated: bool = False
    rated: bool = False


@dataclass(frozen=True, slots=True)
class StepTime:
    """Basic time of one step, each time it is done.

    hand_s, run_s : hand work and machine run [s]; run_s is 0 without a machine model or machine study
    hand_estimated_s, run_estimated_s : the parts of them that rest on estimates [s]
    share         : times per piece of the operation's run (1/20 for once every 20)
    source        : study | carried over | stale | element | estimate | model | none, joined with ` + `
    readings      : number of readings behind it
    during        : name of the step in whose machine time this one is done, ''
    parts         : what hand_s and run_s are added up from
    modelled_s    : what the machine model says the run takes [s], also where a study overrules it; None without one
    typed_s       : what its `time:` says [s], also where a study overrules it; None without one
    beyond        : its element's time was fitted with other lengths or corners, and counts
    """

    step: str
    hand_s: float
    run_s: float
    hand_estimated_s: float
    run_estimated_s: float
    share: Fraction
    source: str
    readings: int = 0
    during: str = ""
    modelled_s: float | None = None
    parts: tuple[TimePart, ...] = ()
    typed_s: float | None = None
    beyond: Beyond | None = None

    @property
    def total_s(self) -> float:
        """Hand work and run together, each time it is done [s]."""
        return self.hand_s + self.run_s


@dataclass(frozen=True, slots=True)
class OperationTime:
    """Times of one run of an operation, per run, allowances in `labour_min` and `machine_min`.

    outside_s, inside_s, run_s : basic seconds a run: hand work with the machine waiting, hand work inside its run,
                                 and the run itself
    labour_min, machine_min    : standard minutes of labour, minutes the machine is held
    estimate_share             : share of labour_min that rests on estimates, 0 to 1
    allowance                  : (words, share of basic time) of what makes up the allowance, what is rested inside
                                 machine time as a negative one; basic labour × (1 + their sum) is labour_min
    """

    operation: str
    steps: tuple[StepTime, ...]
    outside_s: float
    inside_s: float
    run_s: float
    labour_min: float
    machine_min: float
    estimate_share: float
    allowance: tuple[tuple[str, float], ...] = ()

    def step(self, name: str) -> StepTime | None:
        """The time of a step by its name."""
        return next((step for step in self.steps if step.step == name), None)


@dataclass(frozen=True, slots=True)
class RouteLine:
    """An operation on a product's route, for one finished piece, quantity multiplied in.

    run_share : what the product pays of a run that cuts pieces for others too, by the length cut for it
    """

    operation: str
    station: str
    quantity: Fraction
    own_min: float
    own_machine_min: float
    cumulative_min: float
    estimate_share: float
    run_share: float = 1.0


@dataclass(frozen=True, slots=True)
class MaterialUse:
    """What one finished piece takes of a material, net; the fields its form doesn't count in are 0.

    waste_mm2 : what a nest says is left of the sheet for it; 0 where no nest says
    seam_mm   : length of seam sewn with a thread, tacks and the thread of each stitch not counted
    thread_mm : thread sewn, tacks and ends counted; 0 if unknown. thread_most_mm : its upper end where texts differ
    thread_known : False once a seam of unknown thread is among those counted
    """

    material: str
    area_mm2: float = 0.0
    waste_mm2: float = 0.0
    length_mm: float = 0.0
    pieces: float = 0.0
    seam_mm: float = 0.0
    thread_mm: float = 0.0
    thread_most_mm: float = 0.0
    thread_known: bool = True

    def plus(self, other: MaterialUse, times: float) -> MaterialUse:
        """This and `times` another of the same material. Thread unknown in one of them is unknown in the sum."""
        known = self.thread_known and other.thread_known
        return MaterialUse(
            self.material,
            self.area_mm2 + times * other.area_mm2,
            self.waste_mm2 + times * other.waste_mm2,
            self.length_mm + times * other.length_mm,
            self.pieces + times * other.pieces,
            self.seam_mm + times * other.seam_mm,
            self.thread_mm + times * other.thread_mm if known else 0.0,
            self.thread_most_mm + times * other.thread_most_mm if known else 0.0,
            known,
        )


@dataclass(frozen=True, slots=True)
class ProductTime:
    """Standard and machine minutes of one finished piece of a product in one size, and what it takes.

    spread    : how sure the standard minutes are; None when nothing is on the route
    stations  : what the piece takes of each kind of station, in the order of the route, and what a shift gives
    newcomer  : the first weeks of somebody who learns the whole piece, empty where the plant says nothing
    materials : of the reference colour; another colour puts other materials in their place
    """

    product: str
    variant: str | None
    lines: tuple[RouteLine, ...]
    standard_min: float
    machine_min: float
    estimate_share: float
    materials: tuple[MaterialUse, ...] = ()
    spread: Spread | None = None
    stations: tuple[StationShare, ...] = ()
    newcomer: tuple[Week, ...] = ()


@dataclass(frozen=True, slots=True)
class Results:
    """All numbers of a plant.

    operations : by (operation, product or '', size or ''): an operation's time in that size's geometry
    products   : in the order of the files, sizes in the order typed
    studies    : by operation, what its study says
    standard_data : by element derived from studies, what they say of it
    tending    : operations at machines that pace themselves, as one person with several sees them
    precision  : what the plant asks of the mean of a study
    """

    operations: Mapping[tuple[str, str, str], OperationTime]
    products: tuple[ProductTime, ...]
    batch: int
    studies: Mapping[str, StudySummary] = field(default_factory=dict)
    standard_data: Mapping[str, ElementData] = field(default_factory=dict)
    precision: Precision = field(default_factory=Precision)
    tending: Mapping[str, Tending] = field(default_factory=dict)

    def element_users(self) -> dict[str, tuple[str, ...]]:
        """By element, the operations with a step that takes its time from it, in some size, in their order."""
        found: dict[str, dict[str, None]] = {}
        for (operation, _, _), time in self.operations.items():
            for step in time.steps:
                for part in step.parts:
                    if part.source.startswith("element:"):
                        found.setdefault(part.source.removeprefix("element:"), {})[operation] = None
        return {element: tuple(operations) for element, operations in found.items()}
