"""The carving and the finger grooves of drawer fronts, read from a spec.

The picture is the rectangle round all fronts that are carved; each front takes what lies over it,
so that the facets run on from front to front across the gaps.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from geometry.bench.carving_parameters import FACETED, MIRRORED, NO_GROOVE, TOP_EDGE, read_fronts
from geometry.bench.carving_pattern import Pattern, read_moved
from geometry.bench.drawer_numbers import Drawer, drawers, fronts_of
from geometry.bench.relief_surface import Picture, on_front, surface_of
from geometry.cuts.overrun import OVERRUN
from geometry.design.spec import BenchSpec
from geometry.primitives.facets import Facets, Rectangle, trimmed


@dataclass(frozen=True, slots=True)
class Carving:
    """The relief of a bench: its picture, its pattern and how deep it goes at most; mm."""

    picture: Picture
    pattern: Pattern
    depth: float
    fronts: tuple[Drawer, ...]

    @property
    def surface(self) -> Facets:
        return surface_of(self.pattern, self.picture.width, self.picture.height, self.depth)


@dataclass(frozen=True, slots=True)
class GrooveNumbers:
    """The finger grooves of a bench: a radius in mm, at the top edges or at the bottom ones."""

    radius: float
    at_top: bool


def chosen_fronts(spec: BenchSpec) -> tuple[Drawer, ...]:
    """The drawers whose fronts are carved, those that the maker named or all."""
    if spec.word("carving") != FACETED:
        return ()
    named = read_fronts(spec.word("carved_fronts"))
    return tuple(
        drawer
        for drawer in drawers(spec)
        if not named or (drawer.opening.index, drawer.number) in named
    )


@lru_cache(maxsize=512)
def carving_of(spec: BenchSpec) -> Carving | None:
    """The carving of a bench; None where no front has any."""
    fronts = chosen_fronts(spec)
    if not fronts:
        return None
    picture = Picture(
        min(drawer.x_low for drawer in fronts),
        max(drawer.x_high for drawer in fronts),
        min(drawer.z_low for drawer in fronts),
        max(drawer.z_high for drawer in fronts),
    )
    return Carving(picture, pattern_of(spec), spec.number("carving_depth"), fronts)


def pattern_of(spec: BenchSpec) -> Pattern:
    return Pattern(
        spec.count("carving_seed"),
        spec.count("carving_points"),
        spec.word("carving_mirror") == MIRRORED,
        read_moved(spec.word("carving_moved")),
    )


def groove_of(spec: BenchSpec) -> GrooveNumbers | None:
    """The finger grooves of a bench's fronts; None where they have none."""
    where = spec.word("finger_groove")
    if where == NO_GROOVE:
        return None
    return GrooveNumbers(spec.number("finger_radius"), where == TOP_EDGE)


def facets_over_blank(spec: BenchSpec, drawer: Drawer) -> Facets | None:
    """The relief of a front in its part's frame, past the edges of its blank; None if plain."""
    carving = carving_of(spec)
    if carving is None or drawer not in carving.fronts:
        return None
    on, picture = fronts_of(spec).left_on, carving.picture
    corner = (
        round(drawer.x_low - on - picture.x_low, 9),
        round(drawer.z_high + on - picture.z_low, 9),
    )
    size = (drawer.front_width + 2.0 * on, drawer.front_height + 2.0 * on)
    over = (-OVERRUN, -OVERRUN, round(size[0] + OVERRUN, 9), round(size[1] + OVERRUN, 9))
    return on_front(carving.surface, corner, over)


def facets_on_front(spec: BenchSpec, drawer: Drawer) -> Facets | None:
    """The relief within the finished edges of a front, in its part's frame; None if plain."""
    facets = facets_over_blank(spec, drawer)
    return None if facets is None else trimmed(facets, finished_edges(spec, drawer))


def finished_edges(spec: BenchSpec, drawer: Drawer) -> Rectangle:
    """The finished rectangle of a front in its part's frame."""
    on = fronts_of(spec).left_on
    return (on, on, round(on + drawer.front_width, 9), round(on + drawer.front_height, 9))
