"""Marks as Qt paths, built once a change and painted many times.

Method: one path a role, straight lines on the pixel grid and drawn sharp, obliques, arcs and
texts smooth.  The picture is in logical pixels about the sheet's lower left corner, y down, so
that panning only moves it.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPainterPath, QPen

from app.look.themes import Theme, Tone
from app.look.type import drawing_font
from geometry.drawing.chains import chains
from geometry.drawing.marks import Anchor, Arc, Fill, Label, Mark, Role, Strokes
from geometry.primitives.frame import Vec2
from shared.lettering import ASCENT_RATIO, DESCENT_RATIO, text_width
from shared.line_styles import LINE_STYLES

QUIET_ROLES = frozenset(
    {
        Role.HIDDEN,
        Role.CENTRE,
        Role.DERIVED,
        Role.TRIM,
        Role.PHANTOM,
        Role.GRID,
        Role.SCRIBE,
        Role.HATCH,
        Role.BREAK,
    }
)
_TOO_WIDE = 1.02  # of a text's own width: nobody sees less
DRAWING_ORDER = tuple(reversed(Role))
"""Quiet lines first, so that visible ones lie on top."""


@dataclass(slots=True)
class RolePicture:
    """What is drawn with one pen."""

    sharp: QPainterPath = field(default_factory=QPainterPath)
    smooth: QPainterPath = field(default_factory=QPainterPath)
    filled: QPainterPath = field(default_factory=QPainterPath)
    labels: list[Label] = field(default_factory=list)


class Picture:
    """The marks of a sheet at ``density`` logical pixels to the mm, for a screen of ``ratio``
    device pixels to the logical one."""

    def __init__(self, marks: Iterable[Mark], density: float, ratio: float) -> None:
        self._density = density
        self._ratio = ratio
        self._roles: dict[Role, RolePicture] = {}
        for mark in marks:
            self._add(mark)

    def paint(self, painter: QPainter, theme: Theme, *, lit: bool = False) -> None:
        """Draw everything; ``lit`` in the one tone of what is under the hand, and a bit heavier."""
        for role in DRAWING_ORDER:
            picture = self._roles.get(role)
            if picture is not None:
                self._paint_role(painter, role, picture, theme, lit=lit)

    def _paint_role(
        self, painter: QPainter, role: Role, picture: RolePicture, theme: Theme, *, lit: bool
    ) -> None:
        tone = Tone.HAND if lit else Tone.QUIET if role in QUIET_ROLES else Tone.INK
        colour = QColor(theme.tone(tone))
        pen = self._pen(role, colour, lit=lit)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(pen)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
        painter.drawPath(picture.sharp)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
        painter.drawPath(picture.smooth)
        painter.fillPath(picture.filled, colour)
        painter.setPen(colour)
        for label in picture.labels:
            self._paint_label(painter, label, QColor(theme.paper) if lit else None)

    def _paint_label(self, painter: QPainter, label: Label, ground: QColor | None) -> None:
        """``ground`` wipes out the same text in another tone; a text never lies on a line."""
        width = text_width(label.text, label.height, label.bold) * self._density
        before = {Anchor.START: 0.0, Anchor.MIDDLE: width / 2.0, Anchor.END: width}[label.anchor]
        x, y = label.at[0] * self._density, -label.at[1] * self._density
        painter.setFont(drawing_font(label.height * self._density, label.bold))
        painter.save()
        painter.translate(x, y)
        if label.turn_deg:
            painter.rotate(-label.turn_deg)
        if ground is not None:
            height = label.height * self._density
            top, whole = -height * ASCENT_RATIO, height * (ASCENT_RATIO + DESCENT_RATIO)
            painter.fillRect(QRectF(-before, top, width, whole), ground)
        # A font has whole pixels; where that makes it wider than the drawing allows, it is shrunk.
        drawn = QFontMetricsF(painter.font()).horizontalAdvance(label.text)
        if drawn > _TOO_WIDE * width:
            painter.scale(width / drawn, width / drawn)
            before *= drawn / width
        painter.drawText(QPointF(-before, 0.0), label.text)
        painter.restore()

    def _pen(self, role: Role, colour: QColor, *, lit: bool) -> QPen:
        width = self._device_width(role) + (1 if lit else 0)
        pen = QPen(colour, width / self._ratio)
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
        dashes = LINE_STYLES[role.value].dashes
        if dashes:
            unit = pen.widthF() / self._density  # Qt counts dashes in pen widths
            pen.setDashPattern([dash / unit for dash in dashes])
        return pen

    def _device_width(self, role: Role) -> int:
        """Whole device pixels, so that a sharp line is sharp."""
        return max(1, round(LINE_STYLES[role.value].width * self._density * self._ratio))

    def _add(self, mark: Mark) -> None:
        picture = self._roles.setdefault(mark.role, RolePicture())
        match mark:
            case Strokes():
                self._add_strokes(picture, mark)
            case Arc():
                self._add_arc(picture, mark)
            case Fill():
                self._add_fill(picture, mark)
            case Label():
                picture.labels.append(mark)

    def _add_strokes(self, picture: RolePicture, mark: Strokes) -> None:
        points = mark.segments * np.array((1.0, -1.0, 1.0, -1.0)) * self._density
        straight = (np.abs(points[:, 0] - points[:, 2]) < 1e-6) | (
            np.abs(points[:, 1] - points[:, 3]) < 1e-6
        )
        on_grid = self._on_grid(points[straight], self._device_width(mark.role))
        _add_lines(picture.sharp, on_grid.tolist())
        if LINE_STYLES[mark.role.value].dashes:
            _add_chains(picture.smooth, chains(points[~straight]))
        else:
            _add_lines(picture.smooth, points[~straight].tolist())

    def _on_grid(self, points: NDArray[np.float64], width: int) -> NDArray[np.float64]:
        """Line centres where a pen so many device pixels wide covers whole pixels."""
        half = 0.5 if width % 2 else 0.0
        snapped: NDArray[np.float64] = (np.round(points * self._ratio - half) + half) / self._ratio
        return snapped

    def _add_arc(self, picture: RolePicture, mark: Arc) -> None:
        cx, cy = mark.centre[0] * self._density, -mark.centre[1] * self._density
        radius = mark.radius * self._density
        box = QRectF(cx - radius, cy - radius, 2 * radius, 2 * radius)
        picture.smooth.arcMoveTo(box, mark.start_deg)
        picture.smooth.arcTo(box, mark.start_deg, mark.end_deg - mark.start_deg)

    def _add_fill(self, picture: RolePicture, mark: Fill) -> None:
        points = [QPointF(x * self._density, -y * self._density) for x, y in mark.points]
        picture.filled.addPolygon([*points, points[0]])


def _add_lines(path: QPainterPath, rows: list[list[float]]) -> None:
    move, line = path.moveTo, path.lineTo
    for x0, y0, x1, y1 in rows:
        move(x0, y0)
        line(x1, y1)


def _add_chains(path: QPainterPath, lines: list[list[Vec2]]) -> None:
    for line in lines:
        path.moveTo(*line[0])
        for point in line[1:]:
            path.lineTo(*point)


def marks_owned(marks: Iterable[Mark], owners: frozenset[str]) -> list[Mark]:
    """The marks, or the parts of marks, that belong to some owners."""
    found: list[Mark] = []
    for mark in marks:
        if isinstance(mark, Strokes) and mark.owner_of is not None:
            places = [i for i, owner in enumerate(mark.owners) if owner in owners]
            if places:
                chosen = np.isin(mark.owner_of, places)
                if chosen.any():
                    found.append(Strokes(mark.role, mark.segments[chosen], mark.owners[places[0]]))
        elif mark.owner in owners:
            found.append(mark)
    return found
