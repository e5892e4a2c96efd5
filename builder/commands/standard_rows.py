"""The plant's standard data for programs: one row an element, as JSON and as CSV, unrounded."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from builder.computing import Candidate, element_candidates, prediction_half
from builder.model import Element, ElementData, Fit, PlantModel, Results, refusal_words


@dataclass(frozen=True, slots=True)
class ElementRow:
    """An element with what the studies say of it and what rests on it.

    data     : None for a typed time
    age_days : since the date of a typed time, None without a date
    rests    : operations with a step that takes its time from it, in some size
    """

    name: str
    element: Element
    data: ElementData | None
    age_days: int | None
    rests: tuple[str, ...]

    @property
    def form(self) -> str:
        """`typed`, `constant`, or the terms of its line."""
        if self.data is None:
            return "typed"
        return " + ".join(("constant", *self.data.varies_with))


def element_rows(model: PlantModel, results: Results, today: date) -> list[ElementRow]:
    """All elements: derived ones first, each group in the order of the files."""
    users = results.element_users()
    rows = [
        ElementRow(
            name,
            element,
            results.standard_data.get(name),
            (today - element.date).days if element.date is not None and not element.derived else None,
            users.get(name, ()),
        )
        for name, element in model.elements.items()
    ]
    return sorted(rows, key=lambda row: row.data is None)


def candidates(model: PlantModel, results: Results) -> list[Candidate]:
    """Work that several studies timed and no element is derived from."""
    return element_candidates(model, results.studies, results.precision.confidence)


def as_json(rows: Iterable[ElementRow], found: Iterable[Candidate], model: PlantModel) -> dict[str, Any]:
    """One object with stable keys."""
    return {"elements": [_plain(row, model) for row in rows], "candidates": [_candidate(one) for one in found]}


def _plain(row: ElementRow, model: PlantModel) -> dict[str, Any]:
    element, data = row.element, row.data
    plain: dict[str, Any] = {
        "element": row.name,
        "title": element.title,
        "form": row.form,
        "basis": element.basis,
        "rests_on_it": list(row.rests),
    }
    if data is None:
        typed = float(element.time.value) if element.time is not None else None
        return {**plain, "time_s": typed, "date": str(element.date or "") or None, "age_days": row.age_days}
    return {
        **plain,
        **_pooled(data),
        "fit": _fit(data.fit) if data.fit is not None else None,
        "steps": [_step(one) for one in data.steps],
        "left_out": [{"step": one.name, "why": one.why} for one in data.left_out],
        "readings": data.readings,
        "refusal": _refusal(data, model),
    }


def _refusal(data: ElementData, model: PlantModel) -> str | None:
    return refusal_words(data.refusal, len(data.steps), model.plant.units) if data.refusal is not None else None


def _pooled(data: ElementData) -> dict[str, Any]:
    one = data.pooled
    return {
        "time_s": one.mean_s if one is not None else None,
        "interval_s": list(one.interval_s) if one is not None and one.interval_s is not None else None,
        "within_sd_s": one.within_sd_s if one is not None else None,
        "between_sd_s": one.between_sd_s if one is not None else None,
        "homogeneous": one.homogeneous if one is not None else None,
        "p": one.p if one is not None else None,
    }


def _fit(fit: Fit) -> dict[str, Any]:
    predicted = prediction_half(fit, fit.middle)
    return {
        "coefficients": [
            {"of": one.of, "value": one.value, "interval": list(one.interval)} for one in fit.coefficients
        ],
        "range": {name: list(span) for name, span in zip(fit.variables, fit.ranges, strict=True)},
        "residual_sd_s": fit.residual_sd_s,
        "r2": fit.r2,
        "middle": {
            "at": dict(zip(fit.variables, fit.middle, strict=True)),
            "time_s": fit.middle_s,
            "interval_s": [fit.middle_s - fit.middle_half_s, fit.middle_s + fit.middle_half_s],
            "one_more_step_s": [fit.middle_s - predicted, fit.middle_s + predicted],
        },
    }


def _step(one: Any) -> dict[str, Any]:
    return {
        "step": one.name,
        "time_s": one.seconds,
        "sd_s": one.sd_s,
        "n": one.n,
        "length_mm": one.length_mm,
        "corners": one.corners,
    }


def _candidate(one: Candidate) -> dict[str, Any]:
    return {
        "name": one.name,
        "work": one.work,
        "is_element": one.element,
        "steps": list(one.steps),
        "readings": one.pooled.n,
        "time_s": one.pooled.mean_s,
        "homogeneous": one.pooled.homogeneous,
    }


_COLUMNS = (
    *("element", "title", "form", "time_s", "low_s", "high_s", "homogeneous"),
    *("constant_s", "constant_low_s", "constant_high_s"),
    *("length_s_per_mm", "length_low_s_per_mm", "length_high_s_per_mm", "length_from_mm", "length_to_mm"),
    *("corners_s", "corners_low_s", "corners_high_s", "corners_from", "corners_to"),
    *("residual_sd_s", "r2", "steps", "readings", "basis", "date", "age_days", "rests_on_it", "refusal"),
)


def as_csv(rows: Sequence[ElementRow], model: PlantModel) -> str:
    """A row an element, for spreadsheets; decimal points, commas. What an element doesn't have is empty."""
    out = io.StringIO()
    table = csv.DictWriter(out, _COLUMNS, restval="", lineterminator="\n")
    table.writeheader()
    for row in rows:
        table.writerow({key: value for key, value in _cells(row, model).items() if value is not None})
    return out.getvalue()


def _cells(row: ElementRow, model: PlantModel) -> dict[str, Any]:
    element, data = row.element, row.data
    cells: dict[str, Any] = {
        "element": row.name,
        "title": element.title,
        "form": row.form,
        "time_s": float(element.time.value) if element.time is not None else None,
        "basis": element.basis,
        "date": element.date,
        "age_days": row.age_days,
        "rests_on_it": " ".join(row.rests),
    }
    if data is None:
        return cells
    cells |= {"steps": len(data.steps), "readings": data.readings, "refusal": _refusal(data, model)}
    if data.pooled is not None:
        low, high = data.pooled.interval_s or (None, None)
        alike = data.pooled.homogeneous
        cells |= {"time_s": data.pooled.mean_s, "low_s": low, "high_s": high}
        cells |= {"homogeneous": None if alike is None else "yes" if alike else "no"}
    return cells | (_fit_cells(data.fit) if data.fit is not None else {})


def _fit_cells(fit: Fit) -> dict[str, Any]:
    cells: dict[str, Any] = {"residual_sd_s": fit.residual_sd_s, "r2": fit.r2}
    for one in fit.coefficients:
        unit = "s_per_mm" if one.of == "length" else "s"
        cells |= {f"{one.of}_{unit}": one.value}
        cells |= {f"{one.of}_low_{unit}": one.interval[0], f"{one.of}_high_{unit}": one.interval[1]}
    for name, (low, high) in zip(fit.variables, fit.ranges, strict=True):
        unit = "_mm" if name == "length" else ""
        cells |= {f"{name}_from{unit}": low, f"{name}_to{unit}": high}
    return cells
