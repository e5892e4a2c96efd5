"""Door of the writing room: files to the output folder, atomically, only what changed."""

from builder.writing.output import Output, Written, write_file

__all__ = ["Output", "Written", "write_file"]
