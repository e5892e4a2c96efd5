"""`seamboard words`: the file of a language, to be translated, and what a translator's table says put into it."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from builder.errors import UsageError

if TYPE_CHECKING:
    from builder.model import Language, PlantModel, Translation


@click.command("words")
@click.argument("code", metavar="LANGUAGE")
@click.option("--in", "folder", default="instructions", type=click.Path(path_type=Path), help="The plant's folder.")
@click.option("--csv", "table", type=click.Path(path_type=Path), help="Write a table for a spreadsheet instead.")
@click.option("--from", "filled", type=click.Path(path_type=Path, exists=True), help="Take a filled table in.")
@click.option("--product", "products", multiple=True, help="A new language: only the work on this product.")
def command(code: str, folder: Path, table: Path | None, filled: Path | None, products: tuple[str, ...]) -> None:
    """Write languages/LANGUAGE.yaml with every text of the plant, keeping what is translated already."""
    from builder.pipeline import check_plant
    from builder.view import language_file, language_table, with_table
    from builder.writing import write_file

    checked = check_plant(folder)
    if checked.linked is None:
        from builder.commands import report

        report.show_findings(checked)
        sys.exit(1)
    model = checked.linked.model
    translation = _translation(model, code, products)
    if filled is not None:
        read = with_table(translation, _text(filled))
        for line, words in read.refused:
            click.echo(f"{filled}:{line}:1: {words}", err=True)
        click.echo(f"{read.taken} translations taken from {filled}", err=True)
        translation = _again(model, code, read.language)
        if read.refused and not read.taken:
            sys.exit(1)
    translation = translation.of_work(model)
    if table is not None:
        write_file(table, language_table(translation).encode())
    else:
        write_file(folder / "languages" / f"{code}.yaml", language_file(code, translation).encode())
    click.echo(f"{table or folder / 'languages' / f'{code}.yaml'}: {_summary(translation)}")


def _text(file: Path) -> str:
    try:
        return file.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError:
        raise UsageError(f"{file} is not UTF-8: save the table as CSV UTF-8") from None


def _translation(model: PlantModel, code: str, products: tuple[str, ...]) -> Translation:
    """What the plant says in the language so far; nothing yet for a new one. Raises UsageError for no language."""
    from builder.model import Language, is_language, language_name

    if code not in model.languages:
        if not is_language(code):
            raise UsageError(f"{code} is no code of a language: write one such as es, vi or pt-BR")
        unknown = [name for name in products if name not in model.products]
        if unknown:
            raise UsageError(f"no product is called {unknown[0]}; there are {', '.join(model.products)}")
        new = {"title": language_name(code), "products": products, "in work": "yes"}
        return _again(model, code, Language.model_validate(new))
    if products:
        raise UsageError(f"{code} is there already: its products are typed in its file")
    return _again(model, code, model.languages[code])


def _again(model: PlantModel, code: str, language: Language) -> Translation:
    from dataclasses import replace

    from builder.model import translations

    return translations(replace(model, languages={code: language}, memo={}))[0]


def _summary(translation: Translation) -> str:
    from builder.view import lacking_words

    originals = {one.wording.text for one in translation.texts}
    lacking = lacking_words({one.wording.text: one for one in translation.texts}.values())
    return f"{len(originals)} texts{f', {lacking}' if lacking else ', all translated'}"
