"""Made-up benches of any size: cases on crossed stretchers with drawers, side by side.

One unit is 25 parts.  No two units are of one size, so that no solid is shared between them.
"""

from __future__ import annotations

import math

from geometry.cuts.removal import HalfSpace, Hull, Prism
from geometry.design.part import Part
from geometry.primitives.frame import Frame, Vec3
from geometry.primitives.path import Path
from tests.random_assemblies import part, stopped_housing

THICK = 20.0


def large_bench(units: int, stretch: float = 0.0) -> list[Part]:
    """``units`` units in a row; ``stretch`` mm more depth to every case changes most parts."""
    parts: list[Part] = []
    x = 0.0
    for number in range(units):
        length = 900.0 + 7.0 * number
        parts.extend(_unit(number, x, length, 400.0 + 1.5 * number + stretch))
        x += length + 50.0
    return parts


def _unit(number: int, x: float, length: float, depth: float) -> list[Part]:
    bottom, top = 200.0, 480.0
    inside = top - bottom - 2 * THICK
    third = (length - 2 * THICK) / 3.0
    bays = [THICK + third, THICK + 2 * third]
    reach = depth - 40.0

    def name(piece: str) -> str:
        return f"{piece}_{number}"

    board: Vec3 = (depth, length, THICK)
    # Boards lie with their grain front to back here, so that housings start at x = 0.
    flat = Frame.of((x, 0.0, bottom), (0, 1, 0), (-1, 0, 0))

    def lying(z: float) -> Frame:
        return Frame((x + length, 0.0, z), flat.x_axis, flat.y_axis, flat.z_axis)

    upright = ((0.0, 1.0, 0.0), (0.0, 0.0, 1.0))
    mitre = math.sqrt(0.5)
    housings = [length - bay - THICK / 2 for bay in bays]
    parts = [
        part(
            name("bottom"),
            board,
            (
                *(stopped_housing(reach, y, THICK, THICK - 7, THICK + 1) for y in housings),
                HalfSpace((0, length, 0), (0, mitre, mitre)),
                HalfSpace((0, 0, 0), (0, -mitre, mitre)),
                _rebate(depth, length, THICK - 6),
            ),
            lying(bottom),
        ),
        part(
            name("top"),
            board,
            (
                *(stopped_housing(reach, y, THICK, -1, 7) for y in housings),
                HalfSpace((0, length, THICK), (0, mitre, -mitre)),
                HalfSpace((0, 0, THICK), (0, -mitre, -mitre)),
                Hull(((0, -1, 21), (0, length + 1, 21), (0, -1, 15), (0, length + 1, 15),
                      (6, -1, 21), (6, length + 1, 21))),
            ),
            lying(top - THICK),
        ),
    ]  # fmt: skip
    for side, at in (("left", x + THICK), ("right", x + length)):
        outward = 1.0 if side == "right" else -1.0
        face = 0.0 if side == "right" else THICK
        parts.append(
            part(
                name(f"end_{side}"),
                (depth, top - bottom, THICK),
                (
                    HalfSpace((0, 0, THICK - face), (0, -mitre, -outward * mitre)),
                    HalfSpace((0, top - bottom, THICK - face), (0, mitre, -outward * mitre)),
                ),
                Frame.of((at - THICK, 0.0, bottom), *upright),
            )
        )
    for index, bay in enumerate(bays):
        corner = 14.0
        parts.append(
            part(
                name(f"partition_{index}"),
                (depth - 40.0, inside + 14.0, THICK),
                tuple(
                    Prism(Path.rectangle(reach - corner, y, reach + 1, y + 8), -1, THICK + 1)
                    for y in (-1.0, inside + 7.0)
                ),
                Frame.of((x + bay - THICK / 2, 0.0, bottom + THICK - 7), *upright),
            )
        )
    parts.append(
        part(
            name("back"),
            (length - 2 * THICK, inside, 6.0),
            frame=Frame.of((x + THICK, depth, bottom + THICK), (1, 0, 0), (0, 0, 1)),
        )
    )
    for drawer in range(2):
        left = x + (bays[drawer] - third if drawer == 0 else bays[drawer - 1]) + THICK / 2 + 13
        parts.extend(_drawer(name(f"drawer_{drawer}"), left, third - 46.0, depth - 90.0, inside))
    parts.extend(_base(number, x, length, depth, bottom))
    return parts


def _rebate(depth: float, length: float, z: float) -> Prism:
    return Prism(Path.rectangle(depth - 7, -1, depth + 1, length + 1), z, THICK + 1)


def _drawer(name: str, x: float, width: float, depth: float, inside: float) -> list[Part]:
    low, high = 228.0, 228.0 + inside - 30.0
    tall = high - low
    groove = Prism(Path.rectangle(-1, 10, depth + 1, 16), 6.0, 13.0)
    along = ((0.0, 1.0, 0.0), (0.0, 0.0, 1.0))
    across = ((1.0, 0.0, 0.0), (0.0, 0.0, 1.0))
    facets = ((0, 0, 21), (width / 3, tall / 2, 16), (0, tall, 21), (width, 0, 21),
              (2 * width / 3, tall / 2, 14), (width, tall, 21))  # fmt: skip
    return [
        part(f"{name}_front", (width, tall, 20.0), (Hull(facets),),
             Frame.of((x, 42.0, low), *across)),
        part(f"{name}_left", (depth, tall, 12.0), (groove,), Frame.of((x, 44.0, low), *along)),
        part(f"{name}_right", (depth, tall, 12.0), (groove,),
             Frame.of((x + width - 12, 44.0, low), *along)),
        part(f"{name}_rear", (width - 24.0, tall, 12.0),
             frame=Frame.of((x + 12, 44.0 + depth, low), *across)),
        part(f"{name}_base", (width - 24.0, depth - 12.0, 6.0),
             frame=Frame.of((x + 12, 44.0, low + 10), (1, 0, 0), (0, 1, 0))),
    ]  # fmt: skip


def _base(number: int, x: float, length: float, depth: float, height: float) -> list[Part]:
    rail: Vec3 = (math.hypot(length - 200, depth - 100), 40.0, 60.0)
    turn = math.atan2(depth - 100, length - 200)
    parts = []
    for index, sign in enumerate((1.0, -1.0)):
        along = (math.cos(turn), sign * math.sin(turn), 0.0)
        across = (-along[1], along[0], 0.0)
        middle = (x + length / 2, depth / 2)
        start = (
            middle[0] - along[0] * rail[0] / 2 - across[0] * 20,
            middle[1] - along[1] * rail[0] / 2 - across[1] * 20,
            height - 60.0,
        )
        half = rail[0] / 2
        # The other stretcher crosses at twice the turn: its two sides, across this one's width.
        wide, skew = 20 / math.sin(2 * turn), sign * 20 / math.tan(2 * turn)
        lap = ((half - wide + skew, 0), (half + wide + skew, 0),
               (half + wide - skew, 40), (half - wide - skew, 40))  # fmt: skip
        low, high = (30.0, 61.0) if index else (-1.0, 30.0)
        hull = Hull(tuple((px, py, z) for px, py in lap for z in (low, high)))
        parts.append(
            part(f"stretcher_{index}_{number}", rail, (hull,), Frame.of(start, along, across))
        )
    for index, (px, py) in enumerate(
        ((70, 20), (length - 110, 20), (70, depth - 60), (length - 110, depth - 60))
    ):
        lean = 0.26 if index % 2 == 0 else -0.26
        up = (math.sin(-lean), 0.0, math.cos(lean))
        out = (math.cos(lean), 0.0, math.sin(lean))
        frame = Frame.of((x + px, py, -30.0), up, out)
        level = frame.turn_to_local((0.0, 0.0, 1.0))
        below = (-level[0], -level[1], -level[2])
        long = height / math.cos(lean) + 80.0
        parts.append(
            part(
                f"leg_{index}_{number}",
                (long, 40.0, 40.0),
                (
                    HalfSpace(frame.to_local((0.0, 0.0, 0.0)), below),
                    HalfSpace(frame.to_local((0.0, 0.0, height)), level),
                    HalfSpace((long / 2, 40.0, 0.0), (-0.19612, 0.98058, 0.0)),
                ),
                frame,
            )
        )
    for index, at in enumerate((depth * 0.3, depth * 0.7)):
        parts.append(
            part(f"slat_{index}_{number}", (length - 240, 30.0, 15.0),
                 frame=Frame.of((x + 120, at, 60.0), (1, 0, 0), (0, 1, 0)))
        )  # fmt: skip
    return parts
