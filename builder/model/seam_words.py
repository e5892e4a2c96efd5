"""What the eight classes of seams are called in files. What each means is geometry/class_of_seam.py."""

from __future__ import annotations

from typing import Literal, get_args

SeamWord = Literal["superimposed", "lapped", "bound", "flat", "decorative", "edge finished", "edge item", "strip alone"]
SEAM_WORDS: tuple[SeamWord, ...] = get_args(SeamWord)
"""The classes of ISO 4916 in their order, class 1 first."""
