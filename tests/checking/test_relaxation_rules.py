"""Relaxation of a station against its posture, its machine and the forces of its steps."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.pipeline import check_plant
from tests.checking.overlay import lay_over

OURS = {"force-over-relaxation", "standing-relaxation", "rest-inside-nothing"}


def found(example: str, tmp_path: Path) -> list[tuple[str, str]]:
    """(rule, message) of these rules' findings in the small plant with an example laid over it."""
    findings = check_plant(lay_over(example, tmp_path / "plant")).findings
    return [(one.rule, one.message) for one in findings if one.rule in OURS]


def press(relaxation: str, force: str) -> str:
    """An example: the snap press with this relaxation, a step there with this force."""
    return (
        f"stations/all.yaml: {{stations: {{snap-press: {{{relaxation}}}}}}}\n"
        f"operations/press-snap.yaml: {{steps: [{{step: press, force: {force}}}]}}\n"
    )


@pytest.mark.parametrize(
    ("relaxation", "force", "rules"),
    [
        ("count: 1", "60 N", []),
        ("relaxation: {force: 40 N}", "44 N", []),
        ("relaxation: {force: 40 N}", "44.5 N", ["force-over-relaxation"]),
        ("relaxation: {monotony: low}", "22 N", []),
        ("relaxation: {monotony: low}", "23 N", ["force-over-relaxation"]),
        ("relaxation: {force: 70 lb}", "300 N", []),
        ("relaxation: {force: 70 lb}", "400 N", ["force-over-relaxation"]),
    ],
)
def test_force_is_held_against_the_row_the_station_stands_in(
    relaxation: str, force: str, rules: list[str], tmp_path: Path
) -> None:
    """Without a force the first row, 5 lb, counts; without relaxation nothing can be said. 10 lb is 44.48 N."""
    assert [rule for rule, _ in found(press(relaxation, force), tmp_path)] == rules


def test_the_message_says_both_forces(tmp_path: Path) -> None:
    """In the plant's own unit."""
    ((_, message),) = found(press("relaxation: {force: 40 N}", "60 N"), tmp_path)
    assert message == "step press takes 60 N; the relaxation of Snap press is built for 44.5 N at most"


def bench(typed: str, other: str = "count: 1") -> str:
    """An example: the bench, and another station, with these keys."""
    return f"stations/all.yaml: {{stations: {{bench: {{{typed}}}, laser: {{{other}}}}}}}\n"


@pytest.mark.parametrize(
    ("example", "words"),
    [
        (bench("posture: standing, relief: a"), None),
        (bench("posture: standing, relief: a", "relaxation: {noise: continuous}"), "leaves standing out"),
        (bench("posture: standing, relief: a, relaxation: {standing: no}"), "leaves standing out"),
        (bench("posture: standing, relief: a, relaxation: {standing: yes}"), None),
        (bench("posture: sitting, relaxation: {standing: yes}"), "its posture is sitting"),
        (bench("posture: sit-stand, relaxation: {standing: yes}"), None),
        (bench("posture: sit-stand, relaxation: {monotony: low}"), None),
        (bench("relaxation: {standing: yes}"), None),
    ],
)
def test_posture_and_relaxation_agree(example: str, words: str | None, tmp_path: Path) -> None:
    """A plant that uses relaxation nowhere has no finding; one that does is asked at every standing station."""
    messages = [message for _, message in found(example, tmp_path)]
    assert len(messages) == (words is not None)
    assert all(words in one for one in messages if words is not None)


@pytest.mark.parametrize(
    ("station", "typed", "words"),
    [
        ("lockstitch", "rest inside: yes", "no machine runs by itself"),
        ("bench", "rest inside: yes", "no machine runs by itself"),
        ("laser", "rest inside: yes", None),
        ("snap-press", "rest inside: no", None),
    ],
)
def test_rest_inside_needs_a_machine_that_runs_by_itself(
    station: str, typed: str, words: str | None, tmp_path: Path
) -> None:
    """Who feeds the machine doesn't rest beside it."""
    messages = [
        message for _, message in found(f"stations/all.yaml: {{stations: {{{station}: {{{typed}}}}}}}", tmp_path)
    ]
    assert len(messages) == (words is not None)
    assert all(words in one for one in messages if words is not None)


def test_rest_in_time_nobody_owes_is_not_paid(tmp_path: Path) -> None:
    """At attendance `free` the run costs no labour, so there is none to rest in."""
    cutter = "{title: K, kind: knife cutter, count: 1, distance: 1 m, attendance: free, rest inside: yes}"
    ((rule, message),) = found(f"stations/all.yaml: {{stations: {{knife: {cutter}}}}}", tmp_path)
    assert rule == "rest-inside-nothing"
    assert "owes the machine's time nothing" in message
