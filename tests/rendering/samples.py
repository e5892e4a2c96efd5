"""Three sheets to look at and to test: a handle end, a pocket with sizes and many faults, a laser with danger.

Invented numbers of the fictional Thornquay Bags. The words of hazards are common practice, no source.
"""

from __future__ import annotations

import io
from dataclasses import replace
from functools import cache

from builder.view import (
    Caution,
    FaultLine,
    FigureView,
    Measure,
    Photo,
    Protection,
    Setting,
    SheetView,
    SizeRow,
    StepView,
)

NEEDLE = Caution("moving needle", "W001", "WARNING", "Moving needle. Foot off the treadle before fingers go near it.")
EYES = Protection("eye protection", "M004", "Wear eye protection.")
GUARD = Protection("finger guard", "M027", "Finger guard in place.")
DEFER = "The machine’s manual, local codes and licensed practice come first."

PHOTO_DIGEST = "b" * 64


@cache
def photo() -> bytes:
    """A JPEG of 1.2 megapixels, drawn: two tones of cloth and a line of stitches."""
    from PIL import Image, ImageDraw

    image = Image.new("RGB", (1280, 960), "#6f7f78")
    pen = ImageDraw.Draw(image)
    for x in range(0, 1280, 8):
        pen.line((x, 0, x, 960), fill="#687871")
    pen.rectangle((0, 520, 1280, 960), fill="#c9b58b")
    for x in range(20, 1280, 60):
        pen.line((x, 600, x + 40, 600), fill="#f5f1e6", width=9)
    kept = io.BytesIO()
    image.save(kept, "JPEG", quality=88)
    return kept.getvalue()


PHOTOS = {PHOTO_DIGEST: photo()}


def figure(name: str, alt: str, side: str = "right side", width: float = 95.0, height: float = 50.0) -> FigureView:
    """A figure the stand-in knows how to draw."""
    return FigureView(
        name=name,
        title=name,
        strokes=(),
        bounds=(0.0, 0.0, 240.0, 120.0),
        facts=(),
        alt=alt,
        side=side,
        width_mm=width,
        height_mm=height,
    )


LOOK = figure("finished", "A tool roll with its handle sewn on.", side="", width=30.0, height=18.0)

EDGE = Measure(
    name="edge",
    what="line to webbing edge",
    exact="1/8 in +1/16 -0",
    gauge="seam gauge",
    plan="first piece, then every 20th",
    value="3.2 mm +1.5 −0",
    other="1/8 in +1/16 −0",
)
LOOPS = Measure("loops", "loops underneath", "none", "by eye", "every piece", "none")

HANDLE_END = SheetView(
    operation="sew-handle-end",
    title="Sew the handle end, box and cross",
    station="lockstitch",
    station_title="Lockstitch",
    cautions=(NEEDLE,),
    protection=(EYES,),
    notices=(),
    settings=(
        Setting("stitch", "301", "301"),
        Setting(
            "stitch length",
            "0.0032",
            "3.2 mm ± 0.2",
            "8 st/in",
            "length dial: 3.2",
            "10 stitches on scrap: 32 mm",
        ),
        Setting("thread", "tex-70", "Tex 70", "", "", ""),
        Setting("needle", "110", "Nm 110 R", "size 18"),
        Setting("top tension", "1.4", "1.4 N ± 0.2", "5.0 oz", "top tension nut", "tension gauge at the needle"),
        Setting("program", "14", "14", "", "panel, key P", ""),
    ),
    steps=(
        StepView(
            "lay",
            "Lay the panel face up, **notch away from you**.",
            why="Turned round, the handle sits on the hanger side.",
            figure=figure("lay", "Back panel, right side up, notch at the top edge ringed, two drill holes."),
            number=1,
            seconds="4.2 s",
            seconds_value=4.2,
        ),
        StepView(
            "fold",
            "Fold the webbing end under. Lay it on the drill holes.",
            key="Edge **on** the holes, not beside them.",
            why="The box must catch both layers.",
            figure=figure("fold", "Webbing laid from the right, its folded end on the two drill holes."),
            number=2,
            seconds="6.1 s",
            seconds_value=6.1,
        ),
        StepView(
            "box",
            "Sew the box, then the cross. Don't lift the foot.",
            key="Needle down at every corner.",
            why="A lifted corner leaves a loop that opens in use.",
            checks=(EDGE,),
            figure=figure("box", "Box of 32 by 12 mm with a cross, start at the upper left corner.", height=54.0),
            number=3,
            seconds="11.8 s",
            seconds_value=11.8,
        ),
        StepView(
            "look",
            "Turn over. Look along every line for skipped stitches.",
            key="One skipped stitch is a **repair**, two are a reject.",
            figure=figure(
                "look", "The panel from the wrong side, the box seen through.", side="wrong side", height=46.0
            ),
            number=4,
            seconds="3.5 s",
            seconds_value=3.5,
        ),
    ),
    measures=(EDGE, LOOPS),
    faults=(
        FaultLine(
            "loops of thread underneath",
            "major",
            "top thread out of its take-up",
            "Rethread with the foot up.",
            "twice",
        ),
        FaultLine(
            "skipped stitches",
            "critical",
            "needle bent, or point burred",
            "Change the needle.",
            "after two needles",
        ),
        FaultLine("webbing edge shows beside the line", "minor", "end not on the holes", "Unpick and lay it again."),
    ),
    colour_names=(),
    colours=(),
    size_names=(),
    sizes=(),
    stem="HND-20",
    code="HND-20",
    products=("Tool roll, all sizes",),
    picture=LOOK,
    incoming=("1 × back panel, from Cut panels", "1 × handle webbing, from Cut webbing"),
    outgoing=("Bartack the pocket dividers",),
    pieces_an_hour="64",
    standard_minutes="0.94",
    machine_minutes="0.31",
    bundle="20",
    revision="C",
    date="2025-11-20",
    recorded_by=("E2", "L1"),
    fingerprint="7f3kq2mx4" + "0" * 55,
    tag="7F3K Q2MX 4",
    qr="HND-20 7F3KQ2MX4",
    plant="Thornquay Bags",
    paper="Letter",
    language="en",
    distance_mm=600.0,
    capital_mm=3.5,
)


def _pocket_step(number: int, name: str, do: str, key: str = "", why: str = "", shows: str = "plain") -> StepView:
    return StepView(
        name,
        do,
        key=key,
        why=why,
        figure=figure(shows, f"Pocket panel at step {number}.", height=44.0) if shows else None,
        number=number,
    )


POCKET = replace(
    HANDLE_END,
    operation="set-pocket-zip",
    title="Set the zip in the pocket mouth",
    stem="ZIP-10--TOOL-ROLL",
    code="ZIP-10",
    products=("Tool roll", "Instrument pouch"),
    protection=(EYES, GUARD),
    notices=(DEFER,),
    settings=(
        *HANDLE_END.settings[:2],
        Setting(
            "thread",
            "thread-135",
            "Bonded nylon thread, tex 135",
            "",
            "rear cone stand",
            "read the cone's label",
        ),
        Setting("bobbin thread", "thread-135", "Bonded nylon thread, tex 135", "", "bobbin winder", ""),
        *HANDLE_END.settings[3:],
        Setting(
            "bobbin tension",
            "0.5",
            "0.5 N ± 0.1",
            "0.11 lbf ± 0.02",
            "screw on the bobbin case",
            "hang it by its thread",
        ),
        Setting("foot pressure", "45", "45 N ± 5", "10.1 lbf ± 1.1"),
        Setting("speed", "1800", "1800 st/min ± 100"),
    ),
    steps=(
        _pocket_step(1, "lay", "Lay the pocket panel **face down**.", why="The zip is set from behind.", shows="lay"),
        replace(
            _pocket_step(2, "tape", "Stick the tape along the mouth.", key="Tape flush with the cut edge.", shows=""),
            photos=(
                Photo(
                    PHOTO_DIGEST,
                    "Tape flush with the edge of the cloth.",
                    "photos/tape.jpg",
                    "Tape flush, no bubble.",
                ),
            ),
        ),
        _pocket_step(3, "zip", "Lay the zip on the tape, teeth up.", key="Slider at the **left** end.", shows="fold"),
        replace(
            _pocket_step(
                4,
                "first",
                "Sew the first side with the zip foot.",
                key="Stop 5 mm before the end.",
                shows="box",
            ),
            checks=(EDGE,),
            cautions=(NEEDLE,),
        ),
        replace(
            _pocket_step(
                5,
                "second",
                "Turn the panel. Sew the second side.",
                why="Sewn in the same direction it twists.",
            ),
            photos=(Photo(PHOTO_DIGEST, "Both sides sewn.", "photos/both.jpg", "Even gap, both sides parallel."),),
        ),
        _pocket_step(
            6,
            "run",
            "Run the slider from end to end, three times.",
            key="It must not catch anywhere.",
            shows="",
        ),
        _pocket_step(
            7,
            "trim",
            "Trim both ends → 3 mm, and turn the panel out.",
            why="Long ends show in the side seam.",
        ),
    ),
    measures=(
        EDGE,
        LOOPS,
        replace(EDGE, name="gap", what="gap beside the teeth", value="4 mm ± 0.5", other="5/32 in ± 1/64"),
    ),
    faults=tuple(
        FaultLine(sign, grade, cause, remedy, stop)
        for sign, grade, cause, remedy, stop in (
            (
                "slider catches",
                "major",
                "tape caught under the teeth",
                "Unpick 30 mm either side and sew again.",
                "twice",
            ),
            (
                "wave in the zip",
                "major",
                "cloth stretched while sewn",
                "Let the feed take it. Don't pull.",
                "",
            ),
            ("skipped stitches", "critical", "needle bent", "Change the needle.", "after two needles"),
            (
                "loops of thread underneath",
                "major",
                "top thread out of its take-up",
                "Rethread, foot up.",
                "twice",
            ),
            (
                "tape shows on the right side",
                "minor",
                "tape too far in",
                "Lift it and lay it again before sewing.",
                "",
            ),
            (
                "needle holes beside the line",
                "critical",
                "line unpicked and moved",
                "Put the piece on the red hook.",
                "at once",
            ),
            (
                "thread breaks",
                "minor",
                "burr on the needle plate",
                "Change the needle, look at the plate.",
                "third break",
            ),
            (
                "zip longer than the mouth",
                "major",
                "wrong size in the bundle",
                "Compare with the bundle ticket.",
                "at once",
            ),
            (
                "oil on the cloth",
                "critical",
                "machine oiled and not run out",
                "Wipe, sew on scrap until clean.",
                "at once",
            ),
        )
    ),
    colour_names=(),
    colours=(),
    size_names=("mouth", "zip", "end to notch"),
    sizes=(
        SizeRow("S", (), ("180 mm ± 1 (7 1/8 in)", "200 mm", "25 mm"), "9c01d2ef5a7733"),
        SizeRow("M", (), ("240 mm ± 1 (9 1/2 in)", "260 mm", "30 mm"), "1be4a0c9d3f102"),
        SizeRow("L", (), ("300 mm ± 1 (11 7/8 in)", "320 mm", "35 mm"), "e77aa1b06c4d58"),
    ),
)

LASER = replace(
    HANDLE_END,
    operation="cut-panels",
    title="Cut panels",
    station="laser",
    station_title="Laser cutter, in sight",
    stem="PAN-10",
    code="PAN-10",
    paper="A4",
    products=("Tool roll", "Bicycle bag", "Instrument pouch"),
    cautions=(
        Caution(
            "laser beam",
            "W004",
            "DANGER",
            "Laser beam. It blinds and burns. Lid closed; never defeat the interlock.",
        ),
        Caution("fire", "W021", "WARNING", "Goods can catch fire. Never leave the machine while it cuts."),
        Caution(
            "fumes",
            "W016",
            "WARNING",
            "Fumes harm the lungs. Extraction on before the first cut, off after the last.",
        ),
        Caution("heavy load", "W001", "CAUTION", "Heavy roll. Two people or the hoist; never lift it alone."),
    ),
    protection=(
        Protection("interlocked enclosure", "M028", "Lid closed, interlock working."),
        Protection("fire extinguisher", "M001", "Fire extinguisher within reach."),
        Protection("extraction", "M001", "Extraction running."),
        Protection("safety footwear", "M008", "Wear safety footwear."),
    ),
    notices=(DEFER, "Only goods on the plant’s laser list. Nothing with chlorine in it."),
    settings=(
        Setting("power", "60", "60 % ± 2", "", "panel, page Job", "cut card, line 4"),
        Setting("speed", "0.4", "400 mm/s", "15.7 in/s", "panel, page Job", ""),
        Setting(
            "focus",
            "0.006",
            "6.0 mm ± 0.2",
            "15/64 in ± 1/128",
            "focus block under the head",
            "block slides, no play",
        ),
        Setting("air", "2", "2 bar ± 0.3", "29 psi ± 4", "regulator, left side", "gauge beside it"),
        Setting("passes", "1", "1", "", "", ""),
        Setting("nest file", "pan-10-m", "PAN-10-M-14", "", "", ""),
        Setting("bed height", "0.085", "85 mm", "3 11/32 in", "", ""),
    ),
    steps=(
        StepView(
            "load",
            "Roll the goods out flat, coated side down.",
            key="Left edge on the stop, no fold anywhere.",
            why="A fold lifts the goods out of focus and can flare.",
            cautions=(Caution("heavy load", "W001", "CAUTION", "Heavy roll."),),
            figure=figure("plain", "Goods flat on the bed, left edge on the stop."),
            number=1,
        ),
        StepView(
            "cut",
            "Close the lid. Start. **Stay and watch**.",
            key="Flame longer than a finger: stop, lid stays shut.",
            cautions=(
                Caution("laser beam", "W004", "DANGER", "Laser beam."),
                Caution("smoke", "W001", "CAUTION", "Smoke stays under the lid for 20 s after the last cut."),
            ),
            figure=figure("lay", "The nest on the bed, cut from the inside out."),
            number=2,
        ),
        StepView(
            "pick",
            "Pick the pieces by their number, stack them notch on notch.",
            checks=(replace(EDGE, what="drill hole to edge", value="12.0 mm ± 0.3", other="15/32 in ± 1/128"),),
            figure=figure("box", "Pieces stacked, notches on one side.", height=54.0),
            number=3,
        ),
    ),
    incoming=("1 roll coated cloth, from Store",),
    outgoing=("Set the zip in the pocket mouth", "Sew the handle end, box and cross"),
    tag="QX40 8M2C 7",
    qr="PAN-10 QX408M2C7",
)

FAR = replace(HANDLE_END, stem="HND-20-FAR", capital_mm=5.8, distance_mm=1000.0, tag="7F3K Q2MX 4")
"""The same job read from a metre: larger letters, so fewer steps a page."""

ALL = (HANDLE_END, POCKET, LASER, FAR)
