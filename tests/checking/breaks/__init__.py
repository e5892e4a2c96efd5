"""All breaks of the demo: every module of this folder with a list `BREAKS`."""

from __future__ import annotations

import importlib
import pkgutil

from tests.checking.breaks.fault import Break


def all_breaks() -> list[Break]:
    """In the order of the modules."""
    found: list[Break] = []
    for module in pkgutil.iter_modules(__path__):
        found += getattr(importlib.import_module(f"{__name__}.{module.name}"), "BREAKS", [])
    return found
