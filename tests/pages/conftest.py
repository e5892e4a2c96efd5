"""A built site and a real browser for the tests of the pages.

Chromium is found at SEAMBOARD_CHROMIUM, else in the usual places; without it the tests are skipped and say so.
"""

from __future__ import annotations

import fcntl
import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, sync_playwright

from tests.pages.firefox import Firefox

LANGUAGES = ("ar", "es", "vi")
DEMO = Path(__file__).resolve().parents[2] / "instructions"


@pytest.fixture(scope="session")
def site(tmp_path_factory: pytest.TempPathFactory, worker_id: str) -> Path:
    """The demo's site, built once for all workers. The folder's name has a blank and a `#`, as a plant's folder may."""
    own = tmp_path_factory.getbasetemp()
    shared = own if worker_id == "master" else own.parent
    folder = shared / "pages" / "shop #1 out"
    folder.parent.mkdir(exist_ok=True)
    with (shared / "pages.lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not folder.exists():
            # In a process of its own, which may fork; this one has the browser's threads.
            command = [sys.executable, "-m", "builder", "build", str(DEMO), "--to", str(folder), "--quiet"]
            subprocess.run(command, check=True)
    return folder


@pytest.fixture(scope="session")
def every_page(site: Path) -> list[Path]:
    """Every HTML file of the site."""
    found = sorted(site.rglob("*.html"))
    assert found, "the site has no pages"
    return found


@pytest.fixture(scope="session")
def every_floor(site: Path) -> list[Path]:
    """Every floor screen."""
    found = sorted((site / "floor").glob("*.html"))
    assert found, "the site has no floor screens"
    return found


@pytest.fixture(scope="session")
def floors(every_floor: list[Path]) -> list[Path]:
    """A choice of floor screens: the fullest, and some of the rest."""
    return _choice(every_floor)


@pytest.fixture(scope="session")
def pages(every_page: list[Path], site: Path) -> list[Path]:
    """A choice of pages of each template: most in the plant's own language, fewer in the others.

    All of them with SEAMBOARD_ALL_PAGES set, which takes half an hour.
    """
    if os.environ.get("SEAMBOARD_ALL_PAGES"):
        return every_page
    kinds: dict[str, list[Path]] = {}
    for path in every_page:
        kinds.setdefault(path.relative_to(site).parent.as_posix(), []).append(path)
    found: list[Path] = []
    for kind, paths in kinds.items():
        translated = kind.partition("/")[0] in LANGUAGES
        many = kind.rpartition("/")[2] in ("operations", "floor", "studies")
        found += (
            _choice(paths, 24 if many else 6)[:2]
            if translated and kind not in LANGUAGES
            else (_choice(paths, 16) if many else paths)
        )
    return sorted(found)


def _choice(paths: list[Path], stride: int = 8) -> list[Path]:
    """The four largest files, and every eighth, or fewer where three languages have them."""
    largest = sorted(paths, key=lambda path: path.stat().st_size)[-4:]
    return sorted({*largest, *paths[::stride]})


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


@pytest.fixture(scope="session")
def firefox_program() -> str:
    """The path of a Firefox; without one the test is skipped and says so."""
    program = os.environ.get("SEAMBOARD_FIREFOX") or shutil.which("firefox-esr") or shutil.which("firefox")
    if not program:
        pytest.skip("no Firefox found: install firefox-esr or set SEAMBOARD_FIREFOX to its path")
    return program


@pytest.fixture(scope="module")
def firefox(firefox_program: str, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Firefox]:
    """A Firefox of its own profile."""
    with Firefox(firefox_program, tmp_path_factory.mktemp("profile")) as browser:
        yield browser
