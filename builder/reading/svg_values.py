"""What an attribute of a drawing may hold: numbers, lengths, paths, paints, words. Anything else is dropped.

Each reader returns the value to keep, or None. An address is only ever `#name` inside the same file.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping

Reader = Callable[[str], str | None]

# Repeats are possessive (`*+`): a path of two megabytes would else be remembered step by step for going back.
_NUMBER = r"[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d{1,2})?"
_NUMBERS = re.compile(_NUMBER)
_PATH = re.compile(rf"(?:[MmZzLlHhVvCcSsQqTtAa]|{_NUMBER}|[\s,])*+")
_LIST = re.compile(rf"\s*(?:{_NUMBER}[\s,]*+)*+")
_TRANSFORM = re.compile(r"\s*(?:(?:matrix|translate|scale|rotate|skewX|skewY)\s*\([-+.\deE,\s]*\)[\s,]*+)*+")
_LENGTH = re.compile(rf"\s*({_NUMBER})\s*(px|pt|pc|mm|cm|in|Q|%)?\s*")
_PX = {"": 1.0, "px": 1.0, "pt": 4 / 3, "pc": 16.0, "mm": 96 / 25.4, "cm": 96 / 2.54, "in": 96.0, "Q": 96 / 101.6}
_LINK = re.compile(r"#([A-Za-z_][\w.\-]*)")
_URL = re.compile(
    r"\s*url\(\s*(['\"]?)#([A-Za-z_][\w.\-]*)\1\s*\)\s*(none|currentColor|#[0-9a-fA-F]{3,8}|[a-zA-Z]+)?\s*"
)
_COLOUR = re.compile(r"\s*(#[0-9a-fA-F]{3,8}|[a-zA-Z]+|(?:rgb|hsl)a?\([\d.,%\s/+-]*\))\s*")
_WORD = re.compile(r"\s*[a-zA-Z0-9.%\- ]{0,40}\s*")
_NAME = re.compile(r"[A-Za-z_][\w.\-]*")
_MOST = 1e7


def _fair(text: str) -> bool:
    """No number so large that a drawing program loses itself."""
    return all(abs(float(number[0])) <= _MOST for number in _NUMBERS.finditer(text))


def _matching(pattern: re.Pattern[str]) -> Reader:
    return lambda text: text.strip() if pattern.fullmatch(text) and _fair(text) else None


def px_of(text: str) -> float | None:
    """A length in px, None when it is none or relative."""
    found = _LENGTH.fullmatch(text)
    if found is None or found[2] == "%":
        return None
    value = float(found[1]) * _PX[found[2] or ""]
    return value if abs(value) <= _MOST else None


def _length(text: str) -> str | None:
    found = _LENGTH.fullmatch(text)
    if found is not None and found[2] == "%":
        return f"{found[1]}%"
    value = px_of(text)
    return None if value is None else f"{value:.6g}"


def _font_size(text: str) -> str | None:
    value = px_of(text)
    return None if value is None or value <= 0 else f"{value:.6g}"


def _paint(text: str) -> str | None:
    found = _URL.fullmatch(text)
    if found is not None:
        return f"url(#{found[2]})" + (f" {found[3]}" if found[3] else "")
    return text.strip() if _COLOUR.fullmatch(text) else None


def _reference(text: str) -> str | None:
    found = _URL.fullmatch(text)
    if found is not None and not found[3]:
        return f"url(#{found[2]})"
    return "none" if text.strip() == "none" else None


def _link(text: str) -> str | None:
    return text.strip() if _LINK.fullmatch(text.strip()) else None


def _weight(text: str) -> str | None:
    """The nearer of the two weights of our family."""
    word = text.strip()
    bold = word in ("bold", "bolder") or (word.isdecimal() and int(word[:4]) >= 600)
    return "700" if bold else "400"


_number_list, _word = _matching(_LIST), _matching(_WORD)

READERS: Mapping[str, Reader] = {
    "id": lambda text: text if _NAME.fullmatch(text) else None,
    "href": _link,
    "d": _matching(_PATH),
    "points": _number_list,
    "viewBox": _number_list,
    "stroke-dasharray": lambda text: "none" if text.strip() == "none" else _number_list(text.replace("px", "")),
    "font-size": _font_size,
    "font-weight": _weight,
    **dict.fromkeys(("transform", "gradientTransform"), _matching(_TRANSFORM)),
    **dict.fromkeys(("fill", "stroke", "stop-color", "color"), _paint),
    **dict.fromkeys(("clip-path", "marker-start", "marker-mid", "marker-end"), _reference),
    **dict.fromkeys(
        (
            *("x", "y", "dx", "dy", "width", "height", "cx", "cy", "r", "rx", "ry", "x1", "y1", "x2", "y2"),
            *("fx", "fy", "fr", "offset", "stroke-width", "stroke-dashoffset", "stroke-miterlimit", "refX", "refY"),
            *("markerWidth", "markerHeight", "opacity", "fill-opacity", "stroke-opacity", "stop-opacity"),
        ),
        _length,
    ),
    **dict.fromkeys(
        (
            *("fill-rule", "clip-rule", "stroke-linecap", "stroke-linejoin", "vector-effect", "display", "visibility"),
            *("text-anchor", "gradientUnits", "spreadMethod", "clipPathUnits", "markerUnits", "orient"),
            *("preserveAspectRatio", "overflow", "paint-order"),
        ),
        _word,
    ),
}
"""How each allowed attribute is read."""

STYLED = frozenset(
    {
        *("fill", "stroke", "stop-color", "color", "clip-path", "marker-start", "marker-mid", "marker-end"),
        *("stroke-width", "stroke-dasharray", "stroke-dashoffset", "stroke-miterlimit", "stroke-linecap"),
        *("stroke-linejoin", "opacity", "fill-opacity", "stroke-opacity", "stop-opacity", "fill-rule", "clip-rule"),
        *("display", "visibility", "text-anchor", "font-size", "font-weight", "overflow", "paint-order"),
        "vector-effect",
    }
)
"""Attributes that may also be said in a style."""

HARMLESS = frozenset(
    {
        *("version", "baseProfile", "class", "style", "font-family", "font-style", "font-stretch", "font-variant"),
        *("xml:space", "space", "enable-background", "shape-rendering", "text-rendering", "image-rendering", "role"),
        *("line-height", "letter-spacing", "word-spacing", "writing-mode", "color-interpolation", "isolation"),
        *("mix-blend-mode", "solid-color", "solid-opacity", "direction", "pathLength", "textLength", "lengthAdjust"),
        *("text-align", "text-indent", "text-transform", "text-decoration", "lang", "tabindex", "focusable", "name"),
        *("color-rendering", "color-interpolation-filters", "baseline-shift", "block-progression", "white-space"),
        *("dominant-baseline", "alignment-baseline", "shape-padding", "shape-margin", "font", "contentStyleType"),
        *("contentScriptType", "zoomAndPan", "type", "marker", "font-variant-ligatures", "font-feature-settings"),
    }
)
"""Left out without a word: the picture is the same, or our lettering takes their place."""
