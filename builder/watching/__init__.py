"""Door of the watching room: saves in a folder, batch by batch."""

from builder.watching.saves import changes

__all__ = ["changes"]
