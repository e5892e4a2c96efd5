"""Each rule broken in a copy of the demo: that one top-level finding, at the right line and column.

A break replaces a text once; `¦` in the new text stands where the finding is expected and is taken out. Where the
finding stands elsewhere than the break, `at` names the file and a text there, again with `¦`.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.checking import rule_book
from builder.pipeline import check_plant
from tests.checking.breaks import Break, all_breaks

BREAKS = all_breaks()


def broken(one: Break, demo: Path) -> tuple[str, int, int]:
    """Breaks the demo; returns where the finding is expected."""
    if one.add is not None:
        (demo / one.add[0]).parent.mkdir(exist_ok=True)
        (demo / one.add[0]).write_text(one.add[1], encoding="utf-8")
    if one.small is not None:
        _shrink(demo / one.small)
    path = demo / one.file
    text = path.read_text(encoding="utf-8")
    assert one.old in text, f"{one.file} no longer holds {one.old!r}"
    marked = text.replace(one.old, one.new, 1)
    if one.rule == "photo-without-words":
        marked = "\n".join(line for line in marked.split("\n") if "caption-of-old" not in line)
    path.write_text(marked.replace("¦", ""), encoding="utf-8")
    if one.at is None:
        file, index = one.file, marked.index("¦")
    else:
        file, snippet = one.at
        whole = (demo / file).read_text(encoding="utf-8")
        start = whole.index(snippet.replace("¦", ""))
        marked, index = whole, start + snippet.index("¦")
    line = marked.count("\n", 0, index) + 1
    return file, line, index - (marked.rfind("\n", 0, index) + 1) + 1


def _shrink(photo: Path) -> None:
    from PIL import Image

    with Image.open(photo) as image:
        image.resize((320, 240)).save(photo)


@pytest.mark.parametrize("one", BREAKS, ids=lambda one: one.rule)
def test_broken_demo_gives_that_one_finding(one: Break, demo: Path) -> None:
    """One top-level finding, of the rule broken, at its place."""
    expected = broken(one, demo)
    findings = check_plant(demo).findings
    assert [found.rule for found in findings] == [one.rule], [(str(f.place), f.rule, f.message) for f in findings]
    place = findings[0].place
    assert (place.file, place.line, place.column) == expected


def test_every_rule_is_broken_here() -> None:
    """A new rule needs its break."""
    assert {one.rule for one in BREAKS} == set(rule_book())
