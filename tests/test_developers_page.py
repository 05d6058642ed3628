"""The contributor's page keeps its promises: its example runs, its map exists."""

from __future__ import annotations

import io
import re
from contextlib import redirect_stdout
from pathlib import Path

ROOT = Path(__file__).parents[1]
PAGE = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")


def test_the_engine_in_ten_lines_runs() -> None:
    code = re.search(r"```python\n(.*?)```", PAGE, re.DOTALL)
    assert code
    said = io.StringIO()
    with redirect_stdout(said):
        exec(compile(code[1], "DEVELOPERS.md", "exec"), {})
    lines = said.getvalue().splitlines()
    assert any(line.startswith("Top Blank(length=1400.0, width=435.0") for line in lines)
    assert sum("cm³" in line for line in lines) == 13  # case 3, uprights 3, back, base 6


def test_every_place_it_names_exists() -> None:
    for name in re.findall(r"`((?:geometry|tests|exporters|app|scripts|shared)/[\w/.]*)`", PAGE):
        assert (ROOT / name).exists(), name
