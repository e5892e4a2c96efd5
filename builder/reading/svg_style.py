"""Style sheets inside a drawing, as far as drawing programs write them: `.a`, `#b`, `path`, `path.a`, lists of these.

Their declarations become attributes of the elements; nothing of the sheet itself is kept.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from builder.reading.photo_fault import PhotoFault
from builder.reading.svg_parse import Node

_SIMPLE = re.compile(r"([a-zA-Z]+|\*)?(?:\.([\w-]+))?(?:#([\w.-]+))?")
_LONGEST_SELECTOR, _MOST_RULES = 200, 2000

Declarations = dict[str, str]


class StyleSheet:
    """All rules of a drawing's style sheets. `unread` : whether some of them are of no plain kind."""

    def __init__(self, texts: Iterator[str]) -> None:
        self.unread = False
        self._count = 0
        # By what a selector asks most sharply, so that an element only meets the rules that may be its own.
        self._rules: dict[str, list[tuple[tuple[int, int, int], tuple[str, str, str], Declarations]]] = {}
        self._known: dict[tuple[str, str, str], Declarations] = {}
        for text in texts:
            self._read(_without_comments(text))

    def _read(self, text: str) -> None:
        if "@" in text:
            self.unread = True
        for rule in text.split("}"):
            selectors, brace, body = rule.rpartition("{")
            if brace:
                declared = declarations(body)
                for selector in selectors.split(","):
                    self._add(selector.strip(), declared)

    def _add(self, selector: str, declared: Declarations) -> None:
        found = _SIMPLE.fullmatch(selector) if 0 < len(selector) <= _LONGEST_SELECTOR else None
        if found is None:
            self.unread = True
            return
        self._count += 1
        if self._count > _MOST_RULES:
            raise PhotoFault(f"The drawing has more than {_MOST_RULES} style rules.", remedy="Save it as plain SVG.")
        kind, group, name = (part or "" for part in found.groups())
        weight = (int(bool(name)), int(bool(group)), self._count)
        asked = f"#{name}" if name else f".{group}" if group else kind
        self._rules.setdefault(asked, []).append((weight, (kind, group, name), declared))

    def of(self, node: Node) -> Declarations:
        """What the sheets say of an element, then its own style."""
        found: Declarations = {}
        if self._rules:
            key = (node.name, node.attributes.get("class", ""), node.attributes.get("id", ""))
            if key not in self._known:
                self._known[key] = self._matched(*key)
            found.update(self._known[key])
        if "style" in node.attributes:
            found.update(declarations(node.attributes["style"]))
        return found

    def _matched(self, element: str, classes: str, name: str) -> Declarations:
        groups = classes.split()
        asked = dict.fromkeys(("*", element, *(f".{group}" for group in groups), f"#{name}"))
        rules = [rule for key in asked for rule in self._rules.get(key, ())]
        found: Declarations = {}
        for _, (kind, group, wanted), declared in sorted(rules, key=lambda rule: rule[0]):
            if kind in ("", "*", element) and (not group or group in groups) and (not wanted or wanted == name):
                found.update(declared)
        return found


def _without_comments(text: str) -> str:
    kept = []
    at = 0
    while (start := text.find("/*", at)) >= 0:
        kept.append(text[at:start])
        end = text.find("*/", start + 2)
        if end < 0:
            return "".join(kept)
        at = end + 2
    return "".join(kept) + text[at:]


def declarations(text: str) -> Declarations:
    """`fill:red; stroke:none` as a mapping."""
    found: Declarations = {}
    for part in _without_comments(text).split(";"):
        name, colon, value = part.partition(":")
        if colon:
            found[name.strip().lower()] = value.replace("!important", "").strip()
    return found
