"""The site's faces, regular and bold of each family its languages need, cut down to the letters the pages use.

Fixed input gives fixed bytes. Symbols that a family lacks are drawn as paths by the templates, or taken from the
default family.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import cache
from importlib.resources import files
from io import BytesIO

from builder.model import ATKINSON, BOLD, REGULAR, Family, face_file, family_of

STYLE = "assets/letters.css"
"""Which language is set in which family."""
FACES = {"regular": REGULAR, "bold": BOLD}
# Latin basics, so that a page with new words rarely needs new font files: ASCII, Latin-1, Latin Extended-A and
# the marks our own words use.
BASICS = frozenset(map(chr, [*range(0x20, 0x7F), *range(0xA0, 0x180)])) | frozenset("–—‘’“”…−×·≤≥±½¼¾")

_OWN = "system-ui, sans-serif"


def font_paths(languages: Iterable[str] = ("en",)) -> list[str]:
    """Where the faces and their licences lie in the output folder, in the order `font_files` makes them."""
    paths = [STYLE]
    for family in _families(languages):
        paths += [*(_path(family, face) for face in FACES), _licence(family)]
    return paths


def font_files(letters: Iterable[str], languages: Iterable[str] = ("en",)) -> Iterator[tuple[str, bytes]]:
    """Paths and bytes of the style sheet, of the faces and of their licences, which have to travel with them.

    languages : codes of those the pages speak
    """
    codes = tuple(languages)
    wanted = "".join(sorted(BASICS.union(letters)))
    yield STYLE, _style(codes).encode()
    for family in _families(codes):
        for face, weight in FACES.items():
            yield _path(family, face), _subset(family, weight, wanted)
        package = f"fontpkg_{family.slug.replace('-', '_')}"
        yield _licence(family), (files(package) / "LICENSE").read_bytes()


def _families(languages: Iterable[str]) -> list[Family]:
    """Those that are needed, the default one first: the others take marks from it."""
    return list(dict.fromkeys((ATKINSON, *map(family_of, languages))))


def _path(family: Family, face: str) -> str:
    return f"assets/fonts/{family.slug}-{face}.ttf"


def _licence(family: Family) -> str:
    return f"assets/fonts/LICENSE-{family.slug}.txt"


def _style(languages: tuple[str, ...]) -> str:
    faces = (
        f'@font-face {{ font-family: "{family.name}"; font-weight: {weight}; '
        f'src: url("fonts/{_path(family, face).rpartition("/")[2]}") format("truetype"); }}\n'
        for family in _families(languages)
        for face, weight in FACES.items()
    )
    own = (f":lang({code}) {{ --letters: {_names(family_of(code))}; }}\n" for code in languages)
    return f"{''.join(faces)}:root {{ --letters: {_names(ATKINSON)}; }}\n{''.join(own)}"


def _names(family: Family) -> str:
    return ", ".join((*dict.fromkeys(f'"{one.name}"' for one in (family, ATKINSON)), _OWN))


@cache
def _subset(family: Family, weight: int, letters: str) -> bytes:
    from fontTools.subset import Options, Subsetter
    from fontTools.ttLib import TTFont

    font = TTFont(BytesIO(face_file(family, weight).read_bytes()), recalcTimestamp=False)
    # Screens at these sizes need no hinting, and it is half of the file.
    options = Options(hinting=False, notdef_outline=True)
    options.drop_tables += ["meta"]  # of languages and designers, which no page reads
    subsetter = Subsetter(options)
    subsetter.populate(text=letters)
    subsetter.subset(font)
    out = BytesIO()
    font.save(out, reorderTables=True)
    return out.getvalue()
