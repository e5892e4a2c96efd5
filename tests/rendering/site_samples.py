"""View objects of a small plant for the site's tests, and stand-in pens. The numbers are invented for the samples."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from html import escape
from io import BytesIO
from itertools import pairwise

from PIL import Image

from builder.geometry import Line, Segment
from builder.rendering import theme_of
from builder.rendering.markdown import to_html
from builder.rendering.page_data import Pens, photo_path
from builder.rendering.site import Site
from builder.view import (
    AnyChart,
    Callout,
    Caution,
    ChartPoint,
    DimensionLine,
    FaultLine,
    FigureView,
    HomePage,
    Link,
    Measure,
    Photo,
    ProductPage,
    Protection,
    RouteRow,
    RuleRow,
    RulesPage,
    RunChart,
    Setting,
    SheetView,
    SiteFrame,
    SizeRow,
    StationPage,
    StepView,
    Stroke,
    StudyLine,
    StudyPage,
    StudyRow,
    TimesPage,
    VariantView,
    pick_page,
)

THEME = theme_of("manila")
FRAME = SiteFrame(plant="Thornquay Bags", language="en", version="0.1.0")
PHOTO = Photo(
    digest="5f" * 32, alt="A finished handle end, all stitches even.", path="photos/end.png", caption="Even stitches"
)


def chain(*points: tuple[float, float], closed: bool = False) -> tuple[Segment, ...]:
    """Straight segments through the points."""
    ends = [*points, points[0]] if closed else list(points)
    return tuple(Line(start, end) for start, end in pairwise(ends))


BOX = chain((40, 52), (72, 52), (72, 36), (40, 36), (40, 52), (72, 36), (72, 52), (40, 36))


def figure(name: str, title: str, *, sewn: bool = False, wrong: bool = False) -> FigureView:
    """A back panel with a strip on it; `sewn` shows the box and cross as worked now."""
    panel = Stroke(
        role="cut edge",
        when="part",
        path=chain((0, 0), (150, 0), (150, 75), (48, 75), (44, 70), (40, 75), (0, 75), closed=True),
        closed=True,
        fill="wrong" if wrong else "ground",
    )
    strip = Stroke(
        role="strip",
        when="part",
        path=chain((37, 32), (160, 32), (160, 56), (37, 56), closed=True),
        closed=True,
        fill="strip",
    )
    seam = Stroke(role="seam", when="now" if sewn else "earlier", path=BOX, stitch="301", pitch=3.2)
    return FigureView(
        name=name,
        title=title,
        strokes=(panel, strip, seam) if sewn or wrong else (panel, strip),
        bounds=(0.0, 0.0, 160.0, 75.0),
        facts=(("side", "wrong side" if wrong else "right side"),),
        alt=f"{title}: the panel with the webbing end on it.",
        side="wrong side" if wrong else "right side",
        route=BOX if sewn else (),
        start=(40.0, 52.0) if sewn else None,
        end=(40.0, 36.0) if sewn else None,
        dimensions=(DimensionLine((40.0, 36.0), (72.0, 36.0), (0.0, -1.0), "32 mm ± 1 (1.26 in)", True),)
        if sewn
        else (),
        callouts=(Callout((90.0, 44.0), "edge on the holes", True),) if not sewn and not wrong else (),
    )


EDGE = Measure(
    name="edge",
    what="line to webbing edge",
    exact="0.003175 +0.0015875 -0",
    gauge="seam gauge",
    plan="first piece, then every 20th",
    value="3.2 mm +1.5 −0",
    other="1/8 in +1/16 −0",
)
NEEDLE = Caution("moving needle", "W024", "WARNING", "Moving needle. Foot off the pedal before fingers go near.")
GOGGLES = Protection("eye protection", "M004", "Wear eye protection. Guard down.")


def steps(photo: bool = True) -> tuple[StepView, ...]:
    return (
        StepView(
            name="lay",
            number=1,
            do="Lay the panel face up, **notch away from you**.",
            why="Turned round, the handle sits on the hanger side.",
            figure=figure("hnd-lay", "Panel laid"),
        ),
        StepView(
            name="fold",
            number=2,
            do="Fold the webbing end under. Lay it on the drill holes.",
            key="Edge on the holes, not beside them.",
            why="The box must catch both layers.",
            figure=figure("hnd-fold", "Webbing folded"),
            cautions=(Caution("hot end", "W001", "CAUTION", "The cut end is hot for a minute after the hot knife."),),
        ),
        StepView(
            name="box",
            number=3,
            do="Sew the box, then the cross. Don't lift the foot.",
            key="Needle down at every corner.",
            why="A lifted corner leaves a loop that opens in use.",
            checks=(EDGE,),
            figure=figure("hnd-box", "Box and cross", sewn=True),
        ),
        StepView(
            name="look",
            number=4,
            do="Turn over and look along every line for skipped stitches.",
            figure=figure("hnd-look", "Turned over", wrong=True),
            photos=(PHOTO,) if photo else (),
        ),
    )


SHEET = SheetView(
    operation="sew-handle-end",
    title="Sew the handle end, box and cross",
    station="lockstitch",
    station_title="Lockstitch",
    cautions=(NEEDLE,),
    protection=(GOGGLES,),
    notices=("Not for coated cloth: it creeps under the foot.",),
    settings=(
        Setting("stitch", "301", "301"),
        Setting("stitch length", "0.0032", "3.2 mm ± 0.2", "8 st/in", "dial on the arm", "10 stitches measure 32 mm"),
        Setting("thread", "bonded-nylon-tex-70", "bonded nylon Tex 70"),
        Setting("needle", "Nm 110 R", "Nm 110 R"),
        Setting("top tension", "1.4", "1.4 N ± 0.2", "", "disc above the needle", "tension gauge"),
        Setting("program", "14", "14"),
    ),
    steps=steps(),
    measures=(EDGE,),
    faults=(
        FaultLine(
            "loops of thread underneath",
            "major",
            "top thread out of its take-up",
            "Rethread with the foot up.",
            "at the second time",
        ),
        FaultLine("skipped stitches", "critical", "bent needle", "Change the needle, unpick, sew again."),
    ),
    colour_names=(),
    colours=(),
    size_names=("back-panel width", "handle place"),
    sizes=(
        SizeRow("S", (("back-panel.width", "0.254"),), ("254 mm (10 in)", "40 mm")),
        SizeRow("M", (("back-panel.width", "0.3048"),), ("305 mm (12 in)", "44 mm")),
    ),
    stem="sew-handle-end",
    code="HND-20",
    products=("Tool roll",),
    picture=figure("hnd-picture", "Finished handle end", sewn=True),
    incoming=("1 × back panel, from Cut panels", "2 × handle webbing, from Cut webbing"),
    outgoing=("Bartack the pocket dividers",),
    pieces_an_hour="64",
    standard_minutes="0.94",
    machine_minutes="0.41",
    bundle="20",
    revision="C",
    date="2025-11-20",
    recorded_by=("E2", "L1"),
    fingerprint="7f3kq2mx" * 8,
    tag="7F3K Q2MX 4",
    qr="7F3K Q2MX 4",
    plant="Thornquay Bags",
    paper="letter",
    language="en",
    distance_mm=600.0,
    capital_mm=3.5,
)

# A sheet with more of everything, to see that the floor screen still fits.
HOT = Caution("hot blade", "W017", "CAUTION", "Hot blade at the left end of the table, 400 °C.")
CROWDED = replace(
    SHEET,
    operation="bartack-dividers",
    stem="bartack-dividers--tool-roll",
    code="DIV-10",
    title="Bartack the pocket dividers",
    cautions=(NEEDLE, HOT),
    protection=(GOGGLES, Protection("gloves off", "P028", "No gloves at the needle.")),
    steps=tuple(
        StepView(
            name=f"row-{number}",
            number=number,
            do="Bring the divider line under the clamp, both layers flat, and press the pedal once to the stop.",
            key="The tack ends at the pocket edge, never beyond the binding.",
            checks=(EDGE,),
            figure=figure(f"div-{number}", "Divider line", sewn=True),
        )
        for number in range(1, 13)
    ),
    sizes=(),
    colour_names=(),
    colours=(),
    size_names=(),
    picture=None,
)

# code, title, station, own minutes, estimated share, where the time comes from
ROUTE = (
    ("WEB-10", "Cut webbing and ties to length", "Strip cutter", 0.22, 0.0, "8 strips a piece"),
    ("PAN-10", "Cut panels", "Laser, in sight", 0.31, 0.0, "machine 13 min a sheet of 22"),
    ("ZIP-10", "Set the zip in the pocket mouth", "Lockstitch", 1.38, 0.0, "31 readings"),
    ("HND-20", "Sew the handle ends, box and cross", "Lockstitch", 0.94, 0.35, "26 readings, look estimated"),
    ("DIV-10", "Bartack the pocket dividers", "Bartacker", 0.76, 0.0, "9 tacks, from geometry"),
    ("JON-10", "Join back and front", "Lockstitch, heavy", 1.62, 0.0, "22 readings"),
    ("BND-10", "Bind the edge", "Binder", 1.47, 1.0, "carried over from size L"),
    ("SNP-10", "Set snaps, inspect, pack", "Press and bench", 0.85, 1.0, "estimate: time it next"),
)


def _rows(factor: float) -> Iterator[RouteRow]:
    total = sum(row[3] for row in ROUTE)
    before = 0.0
    for index, (code, title, station, own, estimated, source) in enumerate(ROUTE):
        yield RouteRow(
            page="operations/sew-handle-end.html",
            sheet="sheets/sew-handle-end.pdf",
            code=code,
            title=title,
            station=station,
            quantity="",
            own=f"{own * factor:.2f}",
            machine="",
            cumulative=f"{(before + own) * factor:.2f}",
            start_share=before / total,
            own_share=own / total,
            estimated=estimated,
            source=source,
            figure=figure(f"row-{index}", title, sewn=index % 3 == 0, wrong=index % 3 == 1),
        )
        before += own


def variant(name: str, factor: float) -> VariantView:
    total = sum(row[3] for row in ROUTE) * factor
    return VariantView(
        name=name,
        anchor=f"size-{name.lower().replace(' ', '-')}",
        standard=f"{total:.2f} min",
        machine=f"{total * 0.82:.2f} min",
        estimate_share="35 %",
        pieces_an_hour=f"{60 / total:.1f}",
        rows=tuple(_rows(factor)),
        stations=(
            ("Lockstitch", "2.32", "1.90", "310", "labour"),
            ("Bartacker", "0.76", "0.44", "480", "labour"),
            ("Binder", "1.47", "1.20", "260", "machines"),
        ),
    )


PRODUCT = ProductPage(
    path="products/tool-roll.html",
    name="tool-roll",
    title="Tool roll",
    note="8 operations · 17 parts",
    variants=(variant("S", 0.95), variant("M", 1.0), variant("L", 1.08)),
)
POUCH = ProductPage("products/pouch.html", "pouch", "Instrument pouch", "8 operations", (variant("one size", 0.6),))
STATION = StationPage(
    path="stations/lockstitch.html",
    name="lockstitch",
    title="Lockstitch",
    kind="Sewing machine, ISO 4915 stitch type 301",
    facts=(("places", "3"), ("reading distance", "600 mm"), ("speed held", "2400 st/min")),
    cautions=(NEEDLE,),
    protection=(GOGGLES,),
    settings=(
        ("stitch length", "2 mm to 5 mm", "dial on the arm", "10 stitches on a scrap"),
        ("program", "1 to 99", "panel", ""),
    ),
    operations=(Link("operations/sew-handle-end.html", "Sew the handle end, box and cross", "HND-20"),),
    allowances=(
        ("personal", "5 %", "plant’s own"),
        ("attention, fine", "2 %", "published table"),
        ("in all", "7 %", "standard time is 1.07 × basic time"),
    ),
    allowance_note="Shares of basic time.",
)
SHEETS = (SHEET, CROWDED)
HOME = HomePage(
    title="Work instructions",
    products=(Link(PRODUCT.path, PRODUCT.title, "3 sizes"), Link(POUCH.path, POUCH.title, "1 size")),
    stations=(Link(STATION.path, STATION.title, "3 places"),),
    operations=(
        Link("operations/sew-handle-end.html", "Sew the handle end, box and cross", "HND-20 · Lockstitch"),
        Link("operations/bartack-dividers--tool-roll.html", CROWDED.title, "DIV-10 · Lockstitch"),
    ),
    date="2025-11-20",
)


def plain_figure(view: FigureView) -> str:
    """A stand-in drawing in printed mm: each stroke as one path, y turned down, and the side as a word."""
    left, bottom, right, top = view.bounds
    scale = min(view.width_mm / (right - left), view.height_mm / (top - bottom))
    height = (top - bottom) * scale
    paths = "".join(_path(stroke, scale, height) for stroke in view.strokes)
    size = view.text_mm / 0.668
    word = f'<text x="2" y="{height - 2:.3f}" font-size="{size:.3f}">{view.side}</text>' if view.side else ""
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {view.width_mm} {height:.3f}" width="{view.width_mm}mm" '
        f'height="{height:.3f}mm" role="img" aria-label="{escape(view.alt)}">{paths}{word}</svg>'
    )


def _path(stroke: Stroke, scale: float, height: float) -> str:
    points = [stroke.path[0].start, *(piece.end for piece in stroke.path)]
    line = "M" + "L".join(f"{x * scale:.3f} {height - y * scale:.3f}" for x, y in points)
    colour = {"now": "#a92f18", "earlier": "#777777"}.get(stroke.when, "#22211d")
    fill = {"": "none", "ground": "#ffffff", "strip": "#e6dbc3", "wrong": "#f0ece4"}[stroke.fill]
    return f'<path d="{line}" fill="{fill}" stroke="{colour}" stroke-width="0.8"/>'


def plain_chart(chart: AnyChart) -> str:
    """A chart without its contents."""
    return f'<svg role="img" aria-label="{chart.alt}"></svg>'


def plain_sign(code: str, size: float) -> str:
    """A stand-in sign: a disc with the code's letter."""
    return f'<svg viewBox="0 0 10 10" width="{size}" height="{size}"><circle cx="5" cy="5" r="5"/></svg>'


PENS = Pens(figure=plain_figure, sign=plain_sign, markdown=to_html, chart=plain_chart)


def grey_jpeg(width: int, height: int) -> bytes:
    """A plain grey picture."""
    out = BytesIO()
    Image.new("L", (width, height), 180).save(out, "JPEG")
    return out.getvalue()


RULES = RulesPage(
    (("operation", (RuleRow("gauge-missing", "warning", "A wish.", "Name `with:`.", (), "bad", "good"),)),)
)


STUDY = StudyPage(
    path="studies/sew-handle-end.html",
    name="sew-handle-end",
    title="Sew the handle end",
    operation=Link("operations/sew-handle-end.html", "Sew the handle end", "HND-20"),
    head=(("station", "lockstitch"), ("date", "2026-10-15")),
    asked="± 5 % at 95 %, by Student’s t, iterated",
    cycles="20 cycles",
    rows=(
        StudyRow(
            *("box", "Sew **the box**.", "20", "11.36", "0.99", "9 %", "104", "11.74", "11.58 to 11.91", "2"),
            remarks=("Cycle 5 reads 5.7 s, far from the others.",),
            run=RunChart("run", "box", "20 values", "cycle", "seconds", points=(ChartPoint(1, 11), ChartPoint(2, 12))),
        ),
    ),
    changed=("Conditions have changed since.",),
    kept_out=("box, cycle 16: 26.0 s, out: thread broke",),
)
TIMES = TimesPage(
    asked=STUDY.asked,
    studies=(StudyLine(Link(STUDY.path, STUDY.title, "HND-20"), "2026-10-15", "20 cycles", "1 of 1 steps", "1"),),
    following=(StudyLine(STUDY.operation, "", "30 cycles", "21 min", "12 %"),),
    untimed=(STUDY.operation,),
)


def sample_site(pens: Pens = PENS) -> dict[str, bytes]:
    """The whole sample site by path, the sheets' PDFs left out."""
    site = Site(FRAME, THEME, pens)
    views = [("home", HOME), ("product", PRODUCT), ("product", POUCH), ("station", STATION), ("rules", RULES)]
    views += [
        ("times", TIMES),
        ("study", STUDY),
        ("check", HOME),
        ("pick", pick_page(SHEETS, [STATION], [PRODUCT, POUCH])),
    ]
    views += [(kind, sheet) for sheet in SHEETS for kind in ("operation", "floor")]
    pages = dict(site.render_page(kind, view) for kind, view in views)  # type: ignore[arg-type]
    letters = set("".join(content.decode() for content in pages.values()))
    return {**pages, **dict(site.assets(letters)), photo_path(PHOTO): grey_jpeg(480, 320)}
