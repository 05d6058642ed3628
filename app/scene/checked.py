"""What the program looks for, why, and by which limits: made from the checks themselves.

The same for the page in the window, the command line, and other programs; so it cannot fall behind
what is really checked.
"""

from __future__ import annotations

import textwrap
from html import escape
from typing import Any

from app.scene.finding_words import amount_text
from app.scene.preferences import Preferences
from app.scene.wording import said
from geometry.checks.all_checks import CHECKS, SLOW_CHECKS
from geometry.checks.check import Check
from geometry.checks.limit import Limit
from geometry.design.judging import AS_FOUND, Judging
from shared.units import SHOWN_MM, in_units

_WIDE = 92


def checks_text(preferences: Preferences) -> str:
    """Every check as plain text: its title, its paragraph and its limits."""
    blocks = []
    for check in (*CHECKS, *SLOW_CHECKS):
        lines = [said(check.title, preferences), *_wrapped(said(check.about, preferences), "    ")]
        for row in check.limits:
            lines += _wrapped(limit_text(row, preferences), "    - ")
        blocks.append("\n".join(lines) + "\n")
    return "\n".join(blocks)


def checks_html(preferences: Preferences, judging: Judging = AS_FOUND) -> str:
    """The same as a page; limits that the maker has changed with what they are now."""
    found = ["<h2>What is looked for</h2>"]
    for check in (*CHECKS, *SLOW_CHECKS):
        rows = [f"<li>{escape(limit_text(row, preferences, judging))}</li>" for row in check.limits]
        found.append(
            f"<h3>{escape(said(check.title, preferences))}</h3>"
            f"<p>{escape(said(check.about, preferences))}</p>"
        )
        if rows:
            found.append(f"<ul>{''.join(rows)}</ul>")
    return "".join(found)


def checks_facts() -> list[dict[str, Any]]:
    """The same as data, in millimetres."""
    return [_fact(check) for check in (*CHECKS, *SLOW_CHECKS)]


def limit_text(row: Limit, preferences: Preferences, judging: Judging = AS_FOUND) -> str:
    """``Thinnest tenon or wall beside a mortise: 6 mm (common practice, no source)``."""
    own = dict(judging.limits).get(row.name)
    value = amount_text(row.default, row.unit, preferences)
    if own is not None:
        value = f"{amount_text(own, row.unit, preferences)} in this project, else {value}"
    return said(f"{row.title}: {value} ({row.source})", preferences)


def _fact(check: Check) -> dict[str, Any]:
    return {
        "name": check.name,
        "title": check.title,
        "about": in_units(check.about, SHOWN_MM),
        "limits": [
            {
                "name": row.name,
                "title": in_units(row.title, SHOWN_MM),
                "unit": row.unit,
                "default": row.default,
                "minimum": row.minimum,
                "maximum": row.maximum,
                "source": in_units(row.source, SHOWN_MM),
            }
            for row in check.limits
        ],
    }


def _wrapped(text: str, first: str) -> list[str]:
    return textwrap.wrap(
        text,
        _WIDE,
        initial_indent=first,
        subsequent_indent=" " * len(first),
        break_long_words=False,
    )
