"""Fixtures shared by all tests."""

from __future__ import annotations

import os
import shutil
from pathlib import Path

import pytest
from hypothesis import settings

# How fast a reader is, is no matter of property tests: a shared machine is sometimes slow.
settings.register_profile("shared machine", deadline=None)
settings.load_profile("shared machine")

# Rules about age ask what day it is; in tests it is always 25 November 2026.
os.environ["SOURCE_DATE_EPOCH"] = "1795564800"

ROOT = Path(__file__).resolve().parent.parent


@pytest.fixture
def demo(tmp_path: Path) -> Path:
    """A copy of the demo plant that a test may change, in its own language only: three take three times as long."""
    target = tmp_path / "instructions"
    shutil.copytree(ROOT / "instructions", target, ignore=shutil.ignore_patterns("languages"))
    return target
