"""Reading `--variant`: a size, a colour, or both, as in `L`, `moss` and `L, moss`."""

from __future__ import annotations

from builder.errors import UsageError
from builder.model import Product, near


def read_variant(text: str, product: Product) -> tuple[str | None, str | None]:
    """(size, colour) of a product, None for the one not named. Raises UsageError for a name it hasn't."""
    size: str | None = None
    colour: str | None = None
    for name in (one.strip() for one in text.replace("/", ",").split(",") if one.strip()):
        if name in product.sizes and size is None:
            size = name
        elif name in product.colours and colour is None:
            colour = name
        else:
            known = [*product.sizes, *product.colours]
            close = near(name, known)
            hint = f"did you mean {close[0]}?" if close else f"it has: {', '.join(known) or 'none'}"
            raise UsageError(f"{product.title} has no variant {name}; {hint}")
    return size, colour
