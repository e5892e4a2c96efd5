"""Times for programs: the JSON object and the CSV table of `seamboard times`, unrounded."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Mapping
from typing import Any

from builder.commands.times_asked import Asked
from builder.model import PlantModel, ProductTime, Results, RouteLine, Spread, StationShare, in_colour
from builder.view import origin_words


def as_json(asked: Iterable[Asked], results: Results, model: PlantModel) -> dict[str, Any]:
    """One object with stable keys."""
    return {"batch": results.batch, "products": [_product(one, results, model) for one in asked]}


def _product(asked: Asked, results: Results, model: PlantModel) -> dict[str, Any]:
    one = asked.time
    return {
        "product": one.product,
        "variant": one.variant,
        "colour": asked.colour,
        "standard_minutes": one.standard_min,
        "machine_minutes": one.machine_min,
        "estimate_share": one.estimate_share,
        "interval": _interval(one.spread) if one.spread is not None else None,
        "operations": [_line(line, one, results, model) for line in one.lines],
        "stations": [_station(share) for share in one.stations],
        "labour_grades": [
            {"labour_grade": grade or None, "minutes": labour, "machine_minutes": machine}
            for grade, (labour, machine) in by_grade(one, model).items()
        ],
        "materials": [_use(use, asked.swaps) for use in one.materials],
    }


def _interval(spread: Spread) -> dict[str, Any]:
    return {
        "low_minutes": spread.low_min,
        "high_minutes": spread.high_min,
        "confidence": spread.confidence,
        "width_from_estimates": spread.estimates_width,
        "sources": [
            {
                "source": part.source,
                "minutes": part.minutes,
                "error_minutes": part.error_min,
                "variance_share": part.share,
                "estimated": part.estimated,
            }
            for part in spread.parts
        ],
        "time_next": [
            {"operation": one.operation, "cycles": one.cycles, "minutes": one.minutes, "gain": one.gain}
            for one in spread.following
        ],
    }


def _line(line: RouteLine, one: ProductTime, results: Results, model: PlantModel) -> dict[str, Any]:
    time = results.operations.get((line.operation, one.product, one.variant or ""))
    return {
        "operation": line.operation,
        "station": line.station,
        "labour_grade": model.stations[line.station].labour_grade,
        "quantity": float(line.quantity),
        "own_minutes": line.own_min,
        "own_machine_minutes": line.own_machine_min,
        "cumulative_minutes": line.cumulative_min,
        "estimate_share": line.estimate_share,
        "run_share": line.run_share,
        "allowances": dict(time.allowance) if time is not None else {},
        "comes_from": origin_words(line, time),
    }


def _station(share: StationShare) -> dict[str, Any]:
    capacity = share.capacity
    return {
        "station": share.station,
        "minutes": share.labour_min,
        "machine_minutes": share.machine_min,
        "pieces_a_shift_by_labour": capacity.by_labour,
        "pieces_a_shift_by_machine": capacity.by_machine,
        "held_by": capacity.limit or None,
    }


def by_grade(one: ProductTime, model: PlantModel) -> dict[str, tuple[float, float]]:
    """Labour and machine minutes by labour grade, in the order of the route; '' where a station has none."""
    found: dict[str, tuple[float, float]] = {}
    for share in one.stations:
        grade = model.stations[share.station].labour_grade or ""
        labour, machine = found.get(grade, (0.0, 0.0))
        found[grade] = (labour + share.labour_min, machine + share.machine_min)
    return found


def _use(use: Any, swaps: Mapping[str, str]) -> dict[str, Any]:
    return {
        "material": in_colour(use.material, swaps),
        "area_mm2": use.area_mm2,
        "length_mm": use.length_mm,
        "pieces": use.pieces,
        "seam_mm": use.seam_mm,
        "thread_mm": use.thread_mm,
        "thread_most_mm": use.thread_most_mm,
    }


_COLUMNS = (
    *("product", "size", "colour", "operation", "station", "labour_grade", "runs"),
    *("labour_min", "so_far_min", "machine_min", "estimated", "comes_from"),
)


def as_csv(asked: Iterable[Asked], results: Results, model: PlantModel) -> str:
    """A row an operation, for spreadsheets; decimal points, commas."""
    out = io.StringIO()
    rows = csv.writer(out, lineterminator="\n")
    rows.writerow(_COLUMNS)
    for one in asked:
        for line in one.time.lines:
            plain = _line(line, one.time, results, model)
            rows.writerow(
                [
                    one.time.product,
                    one.time.variant or "",
                    one.colour or "",
                    line.operation,
                    line.station,
                    plain["labour_grade"] or "",
                    plain["quantity"],
                    line.own_min,
                    line.cumulative_min,
                    line.own_machine_min,
                    line.estimate_share,
                    plain["comes_from"],
                ]
            )
    return out.getvalue()
