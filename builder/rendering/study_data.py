"""What the templates of the study pages and of the overview of times are handed."""

from __future__ import annotations

from markupsafe import Markup

from builder.rendering.page_data import Data, Pens
from builder.view import StudyPage, StudyRow, TimesPage


def study_data(page: StudyPage, pens: Pens) -> Data:
    """A study's page."""
    return {
        "title": page.title,
        "name": page.name,
        "operation": page.operation,
        "head": page.head,
        "asked": page.asked,
        "cycles": page.cycles,
        "changed": page.changed,
        "kept_out": page.kept_out,
        "rows": [_row(row, pens) for row in page.rows],
        "learning": page.learning,
        "learning_chart": Markup(pens.chart(page.learning_chart)) if page.learning_chart is not None else "",
    }


def _row(row: StudyRow, pens: Pens) -> Data:
    charts = [Markup(pens.chart(one)) for one in (row.run, row.bars) if one is not None]
    return {"row": row, "title": Markup(pens.markdown(row.title)), "charts": charts}


def times_data(page: TimesPage, pens: Pens) -> Data:
    """The overview of times."""
    return {
        "asked": page.asked,
        "studies": page.studies,
        "following": page.following,
        "untimed": page.untimed,
        "elements": page.elements,
        "fits": [(one.title, Markup(pens.chart(one.chart))) for one in page.elements if one.chart is not None],
    }
