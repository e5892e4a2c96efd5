"""Stitches seen close up (`shows: stitch of hem-seam`): how the threads of a seam or bartack run through the goods."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from builder.geometry import STITCHES_DRAWN, Line, StitchSize, StitchThreads, bartack_lock, stitch_threads
from builder.model import (
    STITCHES,
    Bartack,
    FeatureRef,
    PlantModel,
    Quantity,
    SettingValue,
    Tolerance,
    find_feature,
    ordinary,
    say,
    settings_of,
    show_quantity,
)
from builder.view.details import DetailAsk
from builder.view.figure import Callout, DimensionLine, FigureView, Stroke
from builder.view.figures import exact
from builder.view.scene import Work
from builder.view.stitch_panels import Look, Panel, panel, strokes
from builder.view.stitch_sheet import Sheet, arranged, sample_mm, word_mm
from builder.view.stitch_words import runs_words, thread_lines
from builder.view.words import tolerance_pair

_HOLES = 3
_THREAD = 0.125
_PLIES = 7.0
"""Drawn: thread a share of the stitch length, goods so many threads thick. Real threads would be hair lines."""
_NARROW = ("101", "301", "304", "308", "401")
"""Types cut along the seam; those of several rows, and tacks, are cut across, where every thread has its place."""
_COVER, _UNDERLAY = 13, 3


@dataclass(frozen=True, slots=True)
class Sewn:
    """What is known of a stitch. Lengths and settings are None or absent where nobody typed them.

    stitch   : ISO 4915 type; `tack` where it is a bartack, with its size in mm and count of stitches
    settings : of the operation that sews it
    threads  : role → title of its material
    """

    stitch: str
    settings: Mapping[str, SettingValue]
    threads: Mapping[str, str]
    units: str
    tack: tuple[Quantity, Quantity, int] | None = None


def stitch_figure(ask: DetailAsk) -> FigureView | None:
    """The close-up a step asks for; None where the feature isn't sewn, or its stitch type isn't drawn."""
    ref = find_feature(ask.shown.name, ask.work.homes)
    if ref is None:
        return None
    sewn = _sewn(ref, ask)
    return close_up(sewn, ask.name, ask.size) if sewn is not None and sewn.stitch in STITCHES_DRAWN else None


def _sewn(ref: FeatureRef, ask: DetailAsk) -> Sewn | None:
    model, key = ask.work.model, (ref.part, ref.feature)
    feature = model.parts[ref.part].features[ref.feature]
    name = _sewer(key, ask.work)
    if name is None:
        return None
    settings = settings_of(model, name)
    tack = None
    if isinstance(feature, Bartack):
        length, width = (ask.studio.values.get(f"{ref.part}/{ref.feature}.{one}") for one in ("length", "width"))
        if length is None or width is None:
            return None
        tack = length, width, feature.bartack
    elif "stitch" not in settings:
        return None
    stitch = settings["stitch"].words if "stitch" in settings else "304"
    return Sewn(stitch, settings, _threads(settings, model), model.plant.units, tack)


def _sewer(key: tuple[str, str], work: Work) -> str | None:
    """The operation that sews a feature: this one, or another."""
    if key in work.all_now():
        return work.name
    others = ((name, Work(work.model, one, name)) for name, one in ordinary(work.model.operations).items())
    return next((name for name, one in others if key in one.all_now()), None)


def _threads(settings: Mapping[str, SettingValue], model: PlantModel) -> dict[str, str]:
    """Titles of the thread above and below: the one below is the one above where nobody says otherwise."""
    found = {}
    for role, names in (("needle", ("thread",)), ("bobbin", ("bobbin thread", "thread"))):
        typed = next((settings[one].words for one in names if one in settings), None)
        if typed is not None and typed in model.materials:
            found[role] = model.materials[typed].title
    return found


def close_up(sewn: Sewn, name: str, paper: tuple[float, float, float]) -> FigureView:
    """Face, back and cut of a few stitches as one figure. paper : printed width, most height, capital height, mm"""
    row, size, window = _tacked(sewn) if sewn.tack is not None else _row(sewn)
    across: Look = "cut along" if sewn.stitch in _NARROW and sewn.tack is None else "cut across"
    looks: tuple[Look, ...] = ("face", "back", across)
    panels = [panel(look, row, size, _cut_window(look, sewn, size, window)) for look in looks]
    roles = [thread.role for thread in row.threads]
    key = _key(sewn, roles)
    if sewn.stitch == "301" and sewn.tack is None:
        panels.append(_too_tight(size, window))
        key.append(("", say("wrong: needle\nthread too tight").split("\n")))
    sheet = arranged(panels, [len(lines) for _, lines in key], paper)
    art = [one for view, at in zip(panels, sheet.places, strict=True) for one in strokes(view, roles, at)]
    art += _samples(key, sheet, size, paper[2])
    title = say("Bartack")
    if sewn.tack is None:
        title = say("Stitch {number}, {name}", number=sewn.stitch, name=say(STITCHES[sewn.stitch].title))
    return FigureView(
        name=name,
        title=say("{stitch}, enlarged, not to scale", stitch=title),
        strokes=tuple(art),
        bounds=sheet.bounds,
        facts=tuple(_facts(sewn, roles)),
        alt=f"{say('{stitch}, from the face, from the back and cut.', stitch=title)} {runs_words(sewn.stitch, row)}",
        dimensions=tuple(_dimensions(sewn, row, sheet, window)),
        callouts=tuple(_callouts(key, panels, sheet, paper[2])),
        width_mm=paper[0],
        height_mm=sheet.height_mm,
        text_mm=paper[2],
    )


def _row(sewn: Sewn) -> tuple[StitchThreads, StitchSize, tuple[float, float]]:
    """A row of stitches as drawn: true only in how its threads run."""
    length = _nominal(sewn, "stitch length") or 3.0
    d = _THREAD * length
    wide = sewn.stitch[0] == "5"
    width = {"3": 1.2 * length, "5": 2.0 * length}.get(sewn.stitch[0], 0.0)
    if sewn.stitch in ("512", "514"):
        width = 2.3 * length
    size = StitchSize(length, d, _PLIES * d, width=width, gauge=(0.9 if wide else 1.3) * length)
    count = _HOLES + (1 if sewn.stitch in ("304", "308") else 0)
    row = stitch_threads(sewn.stitch, count + 3, size)
    start = 1.5 * length
    return row, size, (start, start + count * length)


def _tacked(sewn: Sewn) -> tuple[StitchThreads, StitchSize, tuple[float, float]]:
    """A bartack with its length and width in true proportion, and fewer stitches than it has."""
    assert sewn.tack is not None
    length, width = (float(one.value) for one in sewn.tack[:2])
    step = length / (_COVER - 1)
    d = min(0.5 * step, width / 6)
    size = StitchSize(step, d, _PLIES * d, width=width, hook=0.6)
    row = bartack_lock(length, width, _COVER, _UNDERLAY, size)
    return row, size, (-2.5 * d, length + 2.5 * d)


def _cut_window(look: Look, sewn: Sewn, size: StitchSize, window: tuple[float, float]) -> tuple[float, float]:
    """Of a cut across one stitch is shown, from its edge to the next needle; of a tack one, from side to side."""
    if look != "cut across":
        return window
    if sewn.tack is not None:
        # Midway between two holes of the underlay, which lies straight there, and between two of the zigzag.
        middle = size.length * (_COVER // _UNDERLAY - 0.5)
        return middle - 0.92 * size.length, middle + 0.92 * size.length
    start = window[0] + 0.8 * size.length
    return start, start + size.length


def _too_tight(size: StitchSize, window: tuple[float, float]) -> Panel:
    """A lockstitch whose needle thread is too tight: it lies straight on the face and pulls the other one up."""
    wrong = replace(size, lock=size.face)
    return panel("cut along", stitch_threads("301", _HOLES + 3, wrong), wrong, window, "wrong")


def _nominal(sewn: Sewn, setting: str) -> float | None:
    value = sewn.settings[setting].nominal if setting in sewn.settings else None
    return float(value) if value is not None else None


def _shown(sewn: Sewn, setting: str) -> str:
    """A setting as printed, '' when it isn't typed. In the plant's unit alone: the settings beside say both."""
    value = sewn.settings[setting].value if setting in sewn.settings else None
    if isinstance(value, Tolerance):
        return tolerance_pair(value, sewn.units)[0]
    return _first_unit(value, sewn) if isinstance(value, Quantity) else ""


def _first_unit(value: Quantity, sewn: Sewn) -> str:
    return show_quantity(value, sewn.units).split(" (")[0]  # type: ignore[arg-type]


def _facts(sewn: Sewn, roles: Sequence[str]) -> Iterator[tuple[str, str]]:
    yield "stitch", sewn.stitch
    yield "threads", ", ".join(roles)
    if sewn.tack is not None:
        yield "bartack", f"{sewn.tack[2]} stitches"
    else:
        yield from (("stitch length", one) for one in [_exact_setting(sewn, "stitch length")] if one)


def _exact_setting(sewn: Sewn, setting: str) -> str:
    value = sewn.settings[setting].value if setting in sewn.settings else None
    if isinstance(value, Quantity):
        return exact(value)
    if isinstance(value, Tolerance) and value.nominal is not None:
        return exact(value.nominal)
    return ""


def _dimensions(sewn: Sewn, row: StitchThreads, sheet: Sheet, window: tuple[float, float]) -> Iterator[DimensionLine]:
    """The stitch length from hole to hole; of a bartack its length, and its width in the cut across it."""
    (x, y), (cut_x, cut_y) = sheet.places[0], sheet.places[-1]
    if sewn.tack is not None:
        top = max(place for _, place in row.holes) + y
        length, width = sewn.tack[:2]
        words = [_first_unit(one, sewn) for one in (length, width)]
        half = float(width.value) / 2
        yield DimensionLine((x, top), (x + float(length.value), top), (0.0, 1.0), words[0], strong=True)
        yield DimensionLine((cut_x - half, cut_y), (cut_x + half, cut_y), (0.0, 1.0), words[1], strong=True)
        return
    text = _shown(sewn, "stitch length")
    # Of several rows the one on the left, nearest to the dimension; of a zigzag each hole on its own side.
    tops: dict[float, float] = {}
    for along, across in row.holes:
        tops[along] = max(across, tops.get(along, across))
    inside = sorted(along for along in tops if window[0] < along < window[1])
    if text and len(inside) > 1:
        start, end = ((along + x, tops[along] + y) for along in inside[-2:])
        yield DimensionLine(start, end, (0.0, 1.0), text, strong=True)


Key = list[tuple[str, list[str]]]


def _key(sewn: Sewn, roles: Sequence[str]) -> Key:
    """Rows of the key: a thread's role or `hole`, with its lines."""
    # Where there are many threads, their material is left to the settings beside the picture.
    few = len(roles) < 3
    key: Key = [(role, thread_lines(sewn, role, few and role == roles[0], _tension(sewn, role))) for role in roles]
    if "needle" in sewn.settings:
        key.append(("hole", [say("needle {size}", size=sewn.settings["needle"].words)]))
    if sewn.tack is not None and sewn.tack[2] > _COVER + _UNDERLAY:
        key.append(("", say("{count} stitches,\nfewer drawn", count=sewn.tack[2]).split("\n")))
    return [*key, ("", [say("not to scale")])]


def _tension(sewn: Sewn, role: str) -> str:
    """The tension of a thread as it is set, '' where it isn't known."""
    return _shown(sewn, {"needle": "top tension", "bobbin": "bobbin tension"}.get(role, ""))


def _samples(key: Key, sheet: Sheet, size: StitchSize, capital_mm: float) -> Iterator[Stroke]:
    """A length of each thread before its words, and a hole before the needle's."""
    far = sample_mm(capital_mm) / sheet.scale
    for (role, _), (x, y) in zip(key, sheet.rows, strict=True):
        if role == "hole":
            half = 0.75 * size.thread
            yield Stroke(
                "puncture", "part", (Line((x + far / 2 - half, y), (x + far / 2 + half, y)),), width=size.thread
            )
        elif role:
            yield Stroke("thread", "part", (Line((x, y), (x + far, y)),), fill=role, width=size.thread)


def _callouts(key: Key, panels: Sequence[Panel], sheet: Sheet, capital_mm: float) -> Iterator[Callout]:
    """Each panel's word left of it, each row of the key right of its sample: their room was kept."""
    for view, (dx, dy) in zip(panels, sheet.places, strict=True):
        left, low, _, high = view.bounds
        yield Callout((left + dx - word_mm(capital_mm) / sheet.scale, (low + high) / 2 + dy), view.word)
    for (role, lines), (x, y) in zip(key, sheet.rows, strict=True):
        far = sample_mm(capital_mm) / sheet.scale if role else 0.0
        yield Callout((x + far, y), "\n".join(lines), accent=role.startswith("needle"))
