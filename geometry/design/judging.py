"""How a maker judges a bench: limits of their own, and findings set aside with a reason.

Kept with the project.  A limit that is not here has its default; a finding is known by the name of
its check and its parts, so that it stays set aside while its number changes a little.
"""

from __future__ import annotations

import unicodedata
from dataclasses import dataclass, replace

from shared.errors import UnreadableValue

REASON_LIMIT = 300
"""Characters: one sentence, as it is printed beside the finding."""

FindingKey = tuple[str, tuple[str, ...]]
"""The check's name and the names of the parts."""


@dataclass(frozen=True, slots=True)
class SetAside:
    """One finding that the maker has looked at and does not mind, with the reason why.

    ``amount`` and ``level`` (the word of it) are those that it was let be with, in the finding's
    own unit; None and empty where that is not known.

    Raises UnreadableValue for no reason at all, or one that cannot stand on a drawing.
    """

    check: str
    parts: tuple[str, ...]
    reason: str
    amount: float | None = None
    level: str = ""

    def __post_init__(self) -> None:
        text = self.reason
        if not text.strip():
            raise UnreadableValue(
                "A finding is set aside only with a reason.",
                where="Reason",
                remedy="Write why it does not matter here.",
            )
        if len(text) > REASON_LIMIT:
            raise UnreadableValue(
                f"The reason has {len(text)} characters, and there is room for {REASON_LIMIT}.",
                where="Reason",
                remedy="Shorten it.",
            )
        if any(unicodedata.category(one) in ("Cc", "Cs", "Zl", "Zp") for one in text):
            raise UnreadableValue(
                "The reason has a character that cannot be drawn.",
                where="Reason",
                remedy="Take it out, or type the text again.",
            )

    @property
    def key(self) -> FindingKey:
        return self.check, self.parts


@dataclass(frozen=True, slots=True)
class Judging:
    """``limits`` are names and values that differ from the defaults, sorted by name."""

    limits: tuple[tuple[str, float], ...] = ()
    set_aside: tuple[SetAside, ...] = ()

    def with_limit(self, name: str, value: float | None) -> Judging:
        """The same with one limit changed; None gives the default back."""
        kept = {known: number for known, number in self.limits if known != name}
        if value is not None:
            kept[name] = value
        return replace(self, limits=tuple(sorted(kept.items())))

    def setting_aside(self, one: SetAside) -> Judging:
        """The same with a finding set aside; an earlier reason for it gives way."""
        return replace(self, set_aside=(*self._without(one.key), one))

    def taking_up(self, key: FindingKey) -> Judging:
        """The same with a finding taken up again."""
        return replace(self, set_aside=self._without(key))

    def let_be(self, key: FindingKey) -> SetAside | None:
        """How a finding was set aside; None when it was not."""
        return next((one for one in self.set_aside if one.key == key), None)

    def _without(self, key: FindingKey) -> tuple[SetAside, ...]:
        return tuple(one for one in self.set_aside if one.key != key)


AS_FOUND = Judging()
"""All limits at their defaults and nothing set aside."""
