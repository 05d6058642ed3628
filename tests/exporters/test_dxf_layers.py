"""A layer's name and its meaning are two ways of saying one thing."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from exporters.dxf_layers import layer_named, layer_of
from geometry.cuts.contour import Contour, Face, Operation
from geometry.primitives.path import Path

LINE = Path.line((0.0, 0.0), (1.0, 0.0))
SQUARE = Path.rectangle(0.0, 0.0, 1.0, 1.0)


@given(depth=st.integers(1, 120_000), face=st.sampled_from(Face))
def test_depths_come_back_to_a_thousandth(depth: int, face: Face) -> None:
    layer = layer_of(Contour(Operation.POCKET, face, SQUARE, depth / 1000.0))
    assert re.fullmatch(r"[A-Z0-9_]{1,31}", layer.name)
    again = layer_named(layer.name)
    assert again == layer
    assert again.face is face
    assert again.depth == pytest.approx(depth / 1000.0, abs=1e-9)


@given(tilt=st.integers(0, 90_000))
def test_tilts_come_back(tilt: int) -> None:
    layer = layer_of(Contour(Operation.SAW_LINE, Face.FACE_SIDE, LINE, tilt_deg=tilt / 1000.0))
    assert layer_named(layer.name).tilt_deg == pytest.approx(tilt / 1000.0, abs=1e-9)


@pytest.mark.parametrize(
    ("depth", "name"),
    [(6.0, "POCKET_D060"), (6.35, "POCKET_D063_5"), (12.7, "POCKET_D127"), (0.05, "POCKET_D000_5")],
)
def test_names_worked_by_hand(depth: float, name: str) -> None:
    assert layer_of(Contour(Operation.POCKET, Face.FACE_SIDE, SQUARE, depth)).name == name


def test_names_of_others_are_refused() -> None:
    with pytest.raises(ValueError, match="no layer"):
        layer_named("DEFPOINTS")


@pytest.mark.parametrize("operation", list(Operation))
@pytest.mark.parametrize("face", list(Face))
def test_every_operation_has_a_sentence(operation: Operation, face: Face) -> None:
    layer = layer_of(Contour(operation, face, SQUARE, 6.0, 15.0))
    assert layer.meaning().endswith(".")
