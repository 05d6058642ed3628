"""A spoiled bench for the check of shelves of sheet."""

from __future__ import annotations

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks.all_checks import findings
from geometry.design.finding import Level
from geometry.design.parameter import Value

SOUND = set_values(
    set_values(default_spec(), {"opening_1_fill": "shelf"}), {"shelf_made_of": "sheet"}
)


def test_sound_shelves_raise_nothing() -> None:
    """18 mm of birch plywood, which is sold from 17.1 to 18.1."""
    assert findings(build(SOUND)) == ()


def test_a_thickness_that_is_not_sold_is_caught_and_mended() -> None:
    spoiled: dict[str, Value] = {"shelf_thickness": 19.2}
    (found,) = findings(build(set_values(SOUND, spoiled)))
    assert (found.check, found.level) == ("sheet_thickness", Level.THINK_AGAIN)
    assert (found.amount, found.limit) == (19.2, 20.5)
    assert found.mend is not None
    assert findings(build(set_values(SOUND, spoiled | dict(found.mend.values)))) == ()
