"""A flat chamfer along one straight stretch of an arris."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.contour import Contour, Face, Operation
from geometry.cuts.cut import Blank
from geometry.cuts.removal import Hull, Removal
from geometry.primitives.frame import Vec3, add, scale, subtract
from geometry.primitives.path import Path


@dataclass(frozen=True, slots=True)
class ChamferEnd:
    """A cross-section of the chamfer: the arris, and where the flat meets the face and the edge."""

    arris: Vec3
    on_face: Vec3
    on_edge: Vec3


@dataclass(frozen=True, slots=True)
class Chamfer:
    """From one cross-section to the other; the ends may be skew, to meet at a mitre."""

    start: ChamferEnd
    end: ChamferEnd
    face: Face

    @property
    def title(self) -> str:
        return "chamfer"

    def removals(self, blank: Blank) -> tuple[Removal, ...]:  # noqa: ARG002
        return (Hull((*_waste(self.start), *_waste(self.end))),)

    def contours(self, blank: Blank) -> tuple[Contour, ...]:  # noqa: ARG002
        line = Path.line(self.start.on_face[:2], self.end.on_face[:2])
        return (Contour(Operation.SCRIBE, self.face, line),)


def _waste(section: ChamferEnd) -> tuple[Vec3, Vec3, Vec3]:
    """The corner to take off, widened along the flat and past the arris into the air."""
    leg = subtract(section.on_edge, section.on_face)
    middle = scale(add(section.on_edge, section.on_face), 0.5)
    return (
        subtract(section.on_face, leg),
        add(section.on_edge, leg),
        add(section.arris, scale(subtract(section.arris, middle), 2.0)),
    )
