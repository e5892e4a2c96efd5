"""`python -m tests.bench.search [OPERATIONS]`: the page's search in Chromium over so many operations.

The operations are the demo's, their words exchanged among each other and with made-up ones, so that the vocabulary
grows as a real plant's would. Prints the size of the index, the milliseconds until it is ready, and those of a query,
middle and 95th of a hundred, for words as they are, beginnings, and words with a typing error.
"""

from __future__ import annotations

import os
import random
import shutil
import sys
import tempfile
from dataclasses import replace
from pathlib import Path

from playwright.sync_api import Page, sync_playwright

from builder.model import speaking, tongue_of
from builder.pipeline import check_plant, trees_of
from builder.rendering.search_fold import typed_words
from builder.rendering.search_index import fold_script, search_index
from builder.view import SearchEntry, search_entries
from tests.pages.test_search import misspelt

ROOT = Path(__file__).resolve().parents[2]
SCRIPT = ROOT / "themes" / "manila" / "site" / "assets" / "search.js"
PAGE = """<!doctype html><html lang="en"><meta charset="utf-8"><body>
<form id="search" hidden data-top="" data-root=""><input id="search-words"><ul></ul><p role="status"></p></form>
<script src="assets/search.js"></script></body></html>"""
TIME = """queries => { const find = document.getElementById('search').seamboard.find;
    return queries.map(query => {
        const start = performance.now(); find(query); return performance.now() - start; }); }"""


def many(entries: list[SearchEntry], count: int, rng: random.Random) -> list[SearchEntry]:
    """So many operations with words of their own."""
    syllables = [word[:3] for entry in entries for word in typed_words(entry.title) if len(word) > 4]
    invented = ["".join(rng.choices(syllables, k=2)) for _ in range(count // 4 + 1)]
    found = []
    for number in range(count):
        entry = rng.choice(entries)
        other = rng.choice(entries)
        title = f"{entry.title.rsplit(' ', 1)[0]} {rng.choice(invented)}"
        texts = list(entry.texts)
        picked = rng.sample(range(len(texts)), len(texts) // 3)
        for at in picked:
            words = rng.choice(other.texts).text.split(" ")
            words[rng.randrange(len(words))] = rng.choice(invented)
            texts[at] = replace(texts[at], text=" ".join(words))
        texts[0] = replace(texts[0], text=title)
        code = f"X{number // 100:03d}-{number % 100:02d}"
        texts.append(replace(texts[0], field="code", text=code))
        path = f"operations/x{number}.html"
        found.append(replace(entry, path=path, title=title, code=code, texts=tuple(texts)))
    return found


def _report(page: Page, name: str, queries: list[str]) -> None:
    times = sorted(page.evaluate(TIME, queries))
    print(f"{name:<12} middle {times[len(times) // 2]:6.1f} ms   95 of 100 {times[len(times) * 95 // 100]:6.1f} ms")


def main(count: int) -> None:
    """Measure and print."""
    rng = random.Random(20261126)
    with speaking(tongue_of("en")):
        own = search_entries(trees_of(check_plant(ROOT / "instructions"))[0].views)
    entries = many([one for one in own if one.path.startswith("operations/")], count, rng)
    program = os.environ.get("SEAMBOARD_CHROMIUM") or shutil.which("chromium")
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        assets = Path(folder) / "assets"
        assets.mkdir()
        (Path(folder) / "index.html").write_text(PAGE, encoding="utf-8")
        index = search_index(entries)
        (assets / "search-en.js").write_bytes(index)
        (assets / "fold.js").write_bytes(fold_script())
        shutil.copy(SCRIPT, assets / "search.js")
        browser = playwright.chromium.launch(executable_path=program, args=["--no-sandbox"])
        page = browser.new_page()
        page.goto((Path(folder) / "index.html").as_uri())
        ready = page.evaluate("""() => new Promise(done => { const start = performance.now();
            const form = document.getElementById('search'); form.querySelector('input').focus();
            const look = () => form.seamboard ? done(performance.now() - start) : setTimeout(look, 1); look(); })""")
        print(f"{count} operations, index {len(index) / 1e6:.1f} MB, ready after {ready:.0f} ms")
        words = sorted({word for entry in entries for word in typed_words(entry.title) if len(word) > 4})
        exact = [f"{rng.choice(words)} {rng.choice(words)}" for _ in range(100)]
        _report(page, "words", exact)
        _report(page, "beginnings", [query[: len(query) - 3] for query in exact])
        _report(page, "one letter", [rng.choice("bcdfghlmnprst") for _ in range(100)])
        _report(page, "codes", [rng.choice(entries).code for _ in range(100)])
        _report(page, "misspelt", [misspelt(rng.choice(words), rng) for _ in range(100)])
        _report(
            page,
            "two misspelt",
            [f"{misspelt(rng.choice(words), rng)} {misspelt(rng.choice(words), rng)}" for _ in range(100)],
        )
        browser.close()


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 10_000)
