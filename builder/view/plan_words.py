"""When a check is made, in words: the parts of its plan as sheets print them."""

from __future__ import annotations

from builder.model import CheckPart, CheckPlan, phrase, plain, say, show_number, tongue

_ONE = {
    "first": phrase("first piece"),
    "last": phrase("last piece"),
    "each": phrase("each piece"),
    "bundle": phrase("each bundle"),
    "batch": phrase("each batch"),
    "shift start": phrase("at shift start"),
}
_MANY = {
    "first": phrase("first {count} pieces"),
    "last": phrase("last {count} pieces"),
    "nth": phrase("every {count} pieces"),
}
_AFTER = "after "
_HOUR_S = 3600


def plan_words(plan: CheckPlan) -> str:
    """A plan as sheets print it: `first piece, then every 20th`; other languages count pieces instead of ordering."""
    if not tongue().words:
        return plan.words()
    words = _part(plan.parts[0])
    for part in plan.parts[1:]:
        words = say("{first}, then {next}", first=words, next=_part(part))
    return words


def _part(part: CheckPart) -> str:
    if part.kind == "clock":
        return _clock(part)
    if part.kind in _MANY and part.number != 1:
        return say(_MANY[part.kind], count=int(part.number))
    if part.kind == "after":
        return say("after {event}", event=plain(part.words.removeprefix(_AFTER)))
    return say(_ONE[part.kind])


def _clock(part: CheckPart) -> str:
    if part.number == _HOUR_S:
        return say("every hour")
    hours = part.number / _HOUR_S
    if hours.denominator == 1:
        return say("every {count} h", count=show_number(hours, 0))
    return say("every {count} min", count=show_number(part.number / 60, 1))
