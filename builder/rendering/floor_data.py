"""What the floor screen's template is handed: the screens in order, each with its way on and back.

Built from the same sheet view as the operation's page; it adds the places to go and nothing about the work.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from builder.rendering.markdown import plain
from builder.rendering.page_data import Data, Pens, head_data, operation_path, step_data
from builder.rendering.screen_fit import fit_of
from builder.view import SheetView, StepView

# A figure on the floor screen is some 44 to 48 % of a 16:9 screen wide. At this size on paper its capitals then
# stand at 16' of arc where the action line stands at 20' (the theme's letter sizes).
FLOOR_MM = (80.0, 52.0)
FLOOR_TEXT_MM = 2.8
MOST_DOTS_IN_LINE = 9


def floor_data(sheet: SheetView, pens: Pens) -> Data:
    """The floor screen: the settings first, when there are any, then one screen a step."""
    steps = [step_data(_for_floor(step), pens) for step in sheet.steps]
    stops = _stops(sheet)
    return {
        **head_data(sheet, pens),
        "page_path": operation_path(sheet),
        "screens": [_screen(sheet, stops, index, steps) for index in range(len(stops))],
    }


def _for_floor(step: StepView) -> StepView:
    """The step with its figure laid out for the screen, whose letters stand higher beside the drawing than on paper."""
    if step.figure is None:
        return step
    width, height = FLOOR_MM
    return replace(step, figure=replace(step.figure, width_mm=width, height_mm=height, text_mm=FLOOR_TEXT_MM))


@dataclass(frozen=True, slots=True)
class _Stop:
    """A place of the floor screen: its anchor, what its dot shows, what it is called. `step` is None for the set-up."""

    anchor: str
    dot: str
    label: str
    step: StepView | None


def _stops(sheet: SheetView) -> list[_Stop]:
    steps = [
        _Stop(f"step-{step.name}", str(step.number), f"Step {step.number}: {plain(step.do)}", step)
        for step in sheet.steps
    ]
    has_set_up = bool(sheet.settings or sheet.sizes or sheet.notices) or not steps
    return [_Stop("set-up", "set up", "Set up", None), *steps] if has_set_up else steps


def _screen(sheet: SheetView, stops: Sequence[_Stop], index: int, steps: Sequence[Data]) -> Data:
    stop = stops[index]
    last = index == len(stops) - 1
    first_step = next((other for other in stops if other.step), stop)
    following = first_step if last else stops[index + 1]
    data = steps[stop.step.number - 1] if stop.step else None
    return {
        "anchor": stop.anchor,
        "step": data,
        "shows": bool(data and (data["drawing"] or data["photo"])),
        "fit": fit_of(sheet, stop.step),
        "place": f"step {stop.step.number} of {len(steps)}" if stop.step else "set up",
        "onward": _onward(following, last),
        "back": stops[index - 1].anchor if index else "",
        "next": following.anchor,
        "next_more": " piece" if last else "",
        "many": len(stops) > MOST_DOTS_IN_LINE,
        "dots": [_dot(other, position, index) for position, other in enumerate(stops)],
    }


def _onward(following: _Stop, last: bool) -> str:
    if last:
        return "then the next piece"
    return f"next: {short(following.step.do) if following.step else following.label}"


def _dot(stop: _Stop, position: int, here: int) -> Mapping[str, str]:
    state = "done" if position < here else "now" if position == here else "ahead"
    return {
        "anchor": stop.anchor,
        "text": stop.dot,
        "label": stop.label,
        "state": state if stop.step else f"{state} word",
    }


def short(text: str, most: int = 20) -> str:
    """The first clause of an action line, cut between words with an ellipsis when it is longer than `most` letters."""
    words = plain(text)
    for mark in (". ", ", ", "; ", ": "):
        words = words.split(mark)[0]
    words = words.rstrip(".")
    if len(words) <= most:
        return words
    head = words[: most + 1]
    kept = head.rsplit(" ", 1)[0] if " " in head else words[:most]
    return f"{kept} …"
