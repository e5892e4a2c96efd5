"""The record as the pages read it: one global of plain data, in a script that is loaded when a code is asked for."""

from __future__ import annotations

import json
from typing import Any

from builder.view import Record, SheetRecord

RECORD = "assets/record.js"
"""Where it lies in the output."""


def record_script(record: Record) -> bytes:
    """The record as a classic script, which a page from a folder may load where it may not fetch."""
    data = {
        "day": record.day,
        "lasts": record.lasts,
        "language": record.language,
        "sheets": {row.stem: _sheet(row) for row in record.sheets},
    }
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":")).replace("<", "\\u003c")
    return f"var seamboardRecord = {text};\n".encode()


def _sheet(row: SheetRecord) -> dict[str, Any]:
    ended = row.deviation
    facts = {
        "operation": row.operation,
        "code": row.code,
        "title": row.title,
        "station": row.station,
        "products": row.products,
        "revision": row.revision,
        "date": row.date,
        "tag": row.tag,
        "sizes": dict(row.sizes),
        "colours": dict(row.colours),
        "said": {one.language: {"tag": one.tag, "title": one.title} for one in row.said},
        "deviation": {"batches": ended.batches, "until": ended.until, "instead": ended.instead_of} if ended else None,
    }
    return {name: value for name, value in facts.items() if value}
