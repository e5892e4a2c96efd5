"""Every drawn figure in Chromium: no text on another, none outside, none too small or too faint."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from builder.pipeline import check_plant, plant_views_of
from builder.view import AnyFigure
from tests.drawing.gallery import gallery
from tests.pages.conftest import DEMO
from tests.pages.figure_page import CHECKER, LEAST_CAPITAL_MM, figure_page

OUT = Path(__file__).resolve().parents[1] / "_out"

# What each wrong figure must be caught at; the last is right.
_WORSE = {
    "overlap": '<text x="10" y="20" font-size="5">one text</text><text x="22" y="21" font-size="5">another</text>',
    "outside": '<text x="80" y="20" font-size="5">over the edge</text>',
    "small": '<text x="10" y="20" font-size="2.4">fine print</text>',
    "faint": '<rect x="8" y="10" width="40" height="14" fill="#555"/><text x="10" y="20" font-size="5">on dark</text>',
}


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """A wide, empty page."""
    page = browser.new_page(viewport={"width": 1400, "height": 1000})
    yield page
    page.close()


def _checked(page: Page, html: str, selector: str = "svg") -> dict[str, object]:
    page.set_content(html)
    page.add_script_tag(content=CHECKER.read_text(encoding="utf-8"))
    answer: dict[str, object] = page.evaluate(
        "([selector, least]) => checkFigures(selector, least)", [selector, LEAST_CAPITAL_MM]
    )
    return answer


def _svg(content: str) -> str:
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 90 30" width="90mm" height="30mm">'
        f'<title>sample</title><g font-family="sans-serif" fill="#222">{content}</g></svg>'
    )


@pytest.mark.parametrize("fault", _WORSE)
def test_the_checker_finds_a_bad_figure(page: Page, fault: str) -> None:
    faults = _checked(page, _svg(_WORSE[fault]))["faults"]
    assert [one["kind"] for one in faults] == [fault]  # type: ignore[attr-defined]


def test_the_checker_finds_turned_texts_on_each_other(page: Page) -> None:
    """Two long texts at right angles: their upright boxes meet only where the texts do."""
    turned = '<text x="{}" y="28" font-size="5" transform="rotate(-90 {} 28)">upward</text>'
    assert _checked(page, _svg(turned.format(20, 20) + '<text x="10" y="20" font-size="5">across</text>'))["faults"]
    assert not _checked(page, _svg(turned.format(50, 50) + '<text x="10" y="20" font-size="5">across</text>'))["faults"]


def test_the_checker_leaves_a_good_figure_alone(page: Page) -> None:
    good = '<text x="10" y="10" font-size="5">above</text><text x="10" y="20" font-size="5">below</text>'
    answer = _checked(page, _svg(good))
    assert (answer["texts"], answer["faults"]) == (2, [])


def test_the_gallery_is_legible(page: Page) -> None:
    """Every feature, view and stitch; the page stays in tests/_out to be looked at."""
    html = figure_page("Seamboard: every feature, view and stitch", gallery())
    OUT.mkdir(exist_ok=True)
    (OUT / "gallery.html").write_text(html, encoding="utf-8")
    answer = _checked(page, html)
    assert answer["texts"], "the gallery has no texts"
    assert answer["faults"] == []


def _demo_figures() -> Iterator[tuple[str, list[AnyFigure]]]:
    for sheet in plant_views_of(check_plant(DEMO)).sheets:
        yield sheet.title, [figure for step in sheet.steps for figure in step.figures()]


def test_every_figure_of_the_demo_is_legible_on_paper(page: Page) -> None:
    answer = _checked(page, figure_page("Figures of the demo", _demo_figures()))
    assert answer["figures"] > 200  # type: ignore[operator]
    assert answer["faults"] == []
