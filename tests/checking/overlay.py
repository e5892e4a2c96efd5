"""Lays a rule's example over a small plant: YAML whose keys are files, their content merged in.

Tables are merged key by key, lists of steps by the name of the step, everything else is replaced.
"""

from __future__ import annotations

import shutil
from collections.abc import Iterable
from pathlib import Path
from typing import Any

import yaml

from builder.finding import Finding

SMALL_PLANT = Path(__file__).parent / "plant"
IDLE = {
    "feature-never-made",
    "made-never-used",
    "mass-missing",
    "material-never-used",
    "operation-on-no-product",
    "part-never-used",
    "station-without-operations",
}
"""Rules on things nothing uses. A test of another rule may add a thing without a place in the small plant."""


def without_idle(findings: Iterable[Finding]) -> list[Finding]:
    """The findings without those on things nothing uses."""
    return [one for one in findings if one.rule not in IDLE]


class _Words(yaml.SafeLoader):
    """Every scalar stays a text, as the reading room keeps it."""


_Words.yaml_implicit_resolvers = {}


DRAWING = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 3"><path d="M0 0L4 3"/></svg>'


def lay_over(example: str, folder: Path) -> Path:
    """A copy of the small plant with the example laid over it."""
    shutil.copytree(SMALL_PLANT, folder)
    for file, content in yaml.load(example, Loader=_Words).items():
        path = folder / file
        path.parent.mkdir(exist_ok=True)
        if isinstance(content, str):
            path.write_text(content, encoding="utf-8")
            continue
        before = yaml.load(path.read_text(encoding="utf-8"), Loader=_Words) if path.exists() else {}
        path.write_text(yaml.safe_dump(_merged(before, content), sort_keys=False, allow_unicode=True), encoding="utf-8")
    if "photos/hem.svg" in example:
        (folder / "photos").mkdir(exist_ok=True)
        (folder / "photos" / "hem.svg").write_text(DRAWING)
    for name, size in (("hem.jpg", (1200, 900)), ("small.jpg", (320, 240))):
        if f"photos/{name}" in example:
            (folder / "photos").mkdir(exist_ok=True)
            _write_photo(folder / "photos" / name, size)
    return folder


def _merged(before: Any, over: Any) -> Any:
    if isinstance(before, dict) and isinstance(over, dict):
        return {**before, **{key: _merged(before.get(key), value) for key, value in over.items()}}
    if _steps(before) and _steps(over):
        named = {step["step"]: step for step in before}
        for step in over:
            if sum(one["step"] == step["step"] for one in over) > 1:
                return over
            named[step["step"]] = {**named.get(step["step"], {}), **step}
        return list(named.values())
    return over


def _steps(value: Any) -> bool:
    return isinstance(value, list) and bool(value) and all(isinstance(one, dict) and "step" in one for one in value)


def _write_photo(path: Path, size: tuple[int, int]) -> None:
    from PIL import Image

    Image.new("RGB", size, (200, 190, 170)).save(path)
