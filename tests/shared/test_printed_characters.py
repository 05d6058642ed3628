"""Every character that any module can put on the sheet is in the drawing font."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.glyphs import missing_glyphs

ROOT = Path(__file__).parents[2]
PACKAGES = ("shared", "geometry", "exporters", "app")


def texts(tree: ast.AST) -> Iterator[str]:
    """The string constants of a module, docstrings among them."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            yield node.value


@pytest.mark.parametrize("package", PACKAGES)
def test_no_text_of_the_program_would_print_as_an_empty_box(package: str) -> None:
    modules = sorted((ROOT / package).rglob("*.py"))
    assert modules
    for module in modules:
        for text in texts(ast.parse(module.read_text("utf-8"))):
            printable = "".join(character for character in text if character.isprintable())
            for bold in (False, True):
                assert missing_glyphs(printable, bold) == "", f"{module.name}: {text[:60]!r}"
