"""Height fields of cloth, webbing, tape and thread under a lamp: what make_photos.py renders its pictures with.

Not a renderer for anything else: one fixed size, one lamp, layers seen from straight above.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from itertools import pairwise
from types import MappingProxyType

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageFilter

Field = NDArray[np.float64]
Points = Sequence[tuple[float, float]]

WIDTH, HEIGHT = 1600, 1200
OCHRE = (0.86, 0.56, 0.18)


class Scene:
    """Height [px], colour, gloss and cast shadow of every pixel; layers are laid on from the bottom up."""

    def __init__(self, seed: int) -> None:
        self.chance = np.random.default_rng(seed)
        self.y, self.x = np.mgrid[0:HEIGHT, 0:WIDTH].astype(np.float64)
        self.height = np.zeros((HEIGHT, WIDTH))
        self.colour = np.ones((HEIGHT, WIDTH, 3))
        self.gloss = np.zeros((HEIGHT, WIDTH))
        self.shadow = np.zeros((HEIGHT, WIDTH))

    def noise(self, radius: float) -> Field:
        """Smooth noise of unit deviation, `radius` px wide."""
        field = soft(self.chance.normal(size=(HEIGHT, WIDTH)), radius)
        return field / max(float(field.std()), 1e-9)

    def lay(
        self,
        mask: Field,
        relief: Field,
        colour: tuple[float, float, float],
        gloss: float,
        lift: float,
        throw: float = 0.55,
    ) -> None:
        """Lay a layer on where `mask` is 1: it casts a shadow on what lies below, and hides it.

        lift : how far its edge stands above what is below [px]; throw : darkness of its shadow
        """
        reach = max(1, round(lift))
        cast = soft(np.roll(mask, (reach, reach), axis=(0, 1)), lift * 0.9 + 1)
        self.shadow = np.maximum(self.shadow * (1 - mask), throw * cast * (1 - mask))
        self.height = self.height * (1 - mask) + mask * (relief + lift)
        self.colour = self.colour * (1 - mask[..., None]) + mask[..., None] * np.array(colour)
        self.gloss = self.gloss * (1 - mask) + mask * gloss

    def lit(self) -> Image.Image:
        """The scene under a lamp from the upper left, with the grain of a camera."""
        down, right = np.gradient(self.height)
        length = np.sqrt(down**2 + right**2 + 1)
        normal = np.stack((-right / length, -down / length, 1 / length), axis=-1)
        lamp = np.array((-0.48, -0.62, 0.62))
        half = lamp + np.array((0.0, 0.0, 1.0))
        diffuse = np.clip(normal @ (lamp / np.linalg.norm(lamp)), 0, 1)
        shine = np.clip(normal @ (half / np.linalg.norm(half)), 0, 1) ** 22
        hollow = np.clip((soft(self.height, 6) - self.height) * 0.07, 0, 0.5)
        light = (0.30 + 0.95 * diffuse) * (1 - hollow) * (1 - self.shadow)
        picture = self.colour * light[..., None] + (self.gloss * shine * (1 - self.shadow))[..., None]
        far = ((self.x / WIDTH - 0.45) ** 2 + (self.y / HEIGHT - 0.45) ** 2)[..., None]
        picture = picture * (1.06 - 0.42 * far) + self.chance.normal(scale=0.006, size=(HEIGHT, WIDTH, 1))
        image = Image.fromarray((np.clip(picture, 0, 1) ** (1 / 1.6) * 255).astype(np.uint8))
        return image.filter(ImageFilter.GaussianBlur(0.8))


def soft(field: Field, radius: float) -> Field:
    """A field blurred by about `radius` px: three box means, which come close to a Gaussian."""
    size = max(1, round(radius))
    for _ in range(3):
        for axis in (0, 1):
            padded = np.pad(field, [(size + 1, size) if one == axis else (0, 0) for one in (0, 1)], mode="edge")
            total = np.cumsum(padded, axis=axis)
            wide = np.take(total, range(2 * size + 1, total.shape[axis]), axis=axis)
            field = (wide - np.take(total, range(total.shape[axis] - 2 * size - 1), axis=axis)) / (2 * size + 1)
    return field


def edge(distance: Field) -> Field:
    """A mask from a distance [px], positive inside, with an edge one pixel soft."""
    return np.clip(distance + 0.5, 0, 1)


def cloth(scene: Scene, pitch: float) -> Field:
    """Relief of plain weave: warp and weft over each other in turn."""
    x, y = scene.x / pitch, scene.y / pitch
    over = (np.floor(x) + np.floor(y)) % 2
    warp = np.sin(math.pi * (x % 1)) * np.sqrt(np.sin(math.pi * ((y % 1) * 0.8 + 0.1)))
    weft = np.sin(math.pi * (y % 1)) * np.sqrt(np.sin(math.pi * ((x % 1) * 0.8 + 0.1)))
    relief: Field = pitch * 0.20 * np.where(over > 0.5, warp, weft) + 1.1 * scene.noise(40) + 0.12 * scene.noise(1)
    return relief


def webbing(scene: Scene, left: float, rib: float, float_length: float) -> Field:
    """Relief of flat webbing running up the picture: ribs in pairs, each yarn a row of long slanted grains."""
    across = (scene.x - left) / rib
    number = np.floor(across)
    middle = across - number - 0.5
    slant = np.where(number % 2 > 0.5, 1.0, -1.0)
    along = scene.y / float_length + slant * middle * 0.55 + (number % 4 >= 2) * 0.5
    grain = np.abs(np.sin(math.pi * along)) ** 0.6
    round_yarn = np.sqrt(np.clip(1 - (middle * 1.9) ** 2, 0, 1))
    filaments = 0.10 * np.sin(2 * math.pi * (middle * 4 + slant * along * 0.8))
    relief: Field = rib * 0.42 * round_yarn * (0.35 + 0.65 * grain) + filaments + 0.9 * scene.noise(50)
    return relief


def grosgrain(scene: Scene, rib: float) -> Field:
    """Relief of grosgrain tape running across the picture: fine ribs that stand across it."""
    place = scene.x / rib + 0.04 * scene.noise(60)
    relief: Field = rib * 0.28 * np.abs(np.sin(math.pi * place)) ** 0.7 + 0.1 * np.sin(2 * math.pi * scene.y / 4.3)
    return relief


def bed(scene: Scene, points: Points, thread: float) -> None:
    """The groove a tight line of stitches draws into the layers."""
    depth = np.zeros((HEIGHT, WIDTH))
    for start, end in pairwise(points):
        rows, columns = _window([start, end], 5 * thread)
        near = _along(_View(scene, rows, columns), start, end)[1]
        depth[rows, columns] = np.maximum(depth[rows, columns], 0.8 * thread * np.exp(-((near / (1.9 * thread)) ** 2)))
    scene.height -= depth


def stitches(
    scene: Scene, points: Points, length: float, thread: float, slack: Mapping[int, float] = MappingProxyType({})
) -> None:
    """Sew from point to point, whole stitches on each run.

    slack : by number of the stitch, how far it stands out as a loose loop [px]; 0 leaves it out
    """
    bed(scene, points, thread)
    number = 0
    for start, end in pairwise(points):
        count = math.ceil(math.dist(start, end) / length)
        for one in range(count):
            a, b = (_between(start, end, (one + part) / count) for part in (0, 1))
            hole(scene, a, thread)
            hole(scene, b, thread)
            if number not in slack:
                strand(scene, [a, b], thread)
            elif slack[number]:
                strand(scene, loop(a, b, slack[number]), thread, lift=6)
            number += 1


def hole(scene: Scene, at: tuple[float, float], thread: float) -> None:
    """A needle hole: a dark dent."""
    rows, columns = _window([at], 3 * thread)
    far = np.hypot(scene.x[rows, columns] - at[0], scene.y[rows, columns] - at[1])
    scene.height[rows, columns] -= 1.5 * thread * np.exp(-((far / (0.75 * thread)) ** 2))
    scene.colour[rows, columns] *= (1 - 0.85 * np.exp(-((far / (0.7 * thread)) ** 2)))[..., None]


def strand(scene: Scene, points: Points, thread: float, lift: float = 0.0) -> None:
    """Thread laid along points: round, with the slant of its plies; it dips into its holes, or is lifted as a loop."""
    rows, columns = _window(points, 3 * thread + 4 * lift)
    view = _View(scene, rows, columns)
    whole = sum(math.dist(a, b) for a, b in pairwise(points))
    near = np.full(view.x.shape, 1e9)
    place, side, done = np.zeros_like(near), np.zeros_like(near), 0.0
    for start, end in pairwise(points):
        along, far, signed = _along(view, start, end)
        closer = far < near
        near, side = np.where(closer, far, near), np.where(closer, signed, side)
        place = np.where(closer, done + along, place)
        done += math.dist(start, end)
    radius = thread / 2 * (0.82 + 0.18 * np.sin(math.pi * np.clip(place / whole, 0, 1)))
    mask = edge(radius - near)
    top = np.sqrt(np.clip(1 - (near / np.maximum(radius, 0.1)) ** 2, 0, 1))
    plies = 0.16 * thread * np.sin(2 * math.pi * (place / (0.95 * thread) + 0.55 * side / thread))
    dip = np.clip(np.minimum(place, whole - place) / (1.1 * thread), 0, 1) ** 0.6
    relief = thread * 0.62 * top + plies * top
    base = soft(view.height, 4) if not lift else np.zeros_like(near)
    raised = base + lift + (relief + 0.25 * thread) * (0.25 + 0.75 * dip)
    scene.height[rows, columns] = view.height * (1 - mask) + mask * raised
    throw = soft(np.roll(mask, (round(2 + lift), round(2 + lift)), axis=(0, 1)), 2 + 0.5 * lift) * (1 - mask)
    scene.shadow[rows, columns] = np.maximum(scene.shadow[rows, columns] * (1 - mask), 0.5 * throw)
    tone = np.array(OCHRE) * (0.86 + 0.14 * top)[..., None]
    scene.colour[rows, columns] = scene.colour[rows, columns] * (1 - mask[..., None]) + mask[..., None] * tone
    scene.gloss[rows, columns] = scene.gloss[rows, columns] * (1 - mask) + mask * 0.30


class _View:
    """A window of a scene."""

    def __init__(self, scene: Scene, rows: slice, columns: slice) -> None:
        self.x, self.y, self.height = scene.x[rows, columns], scene.y[rows, columns], scene.height[rows, columns]


def _window(points: Points, margin: float) -> tuple[slice, slice]:
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    rows = slice(max(0, int(min(ys) - margin)), min(HEIGHT, int(max(ys) + margin) + 2))
    return rows, slice(max(0, int(min(xs) - margin)), min(WIDTH, int(max(xs) + margin) + 2))


def _along(view: Scene | _View, start: tuple[float, float], end: tuple[float, float]) -> tuple[Field, Field, Field]:
    """Place along a line, distance from it, and distance with its side as the sign, for every pixel [px]."""
    length = max(math.dist(start, end), 1e-9)
    ux, uy = (end[0] - start[0]) / length, (end[1] - start[1]) / length
    dx, dy = view.x - start[0], view.y - start[1]
    along = np.clip(dx * ux + dy * uy, 0, length)
    return along, np.hypot(dx - along * ux, dy - along * uy), dx * uy - dy * ux


def _between(start: tuple[float, float], end: tuple[float, float], share: float) -> tuple[float, float]:
    return start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])


def loop(a: tuple[float, float], b: tuple[float, float], out_px: float) -> list[tuple[float, float]]:
    """Points of a slack loop from a to b that stands out by `out_px`."""
    length = math.dist(a, b)
    nx, ny = (b[1] - a[1]) / length, (a[0] - b[0]) / length
    ring = []
    for step in range(17):
        share = step / 16
        x, y = _between(a, b, share)
        out = out_px * math.sin(math.pi * share) ** 0.8
        ring.append((x + nx * out, y + ny * out))
    return ring
