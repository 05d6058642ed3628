"""Every number and choice of a bench, in the order of the story stick."""

from __future__ import annotations

import difflib
from dataclasses import replace

from geometry.bench.constraint import Constraint
from geometry.bench.member import Member
from geometry.bench.members import MEMBERS, present_members
from geometry.design.parameter import Parameter
from geometry.design.spec import BenchSpec
from shared.errors import UnknownName

SLACK = 1e-7  # mm or degrees: rounding that no rule minds


def _shown_with(row: Parameter, member: Member) -> Parameter:
    """A row that applies only while its member is there."""
    own = row.applies
    return replace(row, applies=lambda spec: member.present(spec) and own(spec))


PARAMETERS: tuple[Parameter, ...] = tuple(
    _shown_with(row, member) for member in MEMBERS for row in member.parameters
)

_BY_NAME = {row.name: row for row in PARAMETERS}


def parameter(name: str) -> Parameter:
    """The row of a parameter; UnknownName, with the nearest known one, if there is none."""
    row = _BY_NAME.get(name)
    if row is None:
        near = difflib.get_close_matches(name, _BY_NAME, n=1)
        remedy = f"Did you mean {near[0]}?" if near else "See the list of parameters in the facts."
        raise UnknownName(f"There is no parameter called {name!r}.", remedy=remedy)
    return row


def default_spec() -> BenchSpec:
    """A new bench."""
    return BenchSpec(tuple((row.name, row.default) for row in PARAMETERS))


def rules(spec: BenchSpec) -> tuple[Constraint, ...]:
    """The rules of the members that a bench has."""
    return tuple(rule for member in present_members(spec) for rule in member.constraints)


def broken_rules(spec: BenchSpec) -> tuple[Constraint, ...]:
    """The rules of the members at hand that a spec does not keep."""
    return tuple(rule for rule in rules(spec) if rule.slack(spec) < -SLACK)
