"""Renders the demo's pictures of good and bad work.

They are no photos and their captions say so: Thornquay Bags is fictional. Run it after a change:
`python tests/demo/make_photos.py instructions/photos`. The same seed gives the same picture.
"""

from __future__ import annotations

import math
import sys
from pathlib import Path

import numpy as np
from lit_scene import HEIGHT, WIDTH, Points, Scene, cloth, edge, grosgrain, loop, stitches, strand, webbing
from PIL import Image, ImageDraw

SLATE, BLACK, BENCH = (0.30, 0.36, 0.42), (0.15, 0.15, 0.16), (0.74, 0.70, 0.62)


def badge(image: Image.Image, at: tuple[int, int], good: bool) -> None:
    """A tick or a cross in a disc, which no language has to read."""
    x, y = at
    big = Image.new("RGBA", (440, 440), (0, 0, 0, 0))
    draw = ImageDraw.Draw(big)
    draw.ellipse((8, 8, 432, 432), fill=(252, 250, 243, 255), outline=(34, 34, 34, 255), width=14)
    lines = [[(115, 230), (195, 310), (335, 130)]] if good else [[(135, 135), (305, 305)], [(305, 135), (135, 305)]]
    for line in lines:
        draw.line(line, fill=(26, 96, 60, 255) if good else (176, 48, 28, 255), width=52, joint="curve")
    small = big.resize((110, 110), Image.Resampling.LANCZOS)
    image.paste(small, (x, y), small)


def part(image: Image.Image, bar: tuple[int, int, int, int]) -> None:
    """A white bar between two views."""
    ImageDraw.Draw(image).rectangle(bar, fill=(252, 250, 243))


def handle_end(good: bool) -> Image.Image:
    """One handle end, without a badge: whether it is right or wrong is marked where it is shown."""
    scene, scale, thread = Scene(382 if good else 383), 22.0, 11.5
    scene.lay(np.ones((HEIGHT, WIDTH)), cloth(scene, 5.6), SLATE, 0.05, 0)
    wide, low, rib = 38 * scale, 1060.0, 38 * scale / 56
    left = (WIDTH - wide) / 2
    inside = np.minimum(np.minimum(scene.x - left, left + wide - scene.x), low - scene.y)
    relief = webbing(scene, left, rib, 34.0) - 9 * np.exp(-np.clip(inside, 0, None) / 7)
    scene.lay(edge(inside), relief, BLACK, 0.17, 15)
    x0, x1 = left + 3 * scale, left + 35 * scale
    y0, y1 = low - 35 * scale, low - 3 * scale
    ring: Points = [(x0, y1), (x1, y1), (x1, y0), (x0, y0), (x0, y1)]
    step = 3.2 * scale
    if good:
        stitches(scene, [*ring, (x1, y0), (x1, y1), (x0, y0)], step, thread)
        return scene.lit()
    miss = (x1 - 5.4 * scale, y0 + 4.6 * scale)
    stitches(scene, ring, step, thread, slack={15: 48, 24: -44, 33: 50})
    stitches(scene, [(x0, y1), miss, (x1, y1)], step, thread, slack={5: 56, 16: -38})
    stitches(scene, [(x1, y1), (x0, y0)], step, thread, slack={3: 38, 9: -54})
    strand(scene, loop((x0, y1), (x0 + 60, y1 + 118), 30), thread, lift=4)
    return scene.lit()


def binding_edge() -> Image.Image:
    """Two bound edges, one above the other: a good one; cloth slipped out, so that the line holds tape only."""
    scene, scale, thread = Scene(227), 21.0, 8.5
    scene.lay(np.ones((HEIGHT, WIDTH)), 0.28 * scene.noise(2) + 2 * scene.noise(90), BENCH, 0.03, 0)
    tape, relief = 11 * scale, grosgrain(scene, 8.2)
    weave = cloth(scene, 6.4)
    for top, good in ((0.0, True), (610.0, False)):
        outer = top + 490 + 5 * np.sin(scene.x / 260 + top)
        slip = np.exp(-(((scene.x - 930) / 250) ** 4)) * (0 if good else 1)
        raw = outer - 40 - slip * (tape - 10)
        inner = outer - tape + 3 * np.sin(scene.x / 190) + slip * 14
        panel = np.minimum(raw - scene.y, scene.y - top + 4)
        scene.lay(edge(panel), weave, SLATE, 0.05, 7)
        if not good:
            sealed = edge(6 - np.abs(scene.y - raw + 4)) * edge(panel)
            scene.colour = scene.colour * (1 - 0.55 * sealed[..., None]) + 0.55 * sealed[..., None] * 0.85
        band = np.minimum(scene.y - inner, outer - scene.y)
        bulge = 13 * np.sqrt(np.clip(band / tape, 0, 1) * np.clip(1.15 - band / tape, 0, 1)) * 1.4
        scene.lay(edge(band), relief + bulge, BLACK, 0.15, 8)
        line = _seam_line(top, good, scale, tape)
        stitches(scene, line, 3.2 * scale, thread)
    image = scene.lit()
    part(image, (0, 601, WIDTH, 611))
    badge(image, (28, 28), good=True)
    badge(image, (28, 639), good=False)
    return image


def _seam_line(top: float, good: bool, scale: float, tape: float) -> Points:
    """The seam 2 mm inside the inner edge of the tape, from side to side."""
    points = []
    for x in range(-20, WIDTH + 90, 67):
        outer = top + 490 + 5 * math.sin(x / 260 + top)
        slip = 0.0 if good else math.exp(-(((x - 930) / 250) ** 4)) * 14
        points.append((float(x), outer - tape + 3 * math.sin(x / 190) + slip + 2.6 * scale))
    return points


def main(folder: Path) -> None:
    """Render all pictures into the folder, each under 200 kB."""
    folder.mkdir(parents=True, exist_ok=True)
    pictures = {
        "binding-edge": binding_edge(),
        "handle-end-right": handle_end(good=True),
        "handle-end-wrong": handle_end(good=False),
    }
    for name, image in pictures.items():
        image.save(folder / f"{name}.jpg", quality=52, optimize=True, progressive=True, subsampling=2)


if __name__ == "__main__":
    main(Path(sys.argv[1]))
