"""The look of a figure: colours, and line weights in printed millimetres. Values only, nothing is drawn here.

Every difference told by colour is told by weight or dash as well: sheets are printed in black and white.
"""

from __future__ import annotations

INK = "#22201c"
ACCENT = "#a92f18"
EARLIER = "#77726a"
MANILA = "#e3d8c0"
MANILA_PALE = "#f1ebde"
GROUND = "#ffffff"
WRONG = "#efede8"
WRONG_HATCH = "#cbc7bf"

CUT_EDGE = 0.7
NOW = 0.9
STRIP_EDGE = 0.45
THIN = 0.35
HAIR = 0.22
RING = 0.6

# Widths a mark needs to be read at arm's length, whatever the scale of the drawing.
NOTCH_DEPTH = 2.0
HOLE_RADIUS = 1.05
HARDWARE_RADIUS = 1.7
RING_RADIUS = 3.4
START_RADIUS = 1.25
END_REACH = 1.9
BINDING_WIDTH = 2.0
ARROW_LENGTH = 3.0
ARROW_HALF = 1.15

# The chord error allowed when a curve is measured against labels, mm printed.
CHORD = 0.05
# Clear space kept along the border of the figure.
PAD = 0.8
