"""Pieces of a nest beside the sheet, and sheets wider than the goods."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.lengths import length_words
from builder.checking.nests import laid_out
from builder.checking.rule import Problem, Rule, Subject
from builder.checking.walk import in_size
from builder.finding import Severity
from builder.geometry import NestLayout
from builder.model import Nest

_SLACK_MM = 1e-6


def check(subject: Subject) -> Iterator[Problem]:
    """Each piece between the sheet's margins, and the sheet within the goods, in every size; the first of a nest."""
    seen: set[str] = set()
    for operation, nest, size, sheet in laid_out(subject):
        if operation in seen:
            continue
        for problem in _problems(subject, operation, nest, size, sheet):
            seen.add(operation)
            yield problem
            break


def _problems(subject: Subject, operation: str, nest: Nest, size: str, sheet: NestLayout) -> Iterator[Problem]:
    owner = ("operation", operation)
    wide = f"{length_words(subject, sheet.width)} x {length_words(subject, sheet.length)}"
    goods = subject.model.material_of(nest.pieces[0].part) or ""
    material = subject.model.materials.get(goods)
    limit = material.width if material is not None else None
    if limit is not None and sheet.width > float(limit.value) + _SLACK_MM:
        message = f"the sheet is {wide}{in_size(size)}; {goods} is {length_words(subject, limit.value)} wide"
        yield Problem(owner, ("nest", "sheet"), message, (f"material:{goods}",))
    piece = sheet.outside()
    if piece is not None:
        left, bottom, right, top = piece.outline.bounds()
        across = f"{length_words(subject, left)} to {length_words(subject, right)} across"
        along = f"{length_words(subject, bottom)} to {length_words(subject, top)} along"
        free = f", of which {length_words(subject, sheet.margin)} are margin" if sheet.margin else ""
        message = f"a piece of {piece.part} reaches from {across}, {along}{in_size(size)}; the sheet is {wide}{free}"
        yield Problem(owner, ("nest", "pieces", piece.group), message, (f"part:{piece.part}",))


_NEST = """
operations/cut-panel.yaml:
  pieces a sheet: COUNT
  nest: {margin: 5 mm, gap: 4 mm, pieces: [{part: panel, columns: COUNT}]}
"""

RULE = Rule(
    slug="nest-outside-sheet",
    severity=Severity.error,
    why="What hangs over the edge comes out short, and the selvedge in a piece is thicker and off shade.",
    remedy="Fewer columns, a smaller margin or wider goods. Without `columns:` as many are laid out as fit.",
    check=check,
    bad=_NEST.replace("COUNT", "5"),
    good=_NEST.replace("COUNT", "4"),
    follows_from=("shape-impossible", "part-larger-than-goods"),
)
