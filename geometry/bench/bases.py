"""Every base there is, by its name, and how it stands under a bench."""

from __future__ import annotations

from collections.abc import Mapping

from geometry.bench import bridled_standing, four_leg_standing, panel_standing, plinth_standing
from geometry.bench.overall import CROSSED, FOUR_LEGS, PANEL_FEET, PLINTH, TRESTLES
from geometry.bench.standing import Standing
from geometry.design.spec import BenchSpec

STANDINGS: Mapping[str, Standing] = {
    CROSSED: bridled_standing.CROSSED_STANDING,
    TRESTLES: bridled_standing.TRESTLE_STANDING,
    FOUR_LEGS: four_leg_standing.STANDING,
    PLINTH: plinth_standing.STANDING,
    PANEL_FEET: panel_standing.STANDING,
}


def standing(spec: BenchSpec) -> Standing:
    """How the base stands that was chosen last, whether there is one or not."""
    return STANDINGS[spec.word("base")]
