"""Which files make a plant: the folder says the kind, the file name the name. It judges no contents."""

from __future__ import annotations

import difflib
import hashlib
import os
import unicodedata
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from types import MappingProxyType

from builder.errors import UsageError
from builder.finding import Finding, Place, Severity
from builder.reading.csv_table import CSV_LIMIT, Table, read_table
from builder.reading.faults import fault
from builder.reading.raw_text import split_lines
from builder.reading.spots import Document
from builder.reading.yaml_text import YAML_LIMIT, read_yaml

KINDS: Mapping[str, str] = MappingProxyType(
    {
        "elements": "element",
        "faults": "fault",
        "languages": "language",
        "materials": "material",
        "operations": "operation",
        "parts": "part",
        "products": "product",
        "stations": "station",
        "templates": "template",
    }
)
"""Folders of YAML files, and the kind of what is in them."""

OUTPUT_FOLDER = "_out"
"""Where the pages are written; never read."""

THEMES_FOLDER = "themes"
"""The plant's own templates; no facts, so they are not read here."""

_STUDIES, _PHOTOS, _DRAWINGS, _PLANT = "studies", "photos", "drawings", "plant"
_FOLDERS = (*KINDS, _STUDIES, _PHOTOS, _DRAWINGS)
_YAML = (".yaml", ".yml")
_PHOTO = (".jpg", ".jpeg", ".png", ".webp", ".svg")
# Listed too, so that who names one is told what it is instead of that it isn't there.
_OTHER_PHOTO = (".gif", ".bmp", ".tif", ".tiff", ".heic", ".avif")
_DRAWING = ".dxf"


@dataclass(frozen=True, slots=True)
class Photo:
    """A photo as a file, not decoded: path relative to the plant folder, SHA-256 hex, size [bytes]."""

    path: str
    digest: str
    size: int


@dataclass(frozen=True, slots=True)
class Drawing:
    """A drawing as a file, not yet read: path relative to the plant folder."""

    path: str


@dataclass(slots=True)
class Source:
    """All that was read of a plant folder.

    findings : of the folder and of every file in it, sorted
    """

    folder: Path
    documents: tuple[Document, ...] = ()
    tables: tuple[Table, ...] = ()
    photos: dict[str, Photo] = field(default_factory=dict)
    drawings: dict[str, Drawing] = field(default_factory=dict)
    findings: list[Finding] = field(default_factory=list)

    def of_kind(self, kind: str) -> list[Document]:
        """The documents of one kind, sorted by file."""
        return [document for document in self.documents if document.kind == kind]

    def line_text(self, place: Place) -> str:
        """The line a place is in, read anew; "" if it is no longer there."""
        try:
            text = (self.folder / place.file).read_bytes().decode("utf-8-sig", errors="replace")
        except (OSError, ValueError):
            return ""
        lines = split_lines(text)
        return lines[place.line - 1] if 0 < place.line <= len(lines) else ""


def read_folder(folder: Path) -> Source:
    """Read a plant folder: YAML files, tables, and the list of photos, in the order of their paths.

    Raises UsageError if there is no such folder or it can't be listed.
    """
    if not folder.is_dir():
        raise UsageError(f"There is no folder {folder}.")
    try:
        os.listdir(folder)
    except OSError:
        raise UsageError(f"The folder {folder} can't be read.") from None
    return _FolderReader(folder).read()


class _FolderReader:
    """Collects one folder's files."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.root = folder.resolve()
        self.visited = {self.root}
        self.documents: list[Document] = []
        self.tables: list[Table] = []
        self.photos: dict[str, Photo] = {}
        self.drawings: dict[str, Drawing] = {}
        self.findings: list[Finding] = []
        self.first: dict[tuple[str, str], str] = {}  # file of each kind and name

    def read(self) -> Source:
        for path in self.entries(self.folder):
            if path.is_dir():
                self.read_top_folder(path)
            else:
                self.read_top_file(path)
        if ("plant", _PLANT) not in self.first:
            remedy = "Write plant.yaml at the top of the folder."
            self.report(f"{_PLANT}.yaml", "text-no-plant", "There is no file plant.yaml.", remedy)
        findings = self.findings + [one for document in self.documents for one in document.findings]
        findings += [one for table in self.tables for one in table.findings]
        findings.sort(key=lambda finding: finding.sort_key)
        documents = sorted(self.documents, key=lambda document: document.file)
        tables = sorted(self.tables, key=lambda table: table.file)
        photos = dict(sorted(self.photos.items()))
        drawings = dict(sorted(self.drawings.items()))
        return Source(self.folder, tuple(documents), tuple(tables), photos, drawings, findings)

    def read_top_folder(self, path: Path) -> None:
        if path.name in (OUTPUT_FOLDER, THEMES_FOLDER):
            return
        if path.name not in _FOLDERS:
            self.unknown(path, _FOLDERS, "folder")
        elif self.may_enter(path):
            for file in self.files(path):
                self.read_file(path.name, file)

    def read_top_file(self, path: Path) -> None:
        ending = path.suffix.lower()
        if path.stem == _PLANT and ending in _YAML:
            self.read_document("plant", path)
        elif ending in (*_YAML, ".csv"):
            self.unknown(path, (f"{_PLANT}.yaml",), "file")

    def read_file(self, folder: str, path: Path) -> None:
        ending = path.suffix.lower()
        if folder in KINDS and ending in _YAML:
            self.read_document(KINDS[folder], path)
        elif folder == _STUDIES and ending == ".csv":
            self.read_study(path)
        elif folder == _PHOTOS and ending in (*_PHOTO, *_OTHER_PHOTO):
            self.list_photo(path)
        elif folder == _DRAWINGS and ending == _DRAWING:
            self.list_drawing(path)
        elif _meant_to_be_read(path):
            wanted = {_STUDIES: ".csv", _PHOTOS: ", ".join(_PHOTO), _DRAWINGS: _DRAWING}.get(folder, ".yaml")
            message = f"{path.name} is not read: in {folder} only {wanted} is."
            remedy = "Rename it, or move it to the folder it belongs in."
            self.report(self.relative(path), "text-unknown-file", message, remedy, Severity.note)

    def read_document(self, kind: str, path: Path) -> None:
        file = self.relative(path)
        data, finding = self.bytes_of(path, YAML_LIMIT)
        document = Document(file, broken=True) if data is None else read_yaml(data, file)
        document.kind, document.name = kind, _stem(path)
        finding = finding or self.same_name(kind, document.name, file)
        if finding:
            document.broken, document.value, document.spot = True, None, None
            document.findings.append(finding)
        about = (f"{kind}:{document.name}",)
        document.findings = [replace(one, about=about) for one in document.findings]
        self.documents.append(document)

    def read_study(self, path: Path) -> None:
        file = self.relative(path)
        data, finding = self.bytes_of(path, CSV_LIMIT)
        table = Table(file, "", broken=True) if data is None else read_table(data, file)
        table.name = _stem(path)
        finding = finding or self.same_name("study", table.name, file)
        if finding:
            table.broken = True
            table.findings.append(finding)
        table.findings = [replace(one, about=(f"study:{table.name}",)) for one in table.findings]
        self.tables.append(table)

    def list_photo(self, path: Path) -> None:
        file = self.relative(path)
        if finding := self.refusal(path):
            self.findings.append(finding)
            return
        try:
            with path.open("rb") as photo:
                digest = hashlib.file_digest(photo, "sha256").hexdigest()
                self.photos[file] = Photo(file, digest, photo.tell())
        except OSError as error:
            self.findings.append(_unreadable(file, error))

    def list_drawing(self, path: Path) -> None:
        file = self.relative(path)
        if finding := self.refusal(path):
            self.findings.append(finding)
        else:
            self.drawings[file] = Drawing(file)

    def same_name(self, kind: str, name: str, file: str) -> Finding | None:
        first = self.first.setdefault((kind, name), file)
        if first == file:
            return None
        message = f"The {kind} {name} is also in {first}; this file is not used."
        return fault(Place(file), "text-same-name", message, "Rename or delete one of the two.")

    def bytes_of(self, path: Path, limit: int) -> tuple[bytes | None, Finding | None]:
        """The bytes of a file, at most one more than `limit`, or why there are none."""
        if finding := self.refusal(path):
            return None, finding
        try:
            with path.open("rb") as file:
                return file.read(limit + 1), None
        except OSError as error:
            return None, _unreadable(self.relative(path), error)

    def refusal(self, path: Path) -> Finding | None:
        """Why a path is not opened at all, if so."""
        file = self.relative(path)
        if path.is_symlink() and not self.inside(path):
            message = "This is a link to something outside the plant folder."
            return fault(Place(file), "text-link-outside", message, "Copy the file itself into the folder.")
        if path.exists() and not path.is_file():
            message = "This is not a file that can be read."
            return fault(Place(file), "text-unreadable", message, "Delete it, or put a file in its place.")
        return None

    def inside(self, path: Path) -> bool:
        try:
            return path.resolve().is_relative_to(self.root)
        except (OSError, RuntimeError):  # a ring of links
            return False

    def files(self, folder: Path) -> Iterator[Path]:
        """All files below a folder."""
        for path in self.entries(folder):
            if not path.is_dir():
                yield path
            elif self.may_enter(path):
                yield from self.files(path)

    def may_enter(self, folder: Path) -> bool:
        """Whether to read a folder: not through a link that leaves the plant, and each only once."""
        if folder.is_symlink() and not self.inside(folder):
            message = "This is a link to a folder outside the plant folder."
            self.report(self.relative(folder), "text-link-outside", message, "Copy the folder itself here.")
            return False
        real = folder.resolve()
        seen = real in self.visited
        self.visited.add(real)
        return not seen

    def entries(self, folder: Path) -> list[Path]:
        """What is in a folder, sorted, without hidden files and copies editors leave."""
        try:
            names = sorted(os.listdir(folder))
        except OSError as error:
            self.findings.append(_unreadable(self.relative(folder), error))
            return []
        return [folder / name for name in names if self.counts(folder, name)]

    def counts(self, folder: Path, name: str) -> bool:
        if name.startswith(".") or name.endswith("~"):
            return False
        try:
            name.encode()
        except UnicodeEncodeError:  # bytes that are not UTF-8, which Python keeps as lone surrogates
            shown = (self.relative(folder / name)).encode(errors="replace").decode()
            self.report(shown, "text-file-name", "The file name is not UTF-8.", "Rename the file.")
            return False
        return True

    def unknown(self, path: Path, known: tuple[str, ...], what: str) -> None:
        stem = path.name if what == "folder" else path.stem
        near = _near(path.name, known) or _near(stem, _FOLDERS)
        if not near:
            remedy = "Known folders are " + ", ".join(sorted(_FOLDERS)) + "."
        elif what == "folder" or near not in _FOLDERS:
            remedy = f"Rename it if {near} is meant."
        else:
            remedy = f"Move it into the folder {near} if it belongs there."
        message = f"The {what} {path.name} is not read."
        self.report(self.relative(path), "text-unknown-file", message, remedy, Severity.note)

    def report(self, file: str, rule: str, message: str, remedy: str, severity: Severity = Severity.error) -> None:
        self.findings.append(fault(Place(file), rule, message, remedy, severity=severity))

    def relative(self, path: Path) -> str:
        return path.relative_to(self.folder).as_posix()


def _stem(path: Path) -> str:
    # Some systems store accents apart from their letters; a name typed in a file never has them so.
    return unicodedata.normalize("NFC", path.stem)


def _near(name: str, known: tuple[str, ...]) -> str:
    """The known name most like `name`, or "" if none is."""
    return next(iter(difflib.get_close_matches(name, known, 1, 0.7)), "")


def _meant_to_be_read(path: Path) -> bool:
    """Whether its writer seems to expect that it is read: `x.yaml.txt`, or a table among operations."""
    return any(ending.lower() in (*_YAML, ".csv") for ending in path.suffixes)


def _unreadable(file: str, error: OSError) -> Finding:
    if isinstance(error, FileNotFoundError):
        message, remedy = (
            "This is a link to something that is not there.",
            "Delete it, or copy the file itself here.",
        )
    else:
        message, remedy = "This can't be opened.", "Allow reading it, or close the program that holds it."
    return fault(Place(file), "text-unreadable", message, remedy)
