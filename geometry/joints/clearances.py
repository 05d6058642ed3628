"""What the clearance of each kind of joint is, in the maker's words: which piece has the room.

A joint's ``fit`` is one number; it widens whatever is cut to receive the other piece.
"""

from __future__ import annotations

BETWEEN = "between the two pieces, both sides together"
"""Of a kind that is not in the table."""

_WIDER = "so much wider than the tenon is thick, both cheeks together"
_SMALLER = "so much smaller than the room for it, both edges together"

CLEARANCES: dict[str, str] = {
    "angled lap": "each notch is so much wider than the other piece is thick",
    "apron tenon": f"the mortise is {_WIDER}",
    "box joint": "each notch is so much wider than its finger, both flanks together",
    "bridle joint": f"the open mortise is {_WIDER}",
    "grooved bottom": f"the bottom is {_SMALLER}",
    "half-blind dovetail": "each socket is so much wider than its tail, square to its two flanks",
    "housed rail": "the housing is so much wider than the rail is thick, both sides together",
    "let in": "the notch is so much wider than the post, both sides together",
    "loose tenon": "the mortise is so much wider, and so much thicker, than the slip",
    "passed rail": "the mortise is so much wider than the rail is thick, both sides together",
    "post tenon": f"the mortise is {_WIDER}",
    "rail tenon": f"the mortise is {_WIDER}",
    "rebate": f"the sheet is {_SMALLER}",
    "rebate and groove": "the groove is so much wider than the tongue is thick",
    "round tenon": "the bore is so much larger than the tenon, across",
    "slat tenon": f"the mortise is {_WIDER}",
    "stopped housing": "the housing is so much wider than the piece is thick, both sides together",
    "stub tenon": f"the mortise is {_WIDER}",
    "through dovetail": "each socket is so much wider than its tail, square to its two flanks",
    "through tenon": f"the mortise is {_WIDER}",
    "wedged tenon": f"the mortise is {_WIDER}",
}
"""By the kind of a joint."""
