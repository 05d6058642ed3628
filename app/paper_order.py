"""What the shop is to get: the papers of a project, written into a folder or only looked at."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from geometry.design.project import Project
from geometry.drawing.marks import Sheet
from geometry.sheets.printer import Edges
from shared.paper import Paper
from shared.units import Shown
from shared.words import Words

if TYPE_CHECKING:
    from exporters.pack import PackOptions


@dataclass(frozen=True, slots=True)
class PaperOrder:
    """Of which project, and how it is shown; ``square`` is what the printer's check square
    measures, mm."""

    project: Project
    paper: Paper
    shown: Shown
    words: Words
    third_angle: bool
    square: Edges
    on: date

    def write(self, folder: Path) -> tuple[Path, ...]:
        """Write the pack; the paths of its files.  Raises CannotBuild or CannotWrite."""
        from exporters.pack import write_pack  # the window starts without it

        return write_pack(self.project, folder, self._options(), self.on)

    def pages(self) -> tuple[Sheet, ...]:
        """Every page that prints, drawings and then templates."""
        from exporters.pack import pack_pages

        return pack_pages(self.project, self._options(), self.on)

    def _options(self) -> PackOptions:
        from exporters.pack import PackOptions

        return PackOptions(
            paper=self.paper,
            shown=self.shown,
            words=self.words,
            third_angle=self.third_angle,
            square=self.square,
        )
