"""The plane of a maker's section in a project file, as the table in ``project_file`` says.

Millimetres and degrees, like all in that file.
"""

from __future__ import annotations

from typing import Any

from exporters.file_fields import (
    fields_of,
    number_of,
    only_known,
    refuse,
    shown,
    text_of,
    with_unit,
)
from geometry.design.cutting_plane import Plane, Way

SECTION_UNITS = {"way": "choice", "place": "mm", "turn": "deg"}
FARTHEST = 100_000.0
"""mm from the origin of the bench's frame; no bench is so large."""


def section_of(content: Any) -> Plane:
    """The plane in a file; BadProjectFile, saying what is wrong, if it is none."""
    fields = fields_of(content, "section")
    only_known(fields, SECTION_UNITS, "section")
    way, place, turn = (
        with_unit(fields.get(name, {}), unit, f"section, {name}")
        for name, unit in SECTION_UNITS.items()
    )
    return Plane(_way(way), _place(place), _turn(turn))


def section_fields(plane: Plane) -> dict[str, str | float]:
    """The values of a plane by their names in the file."""
    return {"way": plane.way.value, "place": plane.at, "turn": plane.turn}


def _way(value: Any) -> Way:
    word = text_of(value, "section, way")
    words = [way.value for way in Way]
    if word not in words:
        refuse(
            f"{shown(word)} is no way in which a section's plane stands.",
            where="section, way",
            remedy=f"It stands {', '.join(words[:-1])} or {words[-1]}.",
        )
    return Way(word)


def _place(value: Any) -> float:
    place = number_of(value, "section, place")
    if abs(place) > FARTHEST:
        refuse("The section's plane stands farther off than any bench.", where="section, place")
    return place


def _turn(value: Any) -> float:
    turn = number_of(value, "section, turn")
    if not -90.0 < turn <= 90.0:
        refuse(
            f"The section's plane is turned by {shown(turn)} degrees.",
            where="section, turn",
            remedy="It should be more than -90 and no more than 90.",
        )
    return turn
