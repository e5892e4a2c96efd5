"""How large a floor screen's words can stand so that one step fits a 16:9 screen.

It estimates lines from mean letter widths; it doesn't lay anything out. Even the smallest size keeps the letters at
the height the reading distance asks for: what does not fit then scrolls. The lengths repeat those of the theme's
style sheet; a browser test holds the two together.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from math import ceil

from builder.model import ATKINSON, BOLD, REGULAR, Family, face_table, spoken_family, text_width
from builder.view import Measure, SheetView, StepView

# All in hundredths of the screen's width (vw). READ is the size of caution and key point, VALUE of
# what is checked, OTHER of its gauge.
READ = 2.74
OTHER = 2.19
VALUE = 3.0
SCREEN_HEIGHT = 56.25
SLIP_FOOT_AND_MARGINS = 12.9
FULL_LINE = 95.0
CHECK_INSET = 2.8
SIGN = 4.9
ROW = 4.4
BAND_MARGINS = 2.0
ITEM_GAP = 3.9
MOST_FULL_ROWS = 2
# Mean letter widths of Atkinson Hyperlegible in em: 0.44 and 0.49 measured in English text, plus 6 % for wide words.
_MEAN, _MEAN_BOLD = 0.465, 0.52
_SAMPLE = "etaoinshrdlucmfwypvbgk "


@dataclass(frozen=True, slots=True)
class Fit:
    """Sizes of the action line, of the drill hole and of the words' column beside a figure [vw].

    beside : the drill hole stands beside the words, not above them
    joined : a check's words run on in one paragraph
    spare  : how much more than the room the estimate may say; measured on the demo's fullest steps in a browser [vw]
    """

    name: str
    action: float
    drill: float
    column: float = 42.5
    beside: bool = True
    joined: bool = False
    spare: float = 0.0


FITS = (
    Fit("roomy", 4.1, 6.0, beside=False),
    Fit("snug", 3.6, 5.4),
    Fit("close", 3.2, 5.0),
    Fit("tight", READ, 4.4, column=46.2, joined=True, spare=10.0),
    # The fullest: the words take room from the figure, which keeps a third of the width.
    Fit("tight full", READ, 4.4, column=58.0, joined=True),
)


def mean(bold: bool = False) -> float:
    """Mean width of a letter in the language spoken now, em: as much wider as its family's letters are."""
    return _mean(spoken_family(), bold)


@cache
def _mean(family: Family, bold: bool) -> float:
    weight = BOLD if bold else REGULAR
    own, default = (text_width(_SAMPLE, 1.0, face_table(one, weight)) for one in (family, ATKINSON))
    return (_MEAN_BOLD if bold else _MEAN) * own / default


def fit_of(sheet: SheetView, step: StepView | None) -> str:
    """The name of the largest fit whose words are estimated to stand beside the figure, else of the smallest."""
    if step is None:
        return FITS[0].name
    room = SCREEN_HEIGHT - SLIP_FOOT_AND_MARGINS - BAND_MARGINS - ROW * band_rows(sheet)
    for fit in FITS:
        width = fit.column if step.figure or step.photos else FULL_LINE
        if _words_height(step, fit, width) <= room + fit.spare:
            return fit.name
    return FITS[-1].name


def band_is_brief(sheet: SheetView) -> bool:
    """Whether the steps' caution band only names hazards and protection: in full they would take over two rows."""
    return _rows(_full_items(sheet)) > MOST_FULL_ROWS


def _full_items(sheet: SheetView) -> list[float]:
    """Widths of the band's items with their whole sentences [vw]."""
    texts = [f"{item.signal} {item.text}" for item in sheet.cautions]
    texts += [item.text or item.name for item in sheet.protection]
    return [SIGN + len(text) * READ * mean() for text in texts]


def _brief_items(sheet: SheetView) -> list[float]:
    cautions = [SIGN + len(f"{item.signal}  {item.hazard}") * READ * mean(True) for item in sheet.cautions]
    return cautions + [SIGN + len(item.name) * OTHER * mean() for item in sheet.protection]


def band_rows(sheet: SheetView) -> int:
    """Rows of the caution band on the steps' screens, 0 when there is nothing to say."""
    return _rows(_brief_items(sheet) if band_is_brief(sheet) else _full_items(sheet))


def _rows(widths: Sequence[float]) -> int:
    """Rows of the band: an item that does not fit beside the last begins a row, a longer one takes several."""
    rows, used = 0, FULL_LINE
    for width in widths:
        if used + width > FULL_LINE:
            rows, used = rows + ceil(width / FULL_LINE), 0.0
        used += width % FULL_LINE + ITEM_GAP
    return rows


def _words_height(step: StepView, fit: Fit, width: float) -> float:
    beside = fit.drill + 1.2 if fit.beside else 0.0
    action = _lines(step.said, fit.action * mean(True), width - beside) * 1.12 * fit.action
    height = max(action, fit.drill) if fit.beside else action + fit.drill + 0.8
    for caution in step.cautions:
        height += 1.9 + _lines(f"{caution.signal} {caution.text}", READ * mean(True), width - 2.5) * 1.15 * READ
    if step.key:
        height += 1.1 + _lines(step.key, READ * mean(), width - 3.2) * 1.2 * READ
    return height + sum(_check_height(check, fit, width - CHECK_INSET) for check in step.checks)


def _check_height(check: Measure, fit: Fit, width: float) -> float:
    how = f"{check.gauge}, {check.plan}"
    # Of several sizes one is shown at a time.
    size = READ if fit.joined else VALUE
    values = max(len(value) * size * mean(True) + (len(other) + 3) * OTHER * mean() for value, other in check.lines())
    if fit.joined:
        everything = values + (len(check.what) + len(how) + 2) * OTHER * mean()
        return 2.2 + ceil(everything * 1.08 / width) * 1.1 * READ
    plain = _lines(check.what, OTHER * mean(), width) + _lines(how, OTHER * mean(), width)
    return 3.2 + plain * 1.18 * OTHER + ceil(values / width) * 1.12 * VALUE


def _lines(text: str, letter: float, width: float) -> int:
    """Lines a text takes when each word goes on the line while it fits; a word wider than the line breaks anywhere."""
    lines, used = 1, 0.0
    for word in text.split():
        length = len(word) * letter
        if used and used + letter + length > width:
            lines, used = lines + 1, 0.0
        lines += int(length // width)
        used += length % width + (letter if used else 0.0)
    return lines
