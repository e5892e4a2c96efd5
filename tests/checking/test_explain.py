"""Every slug a finding can have is explained."""

from __future__ import annotations

from builder.checking import explanations, level_words, rule_book
from builder.model import FAULTS
from builder.reading import WHY


def test_every_slug_is_explained_once() -> None:
    """Rules, links, pictures and texts."""
    slugs = [one.slug for one in explanations()]
    assert len(slugs) == len(set(slugs))
    opened = {"photo-unreadable", "drawing-cleaned", "drawing-unreadable", "figure-crowded", "sheet-long"}
    assert set(slugs) == {*rule_book(), *FAULTS, *WHY, *opened}


def test_a_rule_is_explained_in_its_own_words_with_its_own_examples() -> None:
    """Nothing is written twice."""
    for one in explanations():
        rule = rule_book().get(one.slug)
        if rule is not None:
            assert (one.why, one.remedy, one.safety) == (rule.why, rule.remedy, rule.safety)
            assert one.bad in rule.bad
            assert one.good in rule.good


def test_what_a_plant_may_change_is_said() -> None:
    """A warning may be changed, an error not, and safety never."""
    words = {one.slug: level_words(one) for one in explanations()}
    assert "under `rules:`" in words["gauge-missing"]
    assert words["setting-missing"] == "error"
    assert "can't be lowered" in words["protection-missing"]
