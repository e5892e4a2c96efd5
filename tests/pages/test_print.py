"""An instruction printed from its page says what its sheet says, with the same square code."""

from __future__ import annotations

import io
import re
import subprocess
from pathlib import Path

import pytest
import zxingcpp
from PIL import Image
from playwright.sync_api import BrowserContext
from pypdf import PdfReader

from builder.pipeline import check_plant, trees_of
from builder.view import SheetView
from tests.pages.conftest import DEMO

PAGES = ("sew-handle-end", "bind-edge", "join-bar-ends", "hem-strip-stiff", "cut-bar-ends")


@pytest.fixture(scope="session")
def sheets() -> dict[str, SheetView]:
    return {one.stem: one for one in trees_of(check_plant(DEMO))[0].views.sheets}


def letters(text: str) -> str:
    return re.sub(r"\W", "", text)


@pytest.mark.parametrize("stem", PAGES)
def test_the_print_says_what_the_sheet_says(
    desk: BrowserContext, site: Path, sheets: dict[str, SheetView], stem: str, tmp_path: Path
) -> None:
    page = desk.new_page()
    page.goto((site / "operations" / f"{stem}.html").as_uri())
    page.evaluate("document.fonts.ready")
    made = page.pdf(format="Letter", print_background=True)
    text = letters(" ".join(one.extract_text() for one in PdfReader(io.BytesIO(made)).pages))
    view = sheets[stem]
    said = [view.code, view.title, view.tag, view.revision, view.station_title, *view.notices]
    said += [word for step in view.steps for word in (step.said, step.key, step.why)]
    said += [one.what for step in view.steps for one in step.checks]
    said += [caution.text for caution in view.cautions] + [one.value for one in view.settings]
    said += [word for one in view.faults for word in (one.sign, one.cause, one.remedy, one.stop)]
    said += [value for row in view.sizes for value in (row.size, *row.values)]
    if view.deviation is not None:
        said += [view.deviation.only, view.deviation.because]
    for words in said:
        assert letters(words.replace("*", "")) in text, words
    file = tmp_path / "page.pdf"
    file.write_bytes(made)
    command = ["pdftoppm", "-r", "150", "-gray", "-png", "-singlefile", "-l", "1", str(file), str(tmp_path / "page")]
    subprocess.run(command, check=True)
    with Image.open(tmp_path / "page.png") as image:
        (found,) = zxingcpp.read_barcodes(image)
    assert found.text == view.qr
