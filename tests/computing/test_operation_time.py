"""Labour and machine minutes apart."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.computing import AllowanceLine, StationAllowance, labour, operation_time, rest_in_spell, rested_inside
from builder.model import KINDS, Station, StepTime


def station(**typed: object) -> Station:
    """A station as typed."""
    base = {"title": "A", "kind": "laser", "count": "1", "distance": "0.6 m", "attendance": "constant"}
    return Station.model_validate({**base, **typed})


def step(name: str, hand: float, run: float = 0.0, share: Fraction = Fraction(1), during: str = "") -> StepTime:
    """A step without estimates."""
    return StepTime(name, hand, run, 0.0, 0.0, share, "study", 1, during)


NONE = StationAllowance()


def allowed(
    personal: str = "0 %", fatigue: str = "0 %", delays: str = "0 %", policy: Fraction = Fraction(0)
) -> StationAllowance:
    """Allowances of a station, shares of basic time; fatigue is rest."""
    named = {"personal": personal, "fatigue": fatigue, "delays": delays}
    shares = {words: Fraction(text.removesuffix(" %")) / 100 for words, text in named.items()}
    lines = (AllowanceLine(words, share, "plant’s own", words == "fatigue") for words, share in shares.items())
    return StationAllowance(tuple(lines), policy)


seconds = st.floats(0, 500)


@given(seconds, seconds, seconds, st.floats(0, 1))
def test_a_machine_paced_minute_is_labour_up_to_its_share(
    outside: float, inside: float, run: float, share: float
) -> None:
    """Labour is never above outside + share of the run, unless the inside work itself is more."""
    found = labour(outside, [(inside, run)], share)
    assert found <= outside + max(inside, share * run) * (1 + 1e-12)
    assert found >= outside + inside - 1e-9


@given(seconds, seconds, st.floats(0, 1))
def test_inside_work_that_fits_adds_no_labour(outside: float, run: float, share: float) -> None:
    """What the operator does inside the attended share is already counted."""
    assert labour(outside, [(share * run, run)], share) == labour(outside, [(0.0, run)], share)


def test_attendance_changes_labour_and_not_machine() -> None:
    """Outside 18 s, inside 24 s, run 120 s: labour 1.00 min in sight at 35 %, machine 2.30 either way."""
    steps = [step("load", 18), step("cut", 0, 120), step("sort", 24, during="cut")]
    kind = KINDS["laser"]
    in_sight = operation_time("a", steps, station(attendance="in sight", share="35 %"), kind, NONE)
    constant = operation_time("a", steps, station(), kind, NONE)
    assert in_sight.labour_min == pytest.approx(1.0)
    assert constant.labour_min == pytest.approx(2.3)
    assert in_sight.machine_min == constant.machine_min == pytest.approx(2.3)


def test_machine_that_does_not_wait_is_free_meanwhile() -> None:
    """Outside work holds the machine only where it waits."""
    steps = [step("load", 18), step("cut", 0, 120)]
    held = operation_time("a", steps, station(**{"machine waits": "no"}), KINDS["laser"], NONE)
    assert held.machine_min == pytest.approx(2.0)


def test_bench_holds_no_machine() -> None:
    """Handwork at a bench has labour only."""
    time = operation_time("a", [step("look", 30)], station(kind="bench"), KINDS["bench"], allowed("20 %"))
    assert time.labour_min == pytest.approx(0.6)
    assert time.machine_min == 0


def test_once_in_twenty_adds_a_twentieth() -> None:
    """A frequency of once per N adds exactly t/N."""
    without = operation_time("a", [step("look", 30)], station(kind="bench"), KINDS["bench"], NONE)
    with_it = operation_time(
        "a", [step("look", 30), step("band", 40, share=Fraction(1, 20))], station(kind="bench"), KINDS["bench"], NONE
    )
    assert with_it.labour_min - without.labour_min == pytest.approx(40 / 20 / 60, abs=1e-12)


def test_share_of_estimates() -> None:
    """Half of the labour is estimated."""
    estimated = StepTime("guess", 10, 0, 10, 0, Fraction(1), "estimate")
    time = operation_time("a", [step("look", 10), estimated], station(kind="bench"), KINDS["bench"], NONE)
    assert time.estimate_share == pytest.approx(0.5)


CUT = [step("load", 18), step("cut", 0, 180), step("sort", 24, during="cut")]


def test_the_allowances_of_an_operation_lead_from_basic_to_standard_time() -> None:
    """labour = basic × (1 + sum of the shares), policy and what is rested inside among them."""
    rules = allowed("5 %", "10 %", "3 %", Fraction(2, 100))
    time = operation_time("a", CUT, station(**{"rest inside": "yes"}), KINDS["laser"], rules)
    basic_min = (18 + 180) / 60
    words = [one for one, _ in time.allowance]
    assert words == ["personal", "fatigue", "delays", "rested inside machine time", "policy"]
    assert time.labour_min == pytest.approx(basic_min * (1 + sum(share for _, share in time.allowance)), abs=1e-12)


def test_rest_inside_takes_fatigue_away_and_nothing_else() -> None:
    """A spell of 156 s covers the 19.8 s of rest that 198 s of work earn; personal needs and delays stay."""
    rules = allowed("5 %", "10 %", "3 %")
    time = operation_time("a", CUT, station(**{"rest inside": "yes"}), KINDS["laser"], rules)
    assert time.labour_min == pytest.approx(198 * 1.08 / 60, abs=1e-12)
    assert time.machine_min == pytest.approx((18 * 1.08 + 180) / 60, abs=1e-12)


def test_rest_inside_is_counted_by_the_spell_and_not_by_the_piece() -> None:
    """A run of 600 s once every 20 pieces is one long rest; 30 s a piece would be none."""
    rules, rests = allowed(fatigue="10 %"), station(**{"rest inside": "yes"})
    seldom = [step("load", 30), step("cut", 0, 600, share=Fraction(1, 20))]
    always = [step("load", 30), step("cut", 0, 30)]
    assert operation_time("a", seldom, rests, KINDS["laser"], rules).labour_min == pytest.approx(1.0, abs=1e-12)
    assert operation_time("a", always, rests, KINDS["laser"], rules).labour_min == pytest.approx(1.1, abs=1e-12)


def test_no_rest_inside_where_the_operator_paces_the_machine() -> None:
    """Who guides the seam does not rest while it is sewn, whatever the flag says."""
    rules = allowed(fatigue="10 %")
    sewing = station(kind="lockstitch", **{"rest inside": "yes"})
    time = operation_time("a", [step("sew", 0, 300)], sewing, KINDS["lockstitch"], rules)
    assert time.labour_min == pytest.approx(5.5, abs=1e-12)


def test_only_what_the_operator_owes_can_be_rested_in() -> None:
    """In sight at 20 %, 36 of 180 s are owed: a spell of 36 s counts 1.5 × 6 s, less than the 5.4 s earned."""
    rules = allowed(fatigue="10 %")
    rests = station(attendance="in sight", share="20 %", **{"rest inside": "yes"})
    steps = [step("load", 120), step("cut", 0, 180)]
    time = operation_time("a", steps, rests, KINDS["laser"], rules)
    assert time.labour_min == pytest.approx((156 + 15.6 - 9) / 60, abs=1e-12)


def test_policy_pays_and_holds_no_machine() -> None:
    """Policy raises labour and leaves the machine as it was."""
    plain = operation_time("a", CUT, station(), KINDS["laser"], allowed("5 %"))
    raised = operation_time("a", CUT, station(), KINDS["laser"], allowed("5 %", policy=Fraction(10, 100)))
    assert raised.labour_min == pytest.approx(1.1 * plain.labour_min, abs=1e-12)
    assert raised.machine_min == plain.machine_min


share = st.integers(0, 60).map("{} %".format)
works = st.lists(st.tuples(st.floats(0, 400), st.floats(0, 900), st.floats(0, 400)), min_size=1, max_size=4)


@given(works, share, share, share, st.sampled_from(["constant", "in sight", "free"]), st.integers(1, 20))
def test_rest_inside_never_adds_labour_and_never_goes_under_basic(
    work: list[tuple[float, float, float]], personal: str, fatigue: str, delays: str, attendance: str, pieces: int
) -> None:
    """basic × (1 + personal + delays) ≤ labour with rest inside ≤ labour without; the same for the machine."""
    steps = []
    for number, (outside, run, inside) in enumerate(work):
        steps += [
            step(f"load-{number}", outside),
            step(f"run-{number}", 0, run, share=Fraction(1, pieces)),
            step(f"sort-{number}", inside, during=f"run-{number}"),
        ]
    rules = allowed(personal, fatigue, delays)
    typed = {"attendance": attendance} | ({"share": "40 %"} if attendance == "in sight" else {})
    plain = operation_time("a", steps, station(**typed), KINDS["laser"], rules)
    rests = operation_time("a", steps, station(**typed, **{"rest inside": "yes"}), KINDS["laser"], rules)
    basic = operation_time("a", steps, station(**typed), KINDS["laser"], NONE)
    least = basic.labour_min * float(1 + rules.lines[0].share + rules.lines[2].share)
    assert least - 1e-9 <= rests.labour_min <= plain.labour_min + 1e-9
    assert basic.machine_min - 1e-9 <= rests.machine_min <= plain.machine_min + 1e-9


@given(st.floats(0, 600), st.floats(0, 600))
def test_a_longer_spell_is_never_less_rest_and_rest_never_more_than_the_spell(one: float, other: float) -> None:
    """The rule of spells rises, and jumps nowhere down."""
    short, long = sorted((one, other))
    assert 0 <= rest_in_spell(short) <= rest_in_spell(long) <= long


def test_the_rule_of_spells_joins_at_its_ends() -> None:
    """30 s count nothing, 90 s count whole, and just beside them nearly the same."""
    assert rest_in_spell(30) == 0
    assert rest_in_spell(90) == 90
    assert rest_in_spell(90.000001) == pytest.approx(90, abs=1e-5)


def test_a_negative_spell_is_refused() -> None:
    """It would be work."""
    with pytest.raises(ValueError, match="negative"):
        rest_in_spell(-1)


def test_rest_is_capped_by_what_the_work_earned() -> None:
    """Ten minutes beside a machine rest no more than 10 % of 100 s."""
    assert rested_inside(100, 0.1, [(600, 1)]) == pytest.approx(10)
    assert rested_inside(1000, 0.1, [(60, 0.5)]) == pytest.approx(0.5 * 45)
