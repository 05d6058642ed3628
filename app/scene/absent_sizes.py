"""What to say when no size of the bench goes by the words sought: those it could have."""

from __future__ import annotations

from app.scene.preferences import Preferences
from geometry.bench.catalogue import PARAMETERS
from geometry.bench.coming_in import brought_by
from geometry.design.spec import BenchSpec
from shared.words import in_words

MOST = 4  # so many ways are read at a glance

NOTHING = "No size goes by that name."


def absent_words(spec: BenchSpec, sought: str, preferences: Preferences) -> str:
    """A sentence: nothing goes by these words, or only once something else is chosen."""
    words = sought.casefold().split()
    ways: dict[str, list[str]] = {}
    for row in PARAMETERS:
        title = in_words(row.title, preferences.words)
        text = f"{title} {in_words(row.group, preferences.words)} {row.name}".casefold()
        if row.applies(spec) or not all(word in text for word in words):
            continue
        found = brought_by(spec, row)
        if found is None:
            continue
        chosen, word = found
        way = in_words(f"“{chosen.title}: {word}”", preferences.words)
        ways.setdefault(way, []).append(title)
        if len(ways) == MOST:
            break
    if not ways:
        return NOTHING
    told = [f"With {way}: {', '.join(titles)}." for way, titles in ways.items()]
    return "\n".join(("Not on this bench as it is.", *told))
