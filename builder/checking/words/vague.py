"""Words that say nothing on the floor: whoever reads them must already know what they stand for.

The lists are common practice, no source. A language is added by its code; a word is matched whole, capitals or not.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import lru_cache

VAGUE: Mapping[str, tuple[str, ...]] = {
    "en": (
        "properly",
        "carefully",
        "with care",
        "correctly",
        "neatly",
        "nicely",
        "accurately",
        "adequate",
        "adequately",
        "appropriate",
        "appropriately",
        "suitable",
        "suitably",
        "sufficient",
        "sufficiently",
        "reasonable",
        "reasonably",
        "satisfactory",
        "acceptable",
        "as needed",
        "as necessary",
        "as required",
        "as appropriate",
        "as usual",
        "if necessary",
        "if needed",
        "if required",
        "when necessary",
        "when needed",
        "where necessary",
        "where needed",
        "in the usual way",
        "and so on",
        "etc",
    ),
    "de": (
        "ordentlich",
        "sorgfältig",
        "vorsichtig",
        "korrekt",
        "ordnungsgemäß",
        "sachgemäß",
        "fachgerecht",
        "bei Bedarf",
        "falls nötig",
        "wenn nötig",
        "falls erforderlich",
        "wenn erforderlich",
        "gegebenenfalls",
        "ggf",
        "geeignet",
        "geeignete",
        "geeigneten",
        "geeigneter",
        "geeignetes",
        "angemessen",
        "ausreichend",
        "wie üblich",
        "und so weiter",
        "usw",
        "etc",
    ),
    "es": (
        "adecuadamente",
        "correctamente",
        "cuidadosamente",
        "con cuidado",
        "apropiado",
        "apropiada",
        "apropiadamente",
        "adecuado",
        "adecuada",
        "debidamente",
        "suficiente",
        "suficientemente",
        "si es necesario",
        "si fuera necesario",
        "cuando sea necesario",
        "según sea necesario",
        "como corresponda",
        "como siempre",
        "y así sucesivamente",
        "etc",
    ),
    "vi": (
        "cẩn thận",
        "đúng cách",
        "gọn gàng",
        "phù hợp",
        "thích hợp",
        "hợp lý",
        "vừa đủ",
        "đầy đủ",
        "nếu cần",
        "nếu cần thiết",
        "khi cần",
        "khi cần thiết",
        "như thường lệ",
        "vân vân",
        "v.v",
    ),
}


@lru_cache(maxsize=32)
def vague_pattern(language: str, own: tuple[str, ...] = ()) -> re.Pattern[str] | None:
    """Finds the vague words of a language (`en`, `en-GB`) and of the plant itself; None when there are none."""
    words = sorted({*VAGUE.get(language.partition("-")[0].lower(), ()), *own}, key=lambda one: (-len(one), one))
    if not words:
        return None
    return re.compile(rf"(?<!\w)(?:{'|'.join(map(re.escape, words))})(?!\w)", re.IGNORECASE)
