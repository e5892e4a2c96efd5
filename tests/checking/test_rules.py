"""Every rule: its bad example gives that one top-level finding, its good example none."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.checking import rule_book
from builder.finding import Finding
from builder.pipeline import check_plant
from tests.checking.overlay import SMALL_PLANT, lay_over

SLUGS = sorted(rule_book())


def found(example: str, tmp_path: Path) -> list[Finding]:
    """Top-level findings of the small plant with an example laid over it."""
    return list(check_plant(lay_over(example, tmp_path / "plant")).findings)


def test_there_are_rules() -> None:
    """A rule book of sixty rules and more."""
    assert len(SLUGS) >= 60


def test_small_plant_is_clean() -> None:
    """What the examples are laid over has no finding of its own."""
    assert check_plant(SMALL_PLANT).findings == ()


@pytest.mark.parametrize("slug", SLUGS)
def test_bad_example_gives_that_one_finding(slug: str, tmp_path: Path) -> None:
    """One top-level finding, of this rule, in a file the example changed."""
    rule = rule_book()[slug]
    findings = found(rule.bad, tmp_path)
    assert [one.rule for one in findings] == [slug], [(str(one.place), one.message) for one in findings]
    assert findings[0].severity == rule.severity
    assert f"{findings[0].place.file}:" in rule.bad.replace(" ", ""), findings[0].place
    assert findings[0].message
    assert findings[0].why
    assert findings[0].remedy


@pytest.mark.parametrize("slug", SLUGS)
def test_good_example_gives_none(slug: str, tmp_path: Path) -> None:
    """The good example passes the whole book."""
    findings = found(rule_book()[slug].good, tmp_path)
    assert findings == [], [(one.rule, str(one.place), one.message) for one in findings]


@pytest.mark.parametrize("slug", SLUGS)
def test_messages_end_without_a_full_stop_and_reasons_with_one(slug: str) -> None:
    """One voice: reasons and remedies are sentences."""
    rule = rule_book()[slug]
    assert rule.why.endswith(".")
    assert rule.remedy.endswith(".")
