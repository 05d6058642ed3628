"""Whether a 'do not cut' is true, judged on the finished pieces by another library.

Each judge takes a bench and a finding and tells what the solids say: pieces share wood, the wood
before a stop is gone, a slot is narrower than the tool that should cut it, a drawer does not go
into its opening, a lid meets what stands in its way.  No judge reads the numbers that the check
read: what is measured is measured on meshes.  Only what the maker asked for (a cutter's diameter, a
least thickness) is read from the bench.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from itertools import product

import numpy as np

from geometry.bench.bench import Bench
from geometry.design.finding import Finding
from geometry.design.joint import Joint
from geometry.primitives.frame import Vec3
from tests.judges.meshes import Floats, free_way, mesh_of, wood_along, wood_in_both
from tests.judges.moving_alarms import box_does_not_go_in, drawer_meets, lid_meets
from tests.judges.wood_alarms import cuts_meet, hollows_come_near

Judge = Callable[[Bench, Finding], bool]
_HAIR = 1e-3  # mm


def really_collide(bench: Bench, finding: Finding) -> bool:
    """The two pieces share wood."""
    first, second = finding.parts
    return wood_in_both(mesh_of(bench, first), mesh_of(bench, second))


def really_open(bench: Bench, finding: Finding) -> bool:
    """Just behind the front at the housing, halfway down it: no wood."""
    board = finding.parts[0]
    mesh = mesh_of(bench, board)
    for joint, at in _halfway_down(bench, board):
        front = at.copy()
        front[1] = -next(one.value for one in joint.measures if one.name == "stop_from_back")
        ahead = front + np.outer(np.linspace(0.05, 400.0, 4000), (0.0, -1.0, 0.0))
        if not mesh.contains(ahead).any():
            return True
    return False


def slot_too_narrow(bench: Bench, finding: Finding) -> bool:
    """Some housing that a named piece has a part in is narrower than the cutter asked for."""
    cutter = bench.spec.number("cutter_diameter")
    for board in {joint.parts[0] for joint in bench.joints if set(joint.parts) & {*finding.parts}}:
        mesh = mesh_of(bench, board)
        for joint, at in _halfway_down(bench, board):
            if joint.parts[1] not in finding.parts:
                continue
            corners = np.array(joint.contacts[0].corners)
            sides = np.diff(corners[:3], axis=0)
            across = min(sides, key=np.linalg.norm)
            across = across / np.linalg.norm(across)
            both = [free_way([mesh], at, way) for way in (across, -across)]
            if sum(both) < cutter - _HAIR:
                return True
    return False


def _halfway_down(bench: Bench, board: str) -> Iterator[tuple[Joint, Floats]]:
    """Housings in a board, each with the point in the middle of its hollow."""
    for joint in bench.joints:
        if "housing" not in joint.kind or joint.parts[0] != board or not joint.contacts:
            continue
        corners = np.array(joint.contacts[0].corners)
        depth = next((one.value for one in joint.measures if one.name == "housing_depth"), None)
        if depth is not None:
            yield joint, corners.mean(axis=0) + np.array(joint.contacts[0].normal) * depth / 2.0


def front_is_thin(bench: Bench, finding: Finding, unsure: float = 0.02) -> bool:
    """Somewhere less wood from face to reverse than the maker wants: at the points of the mesh.

    Less than so much more counts too, as wood is measured in steps.
    """
    least = bench.spec.number("carving_least")
    return _thinnest(bench, finding.parts[0], finding.place) < least + unsure


def _thinnest(bench: Bench, name: str, place: Vec3 | None) -> float:
    """Over the whole piece, measured through it at its corners, near its rim and at a place.

    Only where its reverse is there: behind that, the finger groove has taken it.
    """
    mesh, part = mesh_of(bench, name), bench.part(name)
    blank = part.shape.blank
    local = np.array([part.frame.to_local(tuple(p)) for p in mesh.vertices])
    local = local[
        (local[:, 0] > _HAIR)
        & (local[:, 0] < blank.length - _HAIR)
        & (local[:, 1] > _HAIR)
        & (local[:, 1] < blank.width - _HAIR)
    ]
    edges = _round_the_edge(blank.length, blank.width)
    plan = np.unique(np.round(np.vstack([local[:, :2], edges]), 3), axis=0)[
        :: len(local) // 600 + 1
    ]
    if place is not None:
        x, y, _ = part.frame.to_local(place)
        plan = np.vstack([plan, [[x + dx, y + dy] for dx in (-0.01, 0.0) for dy in (-0.01, 0.0)]])
    starts = np.array([part.frame.to_bench((x + 3e-3, y + 2e-3, -1.0)) for x, y in plan])
    away = np.array(part.frame.to_bench((0.0, 0.0, 1.0))) - part.frame.to_bench((0.0, 0.0, 0.0))
    reverse = starts + away * (blank.thickness + 1.0 - _HAIR)
    starts = starts[mesh.contains(reverse)]
    return float(wood_along(mesh, starts, away, blank.thickness + 2.0, 0.02).min())


def _round_the_edge(length: float, width: float, inside: float = 0.05) -> Floats:
    along, up = np.linspace(0.0, length, 150)[1:-1], np.linspace(0.0, width, 60)[1:-1]
    sides = [
        np.column_stack([along, np.full_like(along, inside)]),
        np.column_stack([along, np.full_like(along, width - inside)]),
        np.column_stack([np.full_like(up, inside), up]),
        np.column_stack([np.full_like(up, length - inside), up]),
    ]
    return np.vstack(sides)


def land_is_thin(bench: Bench, finding: Finding, unsure: float = 0.05) -> bool:
    """Straight behind the place told, less wood before the groove than its land.

    Less than so much more counts too, as it is measured close beside the place, on a slope; what
    lies past the edge of the piece does not.
    """
    part = bench.part(finding.parts[0])
    mesh = mesh_of(bench, part.name)
    assert finding.place is not None
    x, y, _ = part.frame.to_local(finding.place)
    land = bench.spec.number("finger_land")
    blank = part.shape.blank
    for dx, dy in product((-0.01, 0.01), (-0.2, -0.02, 0.02, 0.2)):
        start = part.frame.to_bench((x + dx, y + dy, -1.0))
        way = np.array(part.frame.to_bench((0.0, 0.0, 1.0))) - part.frame.to_bench((0.0, 0.0, 0.0))
        first = wood_along(mesh, np.array([start]), way, blank.thickness + 2.0, 0.02)[0]
        if 0.0 < first < land + unsure:
            return True
    return False


def nothing_is_left(bench: Bench, finding: Finding) -> bool:
    """Straight through some named piece, at the place told, there is no wood."""
    assert finding.place is not None
    for name in finding.parts:
        frame, blank = bench.part(name).frame, bench.part(name).shape.blank
        x, y, _ = frame.to_local(finding.place)
        if not (0.0 < x < blank.length and 0.0 < y < blank.width):
            continue
        start = np.array([frame.to_bench((x + 3e-3, y + 2e-3, -1.0))])
        away = np.array(frame.z_axis)
        if wood_along(mesh_of(bench, name), start, away, blank.thickness + 2.0, 0.02)[0] == 0.0:
            return True
    return False


def piece_is_thick(bench: Bench, finding: Finding) -> bool:
    """Some side is thicker, measured on its mesh across the drawer, than the runners take."""
    assert finding.limit is not None
    return any(
        float(mesh_of(bench, name).extents[0]) > finding.limit + _HAIR for name in finding.parts
    )


def bottom_is_low(bench: Bench, finding: Finding) -> bool:
    """Some bottom is nearer to the lower edges of its drawer's sides than the runners need."""
    assert finding.limit is not None
    for name in finding.parts:
        bottom = mesh_of(bench, name).bounds[0][2]
        side = mesh_of(bench, name.replace("_bottom", "_side_left")).bounds[0][2]
        if bottom - side < finding.limit - _HAIR:
            return True
    return False


def piece_is_long(bench: Bench, finding: Finding) -> bool:
    """The piece shares wood with one of the uprights it stands between."""
    piece = mesh_of(bench, finding.parts[0])
    return any(wood_in_both(piece, mesh_of(bench, name)) for name in finding.parts[1:])


JUDGES: dict[str, Judge] = {
    "collision": really_collide,
    "housing_front": really_open,
    "housing_cutter": slot_too_narrow,
    "shelf_cutter": slot_too_narrow,
    "end_cutter": slot_too_narrow,
    "front_thin_for_carving": front_is_thin,
    "front_thin_at_groove": land_is_thin,
    "mortise_opened": cuts_meet,
    "joint_mortise_opened": cuts_meet,
    "round_mortise_opened": cuts_meet,
    "runner_hole_opened": cuts_meet,
    "button_opened": cuts_meet,
    "insert_opened": cuts_meet,
    "screw_opened": cuts_meet,
    "glue_up_mortise_opened": cuts_meet,
    "mortise_comes_through": cuts_meet,
    "screw_near": hollows_come_near,
    "thin_behind_cut": nothing_is_left,
    "lid_blocked": lid_meets,
    "drawer_too_wide": box_does_not_go_in,
    "drawer_too_long": box_does_not_go_in,
    "side_too_thick": piece_is_thick,
    "bottom_too_low": bottom_is_low,
    "shelf_too_long": piece_is_long,
    "drawer_blocked": drawer_meets,
    "drawer_shut_in": drawer_meets,
    "drawer_hits": drawer_meets,
    "drawer_too_tall": drawer_meets,
}
"""By the finding's name; of those that are not here nothing can be judged on a solid."""

STILL: dict[str, Judge] = JUDGES | {
    "front_thin_for_carving": partial(front_is_thin, unsure=-0.02),
    "front_thin_at_groove": partial(land_is_thin, unsure=-0.05),
}
"""The same of a mended bench: a mend gives just what is wanted, so a hair proves nothing."""
