"""`seamboard study`: what a time study says, step by step; or with `--all` the plant's own standard data."""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from builder.errors import UsageError

if TYPE_CHECKING:
    from rich.console import Console

    from builder.finding import Finding, Place
    from builder.model import StepStudy, Study, StudySummary

_FORMS = ("t iterated", "t pilot", "normal", "40 root")


@click.command("study")
@click.argument("file", required=False, type=click.Path(path_type=Path))
@click.option("--json", "as_json", is_flag=True, help="One object for programs, unrounded.")
@click.option("--within", default=5.0, show_default=True, help="Percent of the mean it may lie to either side.")
@click.option("--confidence", default=95.0, show_default=True, help="Percent.")
@click.option("--form", "operation", metavar="OPERATION", help="An empty study of OPERATION, to be filled in.")
@click.option("--cycles", default=20, show_default=True, type=click.IntRange(1, 500), help="Rows of the form.")
@click.option("--in", "folder", default="instructions", type=click.Path(path_type=Path), help="The plant's folder.")
@click.option("--all", "whole", is_flag=True, help="The plant's standard data, as all its studies are now.")
@click.option("--csv", "as_csv", is_flag=True, help="With --all: a row an element, for a spreadsheet.")
@click.option("--to", type=click.Path(path_type=Path), metavar="FOLDER", help="With --all: write table and figures.")
@click.option("--needed", "method", type=click.Choice(_FORMS), default=_FORMS[0], help="Form of the readings needed.")
def command(
    file: Path | None,
    as_json: bool,
    within: float,
    confidence: float,
    operation: str | None,
    cycles: int,
    folder: Path,
    method: str,
    whole: bool,
    as_csv: bool,
    to: Path | None,
) -> None:
    """Mean, spread, basic time, its interval and the readings still needed of each step in FILE (CSV)."""
    if (as_csv or to is not None) and not whole:
        raise UsageError("--csv and --to belong to --all")
    if whole and (file is not None or operation is not None):
        raise UsageError("--all is of the whole plant: name neither a file nor an operation")
    if whole:
        from builder.commands.standard_data import standard_data

        standard_data(folder, as_json, as_csv, to)
    elif operation is not None:
        _form(operation, folder, cycles)
    else:
        _study(file, as_json, within, confidence, method)


def _form(operation: str, folder: Path, cycles: int) -> None:
    from builder.commands import report
    from builder.model import near
    from builder.pipeline import check_plant, today_of
    from builder.view import study_form

    checked = check_plant(folder)
    if checked.linked is None or (operation in checked.linked.model.operations and operation not in checked.usable):
        report.show_findings(checked)
        sys.exit(1)
    model = checked.linked.model
    if operation not in model.operations:
        close = near(operation, model.operations)
        raise UsageError(f"no operation is called {operation}" + (f"; did you mean {close[0]}?" if close else ""))
    click.echo(study_form(model, checked.linked.dimensions, operation, today_of().isoformat(), cycles), nl=False)


def _study(file: Path | None, as_json: bool, within: float, confidence: float, method: str) -> None:
    from builder.checking import study_findings
    from builder.commands import report
    from builder.computing import summarise
    from builder.model import Precision

    if file is None:
        raise UsageError("name a study's CSV file, --form OPERATION, or --all")
    if not 0 < within < 100 or not 0 < confidence < 100:
        raise UsageError("--within and --confidence are percentages between 0 and 100")
    study, findings, lines = _read(file)
    summary = None
    if study is not None:
        summary = summarise(study, Precision(within / 100, confidence / 100, method), study.self_paced())
        findings += study_findings(study, summary)

    def line_text(place: Place) -> str:
        return lines[place.line - 1] if 0 < place.line <= len(lines) else ""

    report.show_all(sorted(findings, key=lambda one: one.sort_key), line_text)
    if study is None or summary is None:
        sys.exit(1)
    if as_json:
        click.echo(json.dumps({"steps": [_plain(one) for one in summary.steps]}, ensure_ascii=False, indent=1))
    else:
        _show(study, summary, f"± {within:g} % at {confidence:g} %")


def _read(file: Path) -> tuple[Study | None, list[Finding], list[str]]:
    """A study's file without a plant around it, and what is wrong with it."""
    from builder.finding import Severity
    from builder.model import read_study
    from builder.reading import CSV_LIMIT, read_table, split_lines

    try:
        with file.open("rb") as opened:
            data = opened.read(CSV_LIMIT + 1)
    except OSError as error:
        raise UsageError(f"{file} can't be read: {error.strerror or error}") from None
    table = read_table(data, file.as_posix())
    findings = list(table.findings)
    broken = any(one.severity is Severity.error for one in findings)
    study = read_study(table, findings)
    return None if broken else study, findings, split_lines(data.decode("utf-8-sig", "replace"))


def _plain(one: StepStudy) -> dict[str, Any]:
    return {
        "step": one.step,
        "n": one.n,
        "mean_s": one.mean_s,
        "sd_s": one.sd_s,
        "rating": one.rating,
        "basic_s": one.basic_s,
        "interval_s": list(one.interval_s) if one.interval_s is not None else None,
        "more_needed": one.more_needed,
        "outliers": [int(v.cycle) if v.cycle.isdecimal() else v.cycle or v.number for v in one.flagged()],
    }


def _show(study: Study, summary: StudySummary, asked: str) -> None:
    from builder.commands import report

    console = report.console(140)
    if study.head:
        console.print("; ".join(f"{key}: {value}" for key, value in study.head.items()), style="dim", highlight=False)
    _table(summary, asked, console)
    for line in _remarks(summary):
        console.print(line, highlight=False)


def _table(summary: StudySummary, asked: str, console: Console) -> None:
    from rich.table import Table

    from builder.model import show_number, show_percent

    form = summary.steps[0].method if summary.steps else ""
    title = f"{summary.name}: {summary.cycles} cycles; readings needed for {asked} ({form})"
    table = Table(title=title, title_justify="left", box=None, pad_edge=False)
    table.add_column("step")
    for name in ("n", "mean s", "sd s", "variation", "rating", "basic s", "interval s", "more needed", "odd"):
        table.add_column(name, justify="right")
    for one in summary.steps:
        span = one.interval_s
        table.add_row(
            one.step,
            str(one.n),
            show_number(one.mean_s, 2, trim=False),
            "–" if one.sd_s is None else show_number(one.sd_s, 2, trim=False),
            "–" if one.variation is None else show_percent(one.variation, 0),
            show_number(one.rating, 0),
            show_number(one.basic_s, 2, trim=False),
            "–" if span is None else "…".join(show_number(end, 2, trim=False) for end in span),
            ("at least 1" if one.needed is None else str(one.more_needed)) if one.more_needed else "–",
            str(len(one.flagged())) if one.flagged() else "–",
        )
    console.print(table)


def _remarks(summary: StudySummary) -> list[str]:
    from builder.model import show_seconds
    from builder.view import learning_words

    lines = []
    for one in summary.steps:
        for value in one.flagged():
            seconds = show_seconds(value.seconds)
            words = "counted until its note says `out:` and why"
            lines.append(f"{one.step}, cycle {value.cycle}: {seconds} is odd (z {value.z:.1f}), {words}")
        for value in one.left_out():
            lines.append(f"{one.step}, cycle {value.cycle}: {show_seconds(value.seconds)} kept out ({value.note})")
        if one.drifts and one.drift is not None:
            way = "grow" if one.drift > 0 else "shrink"
            lines.append(f"{one.step}: the times {way} over the study (Mann-Kendall z {one.drift:.1f})")
        if not one.comparable and one.n > 1:
            lines.append(f"{one.step}: over half of the readings are equal, so no odd one can be told")
    if summary.learning is not None:
        lines.append(learning_words(summary.learning))
    lines += [f"foreign, cycle {one.cycle}: {show_seconds(one.seconds)} ({one.note})" for one in summary.foreign]
    return lines
