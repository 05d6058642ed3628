"""Every action of the window, once: its words, its keys, its menu."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial

from PySide6.QtGui import QAction, QActionGroup, QKeySequence
from PySide6.QtWidgets import QMainWindow, QMenu

from shared.words import Words, in_words

Standard = QKeySequence.StandardKey
Keys = Standard | str | tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Row:
    """One line of a menu; an empty ``name`` is a rule between lines."""

    name: str = ""
    text: str = ""
    keys: Keys = ()
    tip: str = ""


RULE = Row()

MENUS: tuple[tuple[str, tuple[Row, ...]], ...] = (
    (
        "&File",
        (
            Row("new", "&New bench", Standard.New),
            Row("open", "&Open…", Standard.Open),
            Row("samples", "Open a s&ample"),
            Row("recent", "&Recent files"),
            RULE,
            Row("save", "&Save", Standard.Save),
            Row("save_as", "Save &as…", ("Ctrl+Shift+S",)),
            RULE,
            Row("papers", "&Write the pack…", ("Ctrl+P",)),
            RULE,
            Row("quit", "&Quit", ("Ctrl+Q",)),
        ),
    ),
    (
        "&Edit",
        (
            Row("undo", "&Undo", Standard.Undo),
            Row("redo", "&Redo", ("Ctrl+Shift+Z", "Ctrl+Y")),
            RULE,
            Row("find", "&Find a size", Standard.Find),
            Row("limits", "&Limits of findings…"),
            Row("runners", "&Drawer runners…"),
            RULE,
            Row("preferences", "&Preferences…", ("Ctrl+,",)),
        ),
    ),
    (
        "&View",
        (
            Row("stage_brief", "&Brief", ("Ctrl+1",)),
            Row("stage_drawing", "&Drawing", ("Ctrl+2",)),
            Row("stage_joints", "&Joints", ("Ctrl+3",)),
            Row("stage_carving", "Car&ving", ("Ctrl+4",)),
            Row("stage_papers", "&Papers", ("Ctrl+5",)),
            RULE,
            Row("elevations", "&Elevations", ("Ctrl+E",)),
            Row("pictorial", "Pi&ctorial view", ("Ctrl+I",)),
            Row("apart", "&Taken apart", ("Ctrl+T",)),
            Row("section", "Sectio&n", ("Ctrl+K",)),
            RULE,
            Row("fit", "&Fit the sheet", ("Ctrl+0",)),
            Row("zoom_in", "Zoom &in", ("Ctrl++", "Ctrl+=")),
            Row("zoom_out", "Zoom &out", ("Ctrl+-",)),
            RULE,
            Row("sizes", "&Sizes", ("F6",)),
            Row("parts", "P&arts", ("F7",)),
            Row("sheet", "The s&heet", ("F8",)),
            RULE,
            Row("other_unit", "&Millimetres or inches", ("Ctrl+U",)),
            Row("units", "U&nits"),
            Row("theme", "&Light and dark"),
        ),
    ),
    (
        "&Help",
        (
            Row("keys", "&Keys and mouse", Standard.HelpContents),
            Row("checked", "&What is looked for"),
            Row("cautions", "&Cautions"),
            Row("log", "Show the &log"),
        ),
    ),
)


class Actions:
    """The actions by name, in the menus of a window."""

    def __init__(self, window: QMainWindow, deeds: dict[str, Callable[[], object]]) -> None:
        self._actions: dict[str, QAction] = {}
        self._texts: dict[str, str] = {}
        self.submenus: dict[str, QMenu] = {}
        for title, rows in MENUS:
            menu = window.menuBar().addMenu(title)
            for row in rows:
                self._add(window, menu, row, deeds)
        assert not set(deeds) - set(self._actions), set(deeds) - set(self._actions)

    def __getitem__(self, name: str) -> QAction:
        return self._actions[name]

    def reword(self, words: Words) -> None:
        """The rows in the maker's words; the others, some of which say more by now, stay."""
        for name, text in self._texts.items():
            if in_words(text, Words.AMERICAN) != text:
                self._actions[name].setText(in_words(text, words))

    def _add(
        self,
        window: QMainWindow,
        menu: QMenu,
        row: Row,
        deeds: dict[str, Callable[[], object]],
    ) -> None:
        if row == RULE:
            menu.addSeparator()
            return
        if row.name not in deeds:
            self.submenus[row.name] = menu.addMenu(row.text)
            return
        action = QAction(row.text, window)
        action.setShortcuts(sequences(row.keys))
        action.triggered.connect(partial(_call, deeds[row.name]))
        menu.addAction(action)
        self._actions[row.name] = action
        self._texts[row.name] = row.text


def _call(deed: Callable[[], object], _checked: bool = False) -> None:
    deed()


def sequences(keys: Keys) -> list[QKeySequence]:
    """The keys of a row; a standard key gives all that the platform knows for it."""
    if isinstance(keys, Standard):
        return list(QKeySequence.keyBindings(keys))
    texts = (keys,) if isinstance(keys, str) else keys
    return [QKeySequence(text) for text in texts]


def choices(menu: QMenu, texts: tuple[str, ...], deed: Callable[[int], None]) -> list[QAction]:
    """Rows of which one is on; ``deed`` gets the place of the one chosen."""
    group = QActionGroup(menu)
    found = []
    for place, text in enumerate(texts):
        action = QAction(text, group)
        action.setCheckable(True)
        action.setData(place)
        menu.addAction(action)
        found.append(action)
    group.triggered.connect(partial(_choose, deed))
    return found


def _choose(deed: Callable[[int], None], action: QAction) -> None:
    deed(int(action.data()))
