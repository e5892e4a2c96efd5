"""What a step may show."""

from builder.model import Shown, read_shown


def test_part_with_its_side():
    assert read_shown("back-panel, wrong side") == Shown("part", "back-panel", 0, "wrong side", 12)
    assert read_shown("back-panel, wrong side").wrong
    assert not read_shown("back-panel").wrong


def test_pictures_that_explain_one_thing():
    assert read_shown("section of hem-seam") == Shown("section", "hem-seam", 11)
    assert read_shown("stitch  of  of-side") == Shown("stitch", "of-side", 12)
    assert read_shown("layers of bar-bag").kind == "layers"
    assert read_shown("nest").kind == "nest"
    assert read_shown("settings") == Shown("settings")


def test_a_part_may_be_called_as_a_picture_begins():
    assert read_shown("section") == Shown("part", "section")
    assert read_shown("stitch-of-side") == Shown("part", "stitch-of-side")
