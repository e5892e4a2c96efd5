"""View objects of the site's pages beside the operations' own sheets: home, product, station."""

from __future__ import annotations

from dataclasses import dataclass

from builder.view.brand import Brand
from builder.view.figure import FigureView
from builder.view.marking import shown
from builder.view.sheet import Caution, Protection


@dataclass(frozen=True, slots=True)
class Link:
    """A page of the site, by its path inside the output folder, with what it is called and said about it.

    picture : path of a small picture of it, '' for none
    """

    path: str = shown()
    title: str = shown()
    note: str = shown(default="")
    picture: str = shown(default="")


@dataclass(frozen=True, slots=True)
class RouteRow:
    """A line of a product's route. Shares are of the product's total standard minutes, 0 to 1, for the bar.

    estimated : share of this operation's own minutes that rests on estimates, 0 to 1 (hatched)
    """

    page: str = shown()
    sheet: str = shown()
    code: str = shown()
    title: str = shown()
    station: str = shown()
    quantity: str = shown()
    own: str = shown()
    machine: str = shown()
    cumulative: str = shown()
    start_share: float = shown()
    own_share: float = shown()
    estimated: float = shown()
    source: str = shown()
    figure: FigureView | None = shown(default=None)
    study: str = shown(default="")
    """Path of the page of its study, '' without one."""


@dataclass(frozen=True, slots=True)
class SourceRow:
    """What makes a product's time unsure: where it comes from, its minutes, half its own interval, its share."""

    words: str = shown()
    minutes: str = shown()
    half: str = shown()
    share: str = shown()


@dataclass(frozen=True, slots=True)
class MaterialRow:
    """What a piece takes of a material: how much, and the material's title in each colour (`same` as the first)."""

    quantity: str = shown()
    titles: tuple[str, ...] = shown()


@dataclass(frozen=True, slots=True)
class VariantView:
    """One size of a product: totals, the route with its times, and what a piece takes."""

    name: str = shown()
    anchor: str = shown()
    standard: str = shown()
    machine: str = shown()
    estimate_share: str = shown()
    pieces_an_hour: str = shown()
    rows: tuple[RouteRow, ...] = shown()
    stations: tuple[tuple[str, str, str, str, str], ...] = shown()
    """station title, labour minutes, machine minutes, pieces a shift, what holds them"""
    materials: tuple[MaterialRow, ...] = shown(default=())
    interval: str = shown(default="")
    sure: str = shown(default="")
    """how sure the interval is, and what exact estimates would take off it"""
    sources: tuple[SourceRow, ...] = shown(default=())
    following: tuple[str, ...] = shown(default=())
    newcomer: tuple[tuple[str, str, str, str], ...] = shown(default=())
    """week, pieces in it, minutes a piece, times the standard"""
    newcomer_note: str = shown(default="")


@dataclass(frozen=True, slots=True)
class ProductPage:
    path: str = shown()
    name: str = shown()
    title: str = shown()
    note: str = shown()
    variants: tuple[VariantView, ...] = shown()
    colours: tuple[str, ...] = shown(default=())
    alternative: Link | None = shown(default=None)
    """The product this one is another construction of."""
    sheets_pdf: str = shown(default="")


@dataclass(frozen=True, slots=True)
class StationPage:
    """A station: what it is, its cautions, where each setting is set and proved, its operations."""

    path: str = shown()
    name: str = shown()
    title: str = shown()
    kind: str = shown()
    facts: tuple[tuple[str, str], ...] = shown()
    cautions: tuple[Caution, ...] = shown()
    protection: tuple[Protection, ...] = shown()
    settings: tuple[tuple[str, str, str, str], ...] = shown()
    """name, limits, where it is set, how it is verified"""
    operations: tuple[Link, ...] = shown()
    start: tuple[tuple[str, str], ...] = shown(default=())
    close_down: tuple[tuple[str, str], ...] = shown(default=())
    """what is checked, and how, before the first piece and after the last of a shift"""
    tending: tuple[tuple[str, str, str, str, str], ...] = shown(default=())
    """operation, work with the machine stopped, its run, machines one person can keep running, waiting lost"""
    allowances: tuple[tuple[str, str, str], ...] = shown(default=())
    """what it is for, share of basic time, who says so; the last line is all of them"""
    allowance_note: str = shown(default="")
    cards: tuple[str, ...] = shown(default=())
    """titles of its printed cards"""


@dataclass(frozen=True, slots=True)
class RuleRow:
    """A rule of the book, as `explain` says it."""

    slug: str = shown()
    level: str = shown()
    why: str = shown()
    remedy: str = shown()
    causes: tuple[str, ...] = shown()
    bad: str = shown()
    good: str = shown()


@dataclass(frozen=True, slots=True)
class RulesPage:
    """The rule book: groups of rules by the noun they look at."""

    groups: tuple[tuple[str, tuple[RuleRow, ...]], ...] = shown()


@dataclass(frozen=True, slots=True)
class HomePage:
    title: str = shown()
    products: tuple[Link, ...] = shown()
    stations: tuple[Link, ...] = shown()
    operations: tuple[Link, ...] = shown()
    date: str = shown()


@dataclass(frozen=True, slots=True)
class SiteFrame:
    """What every page shares: the plant's name, its language, and its version."""

    plant: str = shown()
    language: str = shown()
    version: str = shown()
    brand: Brand | None = shown(default=None)
