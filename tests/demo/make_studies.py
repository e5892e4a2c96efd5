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
from tests.demo.study_plan import Element, Event, Plan

HEADER = "step,cycle,reading,rating,note"
PACES = (90, 95, 95, 100, 100, 100, 105, 105, 110, 115)
"""Ratings an observer gives, in fives; the frequent ones stand more than once."""


PLANS = (
    *HANGER_PLANS,
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
            "conditions": "machine T-1, observer E3, first hour after the needle change",
        },
        elements=(
            Element("lay", 2.9, 0.09),
            Element("tack-mouth", 18.4, 0.012, paced=True),
            Element("lay-ties", 6.3, 0.08),
            Element("tack-ties", 6.1, 0.015, paced=True),
            Element("look", 3.9, 0.09),
            Element("aside", 1.7, 0.10),
        ),
        events=(Event("lay-ties", 11, 4.9, "foreign: second tie missing in the bundle, fetched"),),
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
