"""The two tables of angles in ``data/``, read as rows of numbers.

Source of both: derived from plane geometry, and as the compound table's own column says in
agreement to 0.005 deg with a chart printed in general power-saw handbooks.  Printed to four
decimals of a degree.  Pitch is from the horizontal; rake is seen from the side, splay from the
front.
"""

from __future__ import annotations

import csv
from pathlib import Path

DATA = Path(__file__).parent / "data"
PRINTED = 6e-5  # deg: half of the last decimal, and a little


def rows(name: str) -> list[dict[str, float]]:
    """Each row by its column heads, numbers only."""
    with (DATA / name).open(encoding="utf-8", newline="") as file:
        return [
            {head: float(cell) for head, cell in row.items() if head not in ("status", "source")}
            for row in csv.DictReader(file)
        ]
