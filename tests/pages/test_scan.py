"""A sheet's code, scanned into any page or typed by hand, is answered from the record of the copy."""

from __future__ import annotations

import json
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import BrowserContext, Page

DAY = date(2026, 11, 25)  # of the build, see tests/conftest.py
DEVIATION = "hem-strip-stiff"
# A shared machine may take longer between two keys than a scanner does, so they are sent from inside the page.
TYPE = """keys => keys.forEach(key => document.activeElement.dispatchEvent(
    new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true })))"""


@pytest.fixture(scope="session")
def record(site: Path) -> dict[str, Any]:
    """The record of the site as plain data."""
    text = (site / "assets" / "record.js").read_text(encoding="utf-8")
    data: dict[str, Any] = json.loads(text.removeprefix("var seamboardRecord = ").removesuffix(";\n"))
    return data


def opened(context: BrowserContext, path: Path, day: date = DAY) -> Page:
    """A page, on a computer whose clock shows that day."""
    page = context.new_page()
    page.clock.set_fixed_time(f"{day.isoformat()}T10:00:00")
    page.goto(path.as_uri())
    return page


def scan(page: Page, text: str) -> str:
    """What the page answers to a scanner, which types as fast as it can."""
    page.evaluate(TYPE, [*text, "Enter"])
    return answer(page)


def answer(page: Page) -> str:
    page.locator("#scan[open]").wait_for(timeout=4000)
    return page.locator("#scan").inner_text()


def wrong(tag: str) -> str:
    """Another code that is sound in itself: that of other facts."""
    from builder.view import tag_of

    other = tag_of("0123456789abcdef").replace(" ", "")
    assert other != tag
    return other


def test_a_current_sheet_is_the_same_and_leads_to_its_page(
    desk: BrowserContext, site: Path, record: dict[str, Any]
) -> None:
    page = opened(desk, site / "index.html")
    said = scan(page, f"bind-edge {record['sheets']['bind-edge']['tag']}")
    assert "Same as the record of Nov 25, 2026" in said
    assert "Right for every batch." in said
    assert page.evaluate("document.activeElement.id") == "scan-verdict"
    page.locator("#scan .scan-page").click()
    assert page.url.startswith((site / "operations/bind-edge.html").as_uri())


def test_any_page_answers_the_floor_screen_too(wall: BrowserContext, site: Path, record: dict[str, Any]) -> None:
    page = opened(wall, site / "floor" / "bind-edge.html")
    before = page.url
    assert "Same as" in scan(page, f"bind-edge {record['sheets']['bind-edge']['tag']}")
    page.keyboard.press("Escape")
    assert not page.locator("#scan[open]").count()
    assert page.url == before


def test_another_code_differs_and_says_what_to_do(desk: BrowserContext, site: Path, record: dict[str, Any]) -> None:
    page = opened(desk, site / "index.html")
    said = scan(page, f"bind-edge {wrong(record['sheets']['bind-edge']['tag'])}")
    assert "Differs from the record of Nov 25, 2026" in said
    assert "Take it down" in said
    assert page.locator("#scan.no .cross:visible").count() == 1


@pytest.mark.parametrize(
    ("text", "told"),
    [("bind-edge 7F3KQ2MX5", "Misread"), ("sew-wings {tag}", "Not in this copy")],
)
def test_what_is_no_code_of_a_sheet_here(
    desk: BrowserContext, site: Path, record: dict[str, Any], text: str, told: str
) -> None:
    page = opened(desk, site / "index.html")
    assert told in scan(page, text.format(tag=record["sheets"]["bind-edge"]["tag"]))


def test_a_size_is_named(desk: BrowserContext, site: Path, record: dict[str, Any]) -> None:
    page = opened(desk, site / "index.html")
    said = scan(page, f"bind-bar-flap {record['sheets']['bind-bar-flap']['sizes']['L']}")
    assert "Same as" in said
    assert "code of L on this sheet" in said


def test_a_translation_differs_by_itself(desk: BrowserContext, site: Path, record: dict[str, Any]) -> None:
    sheet = record["sheets"]["bind-edge"]
    own = sheet["said"]["es"]["tag"]
    page = opened(desk, site / "es" / "index.html")
    assert "Igual que el registro" in scan(page, f"bind-edge {sheet['tag']} es {own}")
    page.keyboard.press("Escape")
    assert "La traducción es distinta" in scan(page, f"bind-edge {sheet['tag']} es {wrong(own)}")


@pytest.mark.parametrize(
    ("days", "told"),
    [(0, "This copy is of today."), (14, "This copy is 14 days old."), (15, "too old to answer"), (-1, "clock")],
)
def test_a_copy_older_than_the_plant_allows_refuses(
    desk: BrowserContext, site: Path, record: dict[str, Any], days: int, told: str
) -> None:
    page = opened(desk, site / "index.html", DAY + timedelta(days))
    said = scan(page, f"bind-edge {record['sheets']['bind-edge']['tag']}")
    assert told in said
    assert ("Same as" in said) == (0 <= days <= 14)


def test_a_deviation_names_its_batches_and_after_its_end_comes_down(
    desk: BrowserContext, site: Path, record: dict[str, Any]
) -> None:
    sheet = record["sheets"][DEVIATION]
    page = opened(desk, site / "index.html")
    assert "these batches only: B-2107, B-2108" in scan(page, f"{DEVIATION} {sheet['tag']}")
    page.keyboard.press("Escape")
    usual = record["sheets"]["hem-strip"]["tag"]
    assert "every batch but B-2107, B-2108" in scan(page, f"hem-strip {usual}")
    page.evaluate("seamboardRecord.lasts = 0")
    page.clock.set_fixed_time("2026-12-19T10:00:00")
    page.keyboard.press("Escape")
    said = scan(page, f"{DEVIATION} {sheet['tag']}")
    assert "Take it down" in said
    assert "ROW-30" in said
    page.keyboard.press("Escape")
    assert "Right for every batch." in scan(page, f"hem-strip {usual}")


@pytest.mark.parametrize("typed", ["{spaced}", "{code} {tag}", "bind-edge {lower}"])
def test_the_code_at_the_foot_can_be_typed(
    desk: BrowserContext, site: Path, record: dict[str, Any], typed: str
) -> None:
    sheet = record["sheets"]["bind-edge"]
    tag = sheet["tag"]
    spaced = f"{tag[:4]} {tag[4:8]} {tag[8]}"
    page = opened(desk, site / "check.html")
    page.locator("#typed-code").fill(typed.format(tag=tag, spaced=spaced, lower=tag.lower(), code=sheet["code"]))
    page.locator("#check-form button").click()
    assert "Same as" in answer(page)


def test_what_a_hand_types_slowly_is_no_scan(desk: BrowserContext, site: Path, record: dict[str, Any]) -> None:
    page = desk.new_page()
    page.goto((site / "index.html").as_uri())
    page.keyboard.type(f"bind-edge {record['sheets']['bind-edge']['tag']}", delay=75)
    page.keyboard.press("Enter")
    assert not page.locator("#scan[open]").count()


def test_a_field_keeps_what_was_in_it(desk: BrowserContext, site: Path, record: dict[str, Any]) -> None:
    page = opened(desk, site / "check.html")
    page.locator("#typed-code").fill("ab")
    assert "Same as" in scan(page, f"bind-edge {record['sheets']['bind-edge']['tag']}")
    assert page.locator("#typed-code").input_value() == "ab"
