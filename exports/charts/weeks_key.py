"""What the marks of the weeks ahead look like, and the key that names them."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from exports.charts.ground import BAR_HEIGHT, FONT_SIZE, SIDE, VIEW_WIDTH, words_width
from exports.charts.inks import ink
from exports.svg import INK, element, path, text

BEGUN, TO_COME = 0, 4
"""Inks of what is on the hook, and of what has yet to be begun."""

SAMPLE = 13.0
KEY_LINE = 17.0
_MARK = 4.5

Sign = Callable[[float, float], str]
"""Draws the sample of a mark, its left end and the middle of its height given."""


def making_box(x: float, top: float, width: float, fill: str, height: float = BAR_HEIGHT) -> str:
    """Return days on which an order is made."""
    attributes = {"x": x, "y": top, "width": width, "height": height}
    return element("rect", class_="making", fill=fill, stroke=INK, stroke_width=0.8, **attributes)


def travel_line(x: float, end: float, middle: float) -> str:
    """Return days on which a blanket dries and travels, with a stop where it arrives."""
    return path(
        *("M", x, middle, "H", end, "M", end, middle - 5, "V", middle + 5),
        class_="travel", stroke=INK, stroke_width=1.4,
    )  # fmt: skip


def promised_mark(x: float, y: float) -> str:
    """Return a hollow point above a bar, at the end of the day that was promised."""
    steps = ("M", x, y, "L", x - _MARK, y - 2 * _MARK, "H", x + _MARK, "Z")
    return path(*steps, class_="promised", stroke=INK, stroke_width=1.2)


def wanted_mark(x: float, y: float) -> str:
    """Return a full point below a bar, at the end of the day that was wanted."""
    steps = ("M", x, y, "L", x - _MARK, y + 2 * _MARK, "H", x + _MARK, "Z")
    return path(*steps, class_="wanted", fill=INK)


def today_line(x: float, top: float, bottom: float) -> str:
    """Return the line at the end of today."""
    return path(
        *("M", x, top, "V", bottom),
        class_="today", stroke=INK, stroke_width=1.4, stroke_dasharray="4 2.5",
    )  # fmt: skip


def days_off_box(x: float, top: float, width: float, height: float) -> str:
    """Return days off, across all that is made."""
    attributes = {"x": x, "y": top, "width": width, "height": height}
    return element("rect", class_="off", fill=INK, fill_opacity=0.13, **attributes)


def weeks_signs(prefix: str) -> Mapping[str, Sign]:
    """Return every mark by its name."""
    return {
        "on the hook": lambda x, y: making_box(x, y - 5, SAMPLE, ink(prefix, BEGUN), 11),
        "agreed": lambda x, y: making_box(x, y - 5, SAMPLE, ink(prefix, TO_COME), 11),
        "drying and delivery": lambda x, y: travel_line(x, x + SAMPLE, y),
        "promised": lambda x, y: promised_mark(x + SAMPLE / 2, y + 4),
        "wanted": lambda x, y: wanted_mark(x + SAMPLE / 2, y - 4),
        "today": lambda x, y: today_line(x + SAMPLE / 2, y - 6, y + 6),
        "days off": lambda x, y: days_off_box(x, y - 6, SAMPLE, 12),
    }


def weeks_key(signs: Mapping[str, Sign]) -> tuple[str, float]:
    """Return the key at the head of the chart, and where it ends."""
    entries, x, y = [], SIDE, KEY_LINE
    for name, draw in signs.items():
        width = SAMPLE + 6 + words_width(name, FONT_SIZE) + 12
        if x > SIDE and x + width > VIEW_WIDTH:
            x, y = SIDE, y + KEY_LINE
        entries.append(draw(x, y - FONT_SIZE / 3))
        entries.append(text(name, x + SAMPLE + 6, y, font_size=FONT_SIZE, fill=INK))
        x += width
    return element("g", *entries, class_="key"), y + 8
