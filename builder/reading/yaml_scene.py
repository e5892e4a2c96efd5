"""What stands around the place where the YAML parser gave up. It looks; `yaml_errors` says what is wrong."""

from __future__ import annotations

import re
from typing import NamedTuple


class Explained(NamedTuple):
    """A syntax error: 1-based line and column, slug, what is wrong, what to do."""

    line: int
    column: int
    rule: str
    message: str
    remedy: str


class Scene(NamedTuple):
    """What stands around the mark. Rows and columns are 0-based as in the parser's marks."""

    lines: list[str]
    row: int
    column: int
    start_row: int
    start_column: int
    problem: str
    context: str

    @property
    def line(self) -> str:
        return self.lines[self.row] if self.row < len(self.lines) else ""

    @property
    def start_line(self) -> str:
        return self.lines[self.start_row] if self.start_row < len(self.lines) else ""

    @property
    def before(self) -> str:
        return self.line[: self.column]

    @property
    def char(self) -> str:
        return self.line[self.column : self.column + 1]

    def here(self, rule: str, message: str, remedy: str) -> Explained:
        return Explained(self.row + 1, self.column + 1, rule, message, remedy)

    def at_start(self, rule: str, message: str, remedy: str) -> Explained:
        return Explained(self.start_row + 1, self.start_column + 1, rule, message, remedy)


KEY = re.compile(r"\s*(?:- +)*(?P<key>[^\s:#\"'][^:#]*|\"[^\"]*\"|'[^']*') *:(?= |$)")


def open_indents(scene: Scene) -> set[int]:
    """Indentations of the lines above that enclose the marked line or come just before it."""
    found: set[int] = set()
    lowest = len(scene.lines[scene.row]) + 10**6 if scene.row < len(scene.lines) else 10**6
    for line in reversed(scene.lines[: scene.row]):
        depth = indent(line)
        if line.strip() and line[depth] != "#" and depth < lowest:
            found.add(depth)
            lowest = depth
    return found if found and min(found) <= scene.column else set()


def row_above(scene: Scene, row: int) -> int | None:
    """The next row up that is neither empty nor a comment."""
    for above in range(row - 1, -1, -1):
        line = scene.lines[above].strip()
        if line and not line.startswith("#"):
            return above
    return None


def open_bracket(scene: Scene) -> tuple[int, int] | None:
    """Row and column of the last bracket before the mark that is not closed before it."""
    depth = 0
    for row in range(min(scene.row, len(scene.lines) - 1), -1, -1):
        line = scene.lines[row][: scene.column] if row == scene.row else scene.lines[row]
        line = re.split(r"(?:^|[ \t])#", line, maxsplit=1)[0]
        for column in range(len(line) - 1, -1, -1):
            if line[column] in "]}":
                depth += 1
            elif line[column] in "[{":
                if depth == 0:
                    return row, column
                depth -= 1
    return None


def is_item(line: str) -> bool:
    words = line.strip(" ")
    return words == "-" or words.startswith("- ")


def indent(line: str) -> int:
    return len(line) - len(line.lstrip(" "))


def blanks(count: int) -> str:
    return {0: "no blank", 1: "1 blank"}.get(count, f"{count} blanks")


def short(words: str) -> str:
    return words if len(words) <= 40 else words[:39] + "…"
