"""Parts as they lie, and sheets with their pieces, for the gallery: folded across, closed, turned right side out."""

from __future__ import annotations

import tempfile
from pathlib import Path

from builder.pipeline import check_plant, figures_of
from builder.view import FigureView
from tests.checking.overlay import lay_over

WALLET = """
parts/wallet.yaml:
  part: wallet
  title: Wallet
  material: cloth
  grain: up
  outline: {rectangle: {width: 180 mm, height: 260 mm, corner: 6 mm}}
  features:
    mark: {notch: left, at: {bottom: 40 mm}, depth: 4 mm}
    snap-place: {hardware: snap, diameter: 12 mm, at: {centre: 0 mm, top: 40 mm}}
    label-box: {box: plain, width: 40 mm, height: 20 mm, at: {centre: 0 mm, bottom: 30 mm}}
    middle:
      fold: line
      points: [{left: 0 mm, bottom: 140 mm}, {right: 0 mm, bottom: 140 mm}]
      moves: top
      label: middle fold
    left-seam: {seam: left, inset: 8 mm}
    right-seam: {seam: right, inset: 8 mm}
operations/cut-wallet.yaml:
  operation: cut-wallet
  title: Cut the wallet
  code: W-1
  station: laser
  makes: wallet
  settings: {speed: 200 mm/s, power: 40 %, focus: 3 mm}
  pieces a sheet: 24
  nest:
    margin: 10 mm
    gap: 4 mm
    pieces: [{part: wallet, count: 18}, {part: wallet, count: 6, side: wrong, turn: 180 deg}]
  steps:
    - {step: cut, cut: wallet, do: Close the lid and start., shows: [wallet, nest]}
operations/sew-wallet.yaml:
  operation: sew-wallet
  title: Sew the wallet
  code: W-2
  station: lockstitch
  needs: {wallet: 1, snap: 1}
  makes: wallet-sewn
  settings: {stitch: 301, stitch length: 3 mm, thread: thread-70, needle: Nm 100 R}
  steps:
    - {step: set, set: snap-place, do: Press the snap., time: 3 s}
    - {step: box, sew: label-box, do: Sew the label on., time: 1 s}
    - {step: fold, fold: middle, do: Fold the top over., time: 2 s}
    - {step: sides, sew: [left-seam, right-seam], do: Sew both sides., cautions: [moving needle], time: 2 s}
    - {step: turn, do: Turn it right side out., turn: right side out, shows: wallet-sewn, time: 5 s}
    - {step: look, do: Look at the back., shows: "wallet-sewn, wrong side", time: 5 s}
"""


def assembly_gallery() -> list[FigureView]:
    """Each step of a wallet that is folded, sewn and turned, and its nest."""
    with tempfile.TemporaryDirectory() as folder:
        checked = check_plant(lay_over(WALLET, Path(folder) / "plant"))
        names = ("cut-wallet", "sew-wallet")
        found = [one for name in names for one in figures_of(checked, name, None, None)]
    return [one for one in found if isinstance(one, FigureView)]
