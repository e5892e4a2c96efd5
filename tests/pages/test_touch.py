"""The three people's journeys by touch, in both browsers, from a phone to a 4K screen."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import suppress
from dataclasses import dataclass
from functools import partial
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Error, Page

from tests.pages.asking import ANCHORS, SHOWN, SHOWN_ANCHORS, SIZES, WITHIN, wait_until
from tests.pages.firefox import Firefox

NEXT = f"{SHOWN}[0].querySelector('a.next')"


@dataclass(frozen=True, slots=True)
class Hand:
    """What a finger does in a browser: open a page, tap an element, ask, wait, type."""

    open: Callable[[str], object]
    tap: Callable[[str], object]
    ask: Callable[[str], object]
    wait: Callable[[str], object]
    write: Callable[[str], object]


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
        lambda expression: wait_until(partial(_asked, page), expression),
        lambda words: page.keyboard.type(words),
    )
    context.close()


def _asked(page: Page, expression: str) -> object:
    """The answer of a page; none while it is being left. The pages' policy lets no browser wait for a string itself."""
    with suppress(Error):
        return page.evaluate(expression)
    return None


def test_a_trainee_taps_from_the_choice_through_all_steps(hand: Hand, site: Path) -> None:
    hand.open((site / "floor.html").as_uri())
    assert hand.ask(WITHIN)
    hand.tap("document.querySelector('details summary')")
    hand.wait("document.querySelector('details').open")
    hand.tap("document.querySelector('.work-link')")
    hand.wait("document.querySelector('.screen')")
    anchors = str(hand.ask(ANCHORS)).split()
    seen = [hand.ask(SHOWN_ANCHORS)]
    for anchor in anchors[1:]:
        hand.tap(NEXT)
        hand.wait(f"location.hash === '#{anchor}'")
        seen.append(hand.ask(SHOWN_ANCHORS))
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
