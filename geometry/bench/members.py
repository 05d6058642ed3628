"""The members of a bench, in the order of the story stick and of the lists of parts."""

from __future__ import annotations

from functools import lru_cache

from geometry.bench import (
    aprons,
    as_cut,
    back,
    back_rest,
    base_place,
    board_lippings,
    bridled_legs,
    carving,
    case,
    corner_blocks,
    crossed_base,
    dovetailed_ends,
    drawers,
    edges,
    feet,
    fixings,
    flares,
    four_legs,
    glue_ups,
    housed_ends,
    housings,
    left_to_fit,
    lid,
    lid_box,
    lid_lipping,
    lippings,
    materials,
    mitre_tenons,
    moulded_legs,
    openings,
    overall,
    panel_ends,
    panel_feet,
    panel_lippings,
    partition_arrises,
    partition_lippings,
    partitions,
    plinth,
    post_wedges,
    round_legs,
    seat_arrises,
    seat_board,
    seat_rail,
    shelves,
    trestles,
)
from geometry.bench.member import Member
from geometry.design.spec import BenchSpec

# Every member there is.
MEMBERS: tuple[Member, ...] = (
    overall.MEMBER,
    case.MEMBER,
    flares.MEMBER,
    seat_board.MEMBER,
    panel_ends.MEMBER,
    housed_ends.MEMBER,
    dovetailed_ends.MEMBER,
    panel_lippings.MEMBER,
    seat_rail.MEMBER,
    partitions.MEMBER,
    housings.MEMBER,
    openings.MEMBER,
    shelves.MEMBER,
    lippings.MEMBER,
    partition_lippings.MEMBER,
    board_lippings.MEMBER,
    drawers.MEMBER,
    carving.MEMBER,
    back.MEMBER,
    edges.MEMBER,
    edges.MOULDED_MEMBER,
    lid_box.MEMBER,
    lid.MEMBER,
    lid_lipping.MEMBER,
    back_rest.CHOICE_MEMBER,
    back_rest.MEMBER,
    post_wedges.MEMBER,
    mitre_tenons.CHOICE_MEMBER,
    mitre_tenons.MEMBER,
    glue_ups.MEMBER,
    glue_ups.TENON_MEMBER,
    base_place.MEMBER,
    bridled_legs.MEMBER,
    crossed_base.MEMBER,
    trestles.MEMBER,
    four_legs.MEMBER,
    aprons.MEMBER,
    corner_blocks.CHOICE_MEMBER,
    corner_blocks.MEMBER,
    round_legs.MEMBER,
    plinth.MEMBER,
    panel_feet.MEMBER,
    partition_arrises.CHOICE_MEMBER,
    partition_arrises.MEMBER,
    moulded_legs.CHOICE_MEMBER,
    moulded_legs.BRIDLED_MEMBER,
    moulded_legs.FOUR_MEMBER,
    seat_arrises.CHOICE_MEMBER,
    seat_arrises.MEMBER,
    feet.CHOICE_MEMBER,
    feet.MEMBER,
    feet.LEVELLING_MEMBER,
    fixings.CHOICE_MEMBER,
    fixings.MEMBER,
    materials.MEMBER,
    as_cut.CHOICE_MEMBER,
    as_cut.MEMBER,
    left_to_fit.MEMBER,
)


@lru_cache(maxsize=256)
def present_members(spec: BenchSpec) -> tuple[Member, ...]:
    """Those that this bench has."""
    return tuple(member for member in MEMBERS if member.present(spec))


def has(spec: BenchSpec, name: str) -> bool:
    """Whether the bench has the member of this name."""
    return any(member.name == name for member in present_members(spec))
