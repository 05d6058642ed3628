"""Whether any parts lock each other, so that a bench cannot be put together in any order."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.bench.bench import Bench
from geometry.checks.check import Check
from geometry.checks.looked import Looked, looked_into
from geometry.design.finding import Finding, Level


def findings_of(bench: Bench, looked: Looked) -> Iterator[Finding]:
    """One finding for each group of parts that lock each other."""
    for names in looked.assembly.locked:
        titles = [bench.part(name).title for name in names[:4]]
        more = f" and {len(names) - 4} more" if len(names) > 4 else ""
        corners = [
            corner
            for joint in bench.joints
            if set(joint.parts) <= set(names)
            for contact in joint.contacts
            for corner in contact.corners
        ]
        yield Finding(
            check="locked_together",
            level=Level.DO_NOT_CUT,
            message=(
                f"{', '.join(titles)}{more} lock each other: there is no straight way to put "
                "them together, in any order."
            ),
            parts=names,
            place=corners[0] if corners else None,
            amount=float(len(names)),
            limit=1.0,
            unit="count",
        )


def _run(bench: Bench) -> Iterator[Finding]:
    return findings_of(bench, looked_into(bench))


CHECKS: tuple[Check, ...] = (
    Check(
        "assembly",
        "Whether it goes together",
        "Takes the bench apart in thought: every part, or group of parts, needs a straight way out "
        "on which it runs into nothing, tried on the finished solids along the bench's axes, the "
        "parts' own and the faces that meet, one group at a time or all of them at once. Parts "
        "that hold each other along every one of them cannot be put together, however well each "
        "joint fits. Turning a part in, or springing a frame open, is not tried. The limit is "
        "none: wood is in the way or it is not.",
        _run,
    ),
)
