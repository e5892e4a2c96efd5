"""The plant: what holds everywhere in it."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from builder.model.base import Noun, Table, Text
from builder.model.typed import Count, Ident, Length, Share, Time


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


class Shift(Noun):
    """Paid time of a shift, breaks included or not as the plant counts it."""

    paid: Time
    breaks: Time


class Plant(Noun):
    """Facts of the whole plant. Its own name is `plant:`."""

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
