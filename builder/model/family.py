"""Which family of letters a language is set in, the files of its faces, and their measures.

One family for a whole language, chosen by the letters the language needs, so that its sheets look alike. Static faces
only: a variable font inside a drawing prints in its default weight. What a family lacks among marks (±, ½) is taken
from the default one.
"""

from __future__ import annotations

import tempfile
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path
from types import MappingProxyType

from builder.model.font_table import FontTable, load_font_table
from builder.model.speech import letters_of, tongue

REGULAR, BOLD = 400, 700


@dataclass(frozen=True, slots=True)
class Family:
    """A family of letters.

    name   : as SVG, CSS and the typesetter call it
    slug   : as the package of font files calls it
    base   : a letter as high as what is read in its script; '' where capitals are
    shaped : its letters join or stack, so a line is measured and drawn by a shaper
    axes   : its only file is a variable one, from which the faces are taken
    above  : how far its letters and their marks stand above a capital, in capital heights: what a text covers on
             paper, as the faces measure. The line height a font recommends is far taller and would waste the space
    below  : how far they stand below the line
    """

    name: str
    slug: str
    base: str = ""
    shaped: bool = False
    axes: bool = False
    above: float = 0.07
    below: float = 0.32


ATKINSON = Family("Atkinson Hyperlegible", "atkinson-hyperlegible")
FAMILIES = (
    ATKINSON,
    Family("Be Vietnam Pro", "be-vietnam-pro", above=0.45, below=0.38),
    Family("Sarabun", "sarabun", base="ก", shaped=True, above=0.8, below=0.6),
    Family("Mukta", "mukta", base="क", shaped=True, above=0.5, below=0.5),
    Family("IBM Plex Sans Arabic", "ibm-plex-sans-arabic", base="ا", shaped=True, above=0.35, below=0.65),
    Family("Noto Sans Khmer", "noto-sans-khmer", base="ក", shaped=True, axes=True, above=0.7, below=0.75),
)
"""In order of choice. A Latin text stays in the first that has its letters."""


DRAWN_SIGNS = "→←↑↓↔▶✓✗⌀✔✘∅►⟶⅛⅜⅝⅞⅓⅔′″\u2011\u2007\u2009\u202f\ufeff"
"""Signs that sheets draw as paths or spell out, so no family needs them."""


@cache
def family_of(code: str) -> Family:
    """The family of a language: the first with the fewest of the language's letters missing."""
    if code.partition("-")[0] == "en":
        return ATKINSON
    letters = letters_of(code)
    return min(FAMILIES, key=lambda family: len(letters - _covered(family)))


def spoken_family() -> Family:
    """The family of the language spoken now."""
    return family_of(tongue().code)


def missing_letters(text: str, code: str) -> str:
    """The letters of a text that no face of its language has, each once, in order."""
    table = face_table(family_of(code))
    return "".join(sorted({letter for letter in text if not letter.isspace() and not table.has(letter)}))


@cache
def face_file(family: Family, weight: int = REGULAR) -> Path:
    """The font file of a family in a weight, 400 or 700. Raises fontpkg's error when it isn't installed."""
    import fontpkg

    file = Path(fontpkg.path(family.slug, weight))
    return _static(file, weight) if family.axes else file


def face_folder(family: Family) -> Path:
    """The folder its faces lie in; both weights are there."""
    face_file(family, BOLD)
    return face_file(family).parent


@cache
def face_table(family: Family, weight: int = REGULAR) -> FontTable:
    """The measures of a family in a weight, with the marks it takes from the default one.

    A script without capitals is as high as its base letter, so that it stands no lower than capitals would.
    """
    table = load_font_table(face_file(family, weight))
    if family is ATKINSON:
        return table
    spare = load_font_table(face_file(ATKINSON, weight))
    scale = table.units_per_em / spare.units_per_em
    lent = {code: round(wide * scale) for code, wide in spare.advances.items()}
    height = min(table.cap_height, _height(family, weight)) if family.base else table.cap_height
    return replace(table, advances=MappingProxyType({**lent, **table.advances}), cap_height=height)


@cache
def _covered(family: Family) -> frozenset[str]:
    return frozenset(map(chr, load_font_table(face_file(family)).advances))


def _height(family: Family, weight: int) -> int:
    """Height of the base letter, in the face's units."""
    from fontTools.pens.boundsPen import BoundsPen
    from fontTools.ttLib import TTFont

    with TTFont(face_file(family, weight), lazy=True) as font:
        glyphs = font.getGlyphSet()
        pen = BoundsPen(glyphs)
        glyphs[font.getBestCmap()[ord(family.base)]].draw(pen)
        return int(pen.bounds[3])


def _static(file: Path, weight: int) -> Path:
    """One weight of a variable font as a file of its own, made once and kept with the machine's temporary files."""
    folder = Path(tempfile.gettempdir()) / f"seamboard-faces-{file.stat().st_size}"
    target = folder / f"{file.name.partition('[')[0]}-{weight}.ttf"
    if not target.exists():
        from fontTools.ttLib import TTFont
        from fontTools.varLib.instancer import instantiateVariableFont

        font = TTFont(file, recalcTimestamp=False)
        wanted = {axis.axisTag: axis.defaultValue for axis in font["fvar"].axes} | {"wght": weight}
        instantiateVariableFont(font, wanted, inplace=True, updateFontNames=True)
        folder.mkdir(parents=True, exist_ok=True)
        with tempfile.NamedTemporaryFile(dir=folder, suffix=".part", delete=False) as part:
            font.save(part)
        Path(part.name).replace(target)
    return target
