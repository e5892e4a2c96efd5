"""The output folder: whole or as it was, and only what changed."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.errors import UsageError
from builder.writing import Output, write_file


def build(out: Path, files: dict[str, str]) -> tuple[int, int, int]:
    """A build of plain files, keyed by their content."""
    with Output(out) as output:
        for path, text in files.items():
            output.make(path, text, text.encode)
        one = output.finish()
    return one.changed, one.unchanged, one.removed


def test_second_build_changes_nothing(tmp_path: Path) -> None:
    """Equal keys: the content isn't even asked for."""
    out = tmp_path / "out"
    assert build(out, {"a.txt": "one", "b/c.txt": "two"}) == (2, 0, 0)
    with Output(out) as output:
        output.make("a.txt", "one", lambda: pytest.fail("made again"))
        output.make("b/c.txt", "two", lambda: pytest.fail("made again"))
        assert output.finish().changed == 0


def test_what_is_no_longer_made_is_removed(tmp_path: Path) -> None:
    """With its folder when that is empty then."""
    out = tmp_path / "out"
    build(out, {"a.txt": "one", "b/c.txt": "two"})
    assert build(out, {"a.txt": "one"}) == (0, 1, 1)
    assert not (out / "b").exists()


def test_a_failing_build_leaves_the_old_one(tmp_path: Path) -> None:
    """Half a site is never seen, and nothing is left lying about."""
    out = tmp_path / "out"
    build(out, {"a.txt": "one"})

    def fail() -> bytes:
        raise ZeroDivisionError

    def half() -> None:
        with Output(out) as output:
            output.make("b.txt", "new", lambda: b"new")
            output.make("a.txt", "new", fail)
            output.finish()

    with pytest.raises(ZeroDivisionError):
        half()
    assert (out / "a.txt").read_text() == "one"
    assert [path.name for path in tmp_path.iterdir()] == ["out"]


def test_a_deleted_file_is_made_again(tmp_path: Path) -> None:
    """The manifest is believed only as far as the files are there."""
    out = tmp_path / "out"
    build(out, {"a.txt": "one"})
    (out / "a.txt").unlink()
    assert build(out, {"a.txt": "one"})[0] == 1


def test_a_folder_of_somebody_is_refused(tmp_path: Path) -> None:
    """`--to` pointed at the wrong folder destroys nothing."""
    (tmp_path / "work.doc").write_text("mine")
    with pytest.raises(UsageError):
        build(tmp_path, {"a.txt": "one"})
    assert (tmp_path / "work.doc").read_text() == "mine"


def test_write_file_replaces_whole(tmp_path: Path) -> None:
    """One file, atomically."""
    write_file(tmp_path / "new" / "a.pdf", b"one")
    write_file(tmp_path / "new" / "a.pdf", b"two")
    assert (tmp_path / "new" / "a.pdf").read_bytes() == b"two"
    assert len(list((tmp_path / "new").iterdir())) == 1
