"""What templates say: sizes, states, chains of dimensions, and the operations that use them."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.geometry import ShapeBook
from builder.model import Linked
from builder.pipeline import check_plant, plant_views_of
from builder.view import PAPERS, TemplateView
from builder.view.templates import TemplateMaker
from tests.checking.overlay import lay_over
from tests.plants import linked

PLANT = """
plant.yaml: {template limit: 0.5 mm}
parts/panel.yaml:
  grain: up
  features:
    tacks: {bartack: 28, length: 10 mm, width: 2.5 mm, at: {left: 30 mm, bottom: 60 mm}, count: 4, pitch: 40 mm}
templates/all.yaml:
  templates:
    gauge: {title: Hem, kind: gauge, of: sew-hem/hem, number: G-1, date: 2026-10-12}
    tack-row: {title: Tack row, kind: marking, of: panel, features: tacks, number: T-1, date: 2026-10-12, card: 1.5 mm}
    panel: {title: Panel, kind: part, of: panel, number: P-1, revision: C, date: 2026-10-12}
"""


def maker(one: Linked) -> TemplateMaker:
    """Makes the templates of a linked plant."""
    return TemplateMaker(
        one.model, one.dimensions, ShapeBook(one.model.parts, one.model.states, one.dimensions.definitions)
    )


def views(folder: Path, more: str = "") -> dict[str, TemplateView]:
    """The templates of the small plant, by name."""
    return {view.name: view for view in maker(linked(PLANT + more, folder)).templates()}


def test_a_gauge_is_cut_to_the_limits_around_the_parts_own_value(tmp_path: Path) -> None:
    """`± 1 mm` around the seam's 12 mm: GO 11, NO GO 13."""
    gauge = views(tmp_path)["gauge"]
    ends = {line.role: max(s.end[0] for s in line.path) for line in gauge.lines if line.role in ("go", "no go")}
    assert ends == pytest.approx({"go": 11.0, "no go": 13.0})
    lines = gauge.words[0].lines
    assert lines[0] == "*GO  11 mm (0.433 in)"
    assert lines[-1] == "*NO GO  13 mm (0.512 in)"
    assert "Check against a steel rule" in lines
    assert "G-1  revision A" in lines[2]


def test_a_marking_card_has_a_slit_at_each_place_and_the_chain_that_leads_to_it(tmp_path: Path) -> None:
    """Edge to first, three pitches, all of them, and the row from the bottom."""
    card = views(tmp_path)["tack-row"]
    slits = [line for line in card.lines if line.role == "slit"]
    assert len(slits) == 4
    assert [round(min(s.start[0] for s in slit.path), 6) for slit in slits] == [29, 69, 109, 149]
    texts = [one.text for one in card.dimensions]
    assert texts.count("40 mm (1.57 in)") == 3
    assert "30 mm (1 3/16 in)" in texts
    assert "60 mm (2.36 in)" in texts
    assert "3 × 40 mm (1.57 in) = 120 mm (4.72 in)" in texts
    assert {words.lines[0] for words in card.words} == {"*DATUM left edge of Panel", "*DATUM bottom edge of Panel"}
    for one in card.dimensions:
        length = abs(one.end[0] - one.start[0]) + abs(one.end[1] - one.start[1])
        assert f"{length:g} mm" in one.text


def test_a_part_says_what_it_is_on_itself(tmp_path: Path) -> None:
    """Number, revision, material, how many, grain: the paper about it is cut away."""
    panel = views(tmp_path)["panel"]
    assert panel.label[0] == "P-1  Panel"
    assert panel.label[1] == "revision C"
    assert "cut 1 for Pouch" in panel.label
    assert "grain up" in panel.label
    assert {line.role for line in panel.lines} >= {"cut edge", "notch", "fold", "seam", "bartack", "hardware"}


def test_a_turned_part_turns_its_grain_and_all_its_lines(tmp_path: Path) -> None:
    """Windows of Letter are higher than wide: a panel as long as one is high stands."""
    wide = "\nproducts/pouch.yaml: {sizes: {L: {panel.width: 196 mm, panel.height: 100 mm}}}"
    one = linked(PLANT + wide, tmp_path)
    template = one.model.templates["panel"].model_copy(update={"size": "L"})
    view = maker(one).view("panel", template, PAPERS["Letter"])
    assert len(view.sheets) == 1
    assert view.grain == 180.0
    xs = [p[0] for segment in view.outline for p in (segment.start, segment.end)]
    ys = [p[1] for segment in view.outline for p in (segment.start, segment.end)]
    assert max(xs) - min(xs) == pytest.approx(100)
    assert max(ys) - min(ys) == pytest.approx(196)


MEASURED = "measured: {across: %s, along: 100 mm, date: 2026-10-13, by: K2}"


@pytest.mark.parametrize(
    ("record", "state"),
    [("card: 1 mm", "not yet measured"), (MEASURED % "100.2 mm", ""), (MEASURED % "100.9 mm", "not in use")],
)
def test_sheets_and_pages_say_how_the_copy_stands(record: str, state: str, tmp_path: Path) -> None:
    """On the sheet of the operation that measures with it, under what comes in; the gauge goes by its number."""
    example = f"""
plant.yaml: {{template limit: 0.5 mm}}
operations/sew-hem.yaml: {{tolerances: {{hem: {{with: gauge}}}}}}
templates/gauge.yaml:
  {{template: gauge, title: Hem, kind: gauge, of: sew-hem/hem, number: G-1, date: 2026-10-12, {record}}}
"""
    checked = check_plant(lay_over(example, tmp_path / "plant"))
    assert not checked.has_errors, checked.findings
    assert checked.fails is (state == "not in use")
    found = plant_views_of(checked)
    sheet = next(one for one in found.sheets if one.operation == "sew-hem")
    assert sheet.measures[0].gauge == "card gauge G-1"
    assert [one.state for one in sheet.templates] == [state]
    assert sheet.templates[0].said in sheet.incoming
    assert ("NOT IN USE" in sheet.templates[0].said) is (state == "not in use")
    assert bool(sheet.templates[0].path) is (state != "not in use")
    assert [one.usable for one in found.templates] == [state != "not in use"]


def test_the_code_of_a_template_follows_what_it_is_cut_to(tmp_path: Path) -> None:
    """Another limit is another code; another revision or date is not."""
    one = views(tmp_path / "a")["gauge"]
    later = views(tmp_path / "b", "\noperations/sew-hem.yaml: {code: SEW-11}")["gauge"]
    other = views(tmp_path / "c", "\noperations/sew-hem.yaml: {tolerances: {hem: {is: ± 2 mm}}}")["gauge"]
    assert one.tag == later.tag
    assert one.tag != other.tag


def test_the_limit_is_told_for_the_longest_side(tmp_path: Path) -> None:
    """0.5 mm in 100 is 1.5 mm in 300."""
    assert views(tmp_path)["panel"].reach == "At that limit 300 mm here is 1.5 mm off."


def test_a_step_names_the_template_it_is_done_by(tmp_path: Path) -> None:
    """In its action line, by number; the sheet's code follows it, because another template is another way to work."""
    sheets = {}
    for name, step in (("with", "{step: lay, with: panel}"), ("without", "{step: lay}")):
        more = f"\noperations/sew-hem.yaml: {{steps: [{step}]}}"
        checked = check_plant(lay_over(PLANT + more, tmp_path / name))
        assert not checked.has_errors, checked.findings
        sheets[name] = next(one for one in plant_views_of(checked).sheets if one.operation == "sew-hem")
    assert sheets["with"].steps[0].said == "Lay the panel face down. Template **P-1**."
    assert sheets["with"].tag != sheets["without"].tag
