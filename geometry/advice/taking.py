"""Which values of a bench bring a size to what is advised, tried on the bench itself."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from geometry.bench.catalogue import parameter
from geometry.bench.limits import limits, set_values
from geometry.bench.overall import CASE, seat_height, seat_is
from geometry.design.spec import BenchSpec
from shared.errors import MakerError

Changes = tuple[tuple[str, float | str], ...]
_EXACT = 0.01  # mm


def for_height(spec: BenchSpec, wanted: float) -> tuple[Changes, str]:
    """The base's height first, the case's for what is left; and why not, where it cannot be."""
    lacking = wanted - seat_height(spec)
    base, row = spec.number("base_height"), parameter("base_height")
    if not row.applies(spec):
        return (), "this form of seat has no base to be made higher or lower"
    now = limits(spec, "base_height")
    reached = min(max(base + lacking, now.minimum), now.maximum)
    rest = base + lacking - reached
    changes: dict[str, float | str] = {"base_height": _tidy(reached)}
    if abs(rest) > _EXACT:
        if not seat_is(CASE, spec):
            return (), now.why_maximum if rest > 0.0 else now.why_minimum
        changes["case_height"] = _tidy(spec.number("case_height") + rest)
    return _tried(spec, changes)


def for_value(spec: BenchSpec, name: str, wanted: float) -> tuple[Changes, str]:
    """One value set as advised, and why not, where it cannot be."""
    return _tried(spec, {name: _tidy(wanted)})


def for_insets(spec: BenchSpec, names: Iterable[str], less: float) -> tuple[Changes, str]:
    """Insets made less by so much, those that this base has."""
    present = [name for name in names if parameter(name).applies(spec)]
    if not present:
        return (), "this bench has no base that could be moved"
    return _tried(spec, {name: _tidy(spec.number(name) - less) for name in present})


def for_moisture(spec: BenchSpec, low: float, made: float, high: float) -> tuple[Changes, str]:
    """The moistures that slots in fixings are cut for, whole percents; nothing where there are none
    or where they are those already."""
    wanted = {"moisture_low": low, "moisture_made": made, "moisture_high": high}
    if not all(parameter(name).applies(spec) for name in wanted):
        return (), ""
    if all(spec.number(name) == value for name, value in wanted.items()):
        return (), ""
    return _tried(spec, {name: float(value) for name, value in wanted.items()})


def _tried(spec: BenchSpec, changes: Mapping[str, float | str]) -> tuple[Changes, str]:
    try:
        set_values(spec, changes)
    except MakerError as error:
        return (), f"{error.what} {error.remedy}".strip()
    return tuple(changes.items()), ""


def _tidy(value: float) -> float:
    """To a hundredth of a millimetre: nothing finer is meant."""
    return round(value, 2)
