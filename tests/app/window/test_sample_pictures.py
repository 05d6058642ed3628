"""Every sample has its line and its picture on the page of samples, and the picture is of it."""

from __future__ import annotations

import io
from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from app.window.sample_pictures import main, sample_picture
from app.window.samples import sample_files

PAGE = (sample_files()[0].parent / "README.md").read_text(encoding="utf-8")


@pytest.mark.parametrize("sample", sample_files(), ids=lambda path: path.stem)
def test_a_sample_is_on_the_page_with_a_picture_as_it_is_now(sample: Path) -> None:
    assert f"**{sample.stem}**" in PAGE
    assert f"({sample.stem}.png)" in PAGE
    kept = np.asarray(Image.open(sample.with_suffix(".png")).convert("L"), dtype=float)
    now = np.asarray(Image.open(io.BytesIO(sample_picture(sample))).convert("L"), dtype=float)
    assert (now < 128).mean() > 0.003  # something is drawn
    assert np.abs(kept - now).mean() < 1.0  # versions of the painter smooth lines a little apart


def test_a_file_that_is_no_project_gets_no_picture(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "none.settle"
    assert main([str(file)]) == 2
    assert "none.settle" in capsys.readouterr().err
    assert not file.with_suffix(".png").exists()
