"""Sheets as PDF, read back by libraries that did not write it.

pdfplumber measures vectors and reads text, pikepdf reads the structure, poppler's pdftoppm turns
pages into dots.  1 pt = 1/72 in, 1 in = 25.4 mm (ISO 32000-1, 8.3.2.3 and exact).
"""

from __future__ import annotations

import io
import math
import shutil
import subprocess
import tempfile
from datetime import date
from itertools import pairwise
from pathlib import Path

import numpy as np
import pdfplumber
import pikepdf
import pytest
from PIL import Image

from exporters.pdf import pdf_bytes
from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.drawing.marks import Anchor, Arc, Fill, Label, Role, Sheet, Strokes
from geometry.sheets.layout import Layout
from geometry.sheets.templates import templates
from shared.line_styles import LINE_STYLES
from shared.paper import PAPERS

MM = 72.0 / 25.4
DAY = date(2025, 3, 4)


def square(role: Role, x: float, y: float, side: float) -> Strokes:
    corners = [(x, y), (x + side, y), (x + side, y + side), (x, y + side), (x, y)]
    return Strokes(role, np.array([(*a, *b) for a, b in pairwise(corners)]))


def sheet(*marks) -> Sheet:
    return Sheet("Specimen", 297.0, 210.0, marks)


SPECIMEN = sheet(
    square(Role.VISIBLE, 20.0, 30.0, 100.0),
    Strokes(Role.HIDDEN, np.array([(150.0, 40.0, 250.0, 40.0)])),
    Arc(Role.DIMENSION, (200.0, 120.0), 25.0, 0.0, 360.0),
    Fill(Role.DIMENSION, ((10.0, 10.0), (14.0, 10.5), (14.0, 9.5))),
    Label(Role.TEXT, "⅝ ¹¹⁄₁₆ × 15° (Ø 8) – mitre", (150.0, 60.0), 3.5),
    Label(Role.TITLE, "upright", (140.0, 100.0), 2.5, Anchor.MIDDLE, 90.0, True),
)


@pytest.fixture(scope="module")
def specimen() -> bytes:
    return pdf_bytes([SPECIMEN], title="Specimen", on=DAY, author="I. Marsh", subject="A test")


@pytest.fixture(scope="module")
def tall() -> Bench:
    return build(set_values(default_spec(), {"base_height": 420.0}))


@pytest.fixture(scope="module")
def full_size(tall) -> bytes:
    sheets = templates(tall, Layout(PAPERS["A4"]))
    return pdf_bytes(sheets, title="Templates", on=DAY, full_size=True)


def test_lines_are_where_they_should_be_and_as_wide(specimen):
    with pdfplumber.open(io.BytesIO(specimen)) as pdf:
        page = pdf.pages[0]
        assert float(page.width) / MM == pytest.approx(297.0, abs=1e-3)
        assert float(page.height) / MM == pytest.approx(210.0, abs=1e-3)
        box = max((*page.curves, *page.rects), key=lambda c: c["width"] * c["height"])
        assert box["width"] / MM == pytest.approx(100.0, abs=1e-3)
        assert box["height"] / MM == pytest.approx(100.0, abs=1e-3)
        assert box["x0"] / MM == pytest.approx(20.0, abs=1e-3)
        assert (float(page.height) - box["bottom"]) / MM == pytest.approx(30.0, abs=1e-3)
        assert box["linewidth"] == pytest.approx(0.5 * MM, abs=1e-3)  # ISO 128 line group 0.5


def test_dashes_follow_the_table(specimen):
    with pikepdf.open(io.BytesIO(specimen)) as pdf:
        operators = pikepdf.parse_content_stream(pdf.pages[0])
    dashes = [[float(d) for d in o.operands[0]] for o in operators if str(o.operator) == "d"]
    assert list(LINE_STYLES["hidden"].dashes) in dashes
    assert [] in dashes


def test_a_circle_is_a_curve_and_round(specimen):
    with pikepdf.open(io.BytesIO(specimen)) as pdf:
        operators = pikepdf.parse_content_stream(pdf.pages[0])
    curves = [[float(x) for x in o.operands] for o in operators if str(o.operator) == "c"]
    assert len(curves) >= 4
    for *_, x, y in curves:
        assert math.dist((x, y), (200.0, 120.0)) == pytest.approx(25.0, abs=1e-3)


def test_text_comes_back_as_text(specimen):
    with pdfplumber.open(io.BytesIO(specimen)) as pdf:
        text = pdf.pages[0].extract_text()
    assert "⅝ ¹¹⁄₁₆ × 15° (Ø 8) – mitre" in text


def test_capitals_are_as_high_as_asked_and_anchored():
    """Measured on the dots of poppler's picture: H is 5 mm high, its text ends at x = 200."""
    if shutil.which("pdftoppm") is None:
        pytest.skip("poppler's pdftoppm is not installed")
    label = Label(Role.TEXT, "HHHH", (200.0, 100.0), 5.0, Anchor.END)
    dark = picture(pdf_bytes([sheet(label)], title="H", on=DAY), 508)[0]
    rows, columns = np.nonzero(dark)
    assert (rows.max() - rows.min() + 1) / 20.0 == pytest.approx(5.0, abs=0.1)
    assert columns.max() / 20.0 == pytest.approx(200.0, abs=0.8)  # less the H's own side bearing


def test_all_fonts_are_embedded_subsets(specimen, full_size):
    for data in (specimen, full_size):
        with pikepdf.open(io.BytesIO(data)) as pdf:
            fonts = {
                str(font.BaseFont): font
                for page in pdf.pages
                for font in page.Resources.Font.values()
            }
            assert fonts
            for name, font in fonts.items():
                assert "DejaVuSans" in name
                assert "+" in name  # a subset
                assert "/FontFile2" in font.FontDescriptor
                assert "/ToUnicode" in font
        assert b"Helvetica" not in data


def test_the_same_sheets_give_the_same_bytes(specimen):
    again = pdf_bytes([SPECIMEN], title="Specimen", on=DAY, author="I. Marsh", subject="A test")
    assert again == specimen
    other_day = pdf_bytes([SPECIMEN], title="Specimen", on=date(2025, 3, 5))
    assert other_day != specimen


def test_the_document_says_what_it_is(specimen):
    with pikepdf.open(io.BytesIO(specimen)) as pdf:
        info = pdf.docinfo
        assert str(info["/Title"]) == "Specimen"
        assert str(info["/Author"]) == "I. Marsh"
        assert str(info["/Subject"]) == "A test"
        assert str(info["/CreationDate"]) == "D:20250304000000Z"
        assert str(pdf.Root.Lang) == "en-GB"
        assert pdf.Root.ViewerPreferences.DisplayDocTitle


def test_every_sheet_has_a_bookmark():
    sheets = [SPECIMEN, Sheet("Leg – make 4", 210.0, 297.0, ())]
    with pikepdf.open(io.BytesIO(pdf_bytes(sheets, title="T", on=DAY))) as pdf:
        with pdf.open_outline() as outline:
            assert [item.title for item in outline.root] == ["Specimen", "Leg – make 4"]
        assert [float(page.mediabox[2]) / MM for page in pdf.pages] == pytest.approx(
            [297.0, 210.0], abs=1e-3
        )


def test_full_size_sheets_ask_not_to_be_scaled(full_size, specimen):
    """ISO 32000-2 table 147."""
    with pikepdf.open(io.BytesIO(full_size)) as pdf:
        preferences = pdf.Root.ViewerPreferences
        assert str(preferences.PrintScaling) == "/None"
        assert bool(preferences.PickTrayByPDFSize)
        assert [str(name) for name in preferences.Enforce] == ["/PrintScaling"]
    with pikepdf.open(io.BytesIO(specimen)) as pdf:
        assert "/PrintScaling" not in pdf.Root.ViewerPreferences


def test_the_squares_measure_100_mm_and_4_in_on_every_template(full_size):
    with pdfplumber.open(io.BytesIO(full_size)) as pdf:
        assert len(pdf.pages) > 2
        for page in pdf.pages[1:]:
            shapes = [*page.curves, *page.rects]
            for side in (100.0, 101.6):
                found = [
                    s
                    for s in shapes
                    if s["width"] / MM == pytest.approx(side, abs=1e-3)
                    and s["height"] / MM == pytest.approx(side, abs=1e-3)
                ]
                assert found, (page.page_number, side)


def test_the_square_measures_100_mm_in_dots(full_size):
    """At 254 dots an inch a millimetre is ten dots; a line 0.25 mm wide adds its own width."""
    if shutil.which("pdftoppm") is None:
        pytest.skip("poppler's pdftoppm is not installed")
    with pdfplumber.open(io.BytesIO(full_size)) as pdf:
        page = pdf.pages[1]
        box = next(
            s
            for s in (*page.curves, *page.rects)
            if s["width"] / MM == pytest.approx(100.0, abs=1e-3)
        )
        left, bottom, top = (box[k] / MM * 10.0 for k in ("x0", "bottom", "top"))
    dark = picture(full_size, 254)[1]
    assert run_through(dark[round(bottom)], round(left) + 500) == pytest.approx(1002.5, abs=3.0)
    upright = dark[:, round(left)]
    assert run_through(upright, round(top) + 500) == pytest.approx(1002.5, abs=3.0)


def run_through(line: np.ndarray, at: int) -> int:
    """The length of the dark run that holds a dot, or one of the two dots beside it."""
    light = np.flatnonzero(~line)
    before, after = light[light < at], light[light > at]
    return int(
        (after.min() if len(after) else len(line)) - (before.max() if len(before) else -1) - 1
    )


def picture(data: bytes, dots_per_inch: int) -> list[np.ndarray]:
    """The pages as arrays, True where they are dark."""
    command = ["pdftoppm", "-r", str(dots_per_inch), "-gray", "-", ""]
    found = []
    with tempfile.TemporaryDirectory() as folder:
        command[-1] = str(Path(folder) / "page")
        subprocess.run(command, input=data, check=True, capture_output=True)
        for path in sorted(Path(folder).glob("page*")):
            with Image.open(path) as image:
                found.append(np.asarray(image) < 160)
    return found
