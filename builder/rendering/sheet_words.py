"""The words a sheet adds to what the view says: column heads, section titles, footer. English is the default.

A translation is another mapping with the same keys. `{…}` stands for a value the template or sheet_data puts in.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

ENGLISH: Mapping[str, str] = MappingProxyType(
    {
        "arrives": "comes in",
        "bundle": "bundle",
        "call": "stop and call",
        "cause": "cause",
        "code": "code",
        "colour": "colour",
        "colour_code": "colour code",
        "colours": "Colours",
        "contents": "Contents",
        "faults": "When something is wrong",
        "fingerprint": "size code",
        "gauge": "with",
        "goes": "goes next to",
        "job": "operation",
        "leaves": "where the work comes from and goes",
        "measure": "measure",
        "measures": "Checks",
        "must": "must be",
        "notice": "NOTICE",
        "page": "page {n} of {m}",
        "pdf_page": "page",
        "pieces_an_hour": "pieces an hour",
        "place": "where it is set, and how it is proved",
        "plan": "when",
        "qr": "QR code: {text}",
        "recorded_by": "recorded by {codes}",
        "remedy": "do this",
        "revision": "revision {revision}",
        "right": "Right",
        "set_to": "set to",
        "setting": "setting",
        "setup": "Set the machine",
        "sheet_title": "{code} {title}",
        "sign": "sign",
        "sign_alt": "safety sign: {name}",
        "size": "size",
        "sizes": "Sizes",
        "station": "station",
        "tag": "sheet code",
        "wrong": "Wrong",
    }
)


def filled(template: str, **values: str) -> str:
    """A word with its `{…}` replaced; a brace in a value is never read again.

    >>> filled("page {n} of {m}", n="1", m="2")
    'page 1 of 2'
    """
    text = ""
    for piece in template.split("{"):
        name, brace, rest = piece.partition("}")
        text += values[name] + rest if brace and name in values else piece
    return text
