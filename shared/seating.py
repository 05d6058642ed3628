"""What standards, studies and the trade say about seats: one row a rule, each with its source.

Lengths in mm, forces in N, shares as plain factors.

``read``: seen in a copy of the document; ``as quoted``: seen in a page that quotes it.  A rule of
the trade is marked ``common practice, no source``.
"""

from __future__ import annotations

from dataclasses import dataclass

GRAVITY = 9.80665  # m/s², standard gravity (ISO 80000-3)


@dataclass(frozen=True, slots=True)
class Span:
    """From the least to the greatest that a source gives; None where it gives no such end."""

    low: float | None
    high: float | None
    source: str


# 2010 ADA Standards for Accessible Design, section 903 (read).  The millimetres are the standard's
# own.  It binds only where another of its sections calls for it, never a bench at home.
ADA = "2010 ADA Standards, section 903"
ADA_HEIGHT = Span(430.0, 485.0, f"{ADA}.5")  # 17 to 19 in
ADA_DEPTH = Span(510.0, 610.0, f"{ADA}.3")  # 20 to 24 in
ADA_LENGTH = Span(1065.0, None, f"{ADA}.3")  # 42 in

# Seat height as a share of the lower leg, floor to the hollow of the knee.
LEG_RISING = Span(1.0, 1.2, "Aging Clin Exp Res 2013;25(3):305-9")
# Read: of 55 older adults more stood up in 30 s from a seat of 100, 110 or 120 % of the lower leg
# than from the usual 43 cm; 110 and 120 % were alike.
BEST_RISING = 1.1
LEAST_LEG = Span(0.8, None, "Percept Mot Skills 2007;104(1):21-31")
# Read: force and speed of rising fall below the lower leg's length, markedly at 20 % less.

# ISO 7174-1:1988, 7.1.1 (as quoted): a seat is tried for tipping by 600 N, 50 mm in from its edge.
TIPPING_LOAD, TIPPING_IN = 600.0, 50.0
TIPPING_SOURCE = "ISO 7174-1"

# Common practice, no source, all of these:
SHOE = 25.0  # a shoe's sole
KNEE_GAP = 50.0  # between the seat's front edge and the hollow of the knee
THIGH_SHARE = 2.0 / 3.0  # of the upper leg, to be carried on a long sit
SHORT_THIGH_SHARE = 0.5  # on a short one
ELBOW_ROOM = 50.0  # beside each pair of shoulders
HEEL_ROOM = 75.0  # under the front edge, to draw one's feet back when standing up
LEAST_ROUNDING = 3.0  # of the front edge, so that it does not press under the thigh
PRACTICE = "common practice, no source"
