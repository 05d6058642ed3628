"""Small notes beside the pointer, in words."""

from __future__ import annotations

from app.gestures.moments import Handle
from app.scene.model import Model
from app.scene.parts_notes import part_rows
from app.scene.preferences import Preferences
from app.scene.wording import said, size_text, value_text
from geometry.bench.bench import Bench
from geometry.bench.catalogue import parameter
from geometry.bench.derived import Derived
from geometry.bench.limits import Limits, limits
from geometry.bench.through import settable, size_limits
from geometry.sheets.joint_words import joint_title

_AT_ITS_LIMIT = 1e-3  # mm or degrees


def value_note(model: Model, name: str, preferences: Preferences, stopped_by: str = "") -> str:
    """A value under the hand: its name and size, and why it stops there."""
    size = settable(model.bench.derived, name)
    if size is not None:
        return _size_note(model, size, preferences, stopped_by)
    row = parameter(name)
    value = value_text(row, model.spec.value(name), preferences)
    unit = f" {preferences.shown.unit}" if row.unit == "mm" else ""
    first = said(f"{row.title} {value}{unit}", preferences)
    return f"{first}\n{sentence(said(stopped_by, preferences))}" if stopped_by else first


def _size_note(model: Model, size: Derived, preferences: Preferences, stopped_by: str) -> str:
    """The same of a size that is set through the value that it follows."""
    first = f"{size.title} ({size_text(size.value, size.unit, preferences)})"
    if not stopped_by:
        return said(f"{first}\nFollows from {size.follows_from}.", preferences)
    allowed = size_limits(model.spec, size)
    if size.value > allowed.maximum - _AT_ITS_LIMIT:
        stopped_by = allowed.why_maximum
    elif size.value < allowed.minimum + _AT_ITS_LIMIT:
        stopped_by = allowed.why_minimum
    return said(f"{first}\n{sentence(stopped_by)}", preferences)


def handle_note(model: Model, handle: Handle, preferences: Preferences) -> str:
    """What lies under a resting pointer: a value to pull or type, or what it follows from."""
    if handle.pull is not None:
        return value_note(model, handle.pull.name, preferences)
    dimension = model.dimension_named[handle.dimension]
    value = size_text(dimension.value, dimension.unit, preferences)
    return said(f"{dimension.title} ({value})\nFollows from {dimension.follows_from}.", preferences)


def row_note(model: Model, name: str, preferences: Preferences, stopped_by: str = "") -> str:
    """What a row of the story stick is, and how far its value can go just now."""
    derived = next((row for row in model.bench.derived if row.name == name), None)
    if derived is not None:
        first = f"{derived.title}: follows from {derived.follows_from}."
        if not derived.through:
            return said(first, preferences)
        if stopped_by:
            return value_note(model, name, preferences, stopped_by)
        reach = _reach(size_limits(model.spec, derived), derived.unit, preferences)
        return said(f"{first}\n{reach}", preferences)
    row = parameter(name)
    if stopped_by:
        return said(f"{row.title}: {sentence(stopped_by)}", preferences)
    lines = [f"{row.title}: {row.description}"]
    if row.is_number:
        lines.append(_reach(limits(model.spec, name), row.unit, preferences))
    return said("\n".join(lines), preferences)


def _reach(allowed: Limits, unit: str, preferences: Preferences) -> str:
    """How far a value can go."""
    low, high = (size_text(end, unit, preferences) for end in (allowed.minimum, allowed.maximum))
    return f"From {low} to {high}{f' {preferences.shown.unit}' if unit == 'mm' else ''}."


def sheet_text(model: Model, preferences: Preferences) -> str:
    """The drawing in words: every dimension by view, for those who cannot see it."""
    views: dict[str, list[str]] = {}
    for each in model.dimensions:
        value = size_text(each.value, each.unit, preferences)
        shown = value if each.parameter else f"({value})"
        views.setdefault(each.view, []).append(f"{each.title} {shown}")
    lines = [f"{view}: {', '.join(texts)}." for view, texts in views.items()]
    how = "Tab goes from dimension to dimension, arrow keys change one, Enter types it."
    return said(" ".join([*lines, how]), preferences)


def part_note(model: Model, name: str, preferences: Preferences) -> str:
    """A part: its name, its size, and the kinds of its joints."""
    row = next(row for row in part_rows(model.bench, preferences) if row.name == name)
    joints = [joint.split(":")[0] for joint in row.joints]
    return "\n".join([row.title, row.size, *joints])


def joint_note(bench: Bench, name: str, preferences: Preferences) -> str:
    """A joint whose seam is lit, and what a click does there."""
    joint = next(joint for joint in bench.joints if joint.name == name)
    title = joint_title((joint,), {part.name: part for part in bench.parts})
    return said(f"{title}\nClick to open its detail.", preferences)


def sentence(reason: str) -> str:
    """A reason as a sentence."""
    text = reason.strip()
    return text[:1].upper() + text[1:] + ("" if text.endswith((".", "!")) else ".") if text else ""
