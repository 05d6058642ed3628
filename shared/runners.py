"""Drawer runners: what room each kind takes and what has to be cut for it.  Millimetres, kg.

The rows are generic, and so each says: no two makers' runners are alike, and the sheet that comes
with the pair in hand decides.  A maker's own rows come from a table of the same columns (see
``runner_rows``).
"""

from __future__ import annotations

from dataclasses import dataclass

UNDER, SIDE, WOODEN = "under-mounted", "side-mounted", "wooden"
RUNNER_KINDS = (SIDE, UNDER, WOODEN)

TO_OUTSIDE, TO_INSIDE = "outside", "inside"


@dataclass(frozen=True, slots=True, kw_only=True)
class Runner:
    """One row of the table.

    ``side`` is the clearance at each side from the opening to the box: to the ``outside`` of its
    sides, or to their ``inside`` where the runner reaches under them (``side_to``).
    ``thickest_side`` is the thickest side the runner takes, 0 for any.  ``below``, ``above`` and
    ``behind`` are the clearances of the box; a wooden runner is as thick as the clearance below.

    Under-mounted only: ``recess`` is how far the drawer's bottom must lie above the lower edges of
    the sides; ``notch_width`` (from the inside of the side) and ``notch_height`` are cut out of
    the lower corners of the box's back; the hook's hole has ``bore_diameter`` and ``bore_depth``,
    its middle ``bore_in`` from the inside of the side and ``bore_up`` from the lower edge.
    Wooden only: ``strip_width``, level, from the upright.

    Lengths go from ``shortest`` to ``longest`` by ``step``; a step of 0 means any length.
    ``load`` is what a pair carries, ``travel`` how far it opens in percent of its length.
    """

    name: str
    kind: str
    side: float
    side_to: str = TO_OUTSIDE
    thickest_side: float = 0
    below: float
    above: float
    behind: float
    recess: float = 0
    notch_width: float = 0
    notch_height: float = 0
    bore_diameter: float = 0
    bore_depth: float = 0
    bore_in: float = 0
    bore_up: float = 0
    strip_width: float = 0
    shortest: float
    longest: float
    step: float
    load: float
    travel: float
    source: str


_CHECK = "from memory, generic: check your runner's sheet"
_PRACTICE = "common practice, no source: check your runner's sheet"

RUNNERS: tuple[Runner, ...] = (
    Runner(
        name="side-mounted, full travel", kind=SIDE,
        side=12.7, below=6, above=6, behind=3,
        shortest=250, longest=700, step=50, load=45, travel=100, source=_CHECK,
    ),
    Runner(
        name="side-mounted, rollers, three-quarter travel", kind=SIDE,
        side=12.5, below=6, above=18, behind=5,
        shortest=250, longest=600, step=50, load=20, travel=75, source=_CHECK,
    ),
    Runner(
        name="under-mounted, full travel", kind=UNDER,
        side=21, side_to=TO_INSIDE, thickest_side=16, below=14, above=7, behind=5,
        recess=12.7, notch_width=35, notch_height=12.7,
        bore_diameter=6, bore_depth=10, bore_in=7, bore_up=24,
        shortest=250, longest=600, step=50, load=30, travel=100, source=_CHECK,
    ),
    Runner(
        name="under-mounted, inch lengths", kind=UNDER,
        side=21, side_to=TO_INSIDE, thickest_side=15.875, below=14, above=7, behind=5,
        recess=12.7, notch_width=35, notch_height=12.7,
        bore_diameter=6, bore_depth=10, bore_in=7, bore_up=24,
        shortest=228.6, longest=533.4, step=76.2, load=30, travel=100, source=_CHECK,
    ),
    Runner(
        name="wooden, under the sides", kind=WOODEN,
        side=0.8, below=12, above=2, behind=6, strip_width=24,
        shortest=120, longest=700, step=0, load=15, travel=65, source=_PRACTICE,
    ),
)  # fmt: skip


def generic(kind: str) -> Runner:
    """The first row of a kind; AssertionError for a kind that has none.

    >>> generic(UNDER).side
    21
    """
    found = next((row for row in RUNNERS if row.kind == kind), None)
    assert found is not None, kind
    return found
