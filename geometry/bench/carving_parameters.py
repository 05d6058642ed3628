"""The numbers and choices of carved fronts and of finger grooves."""

from __future__ import annotations

from geometry.bench.carving_pattern import (
    LEAST_POINTS,
    MOST_POINTS,
    moved_text,
    read_moved,
    told_points,
)
from geometry.bench.drawer_parameters import MOST_DRAWERS
from geometry.bench.openings import MOST_OPENINGS
from geometry.design.parameter import Parameter, choice, count, length, text
from geometry.design.spec import BenchSpec
from shared.errors import UnreadableValue
from shared.units import MM_PER_INCH

PLAIN, FACETED = "plain", "faceted"
SCATTERED, MIRRORED = "scattered", "mirrored"
NO_GROOVE, TOP_EDGE, BOTTOM_EDGE = "none", "top edge", "bottom edge"
ALL_FRONTS = "all"

# common practice, no source: a cove bit of a quarter of an inch
GROOVE_RADIUS = MM_PER_INCH / 4.0


def read_fronts(value_text: str) -> frozenset[tuple[int, int]]:
    """The fronts in such a text as 1.2, 2.1: opening and drawer; none for all of them.

    UnreadableValue says what would be right.
    """
    words = value_text.replace(",", " ").replace(";", " ").casefold().split()
    if not words or words == [ALL_FRONTS]:
        return frozenset()
    return frozenset(_front(word) for word in words)


def _front(word: str) -> tuple[int, int]:
    opening, point, drawer = word.partition(".")
    if point and opening.isascii() and opening.isdigit() and drawer.isascii() and drawer.isdigit():
        found = (int(opening), int(drawer))
        if 1 <= found[0] <= MOST_OPENINGS and 1 <= found[1] <= MOST_DRAWERS:
            return found
    raise UnreadableValue(
        f"{word[:20]!r} is no drawer.",
        remedy="Write all, or opening and drawer of each, counted from the left and from the top, "
        "such as 1.1, 1.2.",
    )


def fronts_text(fronts: frozenset[tuple[int, int]]) -> str:
    """As it is kept: ``all``, or ``1.1, 1.2``."""
    return ", ".join(f"{opening}.{drawer}" for opening, drawer in sorted(fronts)) or ALL_FRONTS


def carved(spec: BenchSpec) -> bool:
    return spec.word("carving") == FACETED


def grooved(spec: BenchSpec) -> bool:
    return spec.word("finger_groove") != NO_GROOVE


PARAMETERS: tuple[Parameter, ...] = (
    choice(
        "carving",
        "Carving of the fronts",
        "Carved fronts",
        PLAIN,
        (PLAIN, FACETED),
        "A faceted relief that runs over the fronts as one picture, or none.",
    ),
    text(
        "carved_fronts",
        "Which fronts",
        "Carved fronts",
        ALL_FRONTS,
        "All, or opening and drawer of each, such as 1.1, 1.2, counted from the left and the top.",
        read=lambda value_text: fronts_text(read_fronts(value_text)),
        applies=carved,
    ),
    count(
        "carving_seed",
        "Seed",
        "Carved fronts",
        1,
        1,
        9999,
        "The number that the pattern is scattered from: another seed, another pattern.",
        applies=carved,
    ),
    count(
        "carving_points",
        "Points",
        "Carved fronts",
        18,
        LEAST_POINTS,
        MOST_POINTS,
        "Points in which facets meet, the four corners with them; mirrored, those of one half.",
        applies=carved,
    ),
    length(
        "carving_depth",
        "Depth of the carving",
        "Carved fronts",
        6,
        0.5,
        30,
        "From the face of the fronts to the deepest that a point may lie.",
        step=0.5,
        applies=carved,
    ),
    choice(
        "carving_mirror",
        "Pattern",
        "Carved fronts",
        SCATTERED,
        (SCATTERED, MIRRORED),
        "Scattered over the whole picture, or over its left half and mirrored.",
        applies=carved,
    ),
    length(
        "carving_least",
        "Least thickness left",
        "Carved fronts",
        8,
        2,
        40,
        "What the carving must leave of a front; held while a point is pulled.",
        step=0.5,
        applies=carved,
    ),
    text(
        "carving_moved",
        "Points moved by hand",
        "Carved fronts",
        "",
        "Number of each, and how far across the picture, up it and deep it is, in per cent of the "
        "width, the height and the depth, such as 7: 31.5 across, 60 up, 40 deep, or 7 31.5 60 40 "
        "for short; with semicolons between.",
        read=lambda value_text: moved_text(read_moved(value_text)),
        tell=lambda kept: told_points(read_moved(kept)),
        applies=carved,
    ),
    choice(
        "finger_groove",
        "Finger groove",
        "Finger groove",
        NO_GROOVE,
        (NO_GROOVE, TOP_EDGE, BOTTOM_EDGE),
        "A cove along the back of the fronts' top or bottom edge, to pull them by.",
    ),
    length(
        "finger_radius",
        "Radius of the groove",
        "Finger groove",
        GROOVE_RADIUS,
        1.5,
        12,
        "Of the cove: as deep into the front as it is high.",
        step=0.5,
        applies=grooved,
    ),
    length(
        "finger_land",
        "Land in front of the groove",
        "Finger groove",
        4,
        1,
        20,
        "The least wood between the groove and the face; held while a point is pulled.",
        step=0.5,
        applies=grooved,
    ),
)
