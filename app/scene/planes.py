"""Where the plane of a section stands, in each of the ways in which it can.

Bench coordinates, mm, degrees; no Qt here.
"""

from __future__ import annotations

from dataclasses import replace

from app.scene.preferences import Preferences
from geometry.bench.bench import Bench
from geometry.design.cutting_plane import FIRST_TURN, Plane, Way, half_turn, through
from geometry.primitives.frame import Vec3
from geometry.sheets.section_plane import reach_of, standing_at, standing_of
from shared.units import format_angle, format_length, read_angle, read_length

_ROUNDING = 1e-6


class Planes:
    """``bench`` is set by the owner when it is another; a plane stays within its reach."""

    def __init__(self, bench: Bench) -> None:
        self.bench = bench
        self.way = Way.ACROSS
        self._stand: dict[Way, Plane] = {}

    def begin(self, kept: Plane | None) -> None:
        """As they stand for another project: the one that is kept with it, if one is."""
        self._stand = {} if kept is None else {kept.way: kept}
        self.way = Way.ACROSS if kept is None else kept.way

    @property
    def plane(self) -> Plane:
        """The one that is shown: half way through the bench at first."""
        turn = self._turn(self.way)
        low, high = reach_of(self.bench, self.way, turn)
        stands = self._stand.get(self.way)
        at = (low + high) / 2.0 if stands is None else stands.at
        return Plane(self.way, min(max(at, low), high), turn)

    @property
    def standing(self) -> Plane:
        """The same wherever it was put, though the bench may have become smaller since."""
        return self._stand.get(self.way, self.plane)

    def put(self, plane: Plane) -> None:
        low, high = reach_of(self.bench, plane.way, plane.turn)
        self._stand[plane.way] = replace(plane, at=min(max(plane.at, low), high))

    def put_all_through(self, point: Vec3) -> None:
        """Whichever is looked at goes through a point."""
        self._stand = {way: through(way, self._turn(way), point) for way in Way}

    def turn_about(self, point: Vec3, turn: float) -> None:
        self.put(through(self.way, half_turn(turn), point))

    def _turn(self, way: Way) -> float:
        stands = self._stand.get(way)
        return FIRST_TURN[way] if stands is None else stands.turn

    # Numbers

    def numbers(self, preferences: Preferences) -> tuple[str, str]:
        """The place, as the sheet tells it, and the turn, as they are typed."""
        plane = self.plane
        size = standing_of(self.bench, plane).size
        return (
            _signed(size, format_length(abs(size), preferences.shown, with_unit=True)),
            _signed(plane.turn, format_angle(abs(plane.turn))),
        )

    def give_place(self, length_text: str, preferences: Preferences) -> None:
        """From what the sheet says the place is measured; MakerError if it is no length."""
        text, sign = _unsigned(length_text)
        size = sign * read_length(text, preferences.shown)
        self.put(standing_at(self.bench, self.plane, size))


def read_turn(angle_text: str) -> float:
    """A turn with its sign, in degrees; MakerError if it is no angle."""
    text, sign = _unsigned(angle_text)
    return sign * read_angle(text)


def _unsigned(text: str) -> tuple[str, float]:
    text = text.strip()
    return (text[1:], -1.0) if text.startswith(("-", "−")) else (text, 1.0)


def _signed(value: float, text: str) -> str:
    return f"−{text}" if value < -_ROUNDING else text
