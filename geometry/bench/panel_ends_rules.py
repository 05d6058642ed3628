"""What the ends of a panel bench must leave room for, however they are joined."""

from __future__ import annotations

from geometry.bench.constraint import Constraint, rule
from geometry.bench.panel_ends_numbers import MITRED, panel_ends
from geometry.design.spec import BenchSpec

# Common practice, no source, these:
LEAST_BETWEEN = 100.0  # mm between the ends: there must be something to sit on
LEAST_ABOVE = 40.0  # mm of an end above its relief
UNLIKE = 1.5  # times as thick one board of a mitre may be as the other: common practice, no source

_PLACES = "length end_thickness left_joint right_joint left_end_in right_end_in"


def _relieved(spec: BenchSpec) -> float:
    """How long the relief is, less the least; no relief at all is no trouble."""
    n = panel_ends(spec)
    return n.least_front - 2.0 * n.pad - 5.0 if n.relief > 0.0 else 1.0


def _mitre_even(spec: BenchSpec) -> float:
    """How far seat and ends are from being too unlike for a mitre."""
    n = panel_ends(spec)
    if all(end.joint != MITRED for end in n.ends):
        return 1.0
    thin, thick = sorted((n.thickness, n.seat_thickness))
    return UNLIKE * thin - thick


CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "ends_apart",
        _PLACES,
        lambda s: panel_ends(s).between - LEAST_BETWEEN,
        "the ends would stand less than {100 mm} apart",
    ),
    rule(
        "end_relief_low",
        "base_height end_relief",
        lambda s: panel_ends(s).underside - panel_ends(s).relief - LEAST_ABOVE,
        "the relief would leave less than {40 mm} of the ends",
    ),
    rule(
        "end_pads",
        "depth end_relief end_pad end_reveal left_joint right_joint",
        _relieved,
        "the pads would leave no relief between them",
    ),
    rule(
        "end_mitre",
        "seat_thickness end_thickness left_joint right_joint",
        _mitre_even,
        "seat and end would be too unlike in thickness for a mitre, more than 1 to 1½",
    ),
)
