"""What a template says of itself: what it is of, for which pieces it serves, and how it is laid.

Lengths stand in the words as ``{12.7 mm}``, to be written in the maker's unit at the border.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from geometry.design.part import Part
from geometry.primitives.frame import scale
from geometry.sheets.part_names import group_title, listed, own_name
from geometry.sheets.standing_words import way
from geometry.sheets.template_uses import Laying, Margins, Use
from shared.units import length_mark


def template_titles(templates: Sequence[Sequence[Use]]) -> tuple[str, ...]:
    """'Drawer side, left end': what all pieces of a template are, and which region as it is
    printed; of templates that would have the same title each names its pieces."""
    plain = [f"{_shared(uses)}{_region(uses[0])}" for uses in templates]
    times = Counter(plain)
    return tuple(
        title if times[title] == 1 else _own_title(uses)
        for title, uses in zip(plain, templates, strict=True)
    )


def _own_title(uses: Sequence[Use]) -> str:
    shared = _shared(uses)
    names = listed([own_name(part, shared) for part in uses[0].parts])
    return f"{shared}, {names}{_region(uses[0])}"


def amounts(uses: Sequence[Use]) -> str:
    """'make 4', '2 as printed, 2 turned over' for so many pieces, or 'make 2, also turned over' for
    other places on the same."""
    if len(uses) == 1:
        return f"make {len(uses[0].parts)}"
    if len(_all(uses)) == len(uses[0].parts):
        others = dict.fromkeys(_how(use.laying) for use in uses[1:])
        return f"make {len(uses[0].parts)}, also {', '.join(others)}"
    told: dict[str, int] = {}
    for use in uses:
        how = _how(use.laying)
        told[how] = told.get(how, 0) + len(use.parts)
    return ", ".join(f"{count} {how}" for how, count in told.items())


def printed_words(uses: Sequence[Use]) -> str:
    """How the template lies as it is printed, and on which pieces."""
    first = uses[0]
    ends = {way(scale(part.frame.x_axis, -1.0)) for part in first.parts}
    stands = f" ({ends.pop()} in the bench)" if len(ends) == 1 else ""
    return (
        f"As printed, face side up, face edge at the top, left end{stands} at the left: "
        f"{_pieces(first, _shared(uses))}."
    )


def other_words(uses: Sequence[Use]) -> tuple[str, ...]:
    """How it is laid on the other pieces that it serves for."""
    return tuple(
        f"{how[:1].upper()}{how[1:]}: {'; '.join(pieces)}."
        for how, pieces in _otherwise(uses, sides=True).items()
    )


def served(uses: Sequence[Use]) -> tuple[str, ...]:
    """The pieces in short, those it is laid on otherwise after how."""
    others = _otherwise(uses, sides=False).items()
    first = _pieces(uses[0], _shared(uses))
    return (first, *(f"{how}: {'; '.join(pieces)}" for how, pieces in others))


def _otherwise(uses: Sequence[Use], *, sides: bool) -> dict[str, list[str]]:
    """Pieces by what is done with the paper, and on which of their sides it lies."""
    shared = _shared(uses)
    found: dict[str, list[str]] = {}
    for use in uses[1:]:
        side = ", reverse up" if use.laying.reverse else ", face side up"
        how = _how(use.laying) + (side if sides else "")
        found.setdefault(how, []).append(_placed(use, uses, shared))
    return found


def _placed(use: Use, uses: Sequence[Use], shared: str) -> str:
    """The pieces, where on them, and what changes places if that does not say so."""
    region = _region(use)
    changed = [
        what
        for what, margins, changes in (
            ("ends", use.along, use.laying.ends),
            ("edges", use.across, use.laying.edges),
        )
        if changes and margins.is_like(margins.changed)
    ]
    if set(use.parts) == set(uses[0].parts):
        words = f"the {region.removeprefix(', ')} of the same"
    else:
        words = _pieces(use, shared) + (region if region != _region(uses[0]) else "")
    return f"{words}, its {' and '.join(changed)} changed" if changed else words


def _how(laying: Laying) -> str:
    """What is done with the paper."""
    if laying.over:
        return "turned over"
    return "turned round" if laying.ends and laying.edges else "as printed"


def _shared(uses: Sequence[Use]) -> str:
    """What the titles of all its pieces begin with, or the kinds of piece that they are."""
    parts = list(_all(uses))
    if len({part.title.split()[0] for part in parts}) == 1:
        return group_title(parts)
    return " / ".join(sorted({part.title.split(",")[0] for part in parts}))


def _all(uses: Sequence[Use]) -> dict[Part, None]:
    return {part: None for use in uses for part in use.parts}


def _pieces(use: Use, shared: str) -> str:
    """'back left and front right', or the title of a piece that stands alone."""
    names = listed([own_name(part, shared) for part in use.parts])
    return f"{shared} {names}" if names[0].isdigit() else names


def _region(use: Use) -> str:
    """Where on a piece, empty for the whole of it."""
    return f"{_along(use.along, use.parts[0].shape.blank.length)}{_across(use.across)}"


def _along(margins: Margins, length: float) -> str:
    if margins.whole:
        return ""
    if not margins.before:
        return ", left end"
    if not margins.behind:
        return ", right end"
    return f", {_mm(margins.before)} to {_mm(length - margins.behind)} from the left end"


def _across(margins: Margins) -> str:
    if margins.whole:
        return ""
    if not margins.before:
        return ", at the face edge"
    if not margins.behind:
        return ", at the far edge"
    return f", from {_mm(margins.before)} off the face edge"


def _mm(value: float) -> str:
    return length_mark(round(value, 1))
