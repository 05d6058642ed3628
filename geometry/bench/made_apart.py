"""What of a bench is made by itself before it goes on: base, back rest, lid, each drawer.

So it is done at the bench (common practice, no source); what is left is the body.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from geometry.bench.drawer_numbers import drawers
from geometry.bench.members import has, present_members
from geometry.design.spec import BenchSpec

BASE, REST, LID, BODY = "the base", "the back rest", "the lid", "the body"

# By the name of the member that brings the parts.
_MADE_APART: dict[str, str] = {
    "bridled legs": BASE,
    "trestles": BASE,
    "four legs": BASE,
    "aprons": BASE,
    "corner blocks": BASE,
    "round legs": BASE,
    "plinth": BASE,
    "panel feet": BASE,
    "feet": BASE,
    "fixings": BASE,
    "back rest": REST,
    "lid": LID,
}


@lru_cache(maxsize=64)
def made_apart(spec: BenchSpec) -> Mapping[str, str]:
    """By the name of a part, the title of what it is made up into first."""
    found: dict[str, str] = {}
    for member in present_members(spec):
        for part in member.parts(spec):
            found[part.name] = _MADE_APART.get(member.name, BODY)
    if has(spec, "drawers"):
        for drawer in drawers(spec):
            for name in found:
                if name.startswith(f"{drawer.name}_"):
                    found[name] = f"the drawer, {drawer.place}"
    return found
