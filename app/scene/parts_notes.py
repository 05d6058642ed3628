"""Parts in words: name, size, and the joints that each is cut for."""

from __future__ import annotations

from dataclasses import dataclass

from app.scene.preferences import Preferences
from app.scene.wording import said, size_text
from geometry.bench.bench import Bench
from geometry.design.joint import Joint
from geometry.design.part import Part
from shared.units import format_length
from shared.words import in_words


@dataclass(frozen=True, slots=True)
class PartRow:
    """One part: ``size`` is its blank, along the grain x across x thick; ``joints`` their kinds."""

    name: str
    title: str
    size: str
    material: str
    joints: tuple[str, ...]

    @property
    def spoken(self) -> str:
        """The row in words, for a screen reader."""
        joints = "; ".join(self.joints) or "no joints"
        return f"{self.title}: {self.size}, {self.material}. {joints}"


def part_rows(bench: Bench, preferences: Preferences) -> tuple[PartRow, ...]:
    """A row for each part, in the bench's own order."""
    titles = {part.name: part.title for part in bench.parts}
    return tuple(_row(part, bench.joints, titles, preferences) for part in bench.parts)


def _row(
    part: Part, joints: tuple[Joint, ...], titles: dict[str, str], preferences: Preferences
) -> PartRow:
    return PartRow(
        part.name,
        said(part.title, preferences),
        blank_text(part, preferences),
        in_words(part.material, preferences.words),
        tuple(
            _joint_text(joint, part.name, titles, preferences)
            for joint in joints
            if part.name in joint.parts
        ),
    )


def blank_text(part: Part, preferences: Preferences) -> str:
    """``1219 × 381 × 19 mm``: length, width and thickness of the blank."""
    blank = part.shape.blank
    sizes = (blank.length, blank.width, blank.thickness)
    text = " × ".join(format_length(size, preferences.shown) for size in sizes)
    return f"{text} {preferences.shown.unit}"


def _joint_text(joint: Joint, name: str, titles: dict[str, str], preferences: Preferences) -> str:
    """``Stopped housing with Top: depth 9.5 mm, …``; the joint's own numbers."""
    other = joint.parts[1] if joint.parts[0] == name else joint.parts[0]
    kind = joint.kind[:1].upper() + joint.kind[1:]
    measures = ", ".join(
        f"{_spoken(measure.name)} {size_text(measure.value, measure.unit, preferences)}"
        for measure in joint.measures
    )
    text = f"{kind} with {titles.get(other, other)}"
    return said(f"{text}: {measures}" if measures else text, preferences)


def _spoken(name: str) -> str:
    """``stop_from_front`` as a person says it."""
    return name.replace("_", " ")
