"""What moves along when a number is set, because the maker never gave it a place of its own.

A new number of partitions spaces them evenly.  A flare that begins on a plain bench, or at a second
end, or with a case that comes in, gets its stations from the bench's length, if those kept from
before no longer fit.  A shelf that is put into an opening where its kept height does not fit goes
half way up.  Another form of seat stays as high above the floor (see ``form_change``).  Another
kind of runner brings the numbers of its generic row, and the drawers' bottoms as high as it needs
them.  A record of what has been cut begins with what is drawn.
"""

from __future__ import annotations

from collections.abc import Mapping

from geometry.bench import as_cut, flares, shelves
from geometry.bench.case_numbers import BOTH
from geometry.bench.form_change import reformed
from geometry.bench.lid_rows import hinge_values, stay_values
from geometry.bench.openings import WIDTH_READS
from geometry.bench.overall import CASE, seat_is
from geometry.bench.partitions import evenly
from geometry.bench.runner_numbers import runner_of, runner_values
from geometry.bench.settling import settled
from geometry.design.parameter import Value
from geometry.design.spec import BenchSpec
from shared.runners import generic

_OPENINGS = frozenset(WIDTH_READS.split())


def changed(spec: BenchSpec, changes: Mapping[str, Value]) -> BenchSpec:
    """``spec`` with the changes and all that follows; values given in ``changes`` stay as given."""
    wanted = spec.changed(changes)
    if any(isinstance(value, str) for value in changes.values()):
        change = settled if wanted.value("seat") == spec.value("seat") else reformed
        wanted = change(spec, wanted, changes)
    if wanted.count("partition_count") != spec.count("partition_count"):
        wanted = _with(wanted, evenly(wanted), changes)
    if _newly_flared(spec, wanted):
        wanted = _with(wanted, flares.stations(wanted), changes)
    if not _OPENINGS.isdisjoint(changes):
        wanted = _with(wanted, shelves.fitted(spec, wanted), changes)
    for choice, values in (("hinge", hinge_values), ("lid_stay", stay_values)):
        if wanted.word(choice) != spec.word(choice):
            wanted = _with(wanted, values(wanted.word(choice)), changes)
    if as_cut.has_record(wanted) and not as_cut.has_record(spec):
        wanted = _with(wanted, as_cut.as_drawn(wanted), changes)
    if wanted.word("runner_kind") != spec.word("runner_kind"):
        wanted = _with(wanted, runner_values(generic(wanted.word("runner_kind"))), changes)
        recess, up = runner_of(wanted).recess, wanted.number("drawer_bottom_up")
        wanted = _with(wanted, {"drawer_bottom_up": max(up, recess)}, changes)
    return wanted


def _with(spec: BenchSpec, values: Mapping[str, Value], given: Mapping[str, Value]) -> BenchSpec:
    """``spec`` with these values, but for those that the maker has given."""
    fresh = {name: value for name, value in values.items() if name not in given}
    return spec.changed(fresh) if fresh else spec


def _newly_flared(before: BenchSpec, after: BenchSpec) -> bool:
    """Whether a flare begins: the first of all, one at the second end, or that of a new case."""
    if not seat_is(CASE, after):
        return False
    first = before.number("flare") <= 0.0 < after.number("flare")
    second = before.word("deep_end") != BOTH == after.word("deep_end")
    return first or second or not seat_is(CASE, before)
