"""The loop over the YAML parser's events: values and places. Files and syntax errors are its caller's.

The two loops are written out by hand, the ordinary scalar first, because they are most of the reading
time: building nodes and looking places up by path took three times as long.
"""

from __future__ import annotations

from collections.abc import Callable
from sys import intern
from typing import Any, TypeAlias

from yaml._yaml import CParser
from yaml.events import (
    AliasEvent,
    DocumentStartEvent,
    MappingEndEvent,
    MappingStartEvent,
    ScalarEvent,
    SequenceEndEvent,
    StreamEndEvent,
)

from builder.finding import Finding, Place
from builder.reading.faults import fault
from builder.reading.raw_text import line_and_column, split_lines
from builder.reading.spots import COLUMN, LINE, Branch, Spot, Value, pack, unpack
from builder.reading.yaml_errors import explain_line
from builder.reading.yaml_marks import content_start, is_bare, is_commented_out, type_mark

MAX_DEPTH = 32
"""Levels of nesting that are read."""

MAX_ALIASED = 10_000
"""Values that aliases may add to one file. A text counts once more for every 100 characters."""

_MAX_FINDINGS = 100
_ORIGIN = LINE + COLUMN  # the parser counts lines and columns from 0
_EMPTY = frozenset(("", "~", "null", "Null", "NULL"))
_HARMLESS_TAGS = frozenset(f"tag:yaml.org,2002:{kind}" for kind in ("str", "seq", "map"))
# The parser's events and marks. Its types allow a missing mark, which its C half never gives.
_Event: TypeAlias = Any
_Mark: TypeAlias = Any


class TooDeep(Exception):
    """Nesting went beyond MAX_DEPTH, at this 1-based line and column."""

    def __init__(self, line: int, column: int) -> None:
        super().__init__()
        self.line = line
        self.column = column


class YamlReader:
    """Reads one text; `findings` and `marred` are as in Document."""

    __slots__ = ("_added", "_anchors", "_file", "_get", "_text", "findings", "marred")

    def __init__(self, text: str, file: str) -> None:
        self._text = text
        self._file = file
        self._get: Callable[[], _Event] = CParser(text).get_event
        # None while the anchored value is still being read.
        self._anchors: dict[str, tuple[Value, Spot] | None] = {}
        self._added = 0
        self.findings: list[Finding] = []
        self.marred: set[int] = set()

    def read(self) -> tuple[dict[str, Value] | None, Branch | None]:
        """The top mapping and its places, or None twice. Raises YAMLError or TooDeep."""
        self._get()  # the stream's start
        if self._get().__class__ is StreamEndEvent:
            self._report_empty_file()
            return None, None
        root = self._get()
        value: Value = ""
        spot: Spot = 0
        if root.__class__ is not ScalarEvent:
            value, spot = self._node(root, 0, None)
        self._get()  # the document's end
        after = self._get()
        if after.__class__ is DocumentStartEvent:
            message = "A second document begins here; what follows is not read."
            remedy = "Delete the line `---`, or make it a file of its own."
            self._report(self._spot_of(after.start_mark), "text-second-document", message, remedy)
        if isinstance(value, dict) and isinstance(spot, Branch):
            return value, spot
        self._report_top(root)
        return None, None

    def _mapping(self, at: int, depth: int, flow: bool) -> tuple[Value, Spot]:
        get: Callable[[], _Event] = self._get
        values: dict[str, Value] = {}
        keys: dict[str, int] = {}
        items: dict[str, Spot] = {}
        value: Value
        spot: Spot
        mark: _Mark
        end: _Mark
        while True:
            event = get()
            if event.__class__ is not ScalarEvent:
                if event.__class__ is MappingEndEvent:
                    return values, Branch(at, keys, items)
                self._odd_key(event, depth)
                continue
            key: str = intern(event.value)  # the same few names stand in every file
            mark = event.start_mark
            lead = mark.line * LINE + mark.column * COLUMN + _ORIGIN
            if event.style or event.anchor or event.tag:
                lead = self._quoted_key(event)
            follower = get()
            if follower.__class__ is not ScalarEvent:
                value, spot = self._node(follower, depth, lead)
            else:
                value = follower.value
                if follower.style or follower.anchor or follower.tag or value in _EMPTY:
                    if flow and not value and is_bare(self._text, event, follower):
                        self._bare_key(event, lead, items, values)
                        continue
                    value, spot = self._scalar(follower, lead, key)
                else:
                    mark, end = follower.start_mark, follower.end_mark
                    # True counts as ONE_LINE.
                    spot = mark.line * LINE + mark.column * COLUMN + _ORIGIN + (mark.line == end.line)
            if key in values or not key or (key == "<<" and not event.style):
                self._refuse_key(key, lead, keys)
                continue
            values[key] = value
            keys[key] = lead
            items[key] = spot

    def _sequence(self, at: int, depth: int) -> tuple[Value, Spot]:
        get: Callable[[], _Event] = self._get
        values: list[Value] = []
        items: list[Spot] = []
        value: Value
        spot: Spot
        mark: _Mark
        end: _Mark
        while True:
            event = get()
            if event.__class__ is not ScalarEvent:
                if event.__class__ is SequenceEndEvent:
                    return values, Branch(at, {}, items)
                value, spot = self._node(event, depth, None)
            else:
                value = event.value
                if event.style or event.anchor or event.tag or value in _EMPTY:
                    value, spot = self._scalar(event, None, "")
                else:
                    mark, end = event.start_mark, event.end_mark
                    # True counts as ONE_LINE.
                    spot = mark.line * LINE + mark.column * COLUMN + _ORIGIN + (mark.line == end.line)
            values.append(value)
            items.append(spot)

    # What is rarer.

    def _node(self, event: _Event, depth: int, lead: int | None) -> tuple[Value, Spot]:
        """Any value; `lead` is the place of the key before it."""
        if event.__class__ is ScalarEvent:
            return self._scalar(event, lead, "")
        if event.__class__ is AliasEvent:
            return self._alias(event)
        at = pack(*content_start(self._text, event))
        if depth >= MAX_DEPTH:
            raise TooDeep(*unpack(at))
        self._check_tag(event)
        if event.anchor:
            self._anchors[event.anchor] = None
        if event.__class__ is MappingStartEvent:
            value, spot = self._mapping(at, depth + 1, bool(event.flow_style))
        else:
            value, spot = self._sequence(at, depth + 1)
        if event.anchor:
            self._anchors[event.anchor] = (value, spot)
        return value, spot

    def _scalar(self, event: _Event, lead: int | None, key: str) -> tuple[Value, Spot]:
        """A scalar that is quoted, a block, empty, or has an anchor or tag."""
        refused = self._check_tag(event)
        value: str = event.value
        line, column = content_start(self._text, event)
        end = event.end_mark
        one_line = line == end.line + 1
        if event.style in ("'", '"'):
            # Every escape is longer than what it stands for, so equal lengths mean there is none.
            one_line = one_line and end.column - column == len(value)
        elif event.style:
            one_line = False
        spot = pack(line, column, one_line)
        if not value.strip() or (not event.style and value in _EMPTY):
            spot = spot if refused else self._empty(event, spot, lead, key)
            value = ""
        if event.anchor:
            self._anchors[event.anchor] = (value, spot)
        return value, spot

    def _alias(self, event: _Event) -> tuple[Value, Spot]:
        """The value named earlier; its place is where its text stands, because there it is mended."""
        name = event.anchor
        here = self._spot_of(event.start_mark)
        if name not in self._anchors:
            remedy = f"If it is text, put it in quotes; to repeat a value, mark that value with &{name}."
            self._report(here, "text-unknown-alias", f"Nothing before this line is marked &{name}.", remedy)
            return "", here
        target = self._anchors[name]
        if target is None:
            message = f"*{name} repeats the value it stands in."
            self._report(here, "text-alias-ring", message, "Type the value that is meant.")
            return "", here
        if self._added > MAX_ALIASED:
            return "", here
        self._added += _weight(target[0], MAX_ALIASED + 1)
        if self._added > MAX_ALIASED:
            message = f"Repeating values with * makes more than {MAX_ALIASED:,} of them; no more are read."
            self._report(here, "text-alias-growth", message, "Type the values that are meant.")
            return "", here
        return target

    def _odd_key(self, event: _Event, depth: int) -> None:
        """A list, mapping or alias in a key's place: report it and skip it with its value."""
        is_alias = event.__class__ is AliasEvent  # whose anchor is no property before it
        spot = self._spot_of(event.start_mark) if is_alias else pack(*content_start(self._text, event))
        message = "Only a word can be a name, not a list, braces or a repeated value."
        self._report(spot, "text-key-not-text", message, "If it is text, put it in quotes.")
        kept = len(self.findings)
        self._node(event, depth, None)
        self._node(self._get(), depth, None)
        del self.findings[kept:]

    def _quoted_key(self, event: _Event) -> int:
        self._check_tag(event)
        spot = pack(*content_start(self._text, event))
        if event.anchor:
            self._anchors[event.anchor] = (event.value, spot)
        return spot

    def _refuse_key(self, key: str, lead: int, keys: dict[str, int]) -> None:
        if not key:
            message = "There is no name before the colon."
            self._report(lead, "text-empty-key", message, "Type the name, or delete the line.")
        elif key == "<<" and key not in keys:
            message = "Values from elsewhere can't be merged in with <<."
            self._report(lead, "text-merge-key", message, "Type the values here.")
        else:
            message = f"`{key}` is given twice; the first is in line {unpack(keys[key])[0]}."
            self._report(lead, "text-duplicate-key", message, "Delete one of the two.")

    def _empty(self, event: _Event, spot: int, lead: int | None, key: str) -> int:
        """Report an empty value. One with no character of its own takes the place of its key or dash."""
        if not event.value and not event.style:
            line, column = unpack(spot)
            spot = lead if lead is not None else pack(line, max(column - 1, 1))
        message = f"`{key}` has no value." if key else "This item has no value."
        remedy = "Type the value, or delete the line."
        if is_commented_out(self._text, event):
            remedy = "What follows the # is a comment; if it is the value, put it in quotes."
        self._report(spot, "text-empty-value", message, remedy)
        return spot

    def _bare_key(self, event: _Event, lead: int, items: dict[str, Spot], values: dict[str, Value]) -> None:
        """`{a: 1,5}`: most often a decimal comma or a comma inside a text."""
        key: str = event.value
        last = next(reversed(items), None)
        before = values[last] if last is not None else None
        name, colon, _ = key.partition(":")
        if colon and name:
            message = f"There is no blank between `{name}:` and what follows."
            self._report(lead + len(name) * COLUMN, "text-no-blank", message, "Put a blank behind the colon.")
            return
        if last is None or not isinstance(before, str):
            remedy = f"Write `{key}: ` and the value."
            self._report(lead, "text-empty-value", f"`{key}` has no value.", remedy)
            return
        if len(self.findings) >= _MAX_FINDINGS:
            return
        comma = self._text.rfind(",", 0, event.start_mark.index)
        message = f"The comma ends the value of `{last}`, and `{key}` stands alone."
        if before[-1:].isdigit() and key[:1].isdigit():
            remedy = f"Write a decimal point, `{last}: {before}.{key}`, or put the value in quotes."
        else:
            remedy = f"Put the whole value of `{last}` in quotes, or give `{key}` a value."
        self._report(pack(*line_and_column(self._text, comma)), "text-decimal-comma", message, remedy)
        spot = items[last]
        if isinstance(spot, int):
            self.marred.add(spot)

    def _check_tag(self, event: _Event) -> bool:
        """Report a type mark; whether there was one to report."""
        if not event.tag or event.tag in _HARMLESS_TAGS:
            return False
        line, column, shown = type_mark(self._text, event)
        message = f"The type mark `{shown}` is not used here."
        remedy = f"Delete `{shown}`; if it is text, put the whole text in quotes."
        self._report(pack(line, column), "text-tag", message, remedy)
        return True

    def _report_empty_file(self) -> None:
        message = "The file is empty, or holds only comments."
        self._report(pack(1, 1), "text-empty-file", message, "Type what it is to say, or delete the file.")

    def _report_top(self, root: _Event) -> None:
        if root.__class__ is ScalarEvent and not root.value.strip():
            self._report_empty_file()
            return
        line, column = content_start(self._text, root)
        if root.__class__ is ScalarEvent:
            told = explain_line(split_lines(self._text), line - 1, column - 1)
            if told.rule == "text-no-blank":
                self._report(pack(told.line, told.column), told.rule, told.message, told.remedy)
                return
        message = "The file doesn't begin with a name, a colon and a value."
        self._report(pack(line, column), "text-not-a-mapping", message, "Write it as lines of `name: value`.")

    def _spot_of(self, mark: _Mark) -> int:
        return pack(mark.line + 1, mark.column + 1)

    def _report(self, spot: int, rule: str, message: str, remedy: str) -> None:
        self.marred.add(spot)
        if len(self.findings) < _MAX_FINDINGS:
            self.findings.append(fault(Place(self._file, *unpack(spot)), rule, message, remedy))


def _weight(value: Value, limit: int) -> int:
    """How many values `value` stands for with all it repeats, counted up to about `limit`."""
    total, stack = 0, [value]
    while stack and total < limit:
        one = stack.pop()
        total += 1
        if isinstance(one, str):
            total += len(one) // 100
        else:
            stack.extend(one.values() if isinstance(one, dict) else one)
    return total
