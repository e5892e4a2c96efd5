"""How often what is not done at each piece comes."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.computing import lots_of, occurrences, pieces_a_bobbin, thread_sewn
from builder.computing.step_bench import bench_of
from builder.geometry import ShapeBook
from builder.model import Frequency, OperationTime, Per
from builder.pipeline import check_plant
from tests.checking.overlay import lay_over
from tests.plants import linked


@pytest.mark.parametrize(
    ("holds", "left", "use", "inside", "pieces"),
    [
        (27000, 1500, 1894, False, 13),
        (27000, 1500, 1894, True, 25500 / 1894),
        (25500, 0, 1500, False, 17),
        (0.3, 0, 0.1, False, 3),
        (27000, 1500, 26000, False, None),
        (27000, 1500, 51000, True, 0.5),
        (1500, 1500, 10, True, None),
    ],
)
def test_pieces_a_bobbin(holds: float, left: float, use: float, inside: bool, pieces: float | None) -> None:
    """Whole ones where no change is allowed inside; a bobbin that holds them exactly does them."""
    found = pieces_a_bobbin(holds, left, use, inside)
    assert found is None if pieces is None else found == pytest.approx(pieces)


def test_changes_in_a_batch_from_a_full_bobbin() -> None:
    """300 pieces at 13 a bobbin: 24 bobbins, the first at hand. 26 of them: 2 bobbins, one change."""
    assert occurrences(300, Fraction(13), from_full=True) == 23
    assert occurrences(26, Fraction(13), from_full=True) == 1
    assert occurrences(0, Fraction(13), from_full=True) == 0
    assert occurrences(301, Fraction(25)) == 13


@pytest.mark.parametrize(("pieces", "every"), [(-1, 5), (5, 0), (5, -1)])
def test_impossible_batches_are_refused(pieces: int, every: int) -> None:
    """Fewer than none, or something that comes without end."""
    with pytest.raises(ValueError, match="a batch has"):
        occurrences(pieces, Fraction(every))


@given(st.integers(0, 10**6), st.fractions(Fraction(1, 50), 5000), st.booleans())
def test_the_steady_rate_and_whole_occurrences_agree_within_one(pieces: int, every: Fraction, full: bool) -> None:
    """However large the batch."""
    assert abs(occurrences(pieces, every, full) - pieces / every) <= 1


@given(st.integers(1, 10**4), st.integers(1, 9))
def test_once_in_n_is_one_nth_of_a_piece(n: int, count: int) -> None:
    """Whatever the lot is called; so a time t adds exactly t·count/N."""
    for per in ("bundle", "batch", "bobbin", "cone", "needle", "sheet"):
        lot: Per = per
        assert Frequency(Fraction(count), lot, 1, per).share({lot: Fraction(n)}) == Fraction(count, n)
    assert Frequency(Fraction(count), "pieces", n, "").share({}) == Fraction(count, n)


PLANT = """
materials/all.yaml:
  materials: {cloth: {thickness: 0.5 mm}, thread-70: {cone: 3000 m}}
stations/all.yaml:
  stations: {lockstitch: {bobbins: {thread-70: {holds: 10 m, left: 1 m}}, needle hours: 8 h, tail: 100 mm}}
operations/sew-hem.yaml:
  pieces a sheet: 22
  steps: [STEPS]
"""
HEM = "{step: hem, sew: hem-seam, do: Sew it.}"


def lots(folder: Path, steps: str, more: str = "", drop: str = "") -> dict[Per, Fraction]:
    """Lots of the small plant's hem, with steps of its own."""
    example = (PLANT.replace("STEPS", f"{steps}, {HEM}") + more).replace(drop or "\0", "")
    found = linked(example, folder)
    book = ShapeBook(found.model.parts, found.model.states, found.dimensions.definitions)
    bench = bench_of(found.model, book, "sew-hem", found.dimensions.values)
    assert bench is not None
    sewn = tuple(thread_sewn(found.model, book, "sew-hem", found.dimensions.values))
    return lots_of(bench, Fraction(100), sewn)


STEP = "{{step: change, do: Change it., time: 20 s, per: {}}}"
# 300 mm in 100 stitches of 3 mm through two layers of 0.5 mm, two tacks of 2 x 3 stitches of 3 mm, 100 mm of end.
THREAD_MM = (300 + 36) * (1 + 1.0 / 3) + 100


def test_a_bobbin_by_what_a_piece_takes(tmp_path: Path) -> None:
    """9 m of it at 548 mm a piece: 16 pieces."""
    assert lots(tmp_path, STEP.format("bobbin"))["bobbin"] == 9000 // THREAD_MM == 16


def test_a_cone_by_what_the_needle_takes(tmp_path: Path) -> None:
    """The bobbin is wound elsewhere."""
    assert lots(tmp_path, STEP.format("cone"))["cone"] == pytest.approx(3_000_000 / THREAD_MM)


def test_a_needle_by_the_runs_of_the_other_steps(tmp_path: Path) -> None:
    """8 h of them; that the needle's own step were asked would be a ring."""
    found = lots(tmp_path, f"{STEP.format('needle')}, {{step: twice, sew: hem-seam, do: Again., per: 2 pieces}}")
    plain = lots(tmp_path / "plain", STEP.format("needle"))
    assert plain["needle"] == pytest.approx(1.5 * found["needle"])
    assert 8 * 3600 / plain["needle"] == pytest.approx(0.8 + 1.0, abs=8)


def test_sheets_bundles_and_batches_are_typed(tmp_path: Path) -> None:
    """Nothing is asked of the geometry."""
    found = lots(tmp_path, STEP.format("sheet"))
    assert found == {"sheet": 22, "bundle": 20, "batch": 100}


@pytest.mark.parametrize(
    ("per", "drop"),
    [
        ("bobbin", "bobbins: {thread-70: {holds: 10 m, left: 1 m}}, "),
        ("bobbin", "cloth: {thickness: 0.5 mm}, "),
        ("cone", ", thread-70: {cone: 3000 m}"),
        ("cone", "cloth: {thickness: 0.5 mm}, "),
        ("needle", "needle hours: 8 h, "),
        ("sheet", "  pieces a sheet: 22\n"),
    ],
)
def test_without_its_fact_a_lot_is_not_guessed(per: str, drop: str, tmp_path: Path) -> None:
    """It is left out."""
    whole: str = per
    assert whole in lots(tmp_path / "with", STEP.format(per))
    assert whole not in lots(tmp_path / "without", STEP.format(per), drop=drop)


def test_a_sample_counts_before_geometry(tmp_path: Path) -> None:
    """Without any thickness: 336 mm of seam and tacks at 1.5, and the ends."""
    sample = "  thread sample: {needle: 1.2, bobbin: 1.5}\n"
    found = lots(tmp_path, STEP.format("bobbin"), sample, "cloth: {thickness: 0.5 mm}, ")
    assert found["bobbin"] == 9000 // (336 * 1.5 + 100)


def hem_time(folder: Path, example: str, product: str) -> OperationTime:
    """The time of the small plant's hem for a product."""
    results = check_plant(lay_over(example, folder)).results
    assert results is not None
    return results.operations["sew-hem", product, ""]


BATCHES = """
operations/sew-hem.yaml:
  steps: [{step: read, do: Read the ticket., time: 60 s, per: batch}, {step: hem, sew: hem-seam, do: Sew it.}]
"""


def test_a_batch_is_the_products_own_where_it_says_one(tmp_path: Path) -> None:
    """Else the plant's; and 60 s once a batch are 60 s over it, beside 10 s of hand work each time."""
    plain = hem_time(tmp_path / "a", BATCHES, "pouch")
    large = hem_time(tmp_path / "b", f"{BATCHES}\nproducts/pouch.yaml: {{batch: 400}}\n", "pouch")
    assert plain.outside_s == pytest.approx(10 + 60 / 100)
    assert large.outside_s == pytest.approx(10 + 60 / 400)
    assert (
        hem_time(tmp_path / "c", f"{BATCHES}\nproducts/pouch.yaml: {{batch: 400}}\n", "").outside_s == plain.outside_s
    )


def test_two_runs_a_product_share_one_batch(tmp_path: Path) -> None:
    """Once a batch stays once, however many runs a piece of the product takes."""
    route = "products/pouch.yaml: {route: [cut-panel, {operation: sew-hem, quantity: 2}, press-snap]}"
    twice = hem_time(tmp_path / "plant", f"{BATCHES}\n{route}\n", "pouch")
    assert twice.outside_s == pytest.approx(10 + 60 / 200)


def test_times_are_kept_apart_by_batch_only_where_a_step_asks(tmp_path: Path) -> None:
    """One computed time serves all products else."""
    results = check_plant(lay_over("products/pouch.yaml: {batch: 400}", tmp_path / "plant")).results
    assert results is not None
    assert results.operations["sew-hem", "pouch", ""] is results.operations["sew-hem", "", ""]
