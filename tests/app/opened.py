"""What a click has opened in the window: a joint's detail, or a field to type a size into."""

from __future__ import annotations

from PySide6.QtWidgets import QApplication

from app.look.value_field import ValueField
from app.window.workplace import Workplace


def opened(window: Workplace) -> str:
    """The joint whose detail is open, empty if none is."""
    joints = window.stages.joints
    return joints.picked if joints is not None and joints.page.isVisible() else ""


def open_field() -> ValueField:
    """The field that the keyboard is in."""
    field = QApplication.focusWidget()
    assert isinstance(field, ValueField)
    return field
