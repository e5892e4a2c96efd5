"""How a field of a view object says whether a document's fingerprint covers it.

`controlled` fields are the method: what an operator must do. `shown` fields are printed, but a change of
them does not make the sheet on the wall wrong. A field without a mark is a fault a test finds.
"""

from __future__ import annotations

from dataclasses import field
from typing import Any


def controlled(**kwargs: Any) -> Any:
    """A dataclass field that enters the method fingerprint."""
    return field(metadata={"controlled": True}, **kwargs)


def shown(**kwargs: Any) -> Any:
    """A dataclass field that is printed but left out of the method fingerprint."""
    return field(metadata={"controlled": False}, **kwargs)
