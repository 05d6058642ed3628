"""Preferences: every change is seen at once, so there is nothing to confirm."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QComboBox, QDialog, QFormLayout, QLabel, QWidget

from app.scene.preferences import (
    TEXT_PERCENTS,
    THEME_CHOICES,
    UNIT_CHOICES,
    Preferences,
    unit_name,
)
from shared.words import Words, in_words

WORD_CHOICES = tuple(Words)
ANGLE_CHOICES = (True, False)


class PreferencesDialog(QDialog):
    """``chosen`` carries the preferences after each change."""

    chosen = Signal(object)

    def __init__(self, preferences: Preferences, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle("Preferences")
        self._form = QFormLayout(self)
        self._form.setContentsMargins(20, 16, 20, 16)
        self._form.setVerticalSpacing(10)
        self._captions: dict[QLabel, str] = {}
        self.units = self._row("&Units", [unit_name(choice) for choice in UNIT_CHOICES])
        self.words = self._row(
            "&Trade words",
            ["British: housing, rebate, mitre", "American: dado, rabbet, miter"],
        )
        self.angle = self._row("&Views", ["Third angle: plan above", "First angle: plan below"])
        self.theme = self._row("&Colours", ["As the desktop", "Light: paper", "Dark: night"])
        self.text = self._row("Text &size", [f"{percent} %" for percent in TEXT_PERCENTS])
        self.show_preferences(preferences)

    def show_preferences(self, preferences: Preferences) -> None:
        """Follow a change made elsewhere."""
        self._preferences = preferences
        for box, place in (
            (self.units, UNIT_CHOICES.index(preferences.shown)),
            (self.words, WORD_CHOICES.index(preferences.words)),
            (self.angle, ANGLE_CHOICES.index(preferences.third_angle)),
            (self.theme, THEME_CHOICES.index(preferences.theme)),
            (self.text, TEXT_PERCENTS.index(preferences.text_percent)),
        ):
            box.setCurrentIndex(place)
        for place, choice in enumerate(UNIT_CHOICES):
            self.units.setItemText(place, in_words(unit_name(choice), preferences.words))
        for caption, label in self._captions.items():
            caption.setText(in_words(label, preferences.words))
            caption.buddy().setAccessibleName(caption.text().replace("&", ""))

    def _row(self, label: str, texts: list[str]) -> QComboBox:
        box = QComboBox(self)
        box.addItems(texts)
        caption = QLabel(self)
        caption.setBuddy(box)
        self._form.addRow(caption, box)
        self._captions[caption] = label
        box.activated.connect(self._choose)
        return box

    def _choose(self) -> None:
        chosen = self._preferences.with_shown(UNIT_CHOICES[self.units.currentIndex()])
        self._preferences = replace(
            chosen,
            words=WORD_CHOICES[self.words.currentIndex()],
            third_angle=ANGLE_CHOICES[self.angle.currentIndex()],
            theme=THEME_CHOICES[self.theme.currentIndex()],
            text_percent=TEXT_PERCENTS[self.text.currentIndex()],
        )
        self.chosen.emit(self._preferences)
