"""How long solids and views take on made-up benches of 25, 100 and 250 parts.

Run it by itself, ``python -m tests.benchmarks.bench_solids_and_views``; it prints percentiles
in milliseconds and how the cost grows against the number of parts.
"""

from __future__ import annotations

import time
from collections.abc import Callable

import numpy as np

from geometry.solids import cutting
from geometry.solids.cutting import placed, solid_of
from geometry.solids.kernel import cutters
from geometry.solids.standing import Standing, make_ready_to_move, stand
from geometry.views.look import look_all, look_at_solids
from geometry.views.view import END_RIGHT, FRONT, PLAN
from tests.benchmarks.large_benches import large_bench

VIEWS = (FRONT, PLAN, END_RIGHT)


def forget() -> None:
    """Empty every cache of solids and cutters."""
    for kept in (
        cutting.body_of,
        cutting.solid_of,
        cutting.placed_shape,
        cutters._prism,
        cutters._rounded,
        cutters._hull,
    ):
        kept.cache_clear()


def times(step: Callable[[int], object], count: int) -> np.ndarray:
    spent = []
    for number in range(count):
        start = time.perf_counter()
        step(number)
        spent.append(1e3 * (time.perf_counter() - start))
    return np.array(spent)


def report(title: str, spent: np.ndarray) -> float:
    low, middle, high = np.percentile(spent, (5, 50, 95))
    print(f"  {title:44s} median {middle:8.2f}  5% {low:8.2f}  95% {high:8.2f} ms")
    return float(middle)


def main() -> None:
    medians: dict[int, dict[str, float]] = {}
    for units in (1, 4, 10):
        parts = large_bench(units)
        forget()
        solids = [placed(part) for part in parts]
        lineworks = look_all(parts, VIEWS)
        drawn = sum(len(linework.segments) for linework in lineworks)
        triangles = sum(len(solid.solid.triangles) for solid in solids)
        print(f"{len(parts)} parts, {triangles} triangles, {drawn} segments in three views")

        def cold(_: int, units: int = units) -> None:
            forget()
            look_all(large_bench(units), VIEWS)

        def cut(_: int, parts=parts) -> None:
            forget()
            for part in parts:
                solid_of(part.shape)

        begun = stand(parts)
        make_ready_to_move(begun)

        def drag(number: int, units: int = units, begun: Standing = begun) -> None:
            # Every case a little deeper: about two parts in three change, and follow.
            deeper = large_bench(units, stretch=0.5 + 0.1 * number)
            look_at_solids(stand(deeper, begun).solids, VIEWS)

        def anew(number: int, units: int = units) -> None:
            # The same where none can follow.
            look_all(large_bench(units, stretch=0.55 + 0.1 * number), VIEWS)

        def few(number: int, parts=parts, begun: Standing = begun) -> None:
            # One case a little deeper: the other units keep their solids.
            changed = large_bench(1, stretch=10.5 + 0.1 * number)
            look_at_solids(stand([*changed, *parts[len(changed) :]], begun).solids, VIEWS)

        repeats = 60 if units == 1 else 20
        medians[len(parts)] = {
            "views": report("three views of placed solids",
                            times(lambda _, parts=parts: look_all(parts, VIEWS), repeats)),
            "cut": report("all solids cut afresh", times(cut, repeats)),
            "cold": report("cold: parts, solids and three views", times(cold, repeats)),
            "drag": report("drag: every case deeper, three views", times(drag, repeats)),
            "anew": report("  the same, all of them cut", times(anew, repeats)),
            "few": report("drag: one case deeper, three views", times(few, repeats)),
        }  # fmt: skip
    print("growth over linear from 25 parts (1 is linear)")
    for count in (100, 250):
        shares = {
            name: medians[count][name] / medians[25][name] / (count / 25.0)
            for name in ("views", "cut", "cold", "drag", "anew", "few")
        }
        print(f"  {count:4d} parts: " + ", ".join(f"{k} {v:.2f}" for k, v in shares.items()))


if __name__ == "__main__":
    main()
