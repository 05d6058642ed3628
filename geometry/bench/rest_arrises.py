"""Long arrises of a back rest's rails and slats, eased alike: those toward the sitter, or all.

Runs stop before the tenons, or go through to shoulders that still close round the mortise.  A
stretch that is too short for its size is left sharp.
"""

from __future__ import annotations

from geometry.bench.arris_rows import SHARE, form_row, formed, run_row, size_row, snug_at, told
from geometry.bench.constraint import Constraint, rule
from geometry.bench.member import Member
from geometry.bench.rail_runs import (
    CLEAR,
    LEAST_STOP,
    Arris,
    Stretch,
    along_stretches,
    face_edge_arrises,
    face_side_arrises,
    far_edge_arrises,
    tenon_shoulder,
)
from geometry.bench.rest_numbers import rest_numbers
from geometry.bench.rest_parameters import has_rest
from geometry.bench.rest_rails import rail_places, slat_places
from geometry.cuts.cut import Blank
from geometry.cuts.edge_moulding import EdgeMoulding
from geometry.design.parameter import Parameter, choice
from geometry.design.part import Part
from geometry.design.spec import BenchSpec

SITTER, ALL = "toward the sitter", "all"
_KINDS = ("rest rail", "slat")
_BESIDE = 1.0  # mm of a rail's edge between its moulding and a slat; common practice, no source

PARAMETERS: tuple[Parameter, ...] = (
    form_row("rest_edge", "Rest arrises", "Long arrises of the back rest's rails and slats."),
    size_row("rest_edge_size", "Rest arris size", 1.5, 20, "On both faces of the arris."),
    choice(
        "rest_edge_where",
        "Rest arrises eased",
        "Edges",
        SITTER,
        (SITTER, ALL),
        "The two toward the sitter, or those behind too.",
        applies=formed("rest_edge"),
    ),
    run_row(
        "rest_edge_stop",
        "Rest arris stopped",
        10,
        "From the joints to where it begins; 0 runs through.",
        "rest_edge",
    ),
)


def _cuts(spec: BenchSpec, part: Part) -> tuple[EdgeMoulding, ...]:
    if part.kind not in _KINDS:
        return ()
    return along_stretches(
        spec.word("rest_edge"),
        spec.number("rest_edge_size"),
        spec.number("rest_edge_stop"),
        _arrises(spec, part.shape.blank),
        (_stretch(spec, part),),
    )


def _notes(spec: BenchSpec, part: Part) -> tuple[str, ...]:
    if part.kind not in _KINDS:
        return ()
    toward = spec.word("rest_edge_where") == SITTER
    which = "long arrises toward the sitter" if toward else "all four long arrises"
    stop = spec.number("rest_edge_stop")
    return told(which, stop, "the joints", "through to the shoulders", part)


def _arrises(spec: BenchSpec, blank: Blank) -> tuple[Arris, ...]:
    """Rails and slats have their face sides toward the sitter."""
    if spec.word("rest_edge_where") == SITTER:
        return face_side_arrises(blank)
    return (*face_edge_arrises(blank), *far_edge_arrises(blank))


def _stretch(spec: BenchSpec, part: Part) -> Stretch:
    r = rest_numbers(spec)
    places = rail_places(r) if part.kind == "rest rail" else slat_places(r)
    first, last = (tenon_shoulder(part, at) for at in places[part.name])
    return (first, last) if first.x < last.x else (last, first)


def _narrowest(spec: BenchSpec) -> float:
    r = rest_numbers(spec)
    sizes = [r.rail_thickness, r.top_width]
    if r.further:
        sizes.append(r.rail_width)
    if r.slats:
        sizes += [r.slat_thickness, r.slat_width]
    return min(sizes)


def _through(spec: BenchSpec) -> float:
    """The largest moulding that may run into the joints."""
    r = rest_numbers(spec)
    most = max(r.shoulder, (r.rail_thickness - r.tenon - r.fit) / 2.0)
    return min(most, r.slat_shoulder) if r.slats else most


def _beside_slats(spec: BenchSpec) -> float:
    """A slat is as thick as its mortise, in the middle of the rail's edge."""
    r = rest_numbers(spec)
    if not r.slats:
        return 1.0
    beside = (r.rail_thickness - r.slat_thickness - r.fit) / 2.0
    return beside - spec.number("rest_edge_size") - _BESIDE


_RAILS = "back_rest rest_rail_count rest_rail_thickness rest_fit"

CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "rest_edge_within",
        f"rest_edge rest_edge_size {_RAILS} top_rail_width rest_rail_width slat_thickness "
        "slat_width slat_count",
        lambda s: _narrowest(s) / SHARE - s.number("rest_edge_size"),
        "the edges would take more than two thirds of a rail's or a slat's thickness or width",
    ),
    rule(
        "rest_edge_shoulder",
        f"rest_edge rest_edge_size rest_edge_stop {_RAILS} rest_tenon rest_shoulder slat_shoulder "
        "slat_count",
        lambda s: max(
            s.number("rest_edge_stop") - LEAST_STOP,
            _through(s) - CLEAR - s.number("rest_edge_size"),
        ),
        "the edge would run through to within {2 mm} of a mortise and open the shoulder: it must "
        "be smaller, or stop {3 mm} before the joint or more",
    ),
    rule(
        "rest_edge_slats",
        f"rest_edge rest_edge_size {_RAILS} slat_thickness slat_count",
        _beside_slats,
        "the rails' edges would come within {1 mm} of the slats",
    ),
)


def _has_edges(spec: BenchSpec) -> bool:
    return has_rest(spec) and formed("rest_edge")(spec)


CHOICE_MEMBER = Member("rest arrises", PARAMETERS, present=has_rest)

MEMBER = Member(
    "rest edges",
    (),
    CONSTRAINTS,
    cuts=_cuts,
    notes=_notes,
    present=_has_edges,
    snug=snug_at(rest_edge_size=1.0, rest_edge_stop=10.0),
)
