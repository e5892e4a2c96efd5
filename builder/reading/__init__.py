"""Door of the reading room: text to plain values with places, and no meaning of the values."""

from __future__ import annotations

from builder.reading.csv_table import CSV_LIMIT, Row, Table, read_table
from builder.reading.discover import KINDS, OUTPUT_FOLDER, Drawing, Photo, Source, read_folder
from builder.reading.dxf import DrawingLines, read_drawing
from builder.reading.dxf_pieces import Piece
from builder.reading.dxf_scan import DrawingFault
from builder.reading.faults import WHY
from builder.reading.photo import MAX_PIXELS, PhotoData, read_photo, scaled_jpeg
from builder.reading.photo_area import PhotoEdit
from builder.reading.photo_fault import PhotoFault
from builder.reading.raw_text import split_lines
from builder.reading.spots import Branch, Document, PathStep, Spot, Value, pack, unpack
from builder.reading.svg_clean import CleanDrawing, clean_svg, read_svg
from builder.reading.yaml_text import YAML_LIMIT, read_yaml

__all__ = [
    "CSV_LIMIT",
    "CleanDrawing",
    "KINDS",
    "MAX_PIXELS",
    "OUTPUT_FOLDER",
    "WHY",
    "YAML_LIMIT",
    "Branch",
    "Document",
    "Drawing",
    "DrawingFault",
    "DrawingLines",
    "PathStep",
    "Photo",
    "PhotoData",
    "PhotoEdit",
    "PhotoFault",
    "Piece",
    "Row",
    "Source",
    "Spot",
    "Table",
    "Value",
    "clean_svg",
    "pack",
    "read_drawing",
    "read_folder",
    "read_photo",
    "read_svg",
    "read_table",
    "read_yaml",
    "scaled_jpeg",
    "split_lines",
    "unpack",
]
