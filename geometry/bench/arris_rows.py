"""Arrises that may be eased: how their form, size and run are asked for, and told.  mm."""

from __future__ import annotations

from collections.abc import Callable

from geometry.cuts.edge_moulding import FORMS, EdgeMoulding
from geometry.design.parameter import Parameter, choice, length
from geometry.design.part import Part
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Vec3
from shared.units import length_mark

SHARP = "sharp"
# Common practice, no source, these:
SHARE = 3.0  # a moulding takes at most one part in so many
LEAST_RUN = 4.0  # sizes that a run is long at the least; a shorter one is left sharp

# By kind of part, the name of the edge along it; a leg has others, and the case's boards that of
# their fronts.
EDGE_ON = {
    "partition": "partition_edge",
    "partition lipping": "partition_edge",
    "shelf": "shelf_edge",
    "lipping": "shelf_edge",
    "drawer front": "drawer_edge",
    "seat": "seat_edge",
    "seat lipping": "seat_edge",
    "end": "end_edge",
    "end lipping": "end_edge",
    "lid": "lid_edge",
    "lid lipping": "lid_edge",
    "hinge strip": "lid_edge",
    "stretcher": "rail_edge",
    "rail": "rail_edge",
    "apron": "rail_edge",
    "rest rail": "rest_edge",
    "slat": "rest_edge",
    "plinth": "plinth_edge",
    "box front": "box_edge",
    "box end": "box_edge",
}

FACE_SIDE: Vec3 = (0.0, 0.0, -1.0)
REVERSE: Vec3 = (0.0, 0.0, 1.0)
FACE_EDGE: Vec3 = (0.0, -1.0, 0.0)
FAR_EDGE: Vec3 = (0.0, 1.0, 0.0)


def formed(name: str) -> Callable[[BenchSpec], bool]:
    return lambda spec: spec.word(name) != SHARP


def taken_by(spec: BenchSpec, name: str) -> float:
    """How far the edge of this name goes in on the faces, in mm; 0 for a sharp one."""
    return spec.number(f"{name}_size") if formed(name)(spec) else 0.0


def form_row(name: str, title: str, description: str) -> Parameter:
    return choice(name, title, "Edges", SHARP, (SHARP, *FORMS), description)


def size_row(name: str, title: str, default: float, most: float, description: str) -> Parameter:
    return length(
        name,
        title,
        "Edges",
        default,
        0.5,
        most,
        description,
        step=0.5,
        applies=formed(name.removesuffix("_size")),
    )


def run_row(
    name: str,
    title: str,
    default: float,
    description: str,
    of: str,
    applies: Callable[[BenchSpec], bool] = lambda _spec: True,
) -> Parameter:
    def there(spec: BenchSpec) -> bool:
        return formed(of)(spec) and applies(spec)

    return length(name, title, "Edges", default, 0, 400, description, applies=there)


def snug_at(**values: float) -> Callable[[BenchSpec], tuple[dict[str, float], ...]]:
    return lambda _spec: (dict(values),)


def told(which: str, stop: float, before: str, through: str, part: Part) -> tuple[str, ...]:
    """What the page of a part that has mouldings says of them: ``which`` arrises, and how far
    ``before`` what they stop, or where they go ``through``."""
    if not any(isinstance(cut, EdgeMoulding) for cut in part.shape.cuts):
        return ()
    run = f", stopped {length_mark(stop)} before {before}" if stop > 0.0 else f" {through}"
    return (f"{which} eased{run}",)
