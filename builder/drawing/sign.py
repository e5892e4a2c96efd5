"""Safety signs, drawn by us after the descriptions of ISO 7010 and the shapes of ISO 3864.

Door of the signs: what a sign is and its SVG. Not the signal word and the words beside a sign, which the
sheet and the page add; and no sign of our own invention: a hazard without a registered sign takes W001 and
words.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType
from xml.sax.saxutils import escape

from builder.drawing.signs import (
    mandatory_done,
    mandatory_worn,
    prohibition,
    safe_and_fire,
    warning,
    warning_machine,
)
from builder.drawing.signs.grounds import GROUNDS, Kind, shape_above, shape_below
from builder.drawing.signs.pen import Art, number
from builder.drawing.signs.register import TITLES

_KIND_OF_LETTER: dict[str, Kind] = {
    "W": "warning",
    "M": "mandatory",
    "P": "prohibition",
    "E": "safe condition",
    "F": "fire",
}
_ART: dict[str, Art] = {
    **warning.ART,
    **warning_machine.ART,
    **mandatory_done.ART,
    **mandatory_worn.ART,
    **prohibition.ART,
    **safe_and_fire.ART,
}


@dataclass(frozen=True, slots=True)
class Sign:
    """A registered safety sign.

    code        : reference number of ISO 7010, `W001`
    title       : registered title
    kind        : what the shape and colour say
    description : what the pictogram shows, one sentence, for those who can't see it
    """

    code: str
    title: str
    kind: Kind
    description: str


SIGNS: Mapping[str, Sign] = MappingProxyType(
    {code: Sign(code, title, _KIND_OF_LETTER[code[0]], description) for code, (title, description) in TITLES.items()}
)


def sign_svg(code: str, size: float = 100.0) -> str:
    """A sign as a document of its own: no style, script, id or text but the title, nothing fetched.

    size : width and height, in the reader's unit, > 0
    Raises KeyError for a code not in SIGNS, ValueError for a size that is not above zero.
    """
    if not size > 0:
        raise ValueError(f"a sign can't be {size} wide")
    side = number(size)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100" width="{side}" height="{side}">'
        f"<title>{escape(SIGNS[code].title)}</title>{sign_body(code)}</svg>"
    )


@cache
def sign_body(code: str) -> str:
    """What stands inside a sign's svg element, for a nested svg or a symbol with viewBox 0 0 100 100.

    Raises KeyError for a code not in SIGNS.
    """
    kind = SIGNS[code].kind
    pictogram = "".join(_ART[code](GROUNDS[kind].pen()))
    return shape_below(kind) + pictogram + shape_above(kind)
