"""How well two colours can be told apart."""

from __future__ import annotations


def contrast(first: str, second: str) -> float:
    """Contrast ratio of two ``#RRGGBB`` colours, 1 to 21 (WCAG 2.2, relative luminance)."""
    lighter, darker = sorted((_luminance(first), _luminance(second)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def _luminance(colour: str) -> float:
    channels = (int(colour[i : i + 2], 16) / 255.0 for i in (1, 3, 5))
    red, green, blue = (
        c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue
