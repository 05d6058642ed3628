"""Limits of the maker's own, and findings set aside with a reason."""

from __future__ import annotations

import pytest

from exporters.project_file import BEFORE_SECTIONS, read_project
from exporters.project_writing import project_bytes
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks.all_checks import CHECKS, SLOW_CHECKS, check_of, judged
from geometry.checks.limit_rows import BY_NAME, LIMITS
from geometry.checks.limits_of_joints import LEAST_WALL
from geometry.design.finding import Level
from geometry.design.judging import AS_FOUND, Judging, SetAside
from geometry.design.parameter import Value
from geometry.design.project import Project
from shared.errors import BadProjectFile, UnreadableValue, ValueOutOfRange

# Walls of 5.9 mm; thin feet farther out, or the bench would tip.
STANDING: dict[str, Value] = {"inset_front_left": 50.0, "inset_front_right": 50.0}
THIN = set_values(default_spec(), {"base_thickness": 18.0, **STANDING})


def test_a_limit_of_the_makers_own_is_gone_by() -> None:
    """Walls of (18 - 6 - 0.2) / 2 = 5.9 mm: thin by the default of 6 mm, thick enough for 5."""
    bench = build(THIN)
    assert [one.check for one in judged(bench, AS_FOUND)] == ["mortise_wall"]
    assert judged(bench, Judging().with_limit("least_wall", 5.0)) == ()
    (found,) = (
        one
        for one in judged(bench, Judging().with_limit("least_wall", 5.95))
        if one.check == "mortise_wall"
    )
    assert found.limit == 5.95
    assert Judging().with_limit("least_wall", 5.0).with_limit("least_wall", None) == AS_FOUND


def test_a_mend_goes_by_the_makers_limit() -> None:
    """A limit of 8 mm asks for 3 x 8 + 2 = 26 mm of stretcher."""
    found = judged(build(THIN), Judging().with_limit("least_wall", 8.0))
    mends = [one.mend for one in found if one.check == "mortise_wall"]
    assert mends[0] is not None
    assert dict(mends[0].values) == {"base_thickness": 26.0}


def test_a_finding_set_aside_stays_listed_last_with_its_reason() -> None:
    spoiled = set_values(default_spec(), {"base_thickness": 18.0, "housing_cover": 0.4})
    bench = build(spoiled)
    first, *others = judged(bench, AS_FOUND)
    aside = Judging().setting_aside(SetAside(first.check, first.parts, "A trial piece held."))
    found = judged(bench, aside)
    assert [one.key for one in found] == [*(one.key for one in others), first.key]
    assert found[-1].set_aside == "A trial piece held."
    assert [one.key for one in found if not one.set_aside] == [one.key for one in others]
    assert judged(bench, aside.taking_up(first.key)) == judged(bench, AS_FOUND)


@pytest.mark.parametrize("reason", ["", "   ", "a\nb", "x" * 301])
def test_nothing_is_set_aside_without_a_reason_that_can_be_printed(reason: str) -> None:
    with pytest.raises(UnreadableValue):
        SetAside("mortise_wall", (), reason)


def test_limits_and_reasons_are_saved_and_old_files_keep_their_bytes() -> None:
    judging = (
        Judging()
        .with_limit("least_wall", 5.5)
        .setting_aside(SetAside("a", ("b",), "c", 1.5, "think again"))
    )
    project = Project(default_spec(), "Bench", judging=judging)
    data = project_bytes(project)
    assert read_project(data) == project
    assert project_bytes(read_project(data)) == data
    assert f'"version": {BEFORE_SECTIONS}'.encode() in data
    plain = project_bytes(Project(default_spec(), "Bench"))
    assert b'"version": 1' in plain
    assert b"limits" not in plain
    assert b"set_aside" not in plain


def test_limits_that_a_joint_tells_now_are_passed_over() -> None:
    """Files of before say which screws a post behind a seat has; its joint bores them now."""
    plain = Project(default_spec(), judging=Judging().with_limit("least_wall", 5.5))
    data = project_bytes(plain)
    old = data.replace(
        b'"least_wall"', b'"post_screw": {"value": 8, "unit": "count"},\n"least_wall"'
    )
    assert old != data
    assert read_project(old) == plain


@pytest.mark.parametrize(
    ("field", "text"),
    [
        ("limits", b'{"least_wal": {"value": 5, "unit": "mm"}}'),
        ("limits", b'{"least_wall": {"value": 5, "unit": "deg"}}'),
        ("limits", b'{"least_wall": {"value": -5, "unit": "mm"}}'),
        ("limits", b"[]"),
        ("set_aside", b'[{"check": "a", "parts": ["b"], "reason": ""}]'),
        ("set_aside", b'[{"check": "a", "parts": "b", "reason": "c"}]'),
        ("set_aside", b'[{"check": "a", "parts": ["b"], "reason": "c", "amount": "1"}]'),
        ("set_aside", b'[{"check": "a", "parts": ["b"], "reason": "c", "amount": 1e999}]'),
        ("set_aside", b'{"check": "a"}'),
    ],
)
def test_a_damaged_judging_is_refused(field: str, text: bytes) -> None:
    plain = project_bytes(Project(default_spec())).rstrip().removesuffix(b"}")
    with pytest.raises(BadProjectFile):
        read_project(plain.rstrip() + b', "' + field.encode() + b'": ' + text + b"}")


def test_every_limit_has_a_row_with_its_source_and_is_used() -> None:
    assert len(BY_NAME) == len(LIMITS)
    used = {row for check in (*CHECKS, *SLOW_CHECKS) for row in check.limits}
    assert used == set(LIMITS)
    for row in LIMITS:
        assert row.minimum <= row.default <= row.maximum, row.name
        assert row.source
        assert row.checked(row.default) == row.default


def test_a_limit_has_limits_itself() -> None:
    with pytest.raises(ValueOutOfRange):
        LEAST_WALL.checked(-1.0)
    with pytest.raises(UnreadableValue):
        LEAST_WALL.checked(float("nan"))


def test_a_finding_leads_to_its_paragraph() -> None:
    (found,) = judged(build(THIN), AS_FOUND)
    assert found.level is Level.THINK_AGAIN
    assert "6 mm" in check_of(found).about
    assert check_of(found).limits == (LEAST_WALL,)
