"""Every number and choice of a bench, in the order of the story stick."""

from __future__ import annotations

import difflib

from geometry.bench.constraint import Constraint
from geometry.bench.members import MEMBERS
from geometry.design.parameter import Parameter
from geometry.design.spec import BenchSpec
from shared.errors import UnknownName

PARAMETERS: tuple[Parameter, ...] = tuple(row for member in MEMBERS for row in member.parameters)

CONSTRAINTS: tuple[Constraint, ...] = tuple(
    rule for member in MEMBERS for rule in member.constraints
)

GROUPS: tuple[str, ...] = tuple(dict.fromkeys(row.group for row in PARAMETERS))

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
