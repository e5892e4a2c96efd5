"""Sections of every class of seam, built by hand, to be looked at and measured."""

from __future__ import annotations

from builder.geometry import Bend, End, Pierced, Plies, Ply, Section
from builder.view import FigureView, SectionWords, drawn_section

_FAR = 200.0
_THICK = {"tape": 0.5, "webbing": 1.6, "foam": 5.0, "cloth": 0.35, "lining": 0.2}
_KINDS = {"tape": "tape", "webbing": "webbing", "foam": "foam", "lining": "cloth 2"}


def ply(part: str, low: float, high: float, ends: str = "cut cut", up: bool = True, name: str = "") -> Ply:
    """A ply with the kinds of its two ends; one that begins or ends at 200 mm goes on."""
    first, last = ends.split()
    return Ply(name or part, part, End(low, first), End(high, last), up)  # type: ignore[arg-type]


def section(
    *plies: Ply, bends: tuple[Bend, ...] = (), held: str = "", width: float = 0.0, others: tuple[Pierced, ...] = ()
) -> Section:
    """A section with its seam at 0 through the plies named, or through all that lie there."""
    names = frozenset(held.split()) if held else frozenset(one.name for one in plies if one.covers(0.0))
    seam = Pierced("part", "seam", 0.0, names, width)
    return Section("part", "seam", Plies(plies, bends, (*others, seam)), seam)


def hem() -> Section:
    """Folded once, the raw edge caught."""
    return section(
        ply("cloth", -_FAR, 12, "on fold", up=False),
        ply("cloth", -3, 12, "cut fold", name="turned"),
        bends=(Bend("cloth", "turned", 12, 1),),
    )


def double_hem() -> Section:
    """Folded twice: the raw edge lies inside."""
    return section(
        ply("cloth", -_FAR, 13, "on fold", up=False),
        ply("cloth", -1, 12, "fold cut", up=False, name="inner"),
        ply("cloth", -1, 13, "fold fold", name="turned"),
        bends=(Bend("cloth", "turned", 13, 1), Bend("inner", "turned", -1, -1)),
    )


def superimposed() -> Section:
    """Right sides together, edges even."""
    return section(ply("lining", -_FAR, 10), ply("cloth", -_FAR, 10, up=False))


def french() -> Section:
    """Raw edges inside a second seam; the first one, sewn wrong sides together, lies in the fold."""
    plies = (
        ply("lining", -_FAR, 6, "on fold"),
        ply("lining", 1.5, 6, "cut fold", up=False, name="lining in"),
        ply("cloth", 1.5, 6, "cut fold", name="cloth in"),
        ply("cloth", -_FAR, 6, "on fold", up=False),
    )
    bends = (Bend("lining", "lining in", 6, 1), Bend("cloth in", "cloth", 6, 1))
    closing = Pierced("part", "closing", 5.0, frozenset({"lining in", "cloth in"}))
    return section(*plies, bends=bends, others=(closing,))


def lapped() -> Section:
    """One over the other, raw edges on opposite sides."""
    return section(ply("lining", -8, _FAR), ply("cloth", -_FAR, 8))


def felled() -> Section:
    """Edges folded into each other, two rows."""
    plies = (
        ply("lining", -_FAR, 5, "on fold"),
        ply("cloth", -5, 4, "fold cut", up=False, name="cloth in"),
        ply("lining", -4, 5, "cut fold", up=False, name="lining in"),
        ply("cloth", -5, _FAR, "fold on"),
    )
    bends = (Bend("lining", "lining in", 5, 1), Bend("cloth in", "cloth", -5, -1))
    row = Pierced("part", "seam", -3.0, frozenset(one.name for one in plies))
    return section(*plies, bends=bends, others=(row,))


def bound() -> Section:
    """A tape round two layers."""
    plies = (
        ply("tape", -3, 8, "woven fold", up=False, name="below"),
        ply("cloth", -_FAR, 8, up=False),
        ply("lining", -_FAR, 8),
        ply("tape", -3, 8, "woven fold", name="above"),
    )
    return section(*plies, bends=(Bend("below", "above", 8, 1),))


def flat() -> Section:
    """Edges butted under a zigzag."""
    return section(ply("cloth", -_FAR, -0.1), ply("lining", 0.1, _FAR), held="cloth lining", width=5.0)


def decorative() -> Section:
    """A row on one layer."""
    return section(ply("cloth", -_FAR, _FAR))


def overedge() -> Section:
    """An overlocked edge."""
    return section(ply("cloth", -_FAR, 5))


def edge_item() -> Section:
    """A webbing along an edge."""
    return section(ply("cloth", -_FAR, 10), ply("webbing", -15, 10, "woven woven"))


def strip_alone() -> Section:
    """A loop folded in three, its raw edges below, where the looper thread covers them."""
    plies = (
        ply("cloth", -7, 9, "cut fold", up=False, name="second"),
        ply("cloth", -9, 7, "fold cut", up=False, name="first"),
        ply("cloth", -9, 9, "fold fold"),
    )
    return section(*plies, bends=(Bend("first", "cloth", -9, -1), Bend("second", "cloth", 9, 1)))


def strip_end() -> Section:
    """A webbing with its end folded under, in a box."""
    plies = (
        ply("cloth", -_FAR, _FAR),
        ply("webbing", -37, 3, "cut fold", up=False, name="under"),
        ply("webbing", -_FAR, 3, "cut fold"),
    )
    row = Pierced("part", "seam", -32.0, frozenset(one.name for one in plies))
    return section(*plies, bends=(Bend("under", "webbing", 3, 1),), others=(row,))


def tacked() -> Section:
    """A bartack on folded webbing."""
    plies = (ply("cloth", -_FAR, _FAR), ply("webbing", -28, 12, "fold cut", up=False))
    upper = ply("webbing", -28, 12, "fold cut", name="over")
    return section(*plies, upper, bends=(Bend("webbing", "over", -28, -1),), width=2.5)


def padded() -> Section:
    """Foam that stays clear of the seam."""
    return section(ply("lining", -_FAR, 10), ply("foam", -_FAR, -6), ply("cloth", -_FAR, 10))


def covered() -> Section:
    """A hem turned under and sewn face up with a cover stitch: its raw edge lies between the rows, over the looper."""
    return section(
        ply("cloth", -1.5, 16, "cut fold", up=False, name="turned"),
        ply("cloth", -_FAR, 16, "on fold"),
        bends=(Bend("turned", "cloth", 16, 1),),
    )


# name: (section, class of ISO 4916, stitch type)
SECTIONS = {
    "superimposed": (superimposed(), 1, "301"),
    "superimposed-401": (superimposed(), 1, "401"),
    "superimposed-514": (superimposed(), 1, "514"),
    "superimposed-516": (superimposed(), 1, "516"),
    "french": (french(), 1, "301"),
    "lapped": (lapped(), 2, "301"),
    "felled": (felled(), 2, "401"),
    "bound": (bound(), 3, "301"),
    "flat": (flat(), 4, "304"),
    "decorative": (decorative(), 5, "301"),
    "hem": (hem(), 6, "301"),
    "double-hem": (double_hem(), 6, "301"),
    "overedge-504": (overedge(), 6, "504"),
    "overedge-503": (overedge(), 6, "503"),
    "hem-602": (covered(), 6, "602"),
    "edge-item": (edge_item(), 7, "301"),
    "strip-alone": (strip_alone(), 8, "406"),
    "strip-end": (strip_end(), 5, "301"),
    "tacked": (tacked(), 5, "304"),
    "padded": (padded(), 1, "301"),
}


def section_gallery() -> list[FigureView]:
    """Each of them drawn."""
    return [_drawn(name, one, stitch) for name, (one, _, stitch) in SECTIONS.items()]


def _drawn(name: str, one: Section, stitch: str) -> FigureView:
    key = ("part", "seam")
    words = SectionWords(
        {part: part for part in _THICK}, _KINDS, frozenset({"cloth", "lining"}), dict(_THICK), {key: stitch}
    )
    return drawn_section(one, f"section-{name}", words, frozenset({key}))
