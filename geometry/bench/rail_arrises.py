"""Long arrises of a bench's rails, eased alike: stretchers, aprons, and the rails between them.

A run stops before its joints, or goes through into them where the tenon is narrower than the rail
by more than the run takes, so that the shoulder still closes round the mortise.  Before a lap, a
piece that a rail passes whole, or one it is housed in, it has to stop.  Upper arrises on which the
bench lies stay sharp, and so does a stretch that is too short for the size.
"""

from __future__ import annotations

from functools import partial

from geometry.bench.arris_rows import SHARE, form_row, formed, run_row, size_row, snug_at, told
from geometry.bench.constraint import Constraint, rule
from geometry.bench.corner_block_numbers import has_corner_blocks
from geometry.bench.member import Member
from geometry.bench.rail_forms import (
    APRONS,
    RAIL_FORMS,
    STRETCHERS,
    RailForm,
    behind_blocks,
    has_rails,
)
from geometry.bench.rail_runs import CLEAR, LEAST_STOP, along_stretches
from geometry.bench.trestles import has_trestles
from geometry.cuts.edge_moulding import EdgeMoulding
from geometry.design.parameter import Parameter, choice
from geometry.design.part import Part
from geometry.design.spec import BenchSpec

LOWER, ALL_FREE = "lower", "all that lie free"


def _have_upper(spec: BenchSpec) -> bool:
    """Whether any rail's upper arrises lie free."""
    return any(form.upper_free(spec) for form in RAIL_FORMS if form.present(spec))


PARAMETERS: tuple[Parameter, ...] = (
    form_row("rail_edge", "Rail arrises", "Long arrises of stretchers, aprons and rails."),
    size_row("rail_edge_size", "Rail arris size", 3.0, 30, "On both faces of the arris."),
    choice(
        "rail_edge_where",
        "Rail arrises eased",
        "Edges",
        LOWER,
        (LOWER, ALL_FREE),
        "The two lower ones, or the upper ones too where nothing lies on them.",
        applies=lambda spec: formed("rail_edge")(spec) and _have_upper(spec),
    ),
    run_row(
        "rail_edge_stop",
        "Rail arris stopped",
        15,
        "From the joints to where it begins; 0 runs through.",
        "rail_edge",
    ),
)


def _cuts(form: RailForm, spec: BenchSpec, part: Part) -> tuple[EdgeMoulding, ...]:
    if part.kind != form.kind:
        return ()
    upper_too = spec.word("rail_edge_where") == ALL_FREE
    return along_stretches(
        spec.word("rail_edge"),
        spec.number("rail_edge_size"),
        spec.number("rail_edge_stop"),
        form.arrises(spec, part, upper_too=upper_too),
        form.stretches(spec, part),
    )


def _notes(form: RailForm, spec: BenchSpec, part: Part) -> tuple[str, ...]:
    if part.kind != form.kind:
        return ()
    upper_too = spec.word("rail_edge_where") == ALL_FREE and form.upper_free(spec)
    which = "all four long arrises" if upper_too else "lower arrises"
    stop = spec.number("rail_edge_stop")
    return told(which, stop, "the joints", "through to the shoulders", part)


def _rules(form: RailForm) -> tuple[Constraint, ...]:
    """Of every form: what a moulding may take, and where it has to stop."""
    name = form.name.replace(" ", "_")
    return (
        rule(
            f"{name}_within",
            f"rail_edge rail_edge_size {form.reads}",
            lambda s: form.narrowest(s) / SHARE - s.number("rail_edge_size"),
            "the edges would take more than two thirds of a rail's thickness or height",
        ),
        rule(
            f"{name}_stop",
            f"rail_edge rail_edge_stop {form.reads}",
            lambda s: s.number("rail_edge_stop") - LEAST_STOP if form.through(s) < 0.0 else 1.0,
            "the edge would run into a lap, a housing or a piece that the rail passes whole, and "
            "open it: it must stop {3 mm} before it or more",
        ),
        rule(
            f"{name}_shoulder",
            f"rail_edge rail_edge_size rail_edge_stop {form.reads}",
            partial(_shoulder, form),
            "the edge would run through to within {2 mm} of the mortise and open the shoulder: it "
            "must be smaller, or stop {3 mm} before the joint or more",
        ),
    )


def _shoulder(form: RailForm, spec: BenchSpec) -> float:
    """Where it might run through: what is left round the mortise, or how far before it it stops."""
    through = form.through(spec)
    if through < 0.0:
        return 1.0
    stopped = spec.number("rail_edge_stop") - LEAST_STOP
    return max(stopped, through - CLEAR - spec.number("rail_edge_size"))


def _under_rail(spec: BenchSpec) -> float:
    """What trestles' stretchers keep below the shoulder of the rail between them."""
    if not has_trestles(spec):
        return 1.0
    below = (spec.number("stretcher_height") - spec.number("rail_height")) / 2.0
    return below - spec.number("rail_edge_size")


def _behind_blocks(spec: BenchSpec) -> float:
    if not has_corner_blocks(spec):
        return 1.0
    return behind_blocks(spec) - spec.number("rail_edge_size")


_BESIDES: dict[str, tuple[Constraint, ...]] = {
    STRETCHERS.name: (
        rule(
            "stretcher_edges_rail",
            "base rail_edge rail_edge_size stretcher_height rail_height",
            _under_rail,
            "the stretchers' edges would come under the rail's shoulders and open them",
        ),
    ),
    APRONS.name: (
        rule(
            "apron_edges_block",
            "rail_edge rail_edge_size apron_height apron_thickness rake splay corner_blocks "
            "corner_block_height",
            _behind_blocks,
            "the aprons' edges would come behind the corner blocks",
        ),
    ),
}


def _member(form: RailForm) -> Member:
    return Member(
        form.name,
        (),
        (*_rules(form), *_BESIDES.get(form.name, ())),
        cuts=partial(_cuts, form),
        notes=partial(_notes, form),
        present=lambda spec: formed("rail_edge")(spec) and form.present(spec),
        snug=snug_at(rail_edge_size=1.0, rail_edge_stop=10.0),
    )


CHOICE_MEMBER = Member("rail arrises", PARAMETERS, present=has_rails)

MEMBERS: tuple[Member, ...] = tuple(_member(form) for form in RAIL_FORMS)
