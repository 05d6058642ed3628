"""A bench: its numbers, and the parts, joints and derived sizes laid out from them."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.bench.derived import Derived
from geometry.design.brief import NO_BRIEF, Brief
from geometry.design.joint import Joint
from geometry.design.part import Part
from geometry.design.spec import BenchSpec
from shared.units import SHOWN_MM, Shown


@dataclass(frozen=True, slots=True)
class Bench:
    """Everything that has to exist, in bench coordinates.

    ``judged_by`` are the limits that the maker has changed, by name, ``brief`` what the bench is
    for, and ``shown`` how sizes are written on its drawings: what findings go by.
    """

    spec: BenchSpec
    parts: tuple[Part, ...]
    joints: tuple[Joint, ...]
    derived: tuple[Derived, ...]
    judged_by: tuple[tuple[str, float], ...] = ()
    brief: Brief = NO_BRIEF
    shown: Shown = SHOWN_MM

    def part(self, name: str) -> Part:
        """The part of this name; KeyError if there is none."""
        for part in self.parts:
            if part.name == name:
                return part
        raise KeyError(name)

    def joints_of(self, part_name: str) -> tuple[Joint, ...]:
        return tuple(joint for joint in self.joints if part_name in joint.parts)
