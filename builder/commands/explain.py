"""`seamboard explain`: what a finding means, with the examples its rule is tested by."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

from builder.errors import UsageError

if TYPE_CHECKING:
    from builder.checking import Explanation


@click.command("explain")
@click.argument("slug", required=False)
def command(slug: str | None) -> None:
    """Say why the rule SLUG exists, what to do, and show an example of each kind; without SLUG list all of them."""
    from builder.checking import explanations
    from builder.model import near

    known = {one.slug: one for one in explanations()}
    if slug is None:
        _list(list(known.values()))
        return
    if slug not in known:
        close = near(slug, known)
        hint = f"did you mean {close[0]}?" if close else "`seamboard explain` lists all"
        raise UsageError(f"no rule is called {slug}; {hint}")
    _show(known[slug])


def _list(all_of_them: list[Explanation]) -> None:
    width = max(len(one.slug) for one in all_of_them)
    group = ""
    for one in all_of_them:
        if one.group != group:
            group = one.group
            click.echo(click.style(f"\n{group}" if one is not all_of_them[0] else group, bold=True))
        click.echo(f"  {one.slug:<{width}}  {one.severity.name:<7}  {one.why}")


def _show(one: Explanation) -> None:
    from builder.checking import level_words

    click.echo(f"{click.style(one.slug, bold=True)}  {level_words(one)}")
    click.echo(f"why: {one.why}")
    click.echo(f"do:  {one.remedy}")
    if one.causes:
        click.echo(f"folds under: {', '.join(one.causes)}")
    for title, example in (("found", one.bad), ("not found", one.good)):
        if example:
            click.echo(f"\n{title}:")
            click.echo("\n".join(f"    {line}" for line in example.split("\n")))
