"""What the floor screen's template is handed: the screens in order, each with its way on and back.

Built from the same sheet view as the operation's page; it adds the places to go and nothing about the work.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from markupsafe import Markup

from builder.model import fitted_mm, say
from builder.rendering.markdown import plain
from builder.rendering.page_data import (
    GENERAL_WARNING,
    SIGN_MM,
    Data,
    Pens,
    head_data,
    operation_path,
    step_data,
)
from builder.rendering.screen_fit import FITS, band_is_brief, band_rows, fit_of
from builder.view import FigureView, Photo, SheetView, StepView, sized

# A figure on the floor screen is some 44 to 48 % of a 16:9 screen wide, and as high as the rows of the caution band
# leave room. At these sizes on paper its capitals stand at 16' of arc where the action line stands at 20'.
# Beside the fullest words it has less width, so it is laid out narrower.
FLOOR_WIDTH_MM, NARROW_WIDTH_MM = 80.0, 58.0
FLOOR_HEIGHT_MM = {1: 52.0, 2: 52.0, 3: 45.0, 4: 38.0}
FLOOR_TEXT_MM = 2.8
CLOSE_UP_MM = (164.0, 60.0)
PHOTO_SHARE, JUDGED_SHARE = 0.45, 0.6
"""Of the height for pictures, what photos with callouts get below a figure, and right and wrong between their words."""
MOST_DOTS_IN_LINE = 9
MOST_ANSWERS = 3
MOST_SPACED_CAUTIONS = 8
MOST_LARGE_SETTINGS = 6


def floor_data(sheet: SheetView, pens: Pens) -> Data:
    """The floor screen: what to read and set first, then one screen a step.

    Each sign is drawn once and used on every screen.
    """
    rows = min(max(FLOOR_HEIGHT_MM), max(1, band_rows(sheet)))
    sizes = [row.size for row in sheet.sizes]
    steps = [step_data(_for_floor(step, sheet, FLOOR_HEIGHT_MM[rows]), pens, sizes) for step in sheet.steps]
    stops = _stops(sheet)
    return {
        **head_data(sheet, pens),
        "page_path": operation_path(sheet),
        "asks": len({step.key for step in sheet.steps if step.key}) >= MOST_ANSWERS,
        "crowded": len(sheet.cautions) + len(sheet.protection) > MOST_SPACED_CAUTIONS,
        "rows": rows,
        "signs": _signs(sheet, pens),
        "cautions": [
            {
                "signal": item.signal,
                "text": item.text,
                "name": item.hazard,
                # What an operation says itself is too long for the brief band; the first screen has it in full.
                "own": item.hazard == item.text,
                "drawing": _use(item.sign or GENERAL_WARNING),
            }
            for item in sheet.cautions
        ],
        "protection": [
            {"text": item.text or item.name, "name": item.name, "drawing": _use(item.sign)} for item in sheet.protection
        ],
        "dense": len(sheet.settings) > MOST_LARGE_SETTINGS,
        "screens": [_screen(sheet, stops, index, steps, pens) for index in range(len(stops))],
    }


def _signs(sheet: SheetView, pens: Pens) -> list[Data]:
    codes = {item.sign or GENERAL_WARNING for item in sheet.cautions} | {item.sign for item in sheet.protection}
    return [{"id": f"sign-{code}", "drawing": Markup(pens.sign(code, SIGN_MM))} for code in sorted(codes) if code]


def _use(code: str) -> Markup:
    """A sign drawn by reference to the one in the page's definitions."""
    if not code:
        return Markup("")
    box = f"0 0 {SIGN_MM:g} {SIGN_MM:g}"
    return Markup(
        '<span class="sign" aria-hidden="true"><svg viewBox="{}" focusable="false"><use href="#sign-{}"/></svg></span>'
    ).format(box, code)


def _for_floor(step: StepView, sheet: SheetView, height: float) -> StepView:
    """The step with its figures laid out for the screen, whose letters stand higher in the drawing than on paper."""
    step = replace(step, photos=_photos_for_floor(step, height))
    if any(photo.verdict for photo in step.photos):
        # Right and wrong need the room; beside them a figure's dimensions could not be read, and the checks say them.
        return replace(step, figure=None, details=(), sizes=())
    if step.figure is None:
        return step
    width = NARROW_WIDTH_MM if fit_of(sheet, step) == FITS[-1].name else FLOOR_WIDTH_MM
    sizes = tuple((size, _laid_out(figure, width, height)) for size, figure in step.sizes)
    return replace(step, figure=_laid_out(step.figure, width, height), sizes=sizes)


def _photos_for_floor(step: StepView, height: float) -> tuple[Photo, ...]:
    """The pictures at the size they have on the screen: what is pointed out is lettered anew."""
    judged = any(photo.verdict for photo in step.photos)
    shares = step.figure is not None or bool(step.details)
    most = height * (JUDGED_SHARE if judged else PHOTO_SHARE if shares else 1.0)
    aspects = [photo.width_mm / photo.height_mm for photo in step.photos]
    return sized(step.photos, fitted_mm(aspects, FLOOR_WIDTH_MM, most), FLOOR_TEXT_MM)


def _laid_out(figure: FigureView, width: float, height: float) -> FigureView:
    # What is worked to must be there; a reference dimension would only crowd it out.
    strong = tuple(line for line in figure.dimensions if line.strong)
    return replace(
        figure,
        width_mm=width,
        height_mm=height,
        text_mm=FLOOR_TEXT_MM,
        dimensions=strong or figure.dimensions,
    )


@dataclass(frozen=True, slots=True)
class _Stop:
    """A place of the floor screen.

    kind : cautions, notices, settings, sizes, colours, step or close-up; the last two have a `step`
    detail : what a close-up shows
    """

    anchor: str
    kind: str
    title: str
    step: StepView | None = None
    detail: FigureView | None = None


def _stops(sheet: SheetView) -> list[_Stop]:
    """The places in order. The cautions get a screen of their own where the other screens only name them."""
    first = (
        _Stop("cautions", "cautions", say("Cautions")) if band_is_brief(sheet) else None,
        _Stop("notices", "notices", say("Read first")) if sheet.notices else None,
        _Stop("settings", "settings", say("Set the machine")) if sheet.settings else None,
        _Stop("sizes", "sizes", say("Sizes")) if sheet.sizes else None,
        _Stop("colours", "colours", say("Colours")) if sheet.colours else None,
    )
    return [*filter(None, first), *(stop for step in sheet.steps for stop in _of_step(step))]


def _of_step(step: StepView) -> Iterator[_Stop]:
    """The screen of a step, and one for each picture that explains something of it; settings have been shown before."""
    yield _Stop(f"step-{step.name}", "step", plain(step.said), step)
    for number, detail in enumerate(step.details, start=1):
        if isinstance(detail, FigureView):
            large = replace(detail, width_mm=CLOSE_UP_MM[0], height_mm=CLOSE_UP_MM[1], text_mm=FLOOR_TEXT_MM)
            yield _Stop(f"step-{step.name}-close-{number}", "close-up", detail.title, step, large)


def _screen(sheet: SheetView, stops: Sequence[_Stop], index: int, steps: Sequence[Data], pens: Pens) -> Data:
    stop = stops[index]
    last = index == len(stops) - 1
    first_step = next((other for other in stops if other.step), stops[0])
    following = first_step if last else stops[index + 1]
    data = steps[stop.step.number - 1] if stop.step and stop.detail is None else None
    dots = _dots(stops, index)
    fit = fit_of(sheet, stop.step if stop.detail is None else None)
    return {
        "anchor": stop.anchor,
        "kind": stop.kind,
        "title": stop.title,
        "step": data,
        "close_up": Markup(pens.figure(stop.detail)) if stop.detail else "",
        "shows": bool(data and (data["drawings"] or data["photos"])),
        "fit": fit,
        # The fullest step only names the hazards; all its neighbours say them in full.
        "brief": stop.kind != "cautions" and (band_is_brief(sheet) or fit == FITS[-1].name),
        "place": _place(stops, index),
        "onward": _onward(following, last),
        "back": stops[index - 1].anchor if index else "",
        "next": following.anchor,
        "next_more": say(" piece") if last else "",
        "seconds": _seconds(stop),
        "many": len(dots) > MOST_DOTS_IN_LINE,
        "dots": dots,
    }


def _seconds(stop: _Stop) -> str:
    """Standard time of a step, for who practises with a clock; of its close-ups none of their own."""
    seconds = stop.step.seconds_value if stop.step is not None and stop.detail is None else 0.0
    return f"{seconds:.0f}" if seconds >= 1 else ""


def _place(stops: Sequence[_Stop], index: int) -> str:
    """`step 3 of 7`, or `set up 1 of 2` for the screens before the steps."""
    step = stops[index].step
    if step is not None:
        steps = len({stop.step.number for stop in stops if stop.step is not None})
        if stops[index].detail:
            return say("step {n} of {m}, close up", n=step.number, m=steps)
        return say("step {n} of {m}", n=step.number, m=steps)
    alike = [position for position, stop in enumerate(stops) if stop.step is None]
    return say("set up {n} of {m}", n=alike.index(index) + 1, m=len(alike))


def _onward(following: _Stop, last: bool) -> str:
    if last:
        return say("then the next piece")
    if following.detail is not None:
        return say("next: close up")
    return say("next: {step}", step=short(following.title) if following.step else following.title.lower())


def _dots(stops: Sequence[_Stop], here: int) -> list[Mapping[str, str]]:
    """One dot a step, and one word before them for all that is read and set first."""
    before = [position for position, stop in enumerate(stops) if stop.step is None]
    dots: list[Mapping[str, str]] = []
    if before:
        state = "now" if here in before else "done"
        dots.append(
            {"anchor": stops[0].anchor, "text": say("set up"), "label": say("Set up"), "state": state, "kind": "word"}
        )
    current = stops[here].step
    for stop in stops:
        if stop.step is not None and stop.detail is None:
            number = str(stop.step.number)
            done = current is not None and stop.step.number < current.number
            state = "now" if stop.step is current else "done" if done else "ahead"
            label = say("Step {n}: {title}", n=number, title=stop.title)
            dots.append({"anchor": stop.anchor, "text": number, "label": label, "state": state, "kind": "number"})
    return dots


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
