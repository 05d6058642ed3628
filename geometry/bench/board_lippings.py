"""Lippings and edge bands on the front edges of the case's boards of sheet.

A board keeps its finished depth and its front leans as it did: the joint with the lipping lies in
a plane parallel to it.  Lippings are bevelled flush with the faces of a board that leans through
its thickness, and turn a mitred corner with the boards.  Housings stop behind them.  Those on back
edges are ``back_lippings``, those on open ends ``open_end_lippings``.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import product

from geometry.bench.case import boards, has_case
from geometry.bench.case_numbers import LEFT, LIP_READS, RIGHT, CaseNumbers, case_numbers
from geometry.bench.constraint import Constraint, rule
from geometry.bench.edges import edges_of
from geometry.bench.lipped import (
    FRONT_ALONE,
    LIPPED,
    LIPPED_ALONG,
    moved,
    strip_measures,
    strip_word,
)
from geometry.bench.member import Member
from geometry.cuts.cut import Blank, Cut
from geometry.cuts.saw import SawCut
from geometry.design.joint import Joint, Measure
from geometry.design.parameter import Parameter, choice, length
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec
from geometry.joints.glued_faces import glued_faces
from geometry.joints.mitred_strips import mitred_strips
from geometry.primitives.frame import Frame, Vec2, Vec3, scale, unit

PARAMETERS: tuple[Parameter, ...] = (
    length(
        "board_lip",
        "Board lipping",
        "Case",
        6,
        0.4,
        30,
        "Thickness of the lipping or edge band on the case's boards of sheet.",
        step=0.1,
    ),
    choice(
        "board_lipped",
        "Boards lipped along",
        "Case",
        FRONT_ALONE,
        LIPPED_ALONG,
        "Back edges show on a bench that stands free; ends where no panel is mitred to them.",
    ),
)

BOARD_LIPPING = "board lipping"  # the kind of part

CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "board_lip_housing",
        f"reveal housing_cover depth {LIP_READS}",
        lambda s: _behind_lipping(case_numbers(s)),
        "the housings would be cut into the lipping of the boards",
    ),
    rule(
        "top_lip_straight",
        "top_made_of flare flare_right deep_end",
        lambda s: -case_numbers(s).greatest_flare if case_numbers(s).lips[0] > 0.0 else 0.0,
        "a lipping on the top needs a front that is straight from end to end, without flare",
    ),
    rule(
        "bottom_lip_straight",
        "bottom_made_of flare flare_right deep_end",
        lambda s: -_two_leans(case_numbers(s)),
        "a lipping on the bottom needs a front that leans alike from end to end",
    ),
)


def _behind_lipping(c: CaseNumbers) -> float:
    """How far behind the lippings all housings stop."""
    return c.sheet_front - (c.upright_front - c.cover)


def _two_leans(c: CaseNumbers) -> float:
    """By how much the flares differ that a lipped bottom would have to lean with."""
    if c.lips[1] <= 0.0 or not c.both_flare:
        return 0.0
    return abs(c.flare_left.amount - c.flare_right.amount)


def has_board_lippings(spec: BenchSpec) -> bool:
    c = case_numbers(spec)
    ends = (c.left.mitred or c.right.mitred) and c.lips[2] > 0.0
    return has_case(spec) and (c.lips[0] > 0.0 or c.lips[1] > 0.0 or ends)


@dataclass(frozen=True, slots=True)
class Lip:
    """The lipping of one board, in the frame of ``core``, the board as it is cut.

    The joint's plane is y = ``back`` + ``along`` x + ``through`` z, the front's ``behind`` farther
    out.  ``low`` and ``high`` tell which ends are mitred; ``run`` is from where to where its front
    reaches in x, over the lippings of its ends.
    """

    core: Part
    thickness: float
    behind: float
    back: float
    along: float
    through: float
    low: bool
    high: bool
    run: Vec2

    def point(self, x: float, z: float, out: float) -> Vec3:
        return (x, self.back + self.along * x + self.through * z + out, z)


@lru_cache(maxsize=64)
def lips(spec: BenchSpec) -> tuple[Lip, ...]:
    """Those of all boards of sheet."""
    c = case_numbers(spec)
    found = []
    for core in boards(c, spec.word("timber")):
        behind = c.behind(core.name)
        if behind > 0.0:
            found.append(_lip(c, core, behind))
    return tuple(found)


def _lip(c: CaseNumbers, core: Part, behind: float) -> Lip:
    blank = core.shape.blank
    along = through = 0.0
    back = c.depth - behind - c.back_lip(core.name)
    if core.kind == "end panel":
        side = core.name.removeprefix("end_panel_")
        flare = c.flare_of(side).amount
        # The left panel's x runs down from the top, where it is deepest.
        along = flare / c.height * (-1.0 if side == LEFT else 1.0)
        back += flare if side == LEFT else 0.0
        run = (0.0, blank.length)
        return Lip(core, c.lips[2], behind, back, along, 0.0, low=True, high=True, run=run)
    left, right = (c.end_lip(core.name, side) for side in (LEFT, RIGHT))
    if core.name == "bottom":
        bevel = c.greatest_flare * c.thickness / c.height
        through, back = -bevel / blank.thickness, back + bevel
        run = (0.0 - left, blank.length + right)
        ends = c.left.mitred, c.right.mitred
        return Lip(core, c.lips[1], behind, back, 0.0, through, *ends, run)
    run = (0.0 - right, blank.length + left)
    return Lip(core, c.lips[0], behind, back, 0.0, 0.0, c.right.mitred, c.left.mitred, run)


def strip_frame(lip: Lip) -> tuple[Frame, Blank]:
    """Where a lipping's blank stands and how large it is: x along the board, face side to the
    front, face edge at the inside of the case.  Its faces lie in front and joint."""
    local_x, local_y = unit((1.0, lip.along, 0.0)), unit((0.0, lip.through, 1.0))
    frame = lip.core.frame
    axes = Frame.of(
        frame.to_bench(lip.point(0.0, 0.0, lip.behind)),
        frame.turn_to_bench(local_x),
        frame.turn_to_bench(local_y),
    )
    sizes = lip.core.shape.blank
    corners = [
        axes.to_local(frame.to_bench(lip.point(x, z, out)))
        for x, z, out in product(lip.run, (0.0, sizes.thickness), (0.0, lip.behind))
    ]
    low = tuple(min(corner[k] for corner in corners) for k in (0, 1))
    high = tuple(max(corner[k] for corner in corners) for k in (0, 1))
    blank = Blank(round(high[0] - low[0], 9), round(high[1] - low[1], 9), round(lip.thickness, 9))
    return replace(axes, origin=axes.to_bench((low[0], low[1], 0.0))), blank


def _strip(spec: BenchSpec, lip: Lip) -> Part:
    core = lip.core
    frame, blank = strip_frame(lip)
    return Part(
        name=f"{core.name}_lipping",
        title=f"{strip_word(lip.thickness)}, {core.title[:1].lower()}{core.title[1:]}",
        kind=BOARD_LIPPING,
        material=spec.word("timber"),
        shape=Shape(blank, tuple(_saw_cuts(case_numbers(spec), lip, frame))),
        frame=frame,
    )


def _saw_cuts(c: CaseNumbers, lip: Lip, frame: Frame) -> Iterator[Cut]:
    """Flush with the faces of the board, and along those of its mitres that no joint tells of."""
    if abs(lip.through) > 0.0:
        for z, way in ((0.0, -1.0), (lip.core.shape.blank.thickness, 1.0)):
            yield _sawn("bevel", lip, frame, lip.point(0.0, z, lip.behind), (0.0, 0.0, way))
    for mitred, low in ((lip.low, True), (lip.high, False)):
        if mitred and _leans(c, *corner_of(lip.core.name, low=low)):
            yield mitre_cut(lip, frame, low=low)


def corner_of(name: str, *, low: bool) -> tuple[str, str]:
    """At which end of the bench, and whether at top or bottom, an end of a board's x stands."""
    if name.startswith("end_panel_"):
        side = name.removeprefix("end_panel_")
        return side, "top" if (side == LEFT) == low else "bottom"
    return (LEFT if (name == "bottom") == low else RIGHT), name


def _leans(c: CaseNumbers, side: str, where: str) -> bool:
    """Whether a bottom leans there and the end does not."""
    return where == "bottom" and c.bevel(side) != c.greatest_flare * c.thickness / c.height


def mitre_cut(lip: Lip, frame: Frame, *, low: bool) -> SawCut:
    """A mitre goes from the end of the outside face to as far in as the board is thick."""
    sizes = lip.core.shape.blank
    x, way = (0.0, -1.0) if low else (sizes.length, 1.0)
    outward = unit((way, 0.0, -1.0))
    return _sawn("mitre", lip, frame, lip.point(x, sizes.thickness, lip.behind), outward)


def _sawn(title: str, lip: Lip, frame: Frame, point: Vec3, outward: Vec3) -> SawCut:
    core = lip.core.frame
    return SawCut(
        title,
        frame.to_local(core.to_bench(point)),
        frame.turn_to_local(core.turn_to_bench(outward)),
    )


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    return tuple(_strip(spec, lip) for lip in lips(spec))


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    c, found = case_numbers(spec), lips(spec)
    glued = (_glued(lip, c.back_lip(lip.core.name), parts) for lip in found)
    return (*glued, *_turned(c, {lip.core.name: lip for lip in found}, parts))


def _glued(lip: Lip, back_lip: float, parts: Mapping[str, Part]) -> Joint:
    core = parts[lip.core.name]
    strip = parts[f"{core.name}_lipping"]
    sizes = core.shape.blank
    t, long = sizes.thickness, sizes.length
    near, far = (t if lip.low else 0.0), (long - t if lip.high else long)
    wide = sizes.width + lip.behind + back_lip
    corners = tuple(
        core.frame.to_bench(lip.point(x, z, 0.0))
        for x, z in ((near, 0.0), (far, 0.0), (long, t), (0.0, t))
    )
    return glued_faces(
        strip.name,
        LIPPED,
        strip,
        core,
        corners,
        strip.frame.z_axis,
        (*strip_measures(core, strip, corners, wide), *_bevel(lip)),
    )


def _bevel(lip: Lip) -> tuple[Measure, ...]:
    """Of a board whose front leans through its thickness."""
    if abs(lip.through) <= 0.0:
        return ()
    bevel = math.degrees(math.atan(abs(lip.through)))
    return (Measure("lipping_bevel", bevel, "deg", "of the lipping's edges, from square"),)


def _turned(c: CaseNumbers, found: Mapping[str, Lip], parts: Mapping[str, Part]) -> Iterator[Joint]:
    """Where lippings meet in a mitre, or one of them meets the board that has none.

    A bottom that leans and an end that does not meet in no plain outline, and are not told of.
    """
    for end, where in product((c.left, c.right), ("top", "bottom")):
        panel = f"end_panel_{end.side}"
        holders = [name for name in (where, panel) if name in found]
        if not end.mitred or not holders or _leans(c, end.side, where):
            continue
        lip = found[holders[0]]
        first, second = (
            parts[f"{name}_lipping" if name in found else name] for name in (where, panel)
        )
        board = parts[holders[0]]
        at_low = corner_of(holders[0], low=True) == (end.side, where)
        x, step = (0.0, 1.0) if at_low else (board.shape.blank.length, -1.0)
        t = board.shape.blank.thickness
        corners = tuple(
            board.frame.to_bench(lip.point(x + step * (t - z), z, out))
            for z, out in ((t, 0.0), (t, lip.behind), (0.0, lip.behind), (0.0, 0.0))
        )
        normal = board.frame.turn_to_bench(unit((-step, 0.0, -1.0)))
        if holders[0] == panel:
            normal = scale(normal, -1.0)
        cut_first, cut_second = (
            mitre_cut(
                found[name],
                parts[f"{name}_lipping"].frame,
                low=corner_of(name, low=True) == (end.side, where),
            )
            if name in found
            else None
            for name in (where, panel)
        )
        yield mitred_strips(
            f"mitre_lipping_{where}_{end.side}",
            (first, second),
            (cut_first, cut_second),
            corners,
            normal,
        )


def _cuts(spec: BenchSpec, part: Part) -> tuple[Cut, ...]:
    """The edges of the whole board, on its lipping."""
    if part.kind != BOARD_LIPPING:
        return ()
    cores = (lip.core for lip in lips(spec) if f"{lip.core.name}_lipping" == part.name)
    return tuple(
        moved(cut, core.frame, part.frame) for core in cores for cut in edges_of(spec, core)
    )


MEMBER = Member(
    "board lippings",
    PARAMETERS,
    CONSTRAINTS,
    _parts,
    _joints,
    _cuts,
    present=has_board_lippings,
    snug=lambda _spec: ({"board_lip": 0.4},),
)
