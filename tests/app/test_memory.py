"""What is used and given up again and again costs its pages once."""

from __future__ import annotations

import subprocess
import sys

import pytest

FAULTS = """
import resource
import numpy as np
from app.memory import keep_memory

def faults():
    before = resource.getrusage(resource.RUSAGE_SELF).ru_minflt
    for _ in range(20):
        np.ones(250_000)
    return resource.getrusage(resource.RUSAGE_SELF).ru_minflt - before

without = faults()
keep_memory()
faults()
print(without, faults())
"""


@pytest.mark.skipif(sys.platform != "linux", reason="elsewhere nothing is promised")
def test_pages_are_asked_for_once() -> None:
    """2 MB are some 490 pages of 4 KiB; counted by the system itself (getrusage(2))."""
    done = subprocess.run(
        [sys.executable, "-c", FAULTS], capture_output=True, text=True, check=True
    )
    without, with_it = map(int, done.stdout.split())
    print(without, with_it)
    assert with_it < 100
