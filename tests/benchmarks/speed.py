"""How fast the program is, as ratios measured in one run.

    python -m tests.benchmarks.speed [--quick]

Needs the benchmark extra (build123d) for the comparison with a general B-rep kernel.  What is
compared takes turns, so that a busy machine slows both alike; and of every job the processor's
own time is told beside the clock's.  Wanted: everything from cold at least 15 times as fast as
the general kernel, a drag step at least 40 times and within 16 ms in 95 of 100 cases, the pack
within 5 s, a painted window within twice the time of an empty one.
"""

from __future__ import annotations

import argparse
import tempfile
from datetime import date
from pathlib import Path

from app.collecting import collect_rarely, the_hand_is_off, wait_for_the_hand
from app.memory import keep_memory
from app.scene.laying_out import lay_out
from app.scene.model import build_model
from app.scene.preferences import Preferences
from exporters.pack import PackOptions, write_pack
from exporters.project_file import read_project
from geometry.bench.build import build
from geometry.bench.carving_parameters import FACETED, TOP_EDGE
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import limits, set_values
from geometry.design.project import Project
from geometry.design.spec import BenchSpec
from geometry.dimensioning.bench_dimensions import dimensions
from geometry.dimensioning.drag import drag
from geometry.dimensioning.pull import Pull
from geometry.solids.standing import make_ready_to_move
from geometry.views.bench_views import bench_views
from geometry.views.look import look_all
from shared.paper import PAPERS
from tests.benchmarks import starting
from tests.benchmarks.timing import Times, forget_everything, ratio, together

SAMPLES = Path(__file__).parents[2] / "sample_projects"
SCREEN_SCALE = 0.1


def largest_sample() -> tuple[str, Project]:
    """The sample with the most parts."""
    found = [
        (path.name, read_project(path.read_bytes())) for path in sorted(SAMPLES.glob("*.settle"))
    ]
    return max(found, key=lambda each: len(build(each[1].spec).parts))


def carved(spec: BenchSpec) -> BenchSpec:
    """The same with a relief over all its fronts, and a finger groove behind their edges."""
    thick = max(spec.number("drawer_front_thickness"), 22.0)
    spec = set_values(spec, {"drawer_front_thickness": thick})
    return set_values(spec, {"carving": FACETED, "finger_groove": TOP_EDGE})


def long_bench() -> BenchSpec:
    """3 m with nine partitions and a flare."""
    spec = set_values(default_spec(), {"length": 3000, "flare_straight": 600, "flare_end": 2000})
    return set_values(spec, {"partition_count": 9.0})


def cold(spec: BenchSpec, repeats: int) -> None:
    """Parts, solids and three views, ours and the general kernel's, in turns."""
    from tests.benchmarks import general_kernel

    ours, theirs = Times("ours: parts, solids, three views"), Times("general kernel, the same")
    cutting, looking = Times("  of that its solids"), Times("  of that its three views")
    parts, views = build(spec).parts, bench_views(build(spec))
    general_kernel.three_views(general_kernel.solids(parts[:2]), views)  # loads its libraries
    for _ in range(repeats):
        for _ in range(4):
            forget_everything()
            with ours.one():
                look_all(build(spec).parts, views)
        with theirs.one():
            with cutting.one():
                bodies = general_kernel.solids(parts)
            with looking.one():
                general_kernel.three_views(bodies, views)
    for times in (ours, theirs, cutting, looking):
        print(times.line())
    print(ratio("from cold", theirs, ours))
    step = together("drag steps", drags(spec, 20))
    print(ratio("drag step against all parts anew", theirs, step))
    print(ratio("drag step against three views alone", looking, step))


DRAGGED = {
    # parameter: how the hand moves, mm of the view for one step
    "flare": Pull("flare", (0.0, -1.0)),
    "length": Pull("length", (1.0, 0.0)),
    "depth": Pull("depth", (0.0, -1.0)),
    "case_height": Pull("case_height", (0.0, 1.0)),
    "partition_1": Pull("partition_1", (1.0, 0.0)),
    "base_height": Pull("base_height", (0.0, 1.0)),
    "inset_left": Pull("inset_left", (1.0, 0.0)),
}


def drags(spec: BenchSpec, steps: int) -> list[Times]:
    """For each value so many steps of one drag; no two of them give the same bench.

    A step is what the screen does: the hand's movement to a value within its limits, the bench,
    its solids and three views, dimensions, and the marks of the whole arrangement.
    """
    preferences = Preferences()
    found = []
    for name, pull in DRAGGED.items():
        allowed, now = limits(spec, name), spec.number(name)
        reach = allowed.maximum - now if allowed.maximum - now > now - allowed.minimum else 0.0
        span = min(reach or allowed.minimum - now, 150.0, key=abs)
        times = Times(f"drag {name.replace('_', ' ')}")
        forget_everything()
        model = build_model(spec)
        lay_out(model, preferences, SCREEN_SCALE)
        make_ready_to_move(model.standing)  # as when the hand closes on a value
        wait_for_the_hand()
        for k in range(1, steps + 1):
            by = span * k / steps
            with times.one():
                moved = drag(spec, pull, (pull.along[0] * by, pull.along[1] * by), None)
                model = build_model(moved.spec, model)
                lay_out(model, preferences, SCREEN_SCALE)
        the_hand_is_off()
        found.append(times)
    return found


def stages(spec: BenchSpec) -> list[Times]:
    """Where the time of a step goes, every part of the bench being new at each."""
    titles = ("lay out", "solids and views", "dimensions", "arrange")
    found = [Times(f"  {title}") for title in titles]
    preferences = Preferences()
    for k in range(40):
        moved = set_values(spec, {"board_thickness": spec.number("board_thickness") + 0.01 * k})
        with found[0].one():
            bench = build(moved)
        with found[1].one():
            look_all(bench.parts, bench_views(bench))
        with found[2].one():
            dimensions(bench)
        model = build_model(moved)
        with found[3].one():
            lay_out(model, preferences, SCREEN_SCALE)
    return found


def pack(project: Project, repeats: int) -> Times:
    times = Times("pack")
    for _ in range(repeats):
        forget_everything()
        with tempfile.TemporaryDirectory() as folder, times.one():
            write_pack(project, Path(folder) / "pack", PackOptions(PAPERS["A4"]), date(2024, 1, 2))
    return times


def window(sample: Path, repeats: int) -> None:
    empty, painted = Times("an empty window"), Times("ours: a painted window")
    furnished = Times("ours: the bench painted in it")
    for _ in range(repeats):
        empty.spent.append(starting.start(starting.EMPTY)["painted"])
        stages = starting.start(starting.OURS, str(sample))
        painted.spent.append(stages["painted"])
        furnished.spent.append(stages["bench"])
    for times in (empty, painted, furnished):
        print(times.line())
    print(ratio("painted window, to an empty one", painted, empty))
    print(ratio("painted bench, to an empty window", furnished, empty))


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--quick", action="store_true", help="fewer runs, rougher numbers")
    quick = parser.parse_args().quick
    name, project = largest_sample()
    keep_memory()  # as the program does
    collect_rarely()
    for title, spec in ((f"Largest sample, {name}", project.spec), ("Long bench", long_bench())):
        print(f"{title}: {len(build(spec).parts)} parts")
        cold(spec, 2 if quick else 5)
        found = drags(spec, 40 if quick else 200)
        for times in (*found, *stages(spec)):
            print(times.line())
        print(together("all drag steps", found).line())
    found = drags(carved(project.spec), 40 if quick else 200)
    print(f"Largest sample, {name}, with all its fronts carved")
    for times in found:
        print(times.line())
    print(together("all drag steps", found).line())
    print("Pack")
    print(pack(project, 1 if quick else 3).line())
    print("Start")
    window(SAMPLES / name, 3 if quick else 9)


if __name__ == "__main__":
    main()
