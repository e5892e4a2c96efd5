"""Every page before two outside judges: axe-core for access, the Nu checker for HTML."""

from __future__ import annotations

import json
import os
import subprocess
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext

TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
# preload would fetch the style sheets again, which the pages' policy refuses.
RUN = """tags => axe.run(document, {runOnly: {type: 'tag', values: tags}, preload: false})
                    .then(r => r.violations.map(v => v.id + ': ' + v.nodes.map(n => n.html).join(' | ')))"""


def _program(variable: str, package: str) -> Path:
    value = os.environ.get(variable)
    if not value:
        pytest.skip(f"{variable} is not set: the path of {package}, which tests/run installs")
    assert Path(value).is_file(), f"{variable} names no file"
    return Path(value)


def test_axe_finds_nothing_on_any_page(desk: BrowserContext, pages: list[Path]) -> None:
    axe = _program("SEAMBOARD_AXE", "axe-core's axe.min.js").read_text(encoding="utf-8")
    page = desk.new_page()
    found: list[str] = []
    for path in pages:
        page.goto(path.as_uri())
        anchors = page.evaluate("[...document.querySelectorAll('.screen, .variant')].map(e => e.id)")
        for anchor in {"", *anchors[1:2], *anchors[-1:]}:
            page.goto("about:blank")
            page.goto(f"{path.as_uri()}#{anchor}" if anchor else path.as_uri())
            page.evaluate(axe)
            found += [f"{path.name}#{anchor} {problem}" for problem in page.evaluate(RUN, TAGS)]
    assert found == []


def test_axe_is_awake(desk: BrowserContext) -> None:
    """A page with a fault is found faulty, so that silence above means something."""
    axe = _program("SEAMBOARD_AXE", "axe-core's axe.min.js").read_text(encoding="utf-8")
    page = desk.new_page()
    page.set_content("<!doctype html><title>x</title><p><img src='data:,'></p>")
    page.evaluate(axe)
    assert any(problem.startswith("image-alt") for problem in page.evaluate(RUN, TAGS))


def test_the_nu_checker_finds_nothing_on_any_page(every_page: list[Path]) -> None:
    jar = _program("SEAMBOARD_VNU", "vnu-jar's vnu.jar")
    command = ["java", "-jar", str(jar), "--errors-only", "--format", "json", *map(str, every_page)]
    report = subprocess.run(command, capture_output=True, text=True, check=False)
    messages = json.loads(report.stderr)["messages"]
    assert [f"{Path(m['url']).name}:{m.get('lastLine')}: {m['message']}" for m in messages] == []
