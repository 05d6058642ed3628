"""For which pieces one template serves, and how it is laid on each: as printed or turned over.

Frame: (u, v) of PART_FACE, mm.

Method: a sheet of paper can be laid on a piece in eight ways that keep the grain where it is: on
the face side or the reverse, its ends and its edges where they are or changed.  It serves a region
of a piece when all of its lines, so laid, are those of the region seen from that side, and when it
lies as far from the same ends and edges of the piece, so that its stations are true.  Paper with
one of the three changed, or all of them, is turned over.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np
import shapely

from geometry.design.part import Part
from geometry.sheets.tracing import Lines, Tracing, tracings

_NEAR = 0.5  # mm from an end or an edge: at it
_SAME = 0.02  # mm: lines that are one


@dataclass(frozen=True, slots=True)
class Laying:
    """On the ``reverse`` or the face side, and whether the template's ``ends`` and ``edges`` change
    places."""

    reverse: bool = False
    ends: bool = False
    edges: bool = False

    @property
    def over(self) -> bool:
        """Whether the printed side lies on the wood."""
        return self.reverse ^ self.ends ^ self.edges


AS_PRINTED = Laying()
# What a maker would rather do first.
_LAYINGS = (
    *(AS_PRINTED, Laying(ends=True), Laying(edges=True), Laying(reverse=True)),
    *(Laying(ends=True, edges=True), Laying(reverse=True, ends=True)),
    *(Laying(reverse=True, edges=True), Laying(reverse=True, ends=True, edges=True)),
)


@dataclass(frozen=True, slots=True)
class Margins:
    """Along one axis of a piece: how much of it lies before a region and how much behind; 0 at its
    very end."""

    before: float
    behind: float

    @property
    def changed(self) -> Margins:
        return Margins(self.behind, self.before)

    @property
    def whole(self) -> bool:
        return not self.before and not self.behind

    def is_like(self, other: Margins) -> bool:
        """At the same end, or as far from both."""
        if (not self.before, not self.behind) != (not other.before, not other.behind):
            return False
        inside = self.before and self.behind
        return not inside or (
            abs(self.before - other.before) < _NEAR and abs(self.behind - other.behind) < _NEAR
        )


@dataclass(frozen=True, slots=True)
class Use:
    """A region of pieces made alike: how far along and how far across, and how the template is laid
    on it."""

    parts: tuple[Part, ...]
    along: Margins
    across: Margins
    laying: Laying


@dataclass(frozen=True, slots=True, eq=False)
class Traced:
    """A region that is printed, and all that it serves for, as printed first."""

    tracing: Tracing
    uses: tuple[Use, ...]


@lru_cache(maxsize=4)
def traced(groups: tuple[tuple[Part, ...], ...]) -> tuple[Traced, ...]:
    """The fewest templates for all regions worth tracing of groups of parts made alike."""
    found: list[Traced] = []
    for group in groups:
        for tracing in tracings(group[0]):
            use = _use(group, tracing)
            for k, one in enumerate(found):
                laying = _fits(one, use, tracing)
                if laying is not None:
                    uses = _added(one.uses, replace(use, laying=laying))
                    found[k] = replace(one, uses=uses)
                    break
            else:
                found.append(Traced(tracing, (use,)))
    return tuple(found)


def template_name(number: int) -> str:
    """What the first template, the second and so on are called."""
    return f"T{number}"


def template_names(groups: tuple[tuple[Part, ...], ...]) -> dict[str, tuple[str, ...]]:
    """By the name of a part the templates that serve for it."""
    found: dict[str, tuple[str, ...]] = {}
    for number, one in enumerate(traced(groups), start=1):
        for name in dict.fromkeys(part.name for use in one.uses for part in use.parts):
            found[name] = (*found.get(name, ()), template_name(number))
    return found


def _use(parts: tuple[Part, ...], tracing: Tracing) -> Use:
    left, low, right, high = tracing.box
    blank = parts[0].shape.blank
    if tracing.whole:
        return Use(parts, Margins(0.0, 0.0), Margins(0.0, 0.0), AS_PRINTED)
    along = Margins(_off(left), _off(blank.length - right))
    return Use(parts, along, Margins(_off(-high), _off(blank.width + low)), AS_PRINTED)


def _off(distance: float) -> float:
    return distance if distance > _NEAR else 0.0


def _added(uses: tuple[Use, ...], new: Use) -> tuple[Use, ...]:
    """With those of the same place laid in the same way."""
    for k, use in enumerate(uses):
        alike = use.laying == new.laying
        if alike and use.along.is_like(new.along) and use.across.is_like(new.across):
            return (*uses[:k], replace(use, parts=(*use.parts, *new.parts)), *uses[k + 1 :])
    return (*uses, new)


def _fits(printed: Traced, use: Use, tracing: Tracing) -> Laying | None:
    """How a template is to be laid for a region, None where it does not serve."""
    if not np.allclose(_size(printed.tracing), _size(tracing), rtol=0.0, atol=_SAME):
        return None
    first = printed.uses[0]
    kinds = [(use.parts[0].solid_timber, use.parts[0].grain_across) for use in (first, use)]
    if kinds[0] != kinds[1]:
        return None
    mine = [_about_its_middle(lines, printed.tracing) for lines in _lines(printed.tracing, False)]
    for laying in _LAYINGS:
        along = use.along.changed if laying.ends else use.along
        across = use.across.changed if laying.edges else use.across
        if not (first.along.is_like(along) and first.across.is_like(across)):
            continue
        signs = np.array((-1.0 if laying.ends else 1.0, -1.0 if laying.edges else 1.0) * 2)
        laid = (
            _about_its_middle(lines, tracing) * signs for lines in _lines(tracing, laying.reverse)
        )
        if all(_are_one(a, b) for a, b in zip(mine, laid, strict=True)):
            return laying
    return None


def _size(tracing: Tracing) -> tuple[float, float]:
    left, low, right, high = tracing.box
    return (right - left, high - low)


def _lines(tracing: Tracing, reverse: bool) -> tuple[Lines, ...]:
    """By what they are for: sawn to, scribed, on the other side, trimmed to."""
    seen = tracing.from_reverse if reverse else (tracing.joint, tracing.reverse)
    return (tracing.cut, *seen, tracing.trim)


def _about_its_middle(lines: Lines, tracing: Tracing) -> Lines:
    left, low, right, high = tracing.box
    moved: Lines = lines - np.array(((left + right) / 2.0, (low + high) / 2.0) * 2)
    return moved


def _are_one(first: Lines, second: Lines) -> bool:
    """Whether two sets of lines cover each other, however each is cut up."""
    if not len(first) or not len(second):
        return len(first) == len(second)
    one, other = (shapely.multilinestrings(s.reshape(-1, 2, 2)) for s in (first, second))
    return bool(other.buffer(_SAME).covers(one) and one.buffer(_SAME).covers(other))
