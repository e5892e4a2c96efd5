"""The switch of sizes on an operation's page and on its floor screen, and the page of rules."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page

from builder.checking import rule_book

SIZED = "bind-edge.html"


def _captions(page: Page) -> set[str]:
    """Sizes whose drawings are visible."""
    found = page.evaluate(
        "[...document.querySelectorAll('.of-size')].filter(e => e.checkVisibility()).map(e => e.className)"
    )
    return set(found)


@pytest.mark.parametrize("folder", ["operations", "floor"])
def test_picking_a_size_shows_its_drawings_and_no_others(desk: BrowserContext, site: Path, folder: str) -> None:
    """The reference size first; each other only when picked."""
    page = desk.new_page()
    page.goto((site / folder / SIZED).as_uri() + ("#step-bind" if folder == "floor" else ""))
    labels = page.locator(".picks label")
    assert labels.count() == 3
    seen = []
    for number in range(labels.count()):
        labels.nth(number).click()
        shown = _captions(page)
        assert shown
        assert all(f"of-size-{number + 1}" in one.split() for one in shown), shown
        seen.append(frozenset(shown))
    assert len(set(seen)) == labels.count()


def test_without_has_every_size_is_shown_with_its_name(desk: BrowserContext, site: Path) -> None:
    """An old browser shows all drawings, each with the size it is of."""
    text = (site / "assets" / "site.css").read_text(encoding="utf-8")
    assert text.count("@supports selector(:has(*))") >= 2
    page = desk.new_page()
    page.goto((site / "operations" / SIZED).as_uri())
    names = page.locator(".of-size figcaption").all_text_contents()
    assert names
    assert all(name.startswith("size ") for name in names)


def test_a_size_can_be_picked_by_keys_and_the_page_turner_goes_on(wall: BrowserContext, site: Path) -> None:
    """Arrows move inside the switch; PageDown still leads to the next step."""
    page = wall.new_page()
    page.goto((site / "floor" / SIZED).as_uri())
    page.locator("#pick-1").focus()
    page.keyboard.press("ArrowRight")
    assert page.locator("#pick-2").is_checked()
    before = page.url
    page.keyboard.press("PageDown")
    assert page.url != before
    assert page.locator("#pick-2").is_checked()


def test_the_page_of_rules_names_every_rule_with_its_examples(browser: Browser, site: Path) -> None:
    """Each has an anchor, so that a finding's slug leads to it."""
    page = browser.new_page()
    page.goto((site / "rules.html").as_uri())
    ids = set(page.evaluate("[...document.querySelectorAll('.rules article')].map(e => e.id)"))
    assert set(rule_book()) <= ids
    first = page.locator("#gauge-missing")
    first.locator("summary").click()
    assert "tolerances" in first.locator("pre").first.inner_text()
    page.close()
