"""Makes the demo's time studies: seeded noise around basic times that suit the demo's machines.

Not a measurement: Thornquay Bags is fictional and so are its readings. Run it after a change:
`python -m tests.demo.make_studies instructions/studies`. The same seed gives the same bytes.
"""

from __future__ import annotations

import random
import sys
from collections.abc import Iterator
from pathlib import Path

from tests.demo.hanger_studies import PLANS as HANGER_PLANS
from tests.demo.roll_studies import PLANS as ROLL_PLANS
from tests.demo.study_plan import Element, Event, Plan

HEADER = "step,cycle,reading,rating,note"
PACES = (90, 95, 95, 100, 100, 100, 105, 105, 110, 115)
"""Ratings an observer gives, in fives; the frequent ones stand more than once."""


PLANS = (
    *HANGER_PLANS,
    *ROLL_PLANS,
    Plan(
        "hem-pocket",
        seed=1410,
        cycles=22,
        head={
            "operation": "hem-pocket",
            "station": "lockstitch",
            "date": "2026-10-14",
            "size": "M",
            "conditions": "machine L-2, observer E2, operator 7 years on lockstitch, second hour of the shift",
        },
        elements=(
            Element("untie", 13.6, 0.06, cycles=(1, 21)),
            Element("lay", 2.9, 0.09),
            Element("fold", 6.9, 0.07),
            Element("sew", 7.4, 0.05),
            Element("trim", 3.9, 0.08),
            Element("look", 2.3, 0.10),
            Element("aside", 1.6, 0.11),
        ),
        events=(
            Event("fold", 9, 2.1, "notch hard to see, wrong light"),
            Event("sew", 14, 19.3, "out: bobbin ran empty, resewn"),
        ),
    ),
    Plan(
        "sew-handle-end",
        seed=1422,
        cycles=20,
        head={
            "operation": "sew-handle-end",
            "station": "lockstitch-heavy",
            "date": "2026-10-15",
            "size": "M",
            "conditions": "machine H-1, observer E2, operator 4 years on heavy machines, third hour of the shift",
        },
        elements=(
            Element("bobbin", 17.2, 0.05, cycles=(12,)),
            Element("lay", 3.0, 0.09),
            Element("fold-end", 2.7, 0.10),
            Element("place-end", 3.9, 0.08),
            Element("box", 11.6, 0.04),
            Element("look", 4.1, 0.09),
            Element("aside", 1.6, 0.11),
        ),
        events=(
            Event("place-end", 5, 1.6, "webbing slid, laid again"),
            Event("box", 16, 14.8, "out: thread broke at the third corner, rethreaded"),
        ),
    ),
    Plan(
        "tack-pockets",
        seed=1437,
        cycles=16,
        head={
            "operation": "tack-pockets",
            "station": "bartacker",
            "date": "2026-10-15",
            "size": "M",
            "conditions": "machine T-1, observer E3, operator 3 years on bartackers, first hour, new needle",
        },
        elements=(
            Element("lay", 2.9, 0.09),
            Element("tack-mouth", 18.4, 0.03, paced=True),
            Element("lay-ties", 6.3, 0.08),
            Element("tack-ties", 6.1, 0.04, paced=True),
            Element("look", 3.9, 0.09),
            Element("aside", 1.7, 0.10),
        ),
        events=(Event("lay-ties", 11, 4.9, "foreign: second tie missing in the bundle, fetched"),),
    ),
    Plan(
        "cut-base-stiffeners",
        seed=1461,
        cycles=20,
        head={
            "operation": "cut-base-stiffeners",
            "station": "click-press",
            "date": "2026-11-04",
            "size": "S",
            "conditions": "press C-1, observer E3, operator 2 years on presses, first hour after the break",
        },
        elements=(
            Element("die", 72.0, 0.05, cycles=(1,)),
            Element("sheet", 22.5, 0.07, cycles=(1,)),
            Element("place-die", 2.7, 0.08),
            Element("cut", 1.2, 0.015, paced=True),
            Element("take", 2.4, 0.09),
            Element("bag", 18.4, 0.06, cycles=(20,)),
        ),
        events=(
            Event("take", 7, 3.1, "felt hung on one corner, cut free"),
            Event("place-die", 13, 2.0, "board turned"),
        ),
    ),
    Plan(
        "topstitch-band",
        seed=1466,
        cycles=20,
        head={
            "operation": "topstitch-band",
            "station": "two-needle",
            "date": "2026-11-16",
            "size": "S",
            "conditions": "machine N-1, observer E2, operator 5 months on this one, second hour of the shift",
        },
        elements=(
            Element("bobbins", 35.5, 0.05, cycles=(9,)),
            Element("lay", 3.7, 0.08),
            Element("place", 3.3, 0.10),
            Element("sew", 11.3, 0.05),
            Element("trim", 3.9, 0.08),
            Element("look", 3.1, 0.09),
            Element("aside", 2.1, 0.10),
        ),
        events=(
            Event("place", 4, 1.9, "webbing twisted, turned back"),
            Event("sew", 15, 21.4, "out: thread of the left needle broke, rethreaded"),
        ),
    ),
    Plan(
        "tack-bar-loops",
        seed=1470,
        cycles=18,
        head={
            "operation": "tack-bar-loops",
            "station": "bartacker",
            "date": "2026-11-16",
            "size": "S",
            "conditions": "machine T-1, observer E2, operator 3 years on bartackers, fourth hour of the shift",
        },
        elements=(
            Element("lay", 3.6, 0.08),
            Element("place-left", 3.2, 0.10),
            Element("tack-left", 6.1, 0.04, paced=True),
            Element("place-right", 5.1, 0.08),
            Element("tack-right", 6.1, 0.04, paced=True),
            Element("slide", 4.5, 0.09),
            Element("aside", 2.1, 0.10),
        ),
        events=(Event("slide", 12, 2.2, "test strap under the panel, looked for"),),
    ),
    Plan(
        "bind-bar-flap",
        seed=1475,
        cycles=20,
        head={
            "operation": "bind-bar-flap",
            "station": "binder",
            "date": "2026-11-17",
            "size": "S",
            "conditions": "machine B-2, observer E3, operator 6 years on binders, third hour of the shift",
        },
        elements=(
            Element("lay", 3.7, 0.08),
            Element("bind", 13.4, 0.05),
            Element("run-on", 4.4, 0.08),
            Element("bend", 5.4, 0.09),
            Element("aside", 2.1, 0.10),
        ),
        events=(
            Event("bind", 6, 2.4, "slowed, tape joint on the roll"),
            Event("bind", 17, 26.0, "out: tape roll changed"),
        ),
    ),
    Plan(
        "hem-bar-mouth",
        seed=1479,
        cycles=20,
        head={
            "operation": "hem-bar-mouth",
            "station": "lockstitch",
            "date": "2026-11-17",
            "size": "S",
            "conditions": "machine L-3, observer E2, operator 7 years on lockstitch, first hour of the shift",
        },
        elements=(
            Element("lay", 3.8, 0.08),
            Element("fold", 5.6, 0.07),
            Element("sew", 5.8, 0.05),
            Element("trim", 3.9, 0.08),
            Element("look", 3.0, 0.09),
            Element("aside", 2.1, 0.10),
        ),
        events=(Event("fold", 3, 1.7, "flap lay under the panel, pulled out"),),
    ),
    Plan(
        "bind-bar-mesh",
        seed=1484,
        cycles=20,
        head={
            "operation": "bind-bar-mesh",
            "station": "binder",
            "date": "2026-11-05",
            "size": "S",
            "conditions": "machine B-1, observer E3, operator 3 years on binders, second hour of the shift",
        },
        elements=(
            Element("lay", 2.9, 0.09),
            Element("mouth", 7.7, 0.05),
            Element("turn", 1.4, 0.10),
            Element("foot", 7.4, 0.05),
            Element("part", 4.1, 0.08),
            Element("aside", 1.6, 0.11),
        ),
        events=(Event("mouth", 10, 2.2, "mesh stood back in the slot, pushed in again"),),
    ),
    Plan(
        "sew-base-sleeve",
        seed=1489,
        cycles=20,
        head={
            "operation": "sew-base-sleeve",
            "station": "lockstitch",
            "date": "2026-11-19",
            "size": "S",
            "conditions": "machine L-1, observer E3, operator 4 years on lockstitch, fifth hour of the shift",
        },
        elements=(
            Element("lay", 3.7, 0.08),
            Element("place", 4.7, 0.08),
            Element("front", 7.0, 0.05),
            Element("insert", 5.4, 0.10),
            Element("back", 7.5, 0.05),
            Element("trim", 4.0, 0.08),
            Element("feel", 6.4, 0.09),
        ),
        events=(
            Event("insert", 8, 3.3, "stiffener laid askew, drawn out again"),
            Event("back", 14, 17.8, "out: bobbin ran empty, resewn"),
        ),
    ),
    Plan(
        "join-bar-ends",
        seed=1493,
        cycles=22,
        head={
            "operation": "join-bar-ends",
            "station": "overlock-4",
            "date": "2026-11-23",
            "size": "S",
            "conditions": "machine O-2, observer E2, operator 11 years on overlocks, second hour of the shift",
        },
        elements=(
            Element("left-end", 6.5, 0.09),
            Element("sew-left", 19.4, 0.06),
            Element("label", 1.6, 0.10),
            Element("right-end", 6.3, 0.09),
            Element("sew-right", 19.0, 0.06),
            Element("chain", 4.1, 0.08),
            Element("feel", 8.8, 0.09),
        ),
        events=(
            Event("sew-left", 4, 6.5, "fullness before the mouth, last quarter lifted and laid again"),
            Event("sew-right", 16, 31.2, "out: looper thread broke, rethreaded"),
            Event("chain", 19, 2.0, "snips fell down"),
        ),
    ),
    Plan(
        "turn-bar-bag",
        seed=1497,
        cycles=18,
        head={
            "operation": "turn-bar-bag",
            "station": "bench",
            "date": "2026-11-24",
            "size": "S",
            "conditions": "bench 2, observer E3, operator 8 years in the plant, third hour of the shift",
        },
        elements=(
            Element("turn", 8.4, 0.09),
            Element("push", 7.6, 0.09),
            Element("mouth", 5.1, 0.09),
            Element("measure", 6.2, 0.07, cycles=(1,)),
            Element("loops", 2.9, 0.09),
            Element("hand", 7.1, 0.08),
            Element("aside", 1.7, 0.11),
        ),
        events=(Event("hand", 11, 4.4, "open place looked at twice, was a thread"),),
    ),
    Plan(
        "pack-bar-bag",
        seed=1503,
        cycles=16,
        head={
            "operation": "pack-bar-bag",
            "station": "packing",
            "date": "2026-11-24",
            "size": "S",
            "conditions": "packing bench 1, observer E3, operator 1 year in the plant, sixth hour of the shift",
        },
        elements=(
            Element("straps", 11.2, 0.09),
            Element("hang", 12.4, 0.08),
            Element("close", 4.7, 0.09),
            Element("ticket", 5.1, 0.09),
            Element("bag", 10.6, 0.08),
            Element("carton", 47.0, 0.05, cycles=(8, 16)),
        ),
        events=(Event("straps", 5, 6.0, "foreign: one strap with its tapes on the wrong face, changed"),),
    ),
)


def readings(plan: Plan) -> Iterator[str]:
    """The lines of a study, cycle by cycle. A reading is what a clock shows: basic time x 100 / rating, with noise."""
    chance = random.Random(plan.seed)
    events = {(event.step, event.cycle): event for event in plan.events}
    for cycle in range(1, plan.cycles + 1):
        pace = chance.choice(PACES)
        for element in plan.elements:
            if element.cycles and cycle not in element.cycles:
                continue
            rating = 100 if element.paced else max(90, min(115, pace + chance.choice((-5, 0, 0, 0, 5))))
            noise = 1 + element.spread * max(-2.2, min(2.2, chance.gauss(0, 1)))
            event = events.get((element.step, cycle))
            seconds = element.basic * noise * 100 / rating + (event.extra if event else 0)
            yield f"{element.step},{cycle},{seconds:.1f},{rating},{event.note if event else ''}"


def text(plan: Plan) -> str:
    """The whole file of a study."""
    head = [f"# {key}: {value}" for key, value in plan.head.items()]
    rows = [",".join(_cell(cell) for cell in line.split(",", 4)) for line in readings(plan)]
    return "\n".join([*head, HEADER, *rows]) + "\n"


def _cell(words: str) -> str:
    return f'"{words}"' if "," in words else words


def main(folder: Path) -> None:
    """Write all studies to the folder."""
    folder.mkdir(parents=True, exist_ok=True)
    for plan in PLANS:
        (folder / f"{plan.name}.csv").write_text(text(plan), encoding="utf-8", newline="\n")


if __name__ == "__main__":
    main(Path(sys.argv[1]))
