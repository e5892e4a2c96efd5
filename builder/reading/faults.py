"""The faults of a text by slug, and why each matters. Every finding of this room is made here."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from builder.finding import Finding, Place, Severity

_UNREAD = "Nothing from this file can be checked or printed until it is mended."
_SILENT = "Part of what was typed would be left out without a word, and the sheet would be wrong."
_GUESS = "It can be read in more than one way, and the sheet must not rest on a guess."

WHY: Mapping[str, str] = MappingProxyType(
    {
        # the file as a whole
        "text-encoding": "Letters such as ± or ° would be printed as something else, or not at all.",
        "text-too-large": "So large a file is a mistake as a rule, and reading it would hold up every build.",
        "text-empty-file": "The name exists, but nothing is said about it.",
        "text-unreadable": _UNREAD,
        "text-link-outside": "A copy of the plant folder would print something else.",
        "text-file-name": "Files are referred to by name, and this name can't be typed.",
        "text-same-name": "A name must mean one thing, or two sheets contradict each other.",
        "text-unknown-file": "Nothing reads it, so what it says reaches no sheet.",
        "text-no-plant": "It says the shift, the units and the paper size; nothing can be printed without.",
        # characters
        "text-control-character": "It can't be seen in an editor, and it changes what is read.",
        "text-odd-line-break": "Some programs start a new line here and others don't.",
        "text-tab": "A tab is as wide as each editor likes, so it can't say what belongs to what.",
        # structure of YAML
        "text-syntax": _UNREAD,
        "text-colon": "A colon and a blank mean that a value follows, so the text is torn in two.",
        "text-no-blank": "Without a blank behind the colon, the name and its value are one word.",
        "text-no-colon": _UNREAD,
        "text-indentation": "The indentation says what belongs to what.",
        "text-unclosed-quote": "Everything behind the opening quote mark is read as text.",
        "text-behind-quote": "The text ends at the closing quote mark, so the rest belongs to nothing.",
        "text-unclosed-bracket": "Everything behind the opening bracket is read as part of it.",
        "text-behind-bracket": "The value ends at the closing bracket, so the rest belongs to nothing.",
        "text-stray-comma": _GUESS,
        "text-special-start": "There this character is a command to the reader, not text.",
        "text-backslash": "In double quotes a backslash is a command to the reader, not text.",
        "text-list": _GUESS,
        "text-directive": "At the beginning of a line a % is a command to the reader, not text.",
        "text-second-document": _SILENT,
        "text-not-a-mapping": "A file is a list of names, each with its value.",
        "text-too-deep": "No fact about a plant lies so deep, so a bracket or the indentation is wrong.",
        # names and values
        "text-duplicate-key": _GUESS,
        "text-empty-key": _SILENT,
        "text-key-not-text": "Only a word can name a value.",
        "text-merge-key": "Each fact is typed where it is used, so that it can be found and corrected there.",
        "text-tag": "Values are text; a type mark would change what they mean.",
        "text-unknown-alias": _SILENT,
        "text-alias-ring": "A value that holds itself has no end.",
        "text-alias-growth": "Repeated this often, a small file fills the memory.",
        "text-empty-value": "It may be forgotten or meant as nothing, and nobody can tell which.",
        "text-decimal-comma": "Inside braces a comma ends the value, so the number is cut off.",
        # tables
        "text-separator": _UNREAD,
        "text-no-header": "Without names the columns mean nothing.",
        "text-duplicate-column": _GUESS,
        "text-unnamed-column": _SILENT,
        "text-too-many-cells": "The readings of this row stand under the wrong names.",
    }
)
"""Why each fault matters on the floor, by slug."""


def fault(
    place: Place,
    rule: str,
    message: str,
    remedy: str,
    *,
    severity: Severity = Severity.error,
    about: tuple[str, ...] = (),
) -> Finding:
    """A finding of this room; its reason comes from `WHY`."""
    return Finding(place, rule, severity, message, WHY[rule], remedy, about)
