"""Every cut of a part has its number on a view, led to where it is.

Where a cut lies is found independently: the cut alone is made in the blank, what it took away is a
boolean difference (trimesh), and its triangles are laid flat in the view (shapely).
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from itertools import combinations

import numpy as np
import pytest
import shapely
import trimesh

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.glue_ups import boards_of
from geometry.cuts.bore import Bore
from geometry.cuts.contour import Face
from geometry.cuts.cut import Blank
from geometry.cuts.saw import SawCut
from geometry.cuts.slot_mortise import SlotMortise
from geometry.design.part import Part, Shape
from geometry.drawing.marks import Arc, Fill, Label, Mark, Sheet, Strokes
from geometry.sheets.cut_words import cut_lines
from geometry.sheets.layout import Layout
from geometry.sheets.part_names import group_title
from geometry.sheets.part_sheets import part_groups, part_leaf, part_plans
from geometry.sheets.part_words import Called
from geometry.sheets.title_block import title_block_of
from geometry.sheets.view_grid import Block
from geometry.solids.cutting import solid_of
from geometry.views.view import PART_EDGE, PART_END, PART_FACE, View
from shared.paper import PAPERS
from shared.units import SHOWN_IN32, SHOWN_MM
from tests.geometry.sheets.conftest import piece
from tests.geometry.sheets.on_sheet import ink, off_the_sheet, overlapping_texts, struck_texts
from tests.random_benches import random_spec
from tests.samples import NAMES, sample

QUICK_SEEDS, MORE_SEEDS = range(8), range(20, 40)
VIEWS = {view.name: view for view in (PART_FACE, PART_EDGE, PART_END)}
CROWDED = 20  # cuts of one part: with more, lines may have to run through each other
NOTHING = 1e-3  # mm³: an arris that a moulding only grazes loses more
RING = 5.0  # mm: that of a detail is larger
ON_IT = 0.05  # mm: what the chords of a round stray, and a little air


@dataclass(frozen=True)
class Balloon:
    """As it is drawn: its leader, in pieces if texts interrupt it, its tip, ring and number."""

    pieces: Strokes
    tip: Fill
    ring: Arc
    number: str

    @property
    def disc(self) -> shapely.Polygon:
        return shapely.Point(self.ring.centre).buffer(self.ring.radius)

    @property
    def end(self) -> shapely.Point:
        """The point of an arrowhead, the middle of a dot."""
        if len(self.tip.points) == 3:
            return shapely.Point(self.tip.points[0])
        return shapely.Polygon(self.tip.points).centroid

    @property
    def leader(self) -> shapely.LineString:
        (x, y), (u, v) = self.ring.centre, (self.end.x, self.end.y)
        part = self.ring.radius / math.dist((x, y), (u, v))
        return shapely.LineString([(u, v), (x + (u - x) * part, y + (v - y) * part)])


def balloons_of(marks: tuple[Mark, ...]) -> list[Balloon]:
    found = []
    for four in zip(marks, marks[1:], marks[2:], marks[3:], strict=False):
        pieces, tip, ring, label = four
        kinds = isinstance(pieces, Strokes) and isinstance(tip, Fill) and isinstance(ring, Arc)
        if not kinds or not isinstance(label, Label) or ring.end_deg - ring.start_deg < 360.0:
            continue
        if ring.radius < RING and label.text.isdigit() and math.dist(label.at, ring.centre) < 1.5:
            found.append(Balloon(pieces, tip, ring, label.text))
    return found


def where(shape: Shape, number: int, view: View) -> shapely.Geometry:
    """What a cut by itself takes off the blank, as it lies in a view; mm.

    Of an end sawn off just where the blank ends, which takes nothing off, the face that it leaves.
    """
    blank, cut = shape.blank, shape.cuts[number - 1]
    size = (blank.length, blank.width, blank.thickness)
    whole = trimesh.creation.box(bounds=((0.0, 0.0, 0.0), size))
    left = solid_of(Shape(blank, (cut,)))
    rest = trimesh.Trimesh(left.vertices, left.triangles, process=False)
    gone = trimesh.boolean.difference([whole, rest], engine="manifold", check_volume=False)
    a, b, c = np.moveaxis(gone.vertices[gone.faces], 1, 0)
    corners = np.stack([a, b, c], axis=1)
    if abs(float((a * np.cross(b, c)).sum())) / 6.0 < NOTHING:
        assert isinstance(cut, SawCut), number
        off = (whole.triangles - np.array(cut.point)) @ np.array(cut.outward)
        corners = whole.triangles[(np.abs(off) < 1e-6).all(axis=1)]
    flat = corners @ np.array((view.right, view.up), dtype=float).T
    triangles = shapely.polygons(flat)
    solid = triangles[shapely.area(triangles) > 1e-9]
    edge_on = shapely.linearrings(flat)
    return shapely.union_all(solid if len(solid) else edge_on, grid_size=1e-6)


def hold_numbered(part: Part, blocks: tuple[Block, ...]) -> None:
    numbered: dict[int, str] = {}
    for block in blocks:
        found = balloons_of(block.notes)
        for one in found:
            number = int(one.number)
            assert number not in numbered, (part.name, number)
            numbered[number] = block.view
            cut = where(part.shape, number, VIEWS[block.view])
            at = shapely.Point(one.end.x / block.scale, one.end.y / block.scale)
            assert cut.distance(at) < ON_IT, (part.name, block.view, number)
            drawn = shapely.MultiLineString(one.pieces.segments.reshape(-1, 2, 2).tolist())
            assert one.leader.buffer(1e-3).covers(drawn), (part.name, number)
            if len(part.shape.cuts) <= CROWDED:
                assert len(one.pieces.segments) == 1, (part.name, number)
                assert drawn.length == pytest.approx(one.leader.length, abs=1e-6)
        texts = [one.box for one in block.placed.dimensions]
        for one in found:
            for box in texts:
                assert not one.disc.intersects(shapely.Polygon(box.corners())), (part.name, one)
        for one, other in combinations(found, 2):
            assert not one.disc.intersects(other.disc), (part.name, one.number, other.number)
            if len(part.shape.cuts) <= CROWDED:
                assert not one.leader.crosses(other.leader), (part.name, one.number, other.number)
    for row in cut_lines(part.shape):
        assert set(row.numbers) <= set(numbered), (part.name, row.title, row.numbers)


def hold_apart(sheet: Sheet, *, crowded: bool) -> None:
    """On the whole page: no ring on a text but its own, and nothing past the paper."""
    assert off_the_sheet(sheet) == [], sheet.title
    assert overlapping_texts(sheet) == [], sheet.title
    assert crowded or struck_texts(sheet) == [], sheet.title
    labels = [m for m in sheet.marks if isinstance(m, Label) and m.text.strip()]
    assert [m.text for m in labels if m.text.endswith("…")] == [], sheet.title
    for one in balloons_of(sheet.marks):
        own = [m for m in labels if math.dist(m.at, one.ring.centre) < 1.5]
        assert [m.text for m in own] == [one.number], sheet.title
        for label in labels:
            if label is not own[0]:
                assert not one.disc.intersects(ink(label)), (sheet.title, one.number, label.text)


def groups_of(bench: Bench) -> Iterator[tuple[Part, ...]]:
    for whole in (bench, boards_of(bench)):
        yield from part_groups(whole)


def hold(bench: Bench, layout: Layout) -> None:
    for group in groups_of(bench):
        told = Called(group_title(group))
        plans, way = part_plans(group, layout, told)
        hold_numbered(group[0], plans[0].blocks)
        for number, plan in enumerate(plans, start=1):
            leaf = part_leaf(plan, group, told, way, number)
            paper = leaf.layout.paper
            sheet = Sheet(leaf.title, paper.width, paper.height, leaf.marks)
            hold_apart(sheet, crowded=len(group[0].shape.cuts) > CROWDED)


@pytest.mark.parametrize("name", NAMES)
def test_every_cut_of_a_sample_has_its_number(name):
    project = sample(name)
    hold(build(project.spec), Layout(PAPERS["A4"], title=title_block_of(project, date(2025, 3, 4))))


@pytest.mark.parametrize("name", ["weigh_house", "lock_keepers"])
def test_so_it_has_in_inches_on_other_paper(name):
    project = sample(name)
    layout = Layout(
        PAPERS["Letter"],
        shown=SHOWN_IN32,
        third_angle=False,
        title=title_block_of(project, date(2025, 3, 4)),
    )
    hold(build(project.spec), layout)


@pytest.mark.parametrize(
    "seed", [*QUICK_SEEDS, *(pytest.param(k, marks=pytest.mark.sweep) for k in MORE_SEEDS)]
)
def test_every_cut_of_an_odd_bench_has_its_number(seed, project):
    layout = Layout(
        PAPERS["A4" if seed % 2 else "A3"],
        shown=SHOWN_IN32 if seed % 3 == 0 else SHOWN_MM,
        title=title_block_of(project, date(2025, 3, 4)),
    )
    hold(build(random_spec(seed)), layout)


def views_of(part: Part) -> dict[str, str]:
    """In which view each number stands."""
    plans, _ = part_plans([part], Layout(PAPERS["A4"]), Called(part.title))
    return {one.number: b.view for b in plans[0].blocks for one in balloons_of(b.notes)}


def test_a_number_stands_where_its_cut_is_seen():
    """A mortise in the face edge opens toward the edge view; a blind hole from the reverse shows in
    none, and is hidden lines on the face; one in the right end opens toward the end view."""
    board = piece(
        "board",
        Blank(400.0, 120.0, 30.0),
        Bore(200.0, 60.0, 12.0, 10.0, Face.REVERSE),
        SlotMortise((100.0, 0.0, 15.0), (0.0, 1.0, 0.0), (1.0, 0.0, 0.0), 40.0, 8.0, 20.0),
        SlotMortise((400.0, 60.0, 15.0), (-1.0, 0.0, 0.0), (0.0, 1.0, 0.0), 40.0, 8.0, 20.0),
        Bore(300.0, 60.0, 12.0, 10.0),
    )
    assert views_of(board) == {"1": "face", "2": "edge", "3": "end", "4": "face"}


def test_numbers_without_room_stand_in_a_row():
    """Twenty holes 13 mm apart in a small block at 1:1, each with its place from the edges: there
    is no room between them for as many numbers, so some stand at one height outside."""
    holes = [Bore(10.0 + 13.0 * (k // 2), 8.0 + 14.0 * (k % 2), 6.0, 5.0) for k in range(20)]
    block = piece("block", Blank(140.0, 30.0, 20.0), *holes)
    plans, _ = part_plans([block], Layout(PAPERS["A4"]), Called(block.title))
    (face,) = (b for b in plans[0].blocks if b.view == "face")
    found = balloons_of(face.notes)
    assert len(found) == 20
    heights = Counter(round(one.ring.centre[1], 3) for one in found)
    assert heights.most_common(1)[0][1] >= 5


def test_forty_numbers_of_one_board_stand_apart():
    """Forty holes 8 mm apart along a board: their numbers, each 6 mm across, have room for all in
    rows outside, none on another."""
    holes = [Bore(10.0 + 8.0 * k, 6.0, 5.0, 5.0) for k in range(40)]
    board = piece("board", Blank(335.0, 40.0, 20.0), *holes)
    plans, _ = part_plans([board], Layout(PAPERS["A4"]), Called(board.title))
    hold_numbered(board, plans[0].blocks)
