"""Checks of drawers, measured on the parts that there are: whether they go in, run, and hold.

What is compared is where the parts of a bench stand, so that a part which has come out another
size than it was drawn is caught too.
"""

from __future__ import annotations

from collections.abc import Iterator

from geometry.bench.bench import Bench
from geometry.bench.drawer_numbers import (
    Drawer,
    box_side_clearance,
    drawers,
    making_of,
)
from geometry.bench.runner_numbers import runner_of
from geometry.checks.check import Check
from geometry.checks.drawer_walls import Wall, beside, wall
from geometry.checks.limits_of_drawers import DEEPEST_GROOVE, WIDEST_ON_WOOD
from geometry.checks.where import in_joint, middle_of_named
from geometry.design.finding import Finding, Level, Mend
from geometry.primitives.frame import Vec3
from geometry.solids.measure import bounding_box
from shared.runners import WOODEN
from shared.units import length_mark

_NEAR = 1e-6  # mm
_BOX = ("box_front", "back", "side_left", "side_right")


def _extent(bench: Bench, drawer: Drawer) -> tuple[Vec3, Vec3]:
    """The least and the greatest corner of a drawer's box."""
    boxes = [bounding_box(bench.part(f"{drawer.name}_{piece}")) for piece in _BOX]
    lows, highs = zip(*boxes, strict=True)
    low = (min(p[0] for p in lows), min(p[1] for p in lows), min(p[2] for p in lows))
    high = (max(p[0] for p in highs), max(p[1] for p in highs), max(p[2] for p in highs))
    return low, high


def _clearances(bench: Bench) -> Iterator[Finding]:
    """The box against its opening and the clearances of its runners."""
    row = runner_of(bench.spec)
    side = box_side_clearance(row, making_of(bench.spec).side)
    for drawer in drawers(bench.spec):
        low, high = _extent(bench, drawer)
        left, right, back = low[0], high[0], high[1]
        at = drawer.opening
        walls = _walls(bench, drawer, low, high)
        beside = (left - walls[0].x) + (walls[1].x - right)
        behind = -at.back - back
        parts = tuple(f"{drawer.name}_{piece}" for piece in _BOX)
        odd = [wall for wall, x in zip(walls, (at.x_left, at.x_right), strict=True) if wall.x != x]
        place = odd[0].place if odd else (left, -at.front, drawer.z_low)
        where = f", at {bench.part(odd[0].part).title.lower()}" if odd else ""
        if beside < 2.0 * side - _NEAR:
            yield Finding(
                check="drawer_too_wide",
                level=Level.DO_NOT_CUT,
                message=(
                    f"{drawer.title} leaves {length_mark(beside)} beside it at the tightest place "
                    f"of its opening{where}; its runners need {length_mark(2.0 * side)}."
                ),
                parts=parts,
                place=place,
                amount=beside,
                limit=2.0 * side,
            )
        elif beside > 2.0 * side + _NEAR:
            yield Finding(
                check="drawer_rattles",
                level=Level.THINK_AGAIN,
                message=(
                    f"{drawer.title} leaves {length_mark(beside)} beside it at the tightest place "
                    f"of its opening{where}, {length_mark(beside - 2.0 * side)} more than its "
                    "runners fill."
                ),
                parts=parts,
                place=place,
                amount=beside,
                limit=2.0 * side,
            )
        if behind < row.behind - _NEAR:
            yield Finding(
                check="drawer_too_long",
                level=Level.DO_NOT_CUT,
                message=(
                    f"{drawer.title} ends {length_mark(abs(behind))} "
                    f"{'before' if behind >= 0.0 else 'beyond'} the back when shut; it needs "
                    f"{length_mark(row.behind)} clear."
                ),
                parts=(*parts, "back"),
                place=(left, back, drawer.z_low),
                amount=behind,
                limit=row.behind,
            )


def _walls(bench: Bench, drawer: Drawer, low: Vec3, high: Vec3) -> tuple[Wall, Wall]:
    """What stands nearest at the left and at the right of a box, all along its way in."""
    at = drawer.opening
    others = tuple(
        part
        for part in bench.parts
        if not part.name.startswith(f"{drawer.name}_") and part.kind != "runner"
    )
    way_low, way_high = (low[0], -at.front, low[2]), (high[0], high[1], high[2])
    found = []
    for right, x in ((False, at.x_left), (True, at.x_right)):
        box = beside(way_low, way_high, at.x_left, at.x_right, right=right)
        drawn = Wall(x, (x, -at.front, drawer.z_low), at.right if right else at.left)
        met = wall(others, *box, right=right, otherwise=drawn)
        found.append(drawn if abs(met.x - x) < _NEAR else met)
    return found[0], found[1]


def _box_shows(bench: Bench) -> Iterator[Finding]:
    """A box that stands out beyond the edges of its front."""
    for drawer in drawers(bench.spec):
        x, _, z = drawer.origin
        beyond = max(
            drawer.x_low - x,
            x + drawer.box.width - drawer.x_high,
            drawer.z_low - z,
            z + drawer.box.height - drawer.z_high,
        )
        if beyond <= _NEAR:
            continue
        yield Finding(
            check="box_shows",
            level=Level.GOOD_TO_KNOW,
            message=(
                f"{drawer.title}: the box stands out {length_mark(beyond)} beyond the edge of its "
                "front and shows in the gap."
            ),
            parts=(f"{drawer.name}_front", f"{drawer.name}_box_front"),
            place=(drawer.x_low, -drawer.face, drawer.z_low),
            amount=beyond,
            limit=0.0,
        )


def _side_too_thick(bench: Bench) -> Iterator[Finding]:
    thickest, side = runner_of(bench.spec).thickest_side, making_of(bench.spec).side
    if not thickest or side <= thickest + _NEAR:
        return
    yield Finding(
        check="side_too_thick",
        level=Level.DO_NOT_CUT,
        message=(
            f"The runners take sides up to {length_mark(thickest)}; these are "
            f"{length_mark(side)} thick."
        ),
        parts=_sides(bench),
        place=middle_of_named(bench, _sides(bench)[0]),
        amount=side,
        limit=thickest,
        mend=Mend(
            f"Make them {length_mark(thickest)} thick.", (("drawer_side_thickness", thickest),)
        ),
    )


def _bottom_too_low(bench: Bench) -> Iterator[Finding]:
    recess, up = runner_of(bench.spec).recess, making_of(bench.spec).up
    if up >= recess - _NEAR:
        return
    yield Finding(
        check="bottom_too_low",
        level=Level.DO_NOT_CUT,
        message=(
            f"The bottoms lie {length_mark(up)} above the sides' lower edges; the runners under "
            f"them need {length_mark(recess)}."
        ),
        parts=tuple(f"{drawer.name}_bottom" for drawer in drawers(bench.spec)),
        place=middle_of_named(bench, f"{drawers(bench.spec)[0].name}_bottom"),
        amount=up,
        limit=recess,
        mend=Mend(f"Put them {length_mark(recess)} up.", (("drawer_bottom_up", recess),)),
    )


def _deep_groove(bench: Bench) -> Iterator[Finding]:
    m = making_of(bench.spec)
    thinnest = min(m.side, m.end)
    limit = thinnest * DEEPEST_GROOVE.of(bench) / 100.0
    if m.groove <= limit + _NEAR:
        return
    yield Finding(
        check="deep_bottom_groove",
        level=Level.THINK_AGAIN,
        message=(
            f"Grooves of {length_mark(m.groove)} for the bottoms leave only "
            f"{length_mark(thinnest - m.groove)} outside them."
        ),
        parts=_sides(bench),
        place=in_joint(bench, "grooved bottom", _sides(bench)[0]),
        amount=m.groove,
        limit=limit,
        mend=Mend(f"Make them {length_mark(limit)} deep.", (("drawer_groove_depth", limit),)),
    )


def _wide_on_wood(bench: Bench) -> Iterator[Finding]:
    if runner_of(bench.spec).kind != WOODEN:
        return
    for drawer in drawers(bench.spec):
        limit = WIDEST_ON_WOOD.of(bench) / 100.0 * drawer.box.length
        if drawer.number > 1 or drawer.box.width <= limit + _NEAR:
            continue
        yield Finding(
            check="wide_on_wood",
            level=Level.THINK_AGAIN,
            message=(
                f"The drawers of {drawer.opening.title} are {length_mark(drawer.box.width)} wide "
                f"and {length_mark(drawer.box.length)} long: on wooden runners so wide a drawer "
                "jams when it is pulled at one side."
            ),
            parts=(f"{drawer.name}_side_left", f"{drawer.name}_side_right"),
            place=(drawer.x_low, -drawer.face, drawer.z_low),
            amount=drawer.box.width,
            limit=limit,
        )


def _sides(bench: Bench) -> tuple[str, ...]:
    return tuple(
        f"{drawer.name}_side_{end}" for drawer in drawers(bench.spec) for end in ("left", "right")
    )


CHECKS: tuple[Check, ...] = (
    Check(
        "drawer_clearance",
        "Drawer that does not go into its opening",
        "Measures each box against what stands beside it in its opening, at the tightest place "
        "from front to back, and against the back. Too wide or too long and it cannot go in or "
        "shut; too narrow and it rattles on its runners. The limits are the clearances of the "
        "runners: check your runner's sheet.",
        _clearances,
        ("drawers",),
    ),
    Check(
        "side_too_thick",
        "Drawer sides too thick for the runners",
        "Runners that reach under a drawer take sides up to a thickness only; a thicker one does "
        "not go over them. The limit is the runner's: check your runner's sheet.",
        _side_too_thick,
        ("drawers",),
    ),
    Check(
        "bottom_too_low",
        "Drawer bottom in the runners' way",
        "Under-mounted runners lie between the sides, under the bottom. A bottom that lies lower "
        "than they are high stands on them. The limit is the runner's: check your runner's sheet.",
        _bottom_too_low,
        ("drawers",),
    ),
    Check(
        "deep_bottom_groove",
        "Deep groove for a drawer's bottom",
        "The groove for the bottom weakens the side or the box front it is cut into. Half the "
        "thickness is the most: common practice, no source.",
        _deep_groove,
        ("drawers",),
        limits=(DEEPEST_GROOVE,),
    ),
    Check(
        "wide_on_wood",
        "Wide drawer on wooden runners",
        "A drawer that is much wider than it is long turns a little when it is pulled at one side, "
        "and jams between wooden guides. One and a half times as wide as long is the most that "
        "runs well: common practice, no source.",
        _wide_on_wood,
        ("drawers",),
        limits=(WIDEST_ON_WOOD,),
    ),
    Check(
        "box_shows",
        "Box wider or taller than its front",
        "Where the runners need less room than the gap round the fronts, the box stands out beyond "
        "the front's edge and can be seen in the gap. It does no harm. The limit is the front's "
        "own edge.",
        _box_shows,
        ("drawers",),
    ),
)
