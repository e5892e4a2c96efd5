"""The order of the rooms, on a page. Each stage can be called alone; nothing calls this but commands and watching."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator, Mapping
from contextlib import closing
from dataclasses import dataclass, field, replace
from datetime import UTC, date, datetime
from pathlib import Path
from time import perf_counter

from builder.checking import (
    Subject,
    check_results,
    check_typed,
    cleaned_finding,
    drawing_finding,
    figure_finding,
    photo_finding,
    report,
    sheet_finding,
    stops_build,
    usable_operations,
)
from builder.computing import compute
from builder.drawing import draw_callouts, draw_imported
from builder.errors import TextFault, UsageError
from builder.finding import Finding, Severity
from builder.geometry import GeometryFault, ShapeBook
from builder.model import (
    Linked,
    PlantModel,
    Results,
    Template,
    Values,
    fault,
    language_name,
    link,
    near,
    parse_quantity,
    route_of,
    say,
    speaking,
    tongue_of,
    translations,
)
from builder.reading import (
    DrawingFault,
    DrawingLines,
    PhotoData,
    PhotoEdit,
    Source,
    read_drawing,
    read_folder,
    read_photo,
    read_svg,
    scaled_jpeg,
)
from builder.rendering import (
    CARD_ENTRY,
    ENTRY,
    POSTER_ENTRY,
    TRAINING_ENTRY,
    PlannedFile,
    Planner,
    SheetPress,
    Tree,
    made,
    page_count,
    render_booklet,
    render_cards,
    render_sheet,
    render_template,
    render_training,
    shown_photos,
    theme_names,
    theme_of,
    version,
)
from builder.view import (
    AnyFigure,
    Photo,
    PlantViews,
    SheetView,
    operation_figures,
    part_figures,
    plant_views,
    poster_of,
    record_of,
    template_view,
    translated_views,
)
from builder.writing import Output, Written


def today_of() -> date:
    """Today, or the day of SOURCE_DATE_EPOCH, so that a check can be repeated."""
    epoch = os.environ.get("SOURCE_DATE_EPOCH", "")
    return datetime.fromtimestamp(int(epoch), UTC).date() if epoch.isdecimal() else date.today()


@dataclass(frozen=True, slots=True)
class Checked:
    """A plant folder read, linked, checked and computed.

    findings  : top-level, sorted, each with those that follow from it
    unchecked : how many operations were left out because of errors
    photos    : size and format of each picture that steps show
    """

    source: Source
    linked: Linked | None
    findings: tuple[Finding, ...]
    results: Results | None = None
    book: ShapeBook | None = None
    usable: frozenset[str] = field(default_factory=frozenset)
    unchecked: int = 0
    today: date = field(default_factory=today_of)
    photos: Mapping[str, PhotoData] = field(default_factory=dict)

    @property
    def has_errors(self) -> bool:
        """Any error that stops a build."""
        return any(stops_build(one) for one in self.findings)

    @property
    def fails(self) -> bool:
        """Any error at all, those included that a build tells on its pages."""
        return any(one.severity is Severity.error for one in self.findings)


def _photos(source: Source, model: PlantModel) -> tuple[dict[str, PhotoData], list[Finding]]:
    """Photos that steps show, opened and read to their end once each: their sizes, and what is wrong with them."""
    read: dict[str, PhotoData] = {}
    faults: dict[str, TextFault] = {}
    findings: list[Finding] = []
    for name, operation in model.operations.items():
        for number, step in enumerate(operation.steps):
            for shot in step.shots:
                photo = shot.picture.file
                if photo not in model.photos:
                    continue
                if photo not in read and photo not in faults:
                    try:
                        read[photo] = read_photo(source.folder / photo)
                        findings += cleaned_finding(model, name, number, shot, read[photo].dropped)
                    except TextFault as fault:
                        faults[photo] = fault
                if photo in faults:
                    findings.append(photo_finding(model, name, number, shot, faults[photo]))
    return read, findings


def _theme(source: Source, model: PlantModel) -> list[Finding]:
    """A theme that is nowhere, neither in the plant's folder nor in the program."""
    names = theme_names(source.folder)
    if model.plant.theme in names:
        return []
    close = near(model.plant.theme, names)
    remedy = f"Did you mean `{close[0]}`?" if close else f"Name one of: {', '.join(sorted(names))}."
    message = f"no theme is called `{model.plant.theme}`"
    return [fault("name-unknown", model.place("plant", "plant", "theme"), message, ("plant:plant",), remedy)]


def _drawings(source: Source, model: PlantModel) -> tuple[dict[str, DrawingLines], list[Finding]]:
    """The lines of each part whose outline is a drawing, and what is wrong with those that can't be read."""
    lines: dict[str, DrawingLines] = {}
    findings: list[Finding] = []
    for name, part in model.parts.items():
        typed = part.outline
        if typed is None or typed.drawing is None or typed.drawing not in model.drawings:
            continue
        try:
            lines[name] = read_drawing(source.folder / typed.drawing, typed.layer, typed.unit)
        except DrawingFault as fault:
            findings.append(drawing_finding(model, name, fault))
    return lines, findings


def _left_out(linked: Linked, usable: frozenset[str]) -> int:
    """Operations not checked to the end, those that could not be read included."""
    known = set(linked.model.operations) | {name for kind, name in linked.unusable if kind == "operation"}
    return len(known - usable)


def check_plant(folder: Path, today: date | None = None) -> Checked:
    """Reading, model, checking, computing, and the rules that ask for numbers. Raises UsageError for no folder."""
    if not folder.is_dir():
        inside = " (this is a plant's folder: name it with a dot)" if Path("plant.yaml").is_file() else ""
        raise UsageError(f"there is no folder {folder}{inside}")
    source = read_folder(folder)
    linked = link(source)
    if isinstance(linked, list):
        return Checked(source, None, tuple(report([*source.findings, *linked], None)))
    model = linked.model
    drawings, undrawn = _drawings(source, model)
    book = ShapeBook(model.parts, model.states, linked.dimensions.definitions, drawings)
    findings = [*source.findings, *linked.findings, *undrawn]
    photos, unreadable = _photos(source, model)
    findings += unreadable
    findings += _theme(source, model)
    day = today or today_of()
    sizes = {name: (data.width, data.height) for name, data in photos.items() if data.format != "SVG"}
    subject = Subject(model, linked.dimensions, book, frozenset(), day, unread=linked.unusable, photos=sizes)
    findings += check_typed(subject)
    usable = usable_operations(model, findings, linked.unusable)
    results = compute(model, linked.dimensions, book, {name: name in usable for name in model.operations})
    findings += check_results(replace(subject, usable=usable, results=results))
    shown = tuple(report(findings, model))
    return Checked(source, linked, shown, results, book, usable, _left_out(linked, usable), day, photos)


Progress = Callable[[str, int, int], None]
"""Called with the stage, the number of files done and the number of files there are."""

PHOTO_PX = 1600
"""Longest side of a photo on pages and sheets: over 200 dpi at half the width of a Letter page."""


@dataclass(frozen=True, slots=True)
class Built:
    """A finished build, or one that stopped at errors: then `written` is None and the output is as it was.

    seconds : time spent, by stage; files made from unchanged input cost nothing
    """

    checked: Checked
    written: Written | None
    seconds: dict[str, float]


def plant_views_of(checked: Checked) -> PlantViews:
    """View objects of a plant without errors."""
    if checked.linked is None or checked.results is None or checked.book is None:
        raise UsageError("this plant can't be shown")
    linked, results = checked.linked, checked.results
    sizes = {name: (data.width, data.height) for name, data in checked.photos.items()}
    with speaking(tongue_of(linked.model.plant.language)):
        return plant_views(linked.model, linked.dimensions, checked.book, results, checked.usable, version(), sizes)


def trees_of(checked: Checked) -> tuple[Tree, ...]:
    """What a plant shows in its own language, then in each other one that has a sheet to show."""
    linked, results, book = checked.linked, checked.results, checked.book
    views = plant_views_of(checked)
    assert linked is not None
    assert results is not None
    assert book is not None
    model = linked.model
    own = tongue_of(model.plant.language)
    trees = [Tree(own, language_name(own.code), views)]
    sizes = {name: (data.width, data.height) for name, data in checked.photos.items()}
    for one in translations(model):
        with speaking(one.tongue):
            said = translated_views(one, views, model, linked.dimensions, book, results, sizes)
        if said.sheets:
            trees.append(Tree(one.tongue, one.language.title, said, f"{one.code}/"))
    return tuple(trees)


def _pictures(checked: Checked) -> Callable[[Photo], bytes]:
    """What gives the bytes of a plant's picture, scaled and stripped."""

    def picture(photo: Photo) -> bytes:
        path = checked.source.folder / photo.path
        if photo.drawn:
            return draw_imported(read_svg(path).svg, photo.crop).encode()
        return scaled_jpeg(path, PHOTO_PX, PhotoEdit(photo.hidden, photo.crop))

    return picture


def planner_of(checked: Checked, trees: tuple[Tree, ...]) -> Planner:
    """Plans the output of a plant, with its theme and its photos."""
    assert checked.linked is not None

    model, own = checked.linked.model, trees[0].views.sheets
    record = record_of(model, own, {tree.tongue.code: tree.views.sheets for tree in trees[1:]}, checked.today)
    return Planner(trees, theme_of(model.plant.theme, checked.source.folder), _pictures(checked), record)


def build_plant(folder: Path, out: Path, progress: Progress | None = None) -> Built:
    """Check a plant and make its site and sheets in `out`. Raises UsageError for wrong folders."""
    started = perf_counter()
    checked = check_plant(folder)
    seconds = {"checking": perf_counter() - started}
    if checked.has_errors or checked.linked is None:
        return Built(checked, None, seconds)
    started = perf_counter()
    trees = trees_of(checked)
    seconds["views"] = perf_counter() - started
    planner = planner_of(checked, trees)
    with Output(out) as output, closing(planner):
        _make(list(planner.files()), output, seconds, progress)
        _make(list(planner.assets(output.letters)), output, seconds, None)
        crowded = [*_crowded(planner.views, output.notes, checked.linked.model)]
        written = output.finish()
    findings = tuple(sorted((*checked.findings, *crowded), key=lambda one: one.sort_key))
    return Built(replace(checked, findings=findings), written, seconds)


def _crowded(views: PlantViews, notes: Mapping[str, tuple[str, ...]], model: PlantModel) -> Iterator[Finding]:
    """Findings for sheets of too many pages, and figures that could not be drawn legibly at their printed size."""
    for sheet in views.sheets:
        for pages in notes.get(f"sheets/{sheet.stem}.pdf", ()):
            yield from sheet_finding(model, sheet.operation, pages)
        for number, step in enumerate(sheet.steps):
            for note in (one for figure in step.figures() for one in notes.get(f"figures/{figure.name}.svg", ())):
                yield figure_finding(model, sheet.operation, number, note)
            for photo in step.photos:
                for note in draw_callouts(photo).problems:
                    yield figure_finding(model, sheet.operation, number, note)


def _make(files: list[PlannedFile], output: Output, seconds: dict[str, float], progress: Progress | None) -> None:
    """Make the files that changed, and put them with those kept."""
    changed = [file for file in files if not output.keep(file.path, file.key)]
    for number, one in enumerate(made(changed), start=1):
        file = one.file
        output.put(file.path, file.key, one.data, file.letters, one.notes)
        seconds[file.stage] = seconds.get(file.stage, 0.0) + one.seconds
        if progress is not None:
            progress(file.stage, number, len(changed))


def figures_of(checked: Checked, name: str, product: str | None, size: str | None) -> list[AnyFigure]:
    """All figures of a part, a state or an operation. Raises UsageError for an unknown name, product or size.

    product, size : of a part; the part's own dimensions when left out. An operation has figures of all its sizes
    """
    assert checked.linked is not None
    assert checked.results is not None
    assert checked.book is not None
    model, dimensions = checked.linked.model, checked.linked.dimensions
    if name in model.operations:
        return list(operation_figures(model, dimensions, checked.book, checked.results, checked.usable, name))
    if name not in model.states:
        close = near(name, (*model.states, *model.operations))
        raise UsageError(f"no part or operation is called {name}{f'; did you mean {close[0]}?' if close else ''}")
    values: Values = dimensions.values
    if product is not None:
        if product not in model.products:
            raise UsageError(f"no product is called {product}; there are {', '.join(model.products)}")
        sizes = model.products[product].sizes
        if size is not None and size not in sizes:
            raise UsageError(f"{product} has no size {size}; it has {', '.join(sizes) or 'none'}")
        values = dimensions.sized(sizes[size or next(iter(sizes))]) if sizes else values
    return list(part_figures(model, dimensions, checked.book, checked.results, name, values, size or ""))


def booklet(checked: Checked, name: str, training: bool = False, duplex: bool = True) -> bytes:
    """One PDF of all sheets of a station or a product, in one compile. Raises UsageError for an unknown name.

    training : the training sheets instead. Those of a product stand in the order of its route
    duplex   : each sheet begins on the front of a leaf
    """
    views = plant_views_of(checked)
    assert checked.linked is not None
    model = checked.linked.model
    title, chosen = _of_booklet(views, model, name)
    if not chosen:
        raise UsageError(f"{name} has no sheets")
    planner = planner_of(checked, (Tree(tongue_of(model.plant.language), "", views),))
    with closing(planner), speaking(tongue_of(model.plant.language)):
        if training:
            own = {one.stem: one for one in views.training}
            sheets = [own[view.stem] for view in chosen]
            whole = say("{title}: training", title=title)
            return render_training(sheets, planner.press_of(TRAINING_ENTRY), whole, duplex=duplex)
        photos = {photo.name: planner.read_photo(photo) for view in chosen for photo in shown_photos(view)}
        return render_booklet(chosen, photos, planner.press, title, duplex=duplex)


def poster_pdf(checked: Checked, operation: str, step: str, distance: str, paper: str) -> bytes:
    """One step on one sheet. Raises UsageError for an unknown operation, step or distance, and for what doesn't fit."""
    linked, results, book = checked.linked, checked.results, checked.book
    assert linked is not None
    assert results is not None
    assert book is not None
    model = linked.model
    if operation not in model.operations:
        close = near(operation, model.operations)
        raise UsageError(f"no operation is called {operation}{f'; did you mean {close[0]}?' if close else ''}")
    steps = [one.step for one in model.operations[operation].steps]
    if step not in steps:
        raise UsageError(f"{operation} has no step {step}; it has {', '.join(steps)}")
    try:
        far = parse_quantity(distance, "length")
    except TextFault as fault:
        raise UsageError(f"--distance {distance}: {fault.message}") from fault
    sizes = {name: (data.width, data.height) for name, data in checked.photos.items()}
    language, read = tongue_of(model.plant.language), _pictures(checked)
    with speaking(language):
        view = poster_of(model, linked.dimensions, book, results, checked.usable, sizes, operation, step, far, paper)
        photos = {photo.name: read(photo) for photo in shown_photos(view)}
        theme = theme_of(model.plant.theme, checked.source.folder)
        with SheetPress(*theme.sheets, languages=(language.code,), entry=POSTER_ENTRY) as press:
            pdf = render_sheet(view, photos, press)
    if page_count(pdf) > 1:
        raise UsageError(f"step {step} doesn't fit on {paper} at {distance}: take a larger paper or a nearer reader")
    return pdf


def _of_booklet(views: PlantViews, model: PlantModel, name: str) -> tuple[str, list[SheetView]]:
    """Title and sheets of a station's or a product's booklet. Raises UsageError for an unknown name."""
    if name in model.stations:
        return model.stations[name].title, [view for view in views.sheets if view.station == name]
    if name in model.products:
        title = model.products[name].title
        order = [step.operation for step in route_of(name, model.products, model.operations)]
        mine = [view for view in views.sheets if title in view.products and view.operation in order]
        return title, sorted(mine, key=lambda view: order.index(view.operation))
    close = near(name, (*model.stations, *model.products))
    raise UsageError(f"no station or product is called {name}{f'; did you mean {close[0]}?' if close else ''}")


def cards_pdf(checked: Checked, name: str, kind: str = "") -> bytes:
    """The cards of a station in one PDF, or its card of one kind. Raises UsageError for an unknown station or card."""
    views = plant_views_of(checked)
    assert checked.linked is not None
    model = checked.linked.model
    if name not in model.stations:
        close = near(name, model.stations)
        raise UsageError(f"no station is called {name}{f'; did you mean {close[0]}?' if close else ''}")
    found = next((one for one in views.cards if one.station == name), None)
    if found is None:
        raise UsageError(f"{name} has no cards: nothing is typed of it that a card would say")
    if kind:
        chosen = tuple(card for card in found.cards if card.head.kind == kind)
        if not chosen:
            raise UsageError(f"{name} has no card {kind}; it has {', '.join(card.head.kind for card in found.cards)}")
        found = replace(found, cards=chosen)
    planner = planner_of(checked, (Tree(tongue_of(model.plant.language), "", views),))
    with closing(planner), speaking(tongue_of(model.plant.language)):
        return render_cards(found, planner.press_of(CARD_ENTRY))


def template_pdf(checked: Checked, name: str, paper: str | None, size: str | None) -> tuple[bytes, int]:
    """A declared template, or a part as one, as a PDF at true size, with the number of its sheets.

    Raises UsageError for an unknown name or size, for what has no shape to print, and for a plant without a limit.
    """
    linked, book = checked.linked, checked.book
    if linked is None or book is None:
        raise UsageError("this plant can't be shown")
    model = linked.model
    if model.plant.template_limit is None:
        raise UsageError("plant.yaml has no `template limit:`, so nobody can tell when a print is off")
    template = model.templates.get(name) or _part_template(model, name, checked)
    if size is not None:
        template = template.model_copy(update={"size": size})
    try:
        view = template_view(model, linked.dimensions, book, name, template, paper or model.plant.paper)
    except KeyError:
        raise UsageError(f"there is no size {size}, or it means different things: write PRODUCT/SIZE") from None
    except GeometryFault as fault:
        raise UsageError(fault.message) from None
    with SheetPress(*theme_of(model.plant.theme, checked.source.folder).sheets, entry=ENTRY) as press:
        return render_template(view, press), len(view.sheets)


def _part_template(model: PlantModel, name: str, checked: Checked) -> Template:
    """A part nobody declared a template of, numbered by its own name and dated by the day of the print."""
    base = model.base_of(name)
    if base is None:
        close = near(name, (*model.templates, *model.parts))
        raise UsageError(f"no template or part is called {name}{f'; did you mean {close[0]}?' if close else ''}")
    return Template(title=base.title, kind="part", of=name, number=name, date=checked.today)
