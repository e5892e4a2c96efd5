"""What a picture that explains one thing of a step is asked for, beside the part as it stands.

A maker is a function of a `DetailAsk`; it returns None where there is nothing to show (detail_makers.py lists them).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from builder.geometry import ShapeBook
from builder.model import Shown, Step
from builder.view.figures import Studio
from builder.view.panel_view import AnyFigure
from builder.view.scene import Work


@dataclass(frozen=True, slots=True)
class DetailAsk:
    """What a picture is asked for.

    shown  : the kind and the name typed
    name   : of the figure, unique in the plant
    studio : dimensions and values of the size drawn, and the stitches of all seams
    work   : what the operation makes, step by step; `step` is the one it is for
    size   : printed width, most height and capital height, mm
    """

    shown: Shown
    name: str
    studio: Studio
    book: ShapeBook
    work: Work
    step: Step
    size: tuple[float, float, float]


Maker = Callable[[DetailAsk], AnyFigure | None]
