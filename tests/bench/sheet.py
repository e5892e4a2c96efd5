"""`python -m tests.bench.sheet [SHEETS]`: what a sheet costs, against what else could print it. Only ratios count.

- against a print of the same content from its page by headless Chromium, the browser warm: with the page loaded
  before the clock runs, and with loading it, as a builder of many sheets has to
- against the bare typesetting of the same content: no step measured, no page packed, no table fitted
- the memory of a build of so many sheets, in this process and those it forks
"""

from __future__ import annotations

import os
import resource
import shutil
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path
from statistics import median
from time import perf_counter

from playwright.sync_api import sync_playwright

from builder.pipeline import build_plant, check_plant, planner_of, trees_of
from builder.rendering import Planner
from builder.rendering.sheet import SheetPress, render_sheet, shown_photos
from builder.view import SheetView
from tests.bench.make_plant import make_plant

DEMO = Path(__file__).resolve().parents[2] / "instructions"
BARE = """
#import "look.typ": *
#import "frame.typ": edge
#import "head.typ": head-card
#import "step.typ": step-block
#import "tables.typ": fits, set-tables, tables-of
#let data = json(bytes(sys.inputs.data))
#let drawn(picture) = if picture != none { (..picture, svg: bytes(picture.svg)) }
#let signed(line) = (..line, sign: drawn(line.sign))
#let ready(s) = (..s, words: data.words, picture: drawn(s.picture), qr: drawn(s.qr),
  cautions: s.cautions.map(signed), protection: s.protection.map(signed),
  steps: s.steps.map(step => (..step, figure: drawn(step.figure), details: step.details.map(drawn),
    cautions: step.cautions.map(signed))))
#set document(title: data.title, author: data.author, keywords: data.keywords)
#set text(font: data.families, fill: ink, hyphenate: false, ..data.sheets.first().language)
#set par(leading: 0.6em, spacing: 0.6em, justify: false)
#show heading: set text(size: 1em)
#show heading: it => block(it.body)
#let s = ready(data.sheets.first())
#let width = s.paper.width * 1mm - 2 * edge.x
#set page(width: s.paper.width * 1mm, height: s.paper.height * 1mm, margin: (x: edge.x, y: 25mm))
#head-card(s, width)
#for step in s.steps { step-block(s, step, width) }
#let all = tables-of(s)
#set-tables(s, all, fits.first(), all.map(_ => false), false, width)
"""


def _median_s(work: Callable[[SheetView], object], views: list[SheetView]) -> float:
    times = []
    for view in views:
        started = perf_counter()
        work(view)
        times.append(perf_counter() - started)
    return median(times)


def _press(planner: Planner, press: SheetPress) -> Callable[[SheetView], bytes]:
    def one(view: SheetView) -> bytes:
        photos = {photo.name: planner.read_photo(photo) for photo in shown_photos(view)}
        return render_sheet(view, photos, press)

    return one


def _printed(site: Path, views: list[SheetView]) -> tuple[float, float]:
    """Seconds to load a page and to print it, the browser warm: two pages are printed before the clock runs."""
    program = os.environ.get("SEAMBOARD_CHROMIUM") or shutil.which("chromium")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=program, args=["--no-sandbox"])
        page = browser.new_page()
        loads, prints = [], []
        for view in views:
            started = perf_counter()
            page.goto((site / "operations" / f"{view.stem}.html").as_uri())
            page.evaluate("document.fonts.ready")
            loads.append(perf_counter() - started)
            started = perf_counter()
            page.pdf(format="Letter", print_background=True)
            prints.append(perf_counter() - started)
        browser.close()
    return median(loads[2:]), median(prints[2:])


def main(sheets: int) -> None:
    """Measure and print."""
    checked = check_plant(DEMO)
    planner = planner_of(checked, trees_of(checked)[:1])
    views = list(planner.views.sheets)
    with tempfile.TemporaryDirectory() as folder:
        out = Path(folder) / "out"
        build_plant(DEMO, out)
        theme = Path(folder) / "theme"
        theme.mkdir()
        (theme / "bare.typ").write_text(BARE, encoding="utf-8")
        with (
            SheetPress(*planner.theme.sheets) as press,
            SheetPress(theme, *planner.theme.sheets, entry="bare.typ") as bare,
        ):
            fitted, plain = _press(planner, press), _press(planner, bare)
            for view in views:  # figures drawn, both presses warm
                fitted(view)
                plain(view)
            # Set again with another code: what the typesetter keeps of the same text would be no work at all.
            own = _median_s(fitted, [_other(view) for view in views])
            simple = _median_s(plain, [_other(view) for view in views])
        load, printing = _printed(out, views)
        print(f"a sheet against a print from its page, loaded before: {own / printing:.2f} ×")
        print(f"a sheet against loading and printing its page: {own / (load + printing):.2f} ×")
        print(f"its bare typesetting against loading and printing its page: {simple / (load + printing):.2f} ×")
        print(f"a sheet against its bare typesetting: {own / simple:.2f} ×")
        plant = make_plant(sheets, Path(folder) / "plant")
        started = perf_counter()
        built = build_plant(plant, Path(folder) / "many")
        assert built.written is not None
        count = len(list((Path(folder) / "many" / "sheets").glob("*.pdf")))
        own_mb = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
        child_mb = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024
        print(f"a build of {count} sheets: at most {own_mb:.0f} MB here, {child_mb:.0f} MB in a process of it", end="")
        print(f", {count / (perf_counter() - started):.1f} sheets a second with pages and figures")
    planner.close()


def _other(view: SheetView) -> SheetView:
    from dataclasses import replace

    return replace(view, steps=tuple(replace(step, do=f"{step.do} ") for step in view.steps), revision="Z")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 1000)
