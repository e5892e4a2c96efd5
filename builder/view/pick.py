"""The page where the floor screen of a job is picked: by station, or by product in the order of its route."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from builder.view.marking import shown
from builder.view.pages import Link, ProductPage, StationPage
from builder.view.sheet import SheetView


@dataclass(frozen=True, slots=True)
class PickGroup:
    """A station or a product, with the floor screens of its work."""

    title: str = shown()
    links: tuple[Link, ...] = shown()


@dataclass(frozen=True, slots=True)
class PickPage:
    """What there is to pick from; both ways lead to every screen that has a place in them."""

    stations: tuple[PickGroup, ...] = shown()
    products: tuple[PickGroup, ...] = shown()


def pick_page(
    sheets: Iterable[SheetView], stations: Iterable[StationPage], products: Iterable[ProductPage]
) -> PickPage:
    """The page, from the pages of stations and products, which know their work and its order."""
    by_page = {f"operations/{sheet.stem}.html": sheet for sheet in sheets}
    return PickPage(
        tuple(_groups(by_page, ((page.title, [link.path for link in page.operations]) for page in stations))),
        tuple(_groups(by_page, ((page.title, list(_route(page))) for page in products))),
    )


def _route(page: ProductPage) -> Iterator[str]:
    """Pages of its work in order, each once though several sizes have it."""
    yield from dict.fromkeys(row.page for variant in page.variants for row in variant.rows)


def _groups(by_page: dict[str, SheetView], lists: Iterable[tuple[str, list[str]]]) -> Iterator[PickGroup]:
    for title, paths in lists:
        sheets = [by_page[path] for path in paths if path in by_page]
        if sheets:
            links = (Link(f"floor/{one.stem}.html", f"{one.code} {one.title}".strip()) for one in sheets)
            yield PickGroup(title, tuple(links))
