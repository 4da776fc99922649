"""Bars stacked by what each price pays for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from decimal import Decimal

from exports.charts.ground import (
    BAR_HEIGHT,
    FONT_SIZE,
    NAME_HEIGHT,
    SIDE,
    SMALL_SIZE,
    VIEW_WIDTH,
    Scale,
    framed,
    heading,
    scale_of,
    words_width,
    zero_line,
)
from exports.charts.inks import draw_inks, ink
from exports.charts.values import Part, StackedBar
from exports.svg import INK, element, escaped, text

PITCH = NAME_HEIGHT + BAR_HEIGHT + 20
KEY_LINE = 17.0
SAMPLE = 19.0


def stacked_bars(
    bars: Sequence[StackedBar], *, title: str, description: str, prefix: str = "prices"
) -> str:
    """Return a chart of the bars, one under another, each part in an ink of its own, with a key.

    A loss lies left of the line that the bars begin at, so the parts right of it reach beyond
    the total by as much. `prefix` begins every id.
    """
    kinds = {what: number for number, what in enumerate(_kinds(bars))}
    scale = scale_of([amount for bar in bars for amount in (bar.gained, bar.lost)])
    key, top = _key(list(kinds), prefix)
    rows = [_row(bar, scale, kinds, top + PITCH * row, prefix) for row, bar in enumerate(bars)]
    return framed(
        draw_inks(prefix, len(kinds)),
        key,
        *rows,
        bottom=top + PITCH * len(bars),
        title=title,
        description=description,
        prefix=prefix,
    )


def _kinds(bars: Sequence[StackedBar]) -> dict[str, None]:
    """Return what the parts pay for, each once, in the order they first come."""
    return {part.what: None for bar in bars for part in bar.parts if part.amount}


def _key(kinds: Sequence[str], prefix: str) -> tuple[str, float]:
    """Return the key at the head of the chart, and where it ends."""
    entries, x, y = [], SIDE, KEY_LINE
    for number, what in enumerate(kinds):
        width = SAMPLE + words_width(what, FONT_SIZE) + 14
        if x > SIDE and x + width > VIEW_WIDTH:
            x, y = SIDE, y + KEY_LINE
        entries.append(_box(x, y - 10, 13, 11, ink(prefix, number)))
        entries.append(text(what, x + SAMPLE, y, font_size=FONT_SIZE, fill=INK))
        x += width
    return element("g", *entries, class_="key"), y + 8


def _row(bar: StackedBar, scale: Scale, kinds: Mapping[str, int], top: float, prefix: str) -> str:
    at = top + NAME_HEIGHT + 4
    parts = _parts(bar, scale, kinds, at, prefix)
    head = heading(bar.name, bar.label, top + NAME_HEIGHT - 1)
    return element("g", head, *parts, zero_line(scale, at), class_="bar")


def _parts(
    bar: StackedBar, scale: Scale, kinds: Mapping[str, int], top: float, prefix: str
) -> Iterator[str]:
    """Yield a bar's parts: gains to the right, each after the other, losses to the left."""
    gained = lost = Decimal(0)
    for part in bar.parts:
        if part.amount > 0:
            begins, gained = gained, gained + part.amount
        elif part.amount < 0:
            lost += part.amount
            begins = lost
        else:
            continue
        left, width = scale.x(begins), scale.x(begins + abs(part.amount)) - scale.x(begins)
        fill = ink(prefix, kinds[part.what])
        yield _box(left, top, width, BAR_HEIGHT, fill, _said(bar, part), class_="part")
        if words_width(part.label, SMALL_SIZE) + 3 <= width:
            middle, below = left + width / 2, top + BAR_HEIGHT + SMALL_SIZE
            yield text(
                part.label, middle, below, text_anchor="middle", font_size=SMALL_SIZE, fill=INK
            )


def _said(bar: StackedBar, part: Part) -> str:
    return element("title", escaped(f"{bar.name}, {part.what}: {part.label}"))


def _box(
    x: float, y: float, width: float, height: float, fill: str, *children: str, **more: str
) -> str:
    return element(
        "rect",
        *children,
        x=x,
        y=y,
        width=width,
        height=height,
        fill=fill,
        stroke=INK,
        stroke_width=0.8,
        **more,
    )
