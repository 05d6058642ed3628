"""Checks of mortises, bores and screws of any joint: which other cut of the piece comes near.

Whatever joint a hollow belongs to, and whatever cuts come after it (taper, bevel, housing, rebate,
chamfer, carving, another mortise), the wood between is measured on their solids.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from geometry.bench.arris_rows import EDGE_ON
from geometry.bench.bench import Bench
from geometry.bench.case_numbers import case_numbers
from geometry.bench.edges import size_name
from geometry.bench.mitre_tenons import mitre_tenons
from geometry.checks.check import Check
from geometry.checks.limits_of_joints import LEAST_WALL
from geometry.checks.limits_of_wood import LEAST_BESIDE, LEAST_OVER_SCREW
from geometry.cuts.bore import Bore
from geometry.cuts.chamfer import Chamfer
from geometry.cuts.cut import Cut
from geometry.cuts.edge_moulding import EdgeMoulding
from geometry.cuts.hinge_mortise import HingeMortise
from geometry.cuts.mortise import Mortise
from geometry.design.finding import Finding, Level, Mend
from geometry.design.part import Part
from geometry.joints.face_to_face import SCREWED, SLOTTED
from geometry.solids.cavities import Bored, Sunk
from geometry.solids.nearness import Near, nearby, walls
from shared.units import length_mark

_HAIR = 1e-9
_PLACED_BY_THE_RUNNER = 0.01  # mm: a hole that the drawer's runner asks for is told of if opened

_SCREW = "screw"

# By kind of joint: the family that its findings belong to, and what its hollow is called.
_CALLED: dict[str, tuple[str, str]] = {
    "loose tenon": ("mortise", "a mortise for a loose tenon"),
    "slotted screw": (_SCREW, "a screw's slot"),
    "button": ("button", "the mortise for a button"),
    "screwed button": (_SCREW, "a screw's hole"),
    "levelling foot": ("insert", "the boring for a foot's insert"),
    "round tenon": ("round_mortise", "the hole for a round tenon"),
    SCREWED: ("joint_mortise", "a screw's hole"),
    SLOTTED: ("joint_mortise", "a screw's hole"),
}
_PILOT = (_SCREW, "a screw's hole")
_RUNNER = ("runner_hole", "a hole for a runner's pin")

# Those beside the tenons of aprons and of a rest's rails have checks of their own, bridles' too.
_WALLED = ("apron tenon", "rail tenon")

# Joints that carry people: their walls are thin below the limit for walls beside mortises.
_CARRYING = (
    "rail tenon",
    "post tenon",
    "apron tenon",
    "stub tenon",
    "housed rail",
    "wedged tenon",
    "through tenon",
)


@dataclass(frozen=True, slots=True)
class _Hollow:
    """A hollow in a piece and the joint that it was cut for, empty for the piece's own."""

    holder: Part
    cut: Cut
    kind: str

    @property
    def family(self) -> str:
        return self._called[0]

    @property
    def words(self) -> str:
        return self._called[1]

    @property
    def _called(self) -> tuple[str, str]:
        if isinstance(self.cut, Bore):
            return _PILOT if self.kind else _RUNNER
        return _CALLED.get(self.kind, ("joint_mortise", f"the mortise for {_an(self.kind)}"))


@dataclass(frozen=True, slots=True)
class _Met:
    """A hollow, and what comes near it."""

    hollow: _Hollow
    near: Near


def _an(kind: str) -> str:
    return f"{'an' if kind[0] in 'aeiou' else 'a'} {kind}"


def _hollows(bench: Bench) -> Iterator[_Hollow]:
    kinds = {
        (name, cut): joint.kind
        for joint in bench.joints
        for name, cuts in zip(joint.parts, (joint.cuts_first, joint.cuts_second), strict=True)
        for cut in cuts
        if isinstance(cut, Bored)
    }
    for part in bench.parts:
        for cut in dict.fromkeys(part.shape.cuts):
            if isinstance(cut, Bored):
                yield _Hollow(part, cut, kinds.get((part.name, cut), ""))


def _near(bench: Bench) -> Iterator[Finding]:
    least, over = LEAST_BESIDE.of(bench), LEAST_OVER_SCREW.of(bench)
    met = []
    for hollow in _hollows(bench):
        search = over if hollow.family == _SCREW else least
        search = search if hollow.kind else _PLACED_BY_THE_RUNNER
        for near in nearby(hollow.holder.shape, hollow.cut, search - _HAIR):
            if near.cut is not None or not _is_judged_by_walls(hollow):
                met.append(_Met(hollow, near))
                break
    for group in _grouped(met):
        yield _finding(bench, group, over if group[0].hollow.family == _SCREW else least)


def _is_judged_by_walls(hollow: _Hollow) -> bool:
    return hollow.kind in _CARRYING or hollow.kind in ("bridle joint", "levelling foot")


def _grouped(met: list[_Met]) -> list[list[_Met]]:
    """What is opened, or comes near, of one family in one piece, the worst first."""
    groups: dict[tuple[str, str, bool], list[_Met]] = {}
    for one in met:
        key = (one.hollow.holder.name, one.hollow.family, one.near.distance <= 0.0)
        groups.setdefault(key, []).append(one)
    return [sorted(group, key=lambda one: one.near.distance) for group in groups.values()]


def _finding(bench: Bench, group: list[_Met], least: float) -> Finding:
    hollow, near = group[0].hollow, group[0].near
    opened = near.distance <= 0.0
    many = f" ({len(group)} of them)" if len(group) > 1 else ""
    holder = f"“{hollow.holder.title}”"
    if opened:
        what = f"The {near.title} opens {hollow.words} in {holder}"
    else:
        other = "another" if near.title == hollow.cut.title else f"the {near.title}"
        what = (
            f"Only {length_mark(near.distance)} of wood is left between {hollow.words} in "
            f"{holder} and {other}"
        )
    return Finding(
        check=f"{hollow.family}_opened" if opened else f"{hollow.family}_near",
        level=Level.DO_NOT_CUT if opened or hollow.family == _SCREW else Level.THINK_AGAIN,
        message=f"{what}{many}.",
        parts=(hollow.holder.name,),
        place=hollow.holder.frame.to_bench(near.place),
        amount=near.distance,
        limit=least,
        mend=_mend(bench, group, least),
    )


def _mend(bench: Bench, group: list[_Met], least: float) -> Mend | None:
    """What would leave the least: a smaller edge, less depth."""
    hollow, near = group[0].hollow, group[0].near
    lacking = least - near.distance
    if hollow.kind == "loose tenon":
        return _shallower(bench, group, least)
    if isinstance(near.cut, Chamfer | EdgeMoulding):
        return _smaller_edge(bench, hollow.holder, lacking)
    if isinstance(hollow.cut, Bore) and hollow.kind:
        return _shorter_screws(hollow, near.cut, least, lacking)
    if hollow.kind == "apron tenon" and isinstance(near.cut, Mortise):
        return _less(bench, "apron_tenon_length", lacking, "Make the tenons {} long.")
    return None


def _shallower(bench: Bench, group: list[_Met], least: float) -> Mend | None:
    """Mortises in mitres: where only the outside face comes near, less depth."""
    if any(one.near.title != "reverse" for one in group):
        return None
    c, m = case_numbers(bench.spec), mitre_tenons(bench.spec)
    fitting = (c.thickness - least) * math.sqrt(2.0) - m.inward - m.half_mouth
    if fitting < 4.0:
        return None
    changes = tuple(
        (name, fitting)
        for name, depth in (("mitre_tenon_board", m.board), ("mitre_tenon_panel", m.panel))
        if depth > fitting
    )
    return Mend(f"Make the mortises {length_mark(fitting)} deep.", changes)


def _smaller_edge(bench: Bench, holder: Part, lacking: float) -> Mend | None:
    """An edge is as large along both faces: square to its flat it gives way by less."""
    edges = {"leg": "leg_edge", **EDGE_ON}
    name = f"{edges[holder.kind]}_size" if holder.kind in edges else size_name(bench.spec)
    return _less(bench, name, lacking * math.sqrt(2.0), "Make the edge {}.")


def _shorter_screws(
    hollow: _Hollow, other: Cut | None, least: float, lacking: float
) -> Mend | None:
    assert isinstance(hollow.cut, Bore)
    bite = hollow.cut.depth - lacking
    if isinstance(other, Sunk) and not isinstance(other, HingeMortise):
        bite = hollow.holder.shape.blank.thickness - other.depth - least
    if bite < 6.0:
        return None
    return Mend(f"Let the screws go in {length_mark(bite)}.", (("fixing_bite", bite),))


def _less(bench: Bench, name: str, by: float, sentence: str) -> Mend | None:
    wanted = math.floor((bench.spec.number(name) - by) * 10.0 + 1e-6) / 10.0
    if wanted <= 0.0:
        return None
    return Mend(sentence.format(length_mark(wanted)), ((name, wanted),))


def _thin_walls(bench: Bench) -> Iterator[Finding]:
    """Walls of mortises that carry people, against the faces of their pieces."""
    least = LEAST_WALL.of(bench)
    met: dict[str, list[_Met]] = {}
    for hollow in _hollows(bench):
        if hollow.kind not in _CARRYING:
            continue
        for near in walls(hollow.holder.shape, hollow.cut, least - _HAIR):
            if hollow.kind in _WALLED and not _behind(hollow.cut, near):
                continue
            met.setdefault(hollow.holder.name, []).append(_Met(hollow, near))
    for name, group in met.items():
        worst = min(group, key=lambda one: one.near.distance)
        hollow, near = worst.hollow, worst.near
        opened = near.distance <= 0.0
        yield Finding(
            check="mortise_comes_through" if opened else "thin_mortise_wall",
            level=Level.DO_NOT_CUT if opened else Level.THINK_AGAIN,
            message=(
                f"{hollow.words[0].upper()}{hollow.words[1:]} comes out through the {near.title} "
                f"of “{hollow.holder.title}”."
                if opened
                else f"{hollow.words[0].upper()}{hollow.words[1:]} leaves only "
                f"{length_mark(near.distance)} of “{hollow.holder.title}” at its "
                f"{near.title}, less than {length_mark(least)}."
            ),
            parts=(name,),
            place=hollow.holder.frame.to_bench(near.place),
            amount=near.distance,
            limit=least,
            mend=_thicker_wall(bench, worst, least - near.distance),
        )


def _behind(cut: Cut, near: Near) -> bool:
    """Whether a wall lies at the floor of a mortise."""
    if not isinstance(cut, Mortise):
        return False
    floor, mouth = cut.floor[0], cut.mouth[0]
    along = sum((f - m) * t for f, m, t in zip(floor, mouth, near.toward, strict=True))
    return along > 0.7 * math.dist(floor, mouth)


_LENGTHS = {
    "stub tenon": "seat_rail_in",
    "housed rail": "seat_rail_in",
    "apron tenon": "apron_tenon_length",
    "rail tenon": "rest_tenon_length",
    "post tenon": "post_tenon_depth",
}
_THICKNESSES = {"rail tenon": "rest_tenon", "post tenon": "post_tenon"}


def _thicker_wall(bench: Bench, met: _Met, lacking: float) -> Mend | None:
    kind = met.hollow.kind
    if _behind(met.hollow.cut, met.near):
        name = _LENGTHS.get(kind)
        return _less(bench, name, lacking, "Make the tenons {} long.") if name else None
    name = _THICKNESSES.get(kind)
    return _less(bench, name, 2.0 * lacking, "Make the tenons {} thick.") if name else None


CHECKS: tuple[Check, ...] = (
    Check(
        "cuts_near",
        "Cuts that open or come near a mortise, bore or screw",
        "Measures the wood between each mortise, bore, slot and screw's hole and every other cut "
        "of its piece: taper, bevel, housing, rebate, chamfer, carving, another mortise, and the "
        "outside faces. A cut that meets one shows what is in it and takes its hold; less than "
        "{3 mm} tears out under the cutter, and less than {1 mm} over a screw is pushed up by its "
        "point (common practice, no source). Holes that a drawer's runner asks for are told of "
        "only where they are opened.",
        _near,
        limits=(LEAST_BESIDE, LEAST_OVER_SCREW),
    ),
    Check(
        "thin_mortise_walls",
        "Thin wood beside or behind a mortise",
        "The wood beside and behind a mortise that carries people splits or breaks out when its "
        "tenon works. It is measured on each piece against its faces; under {6 mm} it is thin "
        "(common practice, no source). Bridles and the legs of aprons have checks of their own.",
        _thin_walls,
        limits=(LEAST_WALL,),
    ),
)
