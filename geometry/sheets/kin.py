"""Which groups of parts are mirror images of one another, or the same piece laid otherwise.

Frame: each part's own; a mirror is told by what changes places in it: the ends (x), the edges (y),
the faces (z).
"""

from __future__ import annotations

from collections.abc import Sequence

from geometry.design.part import Part
from geometry.solids.likeness import Turn, as_in_a_mirror, is_mirror

_MIRRORS: dict[Turn, str] = {
    # what changes places
    (-1, 2, 3): "the left and the right end",
    (1, -2, 3): "the face edge and the far edge",
    (1, 2, -3): "the face side and the reverse",
    (-1, -2, -3): "the two ends, the two edges and the two faces",
    (1, 3, 2): "the face side and the face edge",
    (1, -3, -2): "the face side and the far edge",
}
_TURNED: dict[Turn, str] = {
    (-1, -2, 3): "turned round on its reverse",
    (-1, 2, -3): "turned over end for end",
    (1, -2, -3): "turned over edge for edge",
    (1, 3, -2): "given a quarter of a turn",
    (1, -3, 2): "given a quarter of a turn",
}
_MOST = 3  # groups that one page names


def kin_words(groups: Sequence[Sequence[Part]], titles: Sequence[str]) -> tuple[str, ...]:
    """For each group a sentence on those that are its mirror images, or the same turned; empty
    where there are none."""
    told: list[list[str]] = [[] for _ in groups]
    for i, first in enumerate(groups):
        for j, second in enumerate(groups[:i]):
            turn = _kin(first[0], second[0])
            if turn is not None:
                told[i].append(_words(turn, titles[j]))
                told[j].append(_words(turn, titles[i]))
    return tuple(" ".join(each[:_MOST]) for each in told)


def _kin(first: Part, second: Part) -> Turn | None:
    if (first.kind, first.material, first.grain_across) != (
        second.kind,
        second.material,
        second.grain_across,
    ):
        return None
    return as_in_a_mirror(first.shape, second.shape)


def _words(turn: Turn, title: str) -> str:
    if is_mirror(turn):
        changed = f": {_MIRRORS[turn]} change places" if turn in _MIRRORS else ", turned"
        return f"Mirror image of {title}{changed}."
    return f"The same piece as {title}, {_TURNED.get(turn, 'turned')}."
