"""The samples are sound: as the window judges them they raise nothing above 'good to know'."""

from __future__ import annotations

from pathlib import Path

import pytest

from app.window.samples import sample_files
from exporters.project_file import load
from geometry.bench.build import build
from geometry.checks.all_checks import wholly_judged
from geometry.design.finding import Level
from shared.units import SHOWN_MM


@pytest.mark.parametrize("path", sample_files(), ids=lambda path: path.stem)
def test_a_sample_raises_nothing_above_good_to_know(path: Path) -> None:
    project = load(path)
    bench = build(project.spec)
    found = wholly_judged(bench, project.judging, project.brief, shown=SHOWN_MM)
    assert [
        f"{one.check}: {one.message}" for one in found if one.level is not Level.GOOD_TO_KNOW
    ] == []
    parts = {part.name for part in bench.parts}
    assert all(set(one.parts) <= parts for one in found)
    assert project.judging.set_aside == (), "a sample needs no excuse"
