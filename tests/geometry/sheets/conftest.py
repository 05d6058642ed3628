"""Pieces of wood for the sheets, with sizes that can be worked by hand."""

from __future__ import annotations

import math

import pytest

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.cuts.cut import Blank, Cut
from geometry.cuts.housing import StoppedHousing
from geometry.cuts.notch import Notch
from geometry.cuts.open_mortise import OpenMortise
from geometry.cuts.rebate import Rebate
from geometry.cuts.saw import SawCut
from geometry.cuts.tenon import Tenon
from geometry.design.part import Part, Shape
from geometry.design.project import Project
from geometry.primitives.frame import BENCH_FRAME

SPLAY_DEG = 15.0
SINE, COSINE = math.sin(math.radians(SPLAY_DEG)), math.cos(math.radians(SPLAY_DEG))
TANGENT = math.tan(math.radians(SPLAY_DEG))


def piece(name: str, blank: Blank, *cuts: Cut, allowance: float = 0.0) -> Part:
    return Part(
        name=name,
        title=name.capitalize(),
        kind=name,
        material="ash",
        shape=Shape(blank, cuts),
        frame=BENCH_FRAME,
        allowance=allowance,
    )


@pytest.fixture(scope="session")
def plain() -> Part:
    return piece("plain", Blank(300.0, 200.0, 20.0))


@pytest.fixture(scope="session")
def housed() -> Part:
    """800 x 360 x 20: back rebate 10 wide, 6 deep; one housing 18.2 wide, 6.35 deep, stop 300."""
    return piece(
        "housed",
        Blank(800.0, 360.0, 20.0),
        Rebate(0.0, 800.0, 0.0, 10.0, 6.0),
        StoppedHousing(100.0, 118.2, 300.0, 6.35, 6.35),
    )


@pytest.fixture(scope="session")
def mitred() -> Part:
    """500 x 300 x 20, both ends mitred: 500 long on the reverse, 460 on the face side."""
    half = 0.5**0.5
    return piece(
        "mitred",
        Blank(500.0, 300.0, 20.0),
        SawCut("mitre", (0.0, 0.0, 20.0), (-half, 0.0, -half)),
        SawCut("mitre", (500.0, 0.0, 20.0), (half, 0.0, -half)),
    )


@pytest.fixture(scope="session")
def notched() -> Part:
    return piece("notched", Blank(250.0, 120.0, 18.0), Notch(0.0, 7.0, 110.0, 120.0))


@pytest.fixture(scope="session")
def splayed_leg() -> Part:
    """400 long on its straight edge, 80 wide, both ends cut 15 degrees off square, 3 proud.

    The blank is longer by the lean of the top, 80 tan 15, and by what is left proud at the top.
    """
    head = 80.0 * TANGENT + 3.0
    return piece(
        "leg",
        Blank(head + 400.0, 80.0, 40.0),
        SawCut("level top", (head, 0.0, 0.0), (-COSINE, -SINE, 0.0)),
        SawCut("level foot", (head + 400.0, 0.0, 0.0), (COSINE, SINE, 0.0)),
        OpenMortise(head + 60.0, head + 60.0 - 80.0 * TANGENT, 13.0, 27.0),
        allowance=3.0,
    )


@pytest.fixture(scope="session")
def tenoned() -> Part:
    """600 x 60 x 40 with square tenons 50 long and 14 thick at both ends."""
    return piece(
        "tenoned",
        Blank(600.0, 60.0, 40.0),
        Tenon(50.0, 50.0, 13.0, 27.0, True),
        Tenon(550.0, 550.0, 13.0, 27.0, False),
    )


@pytest.fixture(scope="session")
def bench() -> Bench:
    return build(default_spec())


@pytest.fixture(scope="session")
def project() -> Project:
    return Project(
        default_spec(), "Ferry landing bench", "North quay", "I. Marsh", "Marsh & Reed", "FL-7", "C"
    )
