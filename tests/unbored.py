"""A part before it is bored for the screws of its joints: what the cutter left, worked by hand."""

from __future__ import annotations

from dataclasses import replace

from geometry.bench.bench import Bench
from geometry.design.part import Part, Shape


def unbored(bench: Bench, name: str) -> Part:
    """The part without the holes, slots and pilots that its joints say their screws have in it."""
    own = {
        cut
        for joint in bench.joints
        if joint.screws is not None
        for part, cuts in zip(joint.parts, (joint.cuts_first, joint.cuts_second), strict=True)
        if part == name
        for cut in cuts
    }
    part = bench.part(name)
    kept = tuple(cut for cut in part.shape.cuts if cut not in own)
    return replace(part, shape=Shape(part.shape.blank, kept))
