"""Rules on what flows from operation to operation: what they leave alone, and what one fault must not set off."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.pipeline import check_plant
from tests.checking.overlay import lay_over

PATCH = "{part: patch, title: Patch, material: cloth, outline: {rectangle: {width: 40 mm, height: 40 mm}}}"
CUT_PATCH = """
  operation: cut-patch
  title: Cut the patch
  code: CUT-20
  station: laser
  makes: patch
  settings: {speed: 200 mm/s, power: 40 %, focus: 3 mm}
  steps: [{step: cut, cut: patch, do: Close the lid and start.}]
"""
HEMMED = "{product: hemmed, title: Hemmed panel, route: [cut-panel, sew-hem], sold: panel-hemmed}"
PLAIN = "product: pouch-plain, title: Pouch without a snap, route: [cut-panel, sew-hem]"


def found(example: str, tmp_path: Path) -> list[tuple[str, str]]:
    """Rule and place of each top-level finding of the small plant with an example laid over it."""
    findings = check_plant(lay_over(example, tmp_path / "plant")).findings
    return [(one.rule, f"{one.place.file} {one.message}") for one in findings]


def rules(example: str, tmp_path: Path) -> list[str]:
    """Rules of the top-level findings."""
    return [rule for rule, _ in found(example, tmp_path)]


def test_a_sub_assembly_is_counted_by_what_needs_it(tmp_path: Path) -> None:
    """Two typed, one needed; the route inside the sub-assembly says nothing of its own."""
    example = f"""
products/hemmed.yaml: {HEMMED}
products/pouch.yaml: {{route: [{{sub assembly: hemmed, quantity: COUNT}}, press-snap]}}
"""
    assert rules(example.replace("COUNT", "1"), tmp_path / "one") == []
    assert rules(example.replace("COUNT", "2"), tmp_path / "two") == ["quantity-differs"]


def test_a_wrong_quantity_is_one_finding(tmp_path: Path) -> None:
    """What stands before it is held against the needs, not against the wrong quantity."""
    stops = [f"{{operation: {name}, quantity: 1}}" for name in ("cut-panel", "sew-hem")]
    example = f"products/pouch.yaml: {{route: [{', '.join(stops)}, {{operation: press-snap, quantity: 2}}]}}"
    findings = found(example, tmp_path)
    assert [rule for rule, _ in findings] == ["quantity-differs"]
    assert "2 of press-snap" in findings[0][1]


def test_several_pieces_out_of_one_run_are_no_remainder(tmp_path: Path) -> None:
    """Four panels a run, one a pouch: a quarter of a run each, and nothing is left over."""
    assert rules("operations/cut-panel.yaml: {makes: {panel: 4}}", tmp_path) == []


def test_equal_shares_of_one_run_are_no_remainder(tmp_path: Path) -> None:
    """Four panels and eight patches a run, one and two a pouch."""
    example = f"""
parts/patch.yaml: {PATCH}
operations/cut-panel.yaml: {{makes: {{panel: 4, patch: 8}}}}
operations/sew-hem.yaml: {{needs: {{panel: 1, patch: 2}}}}
"""
    assert rules(example, tmp_path) == []
    assert rules(example.replace("patch: 2", "patch: 1"), tmp_path / "less") == ["pieces-left-over"]


def test_an_operation_two_products_share_is_used(tmp_path: Path) -> None:
    """A second product that ends earlier sells what the first goes on with."""
    assert rules(f"products/pouch-plain.yaml: {{{PLAIN}}}", tmp_path) == []


def test_a_file_nobody_can_read_makes_nothing_look_idle(tmp_path: Path) -> None:
    """One unknown key in the hem's file: not a word about panels nobody needs."""
    assert rules("operations/sew-hem.yaml: {stetion: lockstitch}", tmp_path) == ["key-unknown"]
    assert rules("products/pouch.yaml: {titel: Pouch}", tmp_path / "product") == ["key-unknown"]


def test_a_wrong_name_on_a_route_is_one_finding(tmp_path: Path) -> None:
    """The operation meant by it is not called idle, and its piece not missing."""
    assert rules("products/pouch.yaml: {route: [cut-panel, sew-hemm, press-snap]}", tmp_path) == ["name-unknown"]


def test_a_missing_stop_is_one_finding(tmp_path: Path) -> None:
    """The operation left out is on no product because of it."""
    assert rules("products/pouch.yaml: {route: [cut-panel, press-snap]}", tmp_path) == ["part-not-on-route"]


def test_a_wrong_order_is_one_finding(tmp_path: Path) -> None:
    """Counts can't be taken from it."""
    example = "products/pouch.yaml: {route: [{operation: sew-hem, quantity: 3}, cut-panel, press-snap]}"
    assert rules(example, tmp_path) == ["part-before-made"]


def test_a_sub_assembly_may_be_cut_on_the_route_it_goes_into(tmp_path: Path) -> None:
    """The hem's panels come from the pouch's own cut."""
    example = f"""
products/hemmed.yaml: {HEMMED.replace("cut-panel, ", "")}
products/pouch.yaml: {{route: [cut-panel, {{sub assembly: hemmed}}, press-snap]}}
"""
    assert rules(example, tmp_path) == []
    lacking = example.replace("[cut-panel, {sub", "[{sub")
    assert found(lacking, tmp_path / "lacking") == [
        (
            "part-not-on-route",
            "products/hemmed.yaml sew-hem needs panel, and cut-panel, which makes it, is not on the route",
        )
    ]


def lots(hem: str = "", press: str = "") -> str:
    """Panel and patch from two cuts, matched cloth; they meet at the hem, and go on to the press."""
    return f"""
materials/all.yaml: {{materials: {{cloth: {{lots: matched}}}}}}
parts/patch.yaml: {PATCH}
operations/cut-patch.yaml:{CUT_PATCH}
operations/sew-hem.yaml: {{needs: {{panel: 1, patch: 1}}{hem}}}
operations/press-snap.yaml: {{title: Press the snap{press}}}
products/pouch.yaml: {{route: [cut-patch, cut-panel, sew-hem, press-snap]}}
"""


def test_lots_are_compared_where_they_meet_first(tmp_path: Path) -> None:
    """Behind that they are together anyway; comparing later is too late."""
    assert [words.split()[0] for _, words in found(lots(), tmp_path / "a")] == ["operations/sew-hem.yaml"]
    assert rules(lots(press=", lots: matched"), tmp_path / "b") == ["lot-mixing"]
    assert rules(lots(hem=", lots: matched"), tmp_path / "c") == []


def test_lots_that_may_be_mixed_are_left_alone(tmp_path: Path) -> None:
    """Only matched goods differ."""
    assert rules(lots().replace("cloth: {lots: matched}", "cloth: {lots: mixed}"), tmp_path) == []


@pytest.mark.parametrize(
    ("width", "expected"),
    [("1.6 m", []), ("1500 mm", []), ("1.4 m", ["colour-changes-goods"])],
)
def test_a_wider_roll_holds_the_same_lay(width: str, expected: list[str], tmp_path: Path) -> None:
    """Equal in another unit, or wider, is no other cloth; narrower spoils the lay."""
    example = f"""
materials/all.yaml:
  materials:
    moss: {{title: Moss cloth, form: sheet, width: {width}, mass: 250 g/m2, composition: [nylon],
      evidence: {{kind: safety data sheet, document: SS-2, date: 2026-01-10}}}}
products/pouch.yaml: {{colours: {{slate: {{}}, moss: {{cloth: moss}}}}}}
"""
    assert rules(example, tmp_path) == expected


def test_two_alternatives_of_each_other_are_one_finding(tmp_path: Path) -> None:
    """At one of the two."""
    example = f"""
products/pouch.yaml: {{alternative to: pouch-plain}}
products/pouch-plain.yaml: {{{PLAIN}, alternative to: pouch}}
"""
    assert rules(example, tmp_path) == ["alternative-differs"]


def test_a_fold_others_measure_from_need_not_be_made(tmp_path: Path) -> None:
    """A line of reference; a fold nothing measures from is forgotten work."""
    features = "{low-fold: {fold: bottom, inset: 20 mm}, snap-place: {at: {bottom: PLACE}}}"
    used = f"parts/panel.yaml: {{features: {features.replace('PLACE', chr(34) + '=low-fold.inset + 10 mm' + chr(34))}}}"
    alone = f"parts/panel.yaml: {{features: {features.replace('PLACE', '30 mm')}}}"
    assert rules(used, tmp_path / "used") == []
    assert rules(alone, tmp_path / "alone") == ["feature-never-made"]


def test_seam_lines_that_another_seam_closes_are_sewn_by_it(tmp_path: Path) -> None:
    """`joins` names the lines on both parts; the operation sews the one that joins them."""
    example = f"""
parts/patch.yaml: {PATCH[:-1]}, features: {{low-line: {{seam: bottom, inset: 10 mm}}}}}}
parts/panel.yaml:
  features:
    low-line: {{seam: line, points: [{{left: 30 mm, bottom: 10 mm}}, {{left: 70 mm, bottom: 10 mm}}]}}
    hem-seam: {{joins: [patch/low-line, panel/low-line]}}
operations/cut-panel.yaml: {{makes: {{panel: 1, patch: 1}}}}
operations/sew-hem.yaml: {{needs: {{panel: 1, patch: 1}}}}
"""
    assert "feature-never-made" not in rules(example, tmp_path / "joined")
    open_ = example.replace("joins: [patch/low-line, panel/low-line]", "side: right")
    assert rules(open_, tmp_path / "open") == ["feature-never-made", "feature-never-made"]
