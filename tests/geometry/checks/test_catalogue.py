"""The catalogue is kept: each row has its checks, each check a test that spoils a bench for it."""

from __future__ import annotations

import ast
import re
import sys
from functools import lru_cache
from pathlib import Path

import pytest

from geometry.checks.all_checks import CHECKS, SLOW_CHECKS
from tests.geometry.checks.catalogue import BESIDE, CATALOGUE, Row

HERE = Path(__file__).parent
BY_NAME = {check.name: check for check in (*CHECKS, *SLOW_CHECKS)}
PROOFS = [
    (number, check, proof)
    for number, proofs in [(row.number, row.proofs) for row in CATALOGUE] + [(0, BESIDE)]
    for check, proof in proofs.items()
]


@lru_cache(maxsize=32)
def _source(name: str) -> str:
    *folder, file = name.split("/")
    where = HERE.parent.joinpath(*folder) if folder else HERE
    return (where / f"test_{file}.py").read_text(encoding="utf-8")


def _tells(check: str) -> set[str]:
    """The names that its findings may have: those written in its module, and its own."""
    module = sys.modules[BY_NAME[check].run.__module__].__file__
    assert module is not None
    return {
        check,
        *re.findall(r'(?:check=f?|_finding\()\s*"(\w+)', Path(module).read_text(encoding="utf-8")),
    }


def test_the_catalogue_has_every_row_once() -> None:
    assert [row.number for row in CATALOGUE] == list(range(1, 22))


@pytest.mark.parametrize(("number", "check", "proof"), PROOFS, ids=lambda one: str(one)[:40])
def test_a_check_is_proved_by_a_test_that_spoils_a_bench(
    number: int, check: str, proof: str
) -> None:
    assert check in BY_NAME, f"row {number}: there is no check {check}"
    file, _, test = proof.partition("::")
    tests = {one.name for one in ast.walk(ast.parse(_source(file))) if type(one) is ast.FunctionDef}
    assert f"test_{test}" in tests
    assert any(re.search(rf"\b{name}", _source(file)) for name in _tells(check)), check


@pytest.mark.parametrize("row", CATALOGUE, ids=lambda row: f"row {row.number}")
def test_nothing_of_a_row_is_lacking(row: Row) -> None:
    if row.lacking:
        pytest.skip(f"{row.number}. {row.title}: {row.lacking} is not there yet")
    assert row.proofs


def test_every_check_stands_in_the_catalogue_or_beside_it() -> None:
    told = set(BESIDE).union(*(row.proofs for row in CATALOGUE))
    assert sorted(set(BY_NAME) - told) == []
