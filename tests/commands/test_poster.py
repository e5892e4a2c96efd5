"""`seamboard poster`: one step on one sheet, its letters as high as the distance asks."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.errors import UsageError
from builder.model import capital_mm
from builder.pipeline import check_plant, poster_pdf
from tests.checking.overlay import lay_over
from tests.rendering import sheet_pdf


@pytest.fixture(scope="module")
def plant(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return lay_over("{}", tmp_path_factory.mktemp("poster") / "plant")


@pytest.mark.parametrize(
    ("paper", "distance", "mm"), [("A3", "3 m", 3000), ("A4 landscape", "1.5 m", 1500), ("Letter", "2 m", 2000)]
)
def test_the_action_is_as_high_as_the_distance_asks(plant: Path, paper: str, distance: str, mm: float) -> None:
    pdf = poster_pdf(check_plant(plant), "sew-hem", "hem", distance, paper)
    assert len(sheet_pdf.read(pdf).pages) == 1
    large = "".join(piece.text for piece in sheet_pdf.pieces(pdf) if piece.capital >= capital_mm(mm) - 0.02)
    assert "Sew the hem." in large
    assert all(piece.capital >= 2.5 for piece in sheet_pdf.pieces(pdf))
    root = sheet_pdf.read(pdf).trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"]


@pytest.mark.parametrize(
    ("operation", "step", "distance", "paper", "told"),
    [
        ("sew-hen", "hem", "3 m", "A3", "did you mean sew-hem"),
        ("sew-hem", "fly", "3 m", "A3", "lay, fold-over, hem, look"),
        ("sew-hem", "hem", "far", "A3", "--distance far"),
        ("sew-hem", "hem", "30 m", "A4", "doesn't fit"),
    ],
)
def test_what_can_not_be_printed_is_wrong_usage(
    plant: Path, operation: str, step: str, distance: str, paper: str, told: str
) -> None:
    with pytest.raises(UsageError, match=told):
        poster_pdf(check_plant(plant), operation, step, distance, paper)
