"""A study taken under other conditions than the operation states now."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from builder.checking.rule import Problem, Rule, Subject
from builder.errors import TextFault
from builder.finding import Severity
from builder.model import KINDS, SettingValue, Study, parse_quantity, read_settings, route_of, show_quantity


def check(subject: Subject) -> Iterator[Problem]:
    """The head of each study against operation, station, sizes and settings of the operation that names it."""
    model = subject.model
    sizes: Mapping[str, set[str]] | None = None
    for name, operation in model.operations.items():
        study = model.study_of(name)
        if study is None:
            continue
        sizes = _sizes(subject) if sizes is None else sizes
        wrong: dict[str, str] = {}
        for key, now in (("operation", name), ("station", operation.station)):
            if study.head.get(key, now) != now:
                wrong[key] = f"taken at the {key} {study.head[key]}; this is {now}"
        known = sizes.get(name, set())
        if (size := study.head.get("size")) is not None and known and size not in known:
            wrong["size"] = f"taken with size {size}; the products made here have {', '.join(sorted(known))}"
        for key, (then, typed) in _changed_settings(subject, name, study).items():
            wrong[key] = f"taken with {key} {then}; the operation has {typed} now"
        for key, (then, today) in _changed_dimensions(subject, study).items():
            wrong[key] = f"taken with {key} {then}; it is {today} now"
        for key, words in wrong.items():
            message = f"the study {study.name} was {words}"
            about = (f"study:{study.name}", f"{key}:{study.head[key]}")
            yield Problem(("operation", name), ("times",), message, about, spot=study.head_places.get(key))


def _sizes(subject: Subject) -> dict[str, set[str]]:
    """Sizes of the products each operation works for; of operations all of whose products have sizes."""
    model = subject.model
    found: dict[str, set[str]] = {}
    for name, product in model.products.items():
        if product.sizes:
            for step in route_of(name, model.products, model.operations):
                found.setdefault(step.operation, set()).update(product.sizes)
    return found


def _changed_settings(subject: Subject, name: str, study: Study) -> dict[str, tuple[str, str]]:
    """Settings the head names with another value than the operation: then and now, as typed."""
    model = subject.model
    station = model.stations.get(model.operations[name].station)
    if station is None or station.kind not in KINDS:
        return {}
    now = subject.settings(name)
    typed = {key: value for key, value in study.head.items() if key in now}
    then, _ = read_settings(typed, station.kind, model.materials)
    return {key: (one.words, now[key].words) for key, one in then.items() if _facts(one) != _facts(now[key])}


def _changed_dimensions(subject: Subject, study: Study) -> dict[str, tuple[str, str]]:
    """Dimensions the head states with another value than today's, in the size it states: then and now."""
    products, size = subject.model.products.values(), study.head.get("size", "")
    sizes = [product.sizes[size] for product in products if size in product.sizes] or [{}]
    now = [subject.dimensions.sized(one) for one in sizes]
    found: dict[str, tuple[str, str]] = {}
    for key, typed in study.head.items():
        if key not in subject.dimensions.values:
            continue
        try:
            then = parse_quantity(typed, "length")
        except TextFault:
            continue
        if all(values[key].value != then.value for values in now):
            found[key] = (typed, show_quantity(now[0][key], subject.model.plant.units))
    return found


def _facts(value: SettingValue) -> Fraction | int | str:
    """What makes a setting another one: the value aimed at; its tolerance may change."""
    if value.nominal is not None:
        return value.nominal
    return value.count if value.count is not None else " ".join(value.words.casefold().split())


RULE = Rule(
    slug="study-conditions-changed",
    severity=Severity.warning,
    why="The readings are true for the work as it was, and the standard is paid for the work as it is.",
    remedy="Time the operation as it is now; if only the head is mistyped, correct it.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  times: studies/hem.csv
studies/hem.csv: |
  # operation: sew-hem
  # stitch length: 2.5 mm
  step,cycle,reading,rating,note
  hem,1,8.0,100,
  hem,2,8.1,100,
""",
    good="""
operations/sew-hem.yaml:
  times: studies/hem.csv
studies/hem.csv: |
  # operation: sew-hem
  # stitch length: 3 mm
  step,cycle,reading,rating,note
  hem,1,8.0,100,
  hem,2,8.1,100,
""",
    follows_from=("name-unknown",),
)
