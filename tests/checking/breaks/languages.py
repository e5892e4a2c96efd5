"""Breaks of the rules on languages."""

from __future__ import annotations

from tests.checking.breaks.fault import Break

ES, IS = "languages/es.yaml", "languages/is.yaml"
HEAD = "language: es\ntitle: español\nread by: ES-1\nin work: yes\ntexts:\n"
TITLE = "  product/tool-roll/title: {of: Tool roll, is: Rollo de herramientas}\n"
STOP = "  plant/plant/lock out:\n    of: Switch off at the main switch. Wait until everything stands still.\n"
SAID = "    is: Apague el interruptor principal. Espere hasta que todo esté quieto.\n    read by: ES-1\n"


def _break(rule: str, old: str, new: str, texts: str = TITLE) -> Break:
    """A language begun, with one fault."""
    return Break(rule, ES, old, new, add=(ES, HEAD + texts))


BREAKS = [
    Break(
        "letter-missing",
        "operations/sew-keeper.yaml",
        "Sew the keeper on the back",
        "Sew the keeper on the 背",
        ("operations/sew-keeper.yaml", "¦operation: sew-keeper"),
    ),
    Break(
        "language-unspoken",
        IS,
        "language: is",
        "language: ¦is",
        add=(IS, "language: is\ntitle: íslenska\nread by: T1\nin work: yes\n"),
    ),
    _break("translation-missing", HEAD, f"¦{HEAD.replace('in work: yes', 'products: [strap]')}"),
    _break("translation-stale", "of: Tool roll,", "of: ¦Tool bag,"),
    _break("translation-unused", "product/tool-roll/title: {of: Tool roll", "¦product/tool-rack/title: {of: Tool rack"),
    _break(
        "translation-unread",
        f"{STOP}{SAID}",
        f"{STOP}{SAID.replace('is: ', 'is: ¦').partition('    read')[0]}",
        STOP + SAID,
    ),
    _break("translation-numbers", "is: Rollo de herramientas", "is: ¦Rollo de 6 herramientas"),
]
