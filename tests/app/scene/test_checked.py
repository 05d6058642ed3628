"""The page of what is looked for says every check and every limit, in the maker's units."""

from __future__ import annotations

import json
import re

import pytest

from app.__main__ import main
from app.scene.checked import checks_html, checks_text, limit_text
from app.scene.preferences import Preferences
from app.scene.wording import said
from app.window.workplace import Workplace
from geometry.checks.all_checks import CHECKS, SLOW_CHECKS
from geometry.checks.limit_rows import LIMITS
from geometry.checks.limits_of_joints import LEAST_WALL
from geometry.design.judging import Judging
from shared.units import SHOWN_IN16, SHOWN_MM
from shared.units.quantities import UNITS
from shared.words import AMERICAN_FOR, KEPT, Words

MM = Preferences(shown=SHOWN_MM)


def _plain(text: str) -> str:
    return re.sub(r"\s+", " ", text)


def test_every_check_and_every_limit_is_told() -> None:
    text = _plain(checks_text(MM))
    for check in (*CHECKS, *SLOW_CHECKS):
        assert check.title in text
        assert said(check.about, MM).split(". ")[0] in text, check.name
    for row in LIMITS:
        assert said(row.title, MM) in text, row.name
        assert said(row.source, MM) in text, row.name
    assert "{" not in text
    assert max(map(len, checks_text(MM).splitlines())) <= 92


def test_an_american_reads_neither_metric_nor_british() -> None:
    """Nothing but the names of what was measured elsewhere: formulas and page numbers."""
    text = _plain(checks_text(Preferences(shown=SHOWN_IN16, words=Words.AMERICAN)))
    assert not re.findall(rf".{{30}}\d (?:mm|cm|{'|'.join(UNITS)})\b.{{10}}", text)
    assert not re.findall(r".{30}\bin in\b.{10}", text)
    text = re.sub("|".join(KEPT), "", text, flags=re.IGNORECASE)
    found = {word for word in AMERICAN_FOR if re.search(rf"\b{word}\b", text, re.IGNORECASE)}
    assert not found
    assert "Load of a person sitting, anywhere: 250 lb" in text


def test_a_limit_is_told_in_the_makers_units_and_with_their_own_value() -> None:
    assert limit_text(LEAST_WALL, MM) == (
        "Thinnest tenon or wall beside a mortise: 6 mm (common practice, no source)"
    )
    inches = Preferences(shown=SHOWN_IN16)
    assert "¼ in" in limit_text(LEAST_WALL, inches)
    own = Judging().with_limit("least_wall", 5.0)
    assert "5 mm in this project, else 6 mm" in limit_text(LEAST_WALL, MM, own)
    assert "5 mm in this project" in checks_html(MM, own)


def test_the_command_prints_them_plain_and_as_data(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["checks"]) == 0
    assert "Thin tenons and mortise walls" in capsys.readouterr().out
    assert main(["checks", "--json"]) == 0
    found = json.loads(capsys.readouterr().out)["checks"]
    assert [one["name"] for one in found] == [one.name for one in (*CHECKS, *SLOW_CHECKS)]
    (walls,) = (one for one in found if one["name"] == "thin_walls")
    (row,) = walls["limits"]
    assert (row["name"], row["default"], row["unit"]) == ("least_wall", 6.0, "mm")


def test_the_window_shows_the_page(window: Workplace) -> None:
    from app.window.help_pages import HelpPage

    window.commands["checked"].trigger()
    (page,) = window.frame.findChildren(HelpPage)
    text = _plain(page.text.toPlainText())
    assert "Thin tenons and mortise walls" in text
    assert "Whether it goes together" in text
    page.close()
