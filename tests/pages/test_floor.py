"""The floor screen on a wall, in a hand, by keys alone and without script."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page

from tests.pages.test_offline import SIZES

SHOWN = ".screen:visible"
# 20 minutes of arc on a 43 in screen from 3 m, as a share of the screen's width: reference values of the theme.
READ, OTHER = 0.0274, 0.0219


def _anchors(page: Page) -> list[str]:
    anchors: list[str] = page.evaluate("[...document.querySelectorAll('.screen')].map(s => s.id)")
    return anchors


def _shown(page: Page) -> str:
    """The one screen that is visible."""
    assert page.locator(SHOWN).count() == 1
    return str(page.locator(SHOWN).get_attribute("id"))


def _assert_caution_in_view(page: Page) -> None:
    for item in page.locator(f"{SHOWN} .cautions li").all():
        box = item.bounding_box()
        assert box is not None
        assert 0 <= box["y"] < box["y"] + box["height"] <= 1080
        assert item.locator("svg").count() == 1
        assert item.inner_text().strip()


def test_keys_alone_reach_every_step_and_each_shows_the_caution(wall: BrowserContext, floors: list[Path]) -> None:
    page = wall.new_page()
    for path in floors:
        page.goto(path.as_uri())
        anchors = _anchors(page)
        seen = [_shown(page)]
        for _ in anchors[1:]:
            page.keyboard.press("PageDown")
            seen.append(_shown(page))
            _assert_caution_in_view(page)
            page.wait_for_function("id => document.activeElement.id === id", arg=f"{seen[-1]}-title", timeout=2000)
        assert seen == anchors
        assert (
            page.locator(f"{SHOWN} .hazard:not(.own)").count()
            == page.locator(f"#{anchors[0]} .hazard:not(.own)").count()
        )


@pytest.mark.parametrize(
    ("key", "start", "lands"),
    [
        ("ArrowRight", 1, 2),
        ("ArrowDown", 1, 2),
        ("PageUp", 2, 1),
        ("ArrowLeft", 2, 1),
        ("ArrowUp", 2, 1),
        ("Home", 2, 0),
        ("End", 1, -1),
        ("Space", 1, 1),
        ("n", 1, 1),
        ("Control+ArrowRight", 1, 1),
    ],
)
def test_each_key_leads_where_it_should(
    wall: BrowserContext, floors: list[Path], key: str, start: int, lands: int
) -> None:
    page = wall.new_page()
    page.goto(floors[0].as_uri())
    anchors = _anchors(page)
    page.goto(f"{floors[0].as_uri()}#{anchors[start]}")
    page.keyboard.press(key)
    assert _shown(page) == anchors[lands]


def test_stepping_leaves_no_history_and_the_address_keeps_the_place(wall: BrowserContext, floors: list[Path]) -> None:
    page = wall.new_page()
    page.goto(floors[0].as_uri())
    before = page.evaluate("history.length")
    page.keyboard.press("PageDown")
    page.keyboard.press("PageDown")
    place = _shown(page)
    assert page.evaluate("history.length") == before
    page.reload()
    assert _shown(page) == place


def test_links_alone_lead_through_all_screens_without_script(browser: Browser, floors: list[Path]) -> None:
    context = browser.new_context(viewport={"width": 1920, "height": 1080}, java_script_enabled=False)
    page = context.new_page()
    for path in floors:
        page.goto(path.as_uri())
        count = page.locator(".screen").count()
        seen = [_shown(page)]
        for _ in range(count - 1):
            page.locator(f"{SHOWN} a.next").click()
            seen.append(_shown(page))
        assert len(set(seen)) == count
        for _ in range(count - 1):
            page.locator(f"{SHOWN} a.back").click()
        assert _shown(page) == seen[0]
    context.close()


def test_every_screen_fits_a_wall_without_scrolling(wall: BrowserContext, every_floor: list[Path]) -> None:
    page = wall.new_page()
    for path in every_floor:
        page.goto(path.as_uri())
        for anchor, *size in page.evaluate(SIZES):
            assert size == [1920, 1080], (path.name, anchor)


def test_letters_are_high_enough_for_the_distance(wall: BrowserContext, floors: list[Path]) -> None:
    page = wall.new_page()
    sizes = """parts => parts.flatMap(p => [...document.querySelectorAll('.screen ' + p)])
                            .map(e => parseFloat(getComputedStyle(e).fontSize))"""
    for path in floors:
        page.goto(path.as_uri())
        read = page.evaluate(sizes, [".say h2", ".key", ".hazard p", ".signal", ".step-caution", ".check .value"])
        assert min(read) >= READ * 1920 - 0.1
        lesser = [
            ".what",
            ".with",
            ".other",
            ".wear p",
            ".place",
            "dt",
            ".set-up .value",
            ".back",
            ".next",
            ".sizes td",
        ]
        other = page.evaluate(sizes, lesser)
        assert min(other) >= OTHER * 1920 - 0.1


def test_words_in_figures_are_high_enough_too(wall: BrowserContext, floors: list[Path]) -> None:
    """Font size times the drawing's scale; a figure that shares its place with a photo is left out."""
    page = wall.new_page()
    heights = """() => [...document.querySelectorAll('.screen:target .figure:only-child text')]
        .map(t => parseFloat(getComputedStyle(t).fontSize) * Math.hypot(t.getScreenCTM().c, t.getScreenCTM().d))"""
    found = []
    for path in floors:
        page.goto(path.as_uri())
        for anchor in _anchors(page):
            page.goto(f"{path.as_uri()}#{anchor}")
            found += page.evaluate(heights)
    assert found
    assert min(found) >= OTHER * 1920 - 0.1


def test_zoom_of_400_percent_at_least_doubles_the_letters(browser: Browser, floors: list[Path]) -> None:
    size = "parseFloat(getComputedStyle(document.querySelector('.screen .key')).fontSize)"
    measured = []
    for width, zoom in ((1920, 1), (480, 4)):
        context = browser.new_context(viewport={"width": width, "height": 1080 // zoom})
        page = context.new_page()
        page.goto(floors[0].as_uri())
        measured.append(page.evaluate(size) * zoom)
        context.close()
    assert measured[1] >= 2 * measured[0]


def test_a_swipe_leads_on_and_back_and_an_upward_one_does_not(browser: Browser, floors: list[Path]) -> None:
    context = browser.new_context(viewport={"width": 390, "height": 844}, is_mobile=True, has_touch=True)
    page = context.new_page()
    page.goto(floors[0].as_uri())
    anchors = _anchors(page)
    touch = context.new_cdp_session(page)

    def swipe(from_x: int, from_y: int, to_x: int, to_y: int) -> None:
        touch.send("Input.dispatchTouchEvent", {"type": "touchStart", "touchPoints": [{"x": from_x, "y": from_y}]})
        for part in (0.3, 0.6, 1.0):
            point = {"x": from_x + (to_x - from_x) * part, "y": from_y + (to_y - from_y) * part}
            touch.send("Input.dispatchTouchEvent", {"type": "touchMove", "touchPoints": [point]})
        touch.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})

    swipe(330, 400, 60, 410)
    assert _shown(page) == anchors[1]
    swipe(200, 500, 190, 300)
    assert _shown(page) == anchors[1]
    swipe(60, 400, 330, 390)
    assert _shown(page) == anchors[0]
    context.close()


def test_a_phone_scrolls_down_only_and_keeps_next_at_hand(browser: Browser, floors: list[Path]) -> None:
    context = browser.new_context(viewport={"width": 390, "height": 660}, is_mobile=True, has_touch=True)
    page = context.new_page()
    for path in floors:
        page.goto(path.as_uri())
        for anchor in _anchors(page):
            page.goto(f"{path.as_uri()}#{anchor}")
            assert page.evaluate("document.documentElement.scrollWidth") == 390
            box = page.locator(f"{SHOWN} a.next").bounding_box()
            assert box is not None
            assert box["y"] + box["height"] <= 660
            assert box["height"] >= 24
    context.close()


def test_the_screen_asks_to_stay_awake(wall: BrowserContext, floors: list[Path]) -> None:
    wall.add_init_script(
        """window.asked = [];
        navigator.wakeLock.request = kind => { asked.push(kind); return Promise.resolve({released: true}); };"""
    )
    page = wall.new_page()
    page.goto(floors[0].as_uri())
    assert page.evaluate("asked") == ["screen"]
    page.keyboard.press("PageDown")
    assert page.evaluate("asked") == ["screen", "screen"]
