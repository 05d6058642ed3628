"""A limit's value from a text."""

from __future__ import annotations

from geometry.checks.limit import Limit
from shared.errors import UnreadableValue
from shared.units import Shown, read_angle, read_length


def read_limit(row: Limit, value_text: str, shown: Shown) -> float:
    """What a maker typed for a limit, in its unit; a MakerError that says what would work.

    The unit may be written behind the number or left out.
    """
    if row.unit == "mm":
        return row.checked(read_length(value_text, shown))
    if row.unit == "deg":
        return row.checked(read_angle(value_text))
    number = value_text.strip().removesuffix(row.unit).strip().replace(",", ".")
    try:
        return row.checked(float(number))
    except ValueError:
        raise UnreadableValue(
            f"{value_text.strip()[:40]!r} is not a number.",
            where=row.title,
            remedy=f"Write a number of {row.unit}, such as {row.default:.6g}.",
        ) from None
