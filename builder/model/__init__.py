"""Door of the model room: frozen, typed objects; units; links between files resolved."""

from builder.model.base import Noun
from builder.model.check_plan import CheckPlan
from builder.model.element import Element, StudyStep
from builder.model.expression import Expression
from builder.model.faults import FAULTS, FaultKind, fault
from builder.model.feature import At, Bartack, Box, Feature, Fold, Hardware, Hole, Notch, Seam, Strip
from builder.model.font_table import FontTable, capital_mm, em_for_capitals, load_font_table, text_width
from builder.model.frequency import EACH_PIECE, FROM_FACTS, Frequency, Per
from builder.model.hazard import DEFER, HAZARDS, PROTECTIONS, Hazard, ProtectionKind
from builder.model.linking import Linked, link
from builder.model.load import NOUNS, Entry
from builder.model.machine import KINDS, MachineKind, SettingKind
from builder.model.material import Material, chlorinated
from builder.model.near_names import near
from builder.model.needle import NEEDLE_POINTS, Needle, NeedlePoint, NeedleSizes, parse_needle, parse_needle_sizes
from builder.model.operation import WORK_KEYS, Fault, Operation, Step, ToleranceSpec
from builder.model.part import Component, Outline, Part
from builder.model.photo import WHOLE, Area, Arrow, Blur, Callout, Frame, Number, Ring, Shot, Words
from builder.model.photo_room import (
    PAPER_WIDTH_MM,
    PHOTO_ALONE_MM,
    PHOTO_BESIDE_FIGURE_MM,
    PHOTO_GAP_MM,
    SHEET_EDGE_MM,
    fitted_mm,
    photo_rows,
    photo_sizes_mm,
)
from builder.model.plant import Allowances, Gauge, Plant, RuleSetting
from builder.model.plant_model import FeatureRef, Homes, PlantModel, State
from builder.model.product import Product, RouteStop
from builder.model.quantity import Quantity, Range, parse_quantity
from builder.model.relaxation import (
    FORCE_ROWS_LB,
    PUBLISHED_PERCENT,
    PUBLISHED_SOURCE,
    Relaxation,
    force_of_row,
    force_row_lb,
)
from builder.model.results import (
    NO_SOURCE,
    MaterialUse,
    OperationTime,
    ProductTime,
    Results,
    RouteLine,
    StepTime,
    TimePart,
)
from builder.model.route import RouteStep, route_of
from builder.model.schema import schema_of
from builder.model.settings import SettingValue, limit_range, read_settings, settings_of
from builder.model.shift_results import Capacity, StationShare, Tending, Week
from builder.model.shown import (
    show_mass,
    show_minutes,
    show_number,
    show_percent,
    show_quantity,
    show_range,
    show_seconds,
    show_tolerance,
    show_use,
)
from builder.model.shows import Shown, ShownKind, read_shown
from builder.model.sizes import Dimensions, Values, find_dimension, full_name
from builder.model.spread_results import NextStudy, Spread, SpreadPart
from builder.model.standard_results import (
    Beyond,
    Coefficient,
    ElementData,
    ElementStep,
    Fit,
    Pooled,
    Refusal,
)
from builder.model.standard_shown import left_out_words, refusal_words, span_words, variable_words
from builder.model.states import (
    cut_with,
    earlier_work,
    find_feature,
    operation_bases,
    operation_dimension,
)
from builder.model.station import Bed, Bobbin, Pace, SeamSpeed, SettingLimit, Station, StitchProgram
from builder.model.stitch import STITCHES, Stitch
from builder.model.store import consumed, cut_here, in_colour
from builder.model.study import Reading, Study
from builder.model.study_read import read_study
from builder.model.study_results import (
    FLAGGED,
    KEPT,
    NEEDED_METHODS,
    OUT,
    CycleValue,
    ForeignElement,
    LearningFit,
    Precision,
    StepStudy,
    StudySummary,
)
from builder.model.time_text import Element as ElementUse
from builder.model.time_text import Estimate
from builder.model.tolerance import Tolerance

__all__ = [
    "PAPER_WIDTH_MM",
    "WHOLE",
    "PHOTO_ALONE_MM",
    "PHOTO_BESIDE_FIGURE_MM",
    "PHOTO_GAP_MM",
    "SHEET_EDGE_MM",
    "Area",
    "Arrow",
    "Blur",
    "Callout",
    "Frame",
    "Number",
    "Ring",
    "Shot",
    "Words",
    "fitted_mm",
    "photo_rows",
    "photo_sizes_mm",
    "Capacity",
    "StationShare",
    "Tending",
    "Week",
    "Beyond",
    "Coefficient",
    "ElementData",
    "ElementStep",
    "Fit",
    "Pooled",
    "Refusal",
    "StudyStep",
    "left_out_words",
    "refusal_words",
    "span_words",
    "variable_words",
    "NextStudy",
    "Spread",
    "SpreadPart",
    "parse_quantity",
    "FLAGGED",
    "KEPT",
    "NEEDED_METHODS",
    "OUT",
    "CycleValue",
    "ForeignElement",
    "LearningFit",
    "Precision",
    "StepStudy",
    "StudySummary",
    "read_study",
    "Allowances",
    "At",
    "Bartack",
    "Bed",
    "Bobbin",
    "Box",
    "CheckPlan",
    "Component",
    "DEFER",
    "Dimensions",
    "EACH_PIECE",
    "Element",
    "ElementUse",
    "Entry",
    "Estimate",
    "Expression",
    "FAULTS",
    "FROM_FACTS",
    "FORCE_ROWS_LB",
    "Fault",
    "FaultKind",
    "Feature",
    "FeatureRef",
    "Fold",
    "FontTable",
    "Frequency",
    "Gauge",
    "HAZARDS",
    "Hardware",
    "Hazard",
    "Hole",
    "Homes",
    "KINDS",
    "Linked",
    "MachineKind",
    "Material",
    "MaterialUse",
    "NOUNS",
    "NO_SOURCE",
    "NEEDLE_POINTS",
    "Needle",
    "NeedlePoint",
    "NeedleSizes",
    "Notch",
    "Noun",
    "Operation",
    "OperationTime",
    "Outline",
    "PROTECTIONS",
    "PUBLISHED_PERCENT",
    "PUBLISHED_SOURCE",
    "Pace",
    "Part",
    "Per",
    "Plant",
    "PlantModel",
    "Product",
    "ProductTime",
    "ProtectionKind",
    "Quantity",
    "Range",
    "Reading",
    "Relaxation",
    "Results",
    "RouteLine",
    "RouteStep",
    "RouteStop",
    "RuleSetting",
    "STITCHES",
    "Seam",
    "SeamSpeed",
    "SettingKind",
    "SettingLimit",
    "SettingValue",
    "State",
    "Station",
    "Step",
    "StepTime",
    "TimePart",
    "Stitch",
    "StitchProgram",
    "Strip",
    "Study",
    "Tolerance",
    "ToleranceSpec",
    "Values",
    "WORK_KEYS",
    "capital_mm",
    "chlorinated",
    "consumed",
    "cut_here",
    "cut_with",
    "earlier_work",
    "em_for_capitals",
    "fault",
    "find_dimension",
    "find_feature",
    "force_of_row",
    "force_row_lb",
    "full_name",
    "in_colour",
    "limit_range",
    "link",
    "load_font_table",
    "near",
    "operation_bases",
    "operation_dimension",
    "read_settings",
    "parse_needle",
    "parse_needle_sizes",
    "route_of",
    "schema_of",
    "settings_of",
    "show_mass",
    "show_minutes",
    "show_number",
    "show_percent",
    "show_quantity",
    "show_range",
    "show_seconds",
    "show_tolerance",
    "show_use",
    "Shown",
    "ShownKind",
    "read_shown",
    "text_width",
]
