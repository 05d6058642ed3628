"""Left and right are alike, small changes change little, and more of one thing is more of it."""

from __future__ import annotations

import re
from itertools import pairwise

import numpy as np
import pytest
from numpy.typing import NDArray

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.limits import limits, set_values
from geometry.bench.members import has
from geometry.design.parameter import Value
from geometry.design.part import Part
from geometry.design.spec import BenchSpec
from geometry.solids.cutting import placed
from geometry.solids.measure import volume_of
from shared.errors import MakerError
from tests.flat_faces import FlatFace, flat_faces

Floats = NDArray[np.float64]
MIRROR = np.array((-1.0, 1.0, 1.0))
FLARE = ("flare", "flare_straight", "flare_end")
OTHER = {"left": "right", "right": "left"}


def mirrored(spec: BenchSpec) -> BenchSpec:
    """The spec of the bench as it is seen in a mirror: left for right, from the other end."""
    # Partitions that are kept for a case to come may stand beyond the ends of another seat.
    n = spec.count("partition_count") if has(spec, "partitions") else 0
    length = spec.number("length")
    values: dict[str, Value] = {}
    both = spec.word("deep_end") == "both"
    flares = {f"{name}{end}" for name in FLARE for end in ("", "_right")}
    for name, value in spec.entries:
        if name in flares:
            # Of two flares the left one's numbers have no side in their names.
            other = name.removesuffix("_right") if name.endswith("_right") else f"{name}_right"
            values[other if both else name] = value
            continue
        turned = re.sub("left|right", lambda found: OTHER[found[0]], name)
        numbered = re.fullmatch(r"(partition|opening)_(\d+)(.*)", name)
        if numbered and n:
            kind, k = numbered[1], int(numbered[2])
            last = n if kind == "partition" else n + 1
            turned = f"{kind}_{last + 1 - k if k <= last else k}{numbered[3]}"
        values[turned] = value
        if name == "deep_end":
            values[turned] = OTHER.get(str(value), value)
        elif re.fullmatch(r"partition_\d+", name) and int(name[10:]) <= n:
            values[turned] = length - spec.number(name)
        elif name == "panel_middle":
            values[turned] = -spec.number(name)
    return set_values(spec, values)


def middle(part: Part) -> Floats:
    vertices = placed(part).vertices
    return np.asarray((vertices.min(axis=0) + vertices.max(axis=0)) / 2.0)


def even(spec: BenchSpec) -> BenchSpec:
    """A carving that is scattered, or on fronts named one by one, has no image; it is left out."""
    alike = spec.word("carving_mirror") == "mirrored" and spec.word("carved_fronts") == "all"
    return spec if alike else spec.changed({"carving": "plain"})


def test_a_mirrored_spec_is_the_mirrored_bench(bench: Bench) -> None:
    bench = build(even(bench.spec))
    other = build(mirrored(bench.spec))
    lapped = {name for joint in bench.joints if joint.kind == "angled lap" for name in joint.parts}
    across = np.array((bench.spec.number("length"), 0.0, 0.0))
    assert len(other.parts) == len(bench.parts)
    for part in bench.parts:
        here = middle(part) * MIRROR + across
        twin = min(
            (one for one in other.parts if one.kind == part.kind),
            key=lambda one: float(np.abs(middle(one) - here).sum()),
        )
        assert middle(twin) == pytest.approx(here, abs=1e-6), part.name
        assert volume_of(twin.shape) == pytest.approx(volume_of(part.shape), rel=1e-9, abs=1e-3)
        if part.name not in lapped:  # in a mirror the other one of two would be the lower
            alike(flat_faces(part), flat_faces(twin), float(across[0]))


def alike(faces: list[FlatFace], twins: list[FlatFace], length: float) -> None:
    """Every plane of one in a mirror is a plane of the other, with as much wood behind it."""
    for face in faces:
        if face.area < 0.01:
            continue
        normal = face.normal * MIRROR
        offset = face.offset + length * float(normal[0])
        area = sum(
            twin.area
            for twin in twins
            if abs(twin.offset - offset) < 1e-4 and float(twin.normal @ normal) > 1.0 - 1e-8
        )
        assert area == pytest.approx(face.area, rel=1e-6, abs=0.02)


@pytest.mark.parametrize("flare", [1e-6, 1e-4, 1e-2, 0.3])
def test_a_vanishing_flare_is_a_plain_bench(bench: Bench, flare: float) -> None:
    """Wood that comes with a flare: no more than flare x length x (two boards and a panel)."""
    try:
        plain = build(set_values(bench.spec, {"flare": 0.0}))
        slight = build(set_values(bench.spec, {"flare": flare}))
    except MakerError:
        pytest.skip("this bench needs its flare")
    thickness, length = bench.spec.number("board_thickness"), bench.spec.number("length")
    most = flare * (length + bench.spec.number("case_height")) * thickness + 0.5
    for part, twin in zip(plain.parts, slight.parts, strict=True):
        assert part.name == twin.name
        assert abs(volume_of(part.shape) - volume_of(twin.shape)) < most, part.name


GROWS = {
    # parameter: which kind of part gets larger when it does
    "length": "top",
    "depth": "bottom",
    "flare": "top",
    "case_height": "partition",
    "base_height": "leg",
    "leg_top_width": "leg",
    "leg_foot_width": "leg",
    "stretcher_height": "stretcher",
    "back_thickness": "back",
}
SHRINKS = {
    "reveal": "partition",
    "rebate_depth": "bottom",
    "housing_depth": "bottom",
    "chamfer": "bottom",
    "bridle_fit": "leg",
    "lap_fit": "stretcher",
    "back_fit": "back",
    "housing_fit": "bottom",
}


@pytest.mark.parametrize(("name", "sign"), [(n, 1) for n in GROWS] + [(n, -1) for n in SHRINKS])
def test_more_is_more(bench: Bench, name: str, sign: int) -> None:
    """At the least, the middle and the greatest that the value can be."""
    kind = (GROWS if sign > 0 else SHRINKS)[name]
    allowed = limits(bench.spec, name)
    volumes = []
    for share in (0.0, 0.5, 1.0):
        value = allowed.minimum + share * (allowed.maximum - allowed.minimum)
        parts = build(set_values(bench.spec, {name: value})).parts
        volumes.append(sum(volume_of(part.shape) for part in parts if part.kind == kind))
    for less, more in pairwise(volumes):
        assert sign * (more - less) >= -0.5, name
