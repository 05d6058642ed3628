"""A member of a bench: the case, its partitions, its back, a base, the treatment of its edges.

A bench is members put together.  Adding one is adding a file that ends in its ``MEMBER`` and a
line in ``members``; nothing else has to know.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from geometry.bench.constraint import Constraint
from geometry.bench.derived import Derived
from geometry.cuts.cut import Cut
from geometry.design.joint import Joint
from geometry.design.parameter import Parameter
from geometry.design.part import Part
from geometry.design.spec import BenchSpec

THE_BASE, THE_REST, THE_LID, THE_BODY = "the base", "the back rest", "the lid", "the body"


def _always(_spec: BenchSpec) -> bool:
    return True


def _no_parts(_spec: BenchSpec) -> tuple[Part, ...]:
    return ()


def _no_joints(_spec: BenchSpec, _parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    return ()


def _no_cuts(_spec: BenchSpec, _part: Part) -> tuple[Cut, ...]:
    return ()


def _nothing_derived(_spec: BenchSpec) -> tuple[Derived, ...]:
    return ()


def _no_notes(_spec: BenchSpec, _part: Part) -> tuple[str, ...]:
    return ()


def _as_kept(_spec: BenchSpec) -> tuple[Mapping[str, float], ...]:
    return ()


@dataclass(frozen=True, slots=True)
class Member:
    """What one member brings.

    ``present`` tells whether the bench has it; a member that is absent keeps its numbers, shows
    none of them, and binds nothing.  ``parts`` come with their own cuts but no joints.
    ``joints`` are made once all parts of all members are there, by name.  ``cuts`` are those that
    a part gets last of all, in its own frame, ``notes`` what is said of it besides.  ``snug`` are
    numbers to move toward, stage by stage, when it comes in and those it kept do not fit (see
    ``settling``).  ``made_into`` is what its parts are made up into before that goes on.
    """

    name: str
    parameters: tuple[Parameter, ...]
    constraints: tuple[Constraint, ...] = ()
    parts: Callable[[BenchSpec], tuple[Part, ...]] = _no_parts
    joints: Callable[[BenchSpec, Mapping[str, Part]], tuple[Joint, ...]] = _no_joints
    cuts: Callable[[BenchSpec, Part], tuple[Cut, ...]] = _no_cuts
    notes: Callable[[BenchSpec, Part], tuple[str, ...]] = _no_notes
    derived: Callable[[BenchSpec], tuple[Derived, ...]] = _nothing_derived
    present: Callable[[BenchSpec], bool] = _always
    snug: Callable[[BenchSpec], tuple[Mapping[str, float], ...]] = _as_kept
    made_into: str = THE_BODY

    @property
    def cuts_last(self) -> bool:
        """Whether it may cut any part last of all."""
        return self.cuts is not _no_cuts

    @property
    def notes_pieces(self) -> bool:
        """Whether it may say something of any part."""
        return self.notes is not _no_notes
