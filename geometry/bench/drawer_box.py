"""One drawer box: sides, front, back and bottom, and the joints between them.

Frame: X to the right, Y from the outside of the box's front to the back, Z up; the origin is the
outer lower corner at the front left.  Names are those of the pieces in the box; a drawer in a
bench gives them its own (see ``drawers``).  Boxes with equal numbers share one value, and so all
shapes.
"""

from __future__ import annotations

from functools import lru_cache

from geometry.bench.drawer_numbers import BoxNumbers, Making
from geometry.bench.drawer_parameters import FINGERS, REBATE
from geometry.cuts.bore import Bore
from geometry.cuts.contour import Face
from geometry.cuts.cut import Blank, Cut
from geometry.cuts.notch import Notch
from geometry.design.joint import Joint
from geometry.design.part import Part, Shape
from geometry.joints.box_joint import FingerNumbers, box_joint
from geometry.joints.box_joint import count_for as finger_count
from geometry.joints.corner import Corner
from geometry.joints.dovetail import DovetailNumbers, dovetail
from geometry.joints.dovetail_spacing import Spacing
from geometry.joints.grooved_bottom import BottomNumbers, grooved_bottom
from geometry.joints.rebate_groove import TongueNumbers, rebate_groove
from geometry.primitives.frame import Frame, Vec3

FRONT, BACK, LEFT, RIGHT, BOTTOM = "box_front", "back", "side_left", "side_right", "bottom"


@lru_cache(maxsize=512)
def box_pieces(box: BoxNumbers) -> tuple[Part, ...]:
    """The five pieces with their own cuts but no joints."""
    m = box.making
    start = end_start(m)
    side = Shape(Blank(box.length - m.lap, box.height, m.side), ())
    end = Blank(box.width - 2.0 * start, box.height, m.end)
    left = Frame.of((m.side, box.length, 0.0), (0, -1, 0), (0, 0, 1))
    right = Frame.of((box.width - m.side, m.lap, 0.0), (0, 1, 0), (0, 0, 1))
    front = Frame.of((start, m.end, 0.0), (1, 0, 0), (0, 0, 1))
    back = Frame.of((box.width - start, box.length - m.end, 0.0), (-1, 0, 0), (0, 0, 1))
    return (
        _piece(FRONT, "Drawer box front", "drawer box front", Shape(end, ()), front),
        _piece(BACK, "Drawer back", "drawer back", Shape(end, _back_cuts(box)), back),
        _piece(LEFT, "Drawer side, left", "drawer side", side, left),
        _piece(RIGHT, "Drawer side, right", "drawer side", side, right),
        _bottom(box),
    )


def end_start(m: Making) -> float:
    """How far inside the outside of the sides the box's front and back begin."""
    return m.side - m.tongue_length if m.joint == REBATE else 0.0


def _piece(name: str, title: str, kind: str, shape: Shape, frame: Frame) -> Part:
    return Part(name=name, title=title, kind=kind, material="", shape=shape, frame=frame)


def _bottom(box: BoxNumbers) -> Part:
    m = box.making
    more = 2.0 * m.groove - m.bottom_fit
    inside = m.groove - m.bottom_fit / 2.0
    blank = Blank(
        round(box.width - 2.0 * m.side + more, 9),
        round(box.length - 2.0 * m.end + more, 9),
        m.bottom,
    )
    origin = (m.side - inside, box.length - m.end + inside, m.up + m.bottom)
    return Part(
        name=BOTTOM,
        title="Drawer bottom",
        kind="drawer bottom",
        material="",
        shape=Shape(blank, ()),
        frame=Frame.of(origin, (1, 0, 0), (0, -1, 0)),
        solid_timber=False,
    )


def _back_cuts(box: BoxNumbers) -> tuple[Cut, ...]:
    """Notches for the runners in the lower corners of the back, and holes for their hooks.

    A notch goes from the inside of the side to its width and takes off what stands between that
    and the end: a pin or a finger there would have nothing to hold on to.
    """
    m = box.making
    length = box.width - 2.0 * end_start(m)
    inside = m.side - end_start(m)
    cuts: list[Cut] = []
    if m.notch_width > 0.0 and m.notch_height > 0.0:
        reach = inside + m.notch_width
        cuts += (
            Notch(0.0, reach, 0.0, m.notch_height),
            Notch(length - reach, length, 0.0, m.notch_height),
        )
    if m.bore_diameter > 0.0 and m.bore_depth > 0.0:
        cuts += (
            Bore(x, m.bore_up, m.bore_diameter, m.bore_depth, Face.REVERSE)
            for x in (inside + m.bore_in, length - inside - m.bore_in)
        )
    return tuple(cuts)


@lru_cache(maxsize=512)
def box_joints(box: BoxNumbers) -> tuple[Joint, ...]:
    """Four corners, and the bottom in each of the four pieces."""
    parts = {part.name: part for part in box_pieces(box)}
    return (
        *(_corner(box, side, end, parts) for end in (FRONT, BACK) for side in (LEFT, RIGHT)),
        *_bottoms(box, parts),
    )


def _corner(box: BoxNumbers, side: str, end: str, parts: dict[str, Part]) -> Joint:
    m = box.making
    left, front = side == LEFT, end == FRONT
    corner = Corner(
        arris=(0.0 if left else box.width, 0.0 if front else box.length, 0.0),
        along_side=(0.0, 1.0 if front else -1.0, 0.0),
        along_end=(1.0 if left else -1.0, 0.0, 0.0),
        height=box.height,
        side_thickness=m.side,
        end_thickness=m.end,
        fit=m.fit,
        groove=m.groove,
        clear=max(m.groove_top, m.notch_height),
    )
    name = f"corner_{'front' if front else 'back'}_{'left' if left else 'right'}"
    if m.joint == REBATE:
        tongue = TongueNumbers(corner, m.tongue_thickness, m.tongue_length)
        return rebate_groove(name, parts[side], parts[end], tongue)
    if m.joint == FINGERS:
        fingers = FingerNumbers(corner, fingers_of(box))
        return box_joint(name, parts[side], parts[end], fingers)
    spacing = spacing_of(box, front=front)
    numbers = DovetailNumbers(corner, spacing, tails_of(box, spacing), m.end - spacing.length)
    return dovetail(name, parts[side], parts[end], numbers)


def spacing_of(box: BoxNumbers, *, front: bool) -> Spacing:
    """How the dovetails of the box's front or back corners are spaced."""
    m = box.making
    length = m.end - m.lap if front else m.end
    return Spacing(box.height, length, m.slope, m.pin, m.half_pin)


def tails_of(box: BoxNumbers, spacing: Spacing) -> int:
    """How many tails each corner has."""
    return box.making.number or spacing.count_for(box.making.width)


def fingers_of(box: BoxNumbers) -> int:
    """How many fingers each side has."""
    return (
        max(2, box.making.number)
        if box.making.number
        else finger_count(box.height, box.making.width)
    )


def _bottoms(box: BoxNumbers, parts: dict[str, Part]) -> tuple[Joint, ...]:
    m = box.making
    left, right = m.side, box.width - m.side
    front, back = m.end, box.length - m.end
    sides: tuple[tuple[str, Vec3, Vec3, Vec3], ...] = (
        (FRONT, (left, front, 0.0), (right, front, 0.0), (0.0, -1.0, 0.0)),
        (BACK, (left, back, 0.0), (right, back, 0.0), (0.0, 1.0, 0.0)),
        (LEFT, (left, front, 0.0), (left, back, 0.0), (-1.0, 0.0, 0.0)),
        (RIGHT, (right, front, 0.0), (right, back, 0.0), (1.0, 0.0, 0.0)),
    )
    return tuple(
        grooved_bottom(
            f"bottom_in_{name}",
            parts[name],
            parts[BOTTOM],
            BottomNumbers(
                start,
                end,
                outward,
                up=m.up,
                thickness=m.bottom,
                depth=m.groove,
                fit=m.bottom_fit,
                ease=m.fit,
                notch=m.notch_width if name == BACK else 0.0,
            ),
        )
        for name, start, end, outward in sides
    )
