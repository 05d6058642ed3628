"""A row that is made when it is first looked into."""

from __future__ import annotations

from geometry.design.joint import Joint, Measure
from geometry.design.later import Later


def joint(measures: object) -> Joint:
    return Joint("a", "mitre", ("left", "right"), 0.0, (), (), measures, ())  # type: ignore[arg-type]


def test_it_is_made_once_and_only_when_asked() -> None:
    made: list[int] = []

    def row(upto: int) -> range:
        made.append(upto)
        return range(upto)

    later = Later(row, 3)
    assert not made
    assert [later[0], later[-1], len(later), *later] == [0, 2, 3, 0, 1, 2]
    assert later[1:] == (1, 2)
    assert made == [3]


def test_it_is_as_good_as_the_tuple() -> None:
    """Equal joints are one to every cache, whenever their measures were made."""
    size = Measure("depth", 6.0, "mm", "below the face")
    now, later = joint((size,)), joint(Later(lambda: (size,)))
    assert now == later
    assert later == now
    assert hash(now) == hash(later)
    assert joint(Later(lambda: (size,))) == later
    assert joint(Later(tuple)) != later
    assert joint(Later(tuple)) != now
    assert repr(later.measures) == repr(now.measures)
