"""A built site and a real browser for the tests of the pages.

Chromium is found at SEAMBOARD_CHROMIUM, else in the usual places; without it the tests are skipped and say so.
"""

from __future__ import annotations

import os
import shutil
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, sync_playwright

sys.path.append(str(Path(__file__).parents[1] / "rendering"))  # the samples live beside the tests that use them most


@pytest.fixture(scope="session")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Folder of a built site. The folder's name has a blank and a `#`, because a plant's folder may."""
    from site_samples import SHEETS, sample_site

    folder = tmp_path_factory.mktemp("pages") / "shop #1 out"
    files = sample_site() | {f"sheets/{sheet.stem}.pdf": b"%PDF-1.7\n%%EOF\n" for sheet in SHEETS}
    for path, content in files.items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_bytes(content)
    return folder


@pytest.fixture(scope="session")
def pages(site: Path) -> list[Path]:
    """Every HTML file of the site."""
    found = sorted(site.rglob("*.html"))
    assert found, "the site has no pages"
    return found


@pytest.fixture(scope="session")
def floors(site: Path) -> list[Path]:
    """Every floor screen."""
    found = sorted((site / "floor").glob("*.html"))
    assert found, "the site has no floor screens"
    return found


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    program = os.environ.get("SEAMBOARD_CHROMIUM") or shutil.which("chromium") or shutil.which("chromium-browser")
    if not program:
        pytest.skip("no Chromium found: install it or set SEAMBOARD_CHROMIUM to its path")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=program, args=["--no-sandbox"])
        yield browser
        browser.close()


@pytest.fixture
def desk(browser: Browser) -> Iterator[BrowserContext]:
    """A browser window of a desk, 1280 x 960."""
    context = browser.new_context(viewport={"width": 1280, "height": 960}, reduced_motion="reduce")
    yield context
    context.close()


@pytest.fixture
def wall(browser: Browser) -> Iterator[BrowserContext]:
    """A full-HD screen on the wall, 1920 x 1080."""
    context = browser.new_context(viewport={"width": 1920, "height": 1080}, reduced_motion="reduce")
    yield context
    context.close()
