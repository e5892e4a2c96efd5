"""Runs the rules in two turns: those on the plant as typed, then those that ask for computed numbers."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from builder.checking.explain import PICTURES
from builder.checking.fold import fold
from builder.checking.registry import causes, rule_book
from builder.checking.rule import Problem, Rule, Subject
from builder.errors import TextFault
from builder.finding import Finding, Severity
from builder.model import PlantModel, Shot
from builder.reading import DrawingFault

_LEVELS = {"error": Severity.error, "warning": Severity.warning, "note": Severity.note}


def check_typed(subject: Subject) -> list[Finding]:
    """Findings of all rules that need no computed number."""
    return list(_run(subject, (rule for rule in rule_book().values() if not rule.needs_results)))


def check_results(subject: Subject) -> list[Finding]:
    """Findings of the rules that ask for Results; the subject carries them."""
    return list(_run(subject, (rule for rule in rule_book().values() if rule.needs_results)))


def _run(subject: Subject, rules: Iterable[Rule]) -> Iterator[Finding]:
    for rule in rules:
        for problem in rule.check(subject):
            yield finding_of(rule, problem, subject.model)


def finding_of(rule: Rule, problem: Problem, model: PlantModel) -> Finding:
    """A rule's problem as a finding with its place."""
    kind, name = problem.owner
    place = problem.spot or model.place(kind, name, *problem.path, key=problem.key, offset=problem.offset)
    return Finding(
        place,
        rule.slug,
        problem.severity or rule.severity,
        problem.message,
        rule.why,
        problem.remedy or rule.remedy,
        (f"{kind}:{name}", *problem.about),
    )


def figure_finding(model: PlantModel, operation: str, step: int, problem: str) -> Finding:
    """A figure the drawing room could not make legible, reported at its step. Only a build knows it."""
    return Finding(
        model.place("operation", operation, "steps", step, "step"),
        "figure-crowded",
        Severity.warning,
        f"the figure of step {model.operations[operation].steps[step].step} is too crowded: {problem}",
        PICTURES["figure-crowded"].why,
        PICTURES["figure-crowded"].remedy,
        (f"operation:{operation}",),
    )


def cleaned_finding(
    model: PlantModel, operation: str, step: int, shot: Shot, dropped: Sequence[str]
) -> Iterator[Finding]:
    """A drawing from elsewhere that something was left out of. Only who opens the file knows it."""
    if dropped:
        yield Finding(
            model.place("operation", operation, "steps", step, *shot.file_path),
            "drawing-cleaned",
            Severity.warning,
            f"of the drawing {shot.picture.file} these are left out: {', '.join(dropped)}",
            PICTURES["drawing-cleaned"].why,
            PICTURES["drawing-cleaned"].remedy,
            (f"operation:{operation}", f"photo:{shot.picture.file}"),
        )


def photo_finding(model: PlantModel, operation: str, step: int, shot: Shot, fault: TextFault) -> Finding:
    """A photo of a step that can't be used. Only who opens the file knows it."""
    return Finding(
        model.place("operation", operation, "steps", step, *shot.file_path),
        "photo-unreadable",
        Severity.error,
        fault.message.rstrip("."),
        PICTURES["photo-unreadable"].why,
        fault.remedy or PICTURES["photo-unreadable"].remedy,
        (f"operation:{operation}", f"photo:{shot.picture.file}"),
    )


def drawing_finding(model: PlantModel, part: str, fault: DrawingFault) -> Finding:
    """A drawing that can't be a part's outline. Only who opens the file knows it."""
    outline = model.parts[part].outline
    key = fault.key if outline is not None and fault.key in outline.model_fields_set else "drawing"
    return Finding(
        model.place("part", part, "outline", key),
        "drawing-unreadable",
        Severity.error,
        fault.message.rstrip("."),
        PICTURES["drawing-unreadable"].why,
        fault.remedy,
        (f"part:{part}", f"drawing:{outline.drawing if outline is not None else ''}"),
    )


def sheet_finding(model: PlantModel, operation: str, pages: str) -> Iterator[Finding]:
    """A sheet of too many pages, at the level the plant gives it. Only a build knows it."""
    setting, long = model.plant.rules.get("sheet-long"), PICTURES["sheet-long"]
    if setting is not None and setting.severity == "off":
        return
    severity = _LEVELS[setting.severity] if setting is not None else long.severity
    place = model.place("operation", operation, "title")
    yield Finding(
        place, long.slug, severity, f"its sheet has {pages} pages", long.why, long.remedy, (f"operation:{operation}",)
    )


def report(findings: Iterable[Finding], model: PlantModel | None) -> list[Finding]:
    """All findings as people see them: the plant's own levels applied, folded and sorted."""
    book = rule_book()
    settings = model.plant.rules if model is not None else {}
    levels: list[Finding] = []
    lowered: set[str] = set()
    for finding in findings:
        setting = settings.get(finding.rule)
        rule = book.get(finding.rule)
        if setting is None or rule is None or rule.safety or rule.severity is Severity.error:
            levels.append(finding)
        elif setting.severity != "off":
            lowered.add(finding.rule)
            levels.append(replace(finding, severity=_LEVELS[setting.severity]))
    safety = {slug for slug, rule in book.items() if rule.safety}
    return fold(levels, causes(), safety, lowered)


def stops_build(finding: Finding) -> bool:
    """Whether a build makes nothing while there is this finding: an error, unless its rule says the pages tell it."""
    rule = rule_book().get(finding.rule)
    return finding.severity is Severity.error and (rule is None or rule.stops)


def usable_operations(
    model: PlantModel, findings: Iterable[Finding], unusable: Iterable[tuple[str, str]]
) -> frozenset[str]:
    """Operations that neither have an error nor rest on anything that has one."""
    bad = {f"{kind}:{name}" for kind, name in unusable}
    bad |= {one.about[0] for one in findings if one.severity is Severity.error and one.about}
    return frozenset(name for name in model.operations if not _rests_on(name, model, bad))


def _rests_on(name: str, model: PlantModel, bad: set[str]) -> bool:
    operation = model.operations[name]
    if f"operation:{name}" in bad or f"station:{operation.station}" in bad or operation.station not in model.stations:
        return True
    for part in (*operation.needs, *operation.makes):
        state = model.states.get(part)
        if state is None:
            if part not in model.materials:
                return True
            continue
        if f"part:{state.base}" in bad or f"material:{model.material_of(part)}" in bad:
            return True
    return False
