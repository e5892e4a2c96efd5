"""From plain values to objects: one message a fault, at its place."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.pipeline import check_plant
from tests.checking.overlay import SMALL_PLANT, lay_over

# what is typed wrong, in which file → (rule, text at the finding's place, words the message or remedy must hold)
FAULTS = [
    ("operations/sew-hem.yaml", "settings:", "setings:", "key-unknown", "setings", "`settings`"),
    ("operations/sew-hem.yaml", "title: Sew the hem\n", "", "key-missing", "operation", "`title:` is missing"),
    ("operations/sew-hem.yaml", "title:", "titel:", "key-unknown", "titel", "Did you mean `title`"),
    ("operations/sew-hem.yaml", "station: lockstitch", "station: lockstich", "name-unknown", "lockstich", "lockstitch"),
    ("operations/sew-hem.yaml", "check: hem", "check: hemm", "name-unknown", "hemm", "hem"),
    ("operations/sew-hem.yaml", "with: rule", "with: ruler", "name-unknown", "ruler", "rule"),
    ("operations/sew-hem.yaml", "panel, wrong side", "panel, wrong sid", "name-unknown", "wrong sid", "wrong side"),
    (
        "operations/sew-hem.yaml",
        "thread: thread-70",
        "thread: thread-07",
        "setting-unreadable",
        "thread-07",
        "thread-70",
    ),
    ("operations/sew-hem.yaml", "stitch length: 3 mm", "stitch length: 3", "setting-unreadable", ", thread", "unit"),
    (
        "operations/sew-hem.yaml",
        "stitch length: 3 mm",
        "stich length: 3 mm",
        "setting-unreadable",
        "stich",
        "stitch length",
    ),
    ("operations/sew-hem.yaml", "time: 3 s", "time: 3", "value-unreadable", "", "unit"),
    ("operations/sew-hem.yaml", "is: ± 1 mm", "is: ± 1 mn", "value-unreadable", "mn", "unknown unit"),
    ("parts/panel.yaml", "hem-fold: {fold: top", "hem-fold: {fodl: top", "feature-kind", "hem-fold", "fold"),
    ("parts/panel.yaml", "{notch: top", "{notch: top, hole: 3 mm", "feature-kind", "top-notch", "two kinds"),
    ("parts/panel.yaml", "inset: 12 mm", "inset: '=margni'", "expression-unreadable", "margni", "margni"),
    ("parts/panel.yaml", "part: panel", "part: pannel", "name-differs", "pannel", "panel"),
    ("plant.yaml", "units: mm", "units: inch", "value-unreadable", "inch", "in"),
    (
        "plant.yaml",
        "convention: share of basic time",
        "convention: share of the basic time",
        "value-unreadable",
        "share of the basic",
        "share of basic time",
    ),
    ("stations/all.yaml", "count: 2", "count: two", "value-unreadable", "two", "whole"),
    (
        "stations/all.yaml",
        "calibrated: 2026-09-01",
        "calibrated: 1 September",
        "value-unreadable",
        "1 September",
        "2026",
    ),
    ("materials/all.yaml", "width: 1.5 m", "width: 1,5 m", "value-unreadable", ",5 m", "1.5"),
]


@pytest.mark.parametrize(("file", "old", "new", "rule", "at", "words"), FAULTS, ids=lambda one: str(one)[:24])
def test_a_fault_gives_one_message_at_its_place(
    file: str, old: str, new: str, rule: str, at: str, words: str, tmp_path: Path
) -> None:
    """One top-level finding: rule, place and a useful word."""
    folder = lay_over("{}", tmp_path / "plant")
    path = folder / file
    text = (SMALL_PLANT / file).read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")
    findings = check_plant(folder).findings
    assert [one.rule for one in findings] == [rule], [(str(f.place), f.rule, f.message) for f in findings]
    found = findings[0]
    line = path.read_text(encoding="utf-8").splitlines()[found.place.line - 1]
    assert line[found.place.column - 1 :].startswith(at), (str(found.place), line)
    assert words in f"{found.message} {found.remedy}", (found.message, found.remedy)


def test_many_faults_are_reported_at_once(tmp_path: Path) -> None:
    """Independent faults in independent files stay apart, sorted by place."""
    folder = lay_over("{}", tmp_path / "plant")
    for file, old, new in (
        ("plant.yaml", "units: mm", "units: cm"),
        ("parts/panel.yaml", "12 mm}", "12 mn}"),
        ("operations/press-snap.yaml", "time: 4 s", "time: 4"),
    ):
        path = folder / file
        path.write_text(path.read_text(encoding="utf-8").replace(old, new, 1), encoding="utf-8")
    places = [one.place for one in check_plant(folder).findings]
    assert {place.file for place in places} == {"plant.yaml", "parts/panel.yaml", "operations/press-snap.yaml"}
    assert places == sorted(places)


def test_a_file_that_can_not_be_read_still_counts_as_known(tmp_path: Path) -> None:
    """Nothing that names it complains."""
    folder = lay_over("{}", tmp_path / "plant")
    (folder / "parts" / "panel.yaml").write_text("part: panel\n  title: [", encoding="utf-8")
    findings = check_plant(folder).findings
    assert {one.place.file for one in findings} == {"parts/panel.yaml"}
