"""Which choice brings in a value that a bench, as it stands, has no use for."""

from __future__ import annotations

from geometry.bench.catalogue import PARAMETERS
from geometry.design.parameter import Parameter
from geometry.design.spec import BenchSpec


def brought_by(spec: BenchSpec, row: Parameter) -> tuple[Parameter, str] | None:
    """The first choice of the bench, and what it has to be, with which a row applies; None where
    no single choice does it."""
    for chosen in PARAMETERS:
        if not chosen.choices or not chosen.applies(spec):
            continue
        for word in chosen.choices:
            if row.applies(spec.changed({chosen.name: word})):
                return chosen, word
    return None
