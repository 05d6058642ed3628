"""The words on a part's page: what it is, how many, of what."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from geometry.design.part import Part
from geometry.drawing.marks import Label, Mark, Role
from geometry.primitives.frame import Vec2
from geometry.sheets.layout import Layout
from geometry.sheets.lettering_fit import fitted
from geometry.sheets.marked_part import NEAR, marked_part
from geometry.sheets.part_names import listed, own_names
from geometry.sheets.standing_words import standings
from geometry.sheets.text_block import TextBlock, paragraph
from geometry.sheets.trim import proud_words
from shared.materials import METALS
from shared.units import format_length, in_units
from shared.words import in_words

_DRAWN = "Drawn face side up, face edge at the top."
_TITLE_HEIGHT = 5.0
_SMALL = 2.5
_AFTER_TITLE = 3.0
_AFTER_HEAD = 6.0


@dataclass(frozen=True, slots=True)
class Called:
    """A page's title, whether that names all of its pieces, the sentence on pages of pieces that
    are their mirror images, and the names of the full-size templates of its pieces."""

    title: str
    tells_all: bool = False
    kin: str = ""
    templates: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Head:
    """The title of a page and the lines below it."""

    title: str
    text: TextBlock

    @property
    def height(self) -> float:
        return _TITLE_HEIGHT + _AFTER_TITLE + self.text.height + _AFTER_HEAD

    def marks(self, corner: Vec2, width: float) -> tuple[Mark, ...]:
        """The head with its upper left corner at ``corner``."""
        x, y = corner
        text, height = fitted(self.title, width, _TITLE_HEIGHT, bold=True)
        title = Label(Role.TITLE, text, (x, y - _TITLE_HEIGHT), height, bold=True)
        return (title, *self.text.marks((x, y - _TITLE_HEIGHT - _AFTER_TITLE)))


def head(parts: Sequence[Part], called: Called, layout: Layout, width: float) -> Head:
    """What is said at the top of the page."""
    first, names = parts[0], own_names(parts)
    words, shown = layout.words, layout.shown
    blank = first.shape.blank
    size = " × ".join(
        format_length(value, shown) for value in (blank.length, blank.width, blank.thickness)
    )
    grain = _grain(first)
    material = first.material[:1].upper() + first.material[1:]
    sentences = [f"{in_words(material, words)}, blank {size} {shown.unit}, {grain}."]
    if len(parts) > 1 and not called.tells_all:
        sentences.append(f"For: {listed(names)}.")
    sentences += [called.kin, f"{_DRAWN} {standings(parts, names)}"]
    if called.templates:
        word = "Templates" if len(called.templates) > 1 else "Template"
        sentences.append(f"{word} at full size: {', '.join(called.templates)}.")
    sentences += [*proud_words(first), *(_sentence(note) for note in first.notes)]
    if first.shape.cuts:
        sentences.append(
            f"Lengths {_lengths_from(first)}, widths from the face edge (V), depths from the face "
            "side (loop)."
        )
    told = [in_words(in_units(sentence, shown), words) for sentence in sentences]
    title = f"{in_words(called.title, words)} – make {len(parts)}"
    return Head(title, paragraph(told, width, _SMALL))


def _lengths_from(part: Part) -> str:
    """Where an end slants, the two edges begin at different places."""
    marked = marked_part(part.shape)
    if marked.slanted_shoulders:
        return "from the left shoulder or the outermost end (in the table from that)"
    near, far = (marked.edge_ends(is_far)[0][0] for is_far in (False, True))
    if abs(near - far) < NEAR:
        return "from the left end"
    return "along an edge from its left corner (in the table from the outermost)"


def _grain(part: Part) -> str:
    if part.material in METALS:
        return "bought"
    if not part.solid_timber:
        return "sheet"
    return f"grain along the {'width' if part.grain_across else 'length'}"


def _sentence(note: str) -> str:
    """A note with a capital and a full stop."""
    end = "" if note.endswith((".", "!", "?")) else "."
    return f"{note[:1].upper()}{note[1:]}{end}"
