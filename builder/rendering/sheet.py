"""Station sheets as PDF: view objects through the theme's templates, by typst.

The only file that knows the typesetter. What a sheet says comes from the view; what the template reads of it is
sheet_data's; where it stands on paper is the template's. Nothing here reads a clock, so equal input gives equal
bytes.
"""

from __future__ import annotations

import hashlib
import io
import json
import re
import shutil
import tempfile
from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import UTC, date, datetime
from pathlib import Path
from types import TracebackType
from typing import TYPE_CHECKING, Self

from builder.errors import SeamboardError
from builder.model import ATKINSON, face_folder, face_table, family_of, spoken_family, tongue
from builder.rendering.forking import threads_started
from builder.rendering.sheet_data import Json, KeptPhoto, Pens, default_pens, document_title, sheet_data

if TYPE_CHECKING:
    from builder.view import Photo, SheetView

_ENTRY = "main.typ"
POSTER_ENTRY = "poster.typ"
"""The theme's file that sets one step on one sheet."""
_UNDATED = datetime(2000, 1, 1, tzinfo=UTC)
_ORIENTATION = 0x0112  # the EXIF tag; from 5 on the camera lay on its side, and the typesetter turns the photo
_TURNED = 5
_DRAWING = b"<svg"  # what the program itself writes of a drawing from elsewhere


class SheetFault(SeamboardError):
    """The typesetter refused a sheet: a fault of the theme's templates or of a picture's bytes, not of the input."""


class SheetPress:
    """A reused compiler with its templates and photos: costly to make, a few milliseconds a sheet after that.

    Use one in each process, as a context manager: it keeps a temporary folder the templates read photos from.

    templates : the theme's folders of sheet templates; a file is taken from the first that has it
    languages : codes of those that sheets are set in
    entry     : the template file to set, `main.typ` for sheets
    pens      : what draws figures and signs and gives the words; the drawing room and English when None
    """

    def __init__(
        self,
        *templates: Path,
        languages: Iterable[str] = ("en",),
        pens: Pens | None = None,
        entry: str = _ENTRY,
    ) -> None:
        import typst

        self.pens = pens or default_pens()
        self._photos: dict[str, KeptPhoto] = {}
        self._folder = tempfile.TemporaryDirectory(prefix="sheets-")
        self._root = Path(self._folder.name)
        for folder in reversed(templates):
            for template in sorted(folder.glob("*.typ")):
                shutil.copyfile(template, self._root / template.name)
        families = dict.fromkeys((ATKINSON, *map(family_of, languages)))
        faces = typst.Fonts(
            include_system_fonts=False,
            include_embedded_fonts=False,
            font_paths=[str(face_folder(family)) for family in families],
        )
        self._compiler = typst.Compiler(str(self._root / entry), root=str(self._root), font_paths=faces)

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, fault: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()

    def close(self) -> None:
        """Remove the temporary folder. The press can't be used afterwards."""
        self._folder.cleanup()

    def keep_photo(self, content: bytes) -> KeptPhoto:
        """Put a photo where the templates find it, once, named after its content. Raises SheetFault if it is none."""
        name = hashlib.sha256(content).hexdigest()
        if name not in self._photos:
            kept = _measured_photo(content, name)
            file = self._root / kept.path
            file.parent.mkdir(exist_ok=True)
            file.write_bytes(content)
            self._photos[name] = kept
        return self._photos[name]

    def press(self, document: Json, made: datetime) -> bytes:
        """Set one document. `made` is the date in the PDF's own data. Raises SheetFault."""
        import typst

        threads_started()
        data = json.dumps({**document, "families": _families()}, ensure_ascii=False)
        inputs = {"data": data, "cap": str(_capital_of_em()), "dir": tongue().direction}
        try:
            pdf = self._compiler.compile(
                format="pdf", sys_inputs=inputs, pdf_standards=["ua-1"], timestamp=int(made.timestamp())
            )
        except typst.TypstError as fault:
            raise SheetFault(f"{document['title']}: {fault.message}\n{fault.diagnostic}") from fault
        if not isinstance(pdf, bytes):
            raise SheetFault(f"{document['title']}: the typesetter gave no document")
        return pdf


def _families() -> list[str]:
    """Type families in order of choice: that of the language spoken now, then the default one for what it lacks."""
    return list(dict.fromkeys((spoken_family().name, ATKINSON.name)))


def _capital_of_em() -> float:
    """Height of a capital over the type size, in the language spoken now."""
    table = face_table(spoken_family())
    return table.cap_height / table.units_per_em


def render_sheet(view: SheetView, photos: Mapping[str, bytes], compiler: SheetPress) -> bytes:
    """One sheet as a tagged PDF (PDF/UA-1).

    photos : the pictures' files by their names (`Photo.name`)
    Raises KeyError for a photo that is not among `photos`, SheetFault when the typesetter refuses.
    """
    document = _document([view], photos, compiler, document_title(view, compiler.pens.words), contents=False)
    return compiler.press(document, _made([view]))


def page_count(pdf: bytes) -> int:
    """Pages of a document the press made: the count in the root of its page tree."""
    found = re.search(rb"/Type\s*/Pages\b.*?/Count\s+(\d+)", pdf, re.DOTALL)
    return int(found[1]) if found else 0


def render_booklet(
    views: Iterable[SheetView],
    photos: Mapping[str, bytes],
    compiler: SheetPress,
    title: str,
    *,
    duplex: bool = True,
) -> bytes:
    """Many sheets in one tagged PDF, a contents page before them; each sheet keeps its own `page n of m`.

    title  : of the contents page and the file, a station's or a product's
    duplex : to print on both sides: each sheet begins on the front of a leaf, behind an empty back where it must
    Raises ValueError without a sheet, else as render_sheet.
    """
    kept = list(views)
    if not kept:
        raise ValueError("a booklet needs a sheet")
    return compiler.press(_document(kept, photos, compiler, title, contents=True, duplex=duplex), _made(kept))


def _document(
    views: Sequence[SheetView],
    photos: Mapping[str, bytes],
    compiler: SheetPress,
    title: str,
    *,
    contents: bool,
    duplex: bool = False,
) -> Json:
    return {
        "title": title,
        "author": views[0].plant,
        "keywords": [word for view in views for word in (view.code, view.tag) if word],
        "words": dict(compiler.pens.words),
        "contents": contents,
        "duplex": duplex,
        "sheets": [sheet_data(view, _kept_photos(view, photos, compiler), compiler.pens) for view in views],
    }


def _kept_photos(view: SheetView, photos: Mapping[str, bytes], compiler: SheetPress) -> dict[str, KeptPhoto]:
    names = (photo.name for photo in shown_photos(view))
    return {name: compiler.keep_photo(photos[name]) for name in names}


def shown_photos(view: SheetView) -> Iterator[Photo]:
    """Every picture a sheet prints: those of its steps, and the plant's logo."""
    yield from (photo for step in view.steps for photo in step.photos)
    if view.brand is not None and view.brand.logo is not None:
        yield view.brand.logo


def _measured_photo(content: bytes, name: str) -> KeptPhoto:
    """Path and size of a photo; only its head is read."""
    if content.startswith(_DRAWING):
        return KeptPhoto(f"photos/{name}.svg", 0, 0)
    from PIL import Image, UnidentifiedImageError

    try:
        with Image.open(io.BytesIO(content)) as image:
            width, height = image.size
            if image.getexif().get(_ORIENTATION, 1) >= _TURNED:
                width, height = height, width
            return KeptPhoto(f"photos/{name}.{(image.format or 'jpeg').lower()}", width, height)
    except UnidentifiedImageError as fault:
        raise SheetFault("a photo is no picture the typesetter can read") from fault


def _made(views: Iterable[SheetView]) -> datetime:
    """The latest date of the sheets, so that a PDF's own date never depends on when it was made."""
    return max((day_of(view.date) for view in views), default=_UNDATED)


def day_of(text: str) -> datetime:
    """A typed date as a PDF's own; a fixed one where it can't be read."""
    try:
        day = date.fromisoformat(text)
    except ValueError:
        return _UNDATED
    return datetime(day.year, day.month, day.day, tzinfo=UTC)
