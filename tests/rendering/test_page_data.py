"""The values the templates are handed."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.rendering.page_data import BAR_ROOM, bar_of, product_data, root_of, step_data
from tests.rendering.site_samples import EDGE, PENS, PRODUCT, SHEET

ROW = PRODUCT.variants[0].rows[0]
shares = st.floats(0, 1)


def _number(percent: str) -> float:
    return float(percent.removesuffix("%")) if percent else 0.0


@given(shares, shares, shares)
def test_a_bar_is_its_sure_part_then_its_estimated_part(start: float, own: float, estimated: float) -> None:
    bar = bar_of(replace(ROW, start_share=start, own_share=own, estimated=estimated))
    assert _number(bar["start"]) == pytest.approx(BAR_ROOM * start, abs=0.006)
    assert _number(bar["end"]) == pytest.approx(BAR_ROOM * (start + own), abs=0.006)
    assert _number(bar["sure"]) + _number(bar["estimated"]) == pytest.approx(BAR_ROOM * own, abs=0.011)
    assert _number(bar["estimated"]) == pytest.approx(BAR_ROOM * own * estimated, abs=0.006)


def test_a_part_of_no_width_is_not_drawn() -> None:
    assert bar_of(replace(ROW, estimated=0.0))["estimated"] == ""
    assert bar_of(replace(ROW, estimated=1.0))["sure"] == ""


@pytest.mark.parametrize(("path", "root"), [("index.html", ""), ("floor/x.html", "../"), ("a/b/c.html", "../../")])
def test_the_way_back_to_the_output_folder(path: str, root: str) -> None:
    assert root_of(path) == root


def test_thumbnails_have_no_words_and_names_of_their_own() -> None:
    drawn = []
    pens = replace(PENS, figure=lambda figure: drawn.append(figure) or "")  # type: ignore[func-returns-value]
    product_data(PRODUCT, pens)
    assert len({figure.name for figure in drawn}) == len(drawn) == 24
    assert not any(figure.callouts or figure.dimensions or figure.side or figure.start for figure in drawn)


def test_a_product_of_one_variant_has_no_switch() -> None:
    assert not product_data(replace(PRODUCT, variants=PRODUCT.variants[:1]), PENS)["several"]


def test_a_value_that_differs_is_shown_for_the_size_picked() -> None:
    """Each line of the check has its place in the switch; one value for all has none."""
    sized = replace(EDGE, sizes=(("S", "10 mm ± 1", "0.39 in"), ("L", "12 mm ± 1", "0.47 in")))
    step = replace(SHEET.steps[0], checks=(sized, EDGE))
    differing, same = step_data(step, PENS, ["S", "L"])["checks"]
    assert [(one["pick"], one["value"]) for one in differing["values"]] == [(1, "S 10 mm ± 1"), (2, "L 12 mm ± 1")]
    assert [one["pick"] for one in same["values"]] == [0]
