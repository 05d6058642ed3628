"""Two pages to read beside the work: keys and mouse, and cautions."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QTextBrowser, QVBoxLayout, QWidget

from app.scene.preferences import Preferences
from app.scene.wording import said

KEYS = (
    # what the hand does, what happens
    ("On the sheet", ""),
    ("Pull a dimension or an edge", "Sets the value; everything follows. It snaps to a step."),
    ("Alt or Ctrl while pulling", "Moves freely, without steps."),
    ("Esc while pulling", "Puts back what was before."),
    ("Click a dimension", "Types its value. In brackets: says what it follows from."),
    ("A digit over a dimension", "Starts its value there."),
    ("Tab, Shift+Tab", "Walks the dimensions."),
    ("Arrow keys", "Change the value by a step; with Shift by ten."),
    ("Enter", "Types the value. Enter again sets it, Esc leaves it."),
    ("Click a part", "Picks it out in all views and says its size and joints."),
    ("Click a joint's seam", "Where it lights up: opens its detail, with the sizes behind it."),
    ("Double-click a joint", "The same, also where it is hidden."),
    ("Esc in the joint's detail", "Back to where it was clicked, in whichever view."),
    ("Wheel", "Larger and smaller about the pointer."),
    ("Middle button, or Space and pull", "Slides the sheet."),
    ("F or Ctrl+0", "Fits the sheet to the window."),
    ("On a section", ""),
    (
        "Pull its line in the small view, or an end of it",
        "Moves the plane, or turns it; with Alt on no whole degree and no edge. Where the section "
        "is kept, in the elevations too.",
    ),
    ("Arrow keys, Page Up, Page Down", "Move it by a millimetre, turn it by a degree."),
    ("Home, or a double click", "Stands it square again."),
    ("Place and Turned, over the sheet", "Take them typed: the place from what the sheet says."),
    ("In the papers", "Keeps the section and prints it; on once its plane is moved."),
    ("On the story stick", ""),
    ("Up and Down", "From size to size."),
    ("Left and Right", "Change the value by a step; with Shift by ten."),
    ("Any figure, or Enter", "Types the value."),
    ("Everywhere", ""),
    ("36 1/2   36.5 in   927 mm   92.7 cm   3' 1/2\"", "All of them work in every field."),
    ("Ctrl+U", "Millimetres or inches."),
    ("Ctrl+F", "Finds a size; Down or Enter goes on to it."),
    ("F6, F7, F8", "To the sizes, the parts, the sheet."),
    ("Ctrl+1 to Ctrl+5", "Brief, Drawing, Joints, Carving (of drawers) and Papers."),
    ("Ctrl+E, Ctrl+I, Ctrl+T, Ctrl+K", "Elevations, pictorial view, taken apart, section."),
    ("Ctrl+Z, Ctrl+Y", "Undo and redo, as far back as you like."),
)

CAUTIONS = (
    "The drawings, templates and lists come from numbers that you set. Check every size on the "
    "timber in front of you before you cut.",
    "Print templates without scaling, and lay a ruler on the check square of every sheet.",
    "The manual of each machine comes first: its guards, its limits for tilt, depth and speed, and "
    "its rules for workpieces. Where this program and a manual differ, the manual is right.",
    "Wear what the work asks for on eyes, ears, lungs and feet. Keep hands and loose clothes away "
    "from cutters, use push sticks and hold-downs, and unplug a machine before you reach in.",
    "A finding that says 'do not cut' is a reason to stop. No finding is not a promise: dry-fit "
    "every joint, and try a set-up on waste first.",
    "What a bench must carry, and how it must be fixed, may be ruled by local codes, above all in "
    "public rooms. Ask those who answer for the building.",
    "Timber moves with the seasons. Leave it in the room where it will be used before you cut.",
)


class HelpPage(QDialog):
    """A page that stays open beside the work."""

    def __init__(self, title: str, html: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(title)
        self.text = QTextBrowser(self)
        self.text.setAccessibleName(title)
        self.text.setHtml(html)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.text)
        em = self.fontMetrics().horizontalAdvance("m")
        self.resize(48 * em, 40 * em)


def keys_html(preferences: Preferences) -> str:
    """A table of what the hand does."""
    rows = []
    for deed, what in KEYS:
        if not what:
            rows.append(f"<tr><td colspan=2><h3>{deed}</h3></td></tr>")
            continue
        rows.append(
            f"<tr><td style='padding-right:24px'><b>{said(deed, preferences)}</b></td>"
            f"<td>{said(what, preferences)}</td></tr>"
        )
    return f"<table cellpadding=4>{''.join(rows)}</table>"


def cautions_html(preferences: Preferences) -> str:
    items = "".join(f"<p>{said(text, preferences)}</p>" for text in CAUTIONS)
    return f"<h2>Cautions</h2>{items}"
