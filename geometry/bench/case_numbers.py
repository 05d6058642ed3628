"""The case's numbers, read once from a spec, and the few that follow from them.

Case frame in plan: X from the left end of the case, ``depth`` forward from the back edges.  Either
end may flare, or both; the stations of a flare run from its own end.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

from geometry.bench.lipped import SHEET, lips_back, lips_ends
from geometry.design.spec import BenchSpec
from shared.tolerances import COPLANAR

LEFT, RIGHT, BOTH = "left", "right", "both"
MITRED, OPEN = "mitred", "open"

# What a rule reads that asks how far the sheet of boards reaches.
LIP_READS = (
    "board_lip board_lipped top_made_of bottom_made_of ends_made_of left_end right_end "
    "flare flare_right deep_end case_height"
)


@dataclass(frozen=True, slots=True)
class End:
    """How an end is closed: a mitred panel, or a partition set in by ``inset`` (to its outside)."""

    side: str
    mitred: bool
    inset: float


@dataclass(frozen=True, slots=True)
class Flare:
    """How much deeper the top is at one end; stations in mm from that end.

    ``amount`` as far as ``straight``, from there in a straight line to nothing at ``end``.
    """

    amount: float
    straight: float
    end: float

    def at(self, station: float) -> float:
        """How much deeper the top is at a station."""
        if self.amount <= 0.0 or station >= self.end:
            return 0.0
        if station <= self.straight:
            return self.amount
        return self.amount * ((self.end - station) / (self.end - self.straight))


NO_FLARE = Flare(0.0, 0.0, 0.0)


@dataclass(frozen=True, slots=True)
class CaseNumbers:
    """All in mm; names as in the catalogue."""

    length: float
    depth: float
    height: float
    thickness: float
    floor: float  # height of the case's underside above the floor
    flare_left: Flare
    flare_right: Flare
    both_flare: bool  # each end has a lean of its own, be it none
    left: End
    right: End
    partition_thickness: float
    partitions: tuple[float, ...]
    reveal: float
    housing_depth: float
    cutter_radius: float
    cover: float
    housing_fit: float
    back_thickness: float
    rebate_depth: float
    back_let_in: float
    back_fit: float
    chamfer: float
    lips: tuple[float, float, float]  # lippings of top, bottom and end panels; 0 for timber
    lipped_back: bool  # whether those of sheet have them on their back edges too
    lipped_ends: bool  # and on the ends that no panel is mitred to

    @property
    def top(self) -> float:
        """Height of the seat above the floor."""
        return self.floor + self.height

    @property
    def inside_low(self) -> float:
        return self.floor + self.thickness

    @property
    def inside_high(self) -> float:
        return self.top - self.thickness

    @property
    def inside_height(self) -> float:
        return self.height - 2.0 * self.thickness

    @property
    def partition_height(self) -> float:
        return self.inside_height + 2.0 * self.housing_depth

    @property
    def rebate_width(self) -> float:
        return self.back_thickness + self.back_let_in

    @property
    def flared(self) -> bool:
        return self.flare_left.amount > 0.0 or self.flare_right.amount > 0.0

    @property
    def greatest_flare(self) -> float:
        return max(self.flare_left.amount, self.flare_right.amount)

    def flare_of(self, side: str) -> Flare:
        return self.flare_left if side == LEFT else self.flare_right

    def lean_deg(self, side: str) -> float:
        """Lean of an end's front edges from the vertical: atan(flare / case height)."""
        return math.degrees(math.atan2(self.flare_of(side).amount, self.height))

    def bevel(self, side: str) -> float:
        """How far the leaning front edge of an end travels through one board's thickness."""
        return self.flare_of(side).amount * self.thickness / self.height

    @property
    def bevel_changes(self) -> float | None:
        """X at which the bottom's bevel changes from the left end's to the right end's.

        None where one lean does for the whole length: with a flare at one end only the bottom
        leans as that end does.  Else half way between the ends of the run-outs.
        """
        left, right = self.flare_left, self.flare_right
        if not self.both_flare or abs(left.amount - right.amount) < COPLANAR:
            return None
        return (left.end + self.length - right.end) / 2.0

    def bottom_bevel(self, x: float) -> float:
        """How far the bottom's front edge reaches forward of its lower arris at its upper face."""
        changes = self.bevel_changes
        if changes is None:
            return self.greatest_flare * self.thickness / self.height
        return self.bevel(LEFT if x < changes else RIGHT)

    @property
    def upright_front(self) -> float:
        """How far the uprights' front edges stand in front of the back edges."""
        return self.depth - self.reveal

    @property
    def inside_left(self) -> float:
        """X of the inside face at the left end."""
        return self.thickness if self.left.mitred else self.left.inset + self.partition_thickness

    @property
    def inside_right(self) -> float:
        if self.right.mitred:
            return self.length - self.thickness
        return self.length - self.right.inset - self.partition_thickness

    def station(self, side: str, x: float) -> float:
        """Distance of X from an end."""
        return x if side == LEFT else self.length - x

    def x_at(self, side: str, station: float) -> float:
        """X of a station from an end."""
        return station if side == LEFT else self.length - station

    def behind(self, board: str) -> float:
        """How far behind the front of a board, along its faces, its lipping is glued on.

        ``board`` is ``top``, ``bottom`` or the name of an end panel; 0 for one of timber.
        """
        place = _place(board)
        lip = self.lips[place]
        if lip <= 0.0 or place == 0:
            return lip  # a top of sheet has no flare
        side = board.removeprefix("end_panel_")
        flare = self.greatest_flare if place == 1 else self.flare_of(side).amount
        return lip * math.hypot(1.0, flare / self.height)

    def back_lip(self, board: str) -> float:
        """Thickness of the lipping on a board's back edge; 0 where it has none."""
        return self.lips[_place(board)] if self.lipped_back else 0.0

    def end_lip(self, board: str, side: str) -> float:
        """The same on an end of top or bottom; a mitred end has none."""
        open_end = not (self.left if side == LEFT else self.right).mitred
        return self.lips[_place(board)] if self.lipped_ends and open_end else 0.0

    @property
    def sheet_back(self) -> float:
        """How far in front of the back edges the sheet of all boards begins."""
        ends = [f"end_panel_{end.side}" for end in (self.left, self.right) if end.mitred]
        return max(self.back_lip(board) for board in ("top", "bottom", *ends))

    @property
    def sheet_front(self) -> float:
        """How far the sheet of all boards reaches forward of the back edges."""
        ends = [f"end_panel_{end.side}" for end in (self.left, self.right) if end.mitred]
        return self.depth - max(self.behind(board) for board in ("top", "bottom", *ends))

    def depth_at(self, x: float) -> float:
        """Depth of the top at its outside (upper) front arris; the flares do not overlap."""
        return self.depth + self.flare_left.at(x) + self.flare_right.at(self.length - x)

    def inside_depth_at(self, x: float) -> float:
        """Depth of the top at the front arris of its inside (under) face."""
        for side in (LEFT, RIGHT):
            flare = self.flare_of(side)
            if flare.amount > 0.0 and self.station(side, x) <= flare.straight:
                return self.depth + flare.amount - self.bevel(side)
        return self.depth_at(x)


def _place(board: str) -> int:
    """Of a board's lipping among those of top, bottom and end panels."""
    return {"top": 0, "bottom": 1}.get(board, 2)


@lru_cache(maxsize=512)
def case_numbers(spec: BenchSpec) -> CaseNumbers:
    """Read the case from a spec."""
    v = spec.values
    count = spec.count("partition_count")

    def number(name: str) -> float:
        value = v[name]
        assert not isinstance(value, str)
        return value

    def lip(made_of: str) -> float:
        return number("board_lip") if v[made_of] == SHEET else 0.0

    deep_end, lipped = v["deep_end"], spec.word("board_lipped")
    first = Flare(number("flare"), number("flare_straight"), number("flare_end"))
    left = right = NO_FLARE
    if deep_end == BOTH:
        left = first
        right = Flare(
            number("flare_right"), number("flare_straight_right"), number("flare_end_right")
        )
    elif deep_end == LEFT:
        left = first
    else:
        right = first
    return CaseNumbers(
        length=number("length"),
        depth=number("depth"),
        height=number("case_height"),
        thickness=number("board_thickness"),
        floor=number("base_height"),
        flare_left=left,
        flare_right=right,
        both_flare=deep_end == BOTH,
        left=End(LEFT, v["left_end"] == MITRED, number("left_inset")),
        right=End(RIGHT, v["right_end"] == MITRED, number("right_inset")),
        partition_thickness=number("partition_thickness"),
        partitions=tuple(number(f"partition_{k}") for k in range(1, count + 1)),
        reveal=number("reveal"),
        housing_depth=number("housing_depth"),
        cutter_radius=number("cutter_diameter") / 2.0,
        cover=number("housing_cover"),
        housing_fit=number("housing_fit"),
        back_thickness=number("back_thickness"),
        rebate_depth=number("rebate_depth"),
        back_let_in=number("back_let_in"),
        back_fit=number("back_fit"),
        chamfer=number("chamfer") if v["edge_form"] == "chamfer" else 0.0,
        lips=(lip("top_made_of"), lip("bottom_made_of"), lip("ends_made_of")),
        lipped_back=lips_back(lipped),
        lipped_ends=lips_ends(lipped),
    )
