"""Rules about shapes on small plants: what each must find beside its example, and what it must leave alone."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.finding import Finding, Severity
from builder.pipeline import check_plant
from tests.checking.overlay import lay_over, without_idle


def findings(example: str, tmp_path: Path) -> list[Finding]:
    """Top-level findings of the small plant with an example laid over it."""
    return without_idle(check_plant(lay_over(example, tmp_path / "plant")).findings)


def rules(example: str, tmp_path: Path) -> list[str]:
    """Their rules."""
    return [one.rule for one in findings(example, tmp_path)]


def panel(features: str) -> str:
    """The panel with further features."""
    return f"parts/panel.yaml:\n  features: {{{features}}}\n"


SEWN_FIRST = "operations/sew-hem.yaml:\n  steps: [{step: rim, sew: rim, do: Sew the rim., time: 2 s}]\n"


def test_needle_into_a_snap_set_before_is_an_error(tmp_path: Path) -> None:
    """The snap is set by an operation before the seam."""
    example = """
parts/panel.yaml:
  features: {rim: {seam: bottom, inset: 30 mm}}
operations/sew-rim.yaml:
  operation: sew-rim
  title: Sew the rim
  code: SEW-20
  station: lockstitch
  needs: {panel-snapped: 1}
  makes: panel-rimmed
  settings: {stitch: 301, stitch length: 3 mm, thread: thread-70, needle: Nm 100 R}
  steps: [{step: rim, sew: rim, do: Sew the rim., time: 2 s}]
products/pouch.yaml: {route: [cut-panel, sew-hem, press-snap, sew-rim]}
"""
    found = findings(example, tmp_path)
    assert [(one.rule, one.severity) for one in found] == [("features-collide", Severity.error)]
    assert "needle strikes snap-place" in found[0].message


def test_snap_set_on_a_seam_sewn_before_is_a_warning(tmp_path: Path) -> None:
    """The seam is sewn by an operation before the snap."""
    found = findings(panel("rim: {seam: bottom, inset: 30 mm}") + SEWN_FIRST, tmp_path)
    assert [(one.rule, one.severity) for one in found] == [("features-collide", Severity.warning)]
    assert "cuts them" in found[0].message


@pytest.mark.parametrize(
    "features",
    [
        "punched: {hole: 4 mm, at: {centre: 0 mm, bottom: 30 mm}}",
        "mark: {hole: 2 mm, at: {centre: 0 mm, top: 12 mm}}",
        "a: {box: plain, at: {left: 20 mm, bottom: 60 mm}, width: 30 mm, height: 30 mm}, "
        "b: {box: plain, at: {left: 22 mm, bottom: 62 mm}, width: 26 mm, height: 26 mm}",
        "a: {seam: left, inset: 9 mm}, b: {bartack: 28, length: 10 mm, width: 2 mm, at: {left: 9 mm, bottom: 20 mm}}",
    ],
    ids=["hole under its snap", "drill hole under a seam", "box inside a box", "bartack on its seam"],
)
def test_what_is_sewn_every_day_is_no_collision(features: str, tmp_path: Path) -> None:
    """Cells left out of the table."""
    assert rules(panel(features), tmp_path) == []


@pytest.mark.parametrize(
    "features",
    [
        "a: {hole: 6 mm, at: {left: 40 mm, bottom: 80 mm}}, b: {hole: 6 mm, at: {left: 45 mm, bottom: 80 mm}}",
        "a: {hole: 6 mm, at: {left: 40 mm, bottom: 80 mm}, count: 3, pitch: 5 mm}",
        "a: {hole: 6 mm, at: {left: 40 mm, top: 11 mm}}",
        "a: {bartack: 28, length: 10 mm, width: 2 mm, at: {left: 40 mm, bottom: 80 mm}, count: 2, pitch: 1 mm}",
        "a: {box: plain, at: {left: 20 mm, bottom: 60 mm}, width: 30 mm, height: 30 mm}, "
        "b: {box: plain, at: {left: 40 mm, bottom: 60 mm}, width: 30 mm, height: 30 mm}",
        "a: {notch: top, at: {left: 103 mm}}",
    ],
    ids=["hole in hole", "row too tight", "hole on a seam", "bartacks", "boxes", "notches"],
)
def test_two_in_one_place_collide(features: str, tmp_path: Path) -> None:
    """Cells of the table."""
    assert rules(panel(features), tmp_path) == ["features-collide"]


def test_a_ring_lies_in_its_fold_and_a_snap_does_not(tmp_path: Path) -> None:
    """What is pressed through a hole can't be folded."""
    features = "left-fold: {fold: left, inset: 40 mm}, "
    features += "ring: {hardware: snap, diameter: 12 mm, at: {left: 40 mm, bottom: 80 mm}}"
    assert rules(panel(features), tmp_path / "ring") == []
    features += ", ring-hole: {hole: 4 mm, at: {left: 40 mm, bottom: 80 mm}}"
    assert "features-collide" in rules(panel(features), tmp_path / "snap")


def test_seam_of_an_assembly_strikes_the_snap_of_its_part(tmp_path: Path) -> None:
    """The snap lies in a part that is turned over; the seam is the sub-assembly's."""
    example = """
parts/panel.yaml:
  features: {snap-place: {at: {centre: 100 mm}}}
parts/shell.yaml:
  part: shell
  title: Shell
  from: [{part: panel, side: wrong}]
  features: {across: {seam: line, points: [{left: AT mm, bottom: 20 mm}, {left: AT mm, top: 20 mm}]}}
"""
    assert rules(example.replace("AT", "50"), tmp_path / "hit") == ["features-collide"]
    assert rules(example.replace("AT", "250"), tmp_path / "miss") == []


def test_a_row_that_starts_outside_is_left_to_the_other_rule(tmp_path: Path) -> None:
    """Only a row that begins on its part runs off it."""
    row = "vents: {hole: 5 mm, at: {left: 290 mm, middle: 0 mm}, count: 2, pitch: 70 mm}"
    assert rules(panel(row), tmp_path / "runs off") == ["row-off-strip"]
    assert rules(panel(row.replace("290", "310")), tmp_path / "outside") == ["feature-outside-part"]


def test_a_free_end_may_hang_over(tmp_path: Path) -> None:
    """A tie is meant to."""
    example = """
parts/tie.yaml: {part: tie, title: Tie, material: cloth, outline: {rectangle: {width: 340 mm, height: 20 mm}}}
parts/panel.yaml:
  features: {tie-place: {strip: tie, at: {left: 20 mm, bottom: 100 mm}, free end: FREE}}
"""
    assert rules(example.replace("FREE", "'no'"), tmp_path / "no") == ["strip-beyond-part"]
    assert rules(example.replace("FREE", "'yes'"), tmp_path / "yes") == []


ALLOWANCE = "plant.yaml: {seam allowances: {'301': 5 mm}}\n"


@pytest.mark.parametrize(
    ("features", "expected"),
    [
        ("rim: {seam: left, inset: 3 mm}", ["seam-allowance-small"]),
        ("rim: {seam: all, inset: 3 mm}", ["seam-allowance-small"]),
        ("rim: {seam: top, inset: 3 mm}", []),
        ("rim: {seam: line, points: [{left: 3 mm, bottom: 60 mm}, {left: 3 mm, bottom: 120 mm}]}", []),
        ("left-fold: {fold: left, inset: 20 mm}, rim: {seam: left, inset: 3 mm}", []),
        ("left-fold: {fold: left, inset: 90 mm}, rim: {seam: left, inset: 3 mm}", ["seam-allowance-small"]),
    ],
    ids=["raw", "one edge of four is folded", "the folded edge", "a line", "a hem", "a flap is no hem"],
)
def test_seam_allowance_counts_at_raw_edges_only(features: str, expected: list[str], tmp_path: Path) -> None:
    """Folded edges don't fray."""
    assert rules(ALLOWANCE + panel(features) + SEWN_FIRST, tmp_path) == expected


def test_crosswise_component_of_lengthwise_goods(tmp_path: Path) -> None:
    """Two layers of one nap, one turned by a quarter."""
    example = """
materials/all.yaml:
  materials: {cloth: {direction: lengthwise}}
parts/panel.yaml: {grain: up}
parts/patch.yaml: {part: patch, title: Patch, material: cloth, grain: up,
  outline: {rectangle: {width: 60 mm, height: 40 mm}}}
parts/shell.yaml:
  part: shell
  title: Shell
  from: [{part: panel}, {part: patch, turn: TURN deg, layer: 2}]
"""
    assert rules(example.replace("TURN", "90"), tmp_path / "across") == ["cross-grain"]
    assert rules(example.replace("TURN", "180"), tmp_path / "along") == []


def test_a_free_grain_may_be_turned_on_the_goods(tmp_path: Path) -> None:
    """1,400 × 1,700 mm fit goods 1,500 mm wide either way, 1,600 × 1,400 only turned."""
    example = "parts/panel.yaml: {grain: GRAIN, outline: {rectangle: {width: 1600 mm, height: 1400 mm}}}\n"
    assert rules(example.replace("GRAIN", "none"), tmp_path / "free") == []
    assert rules(example.replace("GRAIN", "across"), tmp_path / "across") == []
    assert rules(example.replace("GRAIN", "up"), tmp_path / "up") == ["part-larger-than-goods"]


def test_webbing_typed_as_a_rectangle_is_as_wide_as_its_roll(tmp_path: Path) -> None:
    """Its long side lies along the roll, whatever its grain."""
    example = """
materials/all.yaml:
  materials: {webbing: {title: Webbing, form: webbing, width: 38 mm, length: 50 m, mass per length: 30 g/m}}
parts/panel.yaml: {material: webbing, grain: up, outline: {rectangle: {width: 300 mm, height: HIGH mm, corner: 2 mm}}}
"""
    wide = example.replace("HIGH", "60")
    assert "part-larger-than-goods" in rules(wide, tmp_path / "too wide")
    assert "part-larger-than-goods" not in rules(example.replace("HIGH", "38"), tmp_path / "as wide")


def test_a_notch_of_no_typed_depth_is_found_at_the_notch(tmp_path: Path) -> None:
    """It is cut 6 mm deep all the same."""
    found = findings(panel("side-notch: {notch: left, at: {bottom: 60 mm}}, side: {seam: left, inset: 5 mm}"), tmp_path)
    assert [one.rule for one in found] == ["notch-too-deep"]
    text = (tmp_path / "plant" / "parts" / "panel.yaml").read_text(encoding="utf-8").splitlines()
    line = found[0].place.line
    assert "side-notch" in text[line - 1] or "side-notch" in text[line - 2]


SHELL = """
parts/lining.yaml:
  part: lining
  title: Lining
  material: cloth
  outline: {rectangle: {width: 300 mm, height: 200 mm, corner: 10 mm}}
  features: {top-notch: {notch: top, at: {left: AT mm}}}
parts/shell.yaml:
  part: shell
  title: Shell
  from: [{part: panel, side: SIDE}, {part: lining, layer: 2}]
"""


@pytest.mark.parametrize(
    ("at", "side", "expected"),
    [
        ("101", "right", []),
        ("106", "right", ["notch-without-partner"]),
        ("106", "wrong", []),
        ("200", "wrong", []),
        ("194", "wrong", ["notch-without-partner"]),
        ("130", "right", []),
    ],
    ids=["laid on", "missed by 6", "turned away", "turned and laid on", "turned and missed", "two marks"],
)
def test_notches_on_edges_that_lie_on_each_other(at: str, side: str, expected: list[str], tmp_path: Path) -> None:
    """A near miss is a fault, a far one another mark."""
    assert rules(SHELL.replace("AT", at).replace("SIDE", side), tmp_path) == expected


def test_a_partner_without_any_notch(tmp_path: Path) -> None:
    """The notch says whom it meets, and that part has none."""
    example = SHELL.replace("AT", "100").replace("SIDE", "right").replace("features: {top", "features: {far")
    example = example.replace("top-notch: {notch: top", "far-notch: {notch: top")
    bare = example + "parts/bare.yaml: {part: bare, title: Bare, material: cloth, "
    bare += "outline: {rectangle: {width: 300 mm, height: 200 mm}}}\n"
    bare = bare.replace("{left: 100 mm}}", "{left: 100 mm}, meets: bare}").replace(
        "{part: panel, side", "{part: bare, side"
    )
    found = findings(bare, tmp_path)
    assert [one.rule for one in found] == ["notch-without-partner"]
    assert "it has none" in found[0].message


def test_lines_of_one_length_only_in_the_reference_size(tmp_path: Path) -> None:
    """The large size makes one line longer."""
    example = """
parts/panel.yaml:
  features:
    low: {seam: line, points: [{left: 20 mm, bottom: 60 mm}, {right: 20 mm, bottom: 60 mm}]}
    high: {seam: line, points: [{left: 20 mm, bottom: 90 mm}, {left: 280 mm, bottom: 90 mm}]}
    hem-seam: {joins: [panel/low, panel/high]}
products/pouch.yaml:
  sizes: {M: {}, L: {panel.width: 340 mm}}
"""
    found = findings(example, tmp_path)
    assert [one.rule for one in found] == ["seam-lengths-differ"]
    assert "in size L: 40 mm apart" in found[0].message


def test_a_hole_in_the_hem_is_not_near_a_raw_edge(tmp_path: Path) -> None:
    """The top edge is folded; the left one is raw."""
    assert rules(panel("eye: {hole: 8 mm, at: {left: 60 mm, top: 6 mm}}"), tmp_path / "hem") == []
    assert rules(panel("eye: {hole: 8 mm, at: {left: 6 mm, bottom: 60 mm}}"), tmp_path / "raw") == ["hole-near-edge"]


def test_a_deep_notch_is_excused_by_a_wide_seam_of_the_assembly(tmp_path: Path) -> None:
    """The notch is on the part, the seam that hides it on the sub-assembly."""
    example = """
parts/panel.yaml:
  features: {side-notch: {notch: left, at: {bottom: 60 mm}, depth: 5 mm}}
parts/shell.yaml:
  part: shell
  title: Shell
  from: [{part: panel}]
  features: {side: {seam: left, inset: INSET mm}}
"""
    assert rules(example.replace("INSET", "4"), tmp_path / "narrow") == ["notch-too-deep"]
    assert rules(example.replace("INSET", "8"), tmp_path / "wide") == []


@pytest.mark.parametrize(
    ("graduation", "severity"),
    [("0.2 mm", None), ("0.3 mm", Severity.note), ("0.6 mm", Severity.warning), ("3 mm", Severity.error)],
)
def test_gauge_in_divisions_of_the_tolerance(graduation: str, severity: Severity | None, tmp_path: Path) -> None:
    """2 mm of tolerance in 10, 6.7, 3.3 and 0.7 divisions."""
    found = findings(f"plant.yaml: {{gauges: {{rule: {{graduation: {graduation}}}}}}}\n", tmp_path)
    assert [one.severity for one in found] == ([] if severity is None else [severity])


def test_chain_counts_a_link_behind_a_link_once(tmp_path: Path) -> None:
    """slot = half + width; half = width / 2 has a tolerance of its own, so width counts once, not 1.5 times."""
    example = """
parts/panel.yaml:
  dimensions: {half: "=width / 2", slot: "=width + half"}
operations/sew-hem.yaml:
  tolerances:
    width: {of: panel.width, is: ± 3 mm, with: rule, every: first piece}
    half: {of: half, is: ± 4 mm, with: rule, every: first piece}
    slot: {of: slot, is: ± BAND mm, with: rule, every: first piece}
  steps: [{step: look, check: [width, half, slot]}]
"""
    assert rules(example.replace("BAND", "5.1"), tmp_path / "held") == []
    found = findings(example.replace("BAND", "4.9"), tmp_path / "missed")
    assert [one.rule for one in found] == ["tolerance-chain"]
    assert "make it 5 mm (root of squares), 7 mm at worst" in found[0].message


def test_cut_dimensions_are_made_directly(tmp_path: Path) -> None:
    """A cutter follows the pattern, whatever the dimension is computed from."""
    example = """
parts/panel.yaml:
  dimensions: {slot: "=width"}
operations/cut-panel.yaml:
  tolerances: {slot: {of: slot, is: ± 1 mm, with: rule, every: first piece}}
  steps: [{step: cut, check: slot}]
operations/sew-hem.yaml:
  tolerances: {width: {of: panel.width, is: ± 3 mm, with: rule, every: first piece}}
  steps: [{step: look, check: width}]
"""
    assert rules(example, tmp_path) == []


@pytest.mark.parametrize(
    ("sizes", "odd"),
    [
        ({"S": 300, "M": 320, "L": 340}, None),
        ({"M": 320, "S": 300, "L": 340}, None),
        ({"S": 340, "M": 320, "L": 300}, None),
        ({"XS": 300, "S": 310, "M": 400, "L": 330}, "M"),
        ({"36": 300, "38": 280, "40": 320}, "38"),
        ({"wide": 300, "narrow": 400, "odd": 320}, None),
        ({"S": 400, "M": 300}, None),
    ],
)
def test_sizes_that_go_up_and_down(sizes: dict[str, int], odd: str | None, tmp_path: Path) -> None:
    """The one without which the others run one way; names that say nothing are left alone."""
    rows = "\n".join(f"    '{size}': {{panel.width: {width} mm}}" for size, width in sizes.items())
    found = findings(f"products/pouch.yaml:\n  sizes:\n{rows}\n", tmp_path)
    assert [one.rule for one in found] == ([] if odd is None else ["size-out-of-order"])
    if odd is not None:
        text = (tmp_path / "plant" / "products" / "pouch.yaml").read_text(encoding="utf-8").splitlines()
        assert f"{sizes[odd]} mm" in text[found[0].place.line - 1]
