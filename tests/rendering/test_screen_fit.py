"""How large a floor screen's words stand."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from builder.rendering.screen_fit import FITS, fit_of
from tests.rendering.site_samples import CROWDED, SHEET

ORDER = [fit.name for fit in FITS]
BARE = replace(SHEET.steps[0], key="", checks=(), cautions=(), do="Press.")


def test_a_short_step_takes_the_largest_size() -> None:
    assert fit_of(SHEET, BARE) == "roomy"


def test_a_full_step_takes_the_smallest_size_and_a_fuller_one_room_from_the_figure() -> None:
    step = CROWDED.steps[0]
    assert fit_of(CROWDED, step) == "tight"
    assert fit_of(CROWDED, replace(step, checks=step.checks * 4)) == "tight full"


def test_the_set_up_screen_has_a_size() -> None:
    assert fit_of(SHEET, None) in ORDER


@given(st.text(alphabet="ab ", max_size=300), st.text(alphabet="ab ", max_size=80))
def test_more_words_never_stand_larger(words: str, more: str) -> None:
    before = ORDER.index(fit_of(SHEET, replace(BARE, do=words)))
    after = ORDER.index(fit_of(SHEET, replace(BARE, do=f"{words} {more}")))
    assert after >= before


def test_words_without_a_figure_have_the_whole_width() -> None:
    long = replace(BARE, do="Lay the panel face up, notch away from you, and smooth it from the middle outwards. " * 2)
    assert ORDER.index(fit_of(SHEET, replace(long, figure=None))) < ORDER.index(fit_of(SHEET, long))
