"""Time studies against published worked examples, at the precision printed there.

Readings struck out in the source are noted `out: struck out`, as an observer would; minutes are read as minutes.
"""

from __future__ import annotations

import math

import pytest

from builder.computing import allowance_factor, seam_time, summarise
from builder.geometry import polyline
from builder.model import Pace, Precision, StepStudy, read_study
from builder.reading import read_table

OF_BASIC, OF_SHIFT = "share of basic time", "share of the shift"


def study(rating: float, *readings: float | str, unit: str = "min") -> StepStudy:
    """One element as a study of its own; a text such as `36 out` is a reading struck out."""
    rows = []
    for cycle, one in enumerate(readings, start=1):
        number, _, out = str(one).partition(" ")
        rows.append(f"element,{cycle},{number},{rating},{'out: struck out' if out else ''}")
    text = f"step,cycle,reading ({unit}),rating,note\n" + "\n".join(rows)
    found = read_study(read_table(text.encode(), "s.csv"), findings := [])
    assert found is not None, findings
    return summarise(found, Precision()).steps[0]


def test_standard_time_with_an_allowance_of_job_time() -> None:
    """Worked answer at indextestingapp.uonbi.ac.ke/preguntia/14003372 (undated, read): 20, 24 and 28.8 s."""
    found = study(120, 27, 19, 20, 21, 13, unit="s")
    assert (found.mean_s, found.basic_s) == (20, pytest.approx(24))
    assert found.basic_s * allowance_factor(0.2, OF_BASIC) == pytest.approx(28.8)


HEIZER_28 = [
    (120, (35, 40, 33, 42, 39), 37.8, 45.36),
    (110, (12, 10, "36 out", 15, 13), 12.5, 13.75),
    (90, (3, 3, 5, 5, 4), 4.0, 3.6),
    (85, (15, 18, 21, 17, "45 out"), 17.75, 15.09),
]


def test_normal_time_with_two_observations_struck_out() -> None:
    """Heizer, Render, Munson, Principles of Operations Management, 11th ed. 2020, ch. 10, problem 28 (read): 77.8."""
    total = 0.0
    for rating, readings, mean, normal in HEIZER_28:
        found = study(rating, *readings)
        assert found.mean_s / 60 == pytest.approx(mean, abs=1e-9)
        assert found.basic_s / 60 == pytest.approx(normal, abs=0.005)
        total += found.basic_s / 60
    assert total == pytest.approx(77.8, abs=0.05)


def test_average_observed_time() -> None:
    """QBA 361, ch. 10 supplement, University of Hawaii at Hilo, studylib.net/doc/5841379 (read): 129 and 21.5 min."""
    found = study(85, 20, 23, 19, 18, 24, 25)
    assert found.mean_s / 60 == pytest.approx(21.5, abs=1e-9)
    assert found.mean_s * found.n / 60 == pytest.approx(129, abs=1e-9)


def test_sixty_cycles_with_a_workday_allowance() -> None:
    """W. J. Stevenson, Operations Management, 14th ed. 2021, ch. 7, problem 2 (data read, answer memory)."""
    found = study(95, *[1.2] * 60)
    assert found.basic_s / 60 == pytest.approx(1.14, abs=0.005)
    assert found.basic_s / 60 * allowance_factor(0.10, OF_SHIFT) == pytest.approx(1.27, abs=0.005)


def test_nine_observations_with_an_allowance_of_job_time() -> None:
    """W. J. Stevenson, Operations Management, ch. 7, example 2 (memory): 10.35, 1.15, 1.30 and 1.56 min."""
    found = study(113, 1.12, 1.15, 1.16, 1.12, 1.15, 1.18, 1.14, 1.14, 1.19)
    assert found.mean_s * 9 / 60 == pytest.approx(10.35, abs=0.005)
    assert found.mean_s / 60 == pytest.approx(1.15, abs=0.005)
    assert found.basic_s / 60 == pytest.approx(1.30, abs=0.005)
    assert found.basic_s / 60 * allowance_factor(0.2, OF_BASIC) == pytest.approx(1.56, abs=0.005)


LETTERS = [
    (120, (8, 10, 9, "21 out", 11), 9.5, 11.4),
    (105, (2, 3, 2, 1, 3), 2.2, 2.31),
    (110, (2, 1, "5 out", 2, 1), 1.5, 1.65),
]


def test_three_elements_of_a_letter() -> None:
    """Heizer, Render, Munson, 11th ed. 2020, ch. 10, example 2 (data read, results memory): 15.36 and 18.07 min."""
    total = 0.0
    for rating, readings, mean, normal in LETTERS:
        found = study(rating, *readings)
        assert found.mean_s / 60 == pytest.approx(mean, abs=1e-9)
        assert found.basic_s / 60 == pytest.approx(normal, abs=1e-9)
        total += found.basic_s / 60
    assert total == pytest.approx(15.36, abs=1e-9)
    assert total * allowance_factor(0.15, OF_SHIFT) == pytest.approx(18.07, abs=0.005)


def test_five_observations_at_125() -> None:
    """Worked answer at studyx.ai/homework/100510392 (read): 30, 37.5 and 45 s."""
    found = study(125, 30, 25, 35, 30, 30, unit="s")
    assert (found.mean_s, found.basic_s) == (30, pytest.approx(37.5))
    assert found.basic_s * allowance_factor(0.2, OF_BASIC) == pytest.approx(45)


def test_worker_and_machine_with_allowances_of_their_own() -> None:
    """Solution of M. P. Groover, Work Systems, problem 2.7, coursehero.com/file/24703599 (read)."""
    machine = 5.39 - 0.84
    assert machine == pytest.approx(4.55, abs=1e-9)
    standard = 0.84 * allowance_factor(0.16, OF_BASIC) + machine * allowance_factor(0.3, OF_BASIC)
    assert standard == pytest.approx(6.889, abs=0.0005)
    hours = 85 * standard / 60
    assert hours == pytest.approx(9.76, abs=0.005)
    assert hours / 8 == pytest.approx(1.22, abs=0.005)
    operator = (480 - 42 - 85 * machine) if 85 * machine < 438 else 0.0
    assert operator == pytest.approx(51.25, abs=1e-9)
    assert 85 * 0.84 / operator == pytest.approx(1.393, abs=0.0005)


def test_standard_hours_efficiency_and_performance() -> None:
    """M. P. Groover, Work Systems, ch. 2 problems (data read, results computed): 9.3125 h, 1.164, 1.040."""
    hours = 75 * 7.45 / 60
    assert hours == pytest.approx(9.3125, abs=1e-9)
    assert hours / 8 == pytest.approx(1.164, abs=0.0005)
    normal = 7.45 / allowance_factor(0.15, OF_BASIC)
    assert 75 * normal / (480 - 13) == pytest.approx(1.04, abs=0.0005)


def test_work_sampling_of_three_elements() -> None:
    """transtutors.com, work sampling example (read): normal T·p·R/100/Q, 10 percent of the workday: 3.06 min."""
    normals = [400 * seen / 200 * rating / 100 / 150 for seen, rating in ((70, 80), (80, 120), (50, 110))]
    assert normals == pytest.approx([0.75, 1.28, 0.73], abs=0.005)
    standards = [one * allowance_factor(0.1, OF_SHIFT) for one in normals]
    assert standards == pytest.approx([0.83, 1.42, 0.81], abs=0.005)
    assert math.fsum(standards) == pytest.approx(3.06, abs=0.01)


def test_a_timed_loop_at_full_speed() -> None:
    """onlineclothingstudy.com 2012/07 (read): 200 cm at 4 stitches a cm in 12 s is 4000 st/min; turned round here."""
    typed = {"top speed": "4000 st/min", "acceleration": "9000000 mm/s2", "braking": "9000000 mm/s2"}
    pace = Pace.model_validate({**typed, "start": "0 s", "corner stop": "0 s", "finish": "0 s"})
    assert seam_time(polyline([(0, 0), (2000, 0)]), 2.5, 0, 0, pace) == pytest.approx(12, abs=0.001)
