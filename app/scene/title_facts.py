"""What the title strip says: the bench in a few numbers, alive under the hand."""

from __future__ import annotations

from app.scene.model import Model
from app.scene.preferences import Preferences
from geometry.design.project import Project
from geometry.solids.measure import volume_of
from shared.materials import weight_of
from shared.units import format_length, format_weight
from shared.words import in_words

Cell = tuple[str, str]
"""A small word and what stands under it."""


def title_cells(
    project: Project, model: Model, preferences: Preferences, findings_text: str, scale: float
) -> tuple[Cell, ...]:
    """Title, then the rest by how much it matters: a narrow strip leaves out the last."""
    shown, words = preferences.shown, preferences.words
    seat = next(row.value for row in model.bench.derived if row.name == "seat_height")
    cells = (
        ("Title", project.title or "Untitled bench"),
        ("Seat height", format_length(seat, shown, with_unit=True)),
        ("Length × depth × height", overall_text(model, preferences)),
        ("Findings", findings_text),
        ("Weight", format_weight(weight(model), shown)),
        ("Timber", in_words(model.spec.word("timber"), words)),
        ("On screen", _scale_text(scale)),
    )
    return tuple((in_words(label, words), value) for label, value in cells)


def overall_text(model: Model, preferences: Preferences) -> str:
    """The box that the bench stands in, legs and all."""
    sizes = overall_sizes(model)
    text = " × ".join(format_length(size, preferences.shown) for size in sizes)
    return f"{text} {preferences.shown.unit}"


def overall_sizes(model: Model) -> tuple[float, float, float]:
    """Length, depth and height in mm, from the views' outlines."""
    front, plan = (linework.bounds() for linework in model.lineworks[:2])
    return (plan[2] - plan[0], plan[3] - plan[1], front[3] - front[1])


def weight(model: Model) -> float:
    """The finished bench in kg, without glue and finish."""
    return sum(weight_of(volume_of(part.shape), part.material) for part in model.bench.parts)


def _scale_text(scale: float) -> str:
    return f"about 1 : {1.0 / scale:.2g}" if scale < 1.0 else f"about {scale:.2g} : 1"
