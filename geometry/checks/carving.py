"""Checks of carved fronts and of finger grooves, each with the place where it is worst."""

from __future__ import annotations

import math
from collections.abc import Iterator

from geometry.bench.bench import Bench
from geometry.bench.carving_numbers import carving_of, finished_edges, groove_of
from geometry.bench.carving_parameters import GROOVE_RADIUS
from geometry.bench.drawer_numbers import Drawer, drawers, fronts_of
from geometry.bench.groove_land import edge_y, finger_profile, least_land, stretches_without_land
from geometry.bench.left_of_front import thinnest
from geometry.bench.limits import limits
from geometry.bench.raising import Raised, raised_for_land
from geometry.checks.check import Check
from geometry.checks.limits_of_drawers import LEAST_HOLD
from geometry.checks.where import middle_of_named
from geometry.design.finding import Finding, Level, Mend
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Vec2, Vec3
from shared.units import length_mark

_NEAR = 1e-3  # mm
_STEP = 0.1  # mm, to which a mend rounds


def _thin_front(bench: Bench) -> Iterator[Finding]:
    """Fronts of which the carving leaves less than the maker wants."""
    spec = bench.spec
    carving = carving_of(spec)
    if carving is None:
        return
    least, thickness = spec.number("carving_least"), fronts_of(spec).thickness
    for drawer in carving.fronts:
        left = thinnest(spec, drawer)
        if left.wood >= least - _NEAR:
            continue
        yield Finding(
            check="front_thin_for_carving",
            level=Level.DO_NOT_CUT,
            message=(
                f"{drawer.title}: the carving leaves {length_mark(left.wood)} of the front, "
                f"{_said(spec, drawer, left.at)}; {length_mark(least)} is wanted."
            ),
            parts=(f"{drawer.name}_front",),
            place=_place(bench, drawer, left.at, thickness - left.wood),
            amount=left.wood,
            limit=least,
            mend=_less_deep(spec),
        )


def _less_deep(spec: BenchSpec) -> Mend | None:
    """The whole carving made as much less deep as its thinnest place needs."""
    carving = carving_of(spec)
    assert carving is not None
    thickness = fronts_of(spec).thickness
    deepest = thickness - min(thinnest(spec, drawer).wood for drawer in carving.fronts)
    room = thickness - spec.number("carving_least")
    depth = math.floor(carving.depth * room / deepest / _STEP + 1e-9) * _STEP
    if depth < limits(spec, "carving_depth").minimum:
        return None
    depth = round(depth, 6)
    return Mend(f"Carve {length_mark(depth)} deep at most.", (("carving_depth", depth),))


def _thin_at_groove(bench: Bench) -> Iterator[Finding]:
    """Grooves with less than their land before them."""
    spec = bench.spec
    groove = groove_of(spec)
    if groove is None:
        return
    land = spec.number("finger_land")
    for drawer in drawers(spec):
        least = least_land(spec, drawer)
        if least.wood >= land - _NEAR:
            continue
        yield Finding(
            check="front_thin_at_groove",
            level=Level.DO_NOT_CUT,
            message=(
                f"{drawer.title}: only {length_mark(least.wood)} stand in front of the finger "
                f"groove, {_said(spec, drawer, least.at)}; its land is to be {length_mark(land)}"
                f"{_stretches(spec, drawer)}."
            ),
            parts=(f"{drawer.name}_front",),
            place=_place(bench, drawer, least.at, 0.0),
            amount=least.wood,
            limit=land,
            mend=_more_land(bench),
        )


def _stretches(spec: BenchSpec, drawer: Drawer) -> str:
    """Along the edge from where to where land is missing; nothing when only behind the edge."""
    left = finished_edges(spec, drawer)[0]
    places = [
        f"from {length_mark(start - left)} to {length_mark(end - left)}"
        for start, end in stretches_without_land(spec, drawer)
    ]
    return f" and is missing at the edge {' and '.join(places)}" if places else ""


def _more_land(bench: Bench) -> Mend | None:
    """Points raised; where that does not do, or nothing is carved, a smaller groove."""
    spec, hold = bench.spec, LEAST_HOLD.of(bench)
    raised = raised_for_land(spec)
    if raised is not None:
        return raise_points(raised)
    lacking = spec.number("finger_land") - min(
        least_land(spec, drawer).wood for drawer in drawers(spec)
    )
    radius = math.floor((spec.number("finger_radius") - lacking) / _STEP + 1e-9) * _STEP
    radius = round(radius, 6)
    smaller = spec.changed({"finger_radius": radius})
    if radius < hold or any(
        least_land(smaller, drawer).wood < spec.number("finger_land") - _NEAR
        for drawer in drawers(spec)
    ):
        wanted = math.ceil((fronts_of(spec).thickness + lacking) / _STEP - 1e-9) * _STEP
        return _thicker(spec, round(wanted, 6))
    return Mend(f"Make its radius {length_mark(radius)}.", (("finger_radius", radius),))


def _thicker(spec: BenchSpec, wanted: float) -> Mend | None:
    if wanted > limits(spec, "drawer_front_thickness").maximum:
        return None
    return Mend(
        f"Make the fronts {length_mark(wanted)} thick.", (("drawer_front_thickness", wanted),)
    )


def raise_points(raised: Raised) -> Mend:
    """Points put nearer to the face, each with its amount."""
    words = [f"point {number} by {length_mark(by)}" for number, by in raised.points]
    listed = " and ".join([", ".join(words[:-1]), words[-1]] if len(words) > 1 else words)
    return Mend(f"Raise {listed}.", (("carving_moved", raised.moved),))


def _shallow_hold(bench: Bench) -> Iterator[Finding]:
    """Grooves that a finger hardly gets into."""
    spec = bench.spec
    groove, hold = groove_of(spec), LEAST_HOLD.of(bench)
    if groove is None:
        return
    if groove.radius < hold - _NEAR:
        yield _small_groove(bench, groove.radius, hold)
        return
    for drawer in drawers(spec):
        profile = finger_profile(spec, drawer)
        x, depth = min(profile, key=lambda one: (one[1], one[0]))
        if depth >= hold - _NEAR:
            continue
        at = (x, edge_y(spec, drawer))
        yield Finding(
            check="groove_too_shallow",
            level=Level.THINK_AGAIN,
            message=(
                f"{drawer.title}: with its land kept, a finger gets {length_mark(depth)} into the "
                f"groove, {_said(spec, drawer, at)}; {length_mark(hold)} hold well."
            ),
            parts=(f"{drawer.name}_front",),
            place=_place(bench, drawer, at, 0.0),
            amount=depth,
            limit=hold,
            mend=_more_land(bench),
        )


def _small_groove(bench: Bench, radius: float, hold: float) -> Finding:
    """The grooves of all fronts are small, whatever is carved."""
    spec = bench.spec
    fronts = tuple(f"{drawer.name}_front" for drawer in drawers(spec))
    larger = min(max(GROOVE_RADIUS, hold), limits(spec, "finger_radius").maximum)
    mend = Mend(f"Make its radius {length_mark(larger)}.", (("finger_radius", larger),))
    return Finding(
        check="groove_too_shallow",
        level=Level.THINK_AGAIN,
        message=(
            f"A finger gets no deeper than {length_mark(radius)} into a groove of that radius; "
            f"{length_mark(hold)} hold well."
        ),
        parts=fronts,
        place=middle_of_named(bench, fronts[0]),
        amount=radius,
        limit=hold,
        mend=mend if larger >= hold else None,
    )


def _said(spec: BenchSpec, drawer: Drawer, at: Vec2) -> str:
    left, top, _, _ = finished_edges(spec, drawer)
    return (
        f"{length_mark(at[0] - left)} from its left end and {length_mark(at[1] - top)} below its "
        "top edge"
    )


def _place(bench: Bench, drawer: Drawer, at: Vec2, deep: float) -> Vec3:
    return bench.part(f"{drawer.name}_front").frame.to_bench((*at, deep))


CHECKS: tuple[Check, ...] = (
    Check(
        "front_thin_for_carving",
        "Front too thin for its carving",
        "Looks for the thinnest place of every carved front, at the points of the pattern and "
        "where the front's edges cut its facets. The limit is the least thickness that you set: a "
        "thin place is the first to split or to cup when the timber moves.",
        _thin_front,
        ("carving",),
    ),
    Check(
        "front_thin_at_groove",
        "Front too thin for its finger groove",
        "Between the finger groove behind the edge and the face in front of it a land of wood "
        "takes the pull of the hand. It is measured over the whole of the cove, where the carving "
        "comes nearest to it. The limit is the land that you set; a mend makes no groove too "
        "shallow to hold.",
        _thin_at_groove,
        ("carving",),
        limits=(LEAST_HOLD,),
    ),
    Check(
        "groove_too_shallow",
        "Finger groove too shallow to hold",
        "How deep a finger gets into the groove at each place of the edge: its radius, or what "
        "the thickness left by the carving allows when the land is kept. Less slips off: "
        "common practice, no source.",
        _shallow_hold,
        ("carving",),
        limits=(LEAST_HOLD,),
    ),
)
