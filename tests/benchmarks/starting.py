"""From the start of a process to a painted window: ours against an empty one of PySide6.

Each start is a process of its own, offscreen unless a display is there; the clock is the parent's
from before the start.  Ours is timed at the first painted picture of its window and again when
the bench itself has been painted; in between the window already stands and answers.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path

EMPTY = """
import sys, time
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication, QWidget
class Window(QWidget):
    def paintEvent(self, event):
        print("painted", time.time(), flush=True)
        QTimer.singleShot(0, QApplication.quit)
app = QApplication(sys.argv)
window = Window()
window.resize(1360, 860)
window.show()
app.exec()
"""

OURS = """
import sys, time
from pathlib import Path
from PySide6.QtCore import QEvent, QObject, QTimer
from app.main import Start, application
class Watch(QObject):
    stage = 0
    def eventFilter(self, watched, event):
        if event.type() == QEvent.Type.Paint:
            name = type(watched).__name__
            if self.stage == 0:
                self.stage = 1
                print("painted", time.time(), flush=True)
            elif self.stage == 1 and name == "SheetCanvas":
                self.stage = 2
                QTimer.singleShot(0, self.done)
        return False
    def done(self):
        print("bench", time.time(), flush=True)
        QTimer.singleShot(0, app.quit)
app = application()
watch = Watch()
app.installEventFilter(watch)
start = Start(Path(sys.argv[1]))
app.exec()
start.end()
"""


def start(script: str, *arguments: str) -> dict[str, float]:
    """Milliseconds from before the start of a process to each stage that it reports."""
    with tempfile.TemporaryDirectory() as home:
        environment = {**os.environ, "HOME": home, "XDG_CONFIG_HOME": home, "XDG_STATE_HOME": home}
        if not (os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY")):
            environment.setdefault("QT_QPA_PLATFORM", "offscreen")
        begin = time.time()
        done = subprocess.run(
            [sys.executable, "-c", script, *arguments],
            env=environment,
            cwd=Path(__file__).parents[2],
            capture_output=True,
            text=True,
            timeout=60,
            check=True,
        )
    stages = (line.split() for line in done.stdout.splitlines())
    return {name: 1e3 * (float(at) - begin) for name, at in stages}
