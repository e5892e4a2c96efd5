"""All view objects of a plant, in one call."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from builder.geometry import ShapeBook
from builder.model import Dimensions, PlantModel, Results
from builder.view.card_maker import CardMaker
from builder.view.cards import StationCards
from builder.view.pages import HomePage, ProductPage, RulesPage, SiteFrame, StationPage
from builder.view.product_pages import ProductMaker
from builder.view.sheet import SheetView
from builder.view.sheets import SheetMaker
from builder.view.site_pages import PageMaker
from builder.view.study_page import StudyPage, TimesPage
from builder.view.study_pages import study_pages, times_page
from builder.view.template import TemplateView
from builder.view.templates import TemplateMaker
from builder.view.training import TrainingView
from builder.view.training_maker import TrainingMaker


@dataclass(frozen=True, slots=True)
class PlantViews:
    """What every sheet and page of a plant says."""

    frame: SiteFrame
    home: HomePage
    products: tuple[ProductPage, ...]
    stations: tuple[StationPage, ...]
    rules: RulesPage
    sheets: tuple[SheetView, ...]
    studies: tuple[StudyPage, ...]
    times: TimesPage
    templates: tuple[TemplateView, ...] = ()
    training: tuple[TrainingView, ...] = ()
    cards: tuple[StationCards, ...] = ()


def plant_views(
    model: PlantModel,
    dimensions: Dimensions,
    book: ShapeBook,
    results: Results,
    usable: frozenset[str],
    version: str,
    photo_sizes: Mapping[str, tuple[int, int]] | None = None,
) -> PlantViews:
    """Everything a build shows. `version` is the program's own, printed at the foot of pages.

    photo_sizes : width and height of each photo as it is seen [px]
    """
    sheets = list(SheetMaker(model, dimensions, book, results, usable, photo_sizes or {}).sheets())
    pages = PageMaker(model, results, sheets)
    links = {group.operation: f"operations/{view.stem}.html" for group, view in reversed(sheets)}
    links = {name: links[name] for name in model.operations if name in links}
    studies = tuple(study_pages(model, results, links))
    dates = [view.date for _, view in sheets if view.date]
    return PlantViews(
        frame=pages.frame(version),
        home=pages.home(max(dates, default="")),
        products=tuple(ProductMaker(model, results, sheets).products()),
        stations=tuple(pages.stations()),
        rules=pages.rules(),
        sheets=tuple(view for _, view in sheets),
        studies=studies,
        times=times_page(studies, results, model, links),
        templates=tuple(TemplateMaker(model, dimensions, book).templates()),
        training=tuple(TrainingMaker(model, results).sheets(sheets)),
        cards=tuple(CardMaker(model, [view for _, view in sheets]).stations()),
    )
