"""Real fraction characters: ⅝ where the character exists, ¹¹⁄₁₆ put together where not.

The eighths and quarters have characters of their own (Unicode blocks Latin-1 Supplement and
Number Forms); any other fraction is superscript digits, U+2044 FRACTION SLASH, subscript digits.
"""

from __future__ import annotations

import re
from math import gcd

SINGLE_CHARACTER = {
    (1, 2): "½",
    (1, 4): "¼",
    (3, 4): "¾",
    (1, 8): "⅛",
    (3, 8): "⅜",
    (5, 8): "⅝",
    (7, 8): "⅞",
}
_READ_ONLY = {(1, 3): "⅓", (2, 3): "⅔"}  # never printed, but a keyboard may have them
_SUPERSCRIPT = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")
_SUBSCRIPT = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉")
_TO_PLAIN = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉", "01234567890123456789")
_PUT_TOGETHER = re.compile("([⁰¹²³⁴⁵⁶⁷⁸⁹]+)[⁄∕/]([₀₁₂₃₄₅₆₇₈₉]+)")
_SINGLE = re.compile("[" + "".join((SINGLE_CHARACTER | _READ_ONLY).values()) + "]")
_PLAIN = {
    character: f" {over}/{under}"
    for (over, under), character in (SINGLE_CHARACTER | _READ_ONLY).items()
}


def fraction_glyphs(over: int, under: int) -> str:
    """A fraction between 0 and 1 as it is printed, in lowest terms.

    >>> fraction_glyphs(10, 16), fraction_glyphs(11, 16)
    ('⅝', '¹¹⁄₁₆')
    """
    assert 0 < over < under, (over, under)
    common = gcd(over, under)
    over, under = over // common, under // common
    single = SINGLE_CHARACTER.get((over, under))
    return single or f"{str(over).translate(_SUPERSCRIPT)}⁄{str(under).translate(_SUBSCRIPT)}"


def plain_fractions(text: str) -> str:
    """The text with fraction characters rewritten as `` 5/8``, set off by a space.

    >>> plain_fractions('36⅝ in')
    '36 5/8 in'
    """
    text = _PUT_TOGETHER.sub(
        lambda found: f" {found[1].translate(_TO_PLAIN)}/{found[2].translate(_TO_PLAIN)}", text
    )
    text = _SINGLE.sub(lambda found: _PLAIN[found[0]], text)
    return text.replace("⁄", "/").replace("∕", "/")
