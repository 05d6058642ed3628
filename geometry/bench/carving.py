"""Carving: a faceted relief over the drawers' fronts, and the finger grooves behind their edges.

Both are cut last of all: the relief into the faces, the grooves once the fronts are fitted.
"""

from __future__ import annotations

from geometry.bench.carving_numbers import carving_of, facets_over_blank, finished_edges, groove_of
from geometry.bench.carving_parameters import PARAMETERS, carved, grooved
from geometry.bench.constraint import Constraint, rule
from geometry.bench.derived import Derived, derived_length
from geometry.bench.drawer_numbers import Drawer, drawers
from geometry.bench.drawers import has_drawers
from geometry.bench.groove_land import finger_profile
from geometry.bench.left_of_front import thinnest
from geometry.bench.member import Member
from geometry.cuts.cut import Cut
from geometry.cuts.finger_groove import FingerGroove
from geometry.cuts.relief import Relief
from geometry.design.part import Part
from geometry.design.spec import BenchSpec

# common practice, no source
LEAST_WOOD = 1.0  # mm, left by the carving, or between it and the groove

_FREE = 1.0  # what does not apply binds nothing


def _cuts(spec: BenchSpec, part: Part) -> tuple[Cut, ...]:
    if part.kind != "drawer front":
        return ()
    drawer = _drawers_by_front(spec)[part.name]
    facets, groove = facets_over_blank(spec, drawer), groove_of(spec)
    found: list[Cut] = [] if facets is None else [Relief(facets)]
    if groove is not None:
        _, y_low, _, y_high = finished_edges(spec, drawer)
        y = y_low if groove.at_top else y_high
        found.append(FingerGroove(y, groove.radius, inward=groove.at_top))
    return tuple(found)


def _drawers_by_front(spec: BenchSpec) -> dict[str, Drawer]:
    return {f"{drawer.name}_front": drawer for drawer in drawers(spec)}


def _wood(spec: BenchSpec) -> float:
    """What the deepest carving leaves of a front, or of the wood before its groove."""
    if not carved(spec) and not grooved(spec):
        return _FREE
    depth = spec.number("carving_depth") if carved(spec) else 0.0
    radius = spec.number("finger_radius") if grooved(spec) else 0.0
    return spec.number("drawer_front_thickness") - depth - radius - LEAST_WOOD


CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "carving_wood",
        "carving carving_depth finger_groove finger_radius drawer_front_thickness",
        _wood,
        "the carving or the finger groove would come through the front",
    ),
)


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    carving, groove = carving_of(spec), groove_of(spec)
    found: list[Derived] = []
    for drawer in carving.fronts if carving else ():
        found.append(
            derived_length(
                f"{drawer.name}_thinnest",
                f"{drawer.title}, thinnest",
                "Carved fronts",
                thinnest(spec, drawer).wood,
                "front thickness − the deepest of the carving on it",
            )
        )
    for drawer in drawers(spec) if groove else ():
        found.append(
            derived_length(
                f"{drawer.name}_finger_depth",
                f"{drawer.title}, finger's hold",
                "Finger groove",
                min(depth for _, depth in finger_profile(spec, drawer)),
                "radius, and the thickness that the carving leaves less the land",
            )
        )
    return tuple(found)


MEMBER = Member(
    "carving",
    PARAMETERS,
    CONSTRAINTS,
    cuts=_cuts,
    derived=_derived,
    present=has_drawers,
)
