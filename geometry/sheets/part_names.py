"""What a page of parts is called, and which pieces it is for."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from geometry.design.part import Part

_LONGEST = 60  # letters of the names of pieces in a title


def group_title(parts: Sequence[Part]) -> str:
    """'Leg' for four legs, 'Partition' for Partition 1 to 3, the part's own title for one alone."""
    shared: list[str] = []
    for words in zip(*(part.title.split() for part in parts), strict=False):
        if len(set(words)) > 1:
            break
        shared.append(words[0])
    title = " ".join(shared).rstrip(",")
    if "," in title and any(own_name(part, title)[0].isdigit() for part in parts):
        # Not a number by itself: 'Top rail' for those of bay 1 and bay 2.
        title = title.rpartition(",")[0]
    return title or parts[0].title


def own_name(part: Part, shared: str) -> str:
    """'back left' of 'Leg, back left' in a group of legs."""
    return part.title.removeprefix(shared).strip(" ,") or part.title


def own_names(parts: Sequence[Part]) -> tuple[str, ...]:
    """What tells the pieces of a group apart."""
    shared = group_title(parts)
    return tuple(own_name(part, shared) for part in parts)


def listed(names: Sequence[str]) -> str:
    """Names one after another; what several have in common is said once.

    >>> listed(["left, first in opening 1", "right, first in opening 1"])
    'left and right, first in opening 1'
    >>> listed(["1, bay 1", "2, bay 1", "3, bay 1", "1, bay 2", "2, bay 2", "3, bay 2"])
    '1 to 3, bay 1 and bay 2'
    """
    pairs = [name.partition(", ") for name in names]
    heads = list(dict.fromkeys(head for head, _, _ in pairs))
    tails = list(dict.fromkeys(tail for _, _, tail in pairs))
    if tails == [""] or len(names) == 1:
        return _and(names)
    if len(heads) * len(tails) != len(names):
        return "; ".join(names)
    return f"{_and(heads)}, {_and(_common_end(tails))}"


def _common_end(names: Sequence[str]) -> list[str]:
    """'first and second in opening 1' for two names that end in one opening."""
    found: dict[str, list[str]] = {}
    for name in names:
        place, _, end = name.rpartition(" in ")
        found.setdefault(end, []).append(place)
    return [f"{_and(places)} in {end}" if any(places) else end for end, places in found.items()]


def _and(names: Sequence[str]) -> str:
    """'a, b and c'; '1 to 8' for a run of numbers."""
    if len(names) > 2 and all(name.isdecimal() for name in names):
        numbers = [int(name) for name in names]
        if numbers == list(range(numbers[0], numbers[0] + len(numbers))):
            return f"{names[0]} to {names[-1]}"
    return " and ".join(filter(None, (", ".join(names[:-1]), names[-1])))


def page_titles(groups: Sequence[Sequence[Part]]) -> tuple[tuple[str, bool], ...]:
    """A title for each group, no two alike: where groups share a title, as legs and their mirror
    images do, with the pieces that it is for; and whether it names all of several."""
    plain = [group_title(group) for group in groups]
    times = Counter(plain)
    found: list[tuple[str, bool]] = []
    for title, group in zip(plain, groups, strict=True):
        if times[title] == 1 or len(group) == 1:
            found.append((title, False))
        else:
            names = listed(own_names(group))
            if len(names) <= _LONGEST:
                found.append((f"{title}, {names}", True))
            else:
                first = own_names(group)[0]
                found.append((f"{title}, {first} and {len(group) - 1} more", False))
    return tuple(found)
