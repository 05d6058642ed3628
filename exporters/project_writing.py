"""Writing project files, as the table in ``project_file`` says.  Same project, same bytes."""

from __future__ import annotations

import json
from pathlib import Path

from exporters.kept_section import SECTION_UNITS, section_fields
from exporters.project_file import (
    BEFORE_AMOUNTS,
    BEFORE_JUDGING,
    BEFORE_SECTIONS,
    FORMAT,
    TEXTS,
    VERSION,
)
from exporters.writing import write_file
from geometry.bench.catalogue import PARAMETERS
from geometry.checks.limit_rows import BY_NAME as LIMITS
from geometry.design.brief import NO_BRIEF, Brief, BriefRow
from geometry.design.brief import ROWS as BRIEF_ROWS
from geometry.design.cutting_plane import Plane
from geometry.design.judging import AS_FOUND, Judging, SetAside
from geometry.design.parameter import Parameter, Value
from geometry.design.project import Project


def save(project: Project, path: Path) -> None:
    """Write a project file, wholly or not at all; CannotWrite if it cannot be."""
    write_file(path, project_bytes(project))


def project_bytes(project: Project) -> bytes:
    """The file's content; the same project gives the same bytes."""
    judging = project.judging
    head: dict[str, object] = {"format": FORMAT, "version": _version(project)}
    head |= {field: getattr(project, field) for field in TEXTS}
    lines = [f"  {_json(field)}: {_json(value)}," for field, value in head.items()]
    rows = [
        f"    {_json(row.name)}: {_json(_entry(row, project.spec.value(row.name)))}"
        for row in PARAMETERS
    ]
    blocks = [_block("parameters", "{", rows, "}"), *_judging_blocks(judging)]
    blocks += _section_blocks(project.section)
    text = "\n".join(["{", *lines, *_brief_lines(project.brief), ",\n".join(blocks), "}", ""])
    return text.encode("utf-8")


def _version(project: Project) -> int:
    """The first that knew of all that the project has."""
    judging = project.judging
    if project.section is not None:
        return VERSION
    if any(one.amount is not None or one.level for one in judging.set_aside):
        return BEFORE_SECTIONS
    if judging != AS_FOUND or not project.brief.blank:
        return BEFORE_AMOUNTS
    return BEFORE_JUDGING


def _block(name: str, opening: str, rows: list[str], closing: str) -> str:
    return "\n".join([f"  {_json(name)}: {opening}", ",\n".join(rows), f"  {closing}"])


def _judging_blocks(judging: Judging) -> list[str]:
    blocks = []
    if judging.limits:
        rows = [
            f"    {_json(name)}: {_json({'value': value, 'unit': LIMITS[name].unit})}"
            for name, value in judging.limits
        ]
        blocks.append(_block("limits", "{", rows, "}"))
    if judging.set_aside:
        rows = [f"    {_json(_aside_entry(one))}" for one in judging.set_aside]
        blocks.append(_block("set_aside", "[", rows, "]"))
    return blocks


def _aside_entry(one: SetAside) -> dict[str, object]:
    entry: dict[str, object] = {"check": one.check, "parts": list(one.parts), "reason": one.reason}
    if one.amount is not None:
        entry["amount"] = one.amount
    return entry | {"level": one.level} if one.level else entry


def _section_blocks(section: Plane | None) -> list[str]:
    if section is None:
        return []
    rows = [
        f"    {_json(name)}: {_json(_with_unit(value, SECTION_UNITS[name]))}"
        for name, value in section_fields(section).items()
    ]
    return [_block("section", "{", rows, "}")]


def _brief_lines(brief: Brief) -> list[str]:
    """What has been said; no lines at all where nothing has."""
    rows = []
    for row in BRIEF_ROWS:
        value = getattr(brief, row.name)
        if value != getattr(NO_BRIEF, row.name):
            rows.append(f"    {_json(row.name)}: {_json(_entry(row, value))}")
    return ['  "brief": {', ",\n".join(rows), "  },"] if rows else []


def _entry(row: Parameter | BriefRow, value: Value) -> dict[str, object]:
    return _with_unit(value, row.unit)


def _with_unit(value: Value, unit: str) -> dict[str, object]:
    if isinstance(value, float) and value == round(value):
        return {"value": round(value), "unit": unit}
    return {"value": value, "unit": unit}


def _json(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, allow_nan=False)
