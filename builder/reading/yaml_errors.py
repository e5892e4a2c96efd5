"""The YAML parser's complaints in plain words. It explains a mark in a text; it does not parse.

The parser says where it gave up, which is often behind the mistake, so the lines around the mark are
looked at for the mistakes that people make. No word of the parser's own reaches the engineer.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from yaml.error import MarkedYAMLError, YAMLError

from builder.reading.raw_text import split_lines
from builder.reading.yaml_scene import (
    KEY,
    Explained,
    Scene,
    blanks,
    indent,
    is_item,
    open_bracket,
    open_indents,
    row_above,
    short,
)

_QUOTE = "Put the whole text in quotes."
_SPECIAL = "*&!|>%@`?[]{},"
_GLUED = re.compile(r"\s*(?:- +)*[^\s:#\"'-][^\s:]*(?P<colon>:)\S")


def explain(error: YAMLError, text: str) -> Explained:
    """Say what is wrong in `text`, given the error the parser raised on it."""
    lines = split_lines(text)
    if not isinstance(error, MarkedYAMLError) or error.problem_mark is None:
        return Explained(1, 1, "text-syntax", "This file can't be read.", "Save it as plain text in UTF-8.")
    mark, start = error.problem_mark, error.context_mark or error.problem_mark
    problem, context = error.problem or "", error.context or ""
    scene = Scene(lines, mark.line, mark.column, start.line, start.column, problem, context)
    for words, explainer in _EXPLAINERS:
        if words in problem or words in context:
            return explainer(scene)
    return _anything(scene)


def _anything(scene: Scene) -> Explained:
    remedy = "Compare it with the lines around it: a name, a colon, a blank, the value."
    if "\u00a0" in scene.line:
        remedy = "It holds a no-break space, as word processors make it: type the blanks of this line anew."
    if not scene.line.strip():
        scene = _up_to_text(scene)
    return scene.here("text-syntax", "This line can't be read as `name: value`.", remedy)


def _up_to_text(scene: Scene) -> Scene:
    """The scene at the last line with text: a fault found at the end of the file belongs there."""
    row = row_above(scene, min(scene.row, len(scene.lines)))
    return scene if row is None else scene._replace(row=row, column=indent(scene.lines[row]))


def _tab(scene: Scene) -> Explained:
    return scene.here("text-tab", "A tab is used for indentation.", "Use blanks, two for each level.")


def _odd_start(scene: Scene) -> Explained:
    return _tab(scene) if scene.char == "\t" else _special(scene)


def _special(scene: Scene) -> Explained:
    """A value that begins with a character YAML keeps for itself, at the mark."""
    if not scene.before.strip() and scene.char == "%":
        return _directive(scene)
    message = f"A value can't begin with the character {scene.char} as it stands."
    return scene.here("text-special-start", message, _QUOTE)


def _special_at_start(scene: Scene) -> Explained:
    return _special(scene._replace(row=scene.start_row, column=scene.start_column))


def _directive(scene: Scene) -> Explained:
    remedy = "Delete the line, or put the text in quotes."
    return Explained(scene.start_row + 1, 1, "text-directive", "A line can't begin with `%`.", remedy)


def _quoted(scene: Scene) -> Explained:
    if "end of stream" in scene.problem or "document indicator" in scene.problem:
        mark = scene.start_line[scene.start_column : scene.start_column + 1]
        message = f"The quote mark {mark} opened here is not closed."
        return scene.at_start("text-unclosed-quote", message, f"Add {mark} at the end of the text.")
    message = "A backslash in double quotes is not followed by a letter it can go with."
    remedy = "Use single quotes '…', in which a backslash is a plain character."
    return scene.here("text-backslash", message, remedy)


def _inline_list(scene: Scene) -> Explained:
    remedy = "Put each item on a line of its own below the name, or, if the dash is text, put it in quotes."
    return scene.here("text-list", "A list can't begin on the same line as its name.", remedy)


def _no_colon(scene: Scene) -> Explained:
    return explain_line(scene.lines, scene.start_row, scene.start_column)


def explain_line(lines: list[str], row: int, column: int) -> Explained:
    line = lines[row] if row < len(lines) else ""
    if glued := _GLUED.match(line):
        at = glued.start("colon")
        word = line[:at].strip().removeprefix("- ").strip()
        message = f"There is no blank between `{word}:` and what follows."
        return Explained(row + 1, at + 1, "text-no-blank", message, "Put a blank behind the colon.")
    if re.match(r"\s*-[^\s-]", line):
        message = "There is no blank behind the dash."
        remedy = "A list item is a dash, a blank, and the value."
        return Explained(row + 1, indent(line) + 1, "text-no-blank", message, remedy)
    words = line.strip()
    message = f"`{short(words)}` has no colon and no value."
    if "\u00a0" in line:
        remedy = "It holds a no-break space, as word processors make it: type the blanks of this line anew."
    else:
        remedy = "Write `name: value`; if it goes on with the text above, indent it deeper than that line."
    return Explained(row + 1, column + 1, "text-no-colon", message, remedy)


def _colon(scene: Scene) -> Explained:
    """A colon where no name can stand: inside a text, or on a line taken for the rest of the text above."""
    first = KEY.match(scene.before)
    if first:
        return _colon_in_text(scene, first)
    above = row_above(scene, scene.row)
    if above is None:
        return _anything(scene)
    line = scene.lines[above]
    key = KEY.match(line)
    if key is None and not line.lstrip().startswith("- "):
        return explain_line(scene.lines, above, indent(line))
    name = f"`{key['key']}`" if key else f"`{short(line.strip())}`"
    column = indent(scene.line)
    message = f"This line is indented deeper than {name}, which already has a value, and is taken for its text."
    remedy = f"Indent it like {name}; or, if it is meant as text, put the whole text in quotes."
    return Explained(scene.row + 1, column + 1, "text-indentation", message, remedy)


def _colon_in_text(scene: Scene, first: re.Match[str]) -> Explained:
    key, value = first["key"], scene.line[first.end() :].strip()
    message = f"The text of `{key}` holds a colon and a blank."
    mark = "'" if '"' in value else '"'
    sure = len(value) <= 60 and mark not in value and "{" not in scene.before and "[" not in scene.before
    remedy = f"Put it in quotes: {key}: {mark}{value}{mark}" if sure else _QUOTE
    return scene.here("text-colon", message, remedy)


def _node_missing(scene: Scene) -> Explained:
    if scene.char == ",":
        message = "There is nothing before this comma."
        return scene.here("text-stray-comma", message, "Delete the comma, or type what is missing before it.")
    opener = open_bracket(scene)
    if opener is not None and (not scene.char or scene.char not in "]}"):
        return _unclosed(scene._replace(start_row=opener[0], start_column=opener[1]))
    if scene.char and scene.char in _SPECIAL:
        return _special(scene)
    return _anything(scene)


def _in_brackets(scene: Scene) -> Explained:
    before = scene.before.rstrip()
    same_line = scene.row == scene.start_row
    if scene.char == ":" and (KEY.match(before) or (same_line and ":" in before)):
        message = "A text inside the brackets holds a colon and a blank."
        return scene.here("text-colon", message, "Put this text in quotes.")
    if before and scene.char and same_line:
        if before[-1] in "\"'":
            return _behind_quote(scene)
        if before[-1] in "]}":
            return _behind_bracket(scene)
    return _unclosed(scene)


def _unclosed(scene: Scene) -> Explained:
    bracket = scene.start_line[scene.start_column : scene.start_column + 1]
    closing = {"[": "]", "{": "}"}.get(bracket, "the closing bracket")
    message = f"The bracket {bracket} opened here is not closed, or a comma is missing behind it."
    remedy = f"Add {closing} at the end, and a comma between any two items."
    return scene.at_start("text-unclosed-bracket", message, remedy)


def _behind_quote(scene: Scene) -> Explained:
    message = "The text goes on behind the closing quote mark."
    remedy = 'Put the whole value in quotes; inside "…" write \'…\', and an apostrophe only inside "…".'
    return scene.here("text-behind-quote", message, remedy)


def _behind_bracket(scene: Scene) -> Explained:
    message = "The value goes on behind the closing bracket."
    remedy = "Delete what stands behind it, or put the whole value in quotes."
    return scene.here("text-behind-bracket", message, remedy)


def _misfit(scene: Scene) -> Explained:
    """A line, or the rest of one, where the next name or list item was expected."""
    before = scene.before.rstrip()
    if scene.char == ":" and before.strip() in ("", "-"):
        message = "There is no name before the colon."
        return scene.here("text-empty-key", message, "Type the name, or delete the line.")
    if before.strip():
        return _rest_of_line(scene, before)
    if is_item(scene.line):
        return _stray_item(scene)
    return _wrong_indent(scene)


def _stray_item(scene: Scene) -> Explained:
    above = {indent(line) for line in scene.lines[: scene.row] if is_item(line)}
    if above and scene.column not in above:
        nearest = min(above, key=lambda depth: (abs(depth - scene.column), depth))
        message = f"This list item is indented by {blanks(scene.column)}, no other item above it is."
        remedy = f"Indent all items of one list alike, here by {blanks(nearest)}."
        return scene.here("text-indentation", message, remedy)
    remedy = "Put it directly below the name the list belongs to, in line with its other items."
    return scene.here("text-list", "A list item stands where a `name: value` line is expected.", remedy)


def _rest_of_line(scene: Scene, before: str) -> Explained:
    if before[-1] in "\"'":
        return _behind_quote(scene)
    if before[-1] in "]}" or (scene.char and scene.char in "]}"):
        return _behind_bracket(scene)
    key = KEY.match(before)
    start = key.end() if key else 0
    value = before[start:].lstrip()
    if value and value[0] in _SPECIAL:
        return _special(scene._replace(column=len(before) - len(value)))
    return _anything(scene)


def _wrong_indent(scene: Scene) -> Explained:
    indents = open_indents(scene)
    if "-" in scene.problem:
        message = "This line stands where the next list item is expected."
        remedy = "Begin it with a dash and a blank, or indent it as deep as the item it belongs to."
    elif not indents:
        message = "This line is indented less than the first line of the file."
        remedy = "Begin both in the same column."
    elif scene.column in indents:
        return _anything(scene)
    else:
        message = f"This line is indented by {blanks(scene.column)}, which fits no line above it."
        remedy = f"Indent it like the line it belongs with: by {' or '.join(blanks(n) for n in sorted(indents))}."
    return scene.here("text-indentation", message, remedy)


# In order: the first whose words stand in the parser's problem or context.
_EXPLAINERS: tuple[tuple[str, Callable[[Scene], Explained]], ...] = (
    ("found a tab character", _tab),
    ("cannot start any token", _odd_start),
    ("mapping values are not allowed", _colon),
    ("could not find expected ':'", _no_colon),
    ("scanning a quoted scalar", _quoted),
    ("parsing a quoted scalar", _quoted),
    ("scanning an alias", _special_at_start),
    ("scanning an anchor", _special_at_start),
    ("scanning a tag", _special_at_start),
    ("undefined tag handle", _special),
    ("scanning a block scalar", _special_at_start),
    ("directive", _directive),
    ("incompatible YAML", _directive),
    ("block sequence entries", _inline_list),
    ("mapping keys are not allowed", _special),
    ("expected node content", _node_missing),
    ("did not find expected ','", _in_brackets),
    ("did not find expected key", _misfit),
    ("did not find expected '-'", _misfit),
    ("expected <document start>", _misfit),
)
