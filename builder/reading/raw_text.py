"""Bytes to text: size, encoding, and characters that have no business in a text. Not yet any structure."""

from __future__ import annotations

import re
from codecs import BOM_UTF8

from builder.finding import Finding, Place
from builder.reading.faults import fault

LINE_BREAK = re.compile(r"\r\n|\n|\r")
"""What ends a line, in the parser and so in every place."""

# What the YAML parser refuses or takes for a line break. Tab, line feed and carriage return are text.
_BAD = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\ufeff\ufffe\uffff]")
_ODD_BREAKS = {"\x85": "U+0085", "\u2028": "U+2028", "\u2029": "U+2029"}
_WIDE = {b"\xff\xfe": "UTF-16", b"\xfe\xff": "UTF-16"}
_AT_MOST = 10


def split_lines(text: str) -> list[str]:
    """The lines of a text without their ends, cut where the parser cuts them."""
    return LINE_BREAK.split(text)


def decode(data: bytes, file: str, limit: int) -> tuple[str | None, list[Finding]]:
    """Text of a file, or None, and what is wrong with its bytes.

    limit : largest size allowed [bytes]

    A character that is refused is replaced by a blank, so that all places stay right and reading goes on.
    """
    if len(data) > limit:
        return None, [_too_large(file, limit)]
    try:
        text = data.removeprefix(BOM_UTF8).decode()
    except UnicodeDecodeError as error:
        return None, [_not_utf8(data, file, error)]
    # One quick pass for the ordinary file; only a file with something unusual in it is searched.
    if text.replace("\n", "").isprintable():
        return text, []
    findings = list(_bad_characters(text, file))
    return (_BAD.sub(" ", text) if findings else text), findings


def line_and_column(text: str, index: int) -> tuple[int, int]:
    """1-based line and column of the character at `index`."""
    line, start = 1, 0
    for found in LINE_BREAK.finditer(text, 0, index):
        line, start = line + 1, found.end()
    return line, index - start + 1


def _too_large(file: str, limit: int) -> Finding:
    message = f"The file is larger than {limit // 1024**2} MiB."
    return fault(Place(file), "text-too-large", message, "Check that it is the right file, or split it.")


def _not_utf8(data: bytes, file: str, error: UnicodeDecodeError) -> Finding:
    if wide := _WIDE.get(data[:2]):
        message = f"The file is saved as {wide}, not as UTF-8."
        return fault(Place(file), "text-encoding", message, "Save it as UTF-8 in the editor.")
    text = error.object[: error.start].decode()
    line, column = line_and_column(text, len(text))
    position = len(data) - len(error.object) + error.start + 1
    message = f"Byte {position} of the file, 0x{data[position - 1]:02X} in line {line}, is not UTF-8."
    remedy = "Save the file as UTF-8, then look at this character."
    return fault(Place(file, line, column), "text-encoding", message, remedy)


def _bad_characters(text: str, file: str) -> list[Finding]:
    found = list(_BAD.finditer(text))
    findings = [_bad_character(text, file, match.start()) for match in found[:_AT_MOST]]
    if len(found) > _AT_MOST:
        line, column = line_and_column(text, found[_AT_MOST].start())
        message = f"From here on there are {len(found) - _AT_MOST} more such characters."
        remedy = "Save the file as plain text, or type it anew."
        findings.append(fault(Place(file, line, column), "text-control-character", message, remedy))
    return findings


def _bad_character(text: str, file: str, index: int) -> Finding:
    char = text[index]
    place = Place(file, *line_and_column(text, index))
    if char in _ODD_BREAKS:
        message = f"Here is a line break of a rare kind ({_ODD_BREAKS[char]}), as word processors make it."
        return fault(place, "text-odd-line-break", message, "Delete it and press Enter, or type a blank.")
    message = f"Here is an invisible control character (U+{ord(char):04X})."
    return fault(place, "text-control-character", message, "Delete it.")
