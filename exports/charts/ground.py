"""What the charts have in common: the scale of their amounts and the places of their words.

A chart is always 400 units wide, so that its words stay legible on a phone.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from exports.svg import INK, path, picture, text

VIEW_WIDTH = 400.0
SIDE = 8.0
FONT_SIZE = 12.0
SMALL_SIZE = 10.5
NAME_HEIGHT = 17.0
BAR_HEIGHT = 17.0
CHARACTER = 0.56
"""A character's usual width as a share of the font size: words are not measured, only guessed."""


def words_width(words: str, size: float) -> float:
    """Return about how wide words are."""
    return len(words) * CHARACTER * size


@dataclass(frozen=True, slots=True)
class Scale:
    """Where amounts lie across a chart, from the least to the most of them and nothing between."""

    least: Decimal
    most: Decimal

    def x(self, amount: Decimal) -> float:
        """Return how far right an amount lies."""
        span = self.most - self.least
        share = float((amount - self.least) / span) if span else 0.0
        return SIDE + share * (VIEW_WIDTH - 2 * SIDE)


def scale_of(amounts: Sequence[Decimal]) -> Scale:
    """Return the scale that holds all amounts and nothing, too."""
    return Scale(min(amounts, default=Decimal(0)).min(0), max(amounts, default=Decimal(0)).max(0))


def heading(name: str, label: str, y: float) -> str:
    """Return the words over a bar: its name at the left, its amount at the right."""
    amount = text(label, VIEW_WIDTH - SIDE, y, text_anchor="end", font_size=FONT_SIZE, fill=INK)
    return text(name, SIDE, y, font_size=FONT_SIZE, font_weight="bold", fill=INK) + amount


def upright(scale: Scale, amount: Decimal, top: float, **attributes: str | float) -> str:
    """Return the line of one amount across a bar, clear of the words above and below it."""
    return path("M", scale.x(amount), top - 3, "V", top + BAR_HEIGHT + 3, stroke=INK, **attributes)


def zero_line(scale: Scale, top: float) -> str:
    """Return the line that a bar begins at."""
    return upright(scale, Decimal(0), top, class_="zero", stroke_width=1.6)


def framed(*children: str, bottom: float, title: str, description: str, prefix: str) -> str:
    """Return a whole chart that ends a little below `bottom`; `prefix` begins every id in it."""
    return picture(
        *children,
        width=VIEW_WIDTH,
        height=bottom + SIDE,
        title=title,
        description=description,
        prefix=prefix,
        class_="chart",
    )
