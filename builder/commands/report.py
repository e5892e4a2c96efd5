"""Findings as people and programs read them: lines with a caret, or JSON."""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Any

import click

from builder.finding import Finding, Place, Severity

if TYPE_CHECKING:
    from pathlib import Path

    from rich.console import Console

    from builder.model import Linked, Results
    from builder.pipeline import Checked

_COLOUR = {Severity.error: "red", Severity.warning: "yellow", Severity.note: "cyan"}


def as_json(findings: Sequence[Finding]) -> str:
    """One object with stable keys."""
    return json.dumps({"findings": [_plain(one) for one in findings]}, ensure_ascii=False, indent=1)


def _plain(one: Finding) -> dict[str, Any]:
    return {
        "file": one.place.file,
        "line": one.place.line,
        "column": one.place.column,
        "rule": one.rule,
        "severity": one.severity.name,
        "message": one.message,
        "remedy": one.remedy,
        "folded": [_plain(inner) for inner in one.folded],
    }


def computed(folder: Path) -> tuple[Checked, Linked, Results]:
    """A plant folder checked, with its model and its numbers; with an error its findings are shown and that is all."""
    from builder.pipeline import check_plant

    checked = check_plant(folder)
    if checked.has_errors or checked.results is None or checked.linked is None:
        show_findings(checked)
        sys.exit(1)
    return checked, checked.linked, checked.results


def console(width: int) -> Console:
    """Where tables go. A file or a pipe has no width to keep to, and a cut name would be worse than a long line."""
    from rich.console import Console

    found = Console()
    return found if found.is_terminal else Console(width=width)


def show_findings(checked: Checked) -> None:
    """All findings to standard error with the offending line, then a count."""
    show_all(checked.findings, checked.source.line_text)
    if checked.unchecked:
        words = _count(checked.unchecked, "operation")
        click.echo(f"{words} not checked further, because something they rest on has an error", err=True)


def show_all(findings: Sequence[Finding], line_text: Callable[[Place], str]) -> None:
    """Findings to standard error, each with the line that `line_text` knows, then a count."""
    for one in findings:
        _show(one, line_text(one.place))
    errors = sum(one.severity is Severity.error for one in findings)
    warnings = sum(one.severity is Severity.warning for one in findings)
    notes = len(findings) - errors - warnings
    if findings:
        parts = [_count(errors, "error"), _count(warnings, "warning"), _count(notes, "note")]
        click.echo(", ".join(part for part in parts if part), err=True)


def _count(number: int, word: str) -> str:
    return f"{number} {word}{'' if number == 1 else 's'}" if number else ""


def _show(one: Finding, line: str) -> None:
    head = click.style(one.severity.name, fg=_COLOUR[one.severity], bold=True)
    click.echo(f"{one.place}: {head}: {one.message} [{one.rule}]", err=True)
    if line.strip():
        number = str(one.place.line)
        indent = "".join("\t" if letter == "\t" else " " for letter in line[: one.place.column - 1])
        click.echo(f"  {number} | {line}", err=True)
        click.echo(f"  {' ' * len(number)} | {indent}{click.style('^', bold=True)}", err=True)
    if one.why:
        click.echo(f"  why: {one.why}", err=True)
    if one.remedy:
        click.echo(f"  do:  {one.remedy}", err=True)
    if one.folded:
        words = _count(len(one.folded), "finding")
        places = ", ".join(str(inner.place) for inner in one.folded[:3])
        more = " …" if len(one.folded) > 3 else ""
        click.echo(f"  and {words} that follow from it: {places}{more}", err=True)
