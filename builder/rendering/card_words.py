"""The words cards and training sheets add to what the view says, in the language spoken now."""

from __future__ import annotations

from builder.model import say


def card_words() -> dict[str, str]:
    """Column heads, section titles and lines to fill in, by the name the template calls them."""
    return {
        "all": say("all here"),
        "all_there": say("all there"),
        "answers": say("What answers it"),
        "bar": say("This bar is 50 mm when printed at 100 %."),
        "call": say("stop and call"),
        "cause": say("cause"),
        "code": say("code"),
        "issue": say("issue"),
        "job": say("operation"),
        "limit": say("may be"),
        "limits": say("What can be set, and where"),
        "lock_out": say("Before hands go in: power off"),
        "machine": say("The machine"),
        "made_from": say("Made from these sheets"),
        "missing": say("a piece is missing: stop and call"),
        "notice": say("NOTICE"),
        "own_hazards": say("With the work itself"),
        "page": say("page {n} of {m}"),
        "program": say("program"),
        "programs": say("Stored programs"),
        "proof": say("how it is proved"),
        "record": say("Record"),
        "remedy": say("do this"),
        "set_at": say("where it is set"),
        "setting": say("setting"),
        "sews": say("what it sews"),
        "shift_code": say("checked by, code"),
        "shift_date": say("date"),
        "sign": say("you see"),
        "tag": say("sheet code"),
        "tape": say("Lay the pieces here, clear tape over them."),
        "value": say("value"),
        "what": say("what"),
    }


def training_words() -> dict[str, str]:
    """The same of a training sheet."""
    return {
        "alone": say("May work alone when the learner"),
        "code": say("code"),
        "contents": say("Contents"),
        "date": say("date"),
        "empty_back": say("This side is left empty: the next sheet begins on a new leaf."),
        "estimate": say("estimate"),
        "gauges": say("gauges and templates"),
        "incoming": say("work and materials"),
        "job": say("operation"),
        "keys": say("key points"),
        "learner": say("learner"),
        "lesson": say("step of instruction"),
        "notice": say("NOTICE"),
        "page": say("page {n} of {m}"),
        "passed": say("Works alone from"),
        "pdf_page": say("page"),
        "pieces": say("pieces checked"),
        "prepare": say("The trainer has ready"),
        "seconds": say("time"),
        "set": say("machine set as above, proved"),
        "sign_off": say("Instruction and sign-off"),
        "station": say("station"),
        "step": say("important step"),
        "tag": say("sheet code"),
        "trainer": say("trainer"),
        "why": say("reasons"),
    }
