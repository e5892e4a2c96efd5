"""Stitch types of ISO 4915 / ASTM D6193: how many needles and threads each one needs.

Source: ISO 4915:1991 as summarised in public course pages (counts of threads read there); the lockstitch
entries for two rows follow from the definition.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Stitch:
    """A stitch type. `needles` needle threads, `lower` bobbin or looper threads, `cover` top cover threads."""

    type: str
    title: str
    needles: int
    lower: int
    cover: int = 0

    @property
    def threads(self) -> int:
        """All threads of one row: needle, bobbin or looper, and cover threads."""
        return self.needles + self.lower + self.cover


STITCHES: dict[str, Stitch] = {
    s.type: s
    for s in (
        Stitch("101", "single-thread chainstitch", 1, 0),
        Stitch("103", "single-thread blindstitch", 1, 0),
        Stitch("107", "single-thread zigzag chainstitch", 1, 0),
        Stitch("301", "lockstitch", 1, 1),
        Stitch("304", "zigzag lockstitch", 1, 1),
        Stitch("308", "two-step zigzag lockstitch", 1, 1),
        Stitch("401", "two-thread chainstitch", 1, 1),
        Stitch("406", "two-needle bottom-cover chainstitch", 2, 1),
        Stitch("407", "three-needle bottom-cover chainstitch", 3, 1),
        Stitch("501", "one-thread overedge", 1, 0),
        Stitch("503", "two-thread overedge", 1, 1),
        Stitch("504", "three-thread overedge", 1, 2),
        Stitch("512", "four-thread mock-safety overedge", 2, 2),
        Stitch("514", "four-thread overedge", 2, 2),
        Stitch("516", "five-thread safety stitch", 2, 3),
        Stitch("602", "two-needle four-thread cover stitch", 2, 1, 1),
        Stitch("605", "three-needle five-thread cover stitch", 3, 1, 1),
        Stitch("607", "four-needle six-thread flatseam", 4, 1, 1),
    )
}
