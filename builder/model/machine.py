"""Kinds of machine: what can be set on each, who paces it, which hazards come with it.

A station is of one kind. The kind says which settings an operation may and must type, and of what sort each is;
the station says their limits, where they are set and how they are verified.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class SettingKind:
    """One setting of a kind of machine.

    sort      : tolerance | stitch | thread | needle | count | share | words
    dimension : of a tolerance, '' otherwise
    required  : an operation at such a station must type it
    """

    sort: str
    dimension: str = ""
    required: bool = False


@dataclass(frozen=True, slots=True)
class MachineKind:
    """A kind of machine.

    paced   : operator (treadle: readings are rated whole) | machine (never rated) | none (no machine is held)
    model   : which machine model times its steps: seam | tack | contour | chop | cycle | '' for none
    needs   : constants of the model the station must state under `pace:`
    heat    : it cuts or joins by heat, so composition must be known and attendance can't be free
    hazards : come with the kind, always
    start_checks : what is checked at the begin of a shift, always; the station says how. Common practice, no source
    """

    name: str
    title: str
    paced: str
    model: str
    needs: tuple[str, ...]
    hazards: tuple[str, ...]
    settings: dict[str, SettingKind]
    heat: bool = False
    start_checks: tuple[str, ...] = ()

    @property
    def sews(self) -> bool:
        """A needle and thread machine."""
        return self.model in ("seam", "tack")


def _tolerance(dimension: str, required: bool = False) -> SettingKind:
    return SettingKind("tolerance", dimension, required)


_SEWING: dict[str, SettingKind] = {
    "stitch": SettingKind("stitch", required=True),
    "stitch length": _tolerance("stitch length", required=True),
    "thread": SettingKind("thread", required=True),
    "bobbin thread": SettingKind("thread"),
    "needle": SettingKind("needle", required=True),
    "needles": SettingKind("count"),
    "threads": SettingKind("count"),
    "rows": SettingKind("count"),
    "top tension": _tolerance("force"),
    "bobbin tension": _tolerance("force"),
    "foot pressure": _tolerance("force"),
    "speed": _tolerance("stitch rate"),
    "program": SettingKind("words"),
    "guide": SettingKind("words"),
}
_SEAM_PACE = ("top speed", "acceleration", "braking", "start", "corner stop", "finish")

KINDS: dict[str, MachineKind] = {
    k.name: k
    for k in (
        MachineKind("lockstitch", "lockstitch machine", "operator", "seam", _SEAM_PACE, ("moving needle",), _SEWING),
        MachineKind(
            "two-needle lockstitch",
            "two-needle lockstitch machine",
            "operator",
            "seam",
            _SEAM_PACE,
            ("moving needle",),
            {**_SEWING, "needle gauge": _tolerance("length", required=True)},
        ),
        MachineKind("chainstitch", "chainstitch machine", "operator", "seam", _SEAM_PACE, ("moving needle",), _SEWING),
        MachineKind(
            "overlock",
            "overlock machine",
            "operator",
            "seam",
            _SEAM_PACE,
            ("moving needle", "sharp blade"),
            {**_SEWING, "cut width": _tolerance("length"), "differential feed": SettingKind("share")},
        ),
        MachineKind(
            "binder",
            "lockstitch machine with a binder",
            "operator",
            "seam",
            _SEAM_PACE,
            ("moving needle",),
            {**_SEWING, "folder": SettingKind("words", required=True)},
        ),
        MachineKind(
            "bartacker",
            "bartacking machine",
            "machine",
            "tack",
            ("top speed", "start", "finish", "reposition"),
            ("moving needle", "automatic start"),
            {
                "program": SettingKind("words", required=True),
                "stitch": SettingKind("stitch"),
                "thread": SettingKind("thread", required=True),
                "bobbin thread": SettingKind("thread"),
                "needle": SettingKind("needle", required=True),
                "top tension": _tolerance("force"),
                "speed": _tolerance("stitch rate"),
                "clamp": SettingKind("words"),
            },
        ),
        MachineKind(
            "laser",
            "laser cutter",
            "machine",
            "contour",
            ("travel", "acceleration", "corner speed", "pierce"),
            ("laser beam", "fumes", "fire"),
            {
                "speed": _tolerance("speed", required=True),
                "power": SettingKind("share", required=True),
                "focus": _tolerance("length", required=True),
                "passes": SettingKind("count"),
                "assist air": _tolerance("pressure"),
                "layers": SettingKind("count"),
                "kerf": _tolerance("length"),
                "lead in": _tolerance("length"),
                "raster speed": _tolerance("speed"),
                "line spacing": _tolerance("length"),
            },
            heat=True,
            start_checks=("extraction", "focus", "fire watch"),
        ),
        MachineKind(
            "knife cutter",
            "drag-knife cutter",
            "machine",
            "contour",
            ("travel", "acceleration", "corner speed", "pierce"),
            ("sharp blade", "moving gantry"),
            {
                "speed": _tolerance("speed", required=True),
                "blade": SettingKind("words", required=True),
                "cutting depth": _tolerance("length"),
                "vacuum": _tolerance("pressure"),
                "layers": SettingKind("count"),
                "passes": SettingKind("count"),
                "kerf": _tolerance("length"),
                "lead in": _tolerance("length"),
            },
        ),
        MachineKind(
            "strip cutter",
            "cold strip cutter",
            "machine",
            "chop",
            ("feed", "chop"),
            ("sharp blade", "automatic start"),
            {
                "blade": SettingKind("words"),
                "feed speed": _tolerance("speed"),
                "lanes": SettingKind("count"),
                "angle": _tolerance("angle"),
            },
        ),
        MachineKind(
            "hot strip cutter",
            "hot strip cutter",
            "machine",
            "chop",
            ("feed", "chop", "dwell"),
            ("hot blade", "fumes", "automatic start"),
            {
                "temperature": _tolerance("temperature", required=True),
                "dwell": _tolerance("time", required=True),
                "feed speed": _tolerance("speed"),
                "lanes": SettingKind("count"),
            },
            heat=True,
            start_checks=("extraction", "temperature"),
        ),
        MachineKind(
            "click press",
            "click press",
            "machine",
            "cycle",
            ("cycle",),
            ("crushing of hands",),
            {
                "die": SettingKind("words", required=True),
                "force": _tolerance("force", required=True),
                "layers": SettingKind("count"),
            },
            start_checks=("guard",),
        ),
        MachineKind(
            "setting press",
            "press for snaps and eyelets",
            "machine",
            "cycle",
            ("cycle",),
            ("crushing of hands",),
            {
                "die": SettingKind("words", required=True),
                "pressure": _tolerance("pressure"),
                "force": _tolerance("force"),
                "stop height": _tolerance("length"),
            },
            start_checks=("guard",),
        ),
        MachineKind("bench", "bench", "none", "", (), (), {"lamp": SettingKind("words"), "jig": SettingKind("words")}),
    )
}
