"""A label sewn in or on. Its key is `tag`, because `label` is any feature's word on a drawing."""

from __future__ import annotations

from typing import Literal

from builder.model.base import Text
from builder.model.feature_base import Feature
from builder.model.typed import Angle, LengthOrExpression


class SewnTag(Feature):
    """A label: `tag: woven-label` names its material or part. `width` runs along its text; sizes are as placed, folded.

    in_      : the edge that catches it. `at` is then its place along that edge, and its ends lie on the edge; left out,
               it is laid on, and `at` is its lower left corner before it is turned
    overhang : how far it stands out beyond that edge
    folded   : `centre` a loop, its fold at the end farther from the edge that catches it;
               `ends` folded under left and right; `none` cut all round
    text     : what it says; drawn on it where it fits
    """

    tag: Text
    width: LengthOrExpression
    height: LengthOrExpression
    in_: Text | None = None
    overhang: LengthOrExpression | None = None
    turn: Angle | None = None
    folded: Literal["centre", "ends", "none"] = "none"
    text: Text | None = None
