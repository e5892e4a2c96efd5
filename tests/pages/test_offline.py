"""Every page opened from a folder: nothing asked of a network, nothing refused, nothing broken."""

from __future__ import annotations

from pathlib import Path
from urllib.parse import unquote, urldefrag, urlsplit

from playwright.sync_api import Browser, BrowserContext

LISTEN = """
window.refused = [];
document.addEventListener(
    'securitypolicyviolation', e => window.refused.push(e.violatedDirective + ' ' + e.blockedURI));
"""
LINKS = """() => [...document.querySelectorAll('[href], [src]')].map(
    e => new URL(e.getAttribute('href') ?? e.getAttribute('src'), document.URL).href)"""
# Width and height of a page at each of its places.
SIZES = """async () => {
    const found = [], root = document.documentElement;
    for (const id of ['', ...[...document.querySelectorAll('.screen, .variant')].map(e => e.id)]) {
        location.replace('#' + id);
        await new Promise(shown => requestAnimationFrame(() => requestAnimationFrame(shown)));
        found.push([id, root.scrollWidth, root.scrollHeight]);
    }
    return found;
}"""
WATCH = """() => {
    window.seen = [];
    document.addEventListener('focusin', e => {
        const style = getComputedStyle(e.target);
        window.seen.push([style.outlineStyle + ' ' + style.outlineWidth, e.target.outerHTML]);
    });
}"""
IDS = """() => [...document.querySelectorAll('[id]')].map(e => e.id)"""


def test_no_page_logs_an_error_is_refused_anything_or_asks_beyond_the_folder(
    desk: BrowserContext, pages: list[Path], site: Path
) -> None:
    asked: list[str] = []
    said: list[str] = []
    desk.add_init_script(LISTEN)
    page = desk.new_page()
    page.on("request", lambda request: asked.append(request.url))
    page.on("console", lambda message: said.append(f"{page.url}: {message.text}"))
    page.on("pageerror", lambda error: said.append(f"{page.url}: {error}"))
    page.on("requestfailed", lambda request: said.append(f"{page.url}: failed {request.url}"))
    for path in pages:
        page.goto(path.as_uri())
        page.evaluate("document.fonts.ready")
        assert page.evaluate("window.refused") == [], path
    assert said == []
    outside = [url for url in asked if not url.startswith(("data:", site.as_uri()))]
    assert outside == []
    assert len(asked) > len(pages)


def test_the_embedded_faces_are_used(desk: BrowserContext, site: Path) -> None:
    page = desk.new_page()
    page.goto((site / "index.html").as_uri())
    page.evaluate("document.fonts.ready")
    loaded = page.evaluate(
        "[...document.fonts].filter(f => f.status === 'loaded').map(f => f.family + f.weight).sort()"
    )
    # The last two are for the names of languages in the page's header.
    own = ["Atkinson Hyperlegible400", "Atkinson Hyperlegible700"]
    assert loaded == [*own, "Be Vietnam Pro400", "IBM Plex Sans Arabic400"]


def test_every_link_and_anchor_resolves_as_the_browser_sees_it(desk: BrowserContext, pages: list[Path]) -> None:
    page = desk.new_page()
    links: dict[Path, list[str]] = {}
    ids: dict[Path, set[str]] = {}
    for path in pages:
        page.goto(path.as_uri())
        links[path] = page.evaluate(LINKS)
        ids[path] = set(page.evaluate(IDS))
    for path, found in links.items():
        for link in found:
            if link.startswith("data:"):
                continue
            address, anchor = urldefrag(link)
            target = Path(unquote(urlsplit(address).path))
            assert target.is_file(), f"{path.name} links to {link}"
            assert not anchor or unquote(anchor) in ids[target], f"{path.name} links to {link}"


def test_the_pages_work_in_a_window_320_wide(desk: BrowserContext, pages: list[Path]) -> None:
    page = desk.new_page()
    page.set_viewport_size({"width": 320, "height": 640})
    for path in pages:
        page.goto(path.as_uri())
        widths = page.evaluate(SIZES)
        assert max(width for _, width, _ in widths) <= 320, (path.name, widths)


def test_every_stop_of_the_tab_key_shows_where_it_is(desk: BrowserContext, pages: list[Path]) -> None:
    page = desk.new_page()
    for path in pages:
        page.goto(path.as_uri())
        stops = page.evaluate("[...document.querySelectorAll('a[href]')].filter(a => a.checkVisibility()).length")
        assert stops
        page.evaluate(WATCH)
        for _ in range(stops):
            page.keyboard.press("Tab")
        seen = page.evaluate("window.seen")
        assert len(seen) >= stops, path.name
        assert {outline for outline, _ in seen} == {"solid 3px"}, (path.name, seen)


def test_the_switch_shows_one_size_at_a_time_without_script(browser: Browser, site: Path) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    for path in sorted((site / "products").glob("*.html")):
        page.goto(path.as_uri())
        shown = page.locator(".variant:visible")
        assert shown.count() == 1
        for number in range(page.locator(".variant:visible .switch a").count()):
            link = page.locator(".variant:visible .switch a").nth(number)
            anchor = link.get_attribute("href")
            link.click()
            assert shown.count() == 1
            assert f"#{shown.get_attribute('id')}" == anchor
            assert page.locator(".switch a[aria-current]:visible").get_attribute("href") == anchor
    context.close()


def test_on_paper_every_size_is_printed_and_the_navigation_is_not(desk: BrowserContext, site: Path) -> None:
    page = desk.new_page()
    page.emulate_media(media="print")
    for path in sorted((site / "products").glob("*.html")):
        page.goto(path.as_uri())
        variants = page.locator(".variant")
        assert page.locator(".variant:visible").count() == variants.count() > 0
        assert page.locator("nav:visible").count() == 0
        titles = page.locator("h2.on-paper")
        assert titles.count() == (variants.count() if variants.count() > 1 else 0)
        for title in titles.all():
            box = title.bounding_box()
            assert box is not None
            assert (box["width"] > 40, box["height"] > 10) == (True, True)
