"""Checks of levelling feet: whether their inserts have room in the ends of the legs."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.bench.bench import Bench
from geometry.bench.feet import LEAST_RING, has_insert, insert_skin
from geometry.bench.foot_places import foot_places
from geometry.checks.check import Check
from geometry.checks.limits_of_wood import LEAST_SKIN
from geometry.design.finding import Finding, Level, Mend
from shared.units import length_mark

# What a foot's parameters go down to.
_LEAST_BORE, _LEAST_DEPTH = 5.0, 6.0


def _inserts(bench: Bench) -> Iterator[Finding]:
    spec = bench.spec
    places = foot_places(spec)
    worst = min(places, key=lambda place: insert_skin(spec, place))
    skin, least = insert_skin(spec, worst), LEAST_SKIN.of(bench)
    lacking = [place for place in places if not has_insert(spec, place)]
    if not lacking and skin >= least - 1e-9:
        return
    place = lacking[0] if lacking else worst
    piece = f"“{bench.part(place.part).title}”"
    if not lacking:
        message = (
            f"The boring for a foot's insert leaves only {length_mark(skin)} of {piece} beside it."
        )
    elif spec.number("foot_insert_depth") > place.free:
        message = f"The boring for a foot's insert would run into the joint above it in {piece}."
    else:
        message = f"A foot's insert finds no room in the end of {piece}: the foot only bears there."
    yield Finding(
        check="insert_room" if lacking else "insert_skin",
        level=Level.THINK_AGAIN,  # where room lacks nothing is bored, so no wood is lost
        message=message,
        parts=(place.part, f"foot_{place.name}"),
        place=place.middle,
        amount=insert_skin(spec, place),
        limit=least,
        mend=_smaller(bench),
    )


def _smaller(bench: Bench) -> Mend | None:
    """Less depth first, then a smaller insert, as far as every foot needs it."""
    spec, places, least = bench.spec, foot_places(bench.spec), LEAST_SKIN.of(bench)
    bore, depth = spec.number("foot_insert"), spec.number("foot_insert_depth")
    depth = min(depth, *(place.free for place in places))
    for place in places:
        if place.lean > 0.0:
            room = place.inside - least - bore / 2.0
            depth = min(depth, max(_LEAST_DEPTH, room / place.lean))
    bore = min(bore, *(2.0 * (place.inside - least - place.lean * depth) for place in places))
    bore = min(bore, *(2.0 * (place.bears - LEAST_RING) for place in places))
    if depth < _LEAST_DEPTH or bore < _LEAST_BORE:
        return None
    sentence = f"Bore {length_mark(bore)} wide and {length_mark(depth)} deep."
    return Mend(sentence, (("foot_insert", bore), ("foot_insert_depth", depth)))


CHECKS: tuple[Check, ...] = (
    Check(
        "insert_room",
        "Inserts for levelling feet",
        "Compares the boring for a threaded insert with the end it stands in: it goes straight up, "
        "so in a leaning leg it comes nearer to one side. At least {3 mm} of wood should stay "
        "beside it (common practice, no source); under {1 mm}, or where it would meet a joint, "
        "nothing is bored and the foot only bears. In a leg that leans two ways the wood is "
        "reckoned as less than it is.",
        _inserts,
        ("levelling feet",),
        limits=(LEAST_SKIN,),
    ),
)
