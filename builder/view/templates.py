"""Makes the view objects of templates: what is printed of a part, a row or a tolerance, and on which sheets."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from builder.geometry import OVERLAP_MM, Outline, ShapeBook, Tiling, fewest_sheets
from builder.model import (
    Dimensions,
    PlantModel,
    Quantity,
    Template,
    show_number,
    show_quantity,
    sized_values,
)
from builder.view.fingerprint import controlled_facts, method_hash, tag_of
from builder.view.template import PAPERS, PaperFrame, SheetJoint, TemplateSheet, TemplateView
from builder.view.template_body import gauge_body, marking_body, part_body, turned
from builder.view.template_use import cut_words, state_of

MARGIN_MM = 3.5
"""Clear space kept about what is cut, inside the windows."""
_BODIES = {"part": part_body, "marking": marking_body, "gauge": gauge_body}
_GRAINS = {"up": "grain up", "across": "grain across"}


@dataclass(frozen=True, slots=True)
class TemplateMaker:
    """Makes templates of one plant without errors."""

    model: PlantModel
    dimensions: Dimensions
    book: ShapeBook

    def templates(self) -> Iterator[TemplateView]:
        """All declared ones, on the plant's paper."""
        frame = PAPERS[self.model.plant.paper.removesuffix(" landscape")]
        for name, template in self.model.templates.items():
            yield self.view(name, template, frame)

    def view(self, name: str, template: Template, frame: PaperFrame) -> TemplateView:
        """A template on a paper. Raises KeyError for an unknown size, GeometryFault for what can't be drawn."""
        values = sized_values(template.size, self.model.products, self.dimensions)
        body = _BODIES[template.kind](template, self.model, self.dimensions, self.book, values)
        wide, tall = frame.window
        turn, tiling = fewest_sheets([body.outline], wide, tall, overlap_mm=OVERLAP_MM, margin_mm=MARGIN_MM)
        body = turned(body, turn)
        tag_and_date = (template.number, f"revision {template.revision}")
        size = template.size.rpartition("/")[2] if template.size else ""
        about = (*body.about, *tag_and_date[1:], *((f"size {size}",) if size else ()), *self._goods(template))
        view = TemplateView(
            name=name,
            kind=template.kind,
            of=template.of,
            facts=body.facts,
            title=template.title,
            number=template.number,
            revision=template.revision,
            size=size,
            about=about,
            label=_label(template, size, self._goods(template)),
            date=template.date.isoformat(),
            plant=self.model.plant.plant,
            language=self.model.plant.language,
            state=state_of(template, self.model),
            record=self._record(template),
            limit=self._limit(),
            reach=self._reach(body.outline),
            joined=tuple(self._joined(tiling)),
            frame=frame,
            columns=tiling.columns,
            rows=tiling.rows,
            sheets=tuple(_sheets(tiling, body.outline)),
            lines=body.lines,
            outline=body.outline.segments if template.kind != "gauge" else (),
            words=body.words,
            dimensions=body.dimensions,
            grain=body.grain,
        )
        fingerprint = method_hash(controlled_facts(view))
        return replace(view, fingerprint=fingerprint, tag=tag_of(fingerprint))

    def _goods(self, template: Template) -> tuple[str, ...]:
        """Material, how many, grain and card: what is asked of the goods."""
        card = (f"card {show_quantity(template.card, self.model.plant.units)}",) if template.card is not None else ()
        if template.kind != "part":
            return card
        material = self.model.materials.get(self.model.material_of(template.of) or "")
        base = self.model.base_of(template.of)
        said = (
            material.title if material is not None else "",
            cut_words(template.of, self.model),
            _GRAINS.get(base.grain, "") if base is not None else "",
        )
        return (*filter(None, said), *card)

    def _limit(self) -> str:
        limit = self.model.plant.template_limit
        return show_quantity(limit, self.model.plant.units, both=False) if limit is not None else ""

    def _reach(self, outline: Outline) -> str:
        """What the limit comes to on the longest side: a printer's fault grows with the length."""
        limit = self.model.plant.template_limit
        left, bottom, right, top = outline.bounds()
        longest = max(right - left, top - bottom)
        if limit is None or longest < 150:
            return ""
        off = show_number(longest / 100 * float(limit.value), 1)
        return f"At that limit {show_number(longest, 0)} mm here is {off} mm off."

    def _record(self, template: Template) -> str:
        record = template.record()
        if record is None:
            return ""
        first = self.model.plant.units
        sides = " and ".join(
            f"{show_quantity(side, first, both=False)} {way}"
            for side, way in ((record.across, "across"), (record.along, "along"))
        )
        return f"Copy measured {record.date.isoformat()}: {sides}, by {record.by}."

    def _joined(self, tiling: Tiling) -> Iterator[str]:
        for axis, way in ((0, "across"), (1, "up")):
            span = tiling.longest(axis)
            if span is not None:
                apart = Fraction(round((span[1][axis] - span[0][axis]) * 10), 10)
                yield f"{show_quantity(Quantity.of(apart, 'length'), self.model.plant.units)} {way}"


def template_view(
    model: PlantModel, dimensions: Dimensions, book: ShapeBook, name: str, template: Template, paper: str
) -> TemplateView:
    """One template on a paper. Raises KeyError for an unknown size, GeometryFault for what can't be drawn."""
    return TemplateMaker(model, dimensions, book).view(name, template, PAPERS[paper])


def _label(template: Template, size: str, goods: tuple[str, ...]) -> tuple[str, ...]:
    """What stands on the piece itself, so that it is known when the paper about it is gone; the first line is bold."""
    second = f"revision {template.revision}" + (f" · size {size}" if size else "")
    return (f"{template.number}  {template.title}", second, *goods)


def _sheets(tiling: Tiling, outline: Outline) -> Iterator[TemplateSheet]:
    for tile in tiling.tiles:
        joints = tuple(
            SheetJoint(
                one.letter, one.second if one.first == tile.number else one.first, one.line, one.second == tile.number
            )
            for one in tiling.joints_of(tile)
        )
        window = tile.window
        if len(tiling.tiles) == 1:
            # In the upper left corner, so that the check square finds a place of its own beside or below it.
            left, _, _, top = outline.bounds()
            x, y = left - MARGIN_MM - window[0], top + MARGIN_MM - window[3]
            window = (window[0] + x, window[1] + y, window[2] + x, window[3] + y)
        yield TemplateSheet(tile.number, tile.column, tile.row, window, joints, tiling.crosses_of(tile))
