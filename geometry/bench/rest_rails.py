"""The rails of a back rest, tenoned between its posts, and the slats tenoned between two rails."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import lru_cache

from geometry.bench.rest_numbers import (
    Rail,
    RestNumbers,
    rail_frame,
    rail_reach,
    rail_tenon,
    rails,
    slat_middles,
    slat_tenons,
)
from geometry.cuts.cut import Blank
from geometry.design.joint import Joint
from geometry.design.part import Part, Shape
from geometry.joints.leaning_tenon import LeaningTenon, leaning_tenon
from geometry.primitives.frame import Frame

_SIDES = ((-1.0, "left"), (1.0, "right"))


def rail_parts(r: RestNumbers, timber: str) -> tuple[Part, ...]:
    """Every rail, then every slat."""
    return (
        *(_rail(r, rail, bay, timber) for rail in rails(r) for bay in range(r.posts - 1)),
        *(_slat(r, name, title, middle, timber) for name, title, middle, _ in _slats(r)),
    )


def _named(r: RestNumbers, rail: Rail, bay: int) -> str:
    return rail.name if r.posts == 2 else f"{rail.name}_bay_{bay + 1}"


def _titled(r: RestNumbers, title: str, bay: int) -> str:
    return title if r.posts == 2 else f"{title}, bay {bay + 1}"


def _rail(r: RestNumbers, rail: Rail, bay: int, timber: str) -> Part:
    """Face side to the sitter, face edge up, x from its left end."""
    low, high = rail_reach(r, rail, bay, -1.0), rail_reach(r, rail, bay, 1.0)
    flat = rail_frame(r, rail.high)
    return Part(
        name=_named(r, rail, bay),
        title=_titled(r, rail.title, bay),
        kind="rest rail",
        material=timber,
        shape=Shape(Blank(high - low, rail.high - rail.low, r.rail_thickness), ()),
        frame=Frame(flat.to_bench((low, 0.0, 0.0)), flat.x_axis, flat.y_axis, flat.z_axis),
    )


def _slats(r: RestNumbers) -> Iterator[tuple[str, str, float, int]]:
    """Name, title, middle and bay of every slat."""
    for bay in range(r.posts - 1) if r.slats else ():
        for k, middle in enumerate(slat_middles(r, bay), 1):
            name = f"slat_{k}" if r.posts == 2 else f"slat_{bay + 1}_{k}"
            yield name, _titled(r, f"Slat {k}", bay), middle, bay


def _slat(r: RestNumbers, name: str, title: str, middle: float, timber: str) -> Part:
    """Face side to the sitter, x down from the end of its upper tenon."""
    at = slat_tenons(r, middle)[1]
    flat = at.frame
    length = round(at.face + 2.0 * r.slat_tenon, 9)
    start = flat.to_bench((-r.slat_tenon, 0.0, 0.0))
    return Part(
        name=name,
        title=title,
        kind="slat",
        material=timber,
        shape=Shape(Blank(length, r.slat_width, r.slat_thickness), ()),
        frame=Frame(start, flat.x_axis, flat.y_axis, flat.z_axis),
    )


Ends = tuple[LeaningTenon, LeaningTenon]


@lru_cache(maxsize=512)
def rail_places(r: RestNumbers) -> dict[str, Ends]:
    """By name, the tenons of every rail, left and right."""
    return {
        _named(r, rail, bay): (rail_tenon(r, rail, bay, -1.0), rail_tenon(r, rail, bay, 1.0))
        for rail in rails(r)
        for bay in range(r.posts - 1)
    }


@lru_cache(maxsize=512)
def slat_places(r: RestNumbers) -> dict[str, Ends]:
    """By name, the tenons of every slat, upper and lower."""
    return {name: slat_tenons(r, middle) for name, _, middle, _ in _slats(r)}


def rail_joints(r: RestNumbers, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    """Each rail in two posts, and each slat in two rails."""
    found: list[Joint] = []
    for rail in rails(r):
        for bay in range(r.posts - 1):
            piece = parts[_named(r, rail, bay)]
            for way, side in _SIDES:
                post = parts[f"post_{bay + (1 if way < 0.0 else 2)}"]
                at = rail_tenon(r, rail, bay, way)
                found.append(leaning_tenon(f"{piece.name}_{side}", "rail tenon", piece, post, at))
    upper, lower = rails(r)[0], rails(r)[-1]
    for name, _, middle, bay in _slats(r):
        for end, rail, at in zip(
            ("upper", "lower"), (upper, lower), slat_tenons(r, middle), strict=True
        ):
            holder = parts[_named(r, rail, bay)]
            found.append(leaning_tenon(f"{name}_{end}", "slat tenon", parts[name], holder, at))
    return tuple(found)
