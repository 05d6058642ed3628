"""Whether a bench goes together, held against plain motion of the solids in small steps.

The outside judge moves meshes of another library (trimesh) by small steps and asks whether any
point of one comes to lie inside the other: of two parts here, of whole benches in
``tests.judges.motion``.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
import trimesh

from exporters.project_file import load
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.checks.all_checks import slow_findings
from geometry.cuts.cut import Blank
from geometry.cuts.notch import Notch
from geometry.design.finding import Level
from geometry.design.part import Part, Shape
from geometry.primitives.frame import BENCH_FRAME, Frame, Vec3
from geometry.solids.cutting import placed
from geometry.solids.sweeping import blocking
from tests.assembled import assembly_of
from tests.judges.motion import collisions, run_into

AXES: tuple[Vec3, ...] = ((1, 0, 0), (-1, 0, 0), (0, 1, 0), (0, -1, 0), (0, 0, 1), (0, 0, -1))
SAMPLES = Path(__file__).parents[3] / "sample_projects"


def _mesh(part: Part) -> trimesh.Trimesh:
    solid = placed(part)
    return trimesh.Trimesh(solid.vertices, solid.solid.triangles, process=False)


def _runs_into(moving: Part, standing: Part, way: Vec3, reach: float) -> bool:
    """Brute force, each of the two moved once: small parts have the denser points."""
    back = (-way[0], -way[1], -way[2])
    return _enters(moving, standing, way, reach) or _enters(standing, moving, back, reach)


def _enters(moving: Part, standing: Part, way: Vec3, reach: float) -> bool:
    """Points over the mover's surface, pulled in, at every 2 mm of its way."""
    mesh, other = _mesh(moving), _mesh(standing)
    points, faces = trimesh.sample.sample_surface_even(mesh, 1500, seed=1)
    inner = points - 0.3 * mesh.face_normals[faces]
    inner = inner[mesh.contains(inner)]  # not those that come out again beside a sharp arris
    for far in np.arange(1.0, reach, 2.0):
        there = inner + far * np.array(way)
        near = ((there > other.bounds[0]) & (there < other.bounds[1])).all(axis=1)
        if near.any() and other.contains(there[near]).any():
            return True
    return False


def test_each_pair_of_joined_parts_agrees_with_brute_force() -> None:
    bench = build(default_spec())
    for joint in bench.joints[:9]:
        first, second = (bench.part(name) for name in joint.parts)
        for way in AXES:
            depth = blocking([placed(first), placed(second)], way)[0, 1]
            assert bool(depth) == _runs_into(first, second, way, 500.0), (joint.name, way)


@pytest.mark.parametrize("path", sorted(SAMPLES.glob("*.settle")), ids=lambda path: path.stem)
def test_every_step_of_every_sample_is_free_by_brute_force(path: Path) -> None:
    """Read backward, each step takes its parts out of the group they are in, as far as they go."""
    bench = build(load(path).spec)
    found = assembly_of(bench.parts, bench.joints)
    assert found.locked == ()
    assert len(found.steps) >= 3
    assert collisions(bench.parts, found.steps) == []


def test_brute_force_sees_a_step_that_is_turned_round() -> None:
    """Each part of this bench stands against what it comes on to, so it must run into that."""
    bench = build(load(SAMPLES / "orchard_bench.settle").spec)
    for step in assembly_of(bench.parts, bench.joints).steps:
        (move,) = step.moves
        coming = [bench.part(name) for name in move.parts]
        assert run_into(coming, [bench.part(name) for name in step.onto], move.way)


def test_a_back_of_splayed_posts_comes_into_its_seat_at_once() -> None:
    """Its tenons spread like the fingers of a hand: no post can come after another."""
    bench = build(load(SAMPLES / "bowling_green_bench.settle").spec)
    (step,) = (one for one in assembly_of(bench.parts, bench.joints).steps if len(one.moves) > 1)
    assert step.onto == ("seat",)
    assert [move.parts for move in step.moves if len(move.parts) == 1] == [
        ("post_1",),
        ("post_2",),
        ("post_3",),
    ]


def _block(name: str, size: Vec3, at: Vec3, *cuts: Notch) -> Part:
    frame = Frame(at, BENCH_FRAME.x_axis, BENCH_FRAME.y_axis, BENCH_FRAME.z_axis)
    return Part(name, name, name, "ash", Shape(Blank(*size), cuts), frame)


def test_a_peg_in_a_shut_box_is_locked() -> None:
    """Six boards glued up round a block are parted board by board; a ring alone lets it slide."""
    peg = _block("peg", (20.0, 20.0, 20.0), (40.0, 40.0, 0.0))
    ring = _block("ring", (100.0, 100.0, 20.0), (0.0, 0.0, 0.0), Notch(40.0, 60.0, 40.0, 60.0))
    held = blocking([placed(peg), placed(ring)], (1.0, 0.0, 0.0))
    # 40 mm of the ring's far side stand ahead: from the peg's hind face at 40 to the end at 100
    assert held[0, 1] == pytest.approx(60.0)
    assert not blocking([placed(peg), placed(ring)], (0.0, 0.0, 1.0))[0, 1]
    assert assembly_of((peg, ring), ()).locked == ()


def test_parts_that_lock_each_other_are_told_of() -> None:
    """Made by hand: a partition turned into the thickness of the bottom cannot have come there."""
    bench = build(default_spec())
    assert slow_findings(bench) == ()
    bottom = bench.part("bottom")
    inside = _block("key", (30.0, 30.0, 6.0), (600.0, -200.0, bottom.frame.origin[2] - 13.0))
    spoiled = replace(bench, parts=(*bench.parts, inside))
    (found,) = slow_findings(spoiled)
    assert found.level is Level.DO_NOT_CUT
    assert set(found.parts) == {"bottom", "key"}
