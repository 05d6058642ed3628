"""In inches and American trade words nothing that is found or advised is metric or British.

The samples are judged by the hardest and the easiest of all limits, so that nearly every check
speaks, and briefed with much.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

import pytest

from app.scene.advice_words import advice_words
from app.scene.finding_words import change_lines, measure_text, message_of
from app.scene.preferences import Preferences
from app.scene.wording import said
from geometry.advice.all_advice import advice
from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.checks.all_checks import told
from geometry.checks.limit_rows import LIMITS
from geometry.design.brief import MEN, Brief
from shared.units import SHOWN_IN16
from shared.units.quantities import UNITS
from shared.words import AMERICAN_FOR, KEPT, Words
from tests.samples import NAMES, sample

AMERICAN = Preferences(shown=SHOWN_IN16, words=Words.AMERICAN)
MUCH = Brief(who=MEN, persons=4.0, load=200.0, humidity_low=20.0, humidity_high=90.0)
BRITISH = re.compile(rf"\b(?:{'|'.join(AMERICAN_FOR)})\b", re.IGNORECASE)
ALIKE = re.compile(rf"\b(?:{'|'.join(KEPT)})\b", re.IGNORECASE)  # said by both
METRIC = re.compile(rf"\d (?:mm|cm|{'|'.join(UNITS)})\b")


def sentences(bench: Bench) -> Iterator[str]:
    for one in told(bench):
        yield said(message_of(one), AMERICAN)
        yield measure_text(one, AMERICAN)
        if one.mend is not None:
            yield said(one.mend.sentence, AMERICAN)
            yield from change_lines(bench.spec, one.mend, AMERICAN)
    for each in advice(bench, bench.brief):
        words = advice_words(each, AMERICAN)
        yield from (words.title, words.size, words.reason, words.source, words.take)
        yield words.hindrance


@pytest.mark.parametrize("name", NAMES)
def test_what_is_said_of_a_sample(name: str) -> None:
    bench = replace(build(sample(name).spec), brief=MUCH, shown=SHOWN_IN16)
    spoken = set()
    for place in ("minimum", "maximum"):
        limits = tuple((row.name, getattr(row, place)) for row in LIMITS)
        spoken |= set(sentences(replace(bench, judged_by=limits)))
    assert len(spoken) > 20
    assert not [one for one in spoken if METRIC.search(one)]
    assert not [one for one in spoken if BRITISH.search(ALIKE.sub("", one))]
    assert not [one for one in spoken if "{" in one or re.search(r"\bin in\b", one)]
