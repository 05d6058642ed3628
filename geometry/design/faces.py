"""What the six sides of a part are called.

Frame: the part's own: x along the grain, y across it from the face edge, z through the thickness
from the face side.
"""

from __future__ import annotations

FACES = (("left end", "right end"), ("face edge", "far edge"), ("face side", "reverse"))
"""Of each axis the side where it begins, from which a maker measures, and that where it ends."""
