"""A picture of the real window, for pages and for machines without a screen.

    python -m app.window.portrait FILE OUT.png

The maker's own preferences, recent files and kept work are neither read nor touched.
"""

from __future__ import annotations

import os
import sys
import tempfile
from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import (
    QBuffer,
    QByteArray,
    QEvent,
    QIODevice,
    QLocale,
    QSettings,
    QThread,
)
from PySide6.QtGui import QPixmap
from PySide6.QtWidgets import QApplication

from app.document.keeping import Keeper
from app.main import application
from app.window.frame import Frame
from app.window.settings import first_preferences
from app.window.workplace import Workplace
from exporters.project_file import load
from exporters.writing import write_file
from shared.errors import MakerError

_BETWEEN = 20  # ms from one look at the window to the next
_LOOKS_ALIKE, _MOST_LOOKS = 15, 400
_SIZE = (1360, 860)  # pixels, the window's first size where there is room

USAGE = "Say which project and which picture: python -m app.window.portrait FILE OUT.png\n"


def main(arguments: Sequence[str]) -> int:
    """Write the picture; 0 when done, 2 when the project or the picture is refused."""
    if len(arguments) != 2:
        sys.stderr.write(USAGE)
        return 2
    project, picture = Path(arguments[0]), Path(arguments[1])
    os.environ["QT_QPA_PLATFORM"] = "offscreen"  # drawn where nobody sees it
    try:
        load(project)  # the window would only show a notice
        write_file(picture, portrait(project))
    except MakerError as error:
        sys.stderr.write(f"{error}\n")
        return 2
    return 0


def portrait(project: Path) -> bytes:
    """The window with a project open, at the size it has on a desk, as a PNG."""
    application()
    with tempfile.TemporaryDirectory() as folder:
        desk_drawer = Path(folder)
        settings = QSettings(str(desk_drawer / "settings.ini"), QSettings.Format.IniFormat)
        window = Frame(settings)
        window.resize(*_SIZE)  # the screen that nobody sees is smaller than a desk's
        workplace = Workplace(
            window,
            settings,
            first_preferences(QLocale("en_GB")),
            Keeper(desk_drawer / "kept"),
            desk_drawer / "trouble.log",
        )
        workplace.start_with(project)
        picture = _at_rest(window)
        window.close()
        window.deleteLater()
        QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    return png_of(picture)


def _at_rest(window: Frame) -> QPixmap:
    """The window when it no longer changes: what is found comes in pieces, and then finds room."""
    picture, same = window.grab(), 0
    for _ in range(_MOST_LOOKS):
        QApplication.processEvents()
        QThread.msleep(_BETWEEN)
        before, picture = picture, window.grab()
        same = same + 1 if picture.toImage() == before.toImage() else 0
        if same == _LOOKS_ALIKE:
            break
    return picture


def png_of(picture: QPixmap) -> bytes:
    """The bytes of a PNG file."""
    data = QByteArray()
    buffer = QBuffer(data)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    picture.save(buffer, "PNG")
    return bytes(data.data())


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
