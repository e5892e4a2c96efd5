"""What tests of the small grammars share."""

from collections.abc import Callable

from builder.errors import TextFault


def fault_offset(read: Callable[[str], object], text: str) -> int:
    """Where a text is refused, 0 if it is read; any exception but a TextFault fails the test."""
    try:
        read(text)
    except TextFault as fault:
        return fault.offset
    return 0
