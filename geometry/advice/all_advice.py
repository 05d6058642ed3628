"""All advice on a bench that follows from a brief, in the order in which it is shown."""

from __future__ import annotations

from functools import lru_cache

from geometry.advice.advised import Advice
from geometry.advice.moisture_advice import moisture_advice
from geometry.advice.overhang_advice import overhang_advice
from geometry.advice.seat_advice import depth_advice, height_advice, length_advice
from geometry.bench.bench import Bench
from geometry.design.brief import NOBODY, Brief


@lru_cache(maxsize=32)
def advice(bench: Bench, brief: Brief) -> tuple[Advice, ...]:
    """What the brief asks of the bench; nothing where the brief says nothing that bears on it."""
    spec = bench.spec
    seat = (height_advice(spec, brief), depth_advice(spec, brief), length_advice(spec, brief))
    carries = brief.who != NOBODY or brief.persons or brief.load
    return (
        *(one for one in seat if one is not None),
        *(overhang_advice(bench, brief) if carries else ()),
        *moisture_advice(bench, brief),
    )
