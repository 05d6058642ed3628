"""Dimensions and handholds of four raking and splaying legs and their aprons.

Splay is what the front elevation shows of the lean and rake what the end elevation shows, so both
angles are seen there as they are.
"""

from __future__ import annotations

import math

from geometry.bench.apron_numbers import ENDS, ApronNumbers, apron_numbers, tenon_at
from geometry.bench.bench import Bench
from geometry.bench.four_leg_numbers import (
    CORNERS,
    FourLegs,
    Stand,
    foot_low,
    four_legs,
    outward_signs,
    stand,
    taper_stations,
)
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.making import BELOW, LEVEL, UPRIGHT, WITHIN, Place, bound, follows
from geometry.dimensioning.pull import Handhold, Pull
from geometry.primitives.frame import Vec3, add, scale
from geometry.views.bench_views import end_view
from geometry.views.view import FRONT, PLAN, View


def four_leg_dimensions(bench: Bench) -> tuple[Dimension, ...]:
    n, view = four_legs(bench.spec), end_view(bench)
    near = "right" if view.right[1] > 0.0 else "left"
    return (
        _lean(bench, n, "splay", FRONT, "front_right"),
        _lean(bench, n, "rake", view, f"front_{near}"),
    )


def apron_dimensions(bench: Bench) -> tuple[Dimension, ...]:
    a = apron_numbers(bench.spec)
    low, high = a.legs.height - a.height, a.legs.height
    first, second = (tenon_at(a, "front", corner) for corner in ENDS["front"])
    ends = [at.frame.to_bench(at.point(at.top, 0.0, 0.0)) for at in (first, second)]
    (left, right), x = (FRONT.project(point) for point in ends), (ends[0][0] + ends[1][0]) / 2.0
    return (
        follows(bench, "apron_front_between", Place(FRONT, left, right, LEVEL, BELOW, 2)),
        bound(bench, "apron_height", Place(FRONT, (x, high), (x, low), UPRIGHT, WITHIN, 1, -1.0)),
    )


def four_leg_handholds(bench: Bench) -> tuple[Handhold, ...]:
    """The legs' outer edges, and in plan the lines on which their tops stand."""
    n = four_legs(bench.spec)
    found = [_taper_begins(n, corner) for corner in ("front_left", "front_right")]
    for view, name in ((FRONT, "splay"), (end_view(bench), "rake")):
        for corner in CORNERS:
            line = _outer_edge(n, stand(n, corner))
            top, foot = (view.project(point) for point in line)
            found.append(Handhold(view.name, top, foot, _lean_pull(n, name, view, corner)))
    found += [_tapered_edge(n, corner) for corner in ("front_left", "front_right")]
    for x, name, sign in ((n.left, "inset_left", 1.0), (n.right, "inset_right", -1.0)):
        pull = Pull(name, (sign, 0.0))
        found.append(Handhold(PLAN.name, (x, n.back), (x, n.front), pull))
    for y, name, sign in ((n.back, "inset_back", -1.0), (n.front, "inset_front", 1.0)):
        pull = Pull(name, (0.0, sign))
        found.append(Handhold(PLAN.name, (n.left, y), (n.right, y), pull))
    return tuple(found)


def apron_handholds(bench: Bench) -> tuple[Handhold, ...]:
    """The lower edges of the aprons, and the legs' inner edges above them."""
    a = apron_numbers(bench.spec)
    n, z = a.legs, a.legs.height - a.height
    view, lower = end_view(bench), Pull("apron_height", (0.0, -1.0))
    back, front = view.project((0.0, n.back, z)), view.project((0.0, n.front, z))
    return (
        Handhold(FRONT.name, (n.left, z), (n.right, z), lower),
        Handhold(view.name, back, front, lower),
        *(_inner_edge(n, corner) for corner in ("front_left", "front_right")),
        *_apron_faces(a),
    )


def _apron_faces(a: ApronNumbers) -> tuple[Handhold, ...]:
    """In plan the upper arrises of the apron in front: the outer one moves with its set-back, the
    inner one with its thickness."""
    n = a.legs
    cosine = math.cos(math.radians(n.rake_deg))
    return tuple(
        Handhold(
            PLAN.name, (n.left, n.front + at), (n.right, n.front + at), Pull(name, UPRIGHT, cosine)
        )
        for name, at in (
            ("apron_reveal", a.reveal / cosine),
            ("apron_thickness", (a.reveal + a.thickness) / cosine),
        )
    )


def _lean(bench: Bench, n: FourLegs, name: str, view: View, corner: str) -> Dimension:
    x, y = n.place(corner)
    sx, sy = outward_signs(corner)
    lean_x, lean_y = n.tangents
    apex = view.project((x, y, n.height))
    foot = view.project((x + sx * lean_x * n.rise, y + sy * lean_y * n.rise, n.ground))
    title = "Splay, seen from the front" if name == "splay" else "Rake, seen from the side"
    return Dimension(
        name=name,
        title=title,
        view=view.name,
        value=bench.spec.number(name),
        unit="deg",
        start=(apex[0], n.ground),
        end=foot,
        along=LEVEL,
        side=WITHIN,
        rank=1,
        parameter=name,
        apex=apex,
        pull=_lean_pull(n, name, view, corner),
    )


def _lean_pull(n: FourLegs, name: str, view: View, corner: str) -> Pull:
    sx, sy = outward_signs(corner)
    outward: Vec3 = (sx, 0.0, 0.0) if name == "splay" else (0.0, sy, 0.0)
    return Pull(name, view.project(outward), 1.0, n.rise)


def _inner_edge(n: FourLegs, corner: str) -> Handhold:
    """A leg's inner edge above the taper, in the front view: the leg grows inward."""
    at = stand(n, corner)
    inner = add(at.origin, scale(at.beside, n.size))
    top = add(inner, scale(at.down, at.station(0.0, 0.0, n.height)))
    end = add(inner, scale(at.down, taper_stations(n, at)[0]))
    pull = Pull("leg_size", (-outward_signs(corner)[0], 0.0), 1.0 / abs(at.beside[0]))
    return Handhold(FRONT.name, FRONT.project(top), FRONT.project(end), pull)


def _tapered_edge(n: FourLegs, corner: str) -> Handhold:
    """The inner tapered edge in the front view: the foot grows as it moves inward."""
    at = stand(n, corner)
    start, end = taper_stations(n, at)
    low, high = foot_low(n), foot_low(n) + n.foot
    top = add(add(at.origin, scale(at.down, start)), scale(at.beside, n.size))
    foot = add(add(at.origin, scale(at.down, end)), scale(at.beside, high))
    inward = -outward_signs(corner)[0]
    share = abs(at.beside[0]) * (0.5 if low > 0.0 else 1.0)
    pull = Pull("leg_foot", (inward, 0.0), 1.0 / share)
    return Handhold(FRONT.name, FRONT.project(top), FRONT.project(foot), pull)


def _taper_begins(n: FourLegs, corner: str) -> Handhold:
    """The point on the inner edge, in the front view.  Under aprons its height on the leg's outer
    arris is given, with round tenons its place along the leg."""
    at = stand(n, corner)
    inner = add(at.origin, scale(at.beside, n.size))
    point = FRONT.project(add(inner, scale(at.down, taper_stations(n, at)[0])))
    pull = Pull("leg_taper_start", (0.0, -1.0), 1.0 / -at.down[2] if n.round else 1.0)
    return Handhold(FRONT.name, point, point, pull)


def _outer_edge(n: FourLegs, at: Stand) -> tuple[Vec3, Vec3]:
    """A leg's outer arris at full size, from the underside to the floor."""
    top = at.station(0.0, 0.0, n.height)
    foot = at.station(0.0, 0.0, n.ground)
    return add(at.origin, scale(at.down, top)), add(at.origin, scale(at.down, foot))
