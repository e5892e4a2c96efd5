"""Figures of a part or state by itself, as an inspector measures by it: both sides, taken apart, and its seams; and
those of one operation, which sheets.py makes.
"""

from __future__ import annotations

from collections.abc import Iterator

from builder.geometry import ShapeBook
from builder.model import (
    Dimensions,
    Operation,
    PlantModel,
    Results,
    Shown,
    Values,
    earlier_work,
    ordinary,
    say,
    turned_behind,
)
from builder.view.asking import Ask, chopped
from builder.view.detail_makers import MAKERS
from builder.view.details import DetailAsk
from builder.view.figures import Studio
from builder.view.hems import with_hems
from builder.view.panel_view import AnyFigure
from builder.view.scene import Made, Work
from builder.view.sheets import SheetMaker

SIZE_MM = (170.0, 120.0, 2.8)
"""Printed width, most height and capital height: most of the width of a page."""
_DETAIL_MM = (98.0, 62.0, 2.8)


def operation_figures(
    model: PlantModel, dimensions: Dimensions, book: ShapeBook, results: Results, usable: frozenset[str], name: str
) -> Iterator[AnyFigure]:
    """All figures of an operation's steps, in all sizes, as its sheets and pages show them."""
    for _, sheet in SheetMaker(model, dimensions, book, results, usable).sheets(name):
        for step in sheet.steps:
            yield from step.figures()


def part_figures(
    model: PlantModel,
    dimensions: Dimensions,
    book: ShapeBook,
    results: Results,
    name: str,
    values: Values,
    size: str = "",
) -> Iterator[AnyFigure]:
    """All figures of a part or state; none when its shape can't be built in this size.

    values : those of the size drawn; `size` its name, '' for the reference
    """
    shape = book.shape(name, values)
    if shape is None:
        return
    maker = SheetMaker(model, dimensions, book, results, frozenset(model.operations))
    studio = Studio(model, maker.dimensions, values, frozenset(), maker.stitches, size)
    made = earlier_work(name, model.states) | model.states[name].worked
    shape, made = with_hems(shape, model, values, made)
    turns = turned_behind(name, model.states, model.operations, own=True)
    turned = frozenset(part for part, right in turns.items() if right)
    for wrong in (False,) if chopped(shape) else (False, True):
        side = "wrong" if wrong else "right"
        yield studio.figure(
            Ask(
                f"{name}-{side}" if not chopped(shape) else name,
                (
                    say("{part}, wrong side", part=shape.part.title)
                    if wrong
                    else say("{part}, right side", part=shape.part.title)
                )
                if not chopped(shape)
                else shape.part.title,
                name,
                made,
                wrong=wrong,
                turned=turned,
                overall=not wrong,
                size=SIZE_MM,
            ),
            shape,
        )
    yield from _explained(maker, studio, name, made)


def _explained(maker: SheetMaker, studio: Studio, name: str, made: Made) -> Iterator[AnyFigure]:
    """The assembly taken apart, and section and stitch of each seam its own operation sews."""
    operation = next((one for one in ordinary(maker.model.operations).items() if name in one[1].makes), None)
    if operation is None:
        return
    work = Work(maker.model, operation[1], operation[0])
    if maker.model.parts[maker.model.states[name].base].from_:
        yield from _made(Shown("layers", name), f"{name}-layers", maker, studio, work)
    for kind in ("section", "stitch"):
        for part, feature in _sewn(operation[1], work):
            if (part, feature) in made:
                shown = Shown(kind, f"{part}/{feature}")
                yield from _made(shown, f"{name}-{kind}-{feature}", maker, studio, work)


def _sewn(operation: Operation, work: Work) -> Iterator[tuple[str, str]]:
    for step in operation.steps:
        if step.sew:
            yield from work.order(step)


def _made(shown: Shown, name: str, maker: SheetMaker, studio: Studio, work: Work) -> Iterator[AnyFigure]:
    make = MAKERS.get(shown.kind)
    if make is None:
        return
    # The last step sees all that the operation makes.
    step = next((one for one in work.operation.steps if shown.name.split("/")[-1] in one.sew), work.operation.steps[-1])
    figure = make(DetailAsk(shown, name, studio, maker.book, work, step, _DETAIL_MM))
    if figure is not None:
        yield figure
