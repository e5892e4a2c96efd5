"""Reading YAML: values, places, and a case for every finding with its exact line and column."""

from __future__ import annotations

import hashlib
import random
import re

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from builder.finding import Place, Severity
from builder.reading import WHY, YAML_LIMIT, Branch, Document, Spot, Value, read_yaml

ROUND = "*a, *a, *a, *a, *a, *a, *a, *a, *a, *a"
GROWTH = "".join(
    f"{name}: &{name} [{ROUND.replace('*a', before)}]\n"
    for name, before in zip("abcde", ("x", "*a", "*b", "*c", "*d"), strict=True)
)

# Text, whether it is broken, and each finding as line:column and slug without `text-`.
CASES: dict[str, tuple[str | bytes, bool, list[str]]] = {
    # the file
    "not UTF-8": (b"title: a\nnote: 20 \xb0C\n", True, ["2:10 encoding"]),
    "UTF-16": ("title: a\n".encode("utf-16"), True, ["1:1 encoding"]),
    "not UTF-8 behind a byte-order mark": (b"\xef\xbb\xbfa: \xff", True, ["1:4 encoding"]),
    "no byte at all": ("", True, ["1:1 empty-file"]),
    "only comments": ("# nothing\n\n", True, ["1:1 empty-file"]),
    "only a document mark": ("---\n", True, ["1:1 empty-file"]),
    "larger than allowed": (b"a: b\n" + b"#" * YAML_LIMIT, True, ["1:1 too-large"]),
    # characters
    "control character": ("a: b\nc: d\x07e\n", False, ["2:5 control-character"]),
    "NUL": ("a: b\x00\n", False, ["1:5 control-character"]),
    "byte-order mark inside": ("a: b\ufeffc\n", False, ["1:5 control-character"]),
    "line separator": ("a: b\u2028c\nd: e\n", False, ["1:5 odd-line-break"]),
    "paragraph separator": ("a: b\nc: d\u2029e\n", False, ["2:5 odd-line-break"]),
    "next line": ("a: b\x85c\n", False, ["1:5 odd-line-break"]),
    "tab as indentation": ("a:\n\tb: c\n", True, ["2:1 tab"]),
    "tab below blanks": ("a:\n  b: c\n\td: e\n", True, ["3:1 tab"]),
    "tab behind a dash": ("a:\n  -\tb: c\n    d: e\n", True, ["2:4 tab"]),
    "tab in a block text": ("a: |\n\tb\n", True, ["2:1 tab"]),
    # structure
    "colon in a text": ("a: b\ndo: Note: turn it\n", True, ["2:9 colon"]),
    "colon in a text of a list item": ("s:\n  - do: Lay: it\n", True, ["2:12 colon"]),
    "colon in braces": ("a: {b: c: d}\n", True, ["1:9 colon"]),
    "no blank behind the colon": ("title: a\ntime:3 s\nx: y\n", True, ["2:5 no-blank"]),
    "no blank, nested": ("s:\n  stitch:301\n  length: 3 mm\n", True, ["2:9 no-blank"]),
    "no blank in braces": ("needs: {panel: 1, handle:1}\n", False, ["1:25 no-blank"]),
    "no blank in the only line": ("title:Foo\n", True, ["1:6 no-blank"]),
    "no blank behind the dash": ("s:\n  - b\n  -a\n", True, ["3:3 no-blank"]),
    "no colon": ("title: a\nfoo\nx: y\n", True, ["2:1 no-colon"]),
    "no colon in the last line": ("title: a\nfoo\n", True, ["2:1 no-colon"]),
    "no colon, nested": ("s:\n  stitch\n  length: 3 mm\n", True, ["2:3 no-colon"]),
    "indented below a value": ("title: a\n  time: 3 s\n", True, ["2:3 indentation"]),
    "indented between two levels": ("s:\n    a: b\n  c: d\n", True, ["3:3 indentation"]),
    "indented less than the first line": ("  a: b\nc: d\n", True, ["2:1 indentation"]),
    "list item indented otherwise": ("s:\n  - a: b\n - c: d\n", True, ["3:2 indentation"]),
    "name among list items": ("s:\n  - a\n  b: c\n", True, ["3:3 indentation"]),
    "unclosed double quote": ('a: "x\nb: c\n', True, ["1:4 unclosed-quote"]),
    "unclosed single quote": ("a: b\nc: 'x\n", True, ["2:4 unclosed-quote"]),
    "text behind a quote": ('a: "x" y\n', True, ["1:8 behind-quote"]),
    "apostrophe in single quotes": ("a: 'don't'\n", True, ["1:9 behind-quote"]),
    "text behind a quote in brackets": ('a: ["b" c]\n', True, ["1:9 behind-quote"]),
    "unclosed bracket": ("a: [b, c\nd: e\n", True, ["1:4 unclosed-bracket"]),
    "unclosed brace": ("a: {b: c\nd: e\n", True, ["1:4 unclosed-bracket"]),
    "unclosed at the end": ("a: [b]\nc: [\n", True, ["2:4 unclosed-bracket"]),
    "bracket closed in a remark": ("a: [b, # c]\nd: e\n", True, ["1:4 unclosed-bracket"]),
    "bracket closed in a remark, then a list": ("a:\n  - [b, # c]\n  - d\n", True, ["2:5 unclosed-bracket"]),
    "text behind a bracket": ("a: [b] mm\n", True, ["1:8 behind-bracket"]),
    "one brace too many": ("a: {b: c}}\n", True, ["1:10 behind-bracket"]),
    "two commas": ("a: [b, , c]\n", True, ["1:8 stray-comma"]),
    "begins with a star": ("do: **Lay** it\n", True, ["1:5 special-start"]),
    "begins with a star and a word": ("do: *Lay it\n", True, ["1:5 special-start"]),
    "begins with an ampersand": ("a: & b\n", True, ["1:4 special-start"]),
    "begins with a percent sign": ("a: %5\n", True, ["1:4 special-start"]),
    "begins with an at sign": ("a: @b\n", True, ["1:4 special-start"]),
    "begins with greater than": ("a: > 5 mm\n", True, ["1:4 special-start"]),
    "begins with a question mark": ("a: ? b\n", True, ["1:4 special-start"]),
    "begins with a closing bracket": ("a: ]\n", True, ["1:4 special-start"]),
    "backslash in double quotes": ('a: "C:\\4"\n', True, ["1:7 backslash"]),
    "list beside its name": ("a: - b\n", True, ["1:4 list"]),
    "list item among names": ("s:\n  b: c\n  - d\n", True, ["3:3 list"]),
    "directive": ("%foo\na: b\n", True, ["1:1 directive"]),
    "unknown version": ("%YAML 3.0\n---\na: b\n", True, ["1:1 directive"]),
    "second document": ("a: b\n---\nc: d\n", False, ["2:1 second-document"]),
    "a list": ("- a\n", True, ["1:1 not-a-mapping"]),
    "a text": ("\n  foo\n", True, ["2:3 not-a-mapping"]),
    "too deep": ("a: " + "[" * 32 + "]" * 32 + "\n", True, ["1:35 too-deep"]),
    "too long a name": ("a" * 1100 + ": b\n", True, ["1:1101 syntax"]),
    # names and values
    "duplicate key": ("a: b\nc: d\na: e\n", False, ["3:1 duplicate-key"]),
    "duplicate key in quotes": ("a: b\n'a': e\n", False, ["2:2 duplicate-key"]),
    "empty key": ('"": b\n', False, ["1:2 empty-key"]),
    "no name in a list item": ("s:\n  - : c\n", True, ["2:5 empty-key"]),
    "no name before the colon": ("a: b\n: c\n", True, ["2:1 empty-key"]),
    "list as a key": ("a: b\n? [c]\n: d\n", False, ["2:3 key-not-text"]),
    "braces as a key": ("a: b\n{{c}}: d\n", False, ["2:1 key-not-text"]),
    "merge key": ("a: &a {b: c}\nd:\n  <<: *a\n", False, ["3:3 merge-key"]),
    "unknown tag": ("a: !foo b\n", False, ["1:4 tag"]),
    "tag of another program": ("a: !!python/object:os.system b\n", False, ["1:4 tag"]),
    "tag on a mapping": ("a: &x !!set\n  b: c\n", False, ["1:7 tag"]),
    "unknown alias": ("a: *x\n", False, ["1:4 unknown-alias"]),
    "alias to an ancestor": ("a: &x\n  b: *x\n", False, ["2:6 alias-ring"]),
    "alias growth": (GROWTH, False, ["4:36 alias-growth"]),
    "nothing behind a colon": ("a:\nb: c\n", False, ["1:1 empty-value"]),
    "tilde": ("a: ~\n", False, ["1:4 empty-value"]),
    "null": ("a: null\n", False, ["1:4 empty-value"]),
    "empty quotes": ('a: ""\n', False, ["1:5 empty-value"]),
    "blanks in quotes": ("a: '  '\n", False, ["1:5 empty-value"]),
    "empty list item": ("a:\n  -\n  - b\n", False, ["2:3 empty-value"]),
    "empty in braces": ("a: {b: , c: d}\n", False, ["1:5 empty-value"]),
    "only a bare key in braces": ("a: {b}\n", False, ["1:5 empty-value"]),
    "bare key behind a list": ("a: {b: [c], d}\n", False, ["1:13 empty-value"]),
    "empty block": ("a: |\nb: c\n", False, ["1:4 empty-value"]),
    "decimal comma": ("a: {is: 1,5 mm, b: c}\n", False, ["1:10 decimal-comma"]),
    "comma in a text": ("a: {is: edge, inner}\n", False, ["1:13 decimal-comma"]),
    # all at once
    "several": (
        "a:\nb: *x\na: !t c\n",
        False,
        ["1:1 empty-value", "2:4 unknown-alias", "3:4 tag", "3:1 duplicate-key"],
    ),
}

JARGON = re.compile(r"\b(token|scalar|anchor|alias|flow|node|simple key|sequence|stream|indicator|document start)s?\b")


def encoded(text: str | bytes) -> bytes:
    return text if isinstance(text, bytes) else text.encode()


def seen(document: Document) -> list[str]:
    return [f"{one.place.line}:{one.place.column} {one.rule.removeprefix('text-')}" for one in document.findings]


@pytest.mark.parametrize(("text", "broken", "expected"), CASES.values(), ids=CASES.keys())
def test_finding_stands_at_its_place(text: str | bytes, broken: bool, expected: list[str]) -> None:
    document = read_yaml(encoded(text), "f.yaml")
    assert seen(document) == expected
    assert document.broken is broken
    assert (document.value is None) is broken


@pytest.mark.parametrize("text", [case[0] for case in CASES.values()], ids=CASES.keys())
def test_finding_is_in_plain_words(text: str | bytes) -> None:
    for finding in read_yaml(encoded(text), "f.yaml").findings:
        assert all((finding.message, finding.why, finding.remedy))
        assert not JARGON.search(f"{finding.message} {finding.remedy}")
        assert finding.severity is Severity.error


def test_every_fault_of_a_yaml_text_has_a_case() -> None:
    elsewhere = {"unreadable", "link-outside", "file-name", "same-name", "unknown-file", "no-plant"}
    tables = {"separator", "no-header", "duplicate-column", "unnamed-column", "too-many-cells"}
    shown = {one.split()[1] for case in CASES.values() for one in case[2]}
    assert shown == {slug.removeprefix("text-") for slug in WHY} - elsewhere - tables


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("do: Note: turn it\n", 'Put it in quotes: do: "Note: turn it"'),
        ('do: Say "a": b\n', "Put it in quotes: do: 'Say \"a\": b'"),
        ("a: {is: 1,5}\n", "Write a decimal point, `is: 1.5`, or put the value in quotes."),
        ("a: {is: edge, b}\n", "Put the whole value of `is` in quotes, or give `b` a value."),
        ("a: #5\n", "What follows the # is a comment; if it is the value, put it in quotes."),
        ("s:\n    a: b\n  c: d\n", "Indent it like the line it belongs with: by no blank or 4 blanks."),
        (
            "a: b\nc\u00a0:\u00a0d\n",
            "It holds a no-break space, as word processors make it: type the blanks of this line anew.",
        ),
    ],
)
def test_remedy_says_what_to_type(text: str, words: str) -> None:
    assert [one.remedy for one in read_yaml(text.encode(), "f").findings] == [words]


def test_duplicate_names_the_line_of_the_first_and_keeps_it() -> None:
    document = read_yaml(b"x: y\na: first\nb: c\na: second\n", "f")
    assert "line 2" in document.findings[0].message
    assert document.value == {"x": "y", "a": "first", "b": "c"}


def test_scalars_stay_as_typed() -> None:
    text = "a: no\nb: 301\nc: 1.50\nd: 0x1F\ne: 2026-01-05\nf: 1:30\ng: on\nh: [yes, .5]\n"
    assert read_yaml(text.encode(), "f").value == {
        "a": "no", "b": "301", "c": "1.50", "d": "0x1F", "e": "2026-01-05", "f": "1:30", "g": "on",
        "h": ["yes", ".5"],
    }  # fmt: skip


def test_byte_order_mark_is_tolerated_and_moves_nothing() -> None:
    document = read_yaml(b"\xef\xbb\xbfa: b\n", "f")
    assert (document.value, document.findings) == ({"a": "b"}, [])
    assert document.place(["a"]) == Place("f", 1, 4)


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_every_kind_of_line_end_counts_once(end: str) -> None:
    document = read_yaml(f"a: b{end}{end}c:{end}  - d{end}".encode(), "f")
    assert document.place(["c", 0]) == Place("f", 4, 5)


def test_refused_character_moves_no_place_behind_it() -> None:
    document = read_yaml("a: b\u2028c\nd: e\n".encode(), "f")
    assert document.value == {"a": "b c", "d": "e"}
    assert document.place(["d"]) == Place("f", 2, 4)


def test_many_bad_characters_are_counted_not_listed() -> None:
    findings = read_yaml(b"a: " + b"\x01" * 500, "f").findings
    assert len([one for one in findings if one.rule == "text-control-character"]) == 11
    assert "490 more" in findings[10].message


def test_number_of_findings_is_limited() -> None:
    text = "".join(f"k{number}:\n" for number in range(5000))
    assert len(read_yaml(text.encode(), "f").findings) == 100


def test_plain_alias_repeats_value_and_place() -> None:
    document = read_yaml(b"a: &t 3 s\nb: *t\nc: &l [d, e]\nf: *l\n", "f")
    assert document.findings == []
    assert document.value == {"a": "3 s", "b": "3 s", "c": ["d", "e"], "f": ["d", "e"]}
    assert document.place(["b"]) == Place("f", 1, 7)
    assert document.place(["f", 1]) == Place("f", 3, 11)
    assert document.place(["f"], key=True) == Place("f", 4, 1)


def test_long_text_repeated_counts_by_its_length() -> None:
    text = f"a: &t {'x' * 100_000}\nb: [{', '.join(['*t'] * 20)}]\n"
    assert [one.rule for one in read_yaml(text.encode(), "f").findings] == ["text-alias-growth"]


def test_place_is_where_the_content_begins() -> None:
    text = (
        "plain: x\nquoted: \"x y\"\nsingle: 'x'\nfolded: >-\n\n    x\n    y\nblock: | # remark\n  z\n"
        "anchored: &a\n  x\ntagged: !!str 'x'\nlist:\n- a\nflow: {b: 'c'}\nlong: x\n  y\n'key': 1\n"
    )
    document = read_yaml(text.encode(), "f")
    assert document.findings == []
    expected = {
        "plain": (1, 8), "quoted": (2, 10), "single": (3, 10), "folded": (6, 5), "block": (9, 3),
        "anchored": (11, 3),
        "tagged": (12, 16), "list": (14, 1), "flow": (15, 7), "long": (16, 7), "key": (18, 8),
    }  # fmt: skip
    assert {key: (document.place([key]).line, document.place([key]).column) for key in expected} == expected
    assert document.place(["flow", "b"]) == Place("f", 15, 12)
    assert document.place(["key"], key=True) == Place("f", 18, 2)


def test_offset_counts_only_in_a_text_that_stands_as_it_is_read() -> None:
    text = "a: 2 inn\nb: '2 inn'\nc: 'it''s'\nd: \"a\\tb\"\ne: >-\n  x y\nf: x\n  y\ng: &q 2 inn\n"
    document = read_yaml(text.encode(), "f")
    moved = {key: document.place([key], offset=2).column - document.place([key]).column for key in "abcdefg"}
    assert moved == {"a": 2, "b": 2, "c": 0, "d": 0, "e": 0, "f": 0, "g": 2}


def test_digest_is_that_of_the_bytes() -> None:
    assert read_yaml(b"a: b\n", "f").digest == hashlib.sha256(b"a: b\n").hexdigest()
    assert read_yaml(b"\xff", "f").digest == hashlib.sha256(b"\xff").hexdigest()


def test_values_with_a_finding_are_marred() -> None:
    document = read_yaml(b"a:\nb: c\nd: {is: 1,5, e: f}\ng: *x\nh: ~\n", "f")
    marred = [path for path in (["a"], ["b"], ["d", "is"], ["d", "e"], ["g"], ["h"]) if document.is_marred(path)]
    assert marred == [["a"], ["d", "is"], ["g"], ["h"]]


def test_deep_opening_brackets_end_quickly() -> None:
    for opening in ("[", "{", "- ", "[a, ", "? "):
        assert read_yaml(opening.encode() * 200_000, "f").broken


# Texts a file can hold as they are; what is refused has cases above.
CHARACTERS = st.characters(exclude_categories=("Cs", "Cc", "Zl", "Zp"), exclude_characters="\ufeff\ufffe\uffff")
TEXTS = st.text(CHARACTERS | st.sampled_from("\n :#-'\"*&!|>%@`?[]{},\\"), min_size=1, max_size=30).filter(
    lambda text: text.strip() != ""
)
VALUES = st.recursive(
    TEXTS,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(TEXTS, inner, max_size=4),
    max_leaves=20,
)


@given(
    value=st.dictionaries(TEXTS, VALUES, max_size=5),
    style=st.sampled_from([None, "'", '"', "|", ">"]),
    flow=st.sampled_from([None, True, False]),
    width=st.sampled_from([20, 80, 10_000]),
)
def test_what_is_written_is_read_with_its_places(
    value: dict[str, Value], style: str | None, flow: bool | None, width: int
) -> None:
    """Random values come back the same, and the place of each leaf points at its text."""
    text = yaml.safe_dump(
        value, default_style=style, default_flow_style=flow, width=width, allow_unicode=True, sort_keys=False
    )
    document = read_yaml(text.encode(), "f")
    assert document.findings == []
    assert document.value == value
    assert document.spot is not None
    lines = re.split(r"\r\n|\n|\r", text)
    for path, leaf in leaves(value, document.spot):
        place = document.place(path)
        behind = lines[place.line - 1][place.column - 1 :]
        before = lines[place.line - 1][: place.column - 1]
        if document.place(path, offset=1) != place:
            assert behind.startswith(leaf)
        else:
            assert before.endswith(("'", '"')) or behind.startswith(leaf.lstrip(" \n")[0])


def leaves(value: Value, spot: Spot, path: tuple[str | int, ...] = ()) -> list[tuple[tuple[str | int, ...], str]]:
    """Every text with its path; fails where values and places differ in shape."""
    if isinstance(value, str):
        assert isinstance(spot, int)
        return [(path, value)]
    assert isinstance(spot, Branch)
    if isinstance(value, dict):
        assert isinstance(spot.items, dict)
        assert list(value) == list(spot.items) == list(spot.keys)
        return [one for key in value for one in leaves(value[key], spot.items[key], (*path, key))]
    assert isinstance(spot.items, list)
    assert len(value) == len(spot.items)
    return [one for at, item in enumerate(value) for one in leaves(item, spot.items[at], (*path, at))]


VALID = """\
operation: sew-handle-end
title: "Sew the handle end: box and cross"
needs: {back-panel: 1, handle-webbing: 1}
settings:
  stitch length: 3.2 mm ± 0.2
  top tension: &tension 1.4 N ± 0.2
  again: *tension
tolerances:
  edge: {of: handle-box.outer, is: '1/8 in +1/16 -0'}
steps:
  - step: lay
    do: >
      Lay the panel face up,
      notch away from you.
    shows: [back-panel, wrong side]   # remark
  - step: look
    time: 3.5 s
""".encode()


def storm(seed: int) -> bytes:
    """The valid file with a few bytes changed, deleted, doubled or moved."""
    chance = random.Random(seed)
    data = bytearray(VALID)
    for _ in range(chance.randint(1, 6)):
        at = chance.randrange(len(data))
        match chance.randrange(5):
            case 0:
                data[at] = chance.randrange(256)
            case 1:
                del data[at : at + chance.randint(1, 8)]
            case 2:
                data[at:at] = chance.choice(
                    [b"\t", b": ", b"- ", b"\n", b"{", b"]", b"'", b'"', b"*", b"#", b"!", b"<<", b"?"]
                )
            case 3:
                end = min(len(data), at + chance.randint(1, 40))
                data[at:at] = data[at:end]
            case _:
                del data[at:]
        data = data or bytearray(b"a")
    return bytes(data)


def test_a_storm_of_mutations_never_raises() -> None:
    """No exception, places inside the file, plain words, values and places of one shape."""
    for seed in range(3000):
        data = storm(seed)
        document = read_yaml(data, "f")
        assert document.broken == (document.value is None) == (document.spot is None)
        assert document.findings or not document.broken
        if document.value is not None and document.spot is not None:
            leaves(document.value, document.spot)
        lines = re.split(rb"\r\n|\n|\r", data)
        for finding in document.findings:
            assert finding.rule in WHY
            assert not JARGON.search(f"{finding.message} {finding.remedy}"), (seed, finding)
            assert 1 <= finding.place.line <= len(lines), (seed, finding)
            assert 1 <= finding.place.column <= len(lines[finding.place.line - 1]) + 1, (seed, finding)


@given(st.binary(max_size=200) | st.text(max_size=200).map(lambda text: text.encode("utf-8", "surrogatepass")))
def test_any_bytes_can_be_read(data: bytes) -> None:
    document = read_yaml(data, "f")
    assert document.broken == (document.value is None)
