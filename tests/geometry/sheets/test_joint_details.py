"""Details of joints: whatever is drawn is true, and every joint of every sample has its page."""

from __future__ import annotations

import math
from datetime import date
from functools import lru_cache
from pathlib import Path

import numpy as np
import pytest
import shapely

from exporters.project_file import load
from geometry.bench.build import build
from geometry.drawing.marks import Arc, Label, Role, Sheet, Strokes
from geometry.sheets.joint_choice import chosen
from geometry.sheets.joint_details import joint_leaf, joint_leaves
from geometry.sheets.joint_figures import PartFigure, SectionFigure
from geometry.sheets.joint_groups import joint_groups
from geometry.sheets.layout import Layout, furniture
from geometry.sheets.title_block import title_block_of
from geometry.solids.cutting import placed
from geometry.views.joint_scene import joint_scene
from shared.paper import PAPERS
from shared.units import SHOWN_IN32, format_angle, format_length
from shared.words import Words
from tests.geometry.sheets.on_sheet import bounds, ink, overlapping_texts, struck_texts, words
from tests.random_benches import random_spec

SAMPLES = sorted((Path(__file__).parents[3] / "sample_projects").glob("*.settle"))
CASE_SAMPLE = next(path for path in SAMPLES if path.stem == "boat_club_bench")


@lru_cache(maxsize=32)
def bench_of(sample):
    return build(load(sample).spec)


@lru_cache(maxsize=32)
def drawn_of(sample):
    """Each kind of joint of a sample, with what is drawn of it: four tests ask for the same."""
    parts = by_name(bench_of(sample))
    found = []
    for group in joint_groups(bench_of(sample).joints, parts):
        scene = joint_scene(group[0], parts)
        found.append((group, scene, chosen(scene)))
    return found


@lru_cache(maxsize=32)
def leaves_of(sample):
    """The pages of a sample on A4, where they are most crowded."""
    return joint_leaves(bench_of(sample), layout_of(sample))


def layout_of(sample):
    return Layout(PAPERS["A4"], title=title_block_of(load(sample), date(2025, 3, 4)))


def by_name(bench):
    return {part.name: part for part in bench.parts}


def joint_of(bench, kind):
    return next(joint for joint in bench.joints if joint.kind == kind)


def sheet_of(leaf) -> Sheet:
    paper = leaf.layout.paper
    marks = (*furniture(leaf.layout, leaf.scale), *leaf.marks)
    return Sheet(leaf.title, paper.width, paper.height, marks)


def reach_of(arc: Arc) -> tuple[float, float, float, float]:
    turns = np.radians(np.linspace(arc.start_deg, arc.end_deg, 60))
    x, y = arc.centre[0] + arc.radius * np.cos(turns), arc.centre[1] + arc.radius * np.sin(turns)
    return (float(x.min()), float(y.min()), float(x.max()), float(y.max()))


def out_of_frame(leaf) -> list[object]:
    """Marks that do not keep inside the border of the sheet."""
    left, bottom, right, top = leaf.layout.border
    found = []
    for mark in leaf.marks:
        x0, y0, x1, y1 = bounds(mark) if not isinstance(mark, Arc) else reach_of(mark)
        if x0 < left or y0 < bottom or x1 > right or y1 > top:
            found.append(mark)
    return found


def on_the_title_block(leaf) -> list[str]:
    block = shapely.box(
        leaf.layout.border[2] - 180.0,
        leaf.layout.border[1],
        leaf.layout.border[2],
        leaf.layout.border[1] + 32.0,
    )
    return [m.text for m in leaf.marks if isinstance(m, Label) and ink(m).intersects(block)]


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.stem)
def test_every_joint_has_a_page_that_keeps_inside_its_frame(sample):
    bench = bench_of(sample)
    groups = joint_groups(bench.joints, by_name(bench))
    assert sorted(j.name for group in groups for j in group) == sorted(j.name for j in bench.joints)
    leaves = leaves_of(sample)
    assert len(leaves) == len(groups)
    for leaf in leaves:
        sheet = sheet_of(leaf)
        assert overlapping_texts(sheet) == [], leaf.title
        assert struck_texts(sheet) == [], leaf.title
        assert [text for text in words(sheet) if text.endswith("…")] == [], leaf.title
        assert out_of_frame(leaf) == [], leaf.title
        assert on_the_title_block(leaf) == [], leaf.title


@pytest.mark.parametrize("seed", range(3))
def test_odd_benches_in_inches(seed):
    bench = build(random_spec(seed))
    paper = ("Letter", "A3", "Tabloid")[seed]
    layout = Layout(PAPERS[paper], shown=SHOWN_IN32, words=Words.AMERICAN)
    for leaf in joint_leaves(bench, layout):
        assert overlapping_texts(sheet_of(leaf)) == [], leaf.title
        assert out_of_frame(leaf) == [], leaf.title
        assert "housing" not in leaf.title.lower()


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.stem)
def test_what_a_dimension_says_is_what_its_points_are_apart(sample):
    """Each by hand: the distance along its direction, or the angle at its apex."""
    for _, _, views in drawn_of(sample):
        for view in views:
            for one in view.dimensions:
                if one.apex is None:
                    run = np.array(one.end) - np.array(one.start)
                    assert abs(float(run @ np.array(one.along))) == pytest.approx(
                        one.value, abs=0.01
                    )
                else:
                    a, b = (np.array(p) - np.array(one.apex) for p in (one.start, one.end))
                    cosine = float(a @ b) / (math.hypot(*a) * math.hypot(*b))
                    assert math.degrees(math.acos(cosine)) == pytest.approx(one.value, abs=0.05)


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.stem)
def test_dimensions_are_between_lines_of_the_finished_parts(sample):
    """Both ends of every length on a part are as far along its direction as a corner of the solid
    or of where the other part lies on it, or as the middle of a hole, and near a drawn edge: within
    the round that a cutter leaves beside a stop."""
    for (joint, *_), scene, views in drawn_of(sample):
        if not (joint.cuts_first or joint.cuts_second):
            continue
        for view in views:
            if isinstance(view.figure, SectionFigure):
                continue
            axes = np.array((view.figure.view.right, view.figure.view.up)).T
            solid = placed(scene.parts[view.figure.index])
            corners = solid.vertices @ axes
            laid = [c for one in joint.contacts for c in one.corners]
            middles = [m.at for m in joint.measures if m.at is not None]
            lines = shapely.multilinestrings(
                [
                    *shapely.linestrings(corners[solid.solid.edges]),
                    *(shapely.LinearRing(np.array(c.corners) @ axes) for c in joint.contacts),
                ]
            )
            marked = np.array([*laid, *middles]).reshape(-1, 3) @ axes
            corners = np.concatenate([corners, marked])
            for one in (d for d in view.dimensions if d.apex is None):
                off = np.abs((corners - np.array(one.end)) @ np.array(one.along))
                assert off.min() < 0.01, (joint.name, one.name)
                for end in (one.start, one.end):
                    assert shapely.distance(shapely.Point(end), lines) < 8.0, one.name


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.stem)
def test_all_measures_are_told_and_most_are_drawn(sample):
    drawn = told = 0
    for (group, _, views), leaf in zip(drawn_of(sample), leaves_of(sample), strict=True):
        texts = [m.text for m in leaf.marks if isinstance(m, Label) and m.role is Role.TEXT]
        for measure in group[0].measures:
            if measure.unit == "deg" and measure.value < 0.05:
                continue  # square, as is seen
            shown = (
                format_angle(measure.value)
                if measure.unit == "deg"
                else format_length(measure.value, leaf.layout.shown)
            )
            alike = {round(j.measures[group[0].measures.index(measure)].value, 3) for j in group}
            assert len(alike) > 1 or shown in texts, (leaf.title, measure.name)
            told += len(alike) == 1 and bool(measure.found_on)  # one size of the pieces themselves
        drawn += sum(len(view.dimensions) for view in views)
    assert drawn > 0.6 * told


# Sizes of the tenon's piece, of the slotted piece, and of what is bored or mortised for them: by
# the words of their names alone.
OF_THE_FIRST = ("tenon_diameter", "tenon_length", "tenon_thickness", "slot_")
OF_THE_SECOND = ("bore_diameter", "mortise_", "pilot")
LET_IN = ("round tenon", "apron tenon", "rail tenon", "post tenon", "slat tenon", "slotted screw")


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.stem)
def test_a_size_is_not_drawn_on_the_other_part_for_being_as_large(sample):
    """A slot 35.8 long in a tenon is not where a leaning bore happens to be 35.8 across."""
    for group, _, views in drawn_of(sample):
        if group[0].kind not in LET_IN:
            continue
        for view in views:
            if isinstance(view.figure, PartFigure):
                others = (OF_THE_SECOND, OF_THE_FIRST)[view.figure.index]
                wrong = [one.name for one in view.dimensions if one.name.startswith(others)]
                assert not wrong, group[0].name


def test_a_stopped_housing_is_marked_on_both_pieces():
    bench = build(load(CASE_SAMPLE).spec)
    joint = next(j for j in bench.joints if j.name.startswith("housing_bottom"))
    views = chosen(joint_scene(joint, by_name(bench)))
    section = next(v for v in views if isinstance(v.figure, SectionFigure))
    assert section.figure.cuts_both
    board = next(v for v in views if isinstance(v.figure, PartFigure) and v.figure.index == 0)
    names = {one.name for one in board.dimensions}
    assert {"housing_width", "stop_from_front"} <= names
    assert board.figure.side.name in ("face", "reverse")
    piece = next(v for v in views if isinstance(v.figure, PartFigure) and v.figure.index == 1)
    assert "notch_length" in {one.name for one in piece.dimensions}


def test_a_mitre_is_cut_along_its_edge_so_that_its_tilt_is_true():
    bench = build(load(CASE_SAMPLE).spec)
    joint = joint_of(bench, "mitre")
    views = chosen(joint_scene(joint, by_name(bench)))
    (section,) = [v for v in views if isinstance(v.figure, SectionFigure)]
    # Looking along the line that both faces and the cut share.
    for part in joint_scene(joint, by_name(bench)).parts:
        assert np.dot(part.frame.z_axis, section.figure.view.toward) == pytest.approx(0.0, abs=1e-9)
    for index, name in enumerate(("tilt_first", "tilt_second")):
        # Each beside its own part, not in the section where it might be either's.
        (seen,) = [v.figure for v in views if any(one.name == name for one in v.dimensions)]
        assert isinstance(seen, PartFigure)
        assert seen.index == index
        assert abs(np.dot(seen.view.toward, section.figure.view.toward)) == pytest.approx(1.0)


def test_the_angle_of_a_lap_is_seen_from_above():
    benches = (build(load(sample).spec) for sample in SAMPLES)
    bench = next(b for b in benches if any(j.kind == "angled lap" for j in b.joints))
    views = chosen(joint_scene(joint_of(bench, "angled lap"), by_name(bench)))
    angled = [v for v in views if any(one.unit == "deg" for one in v.dimensions)]
    assert angled
    for view in angled:
        assert abs(view.figure.view.toward[2]) == pytest.approx(1.0)


def test_joints_with_other_numbers_have_pages_of_their_own():
    bench = build(load(CASE_SAMPLE).spec)
    for group in joint_groups(bench.joints, by_name(bench)):
        assert len({joint.kind for joint in group}) == 1
        for name in ("housing_width", "housing_depth", "tail_width", "tilt_first", "tenon_length"):
            values = {round(m.value, 2) for j in group for m in j.measures if m.name == name}
            assert len(values) <= 1


def test_hatching_on_a_page_stays_in_the_cut_faces():
    """Hatch strokes of the section lie within the outlines that are drawn round them."""
    bench = build(load(CASE_SAMPLE).spec)
    joint = joint_of(bench, "mitre")
    leaf = joint_leaf((joint,), by_name(bench), Layout(PAPERS["A4"]))
    hatch = np.concatenate(
        [m.segments for m in leaf.marks if isinstance(m, Strokes) and m.role is Role.HATCH]
    )
    lines = [
        m.segments
        for m in leaf.marks
        if isinstance(m, Strokes) and m.role in (Role.VISIBLE, Role.BREAK)
    ]
    faces = shapely.union_all(
        shapely.get_parts(
            shapely.polygonize(
                list(
                    shapely.get_parts(
                        shapely.union_all(
                            shapely.linestrings(np.concatenate(lines).reshape(-1, 2, 2)),
                            grid_size=1e-4,
                        )
                    )
                )
            )
        )
    ).buffer(0.01)
    assert shapely.covers(faces, shapely.linestrings(hatch.reshape(-1, 2, 2))).all()
