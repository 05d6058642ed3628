"""The picture of the window is a picture of that window, and refusals are said in words."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from app.window.portrait import main
from app.window.samples import sample_files


@pytest.mark.parametrize("sample", sample_files()[::4], ids=lambda path: path.stem)
def test_a_drawing_fills_the_paper(sample: Path, tmp_path: Path) -> None:
    picture = tmp_path / "window.png"
    assert main([str(sample), str(picture)]) == 0
    shades = np.asarray(Image.open(picture).convert("L"))
    rows, columns = shades.shape
    dark = shades[rows // 10 : -rows // 5, columns // 3 :] < 128
    assert 0.005 < dark.mean() < 0.2
    assert np.ptp(np.nonzero(dark.any(axis=0))) > 0.5 * columns
    # Not a picture of the moment before the findings below it have found their room.
    assert np.ptp(np.nonzero(dark.any(axis=1))) > 0.5 * rows


def test_what_is_no_project_is_refused(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    picture = tmp_path / "window.png"
    assert main([str(tmp_path / "none.settle"), str(picture)]) == 2
    assert "none.settle" in capsys.readouterr().err
    assert not picture.exists()


def test_two_names_are_wanted(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["only.settle"]) == 2
    assert "which picture" in capsys.readouterr().err
