"""The example that the rules on deviations share: a hem sewn another way for one batch."""

from __future__ import annotations

_EXAMPLE = """
operations/sew-hem-wide.yaml:
  operation: sew-hem-wide
  title: Sew the hem, wide thread
  code: SEW-10D
  station: lockstitch
  needs: {panel: 1}
  makes: panel-hemmed
  deviation: {batches: B-7, until: {until}, because: The usual thread is late., instead of: {instead}}
  settings: {stitch: 301, stitch length: 3 mm, thread: thread-70, needle: Nm 110 R}
  tolerances: {hem: {of: hem-seam.inset, is: ± 1 mm, with: rule, every: first piece}}
  steps:
    - {step: fold-over, fold: hem-fold, do: Fold it., time: 3 s}
    - {step: hem, sew: hem-seam, do: Sew it., check: hem, time: 2 s}
"""


def deviation_example(until: str = "2999-10-01", instead: str = "sew-hem") -> str:
    """The operation as a file laid over the small plant. until : its last day; instead : what it stands in for"""
    return _EXAMPLE.replace("{until}", until).replace("{instead}", instead)
