"""Which tests go to one worker: those of one bench, whose solids and findings are made once.

Everything is cached by value, so that a second test of the same bench costs little, but only in
the process that had the first.  Tests of one sample project or of one random bench, in whichever
file, stand together for that; all others stand by their files.
"""

from __future__ import annotations

from pathlib import Path

import pytest

_SAMPLES = {path.stem for path in (Path(__file__).parents[1] / "sample_projects").glob("*.settle")}
_RANDOM = ("seed", "bench", "any_bench")  # what the number of a random bench is called


def working_group(item: pytest.Item) -> str:
    """The name of the group that a test belongs to."""
    called = getattr(item, "callspec", None)
    for name, value in called.params.items() if called else ():
        if isinstance(value, Path) and value.stem in _SAMPLES:
            return value.stem
        if isinstance(value, str) and f"{value.removesuffix('_bench')}_bench" in _SAMPLES:
            return f"{value.removesuffix('_bench')}_bench"
        if name in _RANDOM and isinstance(value, int):
            return f"bench {value}"
    return item.path.relative_to(item.config.rootpath).as_posix()
