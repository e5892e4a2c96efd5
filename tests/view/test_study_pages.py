"""The pages of studies and the overview of times, from the demo and from small plants."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.pipeline import check_plant, plant_views_of
from builder.view import StudyPage, StudyRow, TimesPage
from builder.view.study_charts import bar_width
from tests.checking.overlay import lay_over

PLANT = """
operations/sew-hem.yaml:
  times: studies/hem.csv
studies/hem.csv: |
  # operation: sew-hem
  # station: lockstitch
  {more}
  step,cycle,reading,rating,note,date
  lay,1,20,100,,2026-10-01
  lay,2,21,100,,2026-10-01
  lay,3,19,100,,2026-10-01
  lay,4,20,100,,2026-10-02
  lay,5,22,100,,2026-10-02
  lay,6,20,100,,2026-10-02
  lay,7,30,100,,2026-10-02
  hem,1,8,100,out: thread broke,2026-10-01
  hem,2,8,100,,2026-10-01
  hem,2,5,100,foreign: question,2026-10-01
  hem,3,9,90,,2026-10-01
"""


def views(folder: Path, more: str = "# date: 2026-10-01") -> tuple[StudyPage, TimesPage]:
    """The study's page and the overview of a small plant."""
    built = plant_views_of(check_plant(lay_over(PLANT.replace("{more}", more), folder / "plant")))
    return built.studies[0], built.times


def row(page: StudyPage, step: str) -> StudyRow:
    return next(one for one in page.rows if one.step == step)


def test_an_odd_reading_is_named_and_drawn(tmp_path: Path) -> None:
    lay = row(views(tmp_path)[0], "lay")
    assert "Cycle 7 reads 30.0 s" in lay.remarks[0]
    assert lay.run is not None
    assert [point.kind for point in lay.run.points] == ["kept"] * 6 + ["flagged"]
    assert [mark.label for mark in lay.run.marks] == ["2026-10-02"]
    assert lay.bars is not None
    assert sum(bar.count for bar in lay.bars.bars) == 7
    assert sum(bar.flagged for bar in lay.bars.bars) == 1


def test_what_is_kept_out_is_listed_with_its_reason(tmp_path: Path) -> None:
    page = views(tmp_path)[0]
    assert page.kept_out == (
        "hem, cycle 1: 8.0 s, out: thread broke",
        "foreign element, cycle 2: 5.0 s, question",
    )
    assert row(page, "hem").n == "2"


def test_few_readings_have_no_bars(tmp_path: Path) -> None:
    assert row(views(tmp_path)[0], "hem").bars is None


def test_what_has_changed_since_is_said(tmp_path: Path) -> None:
    page, times = views(tmp_path, "# stitch length: 2.5 mm")
    assert "hem is scaled by its model" in page.changed[0]
    assert times.studies[0].changed == "changed since"


def test_the_overview_names_what_is_not_timed_and_what_to_time_next(tmp_path: Path) -> None:
    times = views(tmp_path)[1]
    assert [one.title for one in times.untimed] == ["Cut the panel", "Press the snap"]
    assert {one.link.title for one in times.following} <= {"Cut the panel", "Press the snap", "Sew the hem"}
    assert times.following


@pytest.mark.parametrize(
    ("low", "high", "count", "width"), [(2.0, 4.0, 20, 0.5), (10, 11, 100, 0.1), (0, 1, 10**6, 0.1)]
)
def test_bars_are_pleasantly_wide(low: float, high: float, count: int, width: float) -> None:
    assert bar_width(low, high, count) == pytest.approx(width)
