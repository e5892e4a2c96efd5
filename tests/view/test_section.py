"""Sections as figures: what lies over what, what is dimensioned, what is said."""

from __future__ import annotations

import itertools
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.geometry import End, Plies, Ply
from builder.model import Linked
from builder.pipeline import check_plant, plant_views_of
from builder.view import FigureView, goods_of
from tests.checking.overlay import lay_over
from tests.drawing.gallery_sections import SECTIONS, section_gallery
from tests.plants import linked

HEM = """
parts/panel.yaml:
  features:
    hem-fold: {fold: top, inset: 15 mm, side: wrong}
    hem-seam: {seam: top, inset: 27 mm, side: wrong}
operations/sew-hem.yaml:
  tolerances: {raw-edge: {what: seam to the raw edge, is: 3 mm ± 1, with: rule, every: each piece}}
  steps: [{step: hem, shows: section of hem-seam, check: [hem, raw-edge]}]
"""


def shown(folder: Path, example: str = HEM) -> FigureView:
    """The first section of the small plant's sheet."""
    views = plant_views_of(check_plant(lay_over(example, folder / "plant")))
    return next(
        figure
        for sheet in views.sheets
        for step in sheet.steps
        for figure in step.details
        if isinstance(figure, FigureView)
    )


def test_a_section_stands_beside_the_part(tmp_path: Path) -> None:
    """Named after its step, with the kind of seam in its words."""
    figure = shown(tmp_path)
    assert "section" in figure.name
    assert "Finished edge (ISO 4916 class 6, EF)." in figure.alt
    assert "goes through: 2" in figure.alt


def test_the_distance_checked_carries_its_tolerance(tmp_path: Path) -> None:
    """3 mm to the raw edge in the accent, 12 mm to the fold for reference."""
    figure = shown(tmp_path)
    texts = {line.text.partition(" (")[0]: line.strong for line in figure.dimensions}
    assert texts == {"3 mm ± 1": True, "12 mm": False}


def test_what_is_sewn_now_is_in_the_accent_and_earlier_work_is_not(tmp_path: Path) -> None:
    """All threads of one seam."""
    figure = shown(tmp_path)
    assert {one.when for one in figure.strokes if one.role == "thread"} == {"now"}
    assert next(one.fill for one in figure.strokes if one.role == "thread") == "needle"


def test_facts_say_plies_and_exact_dimensions_but_no_place_on_the_drawing(tmp_path: Path) -> None:
    """A new look of the drawing makes no new issue."""
    facts = dict(shown(tmp_path).facts)
    assert facts["section of"] == "panel/hem-seam"
    assert facts["ply 1"] == "panel, wrong side up, on to fold, held"
    assert facts["panel/hem-seam.inset"].startswith("27 ")


@pytest.mark.parametrize("name", SECTIONS)
def test_bands_close_and_each_ply_is_in_one(name: str) -> None:
    """Outlines end where they begin."""
    one, _, _ = SECTIONS[name]
    goods = goods_of(one.goods.within(-30, 30), 1.5, lambda part: None)
    bands = list(goods.bands())
    assert sorted(ply for band in bands for ply in band.names) == sorted(goods.placed)
    for band in bands:
        for a, b in itertools.pairwise((*band.ring, band.ring[0])):
            assert a.end == pytest.approx(b.start, abs=1e-6)


def test_every_section_has_threads_goods_and_a_needle() -> None:
    """In the gallery."""
    for figure in section_gallery():
        assert {"ply", "thread", "needle"} <= {one.role for one in figure.strokes}


def test_a_woven_edge_ends_where_it_is_dimensioned() -> None:
    """Round as it is drawn, it reaches no farther than its place."""
    one, _, _ = SECTIONS["edge-item"]
    goods = goods_of(one.goods.within(-30, 30), 1.5, lambda part: 1.6 if part == "webbing" else 0.35)
    band = next(band for band in goods.bands() if band.part == "webbing")
    assert min(one.bounds()[0] for one in band.ring) == pytest.approx(-15 * 1.5)
    assert max(one.bounds()[2] for one in band.ring) == pytest.approx(10 * 1.5)


@pytest.mark.parametrize("name", SECTIONS)
def test_goods_turn_over_at_every_fold_of_the_gallery(name: str) -> None:
    """The side that is up on one ply is down on the next."""
    one, _, _ = SECTIONS[name]
    for bend in one.goods.bends:
        assert one.goods.ply(bend.first).right_up != one.goods.ply(bend.second).right_up


def test_the_alternative_counts_the_needles() -> None:
    """One is the needle; of a cover stitch there are two."""
    said = {figure.name: figure.alt for figure in section_gallery()}
    assert "The needle comes from above; layers it goes through: 2." in said["section-hem"]
    assert "2 needles come from above; layers they go through: 2." in said["section-hem-602"]


plies = st.lists(st.tuples(st.floats(-50, 40), st.floats(1, 60), st.floats(0.05, 8)), min_size=1, max_size=9)


@given(plies)
def test_no_ply_lies_in_another(given_plies: list[tuple[float, float, float]]) -> None:
    """Those that overlap along the cut stand apart, in their order, none thinner than can be seen."""
    goods = goods_of(
        Plies(
            tuple(
                Ply(str(number), str(number), End(low, "cut"), End(low + long, "cut"))
                for number, (low, long, _) in enumerate(given_plies)
            )
        ),
        1.3,
        lambda part: given_plies[int(part)][2],
    )
    placed = list(goods.placed.values())
    for number, low in enumerate(placed):
        assert low.thick >= 1.1
        for high in placed[number + 1 :]:
            if low.low < high.high - 1e-3 and high.low < low.high - 1e-3:
                assert high.bottom >= low.top + 0.5


def test_a_class_that_is_none_is_refused(tmp_path: Path) -> None:
    """With the words there are."""
    found: Linked = linked("parts/panel.yaml: {features: {hem-seam: {class: laped}}}", tmp_path)
    assert any("lapped" in f"{one.message} {one.remedy}" for one in found.findings)
