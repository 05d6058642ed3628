"""Lippings or edge bands on the edges of a lid of sheet, which keeps its finished size.

On its front edge; on its back edge and its ends too, if the maker says so.  Those in front and at
the back lap over those on the ends.  Leaves of hinges are let into the back one, and through it
where it is thinner than they go in.
"""

from __future__ import annotations

from collections.abc import Mapping

from geometry.bench.constraint import Constraint, rule
from geometry.bench.lid import (
    LID,
    hung_at,
    hung_by,
    lid_back_lip,
    lid_end_lip,
    lid_lip,
    lid_part,
)
from geometry.bench.lid_box import has_lid_box
from geometry.bench.lid_box_numbers import lid_box
from geometry.bench.lipped import (
    FRONT_ALONE,
    LIPPED_ALONG,
    EdgeOf,
    edge_strip,
    glued_strip,
    strip_name,
)
from geometry.bench.member import THE_LID, Member
from geometry.cuts.cut import Cut
from geometry.design.joint import Joint
from geometry.design.parameter import Parameter, choice, length
from geometry.design.part import Part
from geometry.design.spec import BenchSpec
from geometry.joints.hinged import leaves_in

PARAMETERS: tuple[Parameter, ...] = (
    length(
        "lid_lip",
        "Lid lipping",
        "Lid",
        6,
        0.4,
        30,
        "Thickness of the lipping or edge band; the sheet behind it is so much narrower.",
        step=0.1,
    ),
    choice(
        "lid_lipped",
        "Lid lipped along",
        "Lid",
        FRONT_ALONE,
        LIPPED_ALONG,
        "Its ends show beside the box, its back edge when it is open.",
    ),
)


def _on_the_box(spec: BenchSpec) -> float:
    """How much more than half of the box's front lies under the sheet."""
    b = lid_box(spec)
    return -b.depth + b.thickness / 2.0 - (b.lid_front + lid_lip(spec))


def _on_the_ends(spec: BenchSpec) -> float:
    """How much more than half of the box's ends lies under the sheet."""
    b = lid_box(spec)
    return b.over_ends + b.thickness / 2.0 - lid_end_lip(spec)


def _on_the_back(spec: BenchSpec) -> float:
    """The same of the box's back, where the lid hangs on that."""
    b = lid_box(spec)
    return _FREE if b.has_strip else b.thickness / 2.0 - lid_back_lip(spec)


def _hinges(spec: BenchSpec) -> float:
    """How far the leaves keep off the lippings of the ends."""
    b, lip = lid_box(spec), lid_back_lip(spec)
    if b.has_strip and lip >= b.mortise:
        return _FREE  # they lie wholly in the lipping that laps over those
    return b.hinge_in - lid_end_lip(spec)


def _stay(spec: BenchSpec) -> float:
    """How far the stays' screws keep in front of the back lipping."""
    b, lip = lid_box(spec), lid_back_lip(spec)
    back = b.pin_place[0] - b.lid_back
    return b.stay_on_lid - back - lip - LEAST_BEYOND_LIP if lip > 0.0 else _FREE


_FREE = 1.0  # what does not apply binds nothing
LEAST_BEYOND_LIP = 5.0  # mm from the joint of a lipping to a screw; common practice, no source

CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "lid_lip_front",
        "lid_lip lid_front box_thickness depth",
        _on_the_box,
        "the joint of the lid's lipping would lie behind the middle of the box's front",
    ),
    rule(
        "lid_lip_ends",
        "lid_lip lid_lipped lid_ends box_thickness",
        _on_the_ends,
        "the joints of the lippings on the lid's ends would lie past the middle of the box's ends",
    ),
    rule(
        "lid_lip_back",
        "lid_lip lid_lipped lid_hung box_thickness",
        _on_the_back,
        "the joint of the lid's back lipping would lie in front of the middle of the box's back",
    ),
    rule(
        "lid_lip_hinges",
        "lid_lip lid_lipped lid_hung lid_gap hinge_closed hinge_in",
        _hinges,
        "the hinges would be let into the lippings of the lid's ends",
    ),
    rule(
        "lid_lip_stay",
        "lid_lip lid_lipped lid_hung lid_strip lid_gap stay_on_lid",
        _stay,
        "the stay would be screwed into the lid's back lipping, or less than {5 mm} from it",
    ),
)


def has_lid_lipping(spec: BenchSpec) -> bool:
    return has_lid_box(spec) and lid_lip(spec) > 0.0


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    core, timber = lid_part(spec), spec.word("timber")
    blank, lip, ends = core.shape.blank, lid_lip(spec), lid_end_lip(spec)
    over, across = (-ends, blank.length + ends), (0.0, blank.width)
    return tuple(
        edge_strip(core, edge, lip, over if edge in _ALONG else across, timber)
        for edge in _edges(spec)
    )


_ALONG = (EdgeOf.FRONT, EdgeOf.BACK)


def _edges(spec: BenchSpec) -> tuple[EdgeOf, ...]:
    """Those that are lipped."""
    return (
        EdgeOf.FRONT,
        *((EdgeOf.BACK,) if lid_back_lip(spec) > 0.0 else ()),
        *((EdgeOf.LEFT, EdgeOf.RIGHT) if lid_end_lip(spec) > 0.0 else ()),
    )


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    core, blank = parts[LID], parts[LID].shape.blank
    whole = blank.width + lid_lip(spec) + lid_back_lip(spec)
    long = blank.length + 2.0 * lid_end_lip(spec)
    return tuple(
        glued_strip(core, parts[strip_name(LID, edge)], whole if edge in _ALONG else long)
        for edge in _edges(spec)
    )


def _cuts(spec: BenchSpec, part: Part) -> tuple[Cut, ...]:
    """What of the leaves is let into sheet behind the lipping, or into a lipping beside it."""
    back = strip_name(LID, EdgeOf.BACK)
    if part.name not in (LID, back) or part.name == hung_by(spec) or lid_back_lip(spec) <= 0.0:
        return ()
    return leaves_in(part, hung_at(spec))


MEMBER = Member(
    "lid lipping",
    PARAMETERS,
    CONSTRAINTS,
    _parts,
    _joints,
    _cuts,
    present=has_lid_lipping,
    snug=lambda _spec: ({"lid_lip": 0.4},),
    made_into=THE_LID,
)
