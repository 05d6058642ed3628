"""Which of the maker's numbers a joint follows from.

Method: by trial.  Each value that means something is moved a little and the bench laid out again;
if the joint of that name has other measures then, or is of another kind, the value bears on it.
Nothing has to be written down twice, and nothing can be forgotten.  A value that moves a measure by
as much as itself comes first: that measure is it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache

from geometry.bench.catalogue import PARAMETERS
from geometry.bench.members import present_members
from geometry.design.parameter import Parameter, Value
from geometry.design.spec import BenchSpec
from shared.errors import MakerError

_STEP = {"mm": 0.25, "deg": 0.25, "count": 1.0}
_NOTICED = 1e-6
_ITSELF = 1e-3


@dataclass(frozen=True, slots=True)
class _Told:
    """What is told of a joint; ``measures`` are names, units and values."""

    kind: str
    fit: float
    measures: tuple[tuple[str, str, float], ...]


def influences(spec: BenchSpec, joint_name: str) -> tuple[str, ...]:
    """Names of parameters, those that are a measure of the joint first; KeyError for a joint that
    the bench does not have."""
    joint = _joints_of(spec)[joint_name]
    first: list[str] = []
    then: list[str] = []
    for row in PARAMETERS:
        if not row.applies(spec):
            continue
        for value in _others(row, spec.value(row.name)):
            other = _joints_of(spec.changed({row.name: value})).get(joint_name)
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


@lru_cache(maxsize=512)  # all trials of a bench, for the next joint that is asked about
def _joints_of(spec: BenchSpec) -> Mapping[str, _Told]:
    """The joints of a bench that may be out of its limits; none if it cannot be laid out."""
    members = present_members(spec)
    try:
        pieces = {piece.name: piece for member in members for piece in member.parts(spec)}
        joints = [joint for member in members for joint in member.joints(spec, pieces)]
    except (MakerError, ArithmeticError, ValueError, LookupError, AssertionError):
        return {}
    return {
        joint.name: _Told(
            joint.kind, joint.fit, tuple((m.name, m.unit, m.value) for m in joint.measures)
        )
        for joint in joints
    }


def _differs(one: _Told, other: _Told) -> bool:
    if one.kind != other.kind or abs(one.fit - other.fit) > _NOTICED:
        return True
    if [name for name, _, _ in one.measures] != [name for name, _, _ in other.measures]:
        return True
    return any(
        abs(a - b) > _NOTICED
        for (_, _, a), (_, _, b) in zip(one.measures, other.measures, strict=True)
    )


def _is_measure(row: Parameter, value: Value, spec: BenchSpec, joints: tuple[_Told, _Told]) -> bool:
    """Whether a measure of the joint has this value and moves with it."""
    now = spec.value(row.name)
    if isinstance(value, str) or isinstance(now, str):
        return False
    one, other = joints
    pairs = [(one.fit, other.fit, "mm")]
    pairs += [
        (a, b, unit) for (_, unit, a), (_, _, b) in zip(one.measures, other.measures, strict=False)
    ]
    return any(
        unit == row.unit and abs(a - now) < _ITSELF and abs(b - value) < _ITSELF
        for a, b, unit in pairs
    )
