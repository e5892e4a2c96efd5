"""The order of the rooms: what a build does with what the rooms find."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from builder.errors import UsageError
from builder.pipeline import booklet, build_plant, check_plant, planner_of, trees_of
from builder.rendering import PlannedFile
from tests.checking.overlay import lay_over

PHOTO = "photos/handle-end-right.jpg"


def test_a_cut_off_photo_is_a_finding_at_its_step(demo: Path) -> None:
    """Not a traceback in the middle of a build."""
    path = demo / PHOTO
    path.write_bytes(path.read_bytes()[:20_000])
    findings = check_plant(demo).findings
    assert [one.rule for one in findings] == ["photo-unreadable"]
    line = (demo / findings[0].place.file).read_text(encoding="utf-8").splitlines()[findings[0].place.line - 1]
    assert line[findings[0].place.column - 1 :] == PHOTO


def test_a_text_under_the_name_of_a_photo_is_a_finding(demo: Path) -> None:
    """Whatever is called .jpg."""
    (demo / PHOTO).write_text("no photo")
    assert [one.rule for one in check_plant(demo).findings] == ["photo-unreadable"]


def planned(plant: Path) -> list[PlannedFile]:
    """Every file a build would hold, none of it made."""
    checked = check_plant(plant)
    return list(planner_of(checked, trees_of(checked)).files())


def test_a_changed_photo_is_a_changed_method(demo: Path) -> None:
    """One sheet, its pages, what is found of it and its record have other keys, so they are made again."""
    before = {file.path: file.key for file in planned(demo)}
    (demo / PHOTO).write_bytes((demo / "photos/binding-edge.jpg").read_bytes())
    changed = {file.path for file in planned(demo) if file.key != before.get(file.path)}
    assert 0 < len(changed) < 12
    assert {"sheets/sew-handle-end.pdf", "operations/sew-handle-end.html", "assets/record.js"} <= changed


def test_nothing_changed_means_nothing_made(tmp_path: Path) -> None:
    """A second build renders nothing."""
    plant, out = lay_over("{}", tmp_path / "plant"), tmp_path / "out"
    build_plant(plant, out)
    built = build_plant(plant, out)
    assert built.written is not None
    assert built.written.changed == built.written.removed == 0


def test_an_operation_taken_out_takes_its_files_along(tmp_path: Path) -> None:
    """No sheet of a dead operation stays in the folder to be printed."""
    plant, out = lay_over("{}", tmp_path / "plant"), tmp_path / "out"
    build_plant(plant, out)
    (plant / "operations" / "press-snap.yaml").unlink()
    product = plant / "products" / "pouch.yaml"
    product.write_text(product.read_text().replace(", press-snap]", "]"))
    assert (out / "sheets" / "press-snap.pdf").exists()
    built = build_plant(plant, out)
    assert built.written is not None, [(str(f.place), f.message) for f in built.checked.findings]
    assert not list(out.rglob("press-snap*"))


def test_a_booklet_needs_a_known_name(demo: Path) -> None:
    """With the near one offered."""
    with pytest.raises(UsageError, match="bartacker"):
        booklet(check_plant(demo), "bartaker")


def test_no_folder_is_wrong_usage(tmp_path: Path) -> None:
    """Exit 2, not an empty plant."""
    with pytest.raises(UsageError):
        check_plant(tmp_path / "nothing")


def test_an_empty_folder_is_a_finding(tmp_path: Path) -> None:
    """It lacks its plant file."""
    findings = check_plant(tmp_path).findings
    assert findings
    assert findings[0].place.file == "plant.yaml"


def test_without_libcairo_the_main_job_still_runs(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """No small pictures, and no page that links to one."""
    from builder.rendering import plan

    monkeypatch.setattr(plan, "raster_available", lambda: False)
    built = build_plant(lay_over("{}", tmp_path / "plant"), tmp_path / "out")
    assert built.written is not None
    assert not (tmp_path / "out" / "pictures").exists()
    assert "pictures/" not in (tmp_path / "out" / "index.html").read_text(encoding="utf-8")
    assert (tmp_path / "out" / "sheets" / "sew-hem.pdf").exists()


DRAWING = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 3"><path d="M0 0L4 3"/>{}</svg>'
BIND = "operations/bind-edge.yaml"


def with_drawing(demo: Path, content: bytes, file: str = "photos/edge.svg") -> tuple[int, int]:
    """A file in place of a photo; line and column of its name."""
    (demo / file).write_bytes(content)
    path = demo / BIND
    text = path.read_text(encoding="utf-8").replace("photos/binding-edge.jpg", file)
    path.write_text(text, encoding="utf-8")
    before = text[: text.index(file)]
    return before.count("\n") + 1, len(before) - before.rfind("\n")


def test_a_drawing_that_lost_something_is_told_once(demo: Path) -> None:
    """At its name in the step, with what was left out."""
    at = with_drawing(demo, DRAWING.format("<script>x</script><image href='data:,'/>").encode())
    (found,) = check_plant(demo).findings
    assert (found.rule, found.place.file, found.place.line, found.place.column) == ("drawing-cleaned", BIND, *at)
    assert "embedded pictures, scripts" in found.message


def test_a_drawing_is_written_without_what_was_dropped(demo: Path) -> None:
    """And its texts are paths."""
    with_drawing(demo, DRAWING.format("<script>x</script><text x='1' y='1' font-size='.5'>hem</text>").encode())
    drawings = [file for file in planned(demo) if file.path.startswith("assets/photos/") and file.path.endswith(".svg")]
    written = [file.make().decode() for file in drawings]
    (svg,) = (one for one in written if "#1f5c57" not in one)  # the plant's logo is the other
    assert "script" not in svg
    assert "<text" not in svg
    assert svg.count("<path") == 2


@pytest.mark.parametrize(
    ("file", "content", "words"),
    [
        ("photos/a.svg", b'<!DOCTYPE svg [<!ENTITY a "b">]><svg/>', "document type or entities"),
        ("photos/a.svg", b"\xff\xd8\xff", "no XML"),
        ("photos/a.jpg", b"GIF89a" + bytes(20), "no photo|format GIF|cut off"),
        ("photos/a.gif", b"GIF89a\x01\x00\x01\x00\x00\x00\x00;", "no photo|format GIF|cut off"),
        ("photos/a.heic", b"\x00\x00\x00\x18ftypheic", "no photo"),
        ("photos/a.png", b"\x89PNG\r\n\x1a\n" + b"\x00\x00\x00\rIHDR", "cut off|no photo"),
    ],
)
def test_a_hostile_picture_is_one_finding_at_its_name(demo: Path, file: str, content: bytes, words: str) -> None:
    """Whatever is in the file."""
    at = with_drawing(demo, content, file)
    (found,) = check_plant(demo).findings
    assert (found.rule, found.place.line, found.place.column) == ("photo-unreadable", *at)
    assert re.search(words, found.message)
