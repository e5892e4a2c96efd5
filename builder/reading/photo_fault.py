"""What is wrong with a picture's file."""

from __future__ import annotations

from builder.errors import TextFault


class PhotoFault(TextFault):
    """A photo or a drawing can't be used; `message` and `remedy` are for a finding."""
