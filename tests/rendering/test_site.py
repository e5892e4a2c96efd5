"""The site's files, made from sample view objects: what holds without a browser."""

from __future__ import annotations

import re
from dataclasses import replace
from html.parser import HTMLParser
from itertools import pairwise
from posixpath import dirname, join, normpath
from urllib.parse import unquote, urldefrag

import pytest

from builder.rendering.site import Site
from builder.view import SheetView
from tests.rendering.site_samples import (
    CROWDED,
    FRAME,
    HOME,
    PENS,
    PRODUCT,
    SHEET,
    SHEETS,
    STATION,
    THEME,
    sample_site,
)

POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; "
    "base-uri 'none'; form-action 'self'"
)
MADE_ELSEWHERE = {f"{kind}/{sheet.stem}.pdf" for sheet in SHEETS for kind in ("sheets", "training")}


class Page(HTMLParser):
    """What the tests ask of a page: its ids, its links, its elements with their attributes, its headings."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.elements: list[tuple[str, dict[str, str]]] = []
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, {name: value or "" for name, value in attrs}))

    @property
    def ids(self) -> list[str]:
        return [attributes["id"] for _, attributes in self.elements if "id" in attributes]

    @property
    def links(self) -> list[str]:
        return [attributes[key] for _, attributes in self.elements for key in ("href", "src") if key in attributes]

    @property
    def headings(self) -> list[int]:
        return [int(tag[1]) for tag, _ in self.elements if re.fullmatch("h[1-6]", tag)]


@pytest.fixture(scope="module")
def files() -> dict[str, bytes]:
    return sample_site()


@pytest.fixture(scope="module")
def pages(files: dict[str, bytes]) -> dict[str, Page]:
    return {path: Page(content.decode()) for path, content in files.items() if path.endswith(".html")}


def test_every_kind_of_page_is_there(files: dict[str, bytes]) -> None:
    wanted = {
        "index.html",
        "products/tool-roll.html",
        "stations/lockstitch.html",
        "operations/sew-handle-end.html",
        "floor/sew-handle-end.html",
        "studies/sew-handle-end.html",
        "times.html",
        "assets/site.css",
        "assets/floor.js",
        "assets/fonts/LICENSE-atkinson-hyperlegible.txt",
    }
    assert wanted <= files.keys()


def test_two_runs_give_the_same_bytes(files: dict[str, bytes]) -> None:
    assert sample_site() == files


def test_every_link_and_anchor_resolves(files: dict[str, bytes], pages: dict[str, Page]) -> None:
    for path, page in pages.items():
        for link in page.links:
            if link.startswith("data:"):
                continue
            file, anchor = urldefrag(link)
            target = normpath(join(dirname(path), unquote(file.partition("?")[0]))) if file else path
            assert target in files or target in MADE_ELSEWHERE, f"{path} links to {link}"
            if anchor:
                assert unquote(anchor) in pages[target].ids, f"{path} links to {link}"


def test_every_link_is_relative(pages: dict[str, Page]) -> None:
    for path, page in pages.items():
        for link in page.links:
            assert link == "data:," or not re.match(r"[a-z]+:|/", link), f"{path} links to {link}"


def test_every_file_the_style_sheet_names_is_there(files: dict[str, bytes]) -> None:
    named = re.findall(r'url\("([^"]+)"\)', files["assets/letters.css"].decode())
    assert len(named) == 2
    assert {normpath(join("assets", name)) for name in named} <= files.keys()


def test_every_page_carries_exactly_the_content_policy(pages: dict[str, Page]) -> None:
    for path, page in pages.items():
        policies = [a["content"] for tag, a in page.elements if a.get("http-equiv") == "Content-Security-Policy"]
        assert policies == [POLICY], path


def test_no_page_has_inline_style_script_or_event_attributes(pages: dict[str, Page]) -> None:
    for path, page in pages.items():
        for tag, attributes in page.elements:
            assert tag != "style", path
            assert tag != "script" or "src" in attributes, path
            assert not [name for name in attributes if name == "style" or name.startswith("on")], (path, tag)


def test_ids_are_unique_on_each_page(pages: dict[str, Page]) -> None:
    for path, page in pages.items():
        assert len(page.ids) == len(set(page.ids)), path


def test_headings_start_at_one_and_skip_no_level(pages: dict[str, Page]) -> None:
    for path, page in pages.items():
        assert page.headings[0] == 1, path
        assert page.headings.count(1) == 1, path
        for above, below in pairwise(page.headings):
            assert below <= above + 1, path


def test_every_page_has_language_title_main_and_header(pages: dict[str, Page]) -> None:
    titles = set()
    for path, page in pages.items():
        tags = [tag for tag, _ in page.elements]
        assert page.elements[0] == ("html", {"lang": "en", "dir": "ltr"}), path
        assert (tags.count("main"), tags.count("header"), "nav" in tags) == (1, 1, True), path
    for content in (content for path, content in sample_site().items() if path.endswith(".html")):
        titles.add(re.search("<title>(.*?)</title>", content.decode(), re.DOTALL).group(1))  # type: ignore[union-attr]
    assert len(titles) == len(pages)


def test_words_of_the_plant_are_escaped() -> None:
    sheet = replace(SHEET, title="<script>alert(1)</script>", steps=(replace(SHEET.steps[0], do="Sew <b>&</b> stop"),))
    for kind in ("operation", "floor"):
        _, content = Site(FRAME, THEME, PENS).render_page(kind, sheet)
        assert b"<script>alert" not in content
        assert b"Sew &lt;b&gt;&amp;&lt;/b&gt; stop" in content


def _screens(sheet: SheetView) -> list[str]:
    _, content = Site(FRAME, THEME, PENS).render_page("floor", sheet)
    return content.decode().split("<section ")[1:]


def test_the_floor_screen_says_every_caution_on_every_screen() -> None:
    screens = _screens(SHEET)
    assert len(screens) == len(SHEET.steps) + 3
    for screen in screens:
        for caution in SHEET.cautions:
            assert f">{caution.signal}</strong> {caution.text}" in screen
        for guard in SHEET.protection:
            assert guard.text in screen
        assert "Letter size not calibrated to this screen" in screen


def test_many_cautions_are_said_in_full_once_and_named_on_every_screen() -> None:
    first, *others = _screens(CROWDED)
    for caution in CROWDED.cautions:
        assert f">{caution.signal}</strong> {caution.text}" in first
    for screen in others:
        for caution in CROWDED.cautions:
            assert f">{caution.signal}</strong> {caution.hazard}" in screen
        for guard in CROWDED.protection:
            assert guard.name in screen
    assert len(others) == len(CROWDED.steps) + 2


def test_a_sheet_without_settings_starts_at_its_first_step() -> None:
    sheet = replace(SHEET, settings=(), sizes=(), notices=())
    _, content = Site(FRAME, THEME, PENS).render_page("floor", sheet)
    assert re.findall(r'<section class="[^"]*" id="([^"]+)"', content.decode())[0] == "step-lay"


def test_a_caution_without_a_sign_takes_the_general_warning_sign() -> None:
    drawn: list[str] = []
    pens = replace(PENS, sign=lambda code, size: drawn.append(code) or "<svg></svg>")  # type: ignore[func-returns-value]
    sheet = replace(SHEET, cautions=(replace(SHEET.cautions[0], sign=""),), protection=())
    Site(FRAME, THEME, pens).render_page("operation", sheet)
    assert drawn == ["W001"]


def test_the_operation_page_says_all_the_sheet_says() -> None:
    _, content = Site(FRAME, THEME, PENS).render_page("operation", SHEET)
    text = content.decode()
    said = [SHEET.code, SHEET.title, SHEET.tag, SHEET.station_title, *SHEET.products, *SHEET.notices, *SHEET.incoming]
    said += [*SHEET.outgoing, SHEET.revision, SHEET.date, *SHEET.recorded_by, SHEET.pieces_an_hour, SHEET.bundle]
    for item in SHEET.settings:
        said += [item.name, item.value, item.other, item.set_at, item.verify]
    for measure in SHEET.measures:
        said += [measure.what, measure.value, measure.other, measure.gauge, measure.plan]
    for fault in SHEET.faults:
        said += [fault.sign, fault.grade, fault.cause, fault.remedy, fault.stop]
    for row in SHEET.sizes:
        said += [row.size, *row.values]
    said += [step.why for step in SHEET.steps]
    assert [words for words in said if words.replace("'", "&#39;") not in text] == []


def test_a_page_of_the_wrong_kind_is_refused() -> None:
    with pytest.raises(TypeError, match="no floor page can be made of HomePage"):
        Site(FRAME, THEME, PENS).render_page("floor", HOME)


def test_rendering_one_page_gives_the_bytes_of_the_whole_site(files: dict[str, bytes]) -> None:
    site = Site(FRAME, THEME, PENS)
    for kind, view in (("home", HOME), ("product", PRODUCT), ("station", STATION), ("floor", SHEET)):
        path, content = site.render_page(kind, view)  # type: ignore[arg-type]
        assert files[path] == content


def test_the_shared_files_are_known_before_they_are_made() -> None:
    site = Site(FRAME, THEME, PENS)
    assert site.asset_paths() == [path for path, _ in site.assets("")]
