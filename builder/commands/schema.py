"""`seamboard schema`: JSON Schema of a kind of file, for an editor."""

from __future__ import annotations

import json

import click

KINDS = ("plant", "station", "material", "element", "part", "operation", "product", "template")


@click.command("schema")
@click.argument("kind", type=click.Choice(KINDS))
def command(kind: str) -> None:
    """Print the JSON Schema of a KIND of file, so that an editor checks and completes while one types."""
    from builder.model import schema_of

    click.echo(json.dumps(schema_of(kind), ensure_ascii=False, indent=1))
