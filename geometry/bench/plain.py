"""A plain bench to begin with, in round sizes of the maker's own unit.

The catalogue's defaults are whole millimetres.  A maker in inches begins with the nearest sizes
that a shop rule shows at a glance, the coarser the larger they are, so that what is written adds
up from the first minute.  Fits below a millimetre and hardware that is bought stay what they are.
"""

from __future__ import annotations

from functools import lru_cache

from geometry.bench.catalogue import PARAMETERS, default_spec
from geometry.design.parameter import Parameter, Value
from geometry.design.spec import BenchSpec
from shared.units import MM_PER_INCH, Shown

# below so many inches -> whole steps of so much of an inch; common practice, no source
_STEPS = ((0.5, 1 / 16), (1.0, 1 / 8), (2.0, 1 / 4), (12.0, 1 / 2), (30.0, 1.0))
_LONGEST_STEP = 2.0
_FINE = 1.0  # mm: below lie fits and clearances
_BOUGHT = ("hinge_", "runner_", "stay_")


@lru_cache(maxsize=2)
def plain_spec(shown: Shown) -> BenchSpec:
    """A new bench; beside millimetres the catalogue's defaults.

    >>> round(plain_spec(Shown("in")).number("length") / 25.4, 6)
    48.0
    """
    if shown.unit == "mm":
        return default_spec()
    return BenchSpec(tuple((row.name, _in_inches(row)) for row in PARAMETERS))


def _in_inches(row: Parameter) -> Value:
    if row.unit != "mm" or isinstance(row.default, str):
        return row.default
    if abs(row.default) < _FINE or row.name.startswith(_BOUGHT):
        return row.default
    inches = row.default / MM_PER_INCH
    step = next((each for below, each in _STEPS if abs(inches) < below), _LONGEST_STEP)
    value = round(inches / step) * step * MM_PER_INCH
    return value if row.minimum <= value <= row.maximum else row.default
