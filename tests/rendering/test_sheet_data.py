"""What the template gets of a view."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest

from builder.model import speaking, tongue_of
from builder.rendering.sheet_data import KeptPhoto, document_title, paper_size, sheet_data, short_fingerprint
from builder.rendering.sheet_words import ENGLISH, filled
from tests.rendering.samples import HANDLE_END, PHOTO_DIGEST, POCKET
from tests.rendering.stand_in import PENS

PHOTO = {PHOTO_DIGEST: KeptPhoto("photos/a.jpg", 1280, 960)}


def words(text: dict) -> str:  # type: ignore[type-arg]
    return "".join(content for _, content in text["runs"])


def test_a_figure_keeps_its_own_size_and_alt() -> None:
    figure = sheet_data(HANDLE_END, {}, PENS)["steps"][2]["figure"]
    assert (figure["width"], figure["height"]) == (95.0, 54.0)
    assert figure["alt"] == HANDLE_END.steps[2].figure.alt  # type: ignore[union-attr]


def test_step_seconds_are_not_printed() -> None:
    text = json.dumps(sheet_data(HANDLE_END, {}, PENS))
    assert not any(step.seconds in text for step in HANDLE_END.steps)


def test_a_step_caution_that_names_a_hazard_brings_its_sign_and_signal_word() -> None:
    caution = sheet_data(POCKET, PHOTO, PENS)["steps"][3]["cautions"][0]
    assert caution["signal"] == "WARNING"
    assert words(caution["text"]) == POCKET.cautions[0].text


def test_a_photo_that_is_not_there_is_refused() -> None:
    with pytest.raises(KeyError):
        sheet_data(POCKET, {}, PENS)


@pytest.mark.parametrize(
    ("name", "size"),
    [
        ("Letter", (215.9, 279.4)),
        ("A4", (210.0, 297.0)),
        ("A4 landscape", (297.0, 210.0)),
        ("Tabloid", (279.4, 431.8)),
    ],
)
def test_paper_sizes(name: str, size: tuple[float, float]) -> None:
    assert paper_size(name) == size


@pytest.mark.parametrize("name", ["", "legal", "A4 sideways"])
def test_an_unknown_paper_is_refused(name: str) -> None:
    with pytest.raises(ValueError, match="no paper"):
        paper_size(name)


def test_a_size_shows_value_and_other_unit_apart() -> None:
    cell = sheet_data(POCKET, PHOTO, PENS)["sizes"]["rows"][0]["values"][0]
    assert (words(cell["value"]), words(cell["other"])) == ("180 mm ± 1", "7 1/8 in")


def test_fingerprints_are_shortened_only_when_long() -> None:
    assert short_fingerprint("7F3K Q2MX 4") == "7F3K Q2MX 4"
    assert short_fingerprint("9c01d2ef5a7733") == "9C01 D2EF"


def test_words_can_be_translated() -> None:
    with speaking(tongue_of("es")):
        assert "revisión C" in words(sheet_data(HANDLE_END, {}, PENS)["footer"]["said"])


def test_a_brace_in_a_value_is_not_read_again() -> None:
    assert filled("{code} {title}", code="{title}", title="x") == "{title} x"
    assert document_title(replace(HANDLE_END, title="a {code}"), ENGLISH) == "HND-20 a {code}"
