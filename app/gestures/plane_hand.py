"""A hand on the line of a section's plane: it pulls the plane along, or turns it by an end.

The same in the small view beside a section and in the elevations.  Places are sheet mm.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from geometry.design.cutting_plane import FIRST_TURN, Plane

if TYPE_CHECKING:
    from app.scene.planes import Planes
    from geometry.primitives.frame import Vec2, Vec3
    from geometry.sheets.section_key import SectionKey


class PlaneHand:
    """``holding`` from the press to the release."""

    def __init__(self, planes: Planes) -> None:
        self._planes = planes
        self.holding = False
        self._pivot: Vec3 | None = None
        self._before: Plane | None = None

    def press(self, key: SectionKey, spot: Vec2) -> bool:
        """The hand closes there; whether it is on an end of the line."""
        self.holding, self._before = True, self._planes.plane
        # What it turns about stays where it is while the line gets longer or shorter.
        self._pivot = key.pivot if key.end_at(spot) is not None else None
        return self._pivot is not None

    def pull(self, key: SectionKey, spot: Vec2, *, free: bool) -> None:
        """The plane goes through a point: on whole millimetres, or turned about its middle."""
        if self._pivot is None:
            pulled = key.pulled_to(spot)
            self._planes.put(Plane(pulled.way, float(round(pulled.at)), pulled.turn))
        else:
            self._planes.put(key.turned_to(spot, self._pivot, free=free))

    def release(self) -> bool:
        """The hand opens; whether it has moved the plane."""
        held, self.holding = self.holding, False
        return held and self._planes.plane != self._before

    def give_up(self) -> None:
        """The plane stands where it stood before the press."""
        if self.holding and self._before is not None:
            self._planes.put(self._before)
        self.holding = False

    def turn_back(self, key: SectionKey) -> None:
        """The plane stands square again, or askew as it did at first."""
        self._planes.turn_about(key.pivot, FIRST_TURN[self._planes.way])
