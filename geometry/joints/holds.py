"""How each kind of joint holds its two pieces: whether they can still move on each other.

The wood of both swells and shrinks across its grain.  What is glued, or screwed in plain holes,
must go with it; what is screwed in slots, or stands dry in a groove, need not.
"""

from __future__ import annotations

from enum import Enum

from geometry.design.joint import Joint
from geometry.design.part import Part
from geometry.joints.face_to_face import SCREWED, SLIDING, SLOTTED


class Hold(Enum):
    """``FAST``: glued, or screwed in plain holes.  ``SLOTS``: screwed, with room to move.
    ``ROOM``: dry in a groove or rebate, with room round its edges.  ``LOOSE``: laid or hung on.
    """

    FAST = "fast"
    SLOTS = "in slots"
    ROOM = "dry, with room"
    LOOSE = "loose"


HOLDS: dict[str, Hold] = {
    "angled lap": Hold.FAST,
    "apron tenon": Hold.FAST,
    "box joint": Hold.FAST,
    "bridle joint": Hold.FAST,
    "butt joint": Hold.FAST,
    "button": Hold.SLOTS,
    "glued block": Hold.FAST,
    "glued and screwed block": Hold.FAST,
    "glued edge": Hold.FAST,
    "glued edges": Hold.FAST,
    "glued lipping": Hold.FAST,
    "grooved bottom": Hold.ROOM,
    "half-blind dovetail": Hold.FAST,
    "hinged lid": Hold.LOOSE,
    "housed rail": Hold.FAST,
    "let in": Hold.FAST,
    "levelling foot": Hold.LOOSE,
    "lid on its box": Hold.LOOSE,
    "lid stay": Hold.LOOSE,
    "loose tenon": Hold.FAST,
    "mitre": Hold.FAST,
    "mitred lipping": Hold.FAST,
    "pad": Hold.LOOSE,
    "passed rail": Hold.LOOSE,
    "post tenon": Hold.FAST,
    "rail tenon": Hold.FAST,
    "rebate": Hold.ROOM,
    "rebate and groove": Hold.FAST,
    "round tenon": Hold.FAST,
    SLIDING: Hold.LOOSE,
    SCREWED: Hold.FAST,
    SLOTTED: Hold.SLOTS,
    "screwed button": Hold.FAST,
    "slat tenon": Hold.FAST,
    "slotted screw": Hold.SLOTS,
    "stopped housing": Hold.FAST,
    "stub tenon": Hold.FAST,
    "through dovetail": Hold.FAST,
    "through tenon": Hold.FAST,
    "wedge": Hold.FAST,
    "wedged tenon": Hold.FAST,
}
"""By the kind of a joint."""


def hold_of(joint: Joint, second: Part) -> Hold:
    """How a joint holds its second piece; KeyError for a kind that is not in the table.

    A shelf of sheet is glued at the front of its housings alone: the upright moves behind that.
    """
    if joint.kind == "stopped housing" and not second.solid_timber:
        return Hold.ROOM
    return HOLDS[joint.kind]
