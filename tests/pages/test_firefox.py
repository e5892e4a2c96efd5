"""Three people's journeys in Firefox, by keys alone, from a folder, with its strict policy on files."""

from __future__ import annotations

import json
from datetime import date
from pathlib import Path

import pytest

from tests.pages.asking import ANCHORS, SHOWN_ANCHORS, SIZES, WITHIN
from tests.pages.firefox import Firefox


@pytest.mark.parametrize(("width", "height"), SIZES)
def test_a_trainee_picks_the_work_and_goes_through_its_steps(
    firefox: Firefox, site: Path, width: int, height: int
) -> None:
    firefox.size(width, height)
    firefox.open((site / "floor.html").as_uri())
    assert firefox.evaluate(WITHIN)
    firefox.press("PageDown")
    firefox.press("Enter")
    firefox.press("PageDown")
    firefox.press("Enter")
    firefox.wait("document.querySelector('.screen')")
    anchors = firefox.evaluate(ANCHORS).split()
    seen = [firefox.evaluate(SHOWN_ANCHORS)]
    for _ in anchors[1:]:
        firefox.press("PageDown")
        firefox.wait(f"location.hash === '#{anchors[len(seen)]}'")
        seen.append(firefox.evaluate(SHOWN_ANCHORS))
    assert seen == anchors
    assert firefox.evaluate(WITHIN)


def test_an_operator_scans_a_sheet(firefox: Firefox, site: Path) -> None:
    firefox.size(1920, 1080)
    record = (site / "assets" / "record.js").read_text(encoding="utf-8")
    data = json.loads(record.removeprefix("var seamboardRecord = ").removesuffix(";\n"))
    firefox.open((site / "floor" / "bind-edge.html").as_uri())
    firefox.press(*f"bind-edge {data['sheets']['bind-edge']['tag']}", "Enter")
    firefox.wait("document.getElementById('scan').open")
    said = firefox.evaluate("document.getElementById('scan').innerText")
    days = (date.today() - date.fromisoformat(data["day"])).days
    assert ("Same as the record" if 0 <= days <= data["lasts"] else "Ask the office") in said
    firefox.press("Escape")
    assert not firefox.evaluate("document.getElementById('scan').open")


def test_an_engineer_searches_with_a_typing_error(firefox: Firefox, site: Path) -> None:
    firefox.size(1280, 960)
    firefox.open((site / "index.html").as_uri())
    firefox.evaluate("document.getElementById('search-words').focus()")
    firefox.wait("document.querySelector('#search.ready')")
    firefox.press(*"bnid edge all round")
    firefox.wait("document.querySelector('#search-found li')")
    firefox.press("Enter")
    firefox.wait("location.pathname.endsWith('/operations/bind-edge.html')")


def test_letters_of_every_language_are_the_sites_own(firefox: Firefox, site: Path) -> None:
    for folder, family in (("vi", "Be Vietnam Pro"), ("ar", "IBM Plex Sans Arabic")):
        firefox.open((site / folder / "index.html").as_uri())
        firefox.wait(f"[...document.fonts].some(f => f.family.includes('{family}') && f.status === 'loaded')")


def test_nothing_is_asked_of_a_network(firefox: Firefox, site: Path) -> None:
    """Of all pages opened above."""
    outside = [
        url for url in firefox.requests if not url.startswith(("file:", "data:", "about:", "resource:", "chrome:"))
    ]
    assert outside == []
