"""The program with somebody watching: run as ``python -m tests.journeys.watched FILE``.

It starts the window as ``settlewright FILE`` does, and answers each line of its input, a question
in JSON, with a line of JSON.  It changes nothing: hands come through the X server.

    {"ask": "state"}                                 what the desk holds and where the sheet is
    {"ask": "place", "view": "plan", "point": [u, v]}  the pixel of a point (mm) of a view
    {"ask": "text", "dimension": "flare"}            the pixel in the middle of a dimension's text
"""

from __future__ import annotations

import json
import os
import sys
from pathlib import Path
from typing import Any

from PySide6.QtCore import QPointF, QSocketNotifier
from PySide6.QtWidgets import QApplication

from app.main import application, run
from app.window.frame import Frame
from app.window.workplace import Workplace


def answer(question: dict[str, Any]) -> object:
    """What the window says to a question; None while the window is not furnished yet."""
    frame = next((w for w in QApplication.topLevelWidgets() if isinstance(w, Frame)), None)
    window = frame.inhabitant if frame is not None else None
    if frame is None or not isinstance(window, Workplace) or not window.page.isVisible():
        return None
    canvas = window.page.canvas
    match question["ask"]:
        case "state":
            corner = canvas.mapToGlobal(QPointF(0, 0))
            return {
                "title": frame.windowTitle(),
                "saved": window.desk.saved,
                "values": {name: window.desk.spec.value(name) for name in question["values"]},
                "pixels_per_mm": canvas.view.pixels_per_mm,
                "sheet": [corner.x(), corner.y(), canvas.width(), canvas.height()],
            }
        case "place":
            spot = canvas.view.window_point(question["view"], tuple(question["point"]))
        case "text":
            corners = canvas.view.text_corners(question["dimension"])
            spot = (sum(x for x, _ in corners) / 4, sum(y for _, y in corners) / 4)
    at = canvas.mapToGlobal(QPointF(*spot))
    return [at.x(), at.y()]


def main() -> int:
    """The program's own exit code."""
    application()
    pending = bytearray()

    def heard() -> None:
        more = os.read(0, 65536)
        notifier.setEnabled(bool(more))  # nobody is asking any more
        pending.extend(more)
        while b"\n" in pending:
            line, _, rest = bytes(pending).partition(b"\n")
            pending[:] = rest
            sys.stdout.write(json.dumps(answer(json.loads(line))) + "\n")
            sys.stdout.flush()

    notifier = QSocketNotifier(0, QSocketNotifier.Type.Read)
    notifier.activated.connect(heard)
    return run(Path(sys.argv[1]))


if __name__ == "__main__":
    sys.exit(main())
