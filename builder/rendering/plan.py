"""What a build consists of: every file with the hash of what it is made from, and how to make it when that changed."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import cache, partial
from importlib import metadata
from pathlib import Path

from builder.drawing import draw, draw_figure, outlined, png_of, raster_available
from builder.model import speaking
from builder.rendering.card_data import CARD_ENTRY, render_cards
from builder.rendering.page_data import photo_path, training_path
from builder.rendering.record_data import RECORD, record_script
from builder.rendering.search_index import FOLD, fold_script, index_path, search_index
from builder.rendering.sheet import SheetPress, page_count, render_sheet, shown_photos
from builder.rendering.site import Site
from builder.rendering.template import ENTRY, render_template
from builder.rendering.theme import Theme
from builder.rendering.training_sheet import TRAINING_ENTRY, render_training
from builder.rendering.tree import Kind, LanguageLink, Tree, View, language_links
from builder.view import (
    AnyFigure,
    Photo,
    PlantViews,
    Record,
    SheetView,
    StationCards,
    TemplateView,
    TrainingView,
    entries_with_originals,
    output_hash,
    search_entries,
)

_LIBRARIES = (
    "typst",
    "jinja2",
    "markdown-it-py",
    "fonttools",
    "fontpkg-atkinson-hyperlegible",
    "fontpkg-be-vietnam-pro",
    "uharfbuzz",
    "segno",
    "pillow",
    "cairosvg",
)
THUMBNAIL_PX = 320
MOST_PAGES = 4
"""Of a sheet, before a build says that it is long."""


@dataclass(frozen=True, slots=True)
class PlannedFile:
    """A file of the output.

    stage : the kind of work, for progress and the bench
    group : files of one group share drawings, so one process should make them
    notes : what could not be shown well, asked for after `make` and kept with the file for the next builds
    """

    path: str
    key: str
    make: Callable[[], bytes]
    stage: str
    letters: bool = False
    notes: Callable[[], tuple[str, ...]] = tuple
    group: str = ""


def version() -> str:
    """The program's own version, read from its installation."""
    try:
        return metadata.version("seamboard")
    except metadata.PackageNotFoundError:
        return "0"


@cache
def code_hash() -> str:
    """Hash of the program itself and its libraries' versions: a new release renders everything again."""
    found = hashlib.sha256()
    package = Path(__file__).resolve().parent.parent
    for file in sorted((*package.rglob("*.py"), *(package / "model" / "tongues").glob("*.yaml"))):
        found.update(file.read_bytes())
    for library in _LIBRARIES:
        try:
            found.update(f"{library} {metadata.version(library)}".encode())
        except metadata.PackageNotFoundError:
            found.update(f"{library} missing".encode())
    return found.hexdigest()


@dataclass(slots=True)
class Planner:
    """Plans the files of one plant. `read_photo` gives a picture's bytes, scaled and stripped.

    trees : the plant's own language first, then the others
    record : which code each sheet has, for who scans a paper
    Holds the templates, the sheet press and the theme's hash, which are made on first use and shared by all files.
    """

    trees: tuple[Tree, ...]
    theme: Theme
    read_photo: Callable[[Photo], bytes]
    record: Record | None = None
    _site: Site | None = None
    _press: SheetPress | None = None
    _template_press: SheetPress | None = None
    _other_presses: dict[str, SheetPress] = field(default_factory=dict)
    _theme_hash: str = ""
    _page_counts: dict[str, int] = field(default_factory=dict)

    @property
    def languages(self) -> tuple[str, ...]:
        """Codes of the languages spoken."""
        return tuple(tree.tongue.code for tree in self.trees)

    @property
    def views(self) -> PlantViews:
        """What the plant says in its own language."""
        return self.trees[0].views

    def files(self) -> Iterator[PlannedFile]:
        """All files but the shared assets, which need to know the letters of the pages first.

        A language after the other, figures first, so that pages and sheets find them drawn.
        """
        yield from self._spoken(self.trees[0], self._figures())
        for tree in self.trees:
            yield from self._spoken(tree, self._pages(tree))
            yield from self._spoken(tree, self._sheets(tree))
            yield from self._spoken(tree, self._beside(tree))
        yield from self._spoken(self.trees[0], self._templates())
        yield from self._search()
        if self.record is not None:
            key = output_hash(self.record, "record", "", "", "", code_hash())
            yield PlannedFile(RECORD, key, partial(record_script, self.record), "pages")
        for photo in self._photos().values():
            yield PlannedFile(
                photo_path(photo), f"photo {photo.name} {code_hash()}", partial(self.read_photo, photo), "photos"
            )
        yield from self._thumbnails()

    def _spoken(self, tree: Tree, files: Iterator[PlannedFile]) -> Iterator[PlannedFile]:
        """Files that are made while the language is spoken, under its folder."""

        def said(make: Callable[[], bytes]) -> bytes:
            with speaking(tree.tongue):
                return make()

        for file in files:
            group = tree.folder + (file.group or file.path)
            yield replace(file, path=tree.folder + file.path, make=partial(said, file.make), group=group)

    def _sheets(self, tree: Tree) -> Iterator[PlannedFile]:
        for sheet in tree.views.sheets:
            make = partial(self._sheet, sheet)
            path, key = f"sheets/{sheet.stem}.pdf", self._key(sheet, "sheet")
            notes = partial(self._long, sheet.stem) if tree is self.trees[0] else tuple
            yield PlannedFile(path, key, make, "sheets", notes=notes, group=sheet.stem)

    def _beside(self, tree: Tree) -> Iterator[PlannedFile]:
        """What is printed beside the sheets: training sheets, and the cards of each station."""
        for one in tree.views.training:
            make = partial(self._training, one)
            path, key = training_path(one.sheet), self._key(one, "training")
            yield PlannedFile(path, key, make, "training", group=one.sheet.stem)
        for cards in tree.views.cards:
            yield PlannedFile(
                f"cards/{cards.station}.pdf", self._key(cards, "cards"), partial(self._cards, cards), "cards"
            )

    def _search(self) -> Iterator[PlannedFile]:
        """The search of each language: its own pages, and those of the plant's own language that it lacks."""
        own = self.trees[0]
        with speaking(own.tongue):
            originals = search_entries(own.views)
        for tree in self.trees:
            with speaking(tree.tongue):
                entries = search_entries(tree.views) if tree is not own else originals
            if tree is not own:
                entries = entries_with_originals(entries, originals, "../", own.tongue.code)
            key = output_hash(entries, "search", code_hash())
            yield PlannedFile(index_path(tree.tongue.code), key, partial(search_index, entries), "search")
        yield PlannedFile(FOLD, f"fold {code_hash()}", fold_script, "search")

    def _templates(self) -> Iterator[PlannedFile]:
        for template in self.views.templates:
            if template.usable:
                make = partial(self._template, template)
                yield PlannedFile(f"templates/{template.name}.pdf", self._key(template, "template"), make, "templates")

    def assets(self, letters: str) -> Iterator[PlannedFile]:
        """Style sheet, script and fonts cut down to the letters the pages show."""
        key = f"{self.theme_hash} {code_hash()} {hashlib.sha256(letters.encode()).hexdigest()}"
        made: dict[str, bytes] = {}

        def content(path: str) -> bytes:
            if not made:
                made.update(self.site.assets(letters))
            return made[path]

        for path in self.site.asset_paths():
            yield PlannedFile(path, key, partial(content, path), "pages")

    def close(self) -> None:
        """Take down the presses."""
        for press in (self._press, self._template_press, *self._other_presses.values()):
            if press is not None:
                press.close()

    @property
    def site(self) -> Site:
        """The site's templates, compiled on first use."""
        if self._site is None:
            self._site = Site(self.views.frame, self.theme, pictures=raster_available(), languages=self.languages)
        return self._site

    @property
    def press(self) -> SheetPress:
        """The sheet press, made on first use."""
        if self._press is None:
            self._press = SheetPress(*self.theme.sheets, languages=self.languages)
        return self._press

    def press_of(self, entry: str) -> SheetPress:
        """The press of another entry file of the theme's sheets, made on first use."""
        if entry not in self._other_presses:
            self._other_presses[entry] = SheetPress(*self.theme.sheets, languages=self.languages, entry=entry)
        return self._other_presses[entry]

    @property
    def theme_hash(self) -> str:
        """The hash of the theme as it is now; a theme saved while watching is another one in the next build."""
        if not self._theme_hash:
            self._theme_hash = self.theme.digest()
        return self._theme_hash

    def _key(self, view: object, kind: str) -> str:
        pictures = str(raster_available()) if kind == "home" else ""
        return output_hash(view, kind, pictures, repr(self.views.frame), self.theme_hash, code_hash())

    def _figures(self) -> Iterator[PlannedFile]:
        """Every step's figure as a drawing of its own. Drawn first, so that pages and sheets find it drawn."""
        for sheet in self.views.sheets:
            for step in sheet.steps:
                for figure in step.figures():
                    path = f"figures/{figure.name}.svg"
                    key = self._key(figure, "figure")
                    make, notes = partial(_svg, figure), partial(_problems, figure)
                    yield PlannedFile(path, key, make, "drawing", notes=notes, group=sheet.stem)

    def _pages(self, tree: Tree) -> Iterator[PlannedFile]:
        for kind, view, path in tree.pages:
            links = language_links(self.trees, tree, path)
            key = self._key((view, links), kind)
            make = partial(self._page, kind, view, tree.folder, links)
            group = view.stem if isinstance(view, SheetView) else ""
            yield PlannedFile(path, key, make, "pages", letters=True, group=group)

    def _page(self, kind: Kind, view: View, folder: str, links: tuple[LanguageLink, ...]) -> bytes:
        return self.site.render_page(kind, view, folder, links)[1]

    def _sheet(self, sheet: SheetView) -> bytes:
        photos = {photo.name: self.read_photo(photo) for photo in _photos_of(sheet).values()}
        pdf = render_sheet(sheet, photos, self.press)
        self._page_counts[sheet.stem] = page_count(pdf)
        return pdf

    def _long(self, stem: str) -> tuple[str, ...]:
        """How many pages a sheet has, where they are more than can be used at work."""
        count = self._page_counts.get(stem, 0)
        return (str(count),) if count > MOST_PAGES else ()

    def _training(self, view: TrainingView) -> bytes:
        return render_training([view], self.press_of(TRAINING_ENTRY))

    def _cards(self, view: StationCards) -> bytes:
        return render_cards(view, self.press_of(CARD_ENTRY))

    def _template(self, template: TemplateView) -> bytes:
        if self._template_press is None:
            self._template_press = SheetPress(*self.theme.sheets, languages=self.languages, entry=ENTRY)
        return render_template(template, self._template_press)

    def _photos(self) -> Mapping[str, Photo]:
        return {digest: photo for sheet in self.views.sheets for digest, photo in _photos_of(sheet).items()}

    def _thumbnails(self) -> Iterator[PlannedFile]:
        if not raster_available():
            return
        for sheet in self.views.sheets:
            picture = sheet.picture
            if picture is not None:
                make = partial(lambda figure: png_of(draw_figure(figure), THUMBNAIL_PX), picture)
                yield PlannedFile(f"pictures/{sheet.stem}.png", self._key(picture, "png"), make, "drawing")


def _svg(figure: AnyFigure) -> bytes:
    return outlined(draw(figure).svg).encode()  # standing alone it can't count on our font


def _problems(figure: AnyFigure) -> tuple[str, ...]:
    return draw(figure).problems


def _photos_of(sheet: SheetView) -> dict[str, Photo]:
    return {photo.name: photo for photo in shown_photos(sheet)}
