"""A row of values that is made when somebody first looks into it.

A drag lays out a bench at each of its steps, and of most of them nobody asks what a maker marks at
a joint.  What the row is made from must be frozen: it is then the same whenever it is made.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import ParamSpec, TypeVar, overload

T_co = TypeVar("T_co", covariant=True)
P = ParamSpec("P")


class Later(Sequence[T_co]):
    """``make(*args, **kwargs)`` as a tuple, with which it may be compared."""

    __slots__ = ("_made", "_make")

    def __init__(
        self, make: Callable[P, Iterable[T_co]], *args: P.args, **kwargs: P.kwargs
    ) -> None:
        self._make: Callable[[], Iterable[T_co]] | None = lambda: make(*args, **kwargs)
        self._made: tuple[T_co, ...] = ()

    def _all(self) -> tuple[T_co, ...]:
        make = self._make
        if make is not None:
            self._made = tuple(make())
            self._make = None  # and with it all that it holds
        return self._made

    @overload
    def __getitem__(self, index: int) -> T_co: ...
    @overload
    def __getitem__(self, index: slice) -> tuple[T_co, ...]: ...
    def __getitem__(self, index: int | slice) -> T_co | tuple[T_co, ...]:
        return self._all()[index]

    def __len__(self) -> int:
        return len(self._all())

    def __iter__(self) -> Iterator[T_co]:
        return iter(self._all())

    def __eq__(self, other: object) -> bool:
        if isinstance(other, Later):
            return self._all() == other._all()
        return self._all() == other if isinstance(other, tuple) else NotImplemented

    def __hash__(self) -> int:
        return hash(self._all())

    def __repr__(self) -> str:
        return repr(self._all())
