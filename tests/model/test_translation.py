"""Translations of a plant's texts: what they are keyed by, when they count, what is made of them."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import yaml

from builder.model import PlantModel, Translation, translations, used_by
from builder.model.wording import wordings
from builder.pipeline import check_plant, trees_of
from builder.view import language_file, language_table, with_table
from tests.checking.overlay import SMALL_PLANT, lay_over

HEM = "operation/sew-hem/hem/do"


def translated(folder: Path, texts: dict[str, Any], **more: Any) -> Translation:
    """The small plant with a Spanish file."""
    language = {"language": "es", "title": "español", "read by": "T1", **more, "texts": texts}
    plant = lay_over(yaml.safe_dump({"languages/es.yaml": language}, allow_unicode=True), folder / "plant")
    linked = check_plant(plant).linked
    assert linked is not None
    (one,) = translations(linked.model)
    return one


def model_of(plant: Path) -> PlantModel:
    linked = check_plant(plant).linked
    assert linked is not None
    return linked.model


def state(one: Translation, key: str) -> str:
    return next(text.state for text in one.texts if text.wording.key == key)


def everything(folder: Path) -> dict[str, Any]:
    """Every text of the small plant, said as it is with a mark."""
    linked = check_plant(SMALL_PLANT).linked
    assert linked is not None
    return {one.key: {"of": one.text, "is": f"«{one.text}»", "read by": "T1"} for one in wordings(linked.model)}


def test_a_text_counts_while_its_original_is_what_the_plant_says(tmp_path: Path) -> None:
    one = translated(tmp_path, {HEM: {"of": "Sew the hem.", "is": "Cosa el dobladillo."}}, **{"in work": "yes"})
    assert state(one, HEM) == "said"
    assert one.words["Sew the hem."] == "Cosa el dobladillo."


def test_a_changed_original_makes_it_stale(tmp_path: Path) -> None:
    one = translated(tmp_path, {HEM: {"of": "Sew the old hem.", "is": "Cosa."}}, **{"in work": "yes"})
    assert state(one, HEM) == "stale"
    assert "Sew the hem." not in one.words


def test_what_guards_people_counts_once_somebody_read_it(tmp_path: Path) -> None:
    key = "plant/plant/lock out"
    of = "Switch off at the main switch. Wait until everything stands still."
    unread = translated(tmp_path / "a", {key: {"of": of, "is": "Apague."}}, **{"in work": "yes"})
    assert state(unread, key) == "not read"
    read = translated(tmp_path / "b", {key: {"of": of, "is": "Apague.", "read by": "T1"}}, **{"in work": "yes"})
    assert state(read, key) == "said"


def test_a_text_is_said_wherever_it_stands(tmp_path: Path) -> None:
    """A key leads to one place; the same words elsewhere need no second entry."""
    changed = {
        "languages/es.yaml": {"language": "es", "title": "español", "read by": "T1", "texts": everything(tmp_path)},
        "operations/sew-hem.yaml": {"steps": [{"step": "hem", "why": "Sew the hem."}]},
    }
    model = model_of(lay_over(yaml.safe_dump(changed, allow_unicode=True), tmp_path / "plant"))
    (one,) = translations(model)
    twice = [text for text in one.texts if text.wording.text == "Sew the hem."]
    assert len(twice) == 2
    assert {text.entry for text in twice} == {HEM}
    assert {text.state for text in one.texts} == {"said"}


def test_what_stands_in_for_a_material_in_a_colour_is_on_its_sheets_too(tmp_path: Path) -> None:
    changed = """
products/pouch.yaml: {colours: {sand: {}, moss: {thread-70: thread-moss}}}
materials/moss.yaml: {materials: {thread-moss: {title: "Thread, moss", form: thread, tex: 70 tex}}}
"""
    model = model_of(lay_over(changed, tmp_path / "plant"))
    assert ("material", "thread-moss") in used_by(model, "sew-hem")
    assert ("material", "thread-moss") not in used_by(model, "cut-panel")


def test_a_whole_language_has_its_sheets_and_keeps_the_codes_of_the_work(tmp_path: Path) -> None:
    language = {"language": "es", "title": "español", "read by": "T1", "texts": everything(tmp_path)}
    plant = lay_over(yaml.safe_dump({"languages/es.yaml": language}, allow_unicode=True), tmp_path / "plant")
    checked = check_plant(plant)
    assert not checked.findings, [one.message for one in checked.findings]
    own, spanish = trees_of(checked)
    assert [one.stem for one in spanish.views.sheets] == [one.stem for one in own.views.sheets]
    for original, said in zip(own.views.sheets, spanish.views.sheets, strict=True):
        assert said.title == f"«{original.title}»"
        assert (said.tag, said.fingerprint) == (original.tag, original.fingerprint)
        assert said.words_tag != original.tag
        assert said.qr == f"{original.qr} es {said.words_tag.replace(' ', '')}"


def test_without_one_text_only_its_own_sheets_are_left_out(tmp_path: Path) -> None:
    texts = everything(tmp_path)
    del texts[HEM]
    language = {"language": "es", "title": "español", "read by": "T1", "texts": texts}
    plant = lay_over(yaml.safe_dump({"languages/es.yaml": language}, allow_unicode=True), tmp_path / "plant")
    checked = check_plant(plant)
    assert [one.rule for one in checked.findings] == ["translation-missing"]
    stems = [one.stem for one in trees_of(checked)[1].views.sheets]
    assert stems
    assert not any(stem.startswith("sew-hem") for stem in stems)


def test_the_file_is_written_and_read_back_the_same(tmp_path: Path) -> None:
    one = translated(tmp_path / "a", everything(tmp_path))
    written = yaml.safe_load(language_file("es", one))
    again = translated(tmp_path / "b", written["texts"])
    assert language_file("es", again) == language_file("es", one)


def test_a_table_comes_back_with_semicolons_and_in_any_order(tmp_path: Path) -> None:
    one = translated(tmp_path, {HEM: {"of": "Sew the hem."}}, **{"in work": "yes"})
    assert f"{HEM},missing,Sew the hem." in language_table(one)
    read = with_table(
        one, f"\ufefftranslation;original;key\nCosa.;Sew the hem.;{HEM}\nX;Y;{HEM}\nA;B;operation/no/do\n"
    )
    assert read.language.texts[HEM].is_ == "Cosa."
    assert read.taken == 1
    assert [line for line, _ in read.refused] == [3, 4]


def test_a_table_without_its_columns_is_refused_whole(tmp_path: Path) -> None:
    one = translated(tmp_path, {}, **{"in work": "yes"})
    assert with_table(one, "a,b\n1,2\n").refused[0][0] == 1
