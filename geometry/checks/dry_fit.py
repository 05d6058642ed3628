"""A check of what is left to be measured at the dry fit: whether an earlier step needs it."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.bench.bench import Bench
from geometry.bench.left_to_fit import AS_DRAWN, left
from geometry.checks.check import Check
from geometry.checks.order_of_work import before, owners, steps, too_early
from geometry.design.finding import Finding, Level, Mend
from geometry.primitives.frame import Vec3
from geometry.solids.measure import bounding_box


def _too_late(bench: Bench) -> Iterator[Finding]:
    sizes = left(bench.spec)
    if not sizes:
        return
    work = steps(bench)
    for size in sizes:
        found = too_early(work, size)
        pieces = owners(bench, size)
        if found is None or not pieces:
            continue
        early, measured = found
        order = before(work, measured)
        at, known = order.index(early) + 1, len(order)
        if early is measured:
            what = f"{measured.words} cannot be done without those very pieces"
        else:
            what = f"{early.words}, step {at} of the {known} up to there, already needs it"
        yield Finding(
            check=f"left_{size.name}",
            level=Level.DO_NOT_CUT if early.spoils else Level.THINK_AGAIN,
            message=(
                f"{size.words[:1].upper()}{size.words[1:]} is left to be measured at "
                f"{measured.words}, but {what}."
            ),
            parts=tuple(dict.fromkeys((*(piece.name for piece in pieces), *early.parts))),
            place=_middle(bench, early.parts[0]),
            amount=float(at),
            limit=float(known),
            unit="count",
            mend=Mend("Cut it as it is drawn.", ((size.parameter, AS_DRAWN),)),
        )


def _middle(bench: Bench, name: str) -> Vec3:
    low, high = bounding_box(bench.part(name))
    return ((low[0] + high[0]) / 2.0, (low[1] + high[1]) / 2.0, (low[2] + high[2]) / 2.0)


CHECKS: tuple[Check, ...] = (
    Check(
        "dry_fit",
        "Size left to a dry fit that comes too late",
        "Looks at the sizes that are left to be measured when pieces stand together dry, and at "
        "the order of work that the joints allow. A step before that fit which already needs the "
        "size is done blind, and the fit then proves it wrong; where pieces hold the others up, "
        "there is no fit without them. The limit is the order itself: a step comes before or it "
        "does not.",
        _too_late,
    ),
)
