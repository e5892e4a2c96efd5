"""What a step shows: a part, or a picture that explains one thing of the work.

`back-panel`, `back-panel, wrong side`, `section of hem-seam`, `stitch of hem-seam`, `layers of bar-bag`, `nest`,
`settings`. The grammar is this module.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal

ShownKind = Literal["part", "section", "stitch", "layers", "nest", "settings"]
SIDES = ("right side", "wrong side")
_OF = re.compile(r"(section|stitch|layers)\s+of\s+(\S.*)", re.DOTALL)
_ALONE: dict[str, ShownKind] = {"nest": "nest", "settings": "settings"}
_KINDS: dict[str, ShownKind] = {"section": "section", "stitch": "stitch", "layers": "layers"}


@dataclass(frozen=True, slots=True)
class Shown:
    """One picture asked for.

    kind   : part (as it stands) | section (layers cut across a seam) | stitch (its threads, close up) |
             layers (an assembly taken apart) | nest (pieces on the sheet) | settings (the machine's values)
    name   : the part or feature it is of, '' for nest and settings; `offset` where it begins in the text
    side   : what stands behind a comma, as typed; `side_offset` where it begins, -1 when there is none
    """

    kind: ShownKind
    name: str = ""
    offset: int = 0
    side: str = ""
    side_offset: int = -1

    @property
    def wrong(self) -> bool:
        """Is the wrong side turned up?"""
        return self.side == "wrong side"


def read_shown(text: str) -> Shown:
    """Read one `shows:`. Whether its name exists is for linking to say."""
    if text.strip() in _ALONE:
        return Shown(_ALONE[text.strip()])
    of = _OF.fullmatch(text.strip())
    if of is not None:
        name = of[2].strip()
        return Shown(_KINDS[of[1]], name, text.index(name, text.index(" of") + 3))
    name, comma, side = text.partition(",")
    if not comma:
        return Shown("part", name.strip(), len(name) - len(name.lstrip()))
    return Shown("part", name.strip(), 0, side.strip(), len(name) + 1 + len(side) - len(side.lstrip()))
