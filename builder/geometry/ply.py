"""What a cut across the goods meets: plies over each other, the bends that join them, the stitches through them.

Plain data and what can be done with it: turned over, cut off, moved. All places are mm along the line of the cut.
Making one from parts is cross_cut.py.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from typing import Literal

EndKind = Literal["cut", "woven", "fold", "on"]
_SAME_MM = 1e-6


@dataclass(frozen=True, slots=True)
class End:
    """Where a ply ends.

    kind : cut (a cut edge) | woven (the finished edge of a tape or webbing) | fold (a bend joins it to another ply) |
           on (it goes on; only the picture ends)
    """

    at: float
    kind: EndKind


@dataclass(frozen=True, slots=True)
class Ply:
    """One layer along the cut.

    name     : unique in its section; `part` the part it is cut from, or the material of a tape
    right_up : its right side lies upward
    """

    name: str
    part: str
    low: End
    high: End
    right_up: bool = True

    def covers(self, at: float) -> bool:
        """Does it lie at a place?"""
        return self.low.at - _SAME_MM < at < self.high.at + _SAME_MM

    def turned(self) -> Ply:
        """The other side up."""
        return replace(self, right_up=not self.right_up)


@dataclass(frozen=True, slots=True)
class Bend:
    """Goods that turn back: two plies joined round a place. `way` 1: they lie before it, -1: behind it."""

    first: str
    second: str
    at: float
    way: int


@dataclass(frozen=True, slots=True)
class Pierced:
    """Stitches through the goods. `width`: of what lies across the seam, as a bartack; `plies` what they go through."""

    part: str
    feature: str
    at: float
    plies: frozenset[str]
    width: float = 0.0


@dataclass(frozen=True, slots=True)
class Plies:
    """Everything along one cut; plies from the lowest to the highest."""

    plies: tuple[Ply, ...] = ()
    bends: tuple[Bend, ...] = ()
    pierced: tuple[Pierced, ...] = ()

    def ply(self, name: str) -> Ply:
        """A ply by its name. Raises KeyError."""
        for one in self.plies:
            if one.name == name:
                return one
        raise KeyError(name)

    def over(self, other: Plies) -> Plies:
        """This laid on another."""
        return Plies((*other.plies, *self.plies), (*other.bends, *self.bends), (*other.pierced, *self.pierced))

    def turned(self) -> Plies:
        """Turned over about the line of the cut: the highest lies lowest, places stay."""
        return replace(self, plies=tuple(one.turned() for one in reversed(self.plies)))

    def renamed(self, word: Callable[[str], str]) -> Plies:
        """The same under other names."""
        return Plies(
            tuple(replace(one, name=word(one.name)) for one in self.plies),
            tuple(replace(one, first=word(one.first), second=word(one.second)) for one in self.bends),
            tuple(replace(one, plies=frozenset(map(word, one.plies))) for one in self.pierced),
        )

    def moved(self, by: float, mirrored: bool = False) -> Plies:
        """Moved along the cut; mirrored (about 0) first, if asked."""
        sign = -1.0 if mirrored else 1.0

        def end(one: End) -> End:
            return End(sign * one.at + by, one.kind)

        plies = (
            replace(one, low=end(one.high if mirrored else one.low), high=end(one.low if mirrored else one.high))
            for one in self.plies
        )
        bends = (replace(one, at=sign * one.at + by, way=-one.way if mirrored else one.way) for one in self.bends)
        pierced = (replace(one, at=sign * one.at + by) for one in self.pierced)
        return Plies(tuple(plies), tuple(bends), tuple(pierced))

    def within(self, low: float, high: float, kind: EndKind = "on") -> Plies:
        """What lies between two places; plies cut off there end as `kind`."""
        plies = tuple(
            replace(
                one,
                low=one.low if one.low.at > low + _SAME_MM else End(low, kind),
                high=one.high if one.high.at < high - _SAME_MM else End(high, kind),
            )
            for one in self.plies
            if one.low.at < high - _SAME_MM and one.high.at > low + _SAME_MM
        )
        left = {one.name for one in plies}
        bends = (b for b in self.bends if low <= b.at <= high and {b.first, b.second} <= left)
        pierced = (
            replace(one, plies=one.plies & left) for one in self.pierced if low <= one.at <= high and one.plies & left
        )
        return Plies(plies, tuple(bends), tuple(pierced))

    def pieces(self) -> tuple[tuple[str, ...], ...]:
        """Names of the plies of each piece of goods, lowest first: plies joined by bends are one piece."""
        group = {one.name: {one.name} for one in self.plies}
        for bend in self.bends:
            joined = group[bend.first] | group[bend.second]
            group.update(dict.fromkeys(joined, joined))
        order = [one.name for one in self.plies]
        found: dict[str, tuple[str, ...]] = {}
        for name in order:
            found.setdefault(min(group[name], key=order.index), tuple(sorted(group[name], key=order.index)))
        return tuple(found.values())


def through(plies: Iterable[Ply], at: float) -> frozenset[str]:
    """Names of the plies at a place."""
    return frozenset(one.name for one in plies if one.covers(at))
