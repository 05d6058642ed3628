"""British and American trade words.

Every sentence of the program is written in British words and goes through ``in_words`` once, at
the border to screen or paper.  Only whole words change, so that the name of a value such as
``housing_depth`` stays what it is.  What the maker has typed (a title, a name) is the maker's:
leave it out.

The trade pairs are from the glossary of design words of this program (housing and dado, rebate and
rabbet) and, like the rest, common practice, no source; the spellings are those of any dictionary.
"""

from __future__ import annotations

import re
from enum import Enum
from functools import lru_cache


class Words(Enum):
    """Whose trade words the screen and the paper show."""

    BRITISH = "British"
    AMERICAN = "American"


_TRADE = (
    # British, American
    ("housing", "dado"),
    ("housings", "dadoes"),
    ("housed", "dadoed"),
    ("rebate", "rabbet"),
    ("rebates", "rabbets"),
    ("rebated", "rabbeted"),
    ("rebating", "rabbeting"),
    ("mitre", "miter"),
    ("mitres", "miters"),
    ("mitred", "mitered"),
    ("mitring", "mitering"),
    ("timber", "lumber"),
    ("timbers", "woods"),
    ("cutter", "bit"),
    ("cutters", "bits"),
    ("cramp", "clamp"),
    ("cramps", "clamps"),
    ("cramped", "clamped"),
    ("cramping", "clamping"),
    ("moulding", "molding"),
    ("mouldings", "moldings"),
    ("moulded", "molded"),
    ("plough", "plow"),
    ("ploughs", "plows"),
    ("ploughed", "plowed"),
    ("ploughing", "plowing"),
    ("chipboard", "particleboard"),
    ("blockboard", "lumber-core plywood"),
    ("thicknesser", "planer"),
    ("thicknessers", "planers"),
    ("runner", "slide"),
    ("runners", "slides"),
    ("lipping", "edging"),
    ("lippings", "edgings"),
    ("lipped", "edged"),
    ("saw bench", "table saw"),
    ("saw benches", "table saws"),
    ("pillar drill", "drill press"),
    ("pillar drills", "drill presses"),
)

_SPELLINGS = (
    ("metre", "meter"),
    ("metres", "meters"),
    ("millimetre", "millimeter"),
    ("millimetres", "millimeters"),
    ("centimetre", "centimeter"),
    ("centimetres", "centimeters"),
    ("kilometre", "kilometer"),
    ("kilometres", "kilometers"),
    ("litre", "liter"),
    ("litres", "liters"),
    ("centre", "center"),
    ("centres", "centers"),
    ("centred", "centered"),
    ("centring", "centering"),
    ("centreline", "centerline"),
    ("centrelines", "centerlines"),
    ("fibre", "fiber"),
    ("fibres", "fibers"),
    ("fibreboard", "fiberboard"),
    ("colour", "color"),
    ("colours", "colors"),
    ("coloured", "colored"),
    ("colouring", "coloring"),
    ("favourite", "favorite"),
    ("favourites", "favorites"),
    ("behaviour", "behavior"),
    ("neighbour", "neighbor"),
    ("neighbours", "neighbors"),
    ("neighbouring", "neighboring"),
    ("labour", "labor"),
    ("grey", "gray"),
    ("greyed", "grayed"),
    ("aluminium", "aluminum"),
    ("catalogue", "catalog"),
    ("catalogues", "catalogs"),
    ("licence", "license"),
    ("licences", "licenses"),
    ("storey", "story"),
    ("whilst", "while"),
    ("towards", "toward"),
    ("analyse", "analyze"),
    ("analysed", "analyzed"),
)

_DOUBLED_L = (
    *("bevel", "cancel", "chisel", "dowel", "label", "level", "model", "panel", "pencil"),
    *("swivel", "travel"),
)
_ISE = (
    "centralis",
    "customis",
    "finalis",
    "maximis",
    "minimis",
    "normalis",
    "optimis",
    "organis",
    "recognis",
    "standardis",
    "summaris",
    "visualis",
)


def _doubled_l() -> dict[str, str]:
    """bevelled, bevelling, leveller to beveled, beveling, leveler."""
    ends = ("ed", "ing", "er", "ers")
    return {f"{stem}l{end}": f"{stem}{end}" for stem in _DOUBLED_L for end in ends}


def _ise() -> dict[str, str]:
    """organise, organised … to organize, organized …"""
    ends = ("e", "es", "ed", "ing", "ation")
    return {f"{stem}{end}": f"{stem[:-1]}z{end}" for stem in _ISE for end in ends}


AMERICAN_FOR: dict[str, str] = {**dict(_TRADE), **dict(_SPELLINGS), **_doubled_l(), **_ise()}
"""British word, in small letters, to the American one."""

# A strip of wood that a drawer runs on is a runner to Americans too; what is bought is a slide.
KEPT = ("wooden runner", "wooden runners", "drawer runner", "runner width")

_ANY = re.compile(
    r"\b(?:" + "|".join(sorted((*AMERICAN_FOR, *KEPT), key=len, reverse=True)) + r")\b",
    re.IGNORECASE,
)


@lru_cache(maxsize=4096)
def in_words(text: str, words: Words) -> str:
    """The British text in the maker's words, capitals kept.

    >>> in_words("Stopped housings, mitred ends", Words.AMERICAN)
    'Stopped dadoes, mitered ends'
    """
    if words is Words.BRITISH:
        return text
    return _ANY.sub(_american, text)


def _american(found: re.Match[str]) -> str:
    british = found[0]
    american = AMERICAN_FOR.get(british.lower())
    if american is None:
        return british
    if british.isupper():
        return american.upper()
    return american[0].upper() + american[1:] if british[0].isupper() else american
