"""What a study says, step by step."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.computing import readings_needed, summarise
from builder.model import NEEDED_METHODS, Precision, Study, StudySummary, read_study
from builder.reading import read_table

HEADER = "step,cycle,reading,rating,note\n"


def study_of(rows: str, header: str = HEADER) -> Study:
    study = read_study(read_table((header + rows).encode(), "s.csv"), findings := [])
    assert study is not None, findings
    return study


def summary_of(rows: str, header: str = HEADER) -> StudySummary:
    return summarise(study_of(rows, header), Precision())


def test_basic_time_is_rated_reading_by_reading() -> None:
    """4 s at 85 and 4 s at 115 are 4 s; the rating shown is their mean."""
    (step,) = summary_of("lay,1,4,85,\nlay,2,4,115,\n").steps
    assert (step.n, step.mean_s, step.rating) == (2, 4.0, 100.0)
    assert step.basic_s == pytest.approx(4.0)
    assert step.sd_s == 0.0
    assert step.basic_sd_s == pytest.approx(0.6 * 2**0.5)


def test_occurrences_in_a_cycle_are_added() -> None:
    (step,) = summary_of("trim,1,1.0,100,\ntrim,1,1.5,100,\ntrim,2,2.0,100,\ntrim,2,2.5,100,\n").steps
    assert (step.n, step.mean_s, step.rows_a_cycle) == (2, 3.5, 2.0)


def test_an_odd_reading_is_flagged_and_counts_until_its_note_says_why() -> None:
    rows = [f"lay,{i},{s},100," for i, s in enumerate([20, 21, 19, 20, 22, 20, 30], start=1)]
    (step,) = summary_of("\n".join(rows)).steps
    assert [one.cycle for one in step.flagged()] == ["7"]
    assert step.n == 7
    (again,) = summary_of("\n".join([*rows[:-1], "lay,7,30,100,out: thread broke"])).steps
    assert (again.n, again.flagged(), [one.cycle for one in again.left_out()]) == (6, (), ["7"])


def test_foreign_elements_are_kept_out_and_listed() -> None:
    found = summary_of("lay,1,4,100,\nlay,1,9,100,foreign: question from the next bench\n")
    assert found.steps[0].mean_s == 4.0
    assert [(one.seconds, one.note) for one in found.foreign] == [(9.0, "foreign: question from the next bench")]


def test_one_reading_has_no_interval_and_asks_for_more() -> None:
    (step,) = summary_of("lay,1,4,100,\n").steps
    assert (step.sd_s, step.interval_s, step.needed, step.more_needed) == (None, None, None, 1)


def test_equal_readings_need_no_more() -> None:
    (step,) = summary_of("lay,1,4,100,\nlay,2,4,100,\nlay,3,4,100,\n").steps
    assert (step.interval_s, step.more_needed, step.comparable) == ((4.0, 4.0), 0, False)


def test_a_step_with_all_readings_out_says_nothing() -> None:
    assert summary_of("lay,1,4,100,out: fell\n").steps == ()


def test_a_machine_that_paces_itself_is_not_rated() -> None:
    found = summarise(study_of("press,1,2,80,\npress,2,2,80,\n"), Precision(), {"press"})
    assert (found.steps[0].basic_s, found.steps[0].rated) == (2.0, False)


@given(st.lists(st.integers(10, 1000), min_size=2, max_size=30), st.integers(50, 150), st.integers(2, 4))
def test_basic_time_scales_with_the_rating(tenths: list[int], rating: int, factor: int) -> None:
    """All ratings times a factor give the basic time and its interval times that factor."""
    rows = [f"lay,{i},{value / 10},{{}}," for i, value in enumerate(tenths)]
    one = summary_of("\n".join(rows).replace("{}", str(rating))).steps[0]
    many = summary_of("\n".join(rows).replace("{}", str(rating * factor))).steps[0]
    assert many.basic_s == pytest.approx(factor * one.basic_s)
    assert one.interval_s is not None
    assert many.interval_s == pytest.approx(tuple(factor * end for end in one.interval_s))
    assert many.more_needed == one.more_needed


@pytest.mark.parametrize(("method", "needed"), list(zip(NEEDED_METHODS, (18, 19, 16, 15), strict=True)))
def test_the_forms_of_readings_needed(method: str, needed: int) -> None:
    """Fifteen values with mean 20 and s 2: iterated 18, pilot 19, normal 16, 40√ 15 (definition of this project)."""
    plain = [float(i) for i in range(-7, 8)]
    scale = 2 / (sum(value**2 for value in plain) / 14) ** 0.5
    values = [20 + scale * value for value in plain]
    assert readings_needed(values, Precision(method=method)) == needed


def test_an_unknown_form_is_refused() -> None:
    with pytest.raises(ValueError, match="no form"):
        readings_needed([1.0, 2.0], Precision(method="guess"))


def test_the_mean_is_that_of_exact_fractions() -> None:
    study = study_of("lay,1,0.1,100,\nlay,2,0.2,100,\n")
    assert sum(one.rated_s for one in study.of_step("lay")) / 2 == Fraction(3, 20)


def test_learning_is_fitted_over_several_days_from_times_as_timed() -> None:
    """Two steps, pieces 1 to 400 over two days at 85 %: the rating doesn't hide it; a study of one day has none."""
    header = "step,cycle,reading,rating,date\n"
    rows = [
        f"{step},{n},{share * 40 * n**-0.2344653:.4f},{round(60 + 6 * n**0.3)},2026-10-{1 + (n > 20):02d}\n"
        for n in (1, 2, 5, 10, 20, 100, 400)
        for step, share in (("lay", 0.3), ("sew", 0.7))
    ]
    found = summary_of("".join(rows), header)
    assert found.learning is not None
    assert found.learning.rate == pytest.approx(0.85, abs=1e-4)
    assert found.learning.first == pytest.approx(40, rel=1e-3)
    assert summary_of("".join(rows).replace("-02", "-01"), header).learning is None
