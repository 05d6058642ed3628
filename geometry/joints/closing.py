"""How each kind of glued joint is closed: by clamps, or by something of its own.

A face with nothing to keep it from sliding must be pressed squarely; what is housed, tenoned,
halved or dovetailed keeps its place and may be pressed aslant (common practice, no source).
"""

from __future__ import annotations

from enum import Enum

from geometry.design.joint import Joint


class Closing(Enum):
    """``PLAIN``: clamps, square to faces that slide.  ``KEYED``: clamps, and it cannot slide.
    ``ITSELF``: wedges, screws, a drive fit or rubbing hold it while the glue sets.
    """

    PLAIN = "plain"
    KEYED = "keyed"
    ITSELF = "itself"


GLUED: dict[str, Closing] = {
    "angled lap": Closing.KEYED,
    "apron tenon": Closing.KEYED,
    "box joint": Closing.KEYED,
    "bridle joint": Closing.KEYED,
    "butt joint": Closing.PLAIN,
    "glued block": Closing.ITSELF,  # rubbed on
    "glued and screwed block": Closing.ITSELF,
    "glued edge": Closing.PLAIN,
    "glued edges": Closing.PLAIN,
    "glued lipping": Closing.PLAIN,
    "half-blind dovetail": Closing.KEYED,
    "housed rail": Closing.KEYED,
    "let in": Closing.KEYED,
    "loose tenon": Closing.ITSELF,  # comes home with the faces that it keeps
    "mitre": Closing.PLAIN,
    "mitred lipping": Closing.ITSELF,  # comes home with the mitre of its boards
    "post tenon": Closing.KEYED,
    "rail tenon": Closing.KEYED,
    "rebate and groove": Closing.KEYED,
    "round tenon": Closing.KEYED,
    "slat tenon": Closing.KEYED,
    "stopped housing": Closing.KEYED,
    "stub tenon": Closing.KEYED,
    "through dovetail": Closing.KEYED,
    "through tenon": Closing.KEYED,
    "wedge": Closing.ITSELF,
    "wedged tenon": Closing.ITSELF,
}
"""By the kind of a joint; a kind that is not here has no glue."""

MANY_FACED = frozenset({"box joint", "half-blind dovetail", "through dovetail"})
"""Kinds with a row of faces to be spread one by one."""


def closing_of(joint: Joint) -> Closing | None:
    """How a joint is closed; None where it is not glued."""
    return GLUED.get(joint.kind)
