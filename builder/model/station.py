"""A station: a kind of workplace, what it can do, what can hurt there and what to wear."""

from __future__ import annotations

import datetime
from collections.abc import Iterable
from typing import Literal

from pydantic import Field

from builder.model.base import Noun, Table, Text
from builder.model.bounded_share import Availability
from builder.model.paper import PaperName
from builder.model.relaxation import Relaxation
from builder.model.typed import Acceleration, Count, Flag, Ident, Length, Share, Speed, StitchRate, Time


class SettingLimit(Noun):
    """What one setting may be, where it is set, and how it is verified.

    `limits` is a range (`1.5..5 mm`), `choices` a list of words; a setting has one of the two, or neither.
    """

    limits: Text | None = None
    choices: tuple[Text, ...] | None = None
    set_at: Text
    verify: Literal["value", "gauge", "sample seam"]
    how: Text | None = None


class Pace(Noun):
    """Constants of the machine model. Which ones a station needs depends on its kind.

    reposition : moving the work on between two tacks, or two separate seams of one step
    range      : how far the model may be off, either side, 95 times in 100; the plant's default when left out
    calibrated : the day they were measured in this plant; without it what rests on them counts as estimate
    """

    top_speed: StitchRate | None = None
    acceleration: Acceleration | None = None
    braking: Acceleration | None = None
    start: Time | None = None
    corner_stop: Time | None = None
    finish: Time | None = None
    reposition: Time | None = None
    travel: Speed | None = None
    corner_speed: Speed | None = None
    pierce: Time | None = None
    feed: Speed | None = None
    chop: Time | None = None
    dwell: Time | None = None
    cycle: Time | None = None
    range: Share | None = None
    calibrated: datetime.date | None = None

    def missing(self, names: Iterable[str]) -> list[str]:
        """Those of some constants, as files spell them, that are not stated."""
        return [name for name in names if getattr(self, name.replace(" ", "_")) is None]


class StitchProgram(Noun):
    """A stored pattern of a bartacker or pattern sewer: what it sews."""

    stitches: Count
    length: Length
    width: Length


class Bobbin(Noun):
    """What a wound bobbin of one thread gives, measured in this plant.

    holds          : length wound on a full one
    left           : what is thrown away with the rest when it is changed
    inside_a_piece : it may be changed while a piece is sewn; else what no longer does for a whole piece is left too
    """

    holds: Length
    left: Length | None = None
    inside_a_piece: Flag = False


HOLDINGS = ("edge stop", "folder", "drawn line", "free hand")
"""How a seam is kept on its line."""


class SeamSpeed(Noun):
    """Top speed measured in this plant for seams kept on their line in one way.

    It holds for curves no tighter than `smallest radius`, for goods no thicker than `thickest` and of no more `layers`
    than it was measured on; what is left out limits nothing.
    """

    held: Literal["edge stop", "folder", "drawn line", "free hand"]
    smallest_radius: Length | None = None
    thickest: Length | None = None
    layers: Count | None = None
    top_speed: StitchRate
    study: Text


class Bed(Noun):
    """What a cutter's table or a press takes."""

    width: Length
    length: Length


class Station(Noun):
    """A kind of workplace of the plant.

    paper      : what its sheets are printed on, where that is not the plant's
    attendance : constant | in sight (with `share`) | free: what the operator owes the machine's time
    machine_waits : the machine is held while the operator works outside its cycle
    foot_lift     : thickest goods that pass under the foot
    strip_width   : widest webbing or tape a strip cutter takes
    programs      : stored patterns by their name in the setting `program`
    bobbins       : by thread, what a wound bobbin gives
    needle_length, needle_shank : of the needles that fit here, whole length and the shank's diameter, measured on a new
                    one; with them the broken-needle card draws its outline at true size
    needle_hours  : hours of sewing after which the needles are changed, all of the machine's together
    tail          : thread left hanging at start and end of a seam together, of each thread
    seam_speeds   : measured top speeds; the first that fits a seam counts
    posture, relief : how the work is done, and what interrupts standing
    reach         : farthest the hands go in every cycle
    relaxation    : what makes work here tiring; without it the plant's fatigue allowance is all
    rest_inside   : what the operator owes the machine's time, and no work fills, may be rested in
    people        : who works here in a shift; one a place when left out
    availability  : share of the shift its machines can run
    tended        : machines one person looks after at a time, where it is more than one
    hands_off     : how far fingers stay from needle, blade or heat, as drawings mark it; 30 mm when left out
    start, close_down : checks at the begin and end of a shift, by what is checked
    """

    title: Text
    kind: Text
    count: Count
    distance: Length
    paper: PaperName | None = None
    attendance: Literal["constant", "in sight", "free"]
    share: Share | None = None
    machine_waits: Flag = True
    stitches: tuple[Text, ...] = ()
    needles: Count | None = None
    settings: Table[str, SettingLimit] = Field(default_factory=dict)
    pace: Pace = Pace()
    hazards: tuple[Text, ...] = ()
    protection: tuple[Text, ...] = ()
    foot_lift: Length | None = None
    strip_width: Length | None = None
    bed: Bed | None = None
    hands_off: Length | None = None
    programs: Table[str, StitchProgram] = Field(default_factory=dict)
    bobbins: Table[Ident, Bobbin] = Field(default_factory=dict)
    needle_length: Length | None = None
    needle_shank: Length | None = None
    needle_hours: Time | None = None
    tail: Length | None = None
    seam_speeds: tuple[SeamSpeed, ...] = ()
    posture: Literal["sitting", "standing", "sit-stand"] | None = None
    relief: Text | None = None
    reach: Length | None = None
    relaxation: Relaxation | None = None
    rest_inside: Flag = False
    start: Table[str, Text] = Field(default_factory=dict)
    close_down: Table[str, Text] = Field(default_factory=dict)
    note: Text | None = None
    labour_grade: Ident | None = None
    people: Count | None = None
    availability: Availability | None = None
    tended: Count | None = None
