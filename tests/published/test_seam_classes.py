"""Classes of seams against published descriptions."""

from __future__ import annotations

import pytest

from builder.geometry import Section, seam_class
from tests.drawing import gallery_sections as made

# (section as described, class of ISO 4916, letters of ASTM D6193, source, how)
_JIS = "JIS L 0121:1984 (ISO 4916:1982, modified), clause 2.1 (1): two pieces limited on the same side"
_COURSE = 'public course presentation "Classification of seam": class 2, one limited on one end, the other on the other'
_LETTERS = 'ASTM D6193 and FED-STD-751a as taught in a public course presentation, "Seam classes"'
_ISO = "ISO 4916:1991 Textiles - Seam types - Classification and terminology, sample pages as quoted in a public note"
PUBLISHED = [
    (made.superimposed(), 1, "SS", _JIS, "read"),
    (made.lapped(), 2, "LS", _COURSE, "read"),
    (made.bound(), 3, "BS", _ISO, "read at second hand"),
    (made.flat(), 4, "FS", _ISO, "read at second hand; letters: memory"),
    (made.decorative(), 5, "OS", _ISO, "read at second hand; letters: memory"),
    (made.hem(), 6, "EF", _ISO, "read at second hand; letters: memory"),
    (made.edge_item(), 7, "", _ISO, "read at second hand; letters: none could be confirmed"),
    (made.strip_alone(), 8, "", _ISO, "read at second hand; letters: none could be confirmed"),
]


@pytest.mark.parametrize(("one", "number", "letters", "source", "how"), PUBLISHED)
def test_class_of_a_seam(one: Section, number: int, letters: str, source: str, how: str) -> None:
    """Its number and letters."""
    found = seam_class(one)
    assert found is not None
    assert (found.number, found.letters) == (number, letters), f"{source} ({how})"


def test_pockets_are_set_by_a_lapped_seam() -> None:
    """Setting pockets is named among lapped seams: course presentation "Seam classes" (read)."""
    found = seam_class(made.section(made.ply("cloth", -200, 200), made.ply("lining", -70, 4)))
    assert found is not None
    assert found.letters == "LS", _LETTERS
