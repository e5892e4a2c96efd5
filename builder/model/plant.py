"""The plant: what holds everywhere in it."""

from __future__ import annotations

from fractions import Fraction
from typing import Annotated, Literal

from pydantic import Field, StringConstraints, model_validator
from pydantic_core import PydanticCustomError

from builder.model.base import Noun, Table, Text
from builder.model.bounded_share import LearningRate, LostShare, Performance
from builder.model.paper import PaperName
from builder.model.relaxation import FigureName
from builder.model.typed import Count, Days, Force, Ident, Length, Mass, Share, Time


class Allowances(Noun):
    """Allowances on labour time that hold for all work of the plant.

    `share of basic time`: basic × (1 + a). `share of the shift`: basic ÷ (1 − a). a is the sum of the parts but
    `policy`; what a station adds for its own strain is a share of basic time in both.

    fatigue     : basic fatigue; where stations say their own `relaxation:`, that of light work in good conditions
    delays      : unavoidable ones
    contingency : small irregular work nobody times
    policy      : a rise of the finished standard by agreement; no work and no rest, so it never holds a machine
    """

    convention: Literal["share of basic time", "share of the shift"]
    personal: Share = Field(examples=["5 %"])
    fatigue: Share
    delays: Share
    contingency: Share = Fraction(0)
    policy: Share = Fraction(0)

    @model_validator(mode="after")
    def _leaves_time_to_work(self) -> Allowances:
        total = self.personal + self.fatigue + self.delays + self.contingency
        if self.convention == "share of the shift" and total >= 1:
            raise _no_time("the allowances take the whole shift", "Lower them, or correct the convention")
        return self


def _no_time(why: str, remedy: str) -> PydanticCustomError:
    context = {"message": f"{why}, so no time is left to work", "offset": 0, "remedy": remedy}
    return PydanticCustomError("text_fault", "{message}", context)


class Gauge(Noun):
    """A gauge. A limit gauge (go / no-go) has no graduation."""

    graduation: Length | None = None
    limit: Text | None = None


class RuleSetting(Noun):
    """A plant may raise or lower a warning, with a reason. A safety rule can't be lowered."""

    severity: Literal["error", "warning", "note", "off"]
    because: Text


class HandlingLimits(Noun):
    """What the plant asks of a body, and where the figures come from. A limit left out is not checked, but for `lift`.

    lift   : heaviest load one person lifts alone; without it 23 kg, the load constant of the NIOSH lifting equation
    reach  : farthest the hands go in every cycle
    force  : largest force of hand or foot that may be repeated more than `forces per hour` times
    """

    lift: Mass | None = None
    reach: Length | None = None
    force: Force | None = None
    forces_per_hour: Count | None = None
    source: Text


class Shift(Noun):
    """Paid time of a shift, breaks included or not as the plant counts it."""

    paid: Time
    breaks: Time

    @model_validator(mode="after")
    def _leaves_time_to_work(self) -> Shift:
        if self.breaks.value >= self.paid.value:
            raise _no_time("the breaks take the whole paid time", "Correct one of the two")
        return self


class Look(Noun):
    """What the plant looks like on its pages and sheets.

    colour : as #rrggbb; it fills the band with the plant's name. What hurts and what is sewn keep their own colours
    logo   : an SVG drawing or a picture of the folder photos
    """

    colour: Annotated[str, StringConstraints(pattern=r"^#[0-9a-fA-F]{6}$")] | None = Field(
        default=None, examples=["#1f5c57"]
    )
    logo: Text | None = None


class PrecisionWanted(Noun):
    """What a mean of a study must keep: within a share of itself, with a confidence, counted by one of the forms.

    `t iterated` is the smallest number of readings that suffices; the others are older forms, named as such.
    """

    within: Share
    confidence: Share
    method: Literal["t iterated", "t pilot", "normal", "40 root"] = "t iterated"


class Learning(Noun):
    """How newcomers learn, from the plant's own records.

    rate           : what the time of a piece falls to with each doubling of the pieces made
    standard_after : pieces after which the standard is reached
    """

    rate: LearningRate
    standard_after: Count
    source: Text


class Plant(Noun):
    """Facts of the whole plant. Its own name is `plant:`.

    lock_out        : what a sheet says where a step or a fault has `power: off`
    seam_allowances : by stitch type, the least a seam may lie inside a raw edge
    precision       : what is asked of the mean of a study; ± 5 % at 95 % when left out
    estimate_range  : how far an estimate without a range of its own may be off, either side, 95 times in 100
    model_range     : the same for a machine model with constants measured here
    allowance_range : the same for what the allowances add; left out they are held for decided
    rating_range    : the same for all ratings together: observers err alike in all studies; left out they are true
    relaxation      : the plant's own percents in place of figures of the published relaxation table
    performance     : minutes earned ÷ minutes worked on standard, of the plant as a whole
    off_standard    : share of paid time that is not on standard
    model_limit     : how far a study may be from the machine model before somebody looks
    copy_lasts      : how old a copy of the pages may be and still answer whether a sheet is current
    template_limit  : how far a side of the check square of a printed template may be off
    vague_words     : words of the plant's language that say nothing, beside the built-in ones
    """

    plant: Text
    units: Literal["mm", "in"]
    paper: PaperName
    language: Text = "en"
    shift: Shift
    allowances: Allowances
    relaxation: Table[FigureName, Share] = Field(default_factory=dict)
    batch: Count
    bundle: Count
    gauges: Table[str, Gauge] = Field(default_factory=dict)
    rules: Table[str, RuleSetting] = Field(default_factory=dict)
    theme: Ident = "manila"
    look: Look | None = None
    lock_out: Text = "Switch off at the main switch. Wait until everything stands still."
    handling: HandlingLimits | None = None
    seam_allowances: Table[str, Length] = Field(default_factory=dict)
    oldest_estimate_months: Count | None = None
    model_limit: Share | None = None
    precision: PrecisionWanted | None = None
    estimate_range: Share | None = None
    model_range: Share | None = None
    allowance_range: Share | None = None
    rating_range: Share | None = None
    performance: Performance | None = None
    off_standard: LostShare | None = None
    learning: Learning | None = None
    template_limit: Length | None = None
    copy_lasts: Days | None = None
    vague_words: tuple[Text, ...] = ()
