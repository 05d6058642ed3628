"""What would make two pieces alike that come out nearly so: changes of the numbers behind them."""

from __future__ import annotations

from geometry.bench.bench import Bench
from geometry.bench.case_numbers import LEFT, case_numbers
from geometry.bench.members import has
from geometry.bench.openings import openings
from geometry.bench.partitions import evenly
from geometry.checks.limits_of_marking import ALIKE_WITHIN
from geometry.design.finding import Mend
from geometry.design.part import Part
from shared.units import length_mark


def made_alike(bench: Bench, first: Part, second: Part) -> Mend | None:
    """What would make the two alike, where their sizes come from the same few numbers."""
    names = (first.name, second.name)
    if first.kind == "stretcher":
        return _even_stretchers(bench)
    if first.kind == "end panel":
        flare = case_numbers(bench.spec).flare_of(LEFT).amount
        if not case_numbers(bench.spec).both_flare:
            return None
        return Mend(f"Make the right flare {length_mark(flare)} too.", (("flare_right", flare),))
    places = [
        int(name.split("_")[1])
        for name in names
        if name.startswith(("shelf_", "lipping_", "drawer_"))
    ]
    if len(places) < 2:
        return None
    if places[0] == places[1]:
        step = f"opening_{places[0]}_step"
        return Mend("Make the fronts of this opening equally high.", ((step, 0.0),))
    return _even_openings(bench, min(places), max(places))


def _even_stretchers(bench: Bench) -> Mend | None:
    """One leg moved, so that both stretchers reach as far across."""
    insets = {
        corner: bench.spec.number(f"inset_{corner}")
        for corner in ("back_left", "back_right", "front_left", "front_right")
    }
    if has(bench.spec, "crossed base"):
        wanted = insets["front_left"] + insets["back_right"] - insets["back_left"]
    elif has(bench.spec, "trestles"):
        wanted = insets["front_left"] + insets["back_left"] - insets["back_right"]
    else:
        return None
    return Mend(
        f"Set the front right leg in by {length_mark(round(wanted, 2))}.",
        (("inset_front_right", wanted),),
    )


def _even_openings(bench: Bench, first: int, second: int) -> Mend | None:
    """All openings alike, or two neighbours, by moving the partition between them."""
    widths = [at.width for at in openings(bench.spec)]
    if max(widths) - min(widths) <= ALIKE_WITHIN.of(bench):
        return Mend("Space the partitions evenly.", tuple(evenly(bench.spec).items()))
    if second != first + 1:
        return None
    name = f"partition_{first}"
    moved = bench.spec.number(name) + (widths[second - 1] - widths[first - 1]) / 2.0
    both = (widths[second - 1] + widths[first - 1]) / 2.0
    return Mend(
        f"Move partition {first}, so that both openings are {length_mark(both)} wide.",
        ((name, moved),),
    )
