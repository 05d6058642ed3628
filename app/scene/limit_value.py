"""A limit's value from a text."""

from __future__ import annotations

import re

from geometry.checks.limit import Limit
from shared.errors import UnreadableValue
from shared.units import Shown, read_angle, read_as, read_length, told_as, unit_beside

_NUMBER = re.compile(r"([-+]?(?:\d+(?:[.,]\d*)?|[.,]\d+))\s*(\D.*)?")


def read_limit(row: Limit, value_text: str, shown: Shown) -> float:
    """What a maker typed for a limit, in its unit; a MakerError that says what would work.

    The unit may be written behind the number or left out.
    """
    if row.unit == "mm":
        return row.checked(read_length(value_text, shown))
    if row.unit == "deg":
        return row.checked(read_angle(value_text))
    found = _NUMBER.fullmatch(value_text.strip().replace("−", "-"))
    read = (
        read_as(float(found[1].replace(",", ".")), found[2] or "", row.unit, shown)
        if found
        else None
    )
    if read is None:
        unit = "" if row.unit == "count" else f" of {unit_beside(row.unit, shown)}"
        raise UnreadableValue(
            f"{value_text.strip()[:40]!r} is not a number{unit}.",
            where=row.title,
            remedy=f"Write a number{unit}, such as {told_as(row.default, row.unit, shown):.4g}.",
        )
    return row.checked(read)
