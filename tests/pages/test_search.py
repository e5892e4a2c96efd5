"""Search in a real browser: the same as the slow and obvious way, and misspelt words find their page."""

from __future__ import annotations

import random
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import BrowserContext, Page

from builder.model import speaking, tongue_of
from builder.pipeline import check_plant, trees_of
from builder.rendering.search_fold import fold, typed_words
from builder.view import SearchEntry, search_entries
from tests.pages.conftest import DEMO
from tests.rendering.search_reference import Reference

FIND = "query => document.getElementById('search').seamboard.find(query)"
SEED = 20261126


@pytest.fixture(scope="session")
def entries() -> tuple[SearchEntry, ...]:
    """What can be found in the demo's own language, in the order of the pages' index."""
    with speaking(tongue_of("en")):
        return search_entries(trees_of(check_plant(DEMO))[0].views)


def ready(context: BrowserContext, path: Path) -> Page:
    """A page with its search loaded."""
    page = context.new_page()
    page.goto(path.as_uri())
    page.locator("#search-words").focus()
    page.locator("#search.ready").wait_for(timeout=20_000)
    return page


def found(page: Page, query: str) -> list[int]:
    pages: list[int] = page.evaluate(FIND, query)["pages"]
    return pages


def misspelt(word: str, chance: random.Random) -> str:
    """A word with one typing error: a letter left out, doubled, changed, or swapped with the next."""
    at = chance.randrange(len(word) - 1)
    kind = chance.choice(("left out", "doubled", "changed", "swapped"))
    if kind == "left out":
        return word[:at] + word[at + 1 :]
    if kind == "doubled":
        return word[:at] + word[at] + word[at:]
    if kind == "changed":
        return word[:at] + chance.choice("aeionrst") + word[at + 1 :]
    return word[:at] + word[at + 1] + word[at] + word[at + 2 :]


def test_the_page_folds_and_splits_as_the_index_does(desk: BrowserContext, site: Path) -> None:
    page = ready(desk, site / "index.html")
    letters = [chr(code) for code in range(0x20, 0xFFFE, 3) if not 0xD800 <= code < 0xE000]
    folded = page.evaluate("all => all.map(document.getElementById('search').seamboard.fold)", letters)
    assert folded == [fold(letter) for letter in letters]
    texts = ["Tex 70", "tex70 3,2 mm", "LBL-10", "Đường MAY ½", "ដេរក្រណាត់", "缝纫 70", "a_b—c", "ﬁn ŁÓDŹ"]
    split = "all => all.map(t => {const s = document.getElementById('search').seamboard; return s.split(s.fold(t));})"
    assert page.evaluate(split, texts) == [typed_words(text) for text in texts]


def test_what_it_finds_is_what_the_slow_way_finds(
    desk: BrowserContext, site: Path, entries: tuple[SearchEntry, ...]
) -> None:
    page, slow, chance = ready(desk, site / "index.html"), Reference(entries), random.Random(SEED)
    words = [word for word in slow.words if len(word) > 4 and word.isalpha()]
    queries = ["tex 70", "tex70", "Nm 110", "301", "bnd 10", "se", "handle box", "qqqq", "", "handl boks"]
    for _ in range(40):
        word, other = chance.choice(words), chance.choice(words)
        queries += [word, word[: len(word) // 2], misspelt(word, chance), f"{word} {misspelt(other, chance)}"]
    for query in queries:
        assert found(page, query) == slow.find(query), query


def test_misspelt_titles_and_codes_find_their_page(
    desk: BrowserContext, site: Path, entries: tuple[SearchEntry, ...]
) -> None:
    """Recall on the demo: the right page among the first three, for 300 queries with one error in two words."""
    page, chance = ready(desk, site / "index.html"), random.Random(SEED)
    titled = [number for number, one in enumerate(entries) if one.path.startswith("operations/")]
    right = 0
    for _ in range(300):
        number = chance.choice(titled)
        words = [word for word in typed_words(entries[number].title) if len(word) > 3]
        picked = chance.sample(words, min(len(words), 3))
        picked[0] = misspelt(picked[0], chance)
        right += number in found(page, " ".join(picked))[:3]
    wrong = [entries[one].code for one in titled if found(page, entries[one].code)[0] != one]
    assert not wrong
    assert right / 300 >= 0.9, right


def test_translations_are_found_by_their_own_words_without_accents(desk: BrowserContext, site: Path) -> None:
    for folder, query, path in (("vi", "vien mep suot", "bind-edge"), ("es", "ribetee borde alrededor", "bind-edge")):
        page = ready(desk, site / folder / "index.html")
        page.keyboard.type(query)
        page.locator("#search-found li").first.wait_for()
        assert path in str(page.locator("#search-found li").first.get_attribute("data-way"))
        page.keyboard.press("Enter")
        page.wait_for_url(f"**/{folder}/operations/{path}.html*")


def test_keys_alone_reach_a_result(desk: BrowserContext, site: Path) -> None:
    page = ready(desk, site / "operations" / "bind-edge.html")
    page.keyboard.type("hem pocket strip")
    page.keyboard.press("ArrowDown")
    page.keyboard.press("ArrowDown")
    active: Any = page.locator("#search-words").get_attribute("aria-activedescendant")
    assert page.locator(f"#{active}").get_attribute("aria-selected") == "true"
    page.keyboard.press("ArrowUp")
    page.keyboard.press("Escape")
    assert page.locator("#search-found").is_hidden()
    page.keyboard.press("Backspace")
    page.keyboard.press("Enter")
    page.wait_for_url("**/operations/hem-strip*")


def test_a_result_shows_where_it_was_found(desk: BrowserContext, site: Path) -> None:
    page = ready(desk, site / "index.html")
    page.keyboard.type("awl pleat edges")
    first = page.locator("#search-found li").first
    assert "Pleat edges pushed aside with the awl" in first.inner_text()
    assert "#step-" in str(first.get_attribute("data-way"))
    assert first.locator("mark").count() >= 3


def test_nothing_found_is_said(desk: BrowserContext, site: Path) -> None:
    page = ready(desk, site / "index.html")
    page.keyboard.type("zzzzzz")
    assert page.locator("#search [role=status]").inner_text() == "Nothing found"


def test_the_list_stays_on_a_phone(desk: BrowserContext, site: Path) -> None:
    page = ready(desk, site / "es" / "index.html")
    page.set_viewport_size({"width": 320, "height": 640})
    page.keyboard.type("aguja")
    box = page.locator("#search-found").bounding_box()
    assert box is not None
    assert box["x"] >= 0
    assert box["x"] + box["width"] <= 320
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
