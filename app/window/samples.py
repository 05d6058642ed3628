"""The sample benches that come with the program."""

from __future__ import annotations

from pathlib import Path

from exporters.project_file import SUFFIX

FOLDER = Path(__file__).resolve().parents[2] / "sample_projects"


def sample_files() -> tuple[Path, ...]:
    """The sample projects by name; none when they were not installed."""
    return tuple(sorted(FOLDER.glob(f"*{SUFFIX}")))


def spoken_name(path: Path) -> str:
    """``reading_room`` as ``Reading room``."""
    words = path.stem.replace("_", " ").replace("-", " ")
    return words[:1].upper() + words[1:]
