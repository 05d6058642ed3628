"""Loose tenons in the case's mitres: how many, how large, how deep, and where in the mitre.

They stand square to the mitre.  Their mortises keep inside the corner, where the two boards cross:
what is housed in the boards or bored through them beyond it never meets one.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import lru_cache

from geometry.bench.case import has_case
from geometry.bench.case_numbers import LEFT, LIP_READS, MITRED, CaseNumbers, case_numbers
from geometry.bench.constraint import Constraint, rule
from geometry.bench.derived import Derived, derived_length
from geometry.bench.member import Member
from geometry.design.joint import FIRST, Joint, Measure
from geometry.design.parameter import Parameter, choice, count, length
from geometry.design.part import Part
from geometry.design.spec import BenchSpec
from geometry.joints.loose_tenon import LooseTenon, loose_tenon, slip
from geometry.primitives.frame import Vec3

GLUE, TENONS = "glue alone", "loose tenons"
# common practice, no source
LEAST_SKIN = 1.0  # mm of wood round a mortise, below which a router breaks through
_ROOT = math.sqrt(0.5)
_FORWARD: Vec3 = (0.0, -1.0, 0.0)


def has_mitres(spec: BenchSpec) -> bool:
    """Whether a case has a mitred end."""
    return has_case(spec) and MITRED in (spec.word("left_end"), spec.word("right_end"))


def has_mitre_tenons(spec: BenchSpec) -> bool:
    return has_mitres(spec) and spec.word("mitre_hold") == TENONS


CHOICE: tuple[Parameter, ...] = (
    choice(
        "mitre_hold",
        "Mitres held by",
        "Mitres",
        GLUE,
        (GLUE, TENONS),
        "Glue alone, or loose tenons square to the mitre as well.",
    ),
)


def _size(
    name: str, title: str, default: float, span: tuple[float, float], description: str
) -> Parameter:
    return length(name, title, "Mitres", default, *span, description, step=0.5)


PARAMETERS: tuple[Parameter, ...] = (
    count("mitre_tenon_count", "Tenons in a mitre", "Mitres", 3, 1, 8, "How many in each mitre."),
    _size(
        "mitre_tenon_first",
        "First tenon",
        70,
        (10, 400),
        "From the back edge to the middle of the first tenon.",
    ),
    _size("mitre_tenon_spacing", "Tenon spacing", 100, (10, 400), "From middle to middle."),
    _size(
        "mitre_tenon_in",
        "Tenon in the mitre",
        12,
        (5, 60),
        "From the inside arris across the mitre to the tenon's middle.",
    ),
    _size("mitre_tenon_width", "Tenon width", 30, (5, 100), "Along the mitre."),
    _size("mitre_tenon_thickness", "Tenon thickness", 4, (3, 20), "Across the mitre."),
    _size(
        "mitre_tenon_board",
        "Depth in top and bottom",
        9,
        (4, 50),
        "Of the mortises in top and bottom, square to the mitre.",
    ),
    _size(
        "mitre_tenon_panel",
        "Depth in the end panels",
        9,
        (4, 50),
        "Of the mortises in the end panels, square to the mitre.",
    ),
    length(
        "mitre_tenon_fit",
        "Tenon fit",
        "Mitres",
        0.2,
        0.2,
        2,
        "How much the mortises are larger than the tenons, each way.",
        step=0.05,
    ),
)


@dataclass(frozen=True, slots=True)
class MitreTenons:
    """As in the catalogue; mm."""

    count: int
    first: float
    spacing: float
    inward: float
    width: float
    thickness: float
    board: float
    panel: float
    fit: float

    @property
    def half_mouth(self) -> float:
        """Half a mortise's thickness."""
        return (self.thickness + self.fit) / 2.0

    @property
    def half_width(self) -> float:
        """Half a mortise's width."""
        return (self.width + self.fit) / 2.0

    @property
    def last(self) -> float:
        """From the back edge to the middle of the last tenon."""
        return self.first + (self.count - 1) * self.spacing


@lru_cache(maxsize=512)
def mitre_tenons(spec: BenchSpec) -> MitreTenons:
    """Read the tenons from a spec."""
    return MitreTenons(
        count=spec.count("mitre_tenon_count"),
        first=spec.number("mitre_tenon_first"),
        spacing=spec.number("mitre_tenon_spacing"),
        inward=spec.number("mitre_tenon_in"),
        width=spec.number("mitre_tenon_width"),
        thickness=spec.number("mitre_tenon_thickness"),
        board=spec.number("mitre_tenon_board"),
        panel=spec.number("mitre_tenon_panel"),
        fit=spec.number("mitre_tenon_fit"),
    )


def corners_of(c: CaseNumbers) -> tuple[tuple[str, str], ...]:
    """The mitres of a case: the board, and the side it is on."""
    return tuple(
        (board, end.side) for end in (c.left, c.right) if end.mitred for board in ("top", "bottom")
    )


def _tenon(c: CaseNumbers, m: MitreTenons, board: str, side: str, k: int) -> LooseTenon:
    """The k-th tenon from the back in one mitre, from the board into the end panel."""
    sx, sz = (-1.0 if side == LEFT else 1.0), (1.0 if board == "top" else -1.0)
    inside_x = c.thickness if side == LEFT else c.length - c.thickness
    inside_z = c.inside_high if board == "top" else c.inside_low
    from_back = m.first + k * m.spacing
    across = m.inward * _ROOT
    return LooseTenon(
        middle=(inside_x + sx * across, -from_back, inside_z + sz * across),
        out=(sx * _ROOT, 0.0, -sz * _ROOT),
        along=_FORWARD,
        width=m.width,
        thickness=m.thickness,
        depth_first=m.board,
        depth_second=m.panel,
        fit=m.fit,
        places=(
            Measure(
                "from_back",
                from_back,
                "mm",
                "the mortise's middle from the back edge",
                FIRST,
                _FORWARD,
            ),
            Measure(
                "in_the_mitre",
                m.inward,
                "mm",
                "its middle from the inside arris, across",
                FIRST,
                (sx * _ROOT, 0.0, sz * _ROOT),
            ),
        ),
    )


def _all(spec: BenchSpec) -> tuple[tuple[str, str, str, LooseTenon], ...]:
    """Name, board, side and place of each."""
    c, m = case_numbers(spec), mitre_tenons(spec)
    return tuple(
        (f"loose_tenon_{board}_{side}_{k + 1}", board, side, _tenon(c, m, board, side, k))
        for board, side in corners_of(c)
        for k in range(m.count)
    )


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    timber = spec.word("timber")
    return tuple(
        slip(name, f"Loose tenon, {board} {side} {name.rsplit('_', 1)[1]}", timber, at)
        for name, board, side, at in _all(spec)
    )


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    return tuple(
        loose_tenon(f"{name}_in_{holder}", parts[holder], parts[name], at, second=second)
        for name, board, side, at in _all(spec)
        for holder, second in ((board, False), (f"end_panel_{side}", True))
    )


def outside_wall(c: CaseNumbers, m: MitreTenons, depth: float) -> float:
    """What a mortise so deep leaves of its board toward the outside face."""
    return c.thickness - (m.inward + m.half_mouth + depth) * _ROOT


def _least_wall(spec: BenchSpec) -> float:
    m = mitre_tenons(spec)
    return outside_wall(case_numbers(spec), m, max(m.board, m.panel)) - LEAST_SKIN


def _in_the_corner(name: str) -> Callable[[BenchSpec], float]:
    def room(spec: BenchSpec) -> float:
        m = mitre_tenons(spec)
        return m.inward - m.half_mouth - spec.number(name)

    return room


def _front_room(spec: BenchSpec) -> float:
    m = mitre_tenons(spec)
    return case_numbers(spec).sheet_front - m.last - m.half_width - LEAST_SKIN


def _back_room(spec: BenchSpec) -> float:
    m = mitre_tenons(spec)
    c = case_numbers(spec)
    return m.first - m.half_width - max(c.rebate_width, c.sheet_back) - LEAST_SKIN


_THROUGH = "mitre_tenon_in mitre_tenon_thickness mitre_tenon_fit"
_PAST = "the mortise would reach past the corner, where housings and bores are cut"

CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "mitre_tenon_wall",
        f"board_thickness mitre_tenon_board mitre_tenon_panel {_THROUGH}",
        _least_wall,
        "the mortise would leave less than {1 mm} under the outside face",
    ),
    *(
        rule(f"{name}_corner", f"{name} {_THROUGH}", _in_the_corner(name), _PAST)
        for name in ("mitre_tenon_board", "mitre_tenon_panel")
    ),
    rule(
        "mitre_tenon_shape",
        "mitre_tenon_width mitre_tenon_thickness",
        lambda s: s.number("mitre_tenon_width") - s.number("mitre_tenon_thickness") - 2.0,
        "the tenon would be all round edges and hold no more than a dowel",
    ),
    rule(
        "mitre_tenon_apart",
        "mitre_tenon_spacing mitre_tenon_width mitre_tenon_fit",
        lambda s: s.number("mitre_tenon_spacing") - 2.0 * mitre_tenons(s).half_width - 5.0,
        "less than {5 mm} of wood would stay between two mortises",
    ),
    rule(
        "mitre_tenon_back",
        "mitre_tenon_first mitre_tenon_width mitre_tenon_fit back_thickness back_let_in "
        f"{LIP_READS}",
        _back_room,
        "the first mortise would come within {1 mm} of the rebate for the back, or of a lipping",
    ),
    rule(
        "mitre_tenon_front",
        "mitre_tenon_count mitre_tenon_first mitre_tenon_spacing mitre_tenon_width mitre_tenon_fit "
        f"depth {LIP_READS}",
        _front_room,
        "the last mortise would come within {1 mm} of the front edge or its lipping",
    ),
)


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    c, m = case_numbers(spec), mitre_tenons(spec)
    return (
        derived_length(
            "mitre_tenon_length",
            "Tenon length",
            "Mitres",
            _tenon(c, m, "top", LEFT, 0).length,
            "both depths, less {1 mm} for the glue",
        ),
        derived_length(
            "mitre_tenon_skin",
            "Wood left outside",
            "Mitres",
            outside_wall(c, m, max(m.board, m.panel)),
            "board thickness, place in the mitre, tenon thickness and depth",
        ),
    )


def _snug(spec: BenchSpec) -> tuple[dict[str, float], ...]:
    """First across the mitre, in proportion to the boards; then along it too."""
    c = case_numbers(spec)
    least = math.ceil(2.0 * max(c.rebate_width, c.sheet_back)) / 2.0
    across = {
        "mitre_tenon_in": 5.6,
        "mitre_tenon_thickness": 3.0,
        "mitre_tenon_board": 4.0,
        "mitre_tenon_panel": 4.0,
        "mitre_tenon_fit": 0.2,
    }
    along = {
        "mitre_tenon_first": least + 4.5,
        "mitre_tenon_width": 5.0,
        "mitre_tenon_spacing": 10.5,
    }
    return (across, {**across, **along})


CHOICE_MEMBER = Member("mitres", CHOICE, present=has_mitres)

MEMBER = Member(
    "mitre tenons",
    PARAMETERS,
    CONSTRAINTS,
    _parts,
    _joints,
    derived=_derived,
    present=has_mitre_tenons,
    snug=_snug,
)
