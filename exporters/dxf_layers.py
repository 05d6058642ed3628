"""Names of DXF layers: one for each operation, face and depth, and what each name means.

Method: names keep to the set that every version of the format takes (31 characters of A-Z, 0-9,
``$``, ``_`` and ``-``; DXF reference, symbol table names of release 12), so they are the
same in every file.  Depths are in tenths of a millimetre and tilts in tenths of a degree, three
digits; what does not come out even follows after an underscore: ``POCKET_D063_5`` is 63.5 tenths,
6.35 mm.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from geometry.cuts.contour import Contour, Face, Operation
from shared.units import SHOWN_IN64, format_angle, format_length

OUTLINE_LAYER = "CUT_OUT_THRU"
INSIDE_LAYER = "CUT_IN_THRU"
NOTES_LAYER = "NOTES_NOCUT"
REVERSE_PREFIX = "REV_"

_NAME = re.compile(r"(REV_)?(CUT_OUT_THRU|CUT_IN_THRU|POCKET|SAW|SCRIBE_NOCUT)(_[DT](.*))?")
_COLOURS = {"CUT_OUT_THRU": 1, "CUT_IN_THRU": 6, "POCKET": 5, "SAW": 3, "SCRIBE_NOCUT": 8}
NOTES_COLOUR = 9


@dataclass(frozen=True, slots=True)
class Layer:
    """What a layer's name says; ``depth`` in mm and ``tilt_deg`` are None where there is none."""

    name: str
    operation: Operation
    face: Face
    depth: float | None
    tilt_deg: float | None
    colour: int

    def meaning(self) -> str:
        """One sentence for the shop."""
        face = "the face side" if self.face is Face.FACE_SIDE else "the reverse"
        match self.operation:
            case Operation.OUTLINE:
                return "Cut right through, outside the line: the part's outline."
            case Operation.INSIDE:
                return "Cut right through, inside the line."
            case Operation.POCKET:
                assert self.depth is not None, "a pocket has a depth"
                mm = f"{self.depth:.3f}".rstrip("0").rstrip(".")
                inches = format_length(self.depth, SHOWN_IN64, with_unit=True)
                return f"Clear inside the line from {face} to a depth of {mm} mm ({inches})."
            case Operation.SAW_LINE:
                tilt = format_angle(self.tilt_deg or 0.0)
                return f"Saw along the line on {face}, blade tilted {tilt} from square."
            case Operation.SCRIBE:
                return f"Mark on {face}; do not cut."


def layer_of(contour: Contour) -> Layer:
    """The layer that a contour goes on."""
    match contour.operation:
        case Operation.OUTLINE:
            return layer_named(OUTLINE_LAYER)
        case Operation.INSIDE:
            return layer_named(INSIDE_LAYER)
        case Operation.POCKET:
            assert contour.depth is not None, "a pocket has a depth"
            name = f"POCKET_D{_tenths(contour.depth)}"
        case Operation.SAW_LINE:
            name = f"SAW_T{_tenths(contour.tilt_deg)}"
        case Operation.SCRIBE:
            name = "SCRIBE_NOCUT"
    return layer_named(name if contour.face is Face.FACE_SIDE else REVERSE_PREFIX + name)


def layer_named(name: str) -> Layer:
    """What a layer's name says; ValueError for a name that is none of ours."""
    match = _NAME.fullmatch(name)
    if match is None:
        raise ValueError(f"{name} is no layer of a cutting file")
    reverse, kind, _, digits = match.groups()
    operation = _OPERATIONS[kind]
    size = None if digits is None else float(digits.replace("_", ".")) / 10.0
    return Layer(
        name,
        operation,
        Face.REVERSE if reverse else Face.FACE_SIDE,
        size if operation is Operation.POCKET else None,
        size if operation is Operation.SAW_LINE else None,
        _COLOURS[kind],
    )


_OPERATIONS = {
    "CUT_OUT_THRU": Operation.OUTLINE,
    "CUT_IN_THRU": Operation.INSIDE,
    "POCKET": Operation.POCKET,
    "SAW": Operation.SAW_LINE,
    "SCRIBE_NOCUT": Operation.SCRIBE,
}


def _tenths(size: float) -> str:
    """``size`` in tenths, three digits, to a thousandth: 6 -> 060, 6.35 -> 063_5."""
    thousandths = round(size * 1000.0)
    whole, rest = divmod(thousandths, 100)
    return f"{whole:03d}" + (f"_{rest:02d}".rstrip("0") if rest else "")
