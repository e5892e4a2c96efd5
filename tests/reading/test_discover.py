"""Which files make a plant, and a case for every finding about the folder."""

from __future__ import annotations

import hashlib
import os
from pathlib import Path
from typing import Any

import pytest

from builder.errors import UsageError
from builder.finding import Finding, Place, Severity
from builder.reading import Photo, Source, read_folder

PLANT = {"plant.yaml": "shift: 8 h\n"}


def write(folder: Path, files: dict[str, str]) -> Path:
    for name, text in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return folder


def seen(source: Source) -> list[str]:
    return [f"{one.place} {one.rule.removeprefix('text-')}" for one in source.findings]


def test_folder_says_the_kind_and_file_says_the_name(tmp_path: Path) -> None:
    folders = ("elements", "faults", "materials", "operations", "parts", "products", "stations")
    files = {f"{folder}/x-{folder}.yaml": "title: a\n" for folder in folders}
    source = read_folder(write(tmp_path, PLANT | files))
    assert source.findings == []
    assert [(one.kind, one.name) for one in source.documents] == [
        ("element", "x-elements"),
        ("fault", "x-faults"),
        ("material", "x-materials"),
        ("operation", "x-operations"),
        ("part", "x-parts"),
        ("plant", "plant"),
        ("product", "x-products"),
        ("station", "x-stations"),
    ]
    assert [one.value for one in source.of_kind("part")] == [{"title": "a"}]
    assert source.of_kind("plant")[0].file == "plant.yaml"


def test_subfolders_and_other_endings_count(tmp_path: Path) -> None:
    files = {"parts/a/b/x.yml": "title: a\n", "parts/y.YAML": "title: b\n", "studies/2026/z.CSV": "lay\n3\n"}
    source = read_folder(write(tmp_path, PLANT | files))
    assert source.findings == []
    assert [(one.file, one.name) for one in source.of_kind("part")] == [
        ("parts/a/b/x.yml", "x"),
        ("parts/y.YAML", "y"),
    ]
    assert [(one.file, one.name, one.columns) for one in source.tables] == [("studies/2026/z.CSV", "z", ("lay",))]


def test_photos_are_listed_not_decoded(tmp_path: Path) -> None:
    write(tmp_path, PLANT | {"photos/b.JPG": "not a photo", "photos/a.webp": "x", "photos/notes.txt": "y"})
    source = read_folder(tmp_path)
    digest = hashlib.sha256(b"not a photo").hexdigest()
    assert list(source.photos) == ["photos/a.webp", "photos/b.JPG"]
    assert source.photos["photos/b.JPG"] == Photo("photos/b.JPG", digest, 11)


def test_hidden_files_copies_and_output_are_left_out(tmp_path: Path) -> None:
    left_out = {
        ".hidden.yaml": ":",
        "parts/.x.yaml": ":",
        "parts/x.yaml~": ":",
        "_out/plant.yaml": ":",
        ".git/a.yaml": ":",
    }
    source = read_folder(write(tmp_path, PLANT | left_out))
    assert seen(source) == []
    assert [one.file for one in source.documents] == ["plant.yaml"]


def test_missing_plant_file(tmp_path: Path) -> None:
    assert seen(read_folder(tmp_path)) == ["plant.yaml:1:1 no-plant"]


def test_plant_file_in_a_folder_is_not_the_plant(tmp_path: Path) -> None:
    assert "plant.yaml:1:1 no-plant" in seen(read_folder(write(tmp_path, {"parts/plant.yaml": "a: b\n"})))


@pytest.mark.parametrize(
    ("file", "at", "remedy"),
    [
        ("operation/x.yaml", "operation", "Rename it if operations is meant."),
        ("Parts/x.yaml", "Parts", "Rename it if parts is meant."),
        ("plnat.yaml", "plnat.yaml", "Rename it if plant.yaml is meant."),
        ("stations.yaml", "stations.yaml", "Move it into the folder stations if it belongs there."),
        ("study.csv", "study.csv", "Known folders are "),
        ("sketches/x.dxf", "sketches", "Known folders are "),
    ],
)
def test_unknown_file_gets_a_note_with_the_near_name(tmp_path: Path, file: str, at: str, remedy: str) -> None:
    source = read_folder(write(tmp_path, PLANT | {file: "a: b\n"}))
    assert seen(source) == [f"{at}:1:1 unknown-file"]
    assert source.findings[0].severity is Severity.note
    assert source.findings[0].remedy.startswith(remedy)


@pytest.mark.parametrize("file", ["README.md", "plan.xlsx", "parts/panel.dxf", "parts/notes.txt"])
def test_files_nobody_expects_to_be_read_get_no_note(tmp_path: Path, file: str) -> None:
    assert seen(read_folder(write(tmp_path, PLANT | {file: "a"}))) == []


@pytest.mark.parametrize("file", ["operations/sew.yaml.txt", "operations/sew.csv", "studies/sew.yaml", "photos/a.yml"])
def test_file_in_the_wrong_folder_gets_a_note(tmp_path: Path, file: str) -> None:
    assert seen(read_folder(write(tmp_path, PLANT | {file: "a"}))) == [f"{file}:1:1 unknown-file"]


def test_same_name_twice_in_one_kind(tmp_path: Path) -> None:
    files = {"parts/a/x.yaml": "title: a\n", "parts/x.yml": "title: b\n", "stations/x.yaml": "title: c\n"}
    source = read_folder(write(tmp_path, PLANT | files))
    assert seen(source) == ["parts/x.yml:1:1 same-name"]
    assert "parts/a/x.yaml" in source.findings[0].message
    assert source.findings[0].about == ("part:x",)
    assert [(one.file, one.broken) for one in source.of_kind("part")] == [
        ("parts/a/x.yaml", False),
        ("parts/x.yml", True),
    ]


def test_two_plant_files(tmp_path: Path) -> None:
    assert seen(read_folder(write(tmp_path, PLANT | {"plant.yml": "a: b\n"}))) == ["plant.yml:1:1 same-name"]


def test_same_study_twice(tmp_path: Path) -> None:
    files = {"studies/a/x.csv": "lay\n1\n", "studies/x.csv": "lay\n1\n"}
    source = read_folder(write(tmp_path, PLANT | files))
    assert seen(source) == ["studies/x.csv:1:1 same-name"]
    assert [one.broken for one in source.tables] == [False, True]


def test_file_that_cannot_be_read_still_counts_as_known(tmp_path: Path) -> None:
    files = {"operations/sew.yaml": "do: a: b\n", "studies/sew.csv": ""}
    source = read_folder(write(tmp_path, PLANT | files))
    assert seen(source) == ["operations/sew.yaml:1:6 colon", "studies/sew.csv:1:1 empty-file"]
    assert [one.about for one in source.findings] == [("operation:sew",), ("study:sew",)]
    [document] = source.of_kind("operation")
    assert (document.name, document.broken) == ("sew", True)


def test_file_without_permission(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    write(tmp_path, PLANT | {"parts/x.yaml": "a: b\n", "studies/y.csv": "lay\n1\n", "photos/z.png": "p"})
    plain = Path.open

    def closed(self: Path, *args: Any, **options: Any) -> Any:
        if self.name != "plant.yaml":
            raise PermissionError(13, "Permission denied")
        return plain(self, *args, **options)

    monkeypatch.setattr(Path, "open", closed)
    source = read_folder(tmp_path)
    assert seen(source) == [
        "parts/x.yaml:1:1 unreadable",
        "photos/z.png:1:1 unreadable",
        "studies/y.csv:1:1 unreadable",
    ]
    assert [one.broken for one in source.of_kind("part")] == [True]
    assert [one.broken for one in source.tables] == [True]
    assert source.tables[0].name == "y"


def test_folder_without_permission(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    write(tmp_path, PLANT | {"parts/x.yaml": "a: b\n"})
    plain = os.listdir

    def closed(path: Path) -> list[str]:
        if path.name == "parts":
            raise PermissionError(13, "Permission denied")
        return plain(path)

    monkeypatch.setattr(os, "listdir", closed)
    assert seen(read_folder(tmp_path)) == ["parts:1:1 unreadable"]


def test_links_that_leave_the_folder_are_refused(tmp_path: Path) -> None:
    outside = write(tmp_path / "outside", {"x.yaml": "secret: a\n", "p.png": "p"})
    plant = write(tmp_path / "plant", PLANT | {"parts/own.yaml": "a: b\n", "photos/own.png": "p"})
    (plant / "parts/x.yaml").symlink_to(outside / "x.yaml")
    (plant / "photos/p.png").symlink_to(outside / "p.png")
    (plant / "stations").symlink_to(outside)
    (plant / "parts/same.yaml").symlink_to(plant / "parts/own.yaml")
    source = read_folder(plant)
    assert seen(source) == [
        "parts/x.yaml:1:1 link-outside",
        "photos/p.png:1:1 link-outside",
        "stations:1:1 link-outside",
    ]
    parts = {one.name: (one.value, one.broken) for one in source.of_kind("part")}
    assert parts == {"own": ({"a": "b"}, False), "same": ({"a": "b"}, False), "x": (None, True)}
    assert list(source.photos) == ["photos/own.png"]


def test_link_to_nothing_and_ring_of_folders(tmp_path: Path) -> None:
    write(tmp_path, PLANT | {"parts/x.yaml": "a: b\n"})
    (tmp_path / "parts/gone.yaml").symlink_to(tmp_path / "parts/nowhere.yaml")
    (tmp_path / "parts/ring").symlink_to(tmp_path / "parts")
    source = read_folder(tmp_path)
    assert seen(source) == ["parts/gone.yaml:1:1 unreadable"]
    assert [one.name for one in source.of_kind("part")] == ["gone", "x"]


def test_pipe_is_not_waited_for(tmp_path: Path) -> None:
    write(tmp_path, PLANT | {"parts/x.yaml": "a: b\n"})
    os.mkfifo(tmp_path / "parts/pipe.yaml")
    assert seen(read_folder(tmp_path)) == ["parts/pipe.yaml:1:1 unreadable"]


def test_file_name_that_is_not_utf8(tmp_path: Path) -> None:
    write(tmp_path, PLANT | {"parts/x.yaml": "a: b\n"})
    try:
        (tmp_path / "parts" / os.fsdecode(b"\xff.yaml")).write_text("a: b\n")
    except OSError:
        pytest.skip("this file system has no such names")
    assert seen(read_folder(tmp_path)) == ["parts/?.yaml:1:1 file-name"]


def test_name_is_in_composed_letters(tmp_path: Path) -> None:
    source = read_folder(write(tmp_path, PLANT | {"parts/poche\u0301.yaml": "a: b\n"}))
    assert [one.name for one in source.of_kind("part")] == ["poch\u00e9"]


def test_large_file_is_not_read_whole(tmp_path: Path) -> None:
    write(tmp_path, PLANT | {"parts/x.yaml": "a" * (1024**2 + 1)})
    assert seen(read_folder(tmp_path)) == ["parts/x.yaml:1:1 too-large"]


def test_findings_are_sorted_and_the_same_each_time(tmp_path: Path) -> None:
    files = {
        "parts/b.yaml": "b:\na:\n",
        "parts/a.yaml": "a:\n",
        "nothing/x": "",
        "studies/c.csv": "",
        "faults/z.yaml": "",
    }
    write(tmp_path, files)
    source = read_folder(tmp_path)
    assert source.findings == sorted(source.findings, key=lambda one: one.sort_key)
    assert len(source.findings) == 7
    assert read_folder(tmp_path) == source


def test_line_text_reads_the_line_anew(tmp_path: Path) -> None:
    write(tmp_path, PLANT | {"parts/x.yaml": "\ufeffa: b\n\nc: d"})
    source = read_folder(tmp_path)
    assert source.line_text(Place("parts/x.yaml", 1, 4)) == "a: b"
    assert source.line_text(Place("parts/x.yaml", 3, 1)) == "c: d"
    assert source.line_text(Place("parts/x.yaml", 9, 1)) == ""
    assert source.line_text(Place("parts/gone.yaml")) == ""
    assert source.line_text(Place("parts")) == ""


def test_folder_that_is_not_there(tmp_path: Path) -> None:
    with pytest.raises(UsageError):
        read_folder(tmp_path / "nowhere")
    with pytest.raises(UsageError):
        read_folder(write(tmp_path, PLANT) / "plant.yaml")


def test_every_finding_says_why_and_what_to_do(tmp_path: Path) -> None:
    findings: list[Finding] = read_folder(
        write(tmp_path, {"operation/x": "", "parts/a.csv": "", "x.yaml": ""})
    ).findings
    assert len(findings) == 4
    assert all(one.message and one.why and one.remedy for one in findings)


def test_drawings_are_listed_not_read(tmp_path: Path) -> None:
    """By their path, whatever is in them; folders inside count."""
    write(tmp_path, PLANT | {"drawings/b.DXF": "no drawing", "drawings/old/a.dxf": "x", "drawings/notes.txt": "y"})
    source = read_folder(tmp_path)
    assert source.findings == []
    assert list(source.drawings) == ["drawings/b.DXF", "drawings/old/a.dxf"]
