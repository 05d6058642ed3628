"""The gestures.  Each is fed the moments after its press and answers with deeds.

Method: one generator a gesture (an idea seen in napari's shape tools); the driver sends a
moment and gets a deed, and the last deed is the generator's return value.
"""

from __future__ import annotations

from collections.abc import Generator

from app.gestures.moments import (
    Act,
    Deed,
    Gesture,
    Handle,
    LeavePlane,
    Moment,
    OpenJoint,
    OpenSection,
    Pan,
    PickAt,
    PutPlane,
    Restore,
    Settle,
    Shift,
    ShiftPlane,
    TypeInto,
    between,
    is_still,
)


def _beyond_stillness(press: Moment) -> Generator[Deed | None, Moment, Moment]:
    """The first moment that is no small move any more, as a hand that clicks makes."""
    moment = yield None
    while moment.act is Act.MOVE and is_still(press.at, moment.at):
        moment = yield None
    return moment


def hold_value(handle: Handle, press: Moment) -> Gesture:
    """A hand on a dimension or an edge: a click types, a drag sets, escape restores."""
    moment = yield from _beyond_stillness(press)
    if moment.act is Act.ESCAPE:
        return None
    if moment.act is Act.RELEASE and is_still(press.at, moment.at):
        return TypeInto(handle)
    return (yield from _pulled(handle, press, moment))


def touch_joint(joint: str, handle: Handle | None, press: Moment) -> Gesture:
    """A hand on the seam of a joint: a click opens it; a drag pulls the edge that lies under it
    too, if one does."""
    moment = yield from _beyond_stillness(press)
    if moment.act is Act.ESCAPE:
        return None
    if moment.act is Act.RELEASE and is_still(press.at, moment.at):
        return OpenJoint(joint)
    if handle is not None:
        return (yield from _pulled(handle, press, moment))
    while moment.act is Act.MOVE:
        moment = yield None
    return None


def _pulled(handle: Handle, press: Moment, moment: Moment) -> Gesture:
    """A hand that has moved, from ``moment`` on."""
    if handle.pull is None:
        while moment.act is Act.MOVE:
            moment = yield None
        return TypeInto(handle) if moment.act is Act.RELEASE else None
    while moment.act is Act.MOVE:
        moment = yield Shift(handle, between(press, moment), moment.free)
    return Settle() if moment.act is Act.RELEASE else Restore()


def touch_plane(press: Moment) -> Gesture:
    """A hand on the line of a section's plane: a click shows the section, a drag moves it."""
    moment = yield from _beyond_stillness(press)
    if moment.act is Act.RELEASE and is_still(press.at, moment.at):
        return OpenSection()
    while moment.act is Act.MOVE:
        moment = yield ShiftPlane(moment.at, moment.free)
    return PutPlane() if moment.act is Act.RELEASE else LeavePlane()


def touch_part(press: Moment) -> Gesture:
    """A hand on the drawing but on no value: a click picks out the part."""
    moment = yield None
    while moment.act is Act.MOVE:
        moment = yield None
    if moment.act is Act.RELEASE and is_still(press.at, moment.at):
        return PickAt(moment.at)
    return None


def slide_sheet(press: Moment) -> Gesture:
    """The sheet follows the hand."""
    last = press
    moment = yield None
    while moment.act is Act.MOVE:
        step = between(last, moment)
        last = moment
        moment = yield Pan(step)
    return Pan(between(last, moment)) if moment.act is Act.RELEASE else None


class Hand:
    """Drives one gesture; ``busy`` until it has said its last deed."""

    def __init__(self, gesture: Gesture) -> None:
        self._gesture = gesture
        self.busy = True
        next(gesture)

    def feed(self, moment: Moment) -> Deed | None:
        """Send one moment on and take the answer."""
        try:
            return self._gesture.send(moment)
        except StopIteration as end:
            self.busy = False
            last: Deed | None = end.value
            return last
