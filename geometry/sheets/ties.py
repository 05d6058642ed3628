"""Which lines of a joint on one part are told from the part's reference faces, and which not yet.

Frame: the part's own (axis 0 along the grain from the left end, 1 across from the face edge, 2
through from the face side), mm.

Method: each place along an axis that lines keep to is a node, and so is each axis' reference, the
piece as it was before.  A dimension ties the nodes at its two ends, or one to the reference where
it starts from a corner that was there; a told angle ties the ends of a slanting line, and in a comb
of tails or fingers each width that is told ties every two nodes so far apart.  What is tied to the
reference can be marked.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import combinations

import numpy as np

from geometry.design.joint import Joint, Measure
from geometry.design.part import Part
from geometry.dimensioning.dimension import Dimension
from geometry.primitives.frame import Vec3, add, dot, scale
from geometry.sheets.joint_lines import NEAR, MarkedLines
from geometry.solids.solid import Floats
from geometry.views.view import View

Node = tuple[int, int]  # axis, and place in the order of the axis' values; -1 is the reference

_DOVETAILS = ("through dovetail", "half-blind dovetail")
_COMBS = (*_DOVETAILS, "box joint")
_MOSTLY = 0.75  # cosine: a dimension nearer to an axis than this places lines along it
_ALONG = 1.0 - 1e-6
_SLANTS = 0.05  # sine
_LEAST_DEG = 0.3
_FROM = re.compile(r"\bfrom\b|below")


class Ties:
    """The nodes of a part's lines and what ties them."""

    def __init__(self, joint: Joint, part: Part, index: int, lines: MarkedLines) -> None:
        self.lines = lines
        self.values = tuple(lines.values(axis) for axis in range(3))
        self._part = part
        self._joint = joint
        self._told = [one for one in joint.measures if index in one.found_on]
        self._up: dict[Node, Node] = {}
        if any(one.unit == "deg" and one.value > _LEAST_DEG for one in self._told):
            self._tie_slanting()
        for measure in self._told:
            self._tie_across(measure)
            axis = self._axis_of(measure)
            if measure.at is not None and axis is not None:
                self._tie_all(axis)  # the joint itself says what of it is placed, and from where
        if joint.kind in _COMBS:
            self._tie_comb(marked_from_other=joint.kind in _DOVETAILS and index == 1)

    def loose(self, axis: int) -> list[int]:
        """The nodes of an axis that are not told from its reference."""
        known = self._root((axis, -1))
        return [k for k in range(len(self.values[axis])) if self._root((axis, k)) != known]

    def tie(self, one: Node, other: Node) -> None:
        """Whoever knows one knows the other."""
        one, other = self._root(one), self._root(other)
        if one != other:
            self._up[one] = other

    def add_dimension(self, view: View, dimension: Dimension) -> None:
        """Tie what a dimension of a view runs between."""
        if dimension.apex is not None:
            return
        right, up = dimension.along
        way = add(scale(view.right, right), scale(view.up, up))
        local = self._part.frame.turn_to_local(way)
        axis = int(np.argmax(np.abs(local)))
        if abs(local[axis]) < _MOSTLY:
            return
        zero = dot(self._part.frame.origin, way)
        tied: list[Node] = []
        for u, v in (dimension.start, dimension.end):
            at = u * right + v * up - zero
            nodes = self._at(at, local, axis)
            if not nodes and abs(local[axis]) > _ALONG and self._was_there(at, local):
                nodes = [(axis, -1)]
            tied += nodes
        if dimension.name == "tenon_length" and axis == 0:
            # A shoulder is marked round the piece, so far from the end of the tenon.
            tied += [(axis, k) for k in (-1, *range(len(self.values[axis])))]
        for one in tied[1:]:
            self.tie(tied[0], one)

    def told_in_words(self, axis: int) -> bool:
        """Whether a measure tells from which limit of the part some loose node is; it is tied."""
        room = self._joint.fit / 2.0 + NEAR
        values, limits = self.values[axis], self.lines.limits[:, axis]
        for measure in self._told:
            if self._axis_of(measure) != axis or not _is_from(measure):
                continue
            for k in self.loose(axis):
                # A measure may be to the middle between two lines.
                middles = np.append((values[k] + values) / 2.0, self._middle(axis))
                off = np.abs(np.abs(middles[:, None] - limits) - measure.value)
                if (off < room).any():
                    self.tie((axis, k), (axis, -1))
                    return True
        return False

    def node(self, axis: int, value: float) -> int | None:
        """The node at a place along an axis, if there is one."""
        found = np.flatnonzero(np.abs(self.values[axis] - value) < NEAR)
        return int(found[0]) if len(found) else None

    def _root(self, one: Node) -> Node:
        while one in self._up:
            one = self._up[one]
        return one

    def _at(self, at: float, local: Vec3, axis: int) -> list[Node]:
        """The nodes along an axis of the corners that lie so far along a direction."""
        corners = self.lines.ends.reshape(-1, 3)
        there = corners[np.abs(corners @ np.array(local) - at) < NEAR]
        return self._nodes(there[:, axis], axis)

    def _nodes(self, places: Floats, axis: int) -> list[Node]:
        found = (self.node(axis, float(place)) for place in places)
        return [(axis, k) for k in found if k is not None]

    def _tie_across(self, measure: Measure) -> None:
        """A place along a slanting face, such as a mitre's, is told there, to its middle."""
        if measure.unit != "mm" or measure.along is None or not _is_from(measure):
            return
        local = np.array(self._part.frame.turn_to_local(measure.along))
        places = self.lines.ends.reshape(-1, 3) @ local
        if np.abs(local).max() > _ALONG or not len(places):
            return
        middle = (places.min() + places.max()) / 2.0
        off = np.abs(np.abs(self.lines.before @ local - middle) - measure.value)
        if (off < NEAR).any():
            for axis in np.flatnonzero(np.abs(local) > _SLANTS).tolist():
                self._tie_all(axis)

    def _tie_all(self, axis: int) -> None:
        for k in range(len(self.values[axis])):
            self.tie((axis, k), (axis, -1))

    def _middle(self, axis: int) -> float:
        """Half way between the farthest lines."""
        places = self.lines.ends[..., axis]
        return float(places.min() + places.max()) / 2.0

    def _was_there(self, at: float, local: Vec3) -> bool:
        """Whether a corner of the piece without the joint lies so far along a direction."""
        return bool((np.abs(self.lines.before @ np.array(local) - at) < NEAR).any())

    def _axis_of(self, measure: Measure) -> int | None:
        """The axis of the part along which a length runs."""
        if measure.unit != "mm" or measure.along is None:
            return None
        local = np.abs(self._part.frame.turn_to_local(measure.along))
        return int(local.argmax()) if local.max() > _ALONG else None

    def _tie_slanting(self) -> None:
        run = np.abs(self.lines.made[:, 1] - self.lines.made[:, 0])
        for ends in self.lines.made[(run > NEAR).sum(axis=1) > 1]:
            for axis in range(3):
                both = self._nodes(ends[:, axis], axis)
                if len(both) == len(ends):
                    self.tie(*both)

    def _tie_comb(self, *, marked_from_other: bool) -> None:
        """Of pins nothing is marked but their base line: they are marked from the tails."""
        for measure in self._joint.measures:
            axis = self._axis_of(measure)
            if axis is None:
                continue
            values = self.values[axis]
            if marked_from_other and measure.name == "tail_width":
                self._tie_all(axis)
            elif measure in self._told:
                for j, k in combinations(range(len(values)), 2):
                    if abs(values[k] - values[j] - measure.value) < NEAR:
                        self.tie((axis, j), (axis, k))


def _is_from(measure: Measure) -> bool:
    return bool(_FROM.search(f"{measure.name} {measure.meaning}"))


def tied(
    joint: Joint,
    part: Part,
    index: int,
    lines: MarkedLines,
    shown: Sequence[tuple[View, Dimension]],
) -> Ties:
    """What the dimensions of a detail tell of one of its parts."""
    found = Ties(joint, part, index, lines)
    for view, dimension in shown:
        found.add_dimension(view, dimension)
    return found
