"""Pieces that bend together over the same supports, and what is asked of each.  N, mm, MPa.

They bend alike, so each takes a part of every moment as its own stiffness is to that of all.  The
loads are tried in every place along the line: for strength up to its very ends, for sag no nearer
to them than somebody's middle can be.  Shear is that of loads a twentieth of a span from a support
or farther, as what stands nearer presses the wood and does not shear it.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from geometry.strength.beam import Beam, Floats, Response, respond
from geometry.strength.loads import NEAREST, Case, Loads
from geometry.strength.stuff import SHEAR_PEAK, Section, stuff_of

# The last cracks a board's upper face, and does not break it: it goes on from there as two boards.
BENDING, SHEAR, HOUSED = "bending", "shear", "bending over a housing"
_CLOSE = 1e-9  # mm


@dataclass(frozen=True, slots=True)
class Piece:
    """``part`` names it; its ``section`` sets how stiff it is, ``weakest`` how much it bears
    between supports and ``at_supports`` over them, where joints have weakened it."""

    part: str
    material: str
    section: Section
    weakest: Section
    at_supports: Section

    @property
    def housed(self) -> bool:
        """Whether what it lies on is let into it."""
        return self.at_supports.thickness < self.section.thickness

    @property
    def bending(self) -> float:
        """E I, N mm²."""
        return stuff_of(self.material).elasticity * self.section.inertia

    @property
    def shearing(self) -> float:
        """G A', N."""
        return stuff_of(self.material).rigidity * self.section.shear_area


@dataclass(frozen=True, slots=True)
class Line:
    """A beam of one or more pieces from X ``low`` to ``high``, ``share`` of each load on it; ``y``
    and ``z`` say where it is in the bench."""

    pieces: tuple[Piece, ...]
    low: float
    high: float
    supports: tuple[float, ...]
    y: float
    z: float
    share: float = 1.0

    @property
    def beam(self) -> Beam:
        return Beam(
            self.low,
            self.high,
            self.supports,
            sum(piece.bending for piece in self.pieces),
            sum(piece.shearing for piece in self.pieces),
        )


@dataclass(frozen=True, slots=True)
class Sag:
    """The worst place: ``amount`` mm within ``span`` mm at X ``at``, under a case."""

    amount: float
    span: float
    at: float
    case: Case

    @property
    def slope(self) -> float:
        """Of the span."""
        return self.amount / self.span


@dataclass(frozen=True, slots=True)
class Strain:
    """How much of a piece's strength is used: ``share`` in %, in what way, at X ``at``."""

    part: str
    share: float
    way: str
    at: float
    case: Case


@dataclass(frozen=True, slots=True)
class Found:
    """``strains`` of every piece, the worst of each way; ``shears`` the greatest force in N across
    each piece, in the order of the line's."""

    sag: Sag
    strains: tuple[Strain, ...]
    shears: tuple[float, ...]


@lru_cache(maxsize=128)
def strained(line: Line, loads: Loads) -> Found:
    """What the worst loads in the worst place do to a line."""
    beam = line.beam
    cases = loads.cases(line.high - line.low)
    tried = [_middles(line, beam, case.half) for case in cases]
    results = [
        (case, _response(line, beam, case, middles))
        for case, middles in zip(cases, tried, strict=True)
    ]
    spans = beam.spans_at(beam.stations())
    sags = []
    for (case, response), middles in zip(results, tried, strict=True):
        sat = (middles >= line.low + NEAREST - _CLOSE) & (middles <= line.high - NEAREST + _CLOSE)
        low = response.sag[sat if sat.any() else slice(None)].max(axis=0)
        at = int((low / spans).argmax())
        sags.append(Sag(float(low[at]), float(spans[at]), float(response.stations[at]), case))
    strains = [
        strain
        for piece in line.pieces
        for case, response in results
        for strain in _strains(piece, line, beam, case, response)
    ]
    worst: dict[tuple[str, str], Strain] = {}
    for strain in strains:
        known = worst.get((strain.part, strain.way))
        if known is None or strain.share > known.share:
            worst[strain.part, strain.way] = strain
    across = max(float(np.abs(response.shear).max()) for _, response in results)
    shears = tuple(across * piece.bending / beam.bending for piece in line.pieces)
    return Found(max(sags, key=lambda one: one.slope), tuple(worst.values()), shears)


def _middles(line: Line, beam: Beam, half: float) -> Floats:
    """X of the middles of loads that reach ``half`` to either side and stay on the line."""
    x = beam.stations()
    found = x[(x >= line.low + half - _CLOSE) & (x <= line.high - half + _CLOSE)]
    return found if found.size else np.array([(line.low + line.high) / 2.0])


def _response(line: Line, beam: Beam, case: Case, middles: Floats) -> Response:
    forces = np.full(len(case.offsets), case.force * line.share)
    return respond(beam, middles[:, None] + np.array(case.offsets), forces, case.width)


def _strains(
    piece: Piece, line: Line, beam: Beam, case: Case, response: Response
) -> tuple[Strain, ...]:
    part, stuff = piece.bending / beam.bending, stuff_of(piece.material)
    x = response.stations
    held = np.isin(x, np.array(line.supports))
    moment = part * np.abs(response.moment).max(axis=0)
    found = []
    over = HOUSED if piece.housed else BENDING
    for way, section, where in (
        (BENDING, piece.weakest, ~held),
        (over, piece.at_supports, held),
    ):
        bent = np.where(where, moment, 0.0) / section.modulus / stuff.rupture
        most = int(bent.argmax())
        found.append(Strain(piece.part, 100.0 * float(bent[most]), way, float(x[most]), case))
    if stuff.shear is not None:
        across = part * np.abs(response.shear).max(axis=0)
        area = min(piece.weakest.area, piece.at_supports.area)
        cut = SHEAR_PEAK * across / area / stuff.shear
        most = int(cut.argmax())
        found.append(Strain(piece.part, 100.0 * float(cut[most]), SHEAR, float(x[most]), case))
    return tuple(found)
