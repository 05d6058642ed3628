"""Stopwatch, percentiles, and a memory that forgets."""

from __future__ import annotations

import sys
import time
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field

import numpy as np

OURS = ("geometry", "shared", "exporters", "app")


@dataclass
class Times:
    """Milliseconds of one job, run after run: by the clock, and of the processor's own work.

    On a machine that other work shares, the second is what can be compared.
    """

    title: str
    spent: list[float] = field(default_factory=list)
    worked: list[float] = field(default_factory=list)

    @contextmanager
    def one(self) -> Iterator[None]:
        start, work = time.perf_counter(), time.process_time()
        yield
        self.worked.append(1e3 * (time.process_time() - work))
        self.spent.append(1e3 * (time.perf_counter() - start))

    @property
    def median(self) -> float:
        return float(np.median(self.spent))

    def line(self) -> str:
        text = f"  {self.title:40s} clock {_two(self.spent)}"
        if self.worked:
            text += f"   processor {_two(self.worked)}"
        return f"{text} ms   ({len(self.spent)} runs)"


def _two(times: list[float]) -> str:
    middle, high = np.percentile(times, (50, 95))
    return f"median {middle:7.1f}  95 % {high:7.1f}"


def together(title: str, many: Iterable[Times]) -> Times:
    """All runs of several jobs as one."""
    whole = Times(title)
    for one in many:
        whole.spent += one.spent
        whole.worked += one.worked
    return whole


def ratio(title: str, slow: Times, fast: Times) -> str:
    """How many times as long the first takes as the second, by medians."""
    text = f"  RATIO {title:40s} {slow.median / fast.median:6.1f} by the clock"
    if slow.worked and fast.worked:
        worked = float(np.median(slow.worked) / np.median(fast.worked))
        text += f", {worked:6.1f} by the processor"
    return text


def forget_everything() -> None:
    """Empty every cache that any module of ours keeps."""
    for name, module in list(sys.modules.items()):
        if name.split(".")[0] in OURS and module is not None:
            for value in list(vars(module).values()):
                clear: Callable[[], None] | None = getattr(value, "cache_clear", None)
                if callable(clear):
                    clear()
