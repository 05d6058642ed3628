"""Paints the carving: facets shaded as in a light from the upper left, points, sections, holds."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPen, QPolygonF

from app.look.themes import Theme, Tone
from app.scene.carving_scene import BESIDE, CAPTION, CarvingScene
from app.scene.preferences import Preferences
from geometry.bench.carving_numbers import groove_of
from geometry.primitives.frame import Vec2
from shared.units import format_length
from shared.words import in_words

DOT, PICKED_DOT = 3.2, 5.5  # px, radii
_SHADE, _SHINE = 0.34, 0.55  # how far the wood goes toward ink and paper


class CarvingPainter:
    """One picture of a scene; ``picked`` and ``pointed`` are numbers of points, 0 for none."""

    def __init__(
        self, painter: QPainter, scene: CarvingScene, preferences: Preferences, theme: Theme
    ) -> None:
        self._painter, self._scene = painter, scene
        self._preferences, self._theme = preferences, theme
        self._metrics = QFontMetricsF(painter.font())

    def paint(self, picked: int, pointed: int) -> None:
        self._painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._facets()
        self._fronts()
        self._lacking()
        self._lines_of_sections()
        self._sections()
        self._holds()
        self._points(picked, pointed)

    # The elevation

    def _facets(self) -> None:
        wood, theme = QColor(self._theme.rod), self._theme
        ink, paper = QColor(theme.tone(Tone.INK)), QColor(theme.paper)
        dark, light = (ink, paper) if ink.lightness() < paper.lightness() else (paper, ink)
        shade, shine = _mixed(wood, dark, _SHADE), _mixed(wood, light, _SHINE)
        arris = _mixed(wood, dark, 0.75)
        for facet in self._scene.facets:
            self._painter.setBrush(_mixed(shade, shine, facet.bright))
            self._painter.setPen(QPen(arris, 1.0))
            self._painter.drawPolygon(_polygon(facet.corners))

    def _fronts(self) -> None:
        self._painter.setBrush(Qt.BrushStyle.NoBrush)
        self._painter.setPen(QPen(self._tone(Tone.INK), 1.6))
        for drawer, _ in self._scene.fronts:
            left, low, right, high = self._scene.over(drawer)
            corner, other = (
                QPointF(*self._scene.to_window((x, y))) for x, y in ((left, high), (right, low))
            )
            self._painter.drawRect(QRectF(corner, other))

    def _lacking(self) -> None:
        """Where land is missing: a heavy line along the edge, with crosses at its ends."""
        self._painter.setPen(QPen(self._tone(Tone.DO_NOT_CUT), 4.0))
        for start, end in self._scene.lacking:
            self._painter.drawLine(QPointF(*start), QPointF(*end))
            for x, y in (start, end):
                self._painter.drawLine(QPointF(x - 4, y - 4), QPointF(x + 4, y + 4))
                self._painter.drawLine(QPointF(x - 4, y + 4), QPointF(x + 4, y - 4))

    def _points(self, picked: int, pointed: int) -> None:
        taken: list[QRectF] = []
        order = sorted(
            self._scene.spots, key=lambda s: (s.number not in (picked, pointed), s.mirrored)
        )
        for spot in order:
            at = QPointF(*self._scene.to_window(spot.at))
            own = spot.number in (picked, pointed)
            tone = Tone.HAND if own else Tone.INK
            self._painter.setPen(QPen(QColor(self._theme.paper), 1.0))
            self._painter.setBrush(self._tone(tone))
            radius = PICKED_DOT if spot.number == picked else DOT
            if spot.mirrored:
                self._painter.drawRect(QRectF(at.x() - radius, at.y() - radius, *(2 * radius,) * 2))
            else:
                self._painter.drawEllipse(at, radius, radius)
            number = f"{spot.number}: " if own and not spot.mirrored else ""
            self._tag(f"{number}{self._length(spot.at[2])}", at, taken, tone, sure=own)

    def _tag(self, text: str, at: QPointF, taken: list[QRectF], tone: Tone, *, sure: bool) -> None:
        """A depth beside its point, unless it would lie on another one."""
        wide, high = self._metrics.horizontalAdvance(text) + 6.0, self._metrics.height()
        room = QRectF(0, 0, *self._scene.size)
        for dx, dy in ((8, -high - 2), (8, 2), (-8 - wide, -high - 2), (-8 - wide, 2)):
            box = QRectF(at.x() + dx, at.y() + dy, wide, high)
            if not room.contains(box) or any(box.intersects(other) for other in taken):
                continue
            break
        else:
            if not sure:
                return
            box = QRectF(at.x() + 8, at.y() + 2, wide, high)
        taken.append(box)
        ground = QColor(self._theme.paper)
        ground.setAlpha(225)
        self._painter.setPen(Qt.PenStyle.NoPen)
        self._painter.setBrush(ground)
        self._painter.drawRoundedRect(box, 3, 3)
        self._painter.setPen(self._tone(tone))
        self._painter.drawText(box, Qt.AlignmentFlag.AlignCenter, text)

    # Sections

    def _lines_of_sections(self) -> None:
        """Where the two sections are taken."""
        scene = self._scene
        x, y = scene.to_window(scene.at)
        self._painter.setPen(QPen(self._tone(Tone.HAND), 1.0, Qt.PenStyle.DashDotLine))
        left, right = scene.corner[0] - 6.0, scene.upright_left - BESIDE + 6.0
        self._painter.drawLine(QPointF(left, y), QPointF(right, y))
        self._painter.drawLine(QPointF(x, scene.corner[1] - 6.0), QPointF(x, scene.foot + 6.0))

    def _sections(self) -> None:
        scene = self._scene
        self._painter.setPen(QPen(self._tone(Tone.INK), 1.4))
        self._painter.setBrush(_mixed(QColor(self._theme.rod), QColor(self._theme.paper), 0.35))
        for cut in (*scene.level_section, *scene.upright_section):
            self._painter.drawPolygon(_polygon(cut.outline))
        level = self._length(scene.at[1])
        across = self._length(scene.at[0])
        times = f", thickness × {scene.larger:.0f}" if scene.larger > 1.0 else ""
        words = f"Sections {level} up and {across} across{times}"
        self._caption(words, scene.level_top - 6.0)

    def _holds(self) -> None:
        """How deep a finger gets, over the length of the edge."""
        scene, held = self._scene, self._scene.hold_range
        groove = groove_of(scene.spec)
        if held is None or groove is None:
            return
        foot = scene.hold_foot
        left, right = scene.corner[0], scene.upright_left - BESIDE
        self._painter.setPen(QPen(self._tone(Tone.QUIET), 1.0))
        self._painter.drawLine(QPointF(left, foot), QPointF(right, foot))
        self._painter.setPen(QPen(self._tone(Tone.QUIET), 1.0, Qt.PenStyle.DashLine))
        top = foot - scene.strip
        self._painter.drawLine(QPointF(left, top), QPointF(right, top))
        self._painter.setBrush(Qt.BrushStyle.NoBrush)
        self._painter.setPen(QPen(self._tone(Tone.GOOD_TO_KNOW), 2.2))
        for line in scene.hold_lines:
            self._painter.drawPolyline(_polygon(line))
        edge = "top" if groove.at_top else "bottom"
        low, high = (self._length(depth) for depth in held)
        span = low if low == high else f"{low} to {high}"
        words = f"A finger gets {span} into the groove at the {edge} edge, of {{}} at most"
        self._caption(words.format(self._length(groove.radius)), top - 6.0)

    def _caption(self, words: str, baseline: float) -> None:
        self._painter.setPen(self._tone(Tone.INK))
        text = in_words(words, self._preferences.words)
        self._painter.drawText(QPointF(self._scene.corner[0], baseline), text)

    def _length(self, mm: float) -> str:
        return format_length(round(mm, 4) + 0.0, self._preferences.shown)

    def _tone(self, tone: Tone) -> QColor:
        return QColor(self._theme.tone(tone))


def paint_words(painter: QPainter, text: str, room: QRectF, theme: Theme, font: QFont) -> None:
    """A sentence where there is nothing to see."""
    painter.setFont(font)
    painter.setPen(QColor(theme.tone(Tone.QUIET)))
    flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
    painter.drawText(room.adjusted(CAPTION, CAPTION, -CAPTION, -CAPTION), flags, text)


def _polygon(points: Sequence[Vec2]) -> QPolygonF:
    return QPolygonF([QPointF(x, y) for x, y in points])


def _mixed(one: QColor, other: QColor, share: float) -> QColor:
    parts = zip(
        (one.red(), one.green(), one.blue()),
        (other.red(), other.green(), other.blue()),
        strict=True,
    )
    return QColor(*(round(a + share * (b - a)) for a, b in parts))
