"""Door of the geometry room: outlines, paths, offsets, areas, lengths; pure, in millimetres, x right and y up."""

from builder.geometry.arrays import ROUND_KINDS, axis_of, discs_of, first_of_row, piece_turn, row_ways
from builder.geometry.beside import band, path_beside
from builder.geometry.class_of_seam import DEFINITIONS, SeamClass, seam_class
from builder.geometry.clip import beyond_fold, clip_area, clip_segment
from builder.geometry.cross_cut import CutAsk, plies_along
from builder.geometry.edge_sewn import inside_edge, sewn_edge
from builder.geometry.goods import Goods, seam_goods
from builder.geometry.halves import fold_across, left_half, lies_left, mirrored_over
from builder.geometry.mass import Scales, roll_grams
from builder.geometry.measure import distance_point_segment, path_inside, smallest_radius
from builder.geometry.nest import NestedPiece, NestFault, NestLayout, lay_out_nest
from builder.geometry.nest_of_operation import operation_nest
from builder.geometry.notch import notch_tip
from builder.geometry.offset import inset_outline
from builder.geometry.outline import Outline, Vertex, polygon, rectangle
from builder.geometry.path import Path, bartack_zigzag, box, box_and_cross, needle_points, polyline, stitches_per_run
from builder.geometry.places import feature_bounds
from builder.geometry.placing import Placing
from builder.geometry.ply import Bend, End, EndKind, Pierced, Plies, Ply
from builder.geometry.project import oblique, oblique_path
from builder.geometry.ray import Ray
from builder.geometry.seam_beside import has_sides
from builder.geometry.seam_speed import measured_speed, speeds_short_of_goods
from builder.geometry.section import LIMIT_MM, Section, section_of
from builder.geometry.sections_sewn import SewnSection, sections_by, tape_width
from builder.geometry.segment import Arc, Bounds, Line, Segment, box_around
from builder.geometry.shape import FeatureShape, PartShape, PlacedPart
from builder.geometry.shapes import ShapeBook, ShapeFault
from builder.geometry.shaping import finished_edge, stretch, taken_at
from builder.geometry.stack import Layer, Stack, layers_of, stacks_along
from builder.geometry.stitch_course import Hold, Space, StitchSize, StitchThreads, Thread
from builder.geometry.stitch_lock import bartack_lock
from builder.geometry.stitch_types import MAKERS as STITCHES_DRAWN
from builder.geometry.stitch_types import stitch_threads
from builder.geometry.template_card import GaugeCard, MarkingCard, gauge_card, marking_card
from builder.geometry.template_rows import card_for
from builder.geometry.tiling import OVERLAP_MM, Joint, Tile, Tiling, fewest_sheets, tiled
from builder.geometry.trim import trimmed
from builder.geometry.under_needle import Sewn, sewn_by
from builder.geometry.vector import GeometryFault, Point
from builder.geometry.weave import Piece, woven

__all__ = [
    "box_around",
    "Hold",
    "Piece",
    "STITCHES_DRAWN",
    "Space",
    "StitchSize",
    "StitchThreads",
    "Thread",
    "bartack_lock",
    "stitch_threads",
    "woven",
    "OVERLAP_MM",
    "GaugeCard",
    "Joint",
    "MarkingCard",
    "Tile",
    "Tiling",
    "card_for",
    "fewest_sheets",
    "gauge_card",
    "marking_card",
    "tiled",
    "band",
    "finished_edge",
    "path_beside",
    "stretch",
    "taken_at",
    "has_sides",
    "ROUND_KINDS",
    "axis_of",
    "discs_of",
    "first_of_row",
    "piece_turn",
    "row_ways",
    "feature_bounds",
    "notch_tip",
    "trimmed",
    "fold_across",
    "inside_edge",
    "left_half",
    "lies_left",
    "mirrored_over",
    "sewn_edge",
    "NestFault",
    "NestLayout",
    "NestedPiece",
    "lay_out_nest",
    "operation_nest",
    "Goods",
    "inset_outline",
    "seam_goods",
    "DEFINITIONS",
    "LIMIT_MM",
    "Arc",
    "Bend",
    "CutAsk",
    "End",
    "EndKind",
    "Pierced",
    "Plies",
    "Ply",
    "Ray",
    "SeamClass",
    "SewnSection",
    "sections_by",
    "tape_width",
    "Section",
    "plies_along",
    "seam_class",
    "section_of",
    "Bounds",
    "FeatureShape",
    "GeometryFault",
    "Layer",
    "Line",
    "Outline",
    "PartShape",
    "Path",
    "PlacedPart",
    "Placing",
    "Point",
    "Scales",
    "Segment",
    "Sewn",
    "ShapeBook",
    "ShapeFault",
    "Stack",
    "Vertex",
    "bartack_zigzag",
    "beyond_fold",
    "box",
    "box_and_cross",
    "clip_area",
    "clip_segment",
    "distance_point_segment",
    "layers_of",
    "measured_speed",
    "needle_points",
    "oblique",
    "oblique_path",
    "path_inside",
    "polygon",
    "polyline",
    "rectangle",
    "roll_grams",
    "sewn_by",
    "smallest_radius",
    "speeds_short_of_goods",
    "stacks_along",
    "stitches_per_run",
]
