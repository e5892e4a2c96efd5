"""The demo plant is what its generators make and what its sheets may claim; the plant's own check is clean."""

from __future__ import annotations

import importlib.util
import math
import re
import sys
from pathlib import Path
from types import ModuleType

import pytest
import yaml
from PIL import Image

from builder.pipeline import check_plant
from tests.demo.make_studies import PLANS
from tests.demo.study_plan import Plan

PLANT = Path(__file__).resolve().parents[2] / "instructions"
OPERATIONS = sorted((PLANT / "operations").glob("*.yaml"))
GOODS = sorted(path for folder in ("materials", "parts", "products") for path in (PLANT / folder).glob("*.yaml"))
VAGUE = {"properly", "carefully", "correctly", "appropriate", "adequate", "sufficient", "ensure"}
UNITS = {"mm", "°C", "s", "N", "kPa", "kN"}


def _generator(name: str) -> ModuleType:
    path = Path(__file__).with_name(f"{name}.py")
    spec = importlib.util.spec_from_file_location(name, path)
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    sys.modules[name] = module  # dataclasses look their module up by name
    spec.loader.exec_module(module)
    return module


def test_the_plant_has_no_findings() -> None:
    """A demo with findings teaches to ignore them."""
    assert [str(finding) for finding in check_plant(PLANT).findings] == []


def test_the_studies_are_what_their_generator_makes() -> None:
    """Nobody edits a reading by hand."""
    generator = _generator("make_studies")
    made = {f"{plan.name}.csv": generator.text(plan) for plan in generator.PLANS}
    kept = {path.name: path.read_text(encoding="utf-8") for path in (PLANT / "studies").glob("*.csv")}
    assert made == kept


def _occurrences(step: dict[str, str], bundle: int, cycles: int) -> int:
    """How often a step may come in so many cycles, by its `per:`."""
    words = step.get("per", "piece").split()
    every = {"bundle": bundle, "batch": cycles}.get(words[0], int(words[0]) if words[-1] == "pieces" else 1)
    return math.ceil(cycles / every)


@pytest.mark.parametrize("plan", PLANS, ids=lambda plan: plan.name)
def test_an_occasional_step_is_read_no_oftener_than_it_comes(plan: Plan) -> None:
    """Two sheets of felt in twenty cycles, where one holds twenty, would be two stories."""
    bundle = yaml.safe_load((PLANT / "plant.yaml").read_text(encoding="utf-8"))["bundle"]
    operation = yaml.safe_load((PLANT / "operations" / f"{plan.head['operation']}.yaml").read_text(encoding="utf-8"))
    steps = {step["step"]: step for step in operation["steps"]}
    for element in plan.elements:
        if element.cycles:
            most = _occurrences(steps[element.step], operation.get("bundle", bundle), plan.cycles)
            assert len(element.cycles) <= most, element.step


@pytest.mark.parametrize("path", GOODS, ids=lambda path: path.stem)
def test_nothing_sold_claims_a_load(path: Path) -> None:
    """What a handle or a label holds is an estimate to be tested; nobody here rates it."""
    assert not re.search(r"\b\d+ ?(kg|kN|lb)\b", path.read_text(encoding="utf-8"))


@pytest.mark.parametrize("path", sorted((PLANT / "photos").glob("*.jpg")), ids=lambda path: path.stem)
def test_a_picture_is_light_and_large_enough(path: Path) -> None:
    """1600 x 1200 in under 200 kB."""
    with Image.open(path) as picture:
        assert picture.size == (1600, 1200)
    assert path.stat().st_size < 200_000


@pytest.mark.parametrize("path", OPERATIONS, ids=lambda path: path.stem)
def test_the_words_of_an_operation_are_short_and_plain(path: Path) -> None:
    """Twelve words an action, a reason to each key point, no vague word, a stop to each critical fault.

    Four to eight steps, beside the change of the bobbin; a number and its unit are read as one word.
    """
    operation = yaml.safe_load(path.read_text(encoding="utf-8"))
    for step in operation["steps"]:
        assert len([word for word in step["do"].split() if word not in UNITS]) <= 12, step["do"]
        assert "key" not in step or "why" in step, step["step"]
        words = " ".join(step.get(key, "") for key in ("do", "key", "why")).lower()
        assert not VAGUE & set(words.replace(".", " ").replace(",", " ").split()), words
    assert all("stop" in fault for fault in operation["faults"] if fault["class"] == "critical")
    assert (
        4
        <= len([step for step in operation["steps"] if not step["step"].startswith(("bobbin", "cone", "needle"))])
        <= 8
    )
