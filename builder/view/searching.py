"""What can be found by the search of a language: its pages, and those of the plant's own language that it lacks."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace

from builder.model import say
from builder.view.all_views import PlantViews
from builder.view.pages import ProductPage, RulesPage, StationPage
from builder.view.search_entry import SearchEntry, SearchField, SearchText
from builder.view.sheet import Measure, SheetView, StepView
from builder.view.study_page import StudyPage

_EMPHASIS = re.compile(r"\*+")


def search_entries(views: PlantViews) -> tuple[SearchEntry, ...]:
    """Every page of a language with all its texts. Say it while the language is spoken."""
    return (
        *map(_product, views.products),
        *map(_operation, views.sheets),
        *map(_station, views.stations),
        *map(_study, views.studies),
        *(_rules(views.rules) if views.rules is not None else ()),
    )


def entries_with_originals(
    own: Iterable[SearchEntry], originals: Iterable[SearchEntry], up: str, code: str
) -> tuple[SearchEntry, ...]:
    """A translation's pages, which are found by their original titles and steps too, and the pages it lacks.

    up   : the way from the translation's folder to the original's, `../`
    code : the original's language
    """
    entries = {entry.path: entry for entry in own}
    for original in originals:
        if original.path in entries:
            entries[original.path] = _with_original(entries[original.path], original)
        else:
            entries[up + original.path] = replace(original, path=up + original.path, language=code)
    return tuple(entries.values())


def _with_original(entry: SearchEntry, original: SearchEntry) -> SearchEntry:
    """The words a supervisor may know it by; texts that are the same in both languages are there already."""
    known = {text.text for text in entry.texts}
    words = (one for one in original.texts if one.field in ("title", "step", "setting") and one.text not in known)
    return replace(entry, texts=(*entry.texts, *(replace(one, field="other", label="") for one in words)))


def _operation(sheet: SheetView) -> SearchEntry:
    return SearchEntry(
        path=f"operations/{sheet.stem}.html",
        kind=say("Operation"),
        title=sheet.title,
        code=sheet.code,
        where=" · ".join((sheet.station_title, *sheet.products)),
        texts=_full(_operation_texts(sheet)),
    )


def _operation_texts(sheet: SheetView) -> Iterator[SearchText]:
    yield SearchText("title", sheet.title)
    yield SearchText("code", sheet.code)
    sizes, colours = (row.fingerprint for row in sheet.sizes), (row.fingerprint for row in sheet.colours)
    for tag in (sheet.tag, *sizes, *colours):
        yield from _tag(tag)
    yield SearchText("name", sheet.operation.replace("-", " "))
    yield SearchText("where", sheet.station_title)
    yield from (SearchText("where", product) for product in sheet.products)
    for step in sheet.steps:
        yield from _step(step)
    label = say("Settings")
    for setting in sheet.settings:
        yield SearchText("setting", _value(setting.name, setting.value, setting.other), label, "settings")
        yield SearchText("other", setting.set_at, label, "settings")
    for row in sheet.colours:
        yield from (SearchText("setting", f"{row.colour}: {value}", say("Colours"), "colours") for value in row.values)
    yield from _cautions((one.text for one in sheet.cautions), (one.text for one in sheet.protection))
    yield from (_in(say("Cautions and protection"), "caution", text, "cautions") for text in sheet.notices)
    yield from (_check(measure, say("Measure"), "measures") for measure in sheet.measures)
    label = say("If something is wrong")
    for fault in sheet.faults:
        yield SearchText("fault", fault.sign, label, "faults")
        yield from (SearchText("other", text, label, "faults") for text in (fault.cause, fault.remedy, fault.stop))
    yield from (_in(say("In and next"), "other", text, "flow") for text in (*sheet.incoming, *sheet.outgoing))
    for template in sheet.templates:
        yield SearchText("other", template.said, say("Templates and card gauges"), "templates")


def _step(step: StepView) -> Iterator[SearchText]:
    label, anchor = say("Step {number}", number=step.number), f"step-{step.name}"
    fields: tuple[tuple[SearchField, str], ...] = (("step", step.said), ("key", step.key), ("why", step.why))
    for field, text in fields:
        yield _in(label, field, text, anchor)
    yield from (_in(label, "caution", one.text, anchor) for one in step.cautions)
    yield from (_check(check, label, anchor) for check in step.checks)
    for photo in step.photos:
        yield _in(label, "other", photo.caption, anchor)


def _check(measure: Measure, label: str, anchor: str) -> SearchText:
    values = ", ".join(_value("", value, other) for value, other in measure.lines())
    return SearchText("check", f"{measure.what}: {values}, {measure.gauge}", label, anchor)


def _product(page: ProductPage) -> SearchEntry:
    materials = (title for variant in page.variants for row in variant.materials for title in row.titles)
    texts = (
        SearchText("title", page.title),
        SearchText("name", page.name.replace("-", " ")),
        SearchText("step", page.note),
        *(SearchText("setting", title, say("Material")) for title in materials if title != say("same")),
        *(SearchText("other", colour) for colour in page.colours),
    )
    return SearchEntry(page.path, say("Product"), page.title, where=page.note, texts=_full(texts))


def _station(page: StationPage) -> SearchEntry:
    return SearchEntry(page.path, say("Station"), page.title, where=page.kind, texts=_full(_station_texts(page)))


def _station_texts(page: StationPage) -> Iterator[SearchText]:
    yield SearchText("title", page.title)
    yield SearchText("name", page.name.replace("-", " "))
    yield SearchText("where", page.kind)
    for name, value in page.facts:
        yield SearchText("other", f"{name}: {value}", say("The station"), "facts")
    for name, limits, set_at, verify in page.settings:
        yield SearchText("setting", f"{name}: {limits}", say("Settings"), "settings")
        yield from (SearchText("other", text, say("Settings"), "settings") for text in (set_at, verify))
    yield from _cautions((one.text for one in page.cautions), (one.text for one in page.protection))
    lists = ((say("Before the shift"), page.start), (say("At the end of the shift"), page.close_down))
    for label, lines in lists:
        yield from (SearchText("step", f"{what}: {how}", label) for what, how in lines)
    yield from (SearchText("other", title, say("Cards")) for title in page.cards)


def _study(page: StudyPage) -> SearchEntry:
    texts = (
        SearchText("title", page.title),
        SearchText("name", page.name.replace("-", " ")),
        *(SearchText("other", f"{name}: {value}", say("Taken under"), "conditions") for name, value in page.head),
        *(_in(row.step, "other", remark, f"step-{row.step}") for row in page.rows for remark in row.remarks),
    )
    where = dict(page.head).get("date", "")
    return SearchEntry(page.path, say("Study"), page.title, where=where, texts=_full(texts))


def _rules(page: RulesPage) -> Iterator[SearchEntry]:
    """Each rule is found for itself; its name is a code engineers type."""
    for group, rows in page.groups:
        for row in rows:
            plain = row.slug.replace("-", " ")
            texts = (
                SearchText("code", plain),
                *(SearchText("other", text.replace("`", "")) for text in (row.why, row.remedy)),
            )
            yield SearchEntry(f"rules.html#{row.slug}", say("Rule"), row.slug, where=group, texts=_full(texts))


def _tag(tag: str) -> Iterator[SearchText]:
    """A fingerprint's code as printed, and as a scanner or a hurried hand types it."""
    yield SearchText("tag", tag)
    yield SearchText("tag", tag.replace(" ", ""))


def _cautions(*groups: Iterable[str]) -> Iterator[SearchText]:
    for group in groups:
        yield from (_in(say("Cautions and protection"), "caution", text, "cautions") for text in group)


def _in(label: str, field: SearchField, text: str, anchor: str) -> SearchText:
    return SearchText(field, _EMPHASIS.sub("", text), label, anchor)


def _value(name: str, value: str, other: str) -> str:
    text = f"{name}: {value}" if name else value
    return f"{text} ({other})" if other else text


def _full(texts: Iterable[SearchText]) -> tuple[SearchText, ...]:
    """Texts that say something, each once at its place."""
    return tuple(dict.fromkeys(one for one in texts if one.text.strip()))
