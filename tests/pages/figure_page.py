"""A page of drawn figures with their real lettering, for the gallery and for the checker of figures."""

from __future__ import annotations

import base64
from collections.abc import Iterable
from html import escape
from pathlib import Path

from builder.drawing import draw
from builder.model import ATKINSON, face_file
from builder.view import AnyFigure

CHECKER = Path(__file__).with_name("figure_checker.js")
LEAST_CAPITAL_MM = 2.5
"""No capital on paper is lower than this."""

_STYLE = """
body { margin: 12mm; background: #f6f2e8; color: #22201c; font: 4.2mm/1.4 "%s", sans-serif; }
h1 { font-size: 8mm; } h2 { font-size: 5.6mm; margin: 12mm 0 4mm; border-bottom: 0.4mm dashed #a92f18; }
main { display: grid; grid-template-columns: repeat(auto-fill, minmax(100mm, 1fr)); gap: 8mm; align-items: start; }
figure { margin: 0; padding: 4mm; background: #fff; border-radius: 2mm; }
figcaption { margin-top: 2mm; font-size: 3.4mm; color: #5c564c; }
svg { display: block; max-width: none; }
h2 { grid-column: 1 / -1; }
"""


def _faces() -> str:
    """The lettering itself, so that the page measures what paper shows."""
    return "".join(
        f"@font-face {{ font-family: '{ATKINSON.name}'; font-weight: {weight}; "
        f"src: url(data:font/otf;base64,{base64.b64encode(face_file(ATKINSON, weight).read_bytes()).decode()}); }}"
        for weight in (400, 700)
    )


def figure_page(title: str, groups: Iterable[tuple[str, Iterable[AnyFigure]]]) -> str:
    """An HTML page that shows figures under headings, each at its printed size with its text alternative."""
    body = []
    for heading, figures in groups:
        body.append(f"<h2>{escape(heading)}</h2>")
        body += [
            f"<figure>{draw(one).svg}<figcaption><b>{escape(one.name)}</b>. {escape(one.alt)}</figcaption></figure>"
            for one in figures
        ]
    return (
        f'<!doctype html><html lang="en"><meta charset="utf-8"><title>{escape(title)}</title>'
        f"<style>{_faces()}{_STYLE % ATKINSON.name}</style><h1>{escape(title)}</h1><main>{''.join(body)}</main></html>"
    )
