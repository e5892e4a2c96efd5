"""What tests of views share."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from builder.pipeline import check_plant, plant_views_of
from builder.view import SheetView
from tests.conftest import ROOT


@pytest.fixture(scope="session")
def demo_sheets() -> Mapping[str, SheetView]:
    """Sheets of the demo as it is, by stem; a test that edits a copy holds them against it."""
    return {one.stem: one for one in plant_views_of(check_plant(ROOT / "instructions")).sheets}
