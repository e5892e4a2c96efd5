"""The plant: what holds everywhere in it."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from builder.model.base import Noun, Table, Text
from builder.model.typed import Count, Force, Ident, Length, Mass, Share, Time


class Allowances(Noun):
    """Allowances on labour time.

    `share of basic time`: standard = basic × (1 + a). `share of the shift`: standard = basic ÷ (1 − a).
    a is the sum of the parts.
    """

    convention: Literal["share of basic time", "share of the shift"]
    personal: Share = Field(examples=["5 %"])
    fatigue: Share
    delays: Share


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


class PrecisionWanted(Noun):
    """What a mean of a study must keep: within a share of itself, with a confidence, counted by one of the forms.

    `t iterated` is the smallest number of readings that suffices; the others are older forms, named as such.
    """

    within: Share
    confidence: Share
    method: Literal["t iterated", "t pilot", "normal", "40 root"] = "t iterated"


class Plant(Noun):
    """Facts of the whole plant. Its own name is `plant:`.

    lock_out        : what a sheet says where a step or a fault has `power: off`
    seam_allowances : by stitch type, the least a seam may lie inside a raw edge
    precision       : what is asked of the mean of a study; ± 5 % at 95 % when left out
    estimate_range  : how far an estimate without a range of its own may be off, either side, 95 times in 100
    model_range     : the same for a machine model with constants measured here
    allowance_range : the same for what the allowances add; left out they are held for decided
    rating_range    : the same for all ratings together: observers err alike in all studies; left out they are true
    model_limit     : how far a study may be from the machine model before somebody looks
    vague_words     : words of the plant's language that say nothing, beside the built-in ones
    """

    plant: Text
    units: Literal["mm", "in"]
    paper: Literal["Letter", "A4"]
    language: Text = "en"
    shift: Shift
    allowances: Allowances
    batch: Count
    bundle: Count
    gauges: Table[str, Gauge] = Field(default_factory=dict)
    rules: Table[str, RuleSetting] = Field(default_factory=dict)
    theme: Ident = "manila"
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
    vague_words: tuple[Text, ...] = ()
