"""Needles as the trade writes them."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.errors import TextFault
from builder.model import Needle, NeedleSizes, parse_needle, parse_needle_sizes
from builder.model.needle import LARGEST, NEEDLE_POINTS, OLD_COUNT, SMALLEST
from tests.model.faults import fault_offset
from tests.plants import found

SIZES = st.integers(SMALLEST, LARGEST)


@given(SIZES, st.sampled_from(["", *NEEDLE_POINTS]))
def test_a_needle_is_read_back_as_it_is_written(size: int, point: str) -> None:
    """What `text` writes, `parse_needle` reads."""
    needle = Needle(size, point)
    assert parse_needle(needle.text) == needle


@given(SIZES, SIZES)
def test_sizes_are_read_back_as_they_are_written(one: int, other: int) -> None:
    """A range from the smaller to the larger."""
    sizes = NeedleSizes(min(one, other), max(one, other))
    assert parse_needle_sizes(sizes.text) == sizes


@given(st.text(max_size=20))
def test_any_text_is_read_or_refused_inside_itself(text: str) -> None:
    """No other exception, and the place of the fault lies in the text."""
    assert 0 <= fault_offset(parse_needle, text) <= len(text)
    assert 0 <= fault_offset(parse_needle_sizes, text) <= len(text)


@pytest.mark.parametrize(
    ("text", "needle"),
    [
        ("Nm 110 R", Needle(110, "R")),
        ("nm110r", Needle(110, "R")),
        ("  NM  90   ses ", Needle(90, "SES")),
        ("Nm 100", Needle(100, "")),
    ],
)
def test_good_needles(text: str, needle: Needle) -> None:
    """Blanks and capitals are no matter."""
    assert parse_needle(text) == needle


def test_the_size_is_the_blade_in_hundredths_of_a_millimetre() -> None:
    """Nm 110 is 1.10 mm."""
    assert parse_needle("Nm 110 R").diameter == Fraction("1.1")


@pytest.mark.parametrize(
    ("text", "offset", "remedy"),
    [
        ("110 R", 0, "Did you mean Nm 110 R?"),
        (" 18", 1, "Did you mean Nm 110?"),
        ("size 16 r", 0, "Did you mean Nm 100 R?"),
        ("Nm 11 R", 3, "Sizes go from Nm 40 to Nm 400"),
        ("the usual one", 0, "Write its size and its point such as Nm 100 R"),
        ("Nm R", 0, "Write its size and its point such as Nm 100 R"),
    ],
)
def test_refused_with_a_remedy(text: str, offset: int, remedy: str) -> None:
    """What can't be read is answered with what to write."""
    with pytest.raises(TextFault) as refused:
        parse_needle(text)
    assert (refused.value.offset, refused.value.remedy) == (offset, remedy)


def test_swapped_sizes_are_refused_the_right_way_round() -> None:
    """`Nm 110..90`."""
    with pytest.raises(TextFault) as refused:
        parse_needle_sizes("Nm 110..90")
    assert refused.value.remedy == "Write Nm 90..110"


def test_a_needle_in_the_files_is_refused_at_its_letter(tmp_path: Path) -> None:
    """In a setting, and in the sizes a thread states."""
    setting = found("operations/sew-hem.yaml: {settings: {needle: Nm 11 R}}", tmp_path / "a")
    assert [(one.rule, one.message) for one in setting] == [("setting-unreadable", "Nm 11 would be a blade of 0.11 mm")]
    sizes = found("materials/all.yaml: {materials: {thread-70: {needles: 90 to 110}}}", tmp_path / "b")
    assert [(one.rule, one.remedy) for one in sizes] == [("value-unreadable", "Write two sizes such as Nm 90..110")]


def test_the_old_count_rises_with_the_blade() -> None:
    """A slip in the table would break the order."""
    assert sorted(OLD_COUNT.values()) == [OLD_COUNT[one] for one in sorted(OLD_COUNT)]
