"""Fixtures shared by all tests."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent


@pytest.fixture()
def demo(tmp_path: Path) -> Path:
    """A copy of the demo plant that a test may change."""
    target = tmp_path / "instructions"
    shutil.copytree(ROOT / "instructions", target)
    return target
