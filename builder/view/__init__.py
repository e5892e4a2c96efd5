"""Door of the view room: it alone decides what a sheet, page or figure says."""

from builder.view.all_views import PlantViews, plant_views, translated_views
from builder.view.chart import (
    AnyChart,
    Chart,
    ChartMark,
    ChartPoint,
    CurvePoint,
    FitChart,
    Histogram,
    HistogramBar,
    RunChart,
)
from builder.view.element_charts import element_chart, fit_words
from builder.view.element_rows import differ_words, element_words, line_words
from builder.view.empty_study import study_form
from builder.view.figure import Callout, DimensionLine, FigureView, Stroke
from builder.view.fingerprint import controlled_facts, method_hash, output_hash, tag_of
from builder.view.language_text import TableRead, lacking_words, language_file, language_table, with_table
from builder.view.pages import (
    HomePage,
    Link,
    MaterialRow,
    ProductPage,
    RouteRow,
    RuleRow,
    RulesPage,
    SiteFrame,
    StationPage,
    VariantView,
)
from builder.view.panel_view import AnyFigure, PanelRow, PanelView, Span
from builder.view.part_drawings import operation_figures, part_figures
from builder.view.photo import Photo, PhotoMark, sized
from builder.view.section import drawn_section
from builder.view.section_goods import goods_of
from builder.view.section_words import SectionWords
from builder.view.sheet import (
    Caution,
    ColourRow,
    FaultLine,
    Measure,
    Protection,
    Setting,
    SheetView,
    SizeRow,
    StepView,
)
from builder.view.study_charts import learning_words
from builder.view.study_page import StudyLine, StudyPage, StudyRow, TimesPage
from builder.view.template import (
    PAPERS,
    ChainDimension,
    PaperFrame,
    SheetJoint,
    TemplateLine,
    TemplateSheet,
    TemplateUse,
    TemplateView,
    TemplateWords,
)
from builder.view.templates import template_view
from builder.view.time_words import origin_words, time_source_words

__all__ = [
    "TableRead",
    "lacking_words",
    "language_file",
    "language_table",
    "with_table",
    "operation_figures",
    "SectionWords",
    "drawn_section",
    "goods_of",
    "part_figures",
    "AnyFigure",
    "PanelRow",
    "PanelView",
    "Span",
    "PAPERS",
    "ChainDimension",
    "PaperFrame",
    "SheetJoint",
    "TemplateLine",
    "template_view",
    "TemplateSheet",
    "TemplateUse",
    "TemplateView",
    "TemplateWords",
    "differ_words",
    "element_words",
    "line_words",
    "AnyChart",
    "element_chart",
    "fit_words",
    "Chart",
    "ChartMark",
    "ChartPoint",
    "CurvePoint",
    "FitChart",
    "Histogram",
    "HistogramBar",
    "RunChart",
    "StudyLine",
    "StudyPage",
    "StudyRow",
    "TimesPage",
    "Callout",
    "Caution",
    "ColourRow",
    "DimensionLine",
    "FaultLine",
    "FigureView",
    "HomePage",
    "Link",
    "MaterialRow",
    "Measure",
    "Photo",
    "PhotoMark",
    "PlantViews",
    "ProductPage",
    "Protection",
    "RouteRow",
    "RuleRow",
    "RulesPage",
    "Setting",
    "SheetView",
    "SiteFrame",
    "SizeRow",
    "StationPage",
    "StepView",
    "Stroke",
    "VariantView",
    "controlled_facts",
    "learning_words",
    "method_hash",
    "origin_words",
    "study_form",
    "time_source_words",
    "output_hash",
    "plant_views",
    "translated_views",
    "sized",
    "tag_of",
]
