"""Undo and redo over frozen values: every state is kept whole, so nothing can go half-way back.

States share all that did not change, so a thousand steps cost little more than one.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Generic, TypeVar

T = TypeVar("T")

MOST_STEPS = 5000


@dataclass(frozen=True, slots=True)
class Step(Generic[T]):
    """A state, and the words for the change that led to it."""

    state: T
    words: str


class History(Generic[T]):
    """A line of states with a place in it, and a mark at the one that is on disk."""

    def __init__(self, state: T) -> None:
        self._steps: list[Step[T]] = [Step(state, "")]
        self._place = 0
        self._saved: int | None = 0

    @property
    def state(self) -> T:
        return self._steps[self._place].state

    def do(self, state: T, words: str) -> bool:
        """Add a step after the present one; False, and no step, when nothing changed."""
        if state == self.state:
            return False
        if self._saved is not None and self._saved > self._place:
            self._saved = None
        del self._steps[self._place + 1 :]
        self._steps.append(Step(state, words))
        self._place += 1
        self._drop_oldest()
        return True

    def amend(self, state: T) -> bool:
        """The present state otherwise, which is no step; False when nothing changed."""
        if state == self.state:
            return False
        self._steps[self._place] = Step(state, self.undo_words)
        if self._saved == self._place:
            self._saved = None
        return True

    def undo(self) -> bool:
        """One step back; False at the beginning."""
        if not self._place:
            return False
        self._place -= 1
        return True

    def redo(self) -> bool:
        """One step forward again; False at the end."""
        if self._place == len(self._steps) - 1:
            return False
        self._place += 1
        return True

    @property
    def undo_words(self) -> str:
        """What undo would take back; empty at the beginning."""
        return self._steps[self._place].words

    @property
    def redo_words(self) -> str:
        """What redo would do again; empty at the end."""
        ahead = self._place + 1
        return self._steps[ahead].words if ahead < len(self._steps) else ""

    @property
    def can_redo(self) -> bool:
        return self._place + 1 < len(self._steps)

    @property
    def undo_count(self) -> int:
        return self._place

    def mark_saved(self) -> None:
        self._saved = self._place

    def mark_unsaved(self) -> None:
        """No state of this line is on disk (recovered work, a save that failed)."""
        self._saved = None

    @property
    def saved(self) -> bool:
        """True when the present state is the one on disk."""
        return self._saved == self._place

    def _drop_oldest(self) -> None:
        excess = len(self._steps) - 1 - MOST_STEPS
        if excess > 0:
            del self._steps[:excess]
            self._place -= excess
            if self._saved is not None:
                self._saved = self._saved - excess if self._saved >= excess else None
