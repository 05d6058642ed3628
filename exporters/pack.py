"""The pack for the shop: drawings, templates, cut list, cutting files, meshes and facts.

Everything is built in memory first and put in place together, so a pack on the disk is always
whole and of one design.  The same project, options and date give the same bytes.
"""

from __future__ import annotations

import json
import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from exporters.cutting_lines import cutting_lines
from exporters.dxf import DxfRelease, dxf_bytes, legend
from exporters.facts import facts, facts_text
from exporters.meshes import stl_bytes
from exporters.papers import drawing_sheets, drawings_bytes, template_sheets, templates_bytes
from exporters.tables import cut_list_bytes
from exporters.writing_folder import write_folder
from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.glue_ups import pieces_to_cut
from geometry.checks.all_checks import wholly_judged
from geometry.design.finding import Finding
from geometry.design.project import Project
from geometry.drawing.marks import Sheet
from geometry.sheets.layout import Layout
from geometry.sheets.printer import TRUE, Edges, correction_of
from shared.paper import PAPERS, Paper
from shared.units import SHOWN_MM, Shown
from shared.words import Words

# A cutter ground a little over size still runs out of the wood.
_RUN_OVER_MORE = 1.0
_LARGEST_FACTS = 20_000_000
_PART_NAME = re.compile(r"[a-z][a-z0-9_]{0,60}", re.ASCII)


@dataclass(frozen=True, slots=True)
class PackOptions:
    """What the maker chooses about a pack.

    ``square`` is what the check square of templates measures where they are printed, uncorrected,
    in mm along the long and the short edge of the paper.
    """

    paper: Paper = PAPERS["A4"]
    shown: Shown = SHOWN_MM
    words: Words = Words.BRITISH
    third_angle: bool = True
    square: Edges = TRUE
    dxf_release: DxfRelease = DxfRelease.R2000

    def layout(self) -> Layout:
        return Layout(self.paper, third_angle=self.third_angle, shown=self.shown, words=self.words)


def write_pack(project: Project, folder: Path, options: PackOptions, on: date) -> tuple[Path, ...]:
    """Write the pack into ``folder`` and return the paths of its files.

    An earlier pack there is replaced, with the files of pieces that no longer exist; other files
    in the folder stay.  Raises CannotBuild, CannotWrite or ValueOutOfRange (the
    square), and leaves the folder as it was.
    """
    files = pack_files(project, options, on)
    return write_folder(folder, files, stale=_earlier_pieces(folder))


def pack_files(project: Project, options: PackOptions, on: date) -> dict[str, bytes]:
    """The files of a pack, name with forward slashes -> bytes; ``on`` is the date they carry."""
    bench, found = _judged(project, options)
    run_over_by = project.spec.number("cutter_diameter") / 2.0 + _RUN_OVER_MORE
    lines = {part.name: cutting_lines(part, run_over_by) for part in bench.parts}
    content = facts(project, bench, found)
    drawn, traced = _sheets(project, bench, found, options, on)
    return {
        "drawings.pdf": drawings_bytes(project, options.layout(), on, drawn),
        "templates.pdf": templates_bytes(project, on, traced),
        "cut_list.csv": cut_list_bytes(pieces_to_cut(bench), options.shown, options.words),
        **{f"dxf/{name}.dxf": dxf_bytes(lines[name], options.dxf_release) for name in lines},
        "dxf/LAYERS.txt": legend(lines, options.words).encode("utf-8"),
        **{f"meshes/{part.name}.stl": stl_bytes(part) for part in bench.parts},
        "facts.json": facts_text(content).encode("ascii"),
    }


def pack_pages(project: Project, options: PackOptions, on: date) -> tuple[Sheet, ...]:
    """Every page of the papers of a pack: the drawings, then the templates."""
    bench, found = _judged(project, options)
    drawn, traced = _sheets(project, bench, found, options, on)
    return (*drawn, *traced)


def _judged(project: Project, options: PackOptions) -> tuple[Bench, tuple[Finding, ...]]:
    bench = replace(build(project.spec), judged_by=project.judging.limits)
    return bench, wholly_judged(bench, project.judging, project.brief, options.shown)


def _sheets(
    project: Project, bench: Bench, found: Sequence[Finding], options: PackOptions, on: date
) -> tuple[tuple[Sheet, ...], tuple[Sheet, ...]]:
    """Drawings and templates."""
    layout = options.layout()
    correction = correction_of(options.square)
    return (
        drawing_sheets(project, bench, layout, on, found),
        template_sheets(project, bench, layout, on, correction),
    )


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
