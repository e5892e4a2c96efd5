"""What is said of a section: its labels, its text alternative, its controlled facts."""

from __future__ import annotations

from dataclasses import dataclass

from builder.geometry import Plies, SeamClass, Section, seam_class
from builder.model import (
    STITCHES,
    Tolerance,
    phrase,
    plain,
    say,
)
from builder.view.controls import measures_of
from builder.view.details import DetailAsk
from builder.view.figures import exact
from builder.view.marking import shown

CLASS_WORDS = {
    "superimposed": phrase("superimposed seam"),
    "lapped": phrase("lapped seam"),
    "bound": phrase("bound seam"),
    "flat": phrase("flat seam, edges butted"),
    "decorative": phrase("stitched through"),
    "edge finished": phrase("finished edge"),
    "edge item": phrase("strip along an edge"),
    "strip alone": phrase("strip by itself"),
}
"""The class of a seam as a machinist says it, by the word of its `SeamClass`."""


@dataclass(frozen=True, slots=True)
class SectionWords:
    """What a section is told besides its geometry.

    labels     : words for a part or tape; `kinds` how its goods are drawn; `sided` has it a wrong side to look for
    stitches   : stitch type by (part, feature); `checks` tolerances worked to in this step
    units      : the plant's first unit
    """

    labels: dict[str, str] = shown()
    kinds: dict[str, str] = shown()
    sided: frozenset[str] = shown()
    thickness: dict[str, float | None] = shown()
    stitches: dict[tuple[str, str], str] = shown()
    checks: tuple[Tolerance, ...] = shown(default=())
    units: str = shown(default="mm")


def section_alt(section: Section, plies: Plies, words: SectionWords, kind: SeamClass | None) -> str:
    """The section in words: what kind of seam, the plies from the top, the needle."""
    sentences = [say("Section of {seam}, thickness enlarged.", seam=plain(section.feature))]
    if kind is not None:
        letters = f", {kind.letters}" if kind.letters else ""
        words_ = say(CLASS_WORDS[kind.word])
        sentences.append(
            say(
                "{seam} (ISO 4916 class {number}).",
                seam=words_[0].upper() + words_[1:],
                number=f"{kind.number}{letters}",
            )
        )
    layers = []
    for one in reversed(plies.plies):
        name = words.labels.get(one.part, plain(one.part))
        if one.part in words.sided and one.right_up:
            name = say("{part}, right side up", part=name)
        elif one.part in words.sided:
            name = say("{part}, wrong side up", part=name)
        layers.append(name)
    sentences.append(say("From the top: {layers}.", layers="; ".join(layers)))
    held = len(section.seam.plies)
    stitch = STITCHES.get(words.stitches.get((section.part, section.feature), ""))
    if stitch is None or stitch.needles == 1:
        sentences.append(say("The needle comes from above; layers it goes through: {count}.", count=held))
    else:
        come = say(
            "{needles} needles come from above; layers they go through: {count}.", needles=stitch.needles, count=held
        )
        sentences.append(come)
    return " ".join(sentences)


def section_words(ask: DetailAsk, section: Section) -> SectionWords:
    """Labels, looks and thicknesses of all that lies in the section."""
    model = ask.studio.model
    labels: dict[str, str] = {}
    kinds: dict[str, str] = {}
    thickness: dict[str, float | None] = {}
    sided: set[str] = set()
    seen: dict[str, dict[str, None]] = {}
    for part in dict.fromkeys(one.part for one in section.goods.plies):
        found = model.material_under(part)
        name, material = found if found is not None else ("", None)
        short = material.title.partition(",")[0] if material is not None else ""
        labels[part] = (short[:1].lower() + short[1:]) if part in model.materials else _label(plain(part), short)
        thickness[part] = float(material.thickness.value) if material is not None and material.thickness else None
        kind = _kind(material.form, material.structure or "") if material is not None else "cloth"
        same = seen.setdefault(kind, {})
        same.setdefault(name)
        number = list(same).index(name) + 1
        kinds[part] = f"{kind} {min(number, 3)}" if kind == "cloth" and number > 1 else kind
        if kind in ("cloth", "mesh"):
            sided.add(part)
    measures = measures_of(ask.work.operation, ask.studio, {})
    checks = tuple(measures[name][2] for name in ask.step.check if name in measures)
    stitches = {key: stitch for key, (stitch, _) in ask.studio.stitches.items()}
    return SectionWords(labels, kinds, frozenset(sided), thickness, stitches, checks, model.plant.units)


def _label(part: str, material: str) -> str:
    return f"{part}: {material[:1].lower()}{material[1:]}" if material else part


def _kind(form: str, structure: str) -> str:
    """How goods are drawn."""
    if form in ("webbing", "tape", "zip", "foam"):
        return form
    return {"mesh": "mesh", "foam": "foam", "film": "board", "nonwoven": "felt"}.get(structure, "cloth")


def section_facts(section: Section, seen: Plies, ask: DetailAsk) -> tuple[tuple[str, str], ...]:
    """The controlled facts: what kind of seam, which plies lie how, exact dimensions of what is sewn there."""
    facts: list[tuple[str, str]] = [("section of", f"{section.part}/{section.feature}")]
    kind = seam_class(section)
    if kind is not None:
        facts.append(("class", f"{kind.number} {kind.word}"))
    for number, one in enumerate(seen.plies, start=1):
        side = "right side up" if one.right_up else "wrong side up"
        held = "held" if one.name in section.seam.plies else "not held"
        facts.append((f"ply {number}", f"{one.part}, {side}, {one.low.kind} to {one.high.kind}, {held}"))
    features = {(one.part, one.feature) for one in seen.pierced}
    names = {f"{part}/{feature}.inset" for part, feature in features}
    names |= {f"{part}/{feature}.{side}" for part, feature in features for side in ("width", "height", "length")}
    known = ask.studio.values
    facts += [(name, exact(known[name])) for name in sorted(names - ask.studio.varying) if name in known]
    return tuple(facts)
