"""Sockets for dovetails in the end of a piece, open at its end and at its face side.

What stays between them are the pins.
"""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.contour import Contour, Face, Operation
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN
from geometry.cuts.removal import SECTION_FRAME, Prism, Removal
from geometry.primitives.path import Path
from shared.tolerances import COPLANAR


@dataclass(frozen=True, slots=True)
class Socket:
    """One socket across the width: its sides at the face side, and at its full depth.  mm of y."""

    face_low: float
    face_high: float
    deep_low: float
    deep_high: float


@dataclass(frozen=True, slots=True)
class Sockets:
    """Sockets from the end at x = ``x_end`` in to ``x_base``, ``depth`` deep; all in mm.

    A depth of the whole thickness makes them go through, as for a through dovetail.
    """

    x_end: float
    x_base: float
    depth: float
    sockets: tuple[Socket, ...]

    @property
    def title(self) -> str:
        return "dovetail sockets"

    def removals(self, blank: Blank) -> tuple[Removal, ...]:
        through = self.depth >= blank.thickness - COPLANAR
        deep = blank.thickness + OVERRUN if through else self.depth
        air = self.x_end + (OVERRUN if self.x_end > self.x_base else -OVERRUN)
        low, high = min(air, self.x_base), max(air, self.x_base)
        return tuple(
            Prism(self._section(socket, deep), low, high, SECTION_FRAME) for socket in self.sockets
        )

    def contours(self, blank: Blank) -> tuple[Contour, ...]:  # noqa: ARG002
        """The lines to saw and chop to, on the face side."""
        return tuple(
            Contour(
                Operation.SCRIBE,
                Face.FACE_SIDE,
                Path(
                    (
                        (self.x_end, socket.face_low, 0.0),
                        (self.x_base, socket.face_low, 0.0),
                        (self.x_base, socket.face_high, 0.0),
                        (self.x_end, socket.face_high, 0.0),
                    ),
                    closed=False,
                ),
            )
            for socket in self.sockets
        )

    def _section(self, socket: Socket, deep: float) -> Path:
        """The section across the piece, in (y, z), from the air before the face side."""
        corners = []
        for face, full in (
            (socket.face_low, socket.deep_low),
            (socket.face_high, socket.deep_high),
        ):
            rise = (full - face) / self.depth
            corners.append(((face - rise * OVERRUN, -OVERRUN), (face + rise * deep, deep)))
        low, high = corners
        return Path.polygon((*low, *high[::-1]))
