"""Which sizes can be dragged, over all samples: those of what the views show."""

from __future__ import annotations

from app.window.samples import sample_files
from exporters.project_file import load
from geometry.bench.build import build
from geometry.dimensioning.bench_dimensions import dimensions
from geometry.dimensioning.grips import grips

# What a maker sees the edges of in a view, and so may take hold of; fits, allowances, the sizes of
# tenons and mortises inside the wood, screws and bought pieces are typed.
SEEN = {
    "length",
    "depth",
    "base_height",
    "flare",
    "plinth_thickness",
    "plinth_block",
    "apron_height",
    "apron_thickness",
    "apron_reveal",
    "corner_block_thickness",
    "corner_block_height",
    "box_thickness",
    "foot_height",
    "foot_diameter",
    "leg_size",
    "leg_foot",
    "lid_opening",
}


def test_every_size_that_a_view_shows_can_be_dragged() -> None:
    reached = set()
    for file in sample_files():
        bench = build(load(file).spec)
        reached |= {one.pull.parameter for one in dimensions(bench) if one.pull is not None}
        reached |= {one.pull.parameter for one in grips(bench)}
    assert reached >= SEEN
