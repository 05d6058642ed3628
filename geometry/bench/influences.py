"""Which of the maker's numbers a joint follows from.

Method: by trial.  Each value that means something is moved a little and the bench laid out again;
if the joint of that name has other measures then, or is of another kind, the value bears on it.
Nothing has to be written down twice, and nothing can be forgotten.  A value that moves a measure by
as much as itself comes first: that measure is it.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from geometry.bench.catalogue import PARAMETERS
from geometry.bench.members import present_members
from geometry.design.joint import Joint
from geometry.design.parameter import Parameter, Value
from geometry.design.spec import BenchSpec
from shared.errors import MakerError

_STEP = {"mm": 0.25, "deg": 0.25, "count": 1.0}
_NOTICED = 1e-6
_ITSELF = 1e-3


@lru_cache(maxsize=32)
def influences(spec: BenchSpec, joint_name: str) -> tuple[str, ...]:
    """Names of parameters, those that are a measure of the joint first; KeyError for a joint that
    the bench does not have."""
    joint = _joint_of(spec, joint_name)
    if joint is None:
        raise KeyError(joint_name)
    first: list[str] = []
    then: list[str] = []
    for row in PARAMETERS:
        if not row.applies(spec):
            continue
        for value in _others(row, spec.value(row.name)):
            other = _joint_of(spec.changed({row.name: value}), joint_name)
            if other is None:
                continue
            if _differs(joint, other):
                (first if _is_measure(row, value, spec, (joint, other)) else then).append(row.name)
            break
    return (*first, *then)


def _others(row: Parameter, now: Value) -> Iterator[Value]:
    """Values beside the one of now."""
    if isinstance(now, str):
        yield from (choice for choice in row.choices if choice != now)
    else:
        yield now + _STEP[row.unit]
        yield now - _STEP[row.unit]


def _joint_of(spec: BenchSpec, name: str) -> Joint | None:
    """The joint of a bench that may be out of its limits, None if that cannot be laid out."""
    members = present_members(spec)
    try:
        pieces = {piece.name: piece for member in members for piece in member.parts(spec)}
        joints = [joint for member in members for joint in member.joints(spec, pieces)]
    except (MakerError, ArithmeticError, ValueError, LookupError, AssertionError):
        return None
    return next((joint for joint in joints if joint.name == name), None)


def _differs(one: Joint, other: Joint) -> bool:
    if one.kind != other.kind or abs(one.fit - other.fit) > _NOTICED:
        return True
    if [m.name for m in one.measures] != [m.name for m in other.measures]:
        return True
    return any(
        abs(a.value - b.value) > _NOTICED for a, b in zip(one.measures, other.measures, strict=True)
    )


def _is_measure(row: Parameter, value: Value, spec: BenchSpec, joints: tuple[Joint, Joint]) -> bool:
    """Whether a measure of the joint has this value and moves with it."""
    now = spec.value(row.name)
    if isinstance(value, str) or isinstance(now, str):
        return False
    one, other = joints
    pairs = [(one.fit, other.fit, "mm")]
    pairs += [
        (a.value, b.value, a.unit) for a, b in zip(one.measures, other.measures, strict=False)
    ]
    return any(
        unit == row.unit and abs(a - now) < _ITSELF and abs(b - value) < _ITSELF
        for a, b, unit in pairs
    )
