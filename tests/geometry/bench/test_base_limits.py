"""What the base may be: legs that stand on their feet."""

from __future__ import annotations

import math

import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import limits, set_values
from shared.errors import ValueOutOfRange
from tests.flat_faces import facing, flat_faces


def test_taper_needs_height_below_the_joint_not_only_length() -> None:
    """A wide leg at a steep splay has a long inner edge although little height is left: the taper
    from below the joint would end above its start and take the foot away.

    Base 150, stretcher 60: 20 mm of height are left when the taper starts at 70.
    """
    wide = set_values(
        default_spec(),
        {"leg_top_width": 140, "leg_foot_width": 20, "splay": 29, "inset_left": 0},
    )
    assert limits(wide, "taper_start").maximum == pytest.approx(70.0, abs=1e-6)
    with pytest.raises(ValueOutOfRange) as refused:
        set_values(wide, {"taper_start": 75})
    assert refused.value.limit == pytest.approx(70.0, abs=1e-6)


@pytest.mark.parametrize("side", ["inside", "outside"])
@pytest.mark.parametrize("splay", [0, 12, 30])
def test_foot_stands_on_its_whole_width_at_the_limit(side: str, splay: float) -> None:
    spec = set_values(default_spec(), {"taper_side": side, "splay": splay, "leg_foot_width": 20})
    spec = set_values(spec, {"taper_start": limits(spec, "taper_start").maximum})
    bench = build(spec)
    foot = facing(flat_faces(bench.part("leg_back_left")), (0.0, 0.0, -1.0))
    assert foot.offset == pytest.approx(0.0, abs=1e-6)
    level = 20.0 / math.cos(math.radians(splay))
    assert foot.area == pytest.approx(level * spec.number("base_thickness"), abs=1e-6)
