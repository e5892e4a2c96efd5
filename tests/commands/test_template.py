"""`seamboard template`, and templates in a build."""

from __future__ import annotations

import io
from pathlib import Path

import pytest
from pypdf import PdfReader

from builder.errors import UsageError
from builder.pipeline import build_plant, check_plant, template_pdf
from tests.checking.overlay import lay_over
from tests.commands.test_commands import run

PLANT = """
plant.yaml: {template limit: 0.5 mm}
products/pouch.yaml: {sizes: {S: {}, L: {panel.width: 340 mm}}}
operations/sew-hem.yaml:
  tolerances: {hem: {with: hem-gauge}}
  steps: [{step: lay, with: panel-s}]
templates/all.yaml:
  templates:
    hem-gauge:
      {title: Hem, kind: gauge, of: sew-hem/hem, number: G-1, date: 2026-10-12,
       measured: {across: %s, along: 100 mm, date: 2026-10-13, by: K2}}
    panel-s: {title: Panel, kind: part, of: panel, size: S, number: P-1, date: 2026-10-12}
"""


def plant(folder: Path, across: str = "100.1 mm") -> Path:
    """The small plant with a gauge and a part template in use."""
    return lay_over(PLANT % across, folder / "plant")


def test_a_part_nobody_declared_is_printed_in_a_size(tmp_path: Path) -> None:
    """As an engineer starts it; the sheets are counted, and what to do is said."""
    out = tmp_path / "panel.pdf"
    answer = run("template", "panel", "--plant", plant(tmp_path), "--size", "L", "--paper", "a3", "--out", out)
    assert answer.returncode == 0, answer.stderr
    assert answer.stdout == f"{out}: 2 sheets. Print at 100 %, measure the check square.\n"
    pages = PdfReader(out).pages
    assert len(pages) == 2
    assert round(float(pages[0].mediabox.width) * 25.4 / 72) == 297
    assert "size L" in pages[0].extract_text()


@pytest.mark.parametrize(
    ("name", "size", "words"),
    [
        ("pannel", None, "no template or part is called pannel; did you mean panel"),
        ("panel", "XXL", "there is no size XXL"),
    ],
)
def test_wrong_names_are_told(name: str, size: str | None, words: str, tmp_path: Path) -> None:
    """With the near one."""
    with pytest.raises(UsageError, match=words):
        template_pdf(check_plant(plant(tmp_path)), name, None, size)


def test_a_plant_without_a_limit_prints_nothing(tmp_path: Path) -> None:
    """A check square nobody can judge is no check."""
    with pytest.raises(UsageError, match="template limit"):
        template_pdf(check_plant(lay_over("{}", tmp_path / "plant")), "panel", None, None)


def test_a_build_prints_templates_and_links_them(tmp_path: Path) -> None:
    """In templates/, from the page of the operation that uses them, in use or not yet measured."""
    out = tmp_path / "out"
    built = build_plant(plant(tmp_path), out)
    assert built.written is not None, built.checked.findings
    assert {path.name for path in (out / "templates").iterdir()} == {"hem-gauge.pdf", "panel-s.pdf"}
    page = (out / "operations" / "sew-hem.html").read_text(encoding="utf-8")
    assert 'href="../templates/hem-gauge.pdf"' in page
    assert "Template P-1, revision A, Panel: not yet measured" in page
    gauge = PdfReader(out / "templates" / "hem-gauge.pdf").pages[0].extract_text()
    assert "NOT YET MEASURED" not in gauge
    assert "Copy measured 2026-10-13: 100.1 mm across and 100 mm along, by K2." in " ".join(gauge.split())


def test_a_template_off_scale_is_built_no_more_and_its_page_says_so(tmp_path: Path) -> None:
    """The build goes on, because only it can tell the floor; the PDF of the build before is taken away."""
    out = tmp_path / "out"
    build_plant(plant(tmp_path / "a"), out)
    built = build_plant(plant(tmp_path / "b", "100.8 mm"), out)
    assert [one.rule for one in built.checked.findings] == ["template-off-scale"]
    assert built.written is not None
    assert not (out / "templates" / "hem-gauge.pdf").exists()
    page = (out / "operations" / "sew-hem.html").read_text(encoding="utf-8")
    assert "Template G-1, revision A, Hem: NOT IN USE, print it again" in page
    pages = PdfReader(out / "sheets" / "sew-hem.pdf").pages
    sheet = " ".join(" ".join(one.extract_text() for one in pages).split())
    assert "NOT IN USE" in sheet
    assert run("check", tmp_path / "b" / "plant").returncode == 1


def test_a_copy_off_scale_is_printed_anew_on_request(tmp_path: Path) -> None:
    """How else would it be replaced; the print says that the old copy goes."""
    pdf, sheets = template_pdf(check_plant(plant(tmp_path, "100.8 mm")), "hem-gauge", None, None)
    text = " ".join(PdfReader(io.BytesIO(pdf)).pages[0].extract_text().split())
    assert sheets == 1
    assert "NOT YET MEASURED. Throw the copy before it away: it was off." in text
