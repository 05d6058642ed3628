"""How often 'do not cut' is a false alarm: random benches, each such finding looked into again.

    python -m tests.benchmarks.false_alarms [benches]

The judge is another library (trimesh) on the finished meshes: for parts said to run into each
other, whether points inside the one lie inside the other; for a housing said to run out at the
front, whether the wood before its stop is gone.  Findings of other checks compare a tool
with a width, which no solid can contradict; they are counted and not judged.
"""

from __future__ import annotations

import sys
from collections import Counter

import numpy as np
import trimesh

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.checks.all_checks import findings
from geometry.design.finding import Finding, Level
from geometry.solids.cutting import placed
from tests.random_benches import random_spec


def _mesh(bench: Bench, name: str) -> trimesh.Trimesh:
    solid = placed(bench.part(name))
    return trimesh.Trimesh(solid.vertices, solid.solid.triangles, process=False)


def _really_collide(bench: Bench, finding: Finding) -> bool:
    first, second = (_mesh(bench, name) for name in finding.parts)
    low = np.maximum(first.bounds[0], second.bounds[0])
    high = np.minimum(first.bounds[1], second.bounds[1])
    points = np.random.default_rng(1).uniform(low, high, (20_000, 3))
    return bool((first.contains(points) & second.contains(points)).any())


def _really_open(bench: Bench, finding: Finding) -> bool:
    """Just behind the front at the housing, halfway down it: no wood."""
    board = finding.parts[0]
    for joint in bench.joints:
        if joint.kind != "stopped housing" or joint.parts[0] != board:
            continue
        corners = np.array(joint.contacts[0].corners)
        middle, normal = corners.mean(axis=0), np.array(joint.contacts[0].normal)
        depth = next(one.value for one in joint.measures if one.name == "housing_depth")
        at = middle + normal * depth / 2.0
        mesh = _mesh(bench, board)
        front = at.copy()
        front[1] = -next(one.value for one in joint.measures if one.name == "stop_from_back")
        ahead = front + np.outer(np.linspace(0.05, 400.0, 4000), (0.0, -1.0, 0.0))
        if not mesh.contains(ahead).any():
            return True
    return False


_JUDGES = {"collision": _really_collide, "housing_front": _really_open}


def main(count: int) -> None:
    told: Counter[str] = Counter()
    false: Counter[str] = Counter()
    for seed in range(count):
        bench = build(random_spec(seed))
        for finding in findings(bench):
            if finding.level is not Level.DO_NOT_CUT:
                continue
            told[finding.check] += 1
            judge = _JUDGES.get(finding.check)
            if judge is not None and not judge(bench, finding):
                false[finding.check] += 1
                print(f"false: seed {seed}, {finding.check} {finding.parts}, {finding.amount}")
    judged = sum(told[name] for name in _JUDGES)
    print(f"{count} benches; told: {dict(told)}")
    print(f"judged on the solids: {judged}, false alarms: {sum(false.values())}")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 500)
