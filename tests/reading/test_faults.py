"""The table of faults agrees with the code that reports them."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

import builder.reading
from builder.finding import Place
from builder.reading import WHY
from builder.reading.faults import fault

# What SVG calls its own attributes (`text-anchor`) is no slug.
SOURCES = sorted(
    path for path in Path(builder.reading.__file__).parent.glob("*.py") if not path.name.startswith("svg_")
)
SLUG = re.compile(r'"(text-[a-z0-9-]+)"')


def test_every_fault_is_reported_somewhere_and_no_other_is() -> None:
    used = {
        slug for source in SOURCES if source.name != "faults.py" for slug in SLUG.findall(source.read_text("utf-8"))
    }
    assert used == set(WHY)


def test_every_reason_is_a_sentence() -> None:
    for slug, why in WHY.items():
        assert re.fullmatch(r"[A-Z].*\.", why), slug


def test_fault_without_a_reason_is_refused() -> None:
    with pytest.raises(KeyError):
        fault(Place("f"), "text-unheard-of", "m", "r")
