"""Checks of pieces that are taken for one another: nearly alike, or left and right of a pair."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations

from geometry.bench.bench import Bench
from geometry.bench.lipped import LIP_OF
from geometry.checks.alike_mends import made_alike
from geometry.checks.check import Check
from geometry.checks.limits_of_marking import ALIKE_ANGLE, ALIKE_WITHIN, SAWN_ALIKE
from geometry.cuts.relief import Relief
from geometry.design.finding import Finding, Level, Mend
from geometry.design.part import Part
from geometry.primitives.frame import Vec3
from geometry.solids.likeness import likeness, size_of
from geometry.solids.measure import bounding_box
from shared.units import angle_mark, length_mark

_DRIVEN = "wedge"
_SIZES = ("long", "wide", "thick")


@dataclass(frozen=True, slots=True)
class _Near:
    """Two pieces that differ by little: by ``sizes`` in mm, or else in where they are cut.

    ``turn_deg`` tells of those whose cuts are farther apart, but turned by little; else it is 0.
    """

    first: Part
    second: Part
    sizes: tuple[float, float, float]
    distance: float
    turn_deg: float

    @property
    def size(self) -> int | None:
        """Which size differs the most; None where none does and a cut does."""
        most = max(range(3), key=lambda k: abs(self.sizes[k]))
        return most if self.sizes[most] else None


@dataclass(frozen=True, slots=True)
class _Lot:
    """Pieces that differ by little, the two that are told of, and what would make them alike."""

    told: _Near
    parts: tuple[str, ...]
    mend: Mend | None


def _nearly(bench: Bench) -> Iterator[Finding]:
    """One finding for what hangs together by small differences, or comes from one number."""
    groups: dict[object, list[_Lot]] = {}
    for lot in _lots(bench):
        cause = lot.mend.values if lot.mend else lot.parts
        groups.setdefault(cause, []).append(lot)
    for lots in groups.values():
        told, mend = lots[0].told, lots[0].mend
        parts = tuple(name for lot in lots for name in lot.parts)
        yield Finding(
            check="nearly_alike",
            level=_level(told, mend),
            message=_words(told, len(parts) - 2),
            parts=parts,
            place=_middle(told.first),
            amount=_amount(told),
            limit=(ALIKE_ANGLE if told.turn_deg else ALIKE_WITHIN).of(bench),
            unit="deg" if told.turn_deg else "mm",
            mend=mend,
        )


def _level(told: _Near, mend: Mend | None) -> Level:
    """Legs stand where the bench wants them, so stretchers that come out unlike are no slip."""
    if mend is None or told.first.kind == "stretcher":
        return Level.GOOD_TO_KNOW
    return Level.THINK_AGAIN


def _lots(bench: Bench) -> Iterator[_Lot]:
    """For each kind of piece, those that hang together by small differences."""
    for batch in _batches(bench):
        kinds = _kinds_of(bench, batch)
        near = [
            found
            for first, second in combinations(kinds, 2)
            if (found := _near(bench, first[0], second[0])) is not None
        ]
        for cluster in _clusters(near):
            told = next((one for one in cluster if one.size is not None), cluster[0])
            heads = {part.name for one in cluster for part in (one.first, one.second)}
            parts = tuple(p.name for kind in kinds if kind[0].name in heads for p in kind)
            yield _Lot(told, parts, made_alike(bench, told.first, told.second))


def _batches(bench: Bench) -> list[list[Part]]:
    """Pieces of one name and one timber; carved ones are each their own, and look it, and any wedge
    will do for another, as it is driven home and sawn off."""
    found: dict[tuple[str, str], list[Part]] = {}
    for part in bench.parts:
        carved = any(isinstance(cut, Relief) for cut in part.shape.cuts)
        if not carved and part.kind != _DRIVEN:
            found.setdefault((part.kind, part.material), []).append(part)
    return [batch for batch in found.values() if len(batch) > 1]


def _kinds_of(bench: Bench, batch: list[Part]) -> list[list[Part]]:
    """The pieces that are the same, as near as a saw stop keeps, each lot together."""
    lots: list[list[Part]] = []
    for part in batch:
        lot = next((lot for lot in lots if _same(bench, lot[0], part)), None)
        if lot is None:
            lots.append([part])
        else:
            lot.append(part)
    return lots


def _same(bench: Bench, first: Part, second: Part) -> bool:
    if first.shape == second.shape:
        return True
    sawn = SAWN_ALIKE.of(bench)
    if max(map(abs, _sizes(first, second))) > sawn:
        return False
    found = likeness(first.shape, second.shape)
    return found is not None and not found.mirrored and found.distance <= sawn


def _sizes(first: Part, second: Part) -> tuple[float, float, float]:
    """How much longer, wider and thicker the second is."""
    (a, b, c), (d, e, f) = size_of(first.shape), size_of(second.shape)
    return d - a, e - b, f - c


def _near(bench: Bench, first: Part, second: Part) -> _Near | None:
    """How two pieces differ, if it is by little; None for others, and for mirror images."""
    within, sawn = ALIKE_WITHIN.of(bench), SAWN_ALIKE.of(bench)
    sizes = _sizes(first, second)
    most = max(map(abs, sizes))
    if sawn < most <= within:
        return _Near(first, second, sizes, 0.0, 0.0)
    # A face that is turned by little stands off by as much as it is long, and no more.
    reach = max(size_of(first.shape)) * math.radians(ALIKE_ANGLE.of(bench))
    if most > max(within, reach) or first.kind in LIP_OF:
        return None  # a lipping is cut once it is on its board
    found = likeness(first.shape, second.shape)
    if found is None or found.distance <= sawn:
        return None
    if most <= within and found.distance <= within:
        return _Near(first, second, (0.0, 0.0, 0.0), found.distance, 0.0)
    reach = max(size_of(first.shape)) * math.radians(found.turn_deg)
    if found.turn_deg > ALIKE_ANGLE.of(bench) or max(most, found.distance) > reach:
        return None
    return _Near(first, second, (0.0, 0.0, 0.0), found.distance, found.turn_deg)


def _clusters(near: list[_Near]) -> list[list[_Near]]:
    """Those that share a piece, together."""
    clusters: list[list[_Near]] = []
    for one in near:
        names = {one.first.name, one.second.name}
        touching = [
            lot for lot in clusters if any(names & {o.first.name, o.second.name} for o in lot)
        ]
        clusters = [lot for lot in clusters if lot not in touching]
        clusters.append([*(old for lot in touching for old in lot), one])
    return clusters


def _amount(told: _Near) -> float:
    if told.size is not None:
        return abs(told.sizes[told.size])
    return told.turn_deg or told.distance


def _words(told: _Near, others: int) -> str:
    one, other = f"“{told.first.title}”", f"“{told.second.title}”"
    if told.turn_deg:
        turn = angle_mark(round(told.turn_deg, 2))
        what = f"{one} and {other} differ by {turn} only, in a cut that leans"
    elif told.size is None:
        by = _mm(told.distance)
        what = f"{one} and {other} are of one size, and a cut of theirs differs by {by} only"
    else:
        what = (
            f"{one} is {_mm(size_of(told.first.shape)[told.size])} {_SIZES[told.size]} and "
            f"{other} {_mm(size_of(told.second.shape)[told.size])}"
        )
    more = f" ({others} more {'pieces' if others > 1 else 'piece'} with them)" if others else ""
    return f"{what}{more}. One set up for the other would not fit: mark them apart."


def _mm(value: float) -> str:
    return length_mark(round(value, 2))


def _middle(part: Part) -> Vec3:
    low, high = bounding_box(part)
    return ((low[0] + high[0]) / 2.0, (low[1] + high[1]) / 2.0, (low[2] + high[2]) / 2.0)


def _mirrored(bench: Bench) -> Iterator[Finding]:
    """All pairs in one finding: to know of them is enough."""
    told: list[str] = []
    parts: list[Part] = []
    for batch in _batches(bench):
        if batch[0].kind in LIP_OF:
            continue  # they are cut once they are on their boards
        lots = _kinds_of(bench, batch)
        pairs = [pair for pair in combinations(lots, 2) if _facing(bench, pair[0][0], pair[1][0])]
        if not pairs:
            continue
        one, other = (sum(len(pair[side]) for pair in pairs) for side in (0, 1))
        told.append(f"{one} and {other} {_several(batch[0].kind)}")
        parts += [part for pair in pairs for lot in pair for part in lot]
    if not told:
        return
    yield Finding(
        check="mirror_images",
        level=Level.GOOD_TO_KNOW,
        message=(
            f"Left and right pieces, mirror images that look alike: {', '.join(told)}. Mark each "
            "before anything is cut."
        ),
        parts=tuple(dict.fromkeys(part.name for part in parts)),
        place=_middle(parts[0]),
        amount=float(len(parts)),
        unit="count",
    )


def _several(kind: str) -> str:
    for one, many in (("shelf", "shelves"), ("foot", "feet")):
        if kind.endswith(one):
            return kind.removesuffix(one) + many
    return f"{kind}s"


def _facing(bench: Bench, first: Part, second: Part) -> bool:
    """Whether one is the other in a mirror, as near as a saw stop keeps."""
    sawn = SAWN_ALIKE.of(bench)
    if max(map(abs, _sizes(first, second))) > sawn:
        return False
    found = likeness(first.shape, second.shape)
    return found is not None and found.mirrored and found.distance <= sawn


CHECKS: tuple[Check, ...] = (
    Check(
        "nearly_alike",
        "Pieces that are nearly, but not quite, alike",
        "Compares the pieces of one name and one timber, each laid on the other the way it comes "
        "nearest, as in a mirror too. Sizes or cuts that differ by less than {3 mm}, or faces by "
        "less than a degree, are not seen at the saw: one of the two is cut to the other's stop. "
        "What differs by less than a stop keeps, {0.25 mm}, is the same. Common practice, no "
        "source.",
        _nearly,
        limits=(ALIKE_WITHIN, ALIKE_ANGLE, SAWN_ALIKE),
        quick=False,
    ),
    Check(
        "mirror_images",
        "Left and right of a pair",
        "Looks for pieces that are mirror images of each other and cannot be turned into one "
        "another: two left sides are soon made. They are no fault, so this is only told. Lippings "
        "are left out, as they are cut once they are on their boards. The limit is that of what a "
        "saw stop keeps apart.",
        _mirrored,
        limits=(SAWN_ALIKE,),
        quick=False,
    ),
)
