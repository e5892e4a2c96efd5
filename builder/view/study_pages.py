"""Builds the pages of time studies from what computing says of each."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from builder.model import (
    NEEDED_METHODS,
    CycleValue,
    NextStudy,
    PlantModel,
    Precision,
    Results,
    StepStudy,
    StudySummary,
    show_number,
    show_percent,
    show_seconds,
)
from builder.view.element_rows import element_lines
from builder.view.pages import Link
from builder.view.study_charts import histogram, learning_chart, learning_words, run_chart
from builder.view.study_page import StudyLine, StudyPage, StudyRow, TimesPage

FORMS = dict(
    zip(
        NEEDED_METHODS,
        ("Student’s t, iterated", "Student’s t of the pilot", "normal approximation", "the 40√ form"),
        strict=True,
    )
)


def study_path(operation: str) -> str:
    """Where the page of an operation's study lies."""
    return f"studies/{operation}.html"


def study_pages(model: PlantModel, results: Results, pages: Mapping[str, str]) -> Iterator[StudyPage]:
    """A page for each operation with a study. `pages`: the operation's own page, by its name."""
    for name, summary in results.studies.items():
        study = model.study_of(name)
        if study is None or name not in pages:
            continue
        operation = model.operations[name]
        yield StudyPage(
            path=study_path(name),
            name=summary.name,
            title=operation.title,
            operation=Link(pages[name], operation.title, operation.code),
            head=tuple(study.head.items()),
            asked=asked_words(results.precision),
            cycles=f"{summary.cycles} cycles" if summary.cycles else "",
            rows=tuple(_row(name, one, _titles(model, name)) for one in summary.steps),
            changed=tuple(_changed(name, results)),
            kept_out=tuple(_kept_out(summary)),
            learning=learning_words(summary.learning) if summary.learning is not None else "",
            learning_chart=learning_chart(name, summary.pieces, summary.learning) if summary.learning else None,
        )


def times_page(pages: Sequence[StudyPage], results: Results, model: PlantModel, links: Mapping[str, str]) -> TimesPage:
    """The overview: what each study says, and what to time next, of all products together."""
    following: dict[str, NextStudy] = {}
    for product in results.products:
        for one in product.spread.following if product.spread is not None else ():
            if one.operation in links and one.gain > following.get(one.operation, _NOTHING).gain:
                following[one.operation] = one
    ordered = sorted(following.values(), key=lambda one: (-one.gain / one.minutes, one.operation))
    return TimesPage(
        asked=asked_words(results.precision),
        studies=tuple(_line(one) for one in pages),
        following=tuple(_next(one, model, links) for one in ordered[:MOST_NEXT]),
        untimed=tuple(
            Link(path, model.operations[name].title, model.operations[name].code)
            for name, path in links.items()
            if name not in results.studies
        ),
        elements=tuple(element_lines(model, results, links)),
    )


_NOTHING = NextStudy("", 0, 0.0, 0.0)
MOST_NEXT = 8
"""Studies named in the overview; more would be no advice."""


def _line(page: StudyPage) -> StudyLine:
    needed = [row.needed for row in page.rows if row.needed]
    short = f"{len(needed)} of {len(page.rows)} steps" if needed else ""
    remarks = sum(len(row.remarks) for row in page.rows)
    return StudyLine(
        link=Link(page.path, page.title, page.operation.note),
        date=dict(page.head).get("date", ""),
        cycles=page.cycles,
        needed=short,
        remarks=str(remarks) if remarks else "",
        changed="changed since" if page.changed else "",
    )


def _next(one: NextStudy, model: PlantModel, links: Mapping[str, str]) -> StudyLine:
    operation = model.operations[one.operation]
    return StudyLine(
        link=Link(links[one.operation], operation.title, operation.code),
        cycles=f"{one.cycles} cycles",
        needed=f"{show_number(one.minutes, 0)} min",
        remarks=show_percent(one.gain, 0),
    )


def asked_words(precision: Precision) -> str:
    """What is asked of a mean: `± 5 % at 95 %, by Student’s t, iterated`."""
    within, confidence = show_percent(precision.within), show_percent(precision.confidence)
    return f"± {within} at {confidence}, by {FORMS[precision.method]}"


def _titles(model: PlantModel, name: str) -> dict[str, str]:
    return {step.step: step.do for step in model.operations[name].steps}


def _row(study: str, one: StepStudy, titles: Mapping[str, str]) -> StudyRow:
    span = one.interval_s
    return StudyRow(
        step=one.step,
        title=titles.get(one.step, "no step of the operation has this name"),
        n=str(one.n),
        mean=show_number(one.mean_s, 2, trim=False),
        sd="–" if one.sd_s is None else show_number(one.sd_s, 2, trim=False),
        variation="–" if one.variation is None else show_percent(one.variation, 0),
        rating=show_number(one.rating, 0) if one.rated else "not rated",
        basic=show_number(one.basic_s, 2, trim=False),
        interval="–" if span is None else " to ".join(show_number(end, 2, trim=False) for end in span),
        needed=("at least 1" if one.needed is None else str(one.more_needed)) if one.more_needed else "",
        remarks=tuple(_remarks(one)),
        run=run_chart(study, one),
        bars=histogram(study, one),
    )


def _remarks(one: StepStudy) -> Iterator[str]:
    for value in one.flagged():
        note = f": {value.note}" if value.note else ""
        yield (
            f"{_cycle(value)} reads {show_seconds(value.seconds)}, far from the others{note}. "
            "It counts until its note says out: and why."
        )
    if one.drifts and one.drift is not None:
        yield f"The times {'grow' if one.drift > 0 else 'shrink'} over the study, more than chance would make them."
    if not one.comparable and one.n > 1:
        yield "Over half of the readings are equal, so an odd one can’t be told."


def _cycle(value: CycleValue) -> str:
    return f"Cycle {value.cycle}" if value.cycle else f"Reading {value.number}"


def _changed(name: str, results: Results) -> Iterator[str]:
    """Whether the operation as it is now still rests on these readings as they were taken."""
    time = results.operations.get((name, "", ""))
    steps = time.steps if time is not None else ()
    if any("stale" in step.source for step in steps):
        yield "The readings are of other work. They are kept for want of better and count as estimates."
    moved = [step.step for step in steps if "carried over" in step.source]
    if moved:
        yield (
            f"Conditions have changed since: the machine’s part of {', '.join(moved)} is scaled by its model, "
            "the rest is kept, and all of it counts as an estimate until it is timed again."
        )


def _kept_out(summary: StudySummary) -> Iterator[str]:
    for step in summary.steps:
        for value in step.left_out():
            yield f"{step.step}, {_cycle(value).lower()}: {show_seconds(value.seconds)}, {value.note}"
    for one in summary.foreign:
        cycle = f", cycle {one.cycle}" if one.cycle else ""
        yield f"foreign element{cycle}: {show_seconds(one.seconds)}, {one.note.partition(':')[2].strip()}"
