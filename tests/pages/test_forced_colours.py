"""Windows' contrast themes and their like: the system's few colours, in both browsers."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from tests.pages.firefox import Firefox

# What is told elsewhere by its ground alone must have a line around it.
LINED = (".signal", ".code", ".dots .now a", "a.next")
BORDERS = """(selector => [...document.querySelectorAll(selector)].filter(e => e.offsetParent !== null)
    .map(e => getComputedStyle(e).borderTopStyle).join(' '))"""
SIGNS = "[...document.querySelectorAll('svg.sign')].map(e => getComputedStyle(e).forcedColorAdjust).join(' ')"
GROUNDS = "[...document.querySelectorAll('.figure, .picture')].map(e => getComputedStyle(e).backgroundColor).join('|')"

DOTS = """[...document.querySelectorAll('.dots a')].filter(e => e.offsetParent !== null)
    .map(e => getComputedStyle(e).backgroundColor).join('|')"""


@pytest.fixture(params=["chromium", "firefox"])
def window(
    request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory
) -> Iterator[tuple[Callable[[str], object], Callable[[str], object]]]:
    """Opening a page and asking it, under forced colours."""
    if request.param == "firefox":
        program: str = request.getfixturevalue("firefox_program")
        with Firefox(program, tmp_path_factory.mktemp("profile"), forced_colours=True) as firefox:
            yield firefox.open, firefox.evaluate
        return
    browser: Browser = request.getfixturevalue("browser")
    context = browser.new_context(forced_colors="active", viewport={"width": 1280, "height": 960})
    page = context.new_page()
    yield page.goto, page.evaluate
    context.close()


def test_marks_keep_a_line_signs_their_colours_and_drawings_their_paper(
    window: tuple[Callable[[str], object], Callable[[str], object]], site: Path
) -> None:
    go, ask = window
    lined: dict[str, str] = {}
    for path in ("floor/bind-edge.html", "operations/bind-edge.html"):
        go((site / path).as_uri())
        assert ask("matchMedia('(forced-colors: active)').matches")
        for selector in LINED:
            borders = str(ask(f"{BORDERS}('{selector}')"))
            if borders:
                lined[selector] = borders
        assert set(str(ask(SIGNS)).split()) <= {"none", "preserve-parent-color"}
        assert set(str(ask(GROUNDS)).split("|")) == {"rgb(255, 255, 255)"}
        if path.startswith("floor/"):
            here, *others = str(ask(DOTS)).split("|")
            assert here not in others
    assert set(lined) == set(LINED)
    assert all(set(borders.split()) == {"solid"} for borders in lined.values()), lined
