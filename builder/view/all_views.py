"""All view objects of a plant, in one call."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from builder.geometry import ShapeBook
from builder.model import Dimensions, PlantModel, Results, Translation, route_of
from builder.view.card_maker import CardMaker
from builder.view.cards import StationCards
from builder.view.pages import HomePage, ProductPage, RulesPage, SiteFrame, StationPage
from builder.view.product_pages import ProductMaker
from builder.view.sheet import SheetView
from builder.view.sheets import SheetMaker
from builder.view.signed import signed_as
from builder.view.site_pages import PageMaker
from builder.view.study_page import StudyPage, TimesPage
from builder.view.study_pages import study_pages, times_page
from builder.view.template import TemplateView
from builder.view.templates import TemplateMaker
from builder.view.training import TrainingView
from builder.view.training_maker import TrainingMaker


@dataclass(frozen=True, slots=True)
class PlantViews:
    """What every sheet and page of a plant says, in one language.

    rules, studies, times, templates : the engineer's own, which are in the plant's language only
    """

    frame: SiteFrame
    home: HomePage
    products: tuple[ProductPage, ...]
    stations: tuple[StationPage, ...]
    sheets: tuple[SheetView, ...]
    rules: RulesPage | None = None
    studies: tuple[StudyPage, ...] = ()
    times: TimesPage | None = None
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
    cards = tuple(CardMaker(model, [view for _, view in sheets]).stations())
    return PlantViews(
        frame=pages.frame(version),
        home=pages.home(max(dates, default="")),
        products=tuple(ProductMaker(model, results, sheets).products()),
        stations=tuple(_with_cards(pages.stations(), cards)),
        sheets=tuple(view for _, view in sheets),
        rules=pages.rules(),
        studies=studies,
        times=times_page(studies, results, model, links),
        templates=tuple(TemplateMaker(model, dimensions, book).templates()),
        training=tuple(TrainingMaker(model, results).sheets(sheets)),
        cards=cards,
    )


def translated_views(
    translation: Translation,
    source: PlantViews,
    model: PlantModel,
    dimensions: Dimensions,
    book: ShapeBook,
    results: Results,
    photo_sizes: Mapping[str, tuple[int, int]] | None = None,
) -> PlantViews:
    """Everything a build shows in another language: work whose every text is said in it, and what lists that work.

    source : the plant's own views; a sheet keeps the fingerprint of its original
    Say it while `translation.tongue` is spoken.
    """
    originals = {view.stem: view for view in source.sheets}
    complete = translation.complete(model, {view.operation for view in source.sheets})
    own = translation.model(model)
    made = SheetMaker(own, dimensions, book, results, complete, photo_sizes or {}).sheets()
    sheets = [(group, signed_as(view, originals[view.stem], translation)) for group, view in made]
    products = ProductMaker(own, results, sheets)
    shown = [page for page in products.products() if _whole(page.name, complete, translation, own)]
    names = {page.name for page in shown}
    pages = PageMaker(own, results, sheets)
    stations = [page for page in pages.stations() if page.operations]
    dates = [view.date for _, view in sheets if view.date]
    cards = tuple(CardMaker(own, [view for _, view in sheets], _whole_stations(complete, own)).stations())
    return PlantViews(
        frame=source.frame,
        home=pages.home(max(dates, default=""), names, {page.name for page in stations}),
        products=tuple(_without_studies(page, names) for page in shown),
        stations=tuple(_with_cards(stations, cards)),
        sheets=tuple(view for _, view in sheets),
        training=tuple(TrainingMaker(own, results).sheets(sheets)),
        cards=cards,
    )


def _with_cards(pages: Iterable[StationPage], cards: Iterable[StationCards]) -> Iterator[StationPage]:
    """Station pages that name the cards printed for them."""
    titles = {one.station: tuple(card.head.title for card in one.cards) for one in cards}
    yield from (replace(page, cards=titles.get(page.name, ())) for page in pages)


def _whole_stations(complete: Collection[str], model: PlantModel) -> frozenset[str]:
    """Stations all of whose operations can be said in a language."""
    used = {one.station for one in model.operations.values()}
    return frozenset(used - {one.station for name, one in model.operations.items() if name not in complete})


def _whole(product: str, complete: Collection[str], translation: Translation, model: PlantModel) -> bool:
    """Whether a product's page can be said in a language: its own words, and all work on its route."""
    if ("product", product) in translation.lacking:
        return False
    return all(step.operation in complete for step in route_of(product, model.products, model.operations))


def _without_studies(page: ProductPage, names: Collection[str]) -> ProductPage:
    """Without links to pages that are there in the plant's language only."""
    variants = tuple(
        replace(variant, rows=tuple(replace(row, study="") for row in variant.rows)) for variant in page.variants
    )
    other = page.alternative
    there = other is not None and any(other.path == f"products/{name}.html" for name in names)
    return replace(page, variants=variants, alternative=other if there else None)
