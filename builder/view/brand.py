"""The plant's own look: its colour and its logo, on pages and sheets."""

from __future__ import annotations

from dataclasses import dataclass

from builder.model import PlantModel
from builder.view.marking import shown
from builder.view.photo import Photo

_INK, _PAPER = "#22211d", "#ffffff"


@dataclass(frozen=True, slots=True)
class Brand:
    """What a plant looks like.

    colour : as `#rrggbb`, '' for none; on_colour : ink or paper, whichever is read better on it
    logo   : its picture
    """

    colour: str = shown(default="")
    on_colour: str = shown(default="")
    logo: Photo | None = shown(default=None)


def brand_of(model: PlantModel) -> Brand | None:
    """The plant's look, None where it types none."""
    look = model.plant.look
    if look is None:
        return None
    logo = None
    if look.logo is not None and look.logo in model.photos:
        logo = Photo(digest=model.photos[look.logo].digest, alt=model.plant.plant, path=look.logo)
    colour = look.colour or ""
    return Brand(colour, on_colour(colour) if colour else "", logo)


def on_colour(ground: str) -> str:
    """Ink or paper, whichever has the higher contrast with a ground: one of the two always has 4.5 and more.

    >>> on_colour("#1f5c57"), on_colour("#ffd000")
    ('#ffffff', '#22211d')
    """
    return max((_INK, _PAPER), key=lambda letters: contrast(letters, ground))


def contrast(one: str, other: str) -> float:
    """Contrast ratio of two colours, 1 to 21.

    (L₁ + 0.05) ÷ (L₂ + 0.05), L the relative luminance. Source: W3C, WCAG 2.2, definition of contrast ratio, memory.
    """
    light, dark = sorted((_luminance(one), _luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def _luminance(colour: str) -> float:
    red, green, blue = (_linear(int(colour[at : at + 2], 16) / 255) for at in (1, 3, 5))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def _linear(share: float) -> float:
    """A channel of sRGB as light."""
    return share / 12.92 if share <= 0.04045 else float(((share + 0.055) / 1.055) ** 2.4)
