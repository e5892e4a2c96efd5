"""Door of the watching room: saves in a folder, batch by batch."""

from builder.watching.changes import changes

__all__ = ["changes"]
