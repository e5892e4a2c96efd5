"""Times of the demo along its routes."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner

from builder.commands.times import command
from builder.model import Results
from builder.pipeline import check_plant


def results(folder: Path) -> Results:
    """Computed numbers of a plant without errors."""
    checked = check_plant(folder)
    assert checked.results is not None
    return checked.results


def test_json_adds_up(demo: Path) -> None:
    """Own minutes add up to the product's, and each cumulative value to those so far, to 1e-9."""
    answer = CliRunner().invoke(command, ["--in", str(demo), "--json"])
    whole = json.loads(answer.stdout)
    assert whole["batch"] > 0
    assert whole["products"]
    for product in whole["products"]:
        so_far = machine = 0.0
        for line in product["operations"]:
            so_far += line["own_minutes"]
            machine += line["own_machine_minutes"]
            assert line["cumulative_minutes"] == pytest.approx(so_far, abs=1e-9)
        assert product["standard_minutes"] == pytest.approx(so_far, abs=1e-9)
        assert product["machine_minutes"] == pytest.approx(machine, abs=1e-9)
        assert 0 <= product["estimate_share"] <= 1


def test_a_newcomer_works_the_paid_minutes_without_breaks_and_without_what_is_off_standard(demo: Path) -> None:
    """Five shifts of 450 min at 93 %; every product with a time has its weeks, each no slower than the standard."""
    for product in results(demo).products:
        assert [week.number for week in product.newcomer] == list(range(1, 9))
        for week in product.newcomer:
            assert week.pieces * week.minutes == pytest.approx(5 * 450 * 0.93)
            assert week.minutes == pytest.approx(week.factor * product.standard_min)
            assert week.factor >= 1 - 1e-9


def test_a_plant_that_says_nothing_of_learning_has_no_weeks(demo: Path) -> None:
    plant = demo / "plant.yaml"
    kept = [line for line in plant.read_text(encoding="utf-8").splitlines() if not line.startswith("learning:")]
    plant.write_text("\n".join(kept) + "\n", encoding="utf-8")
    assert all(product.newcomer == () for product in results(demo).products)


def test_what_a_shift_gives_is_held_by_people_or_machines(demo: Path) -> None:
    """Of each product, the lesser of both; at 88 % with 7 % off standard two people give less than their minutes."""
    linked = check_plant(demo).linked
    assert linked is not None
    model = linked.model
    for product in results(demo).products:
        for one in product.stations:
            station = model.stations[one.station]
            people = station.people or station.count
            if one.labour_min:
                expected = people * 450 * 0.93 * 0.88 / one.labour_min
                assert one.capacity.by_labour == pytest.approx(expected)
            assert one.capacity.pieces in (one.capacity.by_labour, one.capacity.by_machine)


def doubled(study: Path) -> None:
    """Doubles the readings of a study."""
    lines = []
    for line in study.read_text(encoding="utf-8").splitlines():
        cells = line.split(",")
        if not line.startswith("#") and len(cells) > 3 and cells[2].replace(".", "").isdigit():
            cells[2] = str(2 * float(cells[2]))
        lines.append(",".join(cells))
    study.write_text("\n".join(lines) + "\n", encoding="utf-8")


def changed_by(study: str, demo: Path) -> tuple[set[str], set[str], Results]:
    """Operations and products whose time changes when the readings of a study are doubled, and the numbers before."""
    before = results(demo)
    doubled(demo / "studies" / f"{study}.csv")
    after = results(demo)
    operations = {
        key[0] for key, one in before.operations.items() if after.operations[key].labour_min != one.labour_min
    }
    products = {
        one.product
        for one, other in zip(before.products, after.products, strict=True)
        if one.standard_min != other.standard_min
    }
    return operations, products, before


@pytest.mark.parametrize("study", ["pack-bar-bag", "sew-handle-end"])
def test_one_study_changes_only_what_depends_on_it(study: str, demo: Path) -> None:
    """Its operation, the steps timed by an element derived from it, and the products that have them; nothing else."""
    operations, products, before = changed_by(study, demo)
    elements = {
        f"element:{name}"
        for name, data in before.standard_data.items()
        if any(one.study == study for one in data.steps)
    }
    expected = {study} | {
        key[0]
        for key, time in before.operations.items()
        if any(part.source in elements for step in time.steps for part in step.parts)
    }
    assert operations == expected
    assert bool(elements) == (len(expected) > 1)
    assert products == {one.product for one in before.products for line in one.lines if line.operation in expected}


def test_sub_assembly_counts_with_its_quantity(demo: Path) -> None:
    """The pouch takes two straps: an operation of the strap costs it twice what it costs the strap.

    What is done once a batch is spread over twice the straps.
    """
    found = results(demo)
    strap = next(one for one in found.products if one.product == "strap")
    pouch = next(one for one in found.products if one.product == "instrument-pouch")
    own = {line.operation: line for line in pouch.lines}
    for line in strap.lines:
        assert own[line.operation].quantity == 2 * line.quantity
        once, twice = (
            found.operations[line.operation, one.product, one.variant or ""].labour_min for one in (strap, pouch)
        )
        assert own[line.operation].own_min == pytest.approx(2 * twice * float(line.quantity), abs=1e-12)
        batchwise = any(
            step.share.denominator >= found.batch for step in found.operations[line.operation, "", ""].steps
        )
        assert twice < once if batchwise else twice == pytest.approx(once, abs=1e-12)


def test_readings_of_another_size_are_carried_over(demo: Path) -> None:
    """The manual part is kept, the machine's scaled; all of it counts as estimated."""
    found = results(demo).operations
    studied, other = found["hem-pocket", "tool-roll", "M"], found["hem-pocket", "tool-roll", "L"]
    one, two = studied.step("sew"), other.step("sew")
    assert one is not None
    assert two is not None
    assert (one.source, one.hand_estimated_s) == ("study", 0.0)
    assert two.source == "study + carried over"
    assert two.hand_estimated_s == two.hand_s > one.hand_s
    assert other.estimate_share > 0
    handwork = studied.step("fold"), other.step("fold")
    assert handwork[0] is not None
    assert handwork[1] is not None
    assert handwork[0].parts == handwork[1].parts


def test_two_needles_sew_their_rows_in_one_pass(demo: Path) -> None:
    """274 mm at 3.2 mm: 86 stitches, 275.2 mm once for both rows, at 96 mm/s with the station's own way up and down."""
    checked = check_plant(demo)
    assert checked.results is not None
    assert checked.linked is not None
    sew = checked.results.operations["topstitch-band", "bar-bag", "S"].step("sew")
    pace = checked.linked.model.stations["two-needle"].pace
    start, finish, up, down = (
        float(one.value) for one in (pace.start, pace.finish, pace.acceleration, pace.braking) if one is not None
    )
    assert sew is not None
    level_mm = 86 * 3.2 - 96**2 / (2 * up) - 96**2 / (2 * down)
    assert sew.modelled_s == pytest.approx(start + 96 / up + level_mm / 96 + 96 / down + finish, abs=1e-9)


def test_a_strip_laid_at_a_self_paced_machine_is_handwork(demo: Path) -> None:
    """Its readings are the hands' time: never the machine's run, and not counted on top of the typed time."""
    lay = results(demo).operations["tack-pockets", "tool-roll", "M"].step("lay-ties")
    assert lay is not None
    assert (lay.source, lay.run_s) == ("study", 0.0)
    assert 5.5 < lay.hand_s < 7.5
