"""How a floor screen is set: calibration, ground, leafing, a clock to practise with, questions, languages."""

from __future__ import annotations

import math
from pathlib import Path

from playwright.sync_api import BrowserContext, Page

FLOOR = "sew-handle-end.html"
KEPT = "Object.keys(localStorage)"
SHOWN = ".screen:visible"


def at(context: BrowserContext, site: Path, query: str = "", folder: str = "") -> Page:
    page = context.new_page()
    page.goto(f"{(site / folder / 'floor' / FLOOR).as_uri()}{query}")
    return page


def test_the_bar_a_card_and_a_distance_say_from_how_far_it_reads(wall: BrowserContext, site: Path) -> None:
    """A 55 in screen is 1218 mm wide: 1920 px of 0.634 mm, a card 135 px."""
    page = wall.new_page()
    page.goto((site / "floor.html").as_uri())
    page.locator("#bar-length").fill("135")
    assert abs(page.locator(".card-bar").bounding_box()["width"] - 135) < 1  # type: ignore[index]
    page.locator("input[name=distance][value='3']").check(force=True)
    told = page.locator("#reach").inner_text()
    capital = 0.0274 * 1920 * (85.6 / 135) * 0.668
    reach = math.floor(capital / (2 * math.tan(math.radians(20 / 60) / 2)) / 100) / 10
    assert f"from {reach:g} m" in told
    assert "Good for 3 m" in told
    page.locator("input[name=distance][value='6']").check(force=True)
    assert "larger screen" in page.locator("#reach").inner_text()


def test_the_screen_says_when_its_letters_are_too_small(wall: BrowserContext, site: Path) -> None:
    near = at(wall, site, "?mm=0.6&distance=3").locator(f"{SHOWN} .calibration").inner_text()
    assert near.startswith("Read it from up to")
    far = at(wall, site, "?mm=0.25&distance=3").locator(f"{SHOWN} .calibration").inner_text()
    assert far.startswith("Too small from 3 m")
    unset = at(wall, site).locator(f"{SHOWN} .calibration").inner_text()
    assert "not calibrated" in unset


def test_the_settings_go_along_from_page_to_page(wall: BrowserContext, site: Path) -> None:
    page = wall.new_page()
    page.goto(f"{(site / 'floor.html').as_uri()}?mm=0.6&distance=2&look=dark")
    page.locator("details summary").first.click()
    page.locator("a.work-link").first.click()
    assert "mm=0.6" in page.url
    assert page.locator("html").get_attribute("data-look") == "dark"


def test_the_ground_is_changed_by_a_button_and_stays_legible(wall: BrowserContext, site: Path) -> None:
    page = at(wall, site)
    page.locator(".more summary").click()
    page.locator("#ground").click()
    ink, ground = page.evaluate(
        "[getComputedStyle(document.body).color, getComputedStyle(document.body).backgroundColor]"
    )
    assert _light(ink) > 0.8
    assert _light(ground) < 0.05
    assert page.evaluate("getComputedStyle(document.querySelector('.figure')).backgroundColor") == "rgb(255, 255, 255)"


def _light(colour: str) -> float:
    """Relative luminance, WCAG 2.2."""
    parts = [float(part) / 255 for part in colour[colour.index("(") + 1 : -1].split(",")[:3]]
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def test_it_leafs_through_all_screens_and_a_key_stops_it(wall: BrowserContext, site: Path) -> None:
    page = wall.new_page()
    page.clock.install()
    page.goto(f"{(site / 'floor' / FLOOR).as_uri()}?loop=60")
    anchors = page.evaluate("[...document.querySelectorAll('.screen')].map(s => s.id)")
    seen = [page.locator(SHOWN).get_attribute("id")]
    for _ in anchors:
        page.clock.run_for(61_000)
        seen.append(page.locator(SHOWN).get_attribute("id"))
    assert seen == [*anchors, anchors[0]]
    page.keyboard.press("PageDown")
    here = page.locator(SHOWN).get_attribute("id")
    page.clock.run_for(200_000)
    assert page.locator(SHOWN).get_attribute("id") == here
    assert page.locator(".hold").inner_text() == "Go on"


def test_the_clock_runs_only_where_it_was_asked_for_and_nothing_is_kept(wall: BrowserContext, site: Path) -> None:
    page = at(wall, site)
    assert page.locator(".clock").is_hidden()
    page.clock.install()
    page.goto((site / "operations" / FLOOR).as_uri())
    page.get_by_role("link", name="Practise with a clock").click()
    page.wait_for_url("**/floor/*.html?clock")
    page.locator(".clock").wait_for()
    page.keyboard.press("End")
    page.wait_for_url("**#step-*")
    page.clock.run_for(6000)
    own, standard = page.locator(".clock").inner_text().split(" / ")
    assert own in ("0:05", "0:06")
    assert standard.startswith("0:")
    assert page.evaluate(KEPT) == []


def test_questions_come_from_the_key_points_by_keys_alone(wall: BrowserContext, site: Path) -> None:
    page = at(wall, site)
    page.locator(".more summary").focus()
    page.keyboard.press("Enter")
    page.locator("#ask-me").focus()
    page.keyboard.press("Enter")
    points = page.locator(".screen.is-step .key").all_text_contents()
    for number, point in enumerate(points):
        assert page.locator("#ask .asked").inner_text() == point.strip()
        page.keyboard.press("Tab")
        page.keyboard.press("Enter")
        told = page.locator("#ask .told").inner_text()
        assert told == "Right." or told.startswith("No. It is this one:")
        assert page.locator("#ask .answers button").count() == 3, number
        page.keyboard.press("Enter")
    assert f"of {len(points)} at once" in page.locator("#ask h2").inner_text()
    page.keyboard.press("Enter")
    assert not page.locator("#ask[open]").count()
    assert page.evaluate(KEPT) == []


def test_another_language_shows_the_same_step(wall: BrowserContext, site: Path) -> None:
    page = at(wall, site)
    for _ in range(4):
        page.keyboard.press("PageDown")
    here = page.locator(SHOWN).get_attribute("id")
    page.locator(".more summary").click()
    page.get_by_role("link", name="Tiếng Việt").click()
    assert "/vi/floor/" in page.url
    assert page.locator(SHOWN).get_attribute("id") == here
    assert page.locator("html").get_attribute("lang") == "vi"
    size = page.evaluate("[document.documentElement.scrollWidth, document.documentElement.scrollHeight]")
    assert size == [1920, 1080]


def test_the_page_to_pick_from_works_by_page_turner(wall: BrowserContext, site: Path) -> None:
    page = wall.new_page()
    page.goto((site / "floor.html").as_uri())
    page.keyboard.press("PageDown")
    page.keyboard.press("Enter")
    page.keyboard.press("PageDown")
    page.keyboard.press("Enter")
    page.wait_for_url("**/floor/*.html*")
    assert page.locator(SHOWN).count() == 1
