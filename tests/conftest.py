"""Fixtures shared by all tests."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from hypothesis import settings

# How fast a reader is, is no matter of property tests: a shared machine is sometimes slow.
settings.register_profile("shared machine", deadline=None)
settings.load_profile("shared machine")

ROOT = Path(__file__).resolve().parent.parent


@pytest.fixture
def demo(tmp_path: Path) -> Path:
    """A copy of the demo plant that a test may change."""
    target = tmp_path / "instructions"
    shutil.copytree(ROOT / "instructions", target)
    return target
