"""The words on a joint's detail: what it joins, which others are like it, and its measures."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from geometry.design.faces import FACES
from geometry.design.joint import Joint, Measure
from geometry.design.part import Part
from geometry.joints.clearances import BETWEEN, CLEARANCES
from geometry.primitives.frame import dot
from geometry.sheets.joint_lines import marked_lines
from geometry.sheets.joint_plan import Unplaced
from geometry.sheets.layout import Layout
from geometry.sheets.text_block import NO_TEXT, TextBlock, paragraph, table
from geometry.views.view import View
from shared.units import angle_mark, format_angle, format_length, in_units, length_mark
from shared.words import in_words

_SMALL = 2.5  # mm, capitals
_LEAST_DEG = 0.05
_HEAD = "Measures, and what they are measured from"
_MOST_PAIRED = 16  # joints whose two parts are both named
LISTED = 6  # joints whose sizes are told one by one where they differ

_FROM = (
    # seen from, the unit direction there
    ("the front", (0.0, -1.0, 0.0)),
    ("the back", (0.0, 1.0, 0.0)),
    ("the left", (-1.0, 0.0, 0.0)),
    ("the right", (1.0, 0.0, 0.0)),
    ("above", (0.0, 0.0, 1.0)),
    ("below", (0.0, 0.0, -1.0)),
)
_SQUARE = math.cos(math.radians(0.5))

_SIDES = {
    "face": "face side",
    "edge": "face edge",
    "reverse": "reverse",
    "far edge": "far edge",
}


def joint_title(joints: Sequence[Joint], parts: Mapping[str, Part]) -> str:
    """'Stopped housing: Bottom and Partition 1', and how many there are of it."""
    first, second = (_short_title(joints, parts, index) for index in (0, 1))
    kind = joints[0].kind
    count = f" ({len(joints)} alike)" if len(joints) > 1 else ""
    return f"{kind[:1].upper()}{kind[1:]}: {first} and {second}{count}"


def joint_head(
    joints: Sequence[Joint], parts: Mapping[str, Part], layout: Layout, width: float
) -> TextBlock:
    """Where its like is found."""
    if len(joints) == 1:
        return NO_TEXT
    pairs = [" and ".join(parts[name].title for name in joint.parts) for joint in joints]
    if len(joints) > _MOST_PAIRED:
        # So many are told by the pieces that they are in.
        pairs = list(dict.fromkeys(parts[joint.parts[0]].title for joint in joints))
    told = in_words(f"For: {'; '.join(pairs)}.", layout.words)
    return paragraph([told], width, _SMALL)


def measure_rows(
    joints: Sequence[Joint],
    parts: Mapping[str, Part],
    unplaced: Sequence[Unplaced],
    layout: Layout,
    listed: int = LISTED,
) -> list[tuple[str, str]]:
    """The sizes of a joint and its like, and of what; one that differs from joint to joint is told
    for each, if there are no more than so many ``listed``."""
    way = (layout, listed)
    measures = zip(*(joint.measures for joint in joints), strict=True)
    rows = _merged([_row(joints, parts, each, way) for each in measures if _is_told(each)])
    rows += [_row(joints, parts, places(joints, parts, one), way) for one in unplaced]
    if joints[0].fit > 0.0:
        clearance = f"Clearance: {CLEARANCES.get(joints[0].kind, BETWEEN)}"
        rows.append((format_length(joints[0].fit, layout.shown), clearance))
    return [(size, in_words(in_units(what, layout.shown), layout.words)) for size, what in rows]


def measures_table(rows: Sequence[tuple[str, str]], layout: Layout, width: float) -> TextBlock:
    """The rows under their headings."""
    head = (layout.shown.unit, in_words(_HEAD, layout.words))
    return table(head, rows, width, _SMALL) if rows else NO_TEXT


def places(
    joints: Sequence[Joint], parts: Mapping[str, Part], one: Unplaced
) -> tuple[Measure, ...]:
    """Where along a part each of some joints begins, from the end where its x begins, the face
    edge or the face side; only its words are the first's."""
    found = []
    told = [parts[joint.parts[one.index]] for joint in joints]
    # Of pieces that stand either way up no end is told by where it is.
    ends = {part.ends for part in told}
    faces = (ends.pop() if len(ends) == 1 else FACES[0], *FACES[1:])
    for joint, part in zip(joints, told, strict=True):
        lines = marked_lines(joint, part, one.index)
        at = lines.first(one.axis) - float(lines.limits[0, one.axis])
        face, _ = faces[one.axis]
        words = f"place on {_called(part)}, from its {face} to the joint's nearest line"
        found.append(Measure("place", at, "mm", words))
    return tuple(found)


def seen_from(view: View) -> str:
    """How a section is looked at: from a side of the bench, or along the joint."""
    for words, direction in _FROM:
        if dot(view.toward, direction) > _SQUARE:
            return f"from {words}"
    return "looking along the joint"


def short_titles(parts: Sequence[Part]) -> tuple[str, ...]:
    """The titles of two parts up to the first comma, if that tells them apart."""
    heads = tuple(part.title.split(",")[0] for part in parts)
    return heads if len(set(heads)) == len(heads) else tuple(part.title for part in parts)


def side_words(side: str, part: Part) -> str:
    """A side of a part in the maker's words."""
    near, far = part.ends
    return {"end": far, "far end": near}.get(side) or _SIDES[side]


def _is_told(measures: Sequence[Measure]) -> bool:
    """An angle of nothing is none: what is square is seen."""
    return any(one.unit != "deg" or one.value > _LEAST_DEG for one in measures)


def _merged(rows: Sequence[tuple[str, str]]) -> list[tuple[str, str]]:
    """Rows that differ in their last words alone, such as a stop on the left and on the right side,
    as one."""
    found: list[tuple[str, list[str]]] = []
    for size, what in rows:
        head, comma, last = what.rpartition(", ")
        if comma and found and found[-1][0] == size and found[-1][1][0] == head:
            found[-1][1].append(last)
        else:
            found.append((size, [head, last] if comma else [what]))
    return [(size, _listed(words)) for size, words in found]


def _listed(words: Sequence[str]) -> str:
    head, *rest = words
    if len(rest) < 2:
        return ", ".join(words)
    return f"{head}, {', '.join(rest[:-1])} and {rest[-1]}"


def _row(
    joints: Sequence[Joint],
    parts: Mapping[str, Part],
    measures: Sequence[Measure],
    way: tuple[Layout, int],
) -> tuple[str, str]:
    """The size, and what it is the size of, ``measures`` being those of the joints."""
    layout, listed = way
    measure = measures[0]
    values = [one.value for one in measures]
    meant = {_unnamed(one, joint, parts) for one, joint in zip(measures, joints, strict=True)}
    if len(meant) > 1:
        return _row_of_several(joints, parts, measures, way)
    what = _what(measure)
    shown = {_as_shown(measure, value, layout) for value in values}
    if len(shown) == 1:
        return shown.pop(), what
    if len(joints) > listed:
        reach = f"{_size(measure, min(values))} to {_size(measure, max(values))}"
        return "–", f"{what}; {reach}, see the page of each part"
    each = "; ".join(
        f"{_own(joint, joints, parts)}: {_size(measure, value)}"
        for joint, value in zip(joints, values, strict=True)
    )
    return "–", f"{what}; {each}"


def _row_of_several(
    joints: Sequence[Joint],
    parts: Mapping[str, Part],
    measures: Sequence[Measure],
    way: tuple[Layout, int],
) -> tuple[str, str]:
    """The same where joints are measured from unlike places, as from a left and from a right end:
    each place is told with the joints that are measured from there."""
    layout, listed = way
    first, name = measures[0], measures[0].name.replace("_", " ")
    groups: dict[tuple[str, str], tuple[float, list[str]]] = {}
    for joint, one in zip(joints, measures, strict=True):
        key = (_as_shown(one, one.value, layout), one.meaning)
        groups.setdefault(key, (one.value, []))[1].append(_own(joint, joints, parts))
    alike = len({size for size, _ in groups}) == 1
    told = []
    for (_, meaning), (value, names) in groups.items():
        size = "" if alike else f"{_size(first, value)} "
        which = f" ({'; '.join(names)})" if len(joints) <= listed else ""
        told.append(f"{size}{meaning}{which}")
    between, end = (", ", "") if len(joints) <= listed else (" or ", ", see the page of each part")
    words = f"{name[:1].upper()}{name[1:]}: {between.join(told)}{end}"
    return next(iter(groups))[0] if alike else "–", words


def _unnamed(measure: Measure, joint: Joint, parts: Mapping[str, Part]) -> str:
    """What a measure means, whatever the pieces of its own joint are called."""
    meaning = measure.meaning
    for name in joint.parts:
        meaning = meaning.replace(parts[name].title, "")
    return meaning


def _what(measure: Measure) -> str:
    """What a measure is; its name is left out where the meaning begins with it."""
    name, meaning = measure.name.replace("_", " "), measure.meaning
    if meaning.split()[:1] == name.split()[:1]:
        return f"{meaning[:1].upper()}{meaning[1:]}"
    return f"{name[:1].upper()}{name[1:]}: {meaning}"


def _as_shown(measure: Measure, value: float, layout: Layout) -> str:
    """The size as a reader sees it: sizes that read alike are one."""
    return format_angle(value) if measure.unit == "deg" else format_length(value, layout.shown)


def _size(measure: Measure, value: float) -> str:
    return angle_mark(value) if measure.unit == "deg" else length_mark(value)


def _own(joint: Joint, joints: Sequence[Joint], parts: Mapping[str, Part]) -> str:
    """The shortest words that tell a joint from its like: one part if that is enough."""
    for index in (1, 0):
        names = [one.parts[index] for one in joints]
        if len(set(names)) == len(names):
            return parts[joint.parts[index]].title
    return " and ".join(parts[name].title for name in joint.parts)


def _called(part: Part) -> str:
    return part.title.split(",")[0].rstrip(" 0123456789")


def _short_title(joints: Sequence[Joint], parts: Mapping[str, Part], index: int) -> str:
    """A part's title; of parts alike what their titles share, in small letters."""
    titles = {parts[joint.parts[index]].title for joint in joints}
    if len(titles) == 1:
        return titles.pop()
    heads = {title.split(",")[0] for title in titles}
    if len(heads) == 1:
        return heads.pop()
    kinds = {parts[joint.parts[index]].kind for joint in joints}
    return kinds.pop().capitalize() if len(kinds) == 1 else parts[joints[0].parts[index]].title
