"""Drawers: boxes on runners behind fronts of their own.

A front is screwed to its box from inside.  It is cut larger by what is left on, and the bench
shows it fitted.  Wooden runners are parts of the bench, one under each side; metal ones are not
made of wood, and a note on the sides says which they need.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache

from geometry.bench.carving_numbers import carving_of, groove_of
from geometry.bench.case_numbers import case_numbers
from geometry.bench.derived import Derived, derived_length
from geometry.bench.drawer_box import BOTTOM, FRONT, LEFT, RIGHT, box_joints, box_pieces
from geometry.bench.drawer_numbers import (
    Drawer,
    Fronts,
    box_room,
    drawer_openings,
    drawers,
    fronts_of,
    runner_length,
)
from geometry.bench.drawer_parameters import PARAMETERS as DRAWER_PARAMETERS
from geometry.bench.drawer_rules import CONSTRAINTS
from geometry.bench.grain import FRONT_TO_BACK, OF_TIMBER
from geometry.bench.member import Member
from geometry.bench.partitions import partition_lip
from geometry.bench.runner_numbers import PARAMETERS as RUNNER_PARAMETERS
from geometry.bench.runner_numbers import runner_of
from geometry.bench.seasons import seasons
from geometry.cuts.cut import Blank, Cut
from geometry.cuts.trim import Trim
from geometry.design.joint import Contact, Joint, Measure
from geometry.design.later import Later
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec
from geometry.joints.face_to_face import SCREWED, SLIDING, SLOTTED, Corners, face_to_face
from geometry.joints.screw_rows import LEAST_OVER, bite_in, has_room, screw_for, stations
from geometry.joints.screwed_faces import ScrewedFaces, ScrewPlace, laid_on, screwed_faces
from geometry.primitives.frame import X_AXIS, Frame, Vec3, add
from shared.runners import WOODEN, Runner

# Common practice, no source, these:
_TWO_ROWS = 150.0  # mm of clear height from which a front has two rows of screws
_APART = 450.0  # mm between the screws of a front or a runner, at most
_NEAR_ENDS = 25.0  # mm from a runner's ends to its screws
_BETWEEN_POINTS = 1.0  # mm from a runner's screw to the middle of its upright


def has_drawers(spec: BenchSpec) -> bool:
    return bool(drawer_openings(spec))


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    fronts, row = fronts_of(spec), runner_of(spec)
    timbers = (spec.word("timber"), spec.word("drawer_timber"))
    bottom = _bottom_of(spec)
    return tuple(
        part for drawer in drawers(spec) for part in _drawer(drawer, fronts, row, *timbers, bottom)
    )


@dataclass(frozen=True, slots=True)
class _Bottom:
    """What the bottoms are made of."""

    material: str
    solid: bool
    across: bool


def _bottom_of(spec: BenchSpec) -> _Bottom:
    solid = spec.word("drawer_bottom_of") == OF_TIMBER
    across = solid and spec.word("drawer_bottom_grain") == FRONT_TO_BACK
    return _Bottom(spec.word("drawer_timber" if solid else "drawer_sheet"), solid, across)


@lru_cache(maxsize=1024)
def _drawer(
    drawer: Drawer, fronts: Fronts, row: Runner, timber: str, box_timber: str, bottom: _Bottom
) -> tuple[Part, ...]:
    """All parts of one drawer where they stand."""
    size = f"{{{drawer.box.length:.6g} mm}}"
    note = f"runs on {row.kind} runners of {size}: check your runner's sheet"
    notes = {LEFT: (note,), RIGHT: (note,)} if row.kind != WOODEN else {}
    if bottom.solid:
        notes[BOTTOM] = ("dry in its grooves, so that it can move",)
    pieces = [
        replace(
            piece,
            name=f"{drawer.name}_{piece.name}",
            title=f"{piece.title}, {drawer.place}",
            material=bottom.material if piece.name == BOTTOM else box_timber,
            frame=_moved(piece.frame, drawer.origin),
            notes=notes.get(piece.name, ()),
            solid_timber=piece.name != BOTTOM or bottom.solid,
            grain_across=piece.name == BOTTOM and bottom.across,
        )
        for piece in box_pieces(drawer.box)
    ]
    runners = _runners(drawer, row, box_timber) if row.kind == WOODEN else ()
    return (_front(drawer, fronts, timber), *pieces, *runners)


def _moved(frame: Frame, by: Vec3) -> Frame:
    return Frame(add(frame.origin, by), frame.x_axis, frame.y_axis, frame.z_axis)


def _front(drawer: Drawer, fronts: Fronts, timber: str) -> Part:
    """Face side outside, y down from the top edge; the blank larger all round."""
    on = fronts.left_on
    width, height = drawer.front_width, drawer.front_height
    cuts: tuple[Cut, ...] = (Trim(on, on + width, on, on + height),) if on > 0.0 else ()
    blank = Blank(round(width + 2.0 * on, 9), round(height + 2.0 * on, 9), fronts.thickness)
    return Part(
        name=f"{drawer.name}_front",
        title=f"Drawer front, {drawer.place}",
        kind="drawer front",
        material=timber,
        shape=Shape(blank, cuts),
        frame=Frame.of(
            (drawer.x_low - on, -drawer.face, drawer.z_high + on), (1, 0, 0), (0, 0, -1)
        ),
        allowance=2.0 * on,
        allowance_across=2.0 * on,
    )


def _runners(drawer: Drawer, row: Runner, timber: str) -> tuple[Part, Part]:
    """One under each side, its face edge on the upright: they are alike, the left one with its
    face side up, the right one turned over."""
    _, front, low = drawer.origin
    blank = Blank(drawer.box.length, row.strip_width, row.below)
    at = drawer.opening
    frames = {
        "left": Frame.of((at.x_left, front, low), (0, 1, 0), (1, 0, 0)),
        "right": Frame.of((at.x_right, front, round(low - row.below, 9)), (0, 1, 0), (-1, 0, 0)),
    }
    left, right = (
        Part(
            name=f"{drawer.name}_runner_{side}",
            title=f"Drawer runner, {side}, {drawer.place}",
            kind="runner",
            material=timber,
            shape=Shape(blank, ()),
            frame=frame,
            notes=("screwed fast in front and in a slot behind, as the upright moves",),
        )
        for side, frame in frames.items()
    )
    return left, right


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    row = runner_of(spec)
    found: list[Joint] = []
    for drawer in drawers(spec):
        found += _box_joints(drawer)
        found.append(_screwed_front(spec, drawer, parts))
        if row.kind == WOODEN:
            found += _on_runners(spec, drawer, row, parts)
    return tuple(found)


@lru_cache(maxsize=1024)
def _box_joints(drawer: Drawer) -> tuple[Joint, ...]:
    """The joints of the box with the drawer's names, where it stands."""
    name = drawer.name
    return tuple(
        Joint(
            name=f"{name}_{joint.name}",
            kind=joint.kind,
            parts=(f"{name}_{joint.parts[0]}", f"{name}_{joint.parts[1]}"),
            fit=joint.fit,
            cuts_first=joint.cuts_first,
            cuts_second=joint.cuts_second,
            measures=Later(_measures_at, drawer.origin, joint),
            contacts=Later(_contacts_at, drawer.origin, joint),
        )
        for joint in box_joints(drawer.box)
    )


def _measures_at(origin: Vec3, joint: Joint) -> Iterator[Measure]:
    for one in joint.measures:
        yield one if one.at is None else replace(one, at=add(one.at, origin))


def _contacts_at(origin: Vec3, joint: Joint) -> Iterator[Contact]:
    for one in joint.contacts:
        corners = tuple([add(corner, origin) for corner in one.corners])
        yield Contact(corners, one.normal, one.gap)


def _screwed_front(spec: BenchSpec, drawer: Drawer, parts: Mapping[str, Part]) -> Joint:
    """Where front and box front lie on each other, between the box's sides, clear of a groove."""
    box, (x, y, z) = drawer.box, drawer.origin
    groove = groove_of(spec)
    above, below = (
        groove.radius if groove and groove.at_top == top else 0.0 for top in (True, False)
    )
    left = max(drawer.x_low, x + box.making.side)
    right = min(drawer.x_high, x + box.width - box.making.side)
    low = max(drawer.z_low + below, z)
    high = min(drawer.z_high - above, z + box.height)
    corners: Corners = ((left, y, low), (right, y, low), (right, y, high), (left, y, high))
    carving = carving_of(spec)
    deep = carving.depth if carving is not None and drawer in carving.fronts else 0.0
    m, thickness = box.making, fronts_of(spec).thickness
    screw = screw_for(box.height)
    bite = bite_in(thickness - deep)
    rows: tuple[Vec3, ...] = ()
    if has_room(screw, box.height) and bite > 0.0:
        clear = (left, right, max(low, z + m.groove_top + screw.head), high - screw.head)
        rows = _rows(y, clear)
    return screwed_faces(
        f"{drawer.name}_front",
        SCREWED,
        parts[f"{drawer.name}_{FRONT}"],
        parts[f"{drawer.name}_front"],
        ScrewedFaces(
            corners=corners,
            normal=(0.0, -1.0, 0.0),
            heads=0,
            screws=tuple(ScrewPlace(at, X_AXIS) for at in rows),
            screw=screw,
            land=m.end,
            through=m.end,
            bite=bite,
            laid=((x, y, z), (x + box.width, y, z + box.height)),
        ),
    )


def _rows(y: float, clear: tuple[float, float, float, float]) -> tuple[Vec3, ...]:
    """Screws over the groove for the bottom and clear of the corners: one row, or two in a high
    front.  ``clear`` is from where to where in X and in Z."""
    left, right, low, high = clear
    if high <= low:
        return ()
    room = high - low
    levels = (low + room / 2.0,) if room < _TWO_ROWS else (low + room / 5.0, high - room / 5.0)
    return tuple((left + at, y, level) for level in levels for at in stations(right - left, _APART))


def _on_runners(
    spec: BenchSpec, drawer: Drawer, row: Runner, parts: Mapping[str, Part]
) -> list[Joint]:
    """Each runner on its upright, and the box's side on the runner."""
    box, at, (x, y, z) = drawer.box, drawer.opening, drawer.origin
    thick, back = box.making.side, y + box.length
    near, far = y + box.making.end, back - box.making.end
    found = []
    for end, upright, wall, inward, outside in (
        ("left", at.left, at.x_left, 1.0, x),
        ("right", at.right, at.x_right, -1.0, x + box.width),
    ):
        runner = parts[f"{drawer.name}_runner_{end}"]
        under = z - row.below
        # The lipping of an upright is a part of its own, before which the runner may lie too.
        if upright.startswith("partition"):
            fore, rear = max(y, partition_lip(spec) - at.front), back
        else:
            c = case_numbers(spec)
            fore, rear = max(y, -c.sheet_front), min(back, -c.back_lip(upright))
        on_wall: Corners = (
            (wall, fore, under),
            (wall, rear, under),
            (wall, rear, z),
            (wall, fore, z),
        )
        inside = outside + inward * thick
        rides: Corners = (
            (outside, near, z),
            (outside, far, z),
            (inside, far, z),
            (inside, near, z),
        )
        screwed = _runner_screws(spec, parts[upright], row, on_wall, (inward, 0.0, 0.0))
        found += [
            screwed_faces(runner.name, SLOTTED, parts[upright], runner, screwed),
            face_to_face(
                f"{runner.name}_side",
                SLIDING,
                runner,
                parts[f"{drawer.name}_side_{end}"],
                rides,
                (0.0, 0.0, 1.0),
            ),
        ]
    return found


def _runner_screws(
    spec: BenchSpec, upright: Part, row: Runner, on_wall: Corners, inward: Vec3
) -> ScrewedFaces:
    """Through a runner into its upright, fast in front and in slots behind.

    They go less than half through a partition, as a runner on its other side may have its own
    opposite.
    """
    weather = seasons(spec)
    (x, fore, under), (_, back, _), (_, _, z), _ = on_wall
    screw = screw_for(row.below)
    bite = bite_in(upright.shape.blank.thickness / 2.0 - _BETWEEN_POINTS + LEAST_OVER)
    screws: list[ScrewPlace] = []
    if has_room(screw, row.below) and bite > 0.0:
        places = [fore + one for one in stations(back - fore, _APART, _NEAR_ENDS)]
        for y in places:
            far = y - places[0] if upright.solid_timber else 0.0
            shrink, swell = weather.moved(far)
            at = (x, y, (under + z) / 2.0)
            screws.append(ScrewPlace(at, (0.0, 1.0, 0.0), shrink, swell, y == places[0]))
    return laid_on(on_wall, inward, tuple(screws), screw, through=row.strip_width, bite=bite)


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    row = runner_of(spec)
    found = [
        derived_length(
            "runner_length",
            "Runner length",
            "Runners",
            runner_length(row, box_room(spec, drawer_openings(spec)[0])),
            "depth behind the fronts − clearance behind, the next shorter runner there is",
        )
    ]
    for drawer in drawers(spec):
        if drawer.number == 1:
            found += _widths(drawer)
        found += _heights(drawer)
    return tuple(found)


def _widths(drawer: Drawer) -> list[Derived]:
    k, title = drawer.opening.index, drawer.opening.title
    return [
        derived_length(
            f"opening_{k}_front_width",
            f"Front width, {title}",
            "Drawer sizes",
            drawer.front_width,
            "opening, gap, lap over uprights",
        ),
        derived_length(
            f"opening_{k}_box_width",
            f"Box width, {title}",
            "Drawer sizes",
            drawer.box.width,
            "opening − 2 × clearance each side",
        ),
    ]


def _heights(drawer: Drawer) -> list[Derived]:
    return [
        derived_length(
            f"{drawer.name}_front_height",
            f"{drawer.title}, front height",
            "Drawer sizes",
            drawer.front_height,
            "inside height, gaps, number of drawers, graduation",
        ),
        derived_length(
            f"{drawer.name}_box_height",
            f"{drawer.title}, box height",
            "Drawer sizes",
            drawer.box.height,
            "front height + gap − clearances below and above",
        ),
    ]


MEMBER = Member(
    "drawers",
    (*DRAWER_PARAMETERS, *RUNNER_PARAMETERS),
    CONSTRAINTS,
    _parts,
    _joints,
    derived=_derived,
    present=has_drawers,
)
