"""What a row of the tables of hinges and of lid stays gives to a spec, by parameter.

A project keeps the numbers and not the row, so that it stays what it was when a table changes.
"""

from __future__ import annotations

from geometry.design.parameter import Value
from shared.hinges import hinge_row
from shared.stays import stay_row


def hinge_values(name: str) -> dict[str, Value]:
    """The sizes of a hinge."""
    row = hinge_row(name)
    return {"hinge_length": row.length, "hinge_leaf": row.leaf, "hinge_closed": row.closed}


def stay_values(name: str) -> dict[str, Value]:
    """The sizes of a stay, and the angle that it is meant for."""
    row = stay_row(name)
    return {
        "stay_reach": row.reach,
        "stay_on_lid": row.on_lid,
        "stay_down": row.down,
        "lid_opening": row.opening,
    }
