"""Where on a part something stands, measured from the faces that a maker marks from.

Frame and units: points and directions in bench coordinates, mm.

Method: along the grain from the nearer end, across it from the face edge, through the thickness
from the face side; not along the direction in which it goes in or lies.  What is flush has none.
A piece that is left larger until it is fitted is measured from its finished ends and edges.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from geometry.cuts.trim import finished
from geometry.design.faces import FACES
from geometry.design.joint import Measure
from geometry.design.part import Part
from geometry.primitives.frame import Vec3

FLUSH = 0.05  # mm
_WORDS = ("end", "edge", "face")


@dataclass(frozen=True, slots=True)
class Told:
    """How a thing is told of: its ``name`` in measures, and what of it is measured to, where it
    has one place alone and where it has several."""

    name: str
    middle: str
    nearest: str


def places_of(
    part: Part, points: Sequence[Vec3], into: Vec3, told: Told, which: int
) -> tuple[Measure, ...]:
    """How far the nearest of ``points`` is from each reference face of ``part``.

    ``into`` is the direction in which nothing is measured; ``which`` tells on which of a joint's
    parts it is.
    """
    local = [part.frame.to_local(point) for point in points]
    way = [abs(one) for one in part.frame.turn_to_local(into)]
    axes = (part.frame.x_axis, part.frame.y_axis, part.frame.z_axis)
    faces = (part.ends, *FACES[1:])
    found: list[Measure] = []
    sizes = finished(part.shape.blank, part.shape.cuts)
    starts = (sizes.x_low, sizes.y_low, 0.0)
    for axis in (axis for axis in range(3) if axis != way.index(max(way))):
        low = min(p[axis] for p in local) - starts[axis]
        high = max(p[axis] for p in local) - starts[axis]
        (face, far_face), value = faces[axis], low
        beyond = sizes.x_high - sizes.x_low - high
        if axis == 0 and round(beyond, 6) < round(low, 6):
            face, value = far_face, beyond
        if value > FLUSH:
            what = told.middle if high - low < FLUSH else told.nearest
            meaning = f"from the {part.kind}'s {face} to {what}"
            name = f"{told.name}_from_{_WORDS[axis]}"
            at = local.index(min(local, key=lambda p: -p[axis] if face == far_face else p[axis]))
            found.append(Measure(name, value, "mm", meaning, (which,), axes[axis], points[at]))
    return tuple(found)


def on_its_sheet(part: Part, measures: Sequence[Measure]) -> tuple[Measure, ...]:
    """The same; of a board of sheet they say that they leave out its lippings, which stand out."""
    if part.solid_timber:
        return tuple(measures)
    return tuple(replace(one, meaning=f"{one.meaning}, without lippings") for one in measures)


def start_of(part: Part, low: float, high: float, name: str, which: int = 0) -> tuple[Measure, ...]:
    """How far from its nearer end a cut starts that runs from ``low`` to ``high`` along a part;
    nothing where it runs out there."""
    beyond = part.shape.blank.length - high
    near, far = part.ends
    value, end = (beyond, far) if round(beyond, 6) < round(low, 6) else (low, near)
    if value <= FLUSH:
        return ()
    meaning = f"from the {part.kind}'s {end} to the {name}"
    return (Measure(f"{name}_from_end", value, "mm", meaning, (which,), part.frame.x_axis),)
