"""Every number and choice of a bench, in the order of the story stick."""

from __future__ import annotations

import difflib

from geometry.bench import back, case, crossed_base, edges, partitions
from geometry.bench.constraint import Constraint
from geometry.design.parameter import Parameter, choice
from geometry.design.spec import BenchSpec
from shared.errors import UnknownName
from shared.sheet_goods import SHEET_MATERIALS
from shared.timber import TIMBERS

MATERIALS: tuple[Parameter, ...] = (
    choice(
        "timber",
        "Timber",
        "Materials",
        "white oak",
        tuple(TIMBERS),
        "Timber of boards, stretchers and legs.",
    ),
    choice(
        "sheet",
        "Sheet for the back",
        "Materials",
        "birch plywood",
        tuple(SHEET_MATERIALS),
        "Sheet material of the back.",
    ),
)

PARAMETERS: tuple[Parameter, ...] = (
    *case.PARAMETERS,
    *partitions.PARAMETERS,
    *back.PARAMETERS,
    *edges.PARAMETERS,
    *crossed_base.PARAMETERS,
    *MATERIALS,
)

CONSTRAINTS: tuple[Constraint, ...] = (
    *case.CONSTRAINTS,
    *partitions.CONSTRAINTS,
    *back.CONSTRAINTS,
    *edges.CONSTRAINTS,
    *crossed_base.CONSTRAINTS,
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
