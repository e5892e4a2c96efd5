"""Makes a believable plant of any size from a seed: `python -m tests.bench.make_plant 1000 FOLDER`.

Every product is a chain of operations over panels of random size: cut, hem, box and cross, bartack, inspect.
"""

from __future__ import annotations

import random
import shutil
import sys
from pathlib import Path

SMALL = Path(__file__).resolve().parent.parent / "checking" / "plant"
PER_PRODUCT = 5


def make_plant(operations: int, folder: Path, seed: int = 7) -> Path:
    """A plant with about that many operations; the same seed gives the same files."""
    rng = random.Random(seed)
    shutil.copytree(SMALL, folder)
    for name in ("parts", "operations", "products"):
        shutil.rmtree(folder / name)
        (folder / name).mkdir()
    _stations(folder)
    for number in range(max(operations // PER_PRODUCT, 1)):
        _product(number, folder, rng)
    return folder


def _stations(folder: Path) -> None:
    text = (folder / "stations" / "all.yaml").read_text(encoding="utf-8")
    text += """  bartacker:
    title: Bartacker
    kind: bartacker
    count: 1
    distance: 0.6 m
    attendance: constant
    pace: {top speed: 2700 st/min, start: 0.5 s, finish: 0.6 s, reposition: 1.4 s, calibrated: 2026-09-01}
    protection: [finger guard, eye shield]
"""
    (folder / "stations" / "all.yaml").write_text(text, encoding="utf-8")


def _product(number: int, folder: Path, rng: random.Random) -> None:
    name = f"case-{number:04d}"
    width, height = rng.randrange(200, 500, 5), rng.randrange(150, 400, 5)
    (folder / "parts" / f"{name}.yaml").write_text(_part(name, width, height, rng), encoding="utf-8")
    for operation, text in _operations(name, number, rng).items():
        (folder / "operations" / f"{operation}.yaml").write_text(text, encoding="utf-8")
    route = ", ".join(_operations(name, number, rng))
    product = f"product: {name}\ntitle: Case {number}\nroute: [{route}]\n"
    (folder / "products" / f"{name}.yaml").write_text(product, encoding="utf-8")


def _part(name: str, width: int, height: int, rng: random.Random) -> str:
    left, pitch = rng.randrange(30, 80), rng.randrange(18, 26)
    return f"""part: {name}
title: Case panel {name}
material: cloth
grain: up
outline: {{rectangle: {{width: {width} mm, height: {height} mm, corner: 12 mm}}}}
dimensions: {{margin: 12 mm}}
features:
  top-notch: {{notch: top, at: {{left: {left} mm}}}}
  hem-fold: {{fold: top, inset: "=margin + 3 mm"}}
  hem-seam: {{seam: top, inset: =margin}}
  side-seam: {{seam: [right, top, left], inset: 8 mm}}
  handle-box: {{box: cross, width: 38 mm, height: 30 mm, at: {{left: {left} mm, bottom: 40 mm}}}}
  tacks:
    bartack: 28
    length: 10 mm
    width: 3 mm
    count: 4
    pitch: {pitch} mm
    at: {{left: {left} mm, bottom: 100 mm}}
"""


def _operations(name: str, number: int, rng: random.Random) -> dict[str, str]:
    sewing = "settings: {stitch: 301, stitch length: 3.2 mm ± 0.2, thread: thread-70, needle: Nm 100 R}\n"
    fault = (
        "faults: [{sign: skipped stitches, class: major, cause: bent needle, do: Change the needle with power off.}]\n"
    )

    def head(step: str, code: str, title: str, station: str, needs: str, makes: str) -> str:
        lines = [f"operation: {name}-{step}", f"title: {title}", f"code: {code}-{number}", f"station: {station}"]
        if needs:
            lines.append(f"needs: {{{needs}: 1}}")
        return "\n".join([*lines, f"makes: {makes}", ""])

    def handwork(*words: str) -> str:
        return "".join(f"  - {{step: s{i}, do: {word}, time: {i + 2} s}}\n" for i, word in enumerate(words))

    return {
        f"{name}-cut": head("cut", "CUT", "Cut the panel", "laser", "", name)
        + "settings: {speed: 200 mm/s, power: 40 %, focus: 3 mm}\nsteps:\n"
        + "  - {step: load, do: Lay the sheet., per: 20 pieces, time: 40 s}\n"
        + f"  - {{step: cut, cut: {name}, do: Close the lid and start., key: Lid closed., why: The beam blinds.}}\n",
        f"{name}-hem": head("hem", "HEM", "Sew the hem", "lockstitch", name, f"{name}-hemmed")
        + sewing
        + fault
        + "tolerances: {hem: {of: hem-seam.inset, is: ± 1 mm, with: rule, every: first piece}}\nsteps:\n"
        + handwork("Lay the panel face down.", "Match the notch.")
        + "  - {step: fold, fold: hem-fold, do: Fold the top edge over., time: 4 s}\n"
        + "  - {step: hem, sew: hem-seam, do: Sew the hem., key: Edge on the guide., why: It opens., check: hem}\n",
        f"{name}-box": head("box", "BOX", "Sew the box", "lockstitch", f"{name}-hemmed", f"{name}-boxed")
        + sewing
        + fault
        + "steps:\n"
        + handwork("Lay the panel face up.")
        + "  - {step: box, sew: handle-box, do: Sew the box and the cross., time: 2 s}\n"
        + "  - {step: side, sew: side-seam, do: Sew the three sides., time: 2 s}\n",
        f"{name}-tack": head("tack", "TCK", "Bartack the row", "bartacker", f"{name}-boxed", f"{name}-tacked")
        + "settings: {program: P28, thread: thread-70, needle: Nm 110 R}\nsteps:\n"
        + handwork("Lay the panel.")
        + "  - {step: tack, sew: tacks, do: Tack the row., time: 3 s}\n",
        f"{name}-look": head("look", "LOK", "Inspect", "bench", f"{name}-tacked", f"{name}-passed")
        + "steps:\n"
        + handwork("Look at the face.", "Turn it over.", "Look at the back.")
        + f"  - {{step: show, shows: '{name}-tacked, wrong side', do: Look along each seam., time: 5 s}}\n",
    }


if __name__ == "__main__":
    make_plant(int(sys.argv[1]), Path(sys.argv[2]))
