"""A small finite-element frame in a plane, as a judge: straight elements that bend and shear.

Nodes (x, z); three freedoms each: along x, along z, and turning.  Elements after Przemieniecki,
Theory of Matrix Structural Analysis (1968), 5.6, from memory: a stiffness matrix with the shear
number 12 E I / (G A' L²).  Without shear (``shearing`` infinite) it is the beam of Bernoulli.  It
knows no influence lines, no formulas for sag and nothing of the program.  N, mm.
"""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]


@dataclass
class Frame:
    """Put together with ``bar``, held with ``hold``, loaded with ``push``; then ``solve``."""

    nodes: list[tuple[float, float]]
    bars: list[tuple[int, int, float, float, float]] = field(default_factory=list)
    held: set[int] = field(default_factory=set)
    forces: dict[int, float] = field(default_factory=dict)

    def bar(
        self, a: int, b: int, bending: float, shearing: float = np.inf, axial: float = 1e12
    ) -> None:
        self.bars.append((a, b, bending, shearing, axial))

    def hold(self, node: int, *freedoms: int) -> None:
        """0 along x, 1 along z, 2 turning."""
        self.held |= {3 * node + freedom for freedom in freedoms}

    def push(self, node: int, x: float, z: float, turn: float = 0.0) -> None:
        for freedom, force in enumerate((x, z, turn)):
            self.forces[3 * node + freedom] = self.forces.get(3 * node + freedom, 0.0) + force

    def solve(self) -> Floats:
        """Movements of the nodes, (n, 3)."""
        size = 3 * len(self.nodes)
        stiffness, load = np.zeros((size, size)), np.zeros(size)
        for row in self.bars:
            where = [3 * node + freedom for node in row[:2] for freedom in range(3)]
            turn, local = self._local(*row)
            stiffness[np.ix_(where, where)] += turn.T @ local @ turn
        for freedom, force in self.forces.items():
            load[freedom] = force
        free = [freedom for freedom in range(size) if freedom not in self.held]
        moved = np.zeros(size)
        moved[free] = np.linalg.solve(stiffness[np.ix_(free, free)], load[free])
        return moved.reshape(-1, 3)

    def ends(self, number: int, moved: Floats) -> Floats:
        """Along, across and moment at both ends of a bar, in its own directions, (6,)."""
        row = self.bars[number]
        turn, local = self._local(*row)
        return np.asarray(local @ turn @ np.concatenate([moved[row[0]], moved[row[1]]]))

    def _local(
        self, a: int, b: int, bending: float, shearing: float, axial: float
    ) -> tuple[Floats, Floats]:
        (x0, z0), (x1, z1) = self.nodes[a], self.nodes[b]
        run = float(np.hypot(x1 - x0, z1 - z0))
        c, s = (x1 - x0) / run, (z1 - z0) / run
        number = 12.0 * bending / (shearing * run**2)
        k = bending / (run**3 * (1.0 + number))
        local = np.zeros((6, 6))
        local[np.ix_([0, 3], [0, 3])] = axial / run * np.array([[1.0, -1.0], [-1.0, 1.0]])
        local[np.ix_([1, 2, 4, 5], [1, 2, 4, 5])] = k * np.array(
            [
                [12.0, 6.0 * run, -12.0, 6.0 * run],
                [6.0 * run, (4.0 + number) * run**2, -6.0 * run, (2.0 - number) * run**2],
                [-12.0, -6.0 * run, 12.0, -6.0 * run],
                [6.0 * run, (2.0 - number) * run**2, -6.0 * run, (4.0 + number) * run**2],
            ]
        )
        one = np.array([[c, s, 0.0], [-s, c, 0.0], [0.0, 0.0, 1.0]])
        turn = np.zeros((6, 6))
        turn[:3, :3] = turn[3:, 3:] = one
        return turn, local


def beam(
    marks: Floats, supports: list[float], bending: float, shearing: float, loads: Floats
) -> tuple[Floats, Floats, Frame]:
    """Sag downward and moment (underside stretched) at ``marks``; a load at each of them.

    The supports are among the marks.
    """
    frame = Frame([(float(x), 0.0) for x in marks])
    for node in range(len(marks) - 1):
        frame.bar(node, node + 1, bending, shearing)
    frame.hold(0, 0)
    for x in supports:
        frame.hold(int(np.argmin(np.abs(marks - x))), 1)
    for node, force in enumerate(loads):
        frame.push(node, 0.0, -float(force))
    moved = frame.solve()
    ends = [frame.ends(number, moved) for number in range(len(marks) - 1)]
    moment = np.array([-ends[0][2], *(one[5] for one in ends)])
    return -moved[:, 1], moment, frame
