"""Each cut of a part as one line of words for the bench: what it is, how wide, how deep, where.

Lengths stand in the sentence as ``{12.7 mm}`` and angles as ``{15 deg}``, to be written in the
maker's unit at the border.  A kind of cut that is not known here is named and measured by what
it takes away.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import Any

from geometry.cuts.bore import Bore
from geometry.cuts.chamfer import Chamfer
from geometry.cuts.cut import Blank, Cut
from geometry.cuts.end_gaps import EndGaps
from geometry.cuts.finger_groove import FingerGroove
from geometry.cuts.finger_notch import FingerNotch
from geometry.cuts.groove import Groove
from geometry.cuts.hinge_mortise import HingeMortise
from geometry.cuts.housing import StoppedHousing
from geometry.cuts.lap import AngledLap
from geometry.cuts.leaning_bore import LeaningBore
from geometry.cuts.mortise import Mortise
from geometry.cuts.notch import Notch
from geometry.cuts.open_mortise import OpenMortise
from geometry.cuts.rebate import Rebate
from geometry.cuts.relief import Relief
from geometry.cuts.round_tenon import RoundTenon
from geometry.cuts.run_out import RunOut
from geometry.cuts.saw import FLATTEST_DEG, SawCut
from geometry.cuts.shaped_edge import ShapedEdge
from geometry.cuts.shouldered_tenon import ShoulderedTenon
from geometry.cuts.sockets import Sockets
from geometry.cuts.stopped_bevel import StoppedBevel
from geometry.cuts.tenon import Tenon
from geometry.cuts.trim import Trim, finished
from geometry.cuts.wedge_slot import WedgeSlot
from geometry.design.part import Shape
from geometry.primitives.frame import Vec3
from geometry.sheets.fitting_words import FITTING_KINDS, runs
from geometry.sheets.waste import wastes
from shared.units import angle_mark, length_mark

_SQUARE = 0.01  # degrees: less than this off square is square
_NEAR = 0.02  # mm


@dataclass(frozen=True, slots=True)
class CutLine:
    """A row of the table: the numbers of the cuts it stands for, their title, and the words."""

    numbers: tuple[int, ...]
    title: str
    words: str

    @property
    def number_text(self) -> str:
        """'3' for one cut, '7–9' for a run of alike ones."""
        first, last = self.numbers[0], self.numbers[-1]
        if first == last:
            return str(first)
        run = last - first + 1 == len(self.numbers)
        return f"{first}–{last}" if run else ", ".join(str(n) for n in self.numbers)


def cut_lines(shape: Shape) -> tuple[CutLine, ...]:
    """The rows of a part's table of cuts; cuts that read alike share a row."""
    rows: dict[tuple[str, str], list[int]] = {}
    for number, cut in enumerate(shape.cuts, start=1):
        rows.setdefault((cut.title, _words(cut, shape, number)), []).append(number)
    return tuple(CutLine(tuple(numbers), *key) for key, numbers in rows.items())


def _words(cut: Cut, shape: Shape, number: int) -> str:
    if isinstance(cut, Bore):
        # Other sizes of a piece that is left larger are to the line that it is trimmed to.
        sizes = finished(shape.blank, shape.cuts)
        cut = replace(cut, x=cut.x - sizes.x_low, y=cut.y - sizes.y_low)
    for kind, words in _KINDS:
        if isinstance(cut, kind):
            return words(cut, shape.blank)
    return _by_its_waste(shape, number)


def _saw(cut: SawCut, _blank: Blank) -> str:
    tilt, swing = cut.tilt_deg, cut.swing_deg
    if tilt > FLATTEST_DEG:
        # A face sawn off along the piece: it is stood on its edge for that.
        face = "reverse" if cut.outward[2] > 0.0 else "face side"
        return f"along the {face}, {_deg(90.0 - tilt)} off the grain"
    blade = "blade square" if tilt < _SQUARE else f"blade tilted {_deg(tilt)}"
    if swing < _SQUARE:
        return f"across, {blade}"
    if swing <= 45.0:
        return f"across, {_deg(swing)} off square, {blade}"
    if 90.0 - swing < _SQUARE:
        return f"along, {blade}"
    return f"along, {_deg(90.0 - swing)} off the grain, {blade}"


def _housing(cut: StoppedHousing, _blank: Blank) -> str:
    return (
        f"{_mm(cut.width)} wide, {_mm(cut.depth)} deep in the {cut.face.value}, "
        f"stops {_mm(cut.stop)} from the face edge, corners R {_mm(cut.corner_radius)}"
    )


def _rebate(cut: Rebate, blank: Blank) -> str:
    wide, long = cut.y_high - cut.y_low, cut.x_high - cut.x_low
    where = "along the face edge" if cut.y_low < _NEAR else "along the far edge"
    size = wide
    if wide > blank.width - _NEAR:
        where = f"across, {_along(cut.x_low, cut.x_high, blank)}"
        size = long
    words = f"{_mm(size)} wide, {_mm(cut.depth)} deep in the {cut.face.value}, {where}"
    if cut.x_low > _NEAR and size == wide:
        words += f", from {_mm(cut.x_low)}"
    if cut.x_high < blank.length - _NEAR and size == wide:
        words += f", to {_mm(cut.x_high)}"
    return words


def _notch(cut: Notch, blank: Blank) -> str:
    edge = "face edge" if cut.y_low < _NEAR else "far edge"
    # A lipping in front of a board of sheet has its share of the notch.
    wide = min(cut.y_high, blank.width) - max(cut.y_low, 0.0)
    along, across = _mm(cut.x_high - cut.x_low), _mm(wide)
    where = _along(cut.x_low, cut.x_high, blank)
    return f"{along} along, {across} across, at the {edge}, {where}"


def _finger_notch(cut: FingerNotch, _blank: Blank) -> str:
    return (
        f"{_mm(cut.depth)} down from the far edge, right through, from {_mm(cut.x_low)} to "
        f"{_mm(cut.x_high)}, corners R {_mm(cut.radius)}"
    )


def _lap(cut: AngledLap, blank: Blank) -> str:
    edge = "face edge" if cut.from_face_edge else "far edge"
    slant = math.degrees(math.atan2(abs(cut.x_reverse - cut.x_face), blank.thickness))
    way = f"{_deg(slant)} off square" if slant <= 45.0 else f"{_deg(90.0 - slant)} off the grain"
    return (
        f"{_mm(2.0 * cut.half_span)} along the grain, {_mm(cut.depth)} deep from the {edge}, "
        f"walls {way}"
    )


def _mortise(cut: OpenMortise, blank: Blank) -> str:
    return (
        f"{_mm(cut.z_high - cut.z_low)} wide, {_in_from(cut.z_low)}; floor "
        f"{_slant(cut.floor_face_edge, cut.floor_far_edge, blank.width)}"
    )


def _tenon(cut: Tenon, _blank: Blank) -> str:
    return f"{_mm(cut.z_high - cut.z_low)} thick, {_in_from(cut.z_low)}"


def _run_out(cut: RunOut, _blank: Blank) -> str:
    (_, width), *rest = cut.knees
    words = [f"sawn square: {_mm(width)} wide at the left"]
    for x, y in rest:
        if abs(y - width) < _NEAR:
            words.append(f"parallel to {_mm(x)}")
        else:
            words.append(f"straight to {_mm(y)} wide at {_mm(x)}")
        width = y
    return ", ".join(words)


def _shaped(cut: ShapedEdge, _blank: Blank) -> str:
    edge = "far edge" if cut.far else "face edge"
    places = [f"{_mm(y)} from the face edge at {_mm(x)}" for x, y in cut.line]
    return f"{edge} sawn square, straight from {', to '.join(places)}"


def _bevel(cut: StoppedBevel, blank: Blank) -> str:
    return (
        f"far edge, blade tilted {_deg(cut.tilt_deg(blank))}, from {_mm(cut.x_low)} to "
        f"{_mm(cut.x_high)}"
    )


def _bore(cut: Bore, blank: Blank) -> str:
    through = cut.depth >= blank.thickness - _NEAR
    deep = "right through" if through else f"{_mm(cut.depth)} deep"
    return (
        f"{_mm(cut.diameter)} across, {deep} from the {cut.face.value}, middle {_mm(cut.x)} from "
        f"the left end, {_mm(cut.y)} from the face edge"
    )


def _groove(cut: Groove, blank: Blank) -> str:
    long, wide = cut.x_high - cut.x_low, cut.y_high - cut.y_low
    size = f"{_mm(min(long, wide))} wide, {_mm(cut.depth)} deep in the {cut.face.value}"
    if wide <= long:
        words = f"{size}, {_mm(cut.y_low)} from the face edge"
        low, high, end = cut.x_low, cut.x_high, blank.length
    else:
        words = f"{size}, across, {_mm(cut.x_low)} from the left end"
        low, high, end = cut.y_low, cut.y_high, blank.width
    stopped = low > _NEAR or high < end - _NEAR
    return f"{words}, stopped at {_mm(low)} and {_mm(high)}" if stopped else f"{words}, through"


def _shouldered(cut: ShoulderedTenon, _blank: Blank) -> str:
    thick, wide = cut.z_high - cut.z_low, cut.y_high - cut.y_low
    words = f"{_mm(thick)} thick, {_mm(wide)} wide, {_in_from(cut.z_low)}, {_from_edge(cut.y_low)}"
    if cut.swing_deg > _SQUARE:
        words += f", shoulder {_deg(cut.swing_deg)} off square"
    if cut.tilt_deg > _SQUARE:
        words += f", blade tilted {_deg(cut.tilt_deg)}"
    return words


def _flat_mortise(cut: Mortise, blank: Blank) -> str:
    across, along = math.dist(*cut.mouth[:2]), math.dist(*cut.mouth[1:3])
    far = math.dist(*cut.floor[:2]), math.dist(*cut.floor[1:3])
    short, long = sorted((across, along))
    deep = f"{_mm(cut.depth)} deep" if not cut.through else "right through"
    words = f"{_mm(short)} by {_mm(long)}, {deep} from {_side_of(cut.mouth, blank)}"
    if max(abs(across - far[0]), abs(along - far[1])) > _NEAR:
        words += f", {_mm(min(far))} by {_mm(max(far))} on {_side_of(cut.floor, blank)}"
    off = _off_the_grain(cut)
    if _SQUARE < off < 90.0 - _SQUARE:
        words += f", lying {_deg(off)} off the grain"
    return f"{words}, {_deg(cut.slant_deg)} off square" if cut.slant_deg > _SQUARE else words


def _off_the_grain(cut: Mortise) -> float:
    """The angle from the length of its piece to the longer sides of its mouth."""
    sides = ((cut.mouth[0], cut.mouth[1]), (cut.mouth[1], cut.mouth[2]))
    start, end = max(sides, key=lambda side: math.dist(*side))
    return math.degrees(math.acos(min(1.0, abs(end[0] - start[0]) / math.dist(start, end))))


def _side_of(corners: Sequence[Vec3], blank: Blank) -> str:
    """The side of the piece that an end of a mortise lies in."""
    ys, zs = [y for _, y, _ in corners], [z for _, _, z in corners]
    if max(zs) < _NEAR:
        return "the face side"
    if min(zs) > blank.thickness - _NEAR:
        return "the reverse"
    return "the face edge" if max(ys) < blank.width / 2.0 else "the far edge"


def _round_tenon(cut: RoundTenon, _blank: Blank) -> str:
    shoulder = math.degrees(math.acos(min(1.0, abs(cut.outward[0]))))
    words = f"diameter {_mm(2.0 * cut.radius)}"
    return f"{words}, shoulder {_deg(shoulder)} off square" if shoulder > _SQUARE else words


def _leaning_bore(cut: LeaningBore, _blank: Blank) -> str:
    x, y, _ = cut.start
    words = (
        f"{_mm(2.0 * cut.radius)} across, right through from the {cut.face.value}, middle there "
        f"{_mm(x)} from the left end, {_mm(y)} from the face edge"
    )
    if not cut.leans:
        return words
    return (
        f"{words}; bit tilted {_deg(cut.tilt_deg)} along a sightline "
        f"{_deg(cut.sightline_deg)} from square across"
    )


def _slot(cut: WedgeSlot, _blank: Blank) -> str:
    words = f"opening 1 in {1.0 / (2.0 * cut.slope):.3g} from its root across the tenon"
    if min(abs(cut.along[1]), abs(cut.along[2])) > math.sin(math.radians(_SQUARE)):
        words += f", {runs(cut.along, 0)}"
    if cut.at_start:
        return words
    return f"{words}, its middle {_mm(cut.root[1])} from the face edge"


def _gaps(cut: EndGaps, _blank: Blank) -> str:
    deep = abs(cut.x_end - cut.x_base)
    lean = max(abs(gap.end_low - gap.base_low) for gap in cut.gaps)
    slope = f", slope 1:{deep / lean:.3g}" if lean > _NEAR else ""
    places = _ranges([(gap.end_low, gap.end_high) for gap in cut.gaps])
    return f"base line {_mm(deep)} from the {_side(cut)} end{slope}; gaps at the end {places}"


def _sockets(cut: Sockets, blank: Blank) -> str:
    through = cut.depth >= blank.thickness - _NEAR
    deep = "right through" if through else f"{_mm(cut.depth)} deep from the face side"
    places = _ranges([(one.face_low, one.face_high) for one in cut.sockets])
    long = _mm(abs(cut.x_end - cut.x_base))
    return f"{long} long from the {_side(cut)} end, {deep}; on the face side {places}"


def _side(cut: EndGaps | Sockets) -> str:
    return "left" if cut.x_end < cut.x_base else "right"


def _ranges(places: Sequence[tuple[float, float]]) -> str:
    return ", ".join(f"{_mm(low)} to {_mm(high)}" for low, high in places)


def _trim(cut: Trim, _blank: Blank) -> str:
    return (
        f"to {_mm(cut.x_high - cut.x_low)} long and {_mm(cut.y_high - cut.y_low)} wide, once fitted"
    )


def _chamfer(cut: Chamfer, _blank: Blank) -> str:
    size = math.dist(cut.start.arris, cut.start.on_face)
    return f"{_mm(size)} on the arris of the {cut.face.value}"


def _relief(cut: Relief, _blank: Blank) -> str:
    deepest = max(z for _, _, z in cut.facets.points)
    return f"facets from point to point, at most {_mm(deepest)} deep: see the table of points"


def _finger_groove(cut: FingerGroove, _blank: Blank) -> str:
    edge = "face edge" if cut.inward else "far edge"
    return f"cove R {_mm(cut.radius)} along the reverse of the {edge}, once fitted"


def _hinge(cut: HingeMortise, blank: Blank) -> str:
    """A leaf is let in as deep as it is thick, its least size."""
    deep, wide = sorted((cut.y[1] - cut.y[0], cut.z[1] - cut.z[0]))
    where = _along(cut.x[0], cut.x[1], blank)
    return f"{_mm(cut.x[1] - cut.x[0])} along, {_mm(wide)} wide, {_mm(deep)} deep, {where}"


def _by_its_waste(shape: Shape, number: int) -> str:
    """The rectangle round what the cut takes away, and how far through."""
    found = [waste for waste in wastes(shape) if waste.number == number]
    if not found:
        return "as drawn"
    xs = [x for waste in found for x, _ in (*waste.low, *waste.high)]
    ys = [y for waste in found for _, y in (*waste.low, *waste.high)]
    deep = sum(waste.z_high - waste.z_low for waste in found)
    return f"{_mm(max(xs) - min(xs))} along, {_mm(max(ys) - min(ys))} across, {_mm(deep)} deep"


def _slant(near: float, far: float, width: float) -> str:
    off = math.degrees(math.atan2(abs(far - near), width))
    return "square" if off < _SQUARE else f"{_deg(off)} off square"


def _along(x_low: float, x_high: float, blank: Blank) -> str:
    """At which end something is, or how far from the left one."""
    if x_low < _NEAR:
        return "at the left end"
    if x_high > blank.length - _NEAR:
        return "at the right end"
    return f"{_mm(x_low)} from the left end"


def _in_from(z_low: float) -> str:
    return f"{_mm(z_low)} from the face side" if z_low > _NEAR else "flush with the face side"


def _from_edge(y_low: float) -> str:
    return f"{_mm(y_low)} from the face edge" if y_low > _NEAR else "flush with the face edge"


def _mm(value: float) -> str:
    return length_mark(round(value, 4))


def _deg(value: float) -> str:
    return angle_mark(round(value, 4))


_KINDS: tuple[tuple[type, Callable[[Any, Blank], str]], ...] = (
    (SawCut, _saw),
    (StoppedHousing, _housing),
    (Rebate, _rebate),
    (Notch, _notch),
    (FingerNotch, _finger_notch),
    (AngledLap, _lap),
    (OpenMortise, _mortise),
    (Tenon, _tenon),
    (RunOut, _run_out),
    (ShapedEdge, _shaped),
    (StoppedBevel, _bevel),
    (Chamfer, _chamfer),
    (Bore, _bore),
    (Groove, _groove),
    (ShoulderedTenon, _shouldered),
    (EndGaps, _gaps),
    (Sockets, _sockets),
    (Trim, _trim),
    (HingeMortise, _hinge),
    (Mortise, _flat_mortise),
    (RoundTenon, _round_tenon),
    (LeaningBore, _leaning_bore),
    (WedgeSlot, _slot),
    (Relief, _relief),
    (FingerGroove, _finger_groove),
    *FITTING_KINDS,
)
