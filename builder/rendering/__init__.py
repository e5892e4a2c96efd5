"""Door of the rendering room: view objects to pages, sheets and pictures. It calls no formula and writes nothing."""

from builder.rendering.card_data import CARD_ENTRY, render_cards
from builder.rendering.making import MadeFile, made
from builder.rendering.plan import PlannedFile, Planner, version
from builder.rendering.sheet import (
    POSTER_ENTRY,
    SheetFault,
    SheetPress,
    page_count,
    render_booklet,
    render_sheet,
    shown_photos,
)
from builder.rendering.site import Site
from builder.rendering.template import ENTRY, render_template
from builder.rendering.theme import theme_names, theme_of
from builder.rendering.training_sheet import TRAINING_ENTRY, render_training
from builder.rendering.tree import Tree

__all__ = [
    "CARD_ENTRY",
    "POSTER_ENTRY",
    "TRAINING_ENTRY",
    "page_count",
    "render_cards",
    "render_training",
    "ENTRY",
    "render_template",
    "MadeFile",
    "made",
    "PlannedFile",
    "Planner",
    "SheetFault",
    "SheetPress",
    "Site",
    "Tree",
    "render_booklet",
    "render_sheet",
    "shown_photos",
    "theme_names",
    "theme_of",
    "version",
]
