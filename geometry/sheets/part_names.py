"""What a page of parts is called, and which pieces it is for."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from geometry.design.part import Part

_MOST_NAMED = 4  # pieces named in a title
_LONGEST = 60  # letters of their names there


def group_title(parts: Sequence[Part]) -> str:
    """'Leg' for four legs, 'Partition' for Partition 1 to 3, the part's own title for one alone."""
    shared: list[str] = []
    for words in zip(*(part.title.split() for part in parts), strict=False):
        if len(set(words)) > 1:
            break
        shared.append(words[0])
    return " ".join(shared).rstrip(",") or parts[0].title


def own_name(part: Part, shared: str) -> str:
    """'back left' of 'Leg, back left' in a group of legs."""
    return part.title.removeprefix(shared).strip(" ,") or part.title


def own_names(parts: Sequence[Part]) -> tuple[str, ...]:
    """What tells the pieces of a group apart."""
    shared = group_title(parts)
    return tuple(own_name(part, shared) for part in parts)


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
            names = own_names(group)
            listed = _in_a_title(names)
            found.append((f"{title}, {listed}", all(name in listed for name in names)))
    return tuple(found)


def _in_a_title(names: Sequence[str]) -> str:
    listed = "; ".join(names)
    if not any("," in name for name in names):
        listed = " and ".join(filter(None, (", ".join(names[:-1]), names[-1])))
    if len(names) <= _MOST_NAMED and len(listed) <= _LONGEST:
        return listed
    return f"{names[0]} and {len(names) - 1} more"
