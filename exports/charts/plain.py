"""Plain bars, and a line to hold them against."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

from exports.charts.ground import (
    BAR_HEIGHT,
    FONT_SIZE,
    NAME_HEIGHT,
    SIDE,
    VIEW_WIDTH,
    Scale,
    framed,
    heading,
    scale_of,
    upright,
    words_width,
    zero_line,
)
from exports.charts.inks import draw_inks, ink
from exports.charts.values import Bar, Level
from exports.svg import INK, element, escaped, text

PITCH = NAME_HEIGHT + BAR_HEIGHT + 10
GAINED, LOST = 4, 1


def bars(
    shown: Sequence[Bar],
    *,
    title: str,
    description: str,
    level: Level | None = None,
    prefix: str = "bars",
) -> str:
    """Return a chart of the bars, one under another, and across each the line of its level.

    A bar below nothing lies left of the line that bars begin at, hatched. `prefix` begins every id.
    """
    levels = [level.amount] if level is not None else []
    own = [bar.level for bar in shown if bar.level is not None]
    scale = scale_of([bar.amount for bar in shown] + levels + own)
    top = FONT_SIZE + 8 if level is not None else 0.0
    rows = [_row(bar, scale, top + PITCH * row, level, prefix) for row, bar in enumerate(shown)]
    return framed(
        draw_inks(prefix, GAINED + 1),
        _level_words(level, scale) if level is not None else "",
        *rows,
        bottom=top + PITCH * len(shown),
        title=title,
        description=description,
        prefix=prefix,
    )


def _row(bar: Bar, scale: Scale, top: float, level: Level | None, prefix: str) -> str:
    at = top + NAME_HEIGHT + 4
    lines = [zero_line(scale, at)]
    if level is not None:
        amount = level.amount if bar.level is None else bar.level
        lines.append(
            upright(scale, amount, at, class_="level", stroke_width=1.6, stroke_dasharray="4 2.5")
        )
    head = heading(bar.name, bar.label, top + NAME_HEIGHT - 1)
    return element("g", head, _body(bar, scale, at, prefix), *lines, class_="bar")


def _body(bar: Bar, scale: Scale, top: float, prefix: str) -> str:
    left = scale.x(min(bar.amount, Decimal(0)))
    return element(
        "rect",
        element("title", escaped(f"{bar.name}: {bar.label}")),
        class_="part",
        x=left,
        y=top,
        width=scale.x(max(bar.amount, Decimal(0))) - left,
        height=BAR_HEIGHT,
        fill=ink(prefix, LOST if bar.amount < 0 else GAINED),
        stroke=INK,
        stroke_width=0.8,
    )


def _level_words(level: Level, scale: Scale) -> str:
    """Return the level's words over its line, kept within the chart."""
    half = words_width(level.label, FONT_SIZE) / 2
    x = min(max(scale.x(level.amount), SIDE + half), VIEW_WIDTH - SIDE - half)
    return text(level.label, x, FONT_SIZE, text_anchor="middle", font_size=FONT_SIZE, fill=INK)
