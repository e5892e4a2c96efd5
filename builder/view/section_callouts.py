"""Words on the layers of a section: each part once, and one face that is a right or a wrong side."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence

from builder.geometry import Point
from builder.model import say
from builder.view.figure import Callout
from builder.view.section_goods import Goods, Placed

_MOST_LONG_LABELS = 2
_TRIES = 15
# A leader ends this far inside a face, and this far outside an end, printed mm.
_IN, _OUT = 0.35, 0.7
_ROOM = 27.0
# Nothing points to a face nearer to the seam than this; so many places on one side of it are enough.
_OFF_SEAM, _ENOUGH = 3.0, 3


def goods_callouts(goods: Goods, labels: Mapping[str, str], sided: Collection[str]) -> Iterator[Callout]:
    """A word for each part of the section, from the top, and one side told from the other.

    labels : what each part is called; behind a colon stands what is left out where there are many
    sided  : parts whose two sides differ
    """
    shown = sorted(goods.placed.values(), key=lambda one: -one.middle)
    parts = list(dict.fromkeys(one.ply.part for one in shown))
    for part in parts:
        text = labels.get(part, part)
        text = text.partition(":")[0] if len(parts) > _MOST_LONG_LABELS else text
        yield Callout(_spot([one for one in shown if one.ply.part == part], goods), text)
    marked = [one for one in shown if one.ply.part in sided]
    faces = ((say("wrong side"), False), (say("right side"), True))
    found = ((words, _on_face(one, right, goods)) for words, right in faces for one in marked)
    for words, point in found:
        if point is not None:
            yield Callout(point, words)
            return


def room_left(goods: Goods, notes: Sequence[Callout]) -> float:
    """Room to leave to the left of the goods for words that point to an end there, printed mm."""
    left = min(one.low for one in goods.placed.values())
    return _ROOM if any(note.at[0] < left for note in notes) else 0.0


def _spot(plies: Sequence[Placed], goods: Goods) -> Point:
    """Where the word for a part points: a face of it that lies open, else an end, else its middle."""
    for one in plies:
        above, below = _open(one, True, goods), _open(one, False, goods)
        xs = above if len(above) >= len(below) else below
        if xs:
            # Off the middle of the open stretch, which the side's own word may take.
            x = xs[len(xs) // 3]
            return (x, one.top - _IN) if xs is above else (x, one.bottom + _IN)
    for one in plies:
        for end, x in ((one.ply.low, one.low - _OUT), (one.ply.high, one.high + _OUT)):
            if end.kind in ("on", "cut", "woven") and _clear(x, one, goods):
                return x, one.middle
    return (plies[0].low + plies[0].high) / 2, plies[0].middle


def _on_face(one: Placed, right: bool, goods: Goods) -> Point | None:
    """A place on a ply's right or wrong face, if that lies open."""
    up = one.ply.right_up == right
    xs = _open(one, up, goods)
    return (xs[2 * len(xs) // 3], one.top if up else one.bottom) if xs else None


def _open(one: Placed, up: bool, goods: Goods) -> list[float]:
    """Places where nothing lies over, or under, a ply, off the seam."""
    step = (one.high - one.low) / _TRIES
    xs = [one.low + step * (number + 0.5) for number in range(_TRIES)]
    others = [two for two in goods.placed.values() if (two.middle > one.middle) == up and two is not one]
    free = [x for x in xs if abs(x) > _OFF_SEAM and not any(two.low - 1 < x < two.high + 1 for two in others)]
    # To the left there is room, to the right stand the dimensions and the edge.
    before = [x for x in free if x < 0]
    return before if len(before) >= _ENOUGH else free


def _clear(x: float, one: Placed, goods: Goods) -> bool:
    """Is there nothing beside an end at the ply's own height?"""
    return not any(two.low < x < two.high and two.bottom < one.middle < two.top for two in goods.placed.values())
