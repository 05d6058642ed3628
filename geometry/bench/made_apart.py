"""What of a bench is made by itself before it goes on: base, back rest, lid, each drawer.

So it is done at the bench (common practice, no source); what is left is the body.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from geometry.bench.drawer_numbers import drawers
from geometry.bench.members import has, present_members
from geometry.design.spec import BenchSpec


@lru_cache(maxsize=64)
def made_apart(spec: BenchSpec) -> Mapping[str, str]:
    """By the name of a part, the title of what it is made up into first."""
    found: dict[str, str] = {}
    for member in present_members(spec):
        for part in member.parts(spec):
            found[part.name] = member.made_into
    if has(spec, "drawers"):
        for drawer in drawers(spec):
            for name in found:
                if name.startswith(f"{drawer.name}_"):
                    found[name] = f"the drawer, {drawer.place}"
    return found
