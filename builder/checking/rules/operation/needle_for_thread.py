"""A needle too thin or too thick for its thread."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import Material, NeedleSizes, show_number

USUAL: tuple[tuple[int, NeedleSizes], ...] = (
    (20, NeedleSizes(55, 80)),
    (30, NeedleSizes(60, 90)),
    (37, NeedleSizes(70, 100)),
    (47, NeedleSizes(75, 110)),
    (65, NeedleSizes(90, 120)),
    (80, NeedleSizes(90, 125)),
    (97, NeedleSizes(100, 140)),
    (125, NeedleSizes(110, 150)),
    (155, NeedleSizes(120, 180)),
    (220, NeedleSizes(140, 200)),
    (300, NeedleSizes(160, 250)),
    (420, NeedleSizes(200, 300)),
)
"""Up to this tex, the needle sizes in use; for threads that don't state theirs. Common practice, no source."""


def check(subject: Subject) -> Iterator[Problem]:
    """Needle sizes against what the needle thread states, or the usual table."""
    for name in subject.model.operations:
        settings = subject.settings(name)
        needle = settings["needle"].needle if "needle" in settings else None
        thread = settings["thread"].words if "thread" in settings else ""
        if needle is None or thread not in subject.model.materials:
            continue
        material = subject.model.materials[thread]
        sizes = material.needles or usual_sizes(material)
        if sizes is None or sizes.low <= needle.size <= sizes.high:
            continue
        too = "thin" if needle.size < sizes.low else "thick"
        tex = f" ({show_number(material.tex.in_unit('tex'))} tex)" if material.tex is not None else ""
        message = f"Nm {needle.size} is too {too} for thread {thread}{tex}: it runs in {sizes.text}"
        about = ("setting:needle", "setting:thread", f"material:{thread}")
        yield Problem(("operation", name), ("settings", "needle"), message, about)


def usual_sizes(thread: Material) -> NeedleSizes | None:
    """What the table says for a thread, None for one thicker than all of it or of unknown tex."""
    if thread.tex is None:
        return None
    return next((sizes for most, sizes in USUAL if thread.tex.value <= most), None)


RULE = Rule(
    slug="needle-for-thread",
    severity=Severity.warning,
    why="A thread that fills the eye frays and skips; in too large a hole it lies loose and the hole leaks.",
    remedy="Choose a needle inside the sizes, or type what the thread's maker says under `needles:` of the thread.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  settings: {needle: Nm 140 R}
""",
    good="""
operations/sew-hem.yaml:
  settings: {needle: Nm 110 R}
""",
    follows_from=("setting-unreadable",),
)
