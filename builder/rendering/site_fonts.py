"""The site's two faces, regular and bold, cut down to the letters the pages use. Fixed input gives fixed bytes.

Symbols that the family lacks are drawn as paths by the templates; a letter it lacks falls to the reader's own fonts.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import cache
from importlib.resources import files
from io import BytesIO

PACKAGE = "fontpkg_atkinson_hyperlegible"
FACES = {"regular": "AtkinsonHyperlegible-Regular.ttf", "bold": "AtkinsonHyperlegible-Bold.ttf"}
LICENCE = "assets/fonts/LICENSE.txt"
# Latin basics, so that a page with new words rarely needs new font files: ASCII, Latin-1, Latin Extended-A and
# the marks our own words use.
BASICS = frozenset(map(chr, [*range(0x20, 0x7F), *range(0xA0, 0x180)])) | frozenset("–—‘’“”…−×·≤≥±½¼¾")


def font_paths() -> list[str]:
    """Where the faces and their licence lie in the output folder, in the order `font_files` makes them."""
    return [*map(_path, FACES), LICENCE]


def font_files(letters: Iterable[str]) -> Iterator[tuple[str, bytes]]:
    """Paths and bytes of the faces and of their licence, which has to travel with them."""
    wanted = "".join(sorted(BASICS.union(letters)))
    for face, file in FACES.items():
        yield _path(face), _subset(file, wanted)
    yield LICENCE, (files(PACKAGE) / "LICENSE").read_bytes()


def _path(face: str) -> str:
    return f"assets/fonts/atkinson-hyperlegible-{face}.ttf"


@cache
def _subset(file: str, letters: str) -> bytes:
    from fontTools.subset import Options, Subsetter
    from fontTools.ttLib import TTFont

    source = (files(PACKAGE) / "files" / file).read_bytes()
    font = TTFont(BytesIO(source), recalcTimestamp=False)
    # Screens at these sizes need no hinting, and it is half of the file.
    subsetter = Subsetter(Options(hinting=False, notdef_outline=True))
    subsetter.populate(text=letters)
    subsetter.subset(font)
    out = BytesIO()
    font.save(out, reorderTables=True)
    return out.getvalue()
