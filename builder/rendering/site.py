"""The offline site: view objects to pages, with the files the pages share. It writes nothing to disk.

Every link is relative and nothing is fetched, so the folder opens from `file://` and can be moved.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

from builder.model import isolated, say, tongue
from builder.rendering import page_data, study_data
from builder.rendering.floor_data import floor_data
from builder.rendering.page_data import Pens
from builder.rendering.site_fonts import font_files, font_paths
from builder.rendering.theme import Theme
from builder.rendering.tree import Kind, LanguageLink, View
from builder.view import (
    HomePage,
    PickPage,
    ProductPage,
    RulesPage,
    SheetView,
    SiteFrame,
    StationPage,
    StudyPage,
    TimesPage,
)

if TYPE_CHECKING:
    from jinja2 import Environment


_BETWEEN_TAGS = re.compile(r"(?<=>)[^<]+(?=<)")
BRAND_CSS = "assets/plant.css"
"""The plant's colour."""


def standard_pens() -> Pens:
    """The program's own drawings and Markdown."""
    from builder.drawing import draw_chart, draw_figure, sign_svg
    from builder.rendering.markdown import to_html

    return Pens(figure=draw_figure, sign=sign_svg, markdown=to_html, chart=lambda one: draw_chart(one).svg)


class Site:
    """A site's templates, compiled once, with what every page shares.

    theme : the theme
    pictures : whether small pictures are made as PNG; without libcairo there are none to link to
    pens  : stand-ins for the drawings, for tests; by default the program's own
    languages : codes of those the pages speak
    """

    def __init__(
        self,
        frame: SiteFrame,
        theme: Theme,
        pens: Pens | None = None,
        *,
        pictures: bool = True,
        languages: Sequence[str] = ("en",),
    ) -> None:
        self.frame = frame
        self._languages = tuple(languages)
        self._pictures = pictures
        self._assets = theme.assets()
        self.pens = _remembering(pens or standard_pens())
        self._environment = _environment(theme.site)

    def render_page(
        self, kind: Kind, view: View, folder: str = "", languages: Sequence[LanguageLink] = ()
    ) -> tuple[str, bytes]:
        """Path inside its language and content of one page. A SheetView is both an operation and a floor screen.

        folder    : the language's folder in the output, with its slash; '' for the plant's own language
        languages : the same page in every language
        Raises TypeError when the view object isn't one of this kind of page.
        """
        path, heading, data = self._prepared(kind, view)
        page = {
            "path": path,
            "root": page_data.root_of(path),  # of the pages in this language
            "top": page_data.root_of(folder + path),  # of the output, where what all languages share lies
            "heading": heading,
            "languages": languages,
            "logo": _logo_path(self.frame),
        }
        text = self._environment.get_template(f"{kind}.html").render(frame=self.frame, page=page, view=data)
        if tongue().right_to_left:
            text = _BETWEEN_TAGS.sub(lambda match: isolated(match[0]), text)
        return path, text.encode()

    def _prepared(self, kind: Kind, view: View) -> tuple[str, str, page_data.Data]:
        match kind, view:
            case "home", HomePage():
                return "index.html", view.title, page_data.home_data(view, self._pictures)
            case "pick", PickPage():
                return "floor.html", say("Floor screens"), page_data.pick_data(view)
            case "check", HomePage():
                return "check.html", say("Check a sheet's code"), {}
            case "product", ProductPage():
                return view.path, view.title, page_data.product_data(view, self.pens)
            case "station", StationPage():
                return view.path, view.title, page_data.station_data(view, self.pens)
            case "rules", RulesPage():
                return "rules.html", say("Rules"), page_data.rules_data(view)
            case "times", TimesPage():
                return "times.html", say("Times"), study_data.times_data(view, self.pens)
            case "study", StudyPage():
                heading = say("Study of {operation}", operation=view.title)
                return view.path, heading, study_data.study_data(view, self.pens)
            case "operation", SheetView():
                heading = f"{view.code} {view.title}"
                return page_data.operation_path(view), heading, page_data.operation_data(view, self.pens)
            case "floor", SheetView():
                heading = say("{code} {title}, floor screen", code=view.code, title=view.title)
                return page_data.floor_path(view), heading, floor_data(view, self.pens)
        raise TypeError(f"no {kind} page can be made of {type(view).__name__}")

    def asset_paths(self) -> list[str]:
        """Paths of the files `assets` makes, known without making them."""
        files = [f"assets/{name}" for name in self._assets]
        return [*files, BRAND_CSS, *font_paths(self._languages)]

    def assets(self, letters: Iterable[str]) -> Iterator[tuple[str, bytes]]:
        """Style sheet, script and the fonts cut down to `letters`, the characters the pages hold."""
        for name, file in self._assets.items():
            yield f"assets/{name}", file.read_bytes()
        yield BRAND_CSS, _brand_css(self.frame).encode()
        yield from font_files(letters, self._languages)


def _remembering(pens: Pens) -> Pens:
    """Pens that draw the same thing once: an operation page and its floor screen show the same figures and signs."""
    remember: Any = lru_cache(maxsize=256)
    drawn = remember(lambda figure, language: pens.figure(figure))
    return Pens(
        figure=lambda figure: drawn(figure, tongue().code),
        sign=remember(pens.sign),
        markdown=remember(pens.markdown),
        chart=pens.chart,
    )


def _logo_path(frame: SiteFrame) -> str:
    """Where the plant's logo lies in the output, '' for none."""
    return page_data.photo_path(frame.brand.logo) if frame.brand is not None and frame.brand.logo is not None else ""


def _brand_css(frame: SiteFrame) -> str:
    """The plant's colour as a variable: a page's own style attribute would be against its policy."""
    brand = frame.brand
    if brand is None or not brand.colour:
        return "/* this plant has no colour of its own */\n"
    return f":root {{ --plant: {brand.colour}; --on-plant: {brand.on_colour}; }}\n"


def _environment(folders: Sequence[Path]) -> Environment:
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    environment = Environment(
        loader=FileSystemLoader(folders),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
        auto_reload=False,
    )
    environment.globals.update(say=say, tongue=tongue)
    return environment
