"""Text to numbers: what a maker types for a length, an angle or a count.

Lengths, whichever unit is shown: ``36 1/2``, ``36-1/2``, ``36½``, ``36.5 in``, ``36 1/2"``,
``3' 1/2"``, ``3 ft 1/2 in``, ``3'-0 1/2"``, ``927``, ``927 mm``, ``92,7 cm``, ``0.927 m``.  A bare
decimal number is in the unit shown; a bare number with a fraction is always inches, for nobody
writes millimetres in fractions.  A comma is a decimal comma; where it could as well set off
thousands (``1,200``) the text is refused, because a guess would be wrong by a thousand.

Only the digits 0 to 9 are digits here, there are no exponents and no signs, and the text is
limited in length before anything looks at it, so hostile text is refused at once.
"""

from __future__ import annotations

import re

from shared.errors import UnreadableValue
from shared.units.fractions import plain_fractions
from shared.units.shown import MM_PER_INCH, Shown

LONGEST_MM = 1_000_000.0  # a kilometre; anything above is a slip of the finger
LONGEST_TEXT = 40  # characters; the longest sensible entry has about 20

LENGTHS_THAT_WORK = "Write it like 927 mm, 92.7 cm, 36.5 in, 36 1/2 or 3' 1/2\"."
ANGLES_THAT_WORK = "Write it in degrees, like 15, 14.5, 7 1/2 or 14° 30'."
COUNTS_THAT_WORK = "Write a whole number, like 3."

_IN_MM = {
    **dict.fromkeys(("mm", "millimetre", "millimetres", "millimeter", "millimeters"), 1.0),
    **dict.fromkeys(("cm", "centimetre", "centimetres", "centimeter", "centimeters"), 10.0),
    **dict.fromkeys(("m", "metre", "metres", "meter", "meters"), 1000.0),
    **dict.fromkeys(("in", "in.", "inch", "inches", '"', "″", "”", "''", "′′", "’’"), MM_PER_INCH),
    **dict.fromkeys(("ft", "ft.", "foot", "feet", "'", "′", "’"), 12 * MM_PER_INCH),
}
_FOOT_MM = 12 * MM_PER_INCH


def _any_of(names: list[str]) -> str:
    return "|".join(re.escape(name) for name in sorted(names, key=len, reverse=True))


_UNIT = _any_of(list(_IN_MM))
_FOOT = _any_of([name for name, mm in _IN_MM.items() if mm == _FOOT_MM])
_FRACTION = r"(?:(?P<whole>\d+)(?:\s*-\s*|\s+))?(?P<over>\d+)\s*/\s*(?P<under>\d+)"
_NUMBER = rf"(?:{_FRACTION}|(?P<decimal>\d+(?:[.,]\d*)?|[.,]\d+))"
_LENGTH = re.compile(
    rf"(?:(?P<feet>\d+)\s*(?:{_FOOT})\s*-?\s*)?{_NUMBER}\s*(?P<unit>{_UNIT})?",
    re.ASCII | re.IGNORECASE,
)
_ANGLE = re.compile(
    rf"(?P<sign>[-−])?\s*{_NUMBER}\s*(?P<unit>°|deg\.?|degrees?)?"
    r"(?:\s*(?P<minutes>\d{1,2})\s*(?:'|′|’|min))?",
    re.ASCII | re.IGNORECASE,
)
_COUNT = re.compile(r"\d{1,4}", re.ASCII)
_COULD_BE_THOUSANDS = re.compile(r"[1-9]\d{0,2},\d{3}", re.ASCII)


def read_length(length_text: str, shown: Shown) -> float:
    """The length in mm, from 0 to LONGEST_MM; UnreadableValue says what works.

    >>> read_length('36 1/2', Shown("mm")), read_length('92.7 cm', Shown("in"))
    (927.1, 927.0)
    """
    found = _LENGTH.fullmatch(_tidy(length_text, "length", LENGTHS_THAT_WORK))
    if found is None:
        raise _unreadable(length_text, "length", LENGTHS_THAT_WORK)
    unit = _unit_in_mm(found, shown)
    if found["feet"] and unit != MM_PER_INCH:
        raise _unreadable(length_text, "length", LENGTHS_THAT_WORK)
    mm = int(found["feet"] or 0) * _FOOT_MM + _value(found, length_text, LENGTHS_THAT_WORK) * unit
    if mm > LONGEST_MM:
        raise UnreadableValue(
            f"“{_quoted(length_text)}” is more than a kilometre.", remedy=LENGTHS_THAT_WORK
        )
    return round(mm, 9)  # so that 92.7 cm is 927 mm to the last bit


def read_angle(angle_text: str) -> float:
    """The angle in degrees, within ±360; UnreadableValue says what works.

    >>> read_angle("14° 30'"), read_angle('7½')
    (14.5, 7.5)
    """
    found = _ANGLE.fullmatch(_tidy(angle_text, "angle", ANGLES_THAT_WORK))
    if found is None or (found["minutes"] and not found["unit"]):
        raise _unreadable(angle_text, "angle", ANGLES_THAT_WORK)
    minutes = int(found["minutes"] or 0)
    deg = _value(found, angle_text, ANGLES_THAT_WORK) + minutes / 60
    if minutes >= 60 or deg > 360:
        raise UnreadableValue(
            f"“{_quoted(angle_text)}” is no angle of a joint.", remedy=ANGLES_THAT_WORK
        )
    return -deg if found["sign"] and deg else deg


def read_count(count_text: str) -> int:
    """A whole number of things, from 0 to 9999; UnreadableValue says what works."""
    text = _tidy(count_text, "number of pieces", COUNTS_THAT_WORK)
    if not _COUNT.fullmatch(text):
        raise _unreadable(count_text, "number of pieces", COUNTS_THAT_WORK)
    return int(text)


def _tidy(text: str, kind: str, remedy: str) -> str:
    if len(text) > LONGEST_TEXT or not text.strip():
        raise _unreadable(text, kind, remedy)
    return " ".join(plain_fractions(text).split())


def _unit_in_mm(found: re.Match[str], shown: Shown) -> float:
    """What one of the unit is in mm."""
    if found["unit"]:
        return _IN_MM[found["unit"].lower()]
    in_inches = found["feet"] or found["over"] or shown.unit == "in"
    return MM_PER_INCH if in_inches else 1.0


def _value(found: re.Match[str], text: str, remedy: str) -> float:
    """The number itself, before its unit."""
    if found["decimal"]:
        if _COULD_BE_THOUSANDS.fullmatch(found["decimal"]):
            together, apart = found["decimal"].replace(",", ""), found["decimal"].replace(",", ".")
            raise UnreadableValue(
                f"“{_quoted(text)}” could mean {together} or {apart}.",
                remedy=f"Write {together} or {apart}.",
            )
        return float(found["decimal"].replace(",", "."))
    whole, over, under = int(found["whole"] or 0), int(found["over"]), int(found["under"])
    if under == 0 or (found["whole"] and over >= under):
        raise UnreadableValue(
            f"{over}/{under} in “{_quoted(text)}” is no part of a whole.", remedy=remedy
        )
    return whole + over / under


def _unreadable(text: str, kind: str, remedy: str) -> UnreadableValue:
    if not text.strip():
        return UnreadableValue(f"There is no {kind} here.", remedy=remedy)
    return UnreadableValue(f"“{_quoted(text)}” is no {kind}.", remedy=remedy)


def _quoted(text: str) -> str:
    """The text, short enough and plain enough to stand in one line of a message."""
    shown = "".join(character if character.isprintable() else "·" for character in text[:25])
    return shown + "…" if len(text) > 25 else shown
