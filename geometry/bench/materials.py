"""What the bench is made of."""

from __future__ import annotations

from geometry.bench.member import Member
from geometry.design.parameter import Parameter, choice
from shared.sheet_goods import SHEET_MATERIALS
from shared.timber import TIMBERS

PARAMETERS: tuple[Parameter, ...] = (
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

MEMBER = Member("materials", PARAMETERS)
