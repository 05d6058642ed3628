"""The pack for the shop: drawings, templates, cut list, cutting files, meshes and facts.

Everything is built in memory first and put in place together, so a pack on the disk is always
whole and of one design.  The same project, options and date give the same bytes.
"""

from __future__ import annotations

import json
import re
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from exporters.cutting_lines import cutting_lines
from exporters.dxf import DxfRelease, dxf_bytes, legend
from exporters.facts import facts, facts_text
from exporters.meshes import stl_bytes
from exporters.papers import drawings_bytes, templates_bytes
from exporters.tables import cut_list_bytes
from exporters.writing_folder import write_folder
from geometry.bench.build import build
from geometry.bench.glue_ups import pieces_to_cut
from geometry.checks.all_checks import wholly_judged
from geometry.design.project import Project
from geometry.sheets.layout import Layout
from shared.paper import PAPERS, Paper
from shared.units import SHOWN_MM, Shown
from shared.words import Words

# A cutter ground a little over size still runs out of the wood.
_RUN_OVER_MORE = 1.0
_LARGEST_FACTS = 20_000_000
_PART_NAME = re.compile(r"[a-z][a-z0-9_]{0,60}", re.ASCII)


@dataclass(frozen=True, slots=True)
class PackOptions:
    """What the maker chooses about a pack."""

    paper: Paper = PAPERS["A4"]
    shown: Shown = SHOWN_MM
    words: Words = Words.BRITISH
    third_angle: bool = True
    dxf_release: DxfRelease = DxfRelease.R2000

    def layout(self) -> Layout:
        return Layout(self.paper, third_angle=self.third_angle, shown=self.shown, words=self.words)


def write_pack(project: Project, folder: Path, options: PackOptions, on: date) -> tuple[Path, ...]:
    """Write the pack into ``folder`` and return the paths of its files.

    An earlier pack there is replaced, with the files of pieces that no longer exist; other files
    in the folder stay.  Raises CannotBuild or CannotWrite, and leaves the folder as it was.
    """
    files = pack_files(project, options, on)
    return write_folder(folder, files, stale=_earlier_pieces(folder))


def pack_files(project: Project, options: PackOptions, on: date) -> dict[str, bytes]:
    """The files of a pack, name with forward slashes -> bytes; ``on`` is the date they carry."""
    bench = replace(build(project.spec), judged_by=project.judging.limits)
    found = wholly_judged(bench, project.judging, project.brief, options.shown)
    run_over_by = project.spec.number("cutter_diameter") / 2.0 + _RUN_OVER_MORE
    lines = {part.name: cutting_lines(part, run_over_by) for part in bench.parts}
    content = facts(project, bench, found)
    layout = options.layout()
    return {
        "drawings.pdf": drawings_bytes(project, bench, layout, on, found),
        "templates.pdf": templates_bytes(project, bench, layout, on),
        "cut_list.csv": cut_list_bytes(pieces_to_cut(bench), options.shown, options.words),
        **{f"dxf/{name}.dxf": dxf_bytes(lines[name], options.dxf_release) for name in lines},
        "dxf/LAYERS.txt": legend(lines).encode("utf-8"),
        **{f"meshes/{part.name}.stl": stl_bytes(part) for part in bench.parts},
        "facts.json": facts_text(content).encode("ascii"),
    }


def _earlier_pieces(folder: Path) -> list[str]:
    """The cutting files and meshes that the facts of an earlier pack there speak of.

    Anything unreadable counts as no earlier pack: then nothing is taken away.
    """
    earlier = folder / "facts.json"
    try:
        if not earlier.is_file():
            return []
        with earlier.open("rb") as file:
            names = list(json.loads(file.read(_LARGEST_FACTS))["parts"])
    except (OSError, ValueError, LookupError, TypeError, RecursionError):
        return []
    pieces = [name for name in names if isinstance(name, str) and _PART_NAME.fullmatch(name)]
    return [file for name in pieces for file in (f"dxf/{name}.dxf", f"meshes/{name}.stl")]
