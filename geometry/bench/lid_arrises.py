"""The upper arris of a lid's front eased, and if asked those of its ends and of its back.

On a strip the hinges' knuckles lie in the lid's back arris, which stays square, and the strip's
ends are eased with the lid's.  A run that is too short for its size is left sharp.  On a lid of
sheet they lie on its lippings, and behind those on the sheet where they reach so far.
"""

from __future__ import annotations

from collections.abc import Iterator

from geometry.bench.arris_rows import (
    FACE_EDGE,
    FACE_SIDE,
    FAR_EDGE,
    LEAST_RUN,
    form_row,
    formed,
    run_row,
    size_row,
    snug_at,
    told,
)
from geometry.bench.constraint import Constraint, rule
from geometry.bench.lid import LID, LID_LIPPING, STRIP, lid_end_lip, lid_lip
from geometry.bench.lid_box import has_lid_box
from geometry.bench.lid_box_numbers import lid_box
from geometry.bench.lid_box_parameters import on_strip
from geometry.bench.lipped import mouldings_on
from geometry.bench.member import Member
from geometry.bench.seat_arrises import FRONT, ROUND
from geometry.cuts.edge_moulding import EdgeMoulding, along_arris
from geometry.design.parameter import Parameter, choice
from geometry.design.part import Part
from geometry.design.spec import BenchSpec
from geometry.joints.screw_rows import largest_head
from geometry.primitives.frame import Frame, Vec3

ALL_ROUND = "front, ends and back"
# Common practice, no source, these:
_MOST = 0.75  # of the lid's thickness
_BESIDE_HEAD = 1.0  # mm of wood beside a screw's head
_CLEAR = 2.0  # mm of wood beside or over a hinge's leaf

PARAMETERS: tuple[Parameter, ...] = (
    form_row("lid_edge", "Lid edge", "The upper arris of the lid."),
    size_row("lid_edge_size", "Lid edge size", 6.0, 40, "On the upper face and down the edge."),
    choice(
        "lid_edge_where",
        "Lid edge along",
        "Edges",
        FRONT,
        (FRONT, ROUND, ALL_ROUND),
        "The front, the ends too, or the back too; at a fixed strip the hinges lie in the lid's "
        "back arris, which stays square.",
        applies=lambda spec: formed("lid_edge")(spec) and _has_free_ends(spec),
    ),
    run_row(
        "lid_edge_stop",
        "Lid edge stopped",
        0,
        "From the ends of the front to where it begins; 0 runs through.",
        "lid_edge",
        applies=lambda spec: not _ends_too(spec),
    ),
)


def _has_free_ends(spec: BenchSpec) -> bool:
    """Whether its ends are of timber, or lipped."""
    return lid_lip(spec) <= 0.0 or lid_end_lip(spec) > 0.0


def _ends_too(spec: BenchSpec) -> bool:
    return spec.word("lid_edge_where") != FRONT and _has_free_ends(spec)


def _back_too(spec: BenchSpec) -> bool:
    return _ends_too(spec) and spec.word("lid_edge_where") == ALL_ROUND and not on_strip(spec)


def _beside_hinges(spec: BenchSpec) -> float:
    """Leaves open into the upper arris at a strip; under a lid hung on the back they lie below."""
    if not _ends_too(spec):
        return 1.0
    b, taken = lid_box(spec), spec.number("lid_edge_size") + _CLEAR
    beside, over = b.hinge_in - taken, b.lid - b.mortise - taken
    if b.has_strip:
        return beside
    return over if _back_too(spec) else max(beside, over)


def _beside_screws(spec: BenchSpec) -> float:
    """The strip is screwed down in the middles of the box's ends."""
    b = lid_box(spec)
    if not _ends_too(spec) or not b.has_strip:
        return 1.0
    in_from_the_end = b.over_ends + b.thickness / 2.0 - largest_head(b.thickness) / 2.0
    return in_from_the_end - _BESIDE_HEAD - spec.number("lid_edge_size")


CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "lid_edge_within",
        "lid_edge lid_edge_size lid_thickness",
        lambda s: _MOST * s.number("lid_thickness") - s.number("lid_edge_size"),
        "the edge would take more than three quarters of the lid's thickness",
    ),
    rule(
        "lid_edge_hinges",
        "lid_edge lid_edge_size lid_edge_where lid_made_of lid_lipped lid_hung lid_gap "
        "lid_thickness hinge_in hinge_closed",
        _beside_hinges,
        "the edge would come within {2 mm} of a hinge's leaf",
    ),
    rule(
        "lid_edge_screws",
        "lid_edge lid_edge_size lid_edge_where lid_made_of lid_lipped lid_hung lid_ends "
        "box_thickness",
        _beside_screws,
        "the edge would come within {1 mm} of the screws through the ends of the fixed strip",
    ),
)


def _has_edge(spec: BenchSpec) -> bool:
    return has_lid_box(spec) and formed("lid_edge")(spec)


def _cuts(spec: BenchSpec, part: Part) -> tuple[EdgeMoulding, ...]:
    blank = part.shape.blank
    if part.name == STRIP:
        return _ends(spec, blank.length, blank.width) if _ends_too(spec) else ()
    if part.kind not in (LID, LID_LIPPING):
        return ()
    b = lid_box(spec)
    whole = Frame.of((-b.over_ends, b.lid_back, b.top), (1, 0, 0), (0, -1, 0))
    return mouldings_on(_edges(spec, b.lid_length, b.lid_back - b.lid_front), whole, part)


def _edges(spec: BenchSpec, long: float, deep: float) -> Iterator[EdgeMoulding]:
    """Of a whole lid so long and deep, in its frame."""
    ends_too = _ends_too(spec)
    stop = 0.0 if ends_too else spec.number("lid_edge_stop")
    if long - 2.0 * stop >= LEAST_RUN * spec.number("lid_edge_size"):
        ends = ((stop, deep, 0.0), (long - stop, deep, 0.0))
        yield _edge(spec, ends, FAR_EDGE, stopped=stop > 0.0)
    if ends_too:
        yield from _ends(spec, long, deep)
    if _back_too(spec):
        yield _edge(spec, ((0.0, 0.0, 0.0), (long, 0.0, 0.0)), FACE_EDGE, stopped=False)


def _ends(spec: BenchSpec, long: float, deep: float) -> tuple[EdgeMoulding, ...]:
    return tuple(
        _edge(spec, ((x, 0.0, 0.0), (x, deep, 0.0)), (way, 0.0, 0.0), stopped=False)
        for x, way in ((0.0, -1.0), (long, 1.0))
    )


def _edge(spec: BenchSpec, ends: tuple[Vec3, Vec3], beside: Vec3, *, stopped: bool) -> EdgeMoulding:
    """On the arris of the face side and the face beside it."""
    return along_arris(
        spec.word("lid_edge"),
        spec.number("lid_edge_size"),
        ends,
        (FACE_SIDE, beside),
        stopped=(stopped, stopped),
    )


def _notes(spec: BenchSpec, part: Part) -> tuple[str, ...]:
    stop = 0.0 if _ends_too(spec) else spec.number("lid_edge_stop")
    if part.kind == LID_LIPPING:
        return told("upper arris", stop, "the ends", "with the lid's", part)
    if part.name == STRIP:
        return told("upper arrises of both ends", 0.0, "", "with the lid's", part)
    if part.name != LID:
        return ()
    where = "front, ends and back" if _back_too(spec) else "front and ends"
    which = f"upper arris of {where if _ends_too(spec) else 'the front'}"
    return told(which, stop, "the ends", "from end to end", part)


CHOICE_MEMBER = Member("lid edge", PARAMETERS, present=has_lid_box)

MEMBER = Member(
    "lid edges",
    (),
    CONSTRAINTS,
    cuts=_cuts,
    notes=_notes,
    present=_has_edge,
    snug=snug_at(lid_edge_size=0.5),
)
