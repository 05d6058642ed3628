"""The three views in which a bench is drawn."""

from __future__ import annotations

from geometry.bench.bench import Bench
from geometry.bench.case_numbers import case_numbers
from geometry.bench.members import has
from geometry.views.view import END_LEFT, END_RIGHT, FRONT, PLAN, View


def end_view(bench: Bench) -> View:
    """The end elevation that shows most: of the deeper end, else of the right end."""
    if not has(bench.spec, "case"):
        return END_RIGHT
    c = case_numbers(bench.spec)
    return END_LEFT if c.flare_left.amount > c.flare_right.amount else END_RIGHT


def bench_views(bench: Bench) -> tuple[View, View, View]:
    """Front elevation, plan and end elevation."""
    return (FRONT, PLAN, end_view(bench))
