"""Body measures of adults that a seat follows from, by percentile.

Lengths in mm, weight in kg.  All taken barefoot, sitting upright on a flat seat.

Source: ANSUR II (the anthropometric survey of the US Army, 2012), public data of 4082 men and 1986
women; percentiles computed from the data as published, the same from two copies of it.  The people
are soldiers: fitter and younger than most, none of them a child and none of them old.  No source of
body measures of children or of older people is at hand, so theirs have to be taken and typed.
"""

from __future__ import annotations

from dataclasses import dataclass

PERCENTILES = (1, 5, 25, 50, 75, 95, 99)

MEN, WOMEN = "men", "women"


@dataclass(frozen=True, slots=True)
class BodyMeasure:
    """One row: ``percentiles`` in the order of PERCENTILES."""

    name: str
    survey_name: str
    group: str
    percentiles: tuple[float, ...]
    source: str = "ANSUR II (US Army 2012)"

    def at(self, percentile: int) -> float:
        """The value that so many of a hundred stay below; KeyError for one that is no column."""
        if percentile not in PERCENTILES:
            raise KeyError(percentile)
        return self.percentiles[PERCENTILES.index(percentile)]


LOWER_LEG, UPPER_LEG, SHOULDERS, WEIGHT = "lower leg", "upper leg", "shoulders", "weight"

_ROWS = (
    # name, name in the survey, group, 1st, 5th, 25th, 50th, 75th, 95th, 99th percentile
    (LOWER_LEG, "poplitealheight", MEN, 374.0, 390.0, 413.0, 430.0, 447.0, 471.0, 491.0),
    (UPPER_LEG, "buttockpopliteallength", MEN, 443.0, 459.0, 484.2, 502.0, 522.0, 548.0, 568.0),
    (SHOULDERS, "bideltoidbreadth", MEN, 439.0, 459.0, 489.0, 509.0, 531.0, 567.0, 593.0),
    (WEIGHT, "weightkg", MEN, 57.8, 64.4, 75.6, 84.6, 94.4, 110.69, 124.21),
    (LOWER_LEG, "poplitealheight", WOMEN, 336.0, 350.0, 373.0, 387.0, 403.0, 428.0, 445.0),
    (UPPER_LEG, "buttockpopliteallength", WOMEN, 419.0, 441.0, 466.0, 483.0, 503.0, 535.0, 557.0),
    (SHOULDERS, "bideltoidbreadth", WOMEN, 388.0, 406.0, 430.0, 450.0, 469.0, 499.0, 522.0),
    (WEIGHT, "weightkg", WOMEN, 46.66, 51.3, 60.1, 66.8, 74.58, 87.08, 97.45),
)

BODY_MEASURES: dict[tuple[str, str], BodyMeasure] = {
    (row[2], row[0]): BodyMeasure(row[0], row[1], row[2], row[3:]) for row in _ROWS
}
"""(group, name) to the row."""
