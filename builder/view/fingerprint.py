"""Fingerprints: the method (what `current` means on the wall) and the output (what the cache means by unchanged).

Controlled values are typed facts; a float among them is a fault of ours, because two equal formulas differ in the
last digit. Empty fields are left out, so that a release may add one without changing every sheet.
"""

from __future__ import annotations

import hashlib
import json
import re
import unicodedata
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from fractions import Fraction
from typing import Any

_ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"
"""Crockford's base 32: no I, L, O, U, so that a code read aloud or typed has one reading."""


def controlled_facts(view: Any) -> Any:
    """The controlled, non-empty fields of a view object as plain values. Raises TypeError for a float."""
    if is_dataclass(view) and not isinstance(view, type):
        facts = {
            field.name: controlled_facts(getattr(view, field.name))
            for field in fields(view)
            if field.metadata["controlled"]
        }
        return {name: value for name, value in facts.items() if value not in ("", [], {}, None)}
    if isinstance(view, Mapping):
        return {str(key): controlled_facts(value) for key, value in sorted(view.items())}
    if isinstance(view, tuple | list):
        return [controlled_facts(value) for value in view]
    if isinstance(view, str):
        return " ".join(unicodedata.normalize("NFC", view).split())
    if isinstance(view, Fraction):
        return str(view)
    if view is None or isinstance(view, bool | int):
        return view
    raise TypeError(f"a {type(view).__name__} can't be a controlled fact")


def canonical(value: Any) -> bytes:
    """JSON with sorted keys and no blanks."""
    return json.dumps(value, sort_keys=True, separators=(",", ":"), ensure_ascii=False).encode()


def method_hash(facts: Any) -> str:
    """Hash of controlled facts, as hexadecimal."""
    return hashlib.sha256(b"m1" + canonical(facts)).hexdigest()


def tag_of(fingerprint: str) -> str:
    """A code people read and type: eight signs and a check sign, such as `7F3K Q2MX 4`.

    40 bits of the fingerprint. The check sign catches any one wrong sign and any two signs swapped: it is the sum of
    α^i times the i-th sign in the field of 32 elements, where no two powers of α agree and none is 0.
    """
    number = int(fingerprint[:10], 16)
    signs = [(number >> shift) & 31 for shift in range(35, -1, -5)]
    check = 0
    for sign in signs:
        check = _times_alpha(check ^ sign)
    text = "".join(_ALPHABET[sign] for sign in signs)
    return f"{text[:4]} {text[4:]} {_ALPHABET[check]}"


def _times_alpha(element: int) -> int:
    """An element of the field of 32 times α, a root of x⁵ + x² + 1."""
    doubled = element << 1
    return doubled ^ 0b100101 if doubled & 32 else doubled


_OBJECT = re.compile(r" object at 0x[0-9a-f]+")


def output_hash(view: Any, *others: str) -> str:
    """Hash of a whole view object with what else shapes the page: theme, library and font versions."""
    text = repr(view)
    if _OBJECT.search(text):
        raise TypeError("a view object holds something without a stable form")
    return hashlib.sha256("\x1f".join((text, *others)).encode()).hexdigest()
