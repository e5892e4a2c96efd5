"""The words a sheet adds to what the view says: column heads, section titles, footer. English is the default.

A translation is another mapping with the same keys. `{…}` stands for a value the template or sheet_data puts in.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from builder.model import phrase

ENGLISH: Mapping[str, str] = MappingProxyType(
    {
        "arrives": phrase("comes in"),
        "bundle": phrase("bundle"),
        "call": phrase("stop and call"),
        "cause": phrase("cause"),
        "code": phrase("code"),
        "colour": phrase("colour"),
        "colour_code": phrase("colour code"),
        "colours": phrase("Colours"),
        "contents": phrase("Contents"),
        "deviation": phrase("DEVIATION"),
        "empty_back": phrase("This side is left empty: the next sheet begins on a new leaf."),
        "faults": phrase("When something is wrong"),
        "fingerprint": phrase("size code"),
        "gauge": phrase("with"),
        "goes": phrase("goes next to"),
        "job": phrase("operation"),
        "leaves": phrase("where the work comes from and goes"),
        "measure": phrase("measure"),
        "measures": phrase("Checks"),
        "must": phrase("must be"),
        "notice": phrase("NOTICE"),
        "page": phrase("page {n} of {m}"),
        "pdf_page": phrase("page"),
        "pieces_an_hour": phrase("pieces an hour"),
        "place": phrase("where it is set, and how it is proved"),
        "plan": phrase("when"),
        "qr": phrase("QR code: {text}"),
        "recorded_by": phrase("recorded by {codes}"),
        "remedy": phrase("do this"),
        "revision": phrase("revision {revision}"),
        "right": phrase("Right"),
        "set_to": phrase("set to"),
        "setting": phrase("setting"),
        "setup": phrase("Set the machine"),
        "sheet_title": phrase("{code} {title}"),
        "sign": phrase("sign"),
        "sign_alt": phrase("safety sign: {name}"),
        "size": phrase("size"),
        "sizes": phrase("Sizes"),
        "station": phrase("station"),
        "tag": phrase("sheet code"),
        "read_by": phrase("cautions read by {code}"),
        "words_tag": phrase("translation {tag}"),
        "wrong": phrase("Wrong"),
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
