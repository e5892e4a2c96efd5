"""How sheets and pages speak of templates: which an operation uses, how they stand, how many pieces they are for."""

from __future__ import annotations

from builder.model import (
    Operation,
    PlantModel,
    Step,
    Template,
    named,
    route_of,
    say,
    show_number,
)
from builder.view.template import TemplateUse
from builder.view.words import listed

_MOST_PRODUCTS = 3


def state_of(template: Template, model: PlantModel) -> str:
    """'' when its copy was measured and is true, else 'not yet measured' or 'not in use'."""
    if template.is_off(model.plant.template_limit):
        return "not in use"
    return "" if template.record() is not None else "not yet measured"


def template_uses(operation: Operation, model: PlantModel) -> tuple[TemplateUse, ...]:
    """The templates an operation marks, cuts or measures by, each once, in the order its file names them."""
    names = [name for step in operation.steps for name in step.with_]
    names += [spec.with_ for spec in operation.tolerances.values() if spec.with_ is not None]
    return tuple(
        TemplateUse(one.number, one.title, name, one.revision, state_of(one, model))
        for name in dict.fromkeys(names)
        if (one := model.templates.get(name)) is not None
    )


def with_templates(said: str, step: Step, model: PlantModel) -> str:
    """An action line with the templates it is done by: `Mark the row. Template **T-3**.`"""
    numbers = [f"**{model.templates[name].number}**" for name in step.with_ if name in model.templates]
    if not numbers:
        return said
    more = (
        say("Template {number}.", number=numbers[0])
        if len(numbers) == 1
        else say("Templates {numbers}.", numbers=listed(numbers))
    )
    return f"{said} {more}"


def gauge_words(name: str, model: PlantModel) -> str:
    """A gauge as a sheet names it: a template by its number, any other by its name."""
    template = model.templates.get(name)
    return say("card gauge {number}", number=template.number) if template is not None else named(name)


def cut_words(part: str, model: PlantModel) -> str:
    """How many of a part each product takes: `cut 2 for Tool roll`, '' where no product says."""
    found: dict[str, list[str]] = {}
    for name, product in model.products.items():
        for stop in route_of(name, model.products, model.operations):
            if part in stop.takes:
                found.setdefault(show_number(stop.takes[part], 2), []).append(product.title)
    said = []
    for count, titles in found.items():
        more = f" and {len(titles) - _MOST_PRODUCTS} more" if len(titles) > _MOST_PRODUCTS else ""
        who = ", ".join(titles[:_MOST_PRODUCTS]) + more if more else listed(titles)
        said.append(f"{count} for {who}")
    return f"cut {', '.join(said)}" if said else ""
