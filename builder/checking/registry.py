"""All rules by slug, collected from the folder of rules: a file with a `RULE` is a rule, nothing else to register."""

from __future__ import annotations

import importlib
import pkgutil
from collections.abc import Mapping
from functools import cache
from types import MappingProxyType

from builder.checking import rules
from builder.checking.rule import Rule
from builder.model import FAULTS


@cache
def _modules() -> Mapping[str, tuple[str, Rule]]:
    """Module name → (the noun its folder is called by, its rule)."""
    found: dict[str, tuple[str, Rule]] = {}
    for module in pkgutil.walk_packages(rules.__path__, f"{rules.__name__}."):
        rule = getattr(importlib.import_module(module.name), "RULE", None)
        if rule is not None:
            found[module.name] = (module.name.rsplit(".", 2)[1], rule)
    return MappingProxyType(found)


def noun_of(slug: str) -> str:
    """The noun a rule looks at: the folder it lies in. Raises KeyError for an unknown slug."""
    return _nouns()[slug]


@cache
def _nouns() -> Mapping[str, str]:
    return MappingProxyType({rule.slug: noun for noun, rule in _modules().values()})


@cache
def rule_book() -> Mapping[str, Rule]:
    """Every rule, sorted by slug. A slug used twice, or an unknown cause, is a fault of ours and raises ValueError."""
    found: dict[str, Rule] = {}
    for _, rule in _modules().values():
        if rule.slug in found or rule.slug in FAULTS:
            raise ValueError(f"two rules are called {rule.slug}")
        found[rule.slug] = rule
    known = {*found, *FAULTS}
    for rule in found.values():
        if unknown := set(rule.follows_from) - known:
            raise ValueError(f"{rule.slug} follows from {', '.join(sorted(unknown))}, which is no rule")
    return MappingProxyType(dict(sorted(found.items())))


@cache
def causes() -> Mapping[str, frozenset[str]]:
    """For each slug, all slugs it may follow from, near or far."""
    direct = {slug: set(rule.follows_from) for slug, rule in rule_book().items()}
    direct.update({slug: set(kind.follows_from) for slug, kind in FAULTS.items()})
    closed: dict[str, frozenset[str]] = {}
    for slug in direct:
        reached: set[str] = set()
        stack = list(direct[slug])
        while stack:
            at = stack.pop()
            if at not in reached:
                reached.add(at)
                stack.extend(direct.get(at, ()))
        closed[slug] = frozenset(reached)
    return MappingProxyType(closed)
