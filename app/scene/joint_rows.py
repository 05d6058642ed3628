"""The joints of a bench in words, alike ones together, and the sizes that each follows from."""

from __future__ import annotations

from dataclasses import dataclass

from app.scene.preferences import Preferences
from app.scene.stick_rows import StickRow, stick_rows
from app.scene.wording import said
from geometry.bench.bench import Bench
from geometry.bench.influences import influences
from geometry.design.joint import Joint
from geometry.sheets.joint_groups import joint_groups
from geometry.sheets.joint_words import joint_title


@dataclass(frozen=True, slots=True)
class JointRow:
    """Joints that are made alike; ``name`` is that of the first, ``names`` those of all."""

    name: str
    title: str
    size: str
    names: tuple[str, ...]

    @property
    def spoken(self) -> str:
        """The row in words, for a screen reader."""
        return f"{self.title}. {self.size}"


def joint_rows(bench: Bench, preferences: Preferences) -> tuple[JointRow, ...]:
    """A row for each different joint, in the bench's own order."""
    parts = {part.name: part for part in bench.parts}
    return tuple(
        _row(group, joint_title(group, parts), preferences)
        for group in joint_groups(bench.joints, parts)
    )


def joint_sizes(bench: Bench, name: str, preferences: Preferences) -> tuple[StickRow, ...]:
    """The sizes that a joint follows from, those that are a measure of it first."""
    if all(joint.name != name for joint in bench.joints):
        return ()
    rows = {row.name: row for row in stick_rows(bench, preferences)}
    return tuple(rows[each] for each in influences(bench.spec, name) if each in rows)


def _row(group: tuple[Joint, ...], title: str, preferences: Preferences) -> JointRow:
    kind, _, pieces = title.partition(": ")
    return JointRow(
        group[0].name,
        said(kind, preferences),
        said(pieces, preferences),
        tuple(joint.name for joint in group),
    )
