"""Two trestles, each a stretcher across the depth with a leg at each end, and a rail between them.

Stretchers and legs are those of ``bridled_legs``.  The rail runs along the length at the middle of
the stretchers' height, where a mortise weakens a loaded piece least (Noyes, Handwork in Wood,
ch. IX: mortise on the neutral axis); its tenons pass through the stretchers, shouldered all round.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from geometry.bench.base_numbers import BaseNumbers, base_numbers
from geometry.bench.base_place import SNUG_CORNERS
from geometry.bench.bridled_legs import SNUG_LEGS
from geometry.bench.constraint import Constraint, rule
from geometry.bench.derived import Derived, derived_angle, derived_length
from geometry.bench.member import THE_BASE, Member
from geometry.bench.overall import TRESTLES, base_is
from geometry.bench.wedges import PLAIN, WEDGED, wedge_piece
from geometry.cuts.cut import Blank
from geometry.design.joint import Joint
from geometry.design.parameter import Parameter, choice, length
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec
from geometry.joints.through_tenon import ThroughTenon, through_tenon, wedge
from geometry.primitives.frame import Frame

LEAST_WALL = 8.0  # mm of stretcher above and below the rail's mortise; common practice, no source


def _wedged(spec: BenchSpec) -> bool:
    return spec.value("rail_tenon") == WEDGED


PARAMETERS: tuple[Parameter, ...] = (
    length(
        "rail_width",
        "Rail width",
        "Base",
        50,
        20,
        300,
        "Across the depth, of the rail that joins the trestles.",
    ),
    length("rail_height", "Rail height", "Base", 32, 15, 200, "Of the rail, level side to side."),
    length(
        "rail_forward",
        "Rail forward",
        "Base",
        0,
        -400,
        400,
        "How far the rail lies in front of the trestles' middle; less than 0 behind it.",
    ),
    choice(
        "rail_tenon",
        "Rail tenon",
        "Base",
        WEDGED,
        (PLAIN, WEDGED),
        "Plain through tenons, or wedged at both edges from the outside.",
    ),
    length(
        "rail_tenon_height",
        "Rail tenon height",
        "Base",
        20,
        6,
        120,
        "Height of the rail's tenons; a third of the stretcher's (common practice, no source).",
        step=0.5,
    ),
    length(
        "rail_shoulder",
        "Rail shoulder",
        "Base",
        8,
        0,
        60,
        "Of the rail's tenons, at each edge of the rail.",
        step=0.5,
    ),
    length(
        "rail_wedge",
        "Wedge room",
        "Base",
        5,
        2,
        15,
        "How much longer a mortise is outside than inside, at each end: the wedge's thick end.",
        step=0.5,
        applies=_wedged,
    ),
    length(
        "rail_fit",
        "Rail fit",
        "Base",
        0.2,
        0,
        2,
        "Clearance of the rail's tenons in height, both cheeks together.",
        step=0.05,
    ),
)


@dataclass(frozen=True, slots=True)
class RailNumbers:
    """mm.  ``left`` and ``right`` are X of the trestles' outsides; ``middle`` is Y and
    ``level`` the height of the rail's middle; ``wedge_room`` is 0 for plain tenons."""

    legs: BaseNumbers
    left: float
    right: float
    middle: float
    level: float
    width: float
    height: float
    tenon_height: float
    shoulder: float
    wedge_room: float
    fit: float

    @property
    def tenon_width(self) -> float:
        return self.width - 2.0 * self.shoulder

    @property
    def between(self) -> float:
        """Length of the rail between its shoulders."""
        return self.right - self.left - 2.0 * self.legs.thickness

    def end(self, side: str) -> ThroughTenon:
        """The tenon in the ``left`` or the ``right`` trestle."""
        out = -1.0 if side == "left" else 1.0
        t = self.legs.thickness
        return ThroughTenon(
            face=(self.left + t if out < 0.0 else self.right - t, self.middle, self.level),
            out=(out, 0.0, 0.0),
            depth=t,
            grain=(0.0, 1.0, 0.0),
            half_grain=self.tenon_width / 2.0,
            half_cross=self.tenon_height / 2.0,
            fit=self.fit,
            wedge_room=self.wedge_room,
        )


@lru_cache(maxsize=512)
def rail_numbers(spec: BenchSpec) -> RailNumbers:
    """Read the rail from a spec."""
    b = base_numbers(spec)
    ends = [(b.tip(a)[1] + b.tip(z)[1]) / 2.0 for a, z in b.pairs]
    return RailNumbers(
        legs=b,
        left=spec.number("inset_left"),
        right=spec.number("length") - spec.number("inset_right"),
        middle=sum(ends) / 2.0 - spec.number("rail_forward"),
        level=b.height - b.stretcher_height / 2.0,
        width=spec.number("rail_width"),
        height=spec.number("rail_height"),
        tenon_height=spec.number("rail_tenon_height"),
        shoulder=spec.number("rail_shoulder"),
        wedge_room=spec.number("rail_wedge") if _wedged(spec) else 0.0,
        fit=spec.number("rail_fit"),
    )


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    """The rail, and its wedges."""
    r, timber = rail_numbers(spec), spec.word("timber")
    proud = r.legs.proud
    rail = Part(
        name="rail",
        title="Rail",
        kind="rail",
        material=timber,
        shape=Shape(Blank(r.right - r.left + 2.0 * proud, r.width, r.height), ()),
        frame=Frame.of(
            (r.left - proud, r.middle + r.width / 2.0, r.level + r.height / 2.0),
            (1.0, 0.0, 0.0),
            (0.0, -1.0, 0.0),
        ),
        allowance=2.0 * proud,
    )
    wedges = tuple(
        wedge_piece(name, title, timber, r.end(side), high=high)
        for name, title, side, high in _wedges(r)
    )
    return (rail, *wedges)


def _wedges(r: RailNumbers) -> tuple[tuple[str, str, str, bool], ...]:
    """Name, title, trestle and end of each wedge."""
    if r.wedge_room <= 0.0:
        return ()
    return tuple(
        (f"wedge_{side}_{edge}", f"Wedge, {side} {edge}", side, edge == "back")
        for side in ("left", "right")
        for edge in ("back", "front")
    )


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    r = rail_numbers(spec)
    rail = parts["rail"]
    tenons = [
        through_tenon(f"rail_{side}", rail, parts[f"stretcher_{side}"], r.end(side))
        for side in ("left", "right")
    ]
    wedges = [
        wedge(name, parts[name], rail, r.end(side), high=high) for name, _, side, high in _wedges(r)
    ]
    return (*tenons, *wedges)


def _leg_room(spec: BenchSpec) -> float:
    """Between the rail's mortise and the nearest leg, less what must be left."""
    r = rail_numbers(spec)
    b = r.legs
    half = r.tenon_width / 2.0 + r.wedge_room
    shoulder = b.leg_top / b.cosine
    back = min(b.tip("back_left")[1], b.tip("back_right")[1]) - shoulder
    front = max(b.tip("front_left")[1], b.tip("front_right")[1]) + shoulder
    rail = r.width / 2.0
    return min(
        back - (r.middle + half) - 15.0,
        r.middle - half - front - 15.0,
        back - (r.middle + rail),
        r.middle - rail - front,
    )


_ACROSS = (
    "depth inset_back_left inset_back_right inset_front_left inset_front_right leg_top_width splay "
    "rail_width rail_shoulder rail_forward rail_wedge rail_tenon"
)

CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "trestle_room",
        _ACROSS,
        _leg_room,
        "the rail would run into a leg, or its mortise come within {15 mm} of one",
    ),
    rule(
        "rail_length",
        "length inset_left inset_right base_thickness",
        lambda s: rail_numbers(s).between - 60.0,
        "the trestles would stand less than {60 mm} apart",
    ),
    rule(
        "rail_under",
        "rail_height stretcher_height",
        lambda s: s.number("stretcher_height") - s.number("rail_height"),
        "the rail would be higher than the stretchers",
    ),
    rule(
        "rail_mortise",
        "rail_tenon_height rail_fit stretcher_height",
        lambda s: (
            s.number("stretcher_height")
            - s.number("rail_tenon_height")
            - s.number("rail_fit")
            - 2.0 * LEAST_WALL
        ),
        "the mortise would leave less than {8 mm} of the stretcher above and below",
    ),
    rule(
        "rail_tenon_within",
        "rail_tenon_height rail_height",
        lambda s: s.number("rail_height") - s.number("rail_tenon_height"),
        "the tenon would be higher than the rail",
    ),
    rule(
        "rail_tenon_least",
        "rail_width rail_shoulder",
        lambda s: rail_numbers(s).tenon_width - 10.0,
        "the tenon would be narrower than {10 mm}",
    ),
)


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    r = rail_numbers(spec)
    rows = [
        derived_length(
            "rail_between",
            "Rail between shoulders",
            "Base",
            r.between,
            "length, insets, stretcher thickness",
        ),
        derived_length(
            "rail_length",
            "Rail length",
            "Base",
            r.right - r.left,
            "between the outsides of the trestles",
        ),
        derived_length(
            "rail_tenon_width",
            "Rail tenon width",
            "Base",
            r.tenon_width,
            "rail width − 2 × rail shoulder",
        ),
    ]
    if r.wedge_room > 0.0:
        rows.append(
            derived_angle(
                "rail_wedge_slope",
                "Wedge slope",
                "Base",
                math.degrees(math.atan(r.wedge_room / r.legs.thickness)),
                "wedge room over stretcher thickness",
            )
        )
    return tuple(rows)


def _snug(_spec: BenchSpec) -> tuple[dict[str, float], ...]:
    return (
        {
            **SNUG_LEGS,
            **SNUG_CORNERS,
            "rail_width": 20.0,
            "rail_height": 15.0,
            "rail_forward": 0.0,
            "rail_tenon_height": 6.0,
            "rail_shoulder": 2.0,
            "rail_wedge": 2.0,
            "rail_fit": 0.2,
        },
    )


def has_trestles(spec: BenchSpec) -> bool:
    return base_is(TRESTLES, spec)


MEMBER = Member(
    "trestles",
    PARAMETERS,
    CONSTRAINTS,
    _parts,
    _joints,
    derived=_derived,
    present=has_trestles,
    snug=_snug,
    made_into=THE_BASE,
)
