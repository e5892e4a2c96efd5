"""A sheet in another language: it keeps the fingerprint of its original, and has a code of its own bound to that."""

from __future__ import annotations

from dataclasses import replace

from builder.model import Translation
from builder.view.fingerprint import controlled_facts, method_hash, tag_of
from builder.view.sheet import SheetView


def signed_as(view: SheetView, original: SheetView, translation: Translation) -> SheetView:
    """The translated sheet under its original's fingerprint.

    Its own code covers its words and the original's fingerprint, so a change of either makes the paper out of date. The
    QR code says both: `sew-label 7F3KQ2MX4 es 9C01D2EF7`.
    """
    code = translation.code
    own = tag_of(method_hash([original.fingerprint, code, controlled_facts(view)]))
    marks = {row.size: row.fingerprint for row in original.sizes}
    colours = tuple(row.fingerprint for row in original.colours)
    return replace(
        view,
        fingerprint=original.fingerprint,
        tag=original.tag,
        words_tag=own,
        read_by=translation.language.read_by or "",
        qr=f"{original.qr} {code} {own.replace(' ', '')}",
        sizes=tuple(replace(row, fingerprint=marks[row.size]) for row in view.sizes),
        colours=tuple(replace(row, fingerprint=mark) for row, mark in zip(view.colours, colours, strict=True)),
        language=code,
    )
