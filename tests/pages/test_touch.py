"""The three people's journeys by touch, in both browsers, from a phone to a 4K screen."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Error, Page

from tests.pages.firefox import Firefox
from tests.pages.test_firefox import firefox_program

SIZES = [(320, 640), (1920, 1080), (3840, 2160)]
WITHIN = "document.documentElement.scrollWidth <= innerWidth"
SHOWN = "[...document.querySelectorAll('.screen')].filter(s => s.offsetParent !== null).map(s => s.id).join(' ')"
NEXT = "[...document.querySelectorAll('.screen')].find(s => s.offsetParent !== null).querySelector('a.next')"


@dataclass(frozen=True, slots=True)
class Hand:
    """What a finger does in a browser: open a page, tap an element, ask, wait, type."""

    open: Callable[[str], object]
    tap: Callable[[str], object]
    ask: Callable[[str], object]
    wait: Callable[[str], object]
    write: Callable[[str], object]


@pytest.fixture(scope="module")
def firefox(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Firefox]:
    with Firefox(firefox_program(), tmp_path_factory.mktemp("profile")) as browser:
        yield browser


@pytest.fixture(params=SIZES, ids=lambda size: str(size[0]))
def size(request: pytest.FixtureRequest) -> tuple[int, int]:
    """Width and height of the window."""
    found: tuple[int, int] = request.param
    return found


@pytest.fixture(params=["chromium", "firefox"])
def hand(request: pytest.FixtureRequest, size: tuple[int, int]) -> Iterator[Hand]:
    """A finger in each browser."""
    if request.param == "firefox":
        window: Firefox = request.getfixturevalue("firefox")
        window.size(*size)
        yield Hand(window.open, window.tap, window.evaluate, window.wait, lambda words: window.press(*words))
        return
    browser: Browser = request.getfixturevalue("browser")
    context = browser.new_context(viewport={"width": size[0], "height": size[1]}, has_touch=True)
    page = context.new_page()
    yield Hand(
        page.goto,
        lambda element: page.evaluate_handle(element).as_element().tap(),  # type: ignore[union-attr]
        page.evaluate,
        lambda expression: _wait(page, expression),
        lambda words: page.keyboard.type(words),
    )
    context.close()


def _wait(page: Page, expression: str, seconds: float = 20.0) -> None:
    """Until an expression holds; asked again and again, for the pages' policy lets no browser wait for a string."""
    until = time.monotonic() + seconds
    while True:
        with suppress(Error):  # the page was just left
            if page.evaluate(f"Boolean({expression})"):
                return
        assert time.monotonic() < until, expression
        time.sleep(0.05)


def test_a_trainee_taps_from_the_choice_through_all_steps(hand: Hand, site: Path) -> None:
    hand.open((site / "floor.html").as_uri())
    assert hand.ask(WITHIN)
    hand.tap("document.querySelector('details summary')")
    hand.wait("document.querySelector('details').open")
    hand.tap("document.querySelector('.work-link')")
    hand.wait("document.querySelector('.screen')")
    anchors = str(hand.ask("[...document.querySelectorAll('.screen')].map(s => s.id).join(' ')")).split()
    seen = [hand.ask(SHOWN)]
    for anchor in anchors[1:]:
        hand.tap(NEXT)
        hand.wait(f"location.hash === '#{anchor}'")
        seen.append(hand.ask(SHOWN))
    assert seen == anchors
    assert hand.ask(WITHIN)


def test_an_operator_taps_from_the_product_to_the_work_and_its_floor_screen(hand: Hand, site: Path) -> None:
    hand.open((site / "products" / "tool-roll.html").as_uri())
    assert hand.ask(WITHIN)
    hand.tap("[...document.querySelectorAll('main a')].find(a => a.href.endsWith('/operations/bind-edge.html'))")
    hand.wait("location.pathname.endsWith('/operations/bind-edge.html')")
    assert hand.ask(WITHIN)
    hand.tap("[...document.querySelectorAll('main a')].find(a => a.pathname.endsWith('/floor/bind-edge.html'))")
    hand.wait("location.pathname.endsWith('/floor/bind-edge.html')")


def test_an_engineer_taps_into_the_search_and_on_a_result(hand: Hand, site: Path) -> None:
    hand.open((site / "index.html").as_uri())
    hand.tap("document.getElementById('search-words')")
    hand.wait("document.querySelector('#search.ready')")
    hand.write("bnid edge")
    hand.wait("document.querySelector('#search-found li')")
    hand.tap("document.querySelector('#search-found li a, #search-found li')")
    hand.wait("location.pathname.endsWith('/bind-edge.html')")
