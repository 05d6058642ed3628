"""The facts of a bench as plain data for other programs: names, numbers, units.

Millimetres, degrees, cubic millimetres.  Nothing is rounded and nothing is in the maker's unit;
sentences are in British words with millimetres.  Every piece of the bench is an entry of its own,
so that a name here is also the name of its mesh and of its cutting file.
"""

from __future__ import annotations

import json
from collections.abc import Sequence

from exporters.pieces import cut_alike, finished_size
from geometry.advice.advised import Advice
from geometry.advice.all_advice import advice
from geometry.bench.bench import Bench
from geometry.bench.catalogue import PARAMETERS
from geometry.bench.derived import Derived
from geometry.bench.limits import limits
from geometry.checks.limit import Limit
from geometry.checks.limit_rows import LIMITS
from geometry.design.brief import ROWS as BRIEF_ROWS
from geometry.design.brief import Brief, BriefRow
from geometry.design.finding import Finding
from geometry.design.joint import Joint
from geometry.design.parameter import Parameter
from geometry.design.part import Part
from geometry.design.project import LINE_FIELDS, Project
from geometry.design.spec import BenchSpec
from geometry.solids.measure import volume_of
from shared.units import SHOWN_MM, in_units

Fact = str | float | bool | None | dict[str, "Fact"] | list["Fact"]


def facts(project: Project, bench: Bench, findings: Sequence[Finding]) -> dict[str, Fact]:
    """Everything about a bench; ``parameters``, ``derived`` and ``parts`` by name."""
    first = {part.name: group[0].name for group in cut_alike(bench.parts) for part in group}
    return {
        "project": {field: getattr(project, field) for field in (*LINE_FIELDS, "notes")},
        "parameters": {row.name: _parameter(row, bench.spec) for row in PARAMETERS},
        "derived": {size.name: _derived(size) for size in bench.derived},
        "parts": {part.name: _part(part, first[part.name]) for part in bench.parts},
        "joints": [_joint(joint) for joint in bench.joints],
        "findings": [finding_fact(finding) for finding in findings],
        "limits": {row.name: _limit(row, bench) for row in LIMITS},
        "brief": {row.name: _said(row, project.brief) for row in BRIEF_ROWS},
        "advice": [_advice(one) for one in advice(bench, project.brief)],
    }


def facts_text(content: dict[str, Fact]) -> str:
    """One JSON document in plain ASCII; ValueError for a number that JSON does not have."""
    return json.dumps(content, indent=2, allow_nan=False) + "\n"


def _parameter(row: Parameter, spec: BenchSpec) -> Fact:
    found: dict[str, Fact] = {"value": spec.value(row.name), "unit": row.unit}
    if row.unit == "choice":
        found |= {"minimum": None, "maximum": None, "choices": list(row.choices)}
    elif row.unit == "text":
        found |= {"minimum": None, "maximum": None}
    else:
        now = limits(spec, row.name)
        found |= {"minimum": now.minimum, "maximum": now.maximum}
    return found | {
        "description": row.description,
        "title": row.title,
        "group": row.group,
        "applies": row.applies(spec),
    }


def _said(row: BriefRow, brief: Brief) -> Fact:
    """A value of the brief; 0 and an empty text have not been said."""
    return {
        "value": getattr(brief, row.name),
        "unit": row.unit,
        "title": row.title,
        "group": row.group,
        "applies": row.applies(brief),
    }


def _advice(one: Advice) -> Fact:
    return {
        "name": one.name,
        "title": one.title,
        "unit": one.unit,
        "now": one.now,
        "low": one.low,
        "high": one.high,
        "wanted": one.wanted,
        "met": one.met,
        "reason": in_units(one.reason, SHOWN_MM),
        "source": one.source,
        "changes": dict(one.changes),
        "hindrance": in_units(one.hindrance, SHOWN_MM),
    }


def _derived(size: Derived) -> Fact:
    return {
        "value": size.value,
        "unit": size.unit,
        "title": size.title,
        "group": size.group,
        "follows_from": size.follows_from,
    }


def _part(part: Part, same_as: str) -> Fact:
    blank = part.shape.blank
    length, width, thickness = finished_size(part)
    return {
        "material": part.material,
        "blank_length": blank.length,
        "blank_width": blank.width,
        "blank_thickness": blank.thickness,
        "finished_length": length,
        "finished_width": width,
        "finished_thickness": thickness,
        "volume_mm3": volume_of(part.shape),
        "count": 1,
        "same_as": same_as,
        "title": part.title,
        "kind": part.kind,
        "allowance": part.allowance,
        "allowance_across": part.allowance_across,
        "grain_across": part.grain_across,
    }


def _joint(joint: Joint) -> Fact:
    return {
        "name": joint.name,
        "kind": joint.kind,
        "parts": list(joint.parts),
        "fit": joint.fit,
        "measures": {
            measure.name: {
                "value": measure.value,
                "unit": measure.unit,
                "meaning": in_units(measure.meaning, SHOWN_MM),
            }
            for measure in joint.measures
        },
    }


def _limit(row: Limit, bench: Bench) -> Fact:
    return {
        "value": row.of(bench),
        "unit": row.unit,
        "default": row.default,
        "title": in_units(row.title, SHOWN_MM),
        "source": in_units(row.source, SHOWN_MM),
    }


def finding_fact(finding: Finding) -> Fact:
    """One finding as data; ``set_aside`` is the maker's reason, or None while it stands.

    ``worse`` says of one that stands again with what it had been set aside; None of any other.
    """
    mend = finding.mend
    return {
        "check": finding.check,
        "level": finding.level.value,
        "message": in_units(finding.message, SHOWN_MM),
        "parts": list(finding.parts),
        "place": None if finding.place is None else list(finding.place),
        "amount": finding.amount,
        "limit": finding.limit,
        "unit": finding.unit,
        "estimate": finding.estimate,
        "set_aside": finding.set_aside or None,
        "worse": in_units(finding.worse, SHOWN_MM) or None,
        "mend": None
        if mend is None
        else {"sentence": in_units(mend.sentence, SHOWN_MM), "values": dict(mend.values)},
    }
