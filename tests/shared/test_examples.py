"""The examples in the docstrings of the shared package give what they say."""

from __future__ import annotations

import doctest
import importlib
import pkgutil

import pytest

import shared

MODULES = sorted(module.name for module in pkgutil.walk_packages(shared.__path__, "shared."))


@pytest.mark.parametrize("name", MODULES)
def test_examples(name: str) -> None:
    assert doctest.testmod(importlib.import_module(name)).failed == 0


def test_there_are_examples() -> None:
    tried = [doctest.testmod(importlib.import_module(name)).attempted for name in MODULES]
    assert sum(tried) >= 10
