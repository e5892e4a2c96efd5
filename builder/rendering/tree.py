"""The pages of one language: where they lie in the output, and which there are.

The plant's own language lies at the top, every other one in a folder named by its code, with the same paths inside.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Literal

from builder.model import Tongue
from builder.view import (
    HomePage,
    PickPage,
    PlantViews,
    ProductPage,
    RulesPage,
    SheetView,
    StationPage,
    StudyPage,
    TimesPage,
    pick_page,
)

Kind = Literal["home", "product", "station", "rules", "times", "study", "operation", "floor", "pick", "check"]
View = HomePage | ProductPage | StationPage | RulesPage | TimesPage | StudyPage | SheetView | PickPage


@dataclass(frozen=True)
class Tree:
    """What is said in one language.

    title  : what the language calls itself, for the switch
    folder : where its pages lie, with a closing slash; '' for the plant's own language
    """

    tongue: Tongue
    title: str
    views: PlantViews
    folder: str = ""

    @cached_property
    def pages(self) -> tuple[tuple[Kind, View, str], ...]:
        """Every page, with its path inside the language."""
        return tuple(self._pages())

    @cached_property
    def paths(self) -> frozenset[str]:
        """The paths of its pages."""
        return frozenset(path for _, _, path in self.pages)

    def _pages(self) -> Iterator[tuple[Kind, View, str]]:
        views = self.views
        yield "home", views.home, "index.html"
        yield "pick", pick_page(views.sheets, views.stations, views.products), "floor.html"
        yield "check", views.home, "check.html"
        yield from (("product", one, one.path) for one in views.products)
        yield from (("station", one, one.path) for one in views.stations)
        if views.rules is not None:
            yield "rules", views.rules, "rules.html"
        if views.times is not None:
            yield "times", views.times, "times.html"
        yield from (("study", one, one.path) for one in views.studies)
        yield from (("operation", one, f"operations/{one.stem}.html") for one in views.sheets)
        yield from (("floor", one, f"floor/{one.stem}.html") for one in views.sheets)


@dataclass(frozen=True, slots=True)
class LanguageLink:
    """The same page in another language: its code, what it calls itself, the way there, and whether it is this one."""

    code: str
    name: str
    path: str
    current: bool


def language_links(trees: tuple[Tree, ...], here: Tree, path: str) -> tuple[LanguageLink, ...]:
    """A page in every language there is, the way relative to `path` inside its language.

    Where a language lacks the page the link leads to its first page. () for a plant of one language.
    """
    if len(trees) < 2:
        return ()
    up = "../" * (path.count("/") + (1 if here.folder else 0))
    return tuple(
        LanguageLink(
            tree.tongue.code,
            tree.title,
            f"{up}{tree.folder}{path if path in tree.paths else 'index.html'}",
            tree is here,
        )
        for tree in trees
    )
