"""Sizes that follow from the maker's numbers, each with what it follows from."""

from __future__ import annotations

import math

from geometry.bench.back import back_size
from geometry.bench.bench import Derived
from geometry.bench.case_numbers import CaseNumbers
from geometry.bench.crossed_base import DIAGONALS, BaseNumbers, crossing, outward


def derived(c: CaseNumbers, b: BaseNumbers) -> tuple[Derived, ...]:
    return (*_case(c), *_base(b))


def _case(c: CaseNumbers) -> tuple[Derived, ...]:
    back_length, back_height = back_size(c)
    rows = [
        _mm("seat_height", "Seat height", "Case", c.top, "base height + case height"),
        _mm(
            "inside_height",
            "Inside height",
            "Case",
            c.inside_height,
            "case height - 2 x board thickness",
        ),
        _mm(
            "partition_height",
            "Partition height",
            "Partitions",
            c.partition_height,
            "inside height + 2 x housing depth",
        ),
        _mm(
            "partition_depth",
            "Partition front",
            "Partitions",
            c.upright_front,
            "depth - reveal, from the back edges",
        ),
        _mm("back_length", "Back length", "Back", back_length, "inside length, rebates, back fit"),
        _mm("back_height", "Back height", "Back", back_height, "inside height, rebates, back fit"),
        _mm(
            "rebate_width",
            "Rebate width",
            "Back",
            c.rebate_width,
            "back thickness + how far it is let in",
        ),
    ]
    if c.flare > 0.0:
        run = math.hypot(c.height, c.flare)
        rows += [
            _mm("greatest_depth", "Greatest depth", "Flare", c.depth + c.flare, "depth + flare"),
            Derived(
                "front_lean",
                "Front lean",
                "Flare",
                c.front_lean_deg,
                "deg",
                "atan(flare / case height), from the vertical",
            ),
            _mm("front_slant", "Front slant", "Flare", run, "case height and flare"),
            Derived(
                "run_out_angle",
                "Run-out angle",
                "Flare",
                math.degrees(math.atan2(c.flare, c.flare_end - c.straight)),
                "deg",
                "flare over the run-out's length, from the back edge",
            ),
        ]
    return tuple(rows)


def _base(b: BaseNumbers) -> tuple[Derived, ...]:
    rows = [
        _mm(
            "leg_length",
            "Leg length",
            "Base",
            b.leg_edge,
            "base height / cos(splay), along the straight edge",
        ),
        Derived("leg_end_cut", "Leg-end cut", "Base", b.splay_deg, "deg", "the splay, from square"),
        _mm("tenon_size", "Tenon", "Base", b.tenon, "tenon rule and thickness"),
        _mm("foot_out", "Foot stands out", "Base", b.foot_out, "base height x tan(splay)"),
    ]
    place = crossing(b)
    assert place is not None
    for start, end in DIAGONALS:
        run = math.dist(b.tip(start), b.tip(end))
        from_start = math.dist(b.tip(start), place)
        words = f"{start} to {end}".replace("_", " ")
        rows += [
            _mm(
                f"stretcher_{start}_length",
                f"Stretcher, {words}",
                "Base",
                run + 2.0 * b.stretcher_height * b.tangent,
                "leg places, stretcher height x tan(splay)",
            ),
            _mm(
                f"lap_from_{start}",
                f"Lap from {start.replace('_', ' ')}",
                "Base",
                from_start,
                "where the stretchers cross, along the top edge from the tip",
            ),
        ]
    u, v = outward(b, DIAGONALS[0][1]), outward(b, DIAGONALS[1][1])
    between = math.degrees(math.acos(min(1.0, abs(u[0] * v[0] + u[1] * v[1]))))
    rows += [
        Derived("lap_angle", "Lap angle", "Base", between, "deg", "leg places"),
        _mm("lap_depth", "Lap depth", "Base", b.stretcher_height / 2.0, "half stretcher height"),
    ]
    return tuple(rows)


def _mm(name: str, title: str, group: str, value: float, follows_from: str) -> Derived:
    return Derived(name, title, group, value, "mm", follows_from)
