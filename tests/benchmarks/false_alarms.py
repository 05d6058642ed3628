"""How often findings are false alarms: random benches, each 'do not cut' looked into again.

    python -m tests.benchmarks.false_alarms [benches] [--anywhere]

The benches are sound samples with their numbers moved (``tests.random_benches.sound_spec``), or
with ``--anywhere`` ones with every number anywhere in its limits, where much is wrong and 'do not
cut' has to be true.  The judges are ``tests.judges.alarms``, another library on the finished
meshes.  Of each check is told on how many benches it found something, how often at which level,
and how many of its 'do not cut' were judged true and false.
"""

from __future__ import annotations

import argparse
import time
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.checks.all_checks import findings
from geometry.design.finding import Finding, Level
from tests.judges.alarms import JUDGES
from tests.random_benches import random_spec, sound_spec


@dataclass
class Tally:
    """What was found over many benches; ``false`` are seeds with what was told wrongly."""

    benches: int = 0
    told: Counter[tuple[str, str, Level]] = field(default_factory=Counter)
    on: Counter[tuple[str, str, Level]] = field(default_factory=Counter)
    true: Counter[str] = field(default_factory=Counter)
    false: list[tuple[int, Finding]] = field(default_factory=list)

    def add(self, seed: int, bench: Bench) -> None:
        self.benches += 1
        found = findings(bench)
        keys = [(one.told_by, one.check, one.level) for one in found]
        self.told.update(keys)
        self.on.update(set(keys))
        for one in found:
            judge = JUDGES.get(one.check)
            if one.level is not Level.DO_NOT_CUT or judge is None:
                continue
            if judge(bench, one):
                self.true[one.check] += 1
            else:
                self.false.append((seed, one))

    def lines(self) -> Iterator[str]:
        """A table, the gravest first, then what was false."""
        yield f"{'check':<26}{'finding':<26}{'level':<14}benches  told  true  false"
        for key in sorted(self.told, key=lambda key: (list(Level).index(key[2]), -self.on[key])):
            told_by, check, level = key
            judged = ""
            if level is Level.DO_NOT_CUT:
                wrong = sum(one.check == check for _, one in self.false)
                judged = f"{self.true[check]:>6}{wrong:>7}" if check in JUDGES else "  not judged"
            share = f"{self.on[key]:>7}{self.told[key]:>6}"
            yield f"{told_by:<26}{check:<26}{level.value:<14}{share}{judged}"
        for seed, one in self.false:
            yield f"false: seed {seed}, {one.check} {one.parts}, {one.amount} against {one.limit}"
        grave = sum(n for key, n in self.told.items() if key[2] is Level.DO_NOT_CUT)
        judged_count = sum(self.true.values()) + len(self.false)
        yield (
            f"{self.benches} benches, 'do not cut' told {grave} times, judged on the solids "
            f"{judged_count} times, false {len(self.false)} times"
        )


def tally(count: int, *, anywhere: bool = False) -> Tally:
    """Findings of so many benches, the same for the same count."""
    found = Tally()
    for seed in range(count):
        found.add(seed, build(random_spec(seed) if anywhere else sound_spec(seed)))
    return found


def main() -> None:
    reader = argparse.ArgumentParser()
    reader.add_argument("benches", type=int, nargs="?", default=500)
    reader.add_argument("--anywhere", action="store_true")
    options = reader.parse_args()
    start = time.process_time()
    for line in tally(options.benches, anywhere=options.anywhere).lines():
        print(line)
    print(f"{time.process_time() - start:.0f} s of the processor's time")


if __name__ == "__main__":
    main()
