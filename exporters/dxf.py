"""Cutting files: one DXF for each part, and a page that says what each layer is.

Millimetres; the board lies face side up, x along the grain (see ``cutting_lines``).  Only closed
``LWPOLYLINE`` with true arcs, ``CIRCLE``, and open ``LWPOLYLINE`` for lines to saw to or to mark:
no text, no blocks, no splines.  The outline is the finished one; allowing for the cutter is the
shop's business.  Release 2000 states its unit ($INSUNITS 4, millimetres, and $MEASUREMENT 1;
DXF reference, header variables).  Release 12 has no such field, and for shops that ask
for it a line 100 mm long is drawn on the layer for notes.
"""

from __future__ import annotations

import io
import textwrap
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from enum import Enum

from ezdxf import options, units  # type: ignore[attr-defined]
from ezdxf.filemanagement import new
from ezdxf.layouts.layout import Modelspace

from exporters.arcs import whole_circle
from exporters.cutting_lines import CuttingLine
from exporters.dxf_layers import NOTES_COLOUR, NOTES_LAYER, Layer
from geometry.primitives.path import Path
from shared.words import Words, in_words

REFERENCE_LENGTH = 100.0
_DECIMALS = 9  # rounding leaves 1e-13; an outline should not say -0.0000000000001


class DxfRelease(Enum):
    """The release of the format; the value is its name in the library."""

    R2000 = "R2000"
    R12 = "R12"


def dxf_bytes(lines: Sequence[CuttingLine], release: DxfRelease = DxfRelease.R2000) -> bytes:
    """A drawing of these lines; equal lines give equal bytes."""
    with _no_dates():
        document = new(release.value)
        if release is not DxfRelease.R12:
            document.units = units.MM
            document.header["$MEASUREMENT"] = 1
        for layer in sorted({line.layer for line in lines}, key=lambda layer: layer.name):
            document.layers.add(layer.name, color=layer.colour)
        space = document.modelspace()
        for line in lines:
            _draw(space, line.path, line.layer.name, release)
        low, high = extents(lines)
        if release is DxfRelease.R12:
            document.layers.add(NOTES_LAYER, color=NOTES_COLOUR).off()
            middle = (low[1] + high[1]) / 2.0
            reference = Path.line((low[0], middle), (low[0] + REFERENCE_LENGTH, middle))
            _draw(space, reference, NOTES_LAYER, release)
        space.reset_extents((*low, 0.0), (*high, 0.0))
        # The library takes a corner at the origin for one that was not set.
        space.reset_limits(low, high)
        document.header["$EXTMIN"], document.header["$EXTMAX"] = (*low, 0.0), (*high, 0.0)
        text = io.StringIO()
        document.write(text)
        return document.encode(text.getvalue())


def extents(lines: Sequence[CuttingLine]) -> tuple[tuple[float, float], tuple[float, float]]:
    """Lower left and upper right corner of all lines, rounded, in mm."""
    points = [point for line in lines for point in line.path.flattened(1e-4)]
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return (
        (round(min(xs), 3) + 0.0, round(min(ys), 3) + 0.0),
        (round(max(xs), 3) + 0.0, round(max(ys), 3) + 0.0),
    )


def legend(drawings: Mapping[str, Sequence[CuttingLine]], words: Words = Words.BRITISH) -> str:
    """A page of plain text for the shop: the conventions, each layer, and the files it is in.

    ``words`` are the maker's; names of layers and files stay what they are.
    """
    files: dict[Layer, list[str]] = {}
    for name, lines in drawings.items():
        for layer in dict.fromkeys(line.layer for line in lines):
            files.setdefault(layer, []).append(name)
    rows = [
        "\n".join(
            (
                layer.name,
                _indented(in_words(layer.meaning(), words)),
                _indented(_listed(files[layer])),
                "",
            )
        )
        for layer in sorted(files, key=lambda layer: (layer.operation.value, layer.name))
    ]
    return in_words(_CONVENTIONS, words) + "\n" + "\n".join(rows)


def _listed(files: Sequence[str]) -> str:
    return f"In: {', '.join(files)}"


def _indented(text: str) -> str:
    return textwrap.fill(text, 96, initial_indent="    ", subsequent_indent="    ")


_CONVENTIONS = """\
Layers of the cutting files

Units are millimetres, scale 1:1. Each board lies with its face side up, the grain along X.
Lines are the sizes of the wood: allow for the cutter. Arrises are not yet chamfered, and what is
trimmed after the glue-up or at the fitting is still on. A pocket that leaves an edge is drawn
past it so that the cutter runs out into the air.
Depths are measured from the face that is worked, in tenths of a millimetre: D060 is 6 mm,
D063_5 is 6.35 mm. Blade tilts are from square, in tenths of a degree: T150 is 15 degrees.
Layers that begin with REV_ are worked from the reverse. They are drawn as if the board were
glass, seen from the face side: turn the board over and mirror them.
A tilted saw line is where the cut meets the face on which it bites deeper; the outline shows
the other face, so leave wood for the saw, or saw first.
"""


@contextmanager
def _no_dates() -> Iterator[None]:
    """Let the library write fixed dates and identifiers instead of the moment's own."""
    before = options.write_fixed_meta_data_for_testing
    options.write_fixed_meta_data_for_testing = True
    try:
        yield
    finally:
        options.write_fixed_meta_data_for_testing = before


def _draw(space: Modelspace, path: Path, layer: str, release: DxfRelease) -> None:
    on_layer = {"layer": layer}
    circle = whole_circle(path)
    if circle is not None:
        space.add_circle(_rounded(circle.centre), round(circle.radius, _DECIMALS), on_layer)
        return
    points = [(*_rounded((x, y)), bulge) for x, y, bulge in path.vertices]
    if release is DxfRelease.R12:
        space.add_polyline2d(points, format="xyb", close=path.closed, dxfattribs=on_layer)
    else:
        space.add_lwpolyline(points, format="xyb", close=path.closed, dxfattribs=on_layer)


def _rounded(point: tuple[float, float]) -> tuple[float, float]:
    # Adding zero turns a negative zero into a plain one.
    return round(point[0], _DECIMALS) + 0.0, round(point[1], _DECIMALS) + 0.0
