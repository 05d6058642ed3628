"""Pieces of wood for the exporters, with every kind of cut that draws on a face."""

from __future__ import annotations

import pytest

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.cuts.chamfer import Chamfer, ChamferEnd
from geometry.cuts.contour import Face
from geometry.cuts.cut import Blank, Cut
from geometry.cuts.housing import StoppedHousing
from geometry.cuts.notch import Notch
from geometry.cuts.open_mortise import OpenMortise
from geometry.cuts.rebate import Rebate
from geometry.cuts.run_out import RunOut
from geometry.cuts.saw import SawCut
from geometry.cuts.stopped_bevel import StoppedBevel
from geometry.cuts.tenon import Tenon
from geometry.design.part import Part, Shape
from geometry.design.project import Project
from geometry.primitives.frame import BENCH_FRAME, Frame

HALF_INCH_CUTTER = 6.35  # radius in mm


def piece(name: str, blank: Blank, *cuts: Cut, frame: Frame = BENCH_FRAME) -> Part:
    return Part(
        name=name,
        title=name.replace("_", " ").capitalize(),
        kind=name,
        material="ash",
        shape=Shape(blank, cuts),
        frame=frame,
    )


@pytest.fixture(scope="session")
def plain() -> Part:
    """A board 300 x 200 x 20 with nothing cut."""
    return piece("plain", Blank(300.0, 200.0, 20.0))


@pytest.fixture(scope="session")
def housed() -> Part:
    """A board 800 x 360 x 20: back rebate 10 x 6, two housings 18.2 wide, 6.35 deep, stop 300."""
    return piece(
        "housed",
        Blank(800.0, 360.0, 20.0),
        Rebate(0.0, 800.0, 0.0, 10.0, 6.0),
        StoppedHousing(100.0, 118.2, 300.0, 6.35, HALF_INCH_CUTTER),
        StoppedHousing(600.0, 618.2, 300.0, 6.35, HALF_INCH_CUTTER),
    )


@pytest.fixture(scope="session")
def flared() -> Part:
    """A top with a mitre at x = 0, a bevel to 400, a run-out from 400 to 700, and a chamfer."""
    half = 0.5**0.5
    return piece(
        "flared",
        Blank(900.0, 400.0, 20.0),
        RunOut(((400.0, 400.0), (700.0, 340.0), (900.0, 340.0))),
        StoppedBevel(0.0, 400.0, 395.0, 400.0),
        SawCut("mitre", (20.0, 0.0, 0.0), (-half, 0.0, -half)),
        Rebate(0.0, 900.0, 0.0, 8.0, 6.0),
        StoppedHousing(500.0, 512.7, 250.0, 6.0, HALF_INCH_CUTTER),
        Chamfer(
            ChamferEnd((700.0, 340.0, 20.0), (700.0, 338.0, 20.0), (700.0, 340.0, 18.0)),
            ChamferEnd((900.0, 340.0, 20.0), (900.0, 338.0, 20.0), (900.0, 340.0, 18.0)),
            Face.REVERSE,
        ),
    )


@pytest.fixture(scope="session")
def upright() -> Part:
    """A partition 290 x 300 x 18 with both front corners notched 40 x 6."""
    return piece(
        "upright",
        Blank(290.0, 300.0, 18.0),
        Notch(0.0, 6.0, 260.0, 300.0),
        Notch(284.0, 290.0, 260.0, 300.0),
    )


@pytest.fixture(scope="session")
def leg() -> Part:
    """A tapered leg 450 x 76.2 x 38.1, 76.2 to 25.4 wide, with an open mortise."""
    taper = (76.2 - 25.4, 450.0)
    norm = (taper[0] ** 2 + taper[1] ** 2) ** 0.5
    return piece(
        "leg",
        Blank(450.0, 76.2, 38.1),
        OpenMortise(80.0, 100.0, 12.7, 25.4),
        SawCut("taper", (0.0, 76.2, 0.0), (taper[0] / norm, taper[1] / norm, 0.0)),
    )


@pytest.fixture(scope="session")
def stretcher() -> Part:
    """A stretcher 900 x 80 x 38 with a tenon at each end."""
    return piece(
        "stretcher",
        Blank(900.0, 80.0, 38.0),
        Tenon(80.0, 60.0, 12.5, 25.5, at_start=True),
        Tenon(820.0, 840.0, 12.5, 25.5, at_start=False),
    )


@pytest.fixture(
    scope="session", params=["plain", "housed", "flared", "upright", "leg", "stretcher"]
)
def any_part(request: pytest.FixtureRequest) -> Part:
    part: Part = request.getfixturevalue(request.param)
    return part


@pytest.fixture(scope="session")
def bench() -> Bench:
    """The bench of the catalogue's defaults."""
    return build(default_spec())


@pytest.fixture(scope="session")
def project() -> Project:
    return Project(default_spec(), title="Reading bench", revision="B", designer="A. Maker")
