"""Who sits on a bench, by its brief."""

from __future__ import annotations

from dataclasses import replace

import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks.all_checks import findings, judged
from geometry.design.brief import MEN, NO_BRIEF, PERSON, Brief
from geometry.design.judging import AS_FOUND
from geometry.strength.loads import Loads, loads_of
from shared.body_measures import BODY_MEASURES, WEIGHT
from shared.seating import GRAVITY
from shared.units import SHOWN_MM, in_units


def _loads(brief: Brief) -> Loads:
    return loads_of(brief, single=1112.0, sitter=1079.0, room=500.0)


def test_a_blank_brief_means_two_heavy_persons() -> None:
    assert _loads(NO_BRIEF) == Loads(1112.0, 1079.0, 2, 500.0)


def test_the_heaviest_of_a_group_sits() -> None:
    """95 of 100 men weigh 110.69 kg or less: 1085.5 N."""
    heavy = BODY_MEASURES[MEN, WEIGHT].at(95) * GRAVITY
    found = _loads(Brief(who=MEN, persons=4.0))
    assert found.sitter == pytest.approx(heavy)
    assert (found.single, found.persons) == (1112.0, 4)


def test_a_person_of_known_weight_and_a_given_load() -> None:
    """60 kg: 588.4 N each; a load of 150 kg, 1471 N, is more than 1112 N."""
    found = _loads(Brief(who=PERSON, weight=60.0, load=150.0))
    assert found.sitter == pytest.approx(588.399)
    assert found.single == pytest.approx(1470.9975)


def test_no_more_sit_than_there_is_room_for() -> None:
    """Each bears on 300 mm and is 500 mm from the next: three need 1300 mm."""
    loads = Loads(1112.0, 1079.0, 5, 500.0)
    assert [len(case.offsets) for case in loads.cases(1299.0)] == [1, 2]
    assert [len(case.offsets) for case in loads.cases(1300.0)] == [1, 2, 3]
    assert [len(case.offsets) for case in loads.cases(3000.0)] == [1, 2, 3, 5]
    assert [len(case.offsets) for case in loads.cases(700.0)] == [1]


def test_the_briefs_persons_reach_what_is_found() -> None:
    """A slab of 2400 mm on two panels that bears two persons, and is too weak for four."""
    spec = set_values(default_spec(), {"flare": 0.0})
    for changes in ({"seat": "slab", "base": "panel feet"}, {"length": 2400.0}):
        spec = set_values(spec, changes)
    bench = build(set_values(spec, {"seat_thickness": 62.0}))
    assert "seat_bends" not in {one.check for one in findings(bench)}
    four = judged(bench, AS_FOUND, Brief(who=MEN, persons=4.0))
    (found,) = (one for one in four if one.check == "seat_bends")
    assert "4 persons of 111 kg" in in_units(found.message, SHOWN_MM)
    assert findings(replace(bench, brief=Brief(who=MEN, persons=4.0)))
