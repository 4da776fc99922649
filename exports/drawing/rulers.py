"""The rulers: the height and the width in the reader's unit, and the numbers of rows or motifs."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import count, takewhile

from exports.drawing.layout import FONT_SIZE, VIEW_WIDTH, Layout
from exports.svg import INK, element, path, text
from quoting.core.ground.cautions import Reader
from quoting.core.ground.measures import CM_PER, Units
from quoting.core.ground.sameness import HAIR
from quoting.core.plan.passes import Edge
from quoting.core.plan.squares_grid import SquaresGrid
from quoting.wording import Speech, body_pass, edge_side

STEPS = {
    Units.METRIC: (1, 2, 5, 10, 20, 50, 100, 200, 500),
    Units.INCHES: (1, 2, 4, 6, 12, 24, 36, 72, 144),
}
ROW_STEPS = (1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000)
LABEL_GAP = 26.0
TICK_GAP = 5.0
WIDTH_RULER_GAP = 15.0
LONG_TICK, SHORT_TICK = 5.0, 2.5
FAINT = 0.7


def step(unit_size: float, steps: tuple[int, ...], least: float) -> int:
    """Return the smallest step whose marks lie at least `least` apart."""
    return next((size for size in steps if size * unit_size >= least), steps[-1])


def ticks(length: float, unit_size: float, steps: tuple[int, ...]) -> Iterator[tuple[int, bool]]:
    """Yield the marks of a ruler in its unit, from 0, and whether each bears its number."""
    labelled = step(unit_size, steps, LABEL_GAP)
    fine = (size for size in steps if labelled % size == 0 and size * unit_size >= TICK_GAP)
    each = next(fine, labelled)
    for mark in takewhile(lambda mark: mark * unit_size <= length + HAIR, count(0, each)):
        yield mark, mark % labelled == 0


def draw_rulers(layout: Layout, speech: Speech, reader: Reader) -> str:
    """Return both rulers and, for the maker, what is counted along the blanket."""
    return element(
        "g",
        *_height_ruler(layout, speech),
        *_width_ruler(layout, speech),
        *(_counts(layout, speech) if reader is Reader.MAKER else ()),
        class_="rulers",
        fill=INK,
        font_size=FONT_SIZE,
    )


def _counts(layout: Layout, speech: Speech) -> Iterator[str]:
    """Yield what a maker counts along her blanket: rows between two edges, rounds, or motifs."""
    if layout.plan.grid is not None:
        yield from _motif_numbers(layout, layout.plan.grid, speech)
        return
    if layout.plan.in_rows:
        yield from _edge_names(layout, speech)
    yield from _row_numbers(layout, speech)


def _lines(*steps: str | float) -> str:
    return path(*steps, stroke=INK, stroke_opacity=FAINT, stroke_width=0.7)


def _height_ruler(layout: Layout, speech: Speech) -> Iterator[str]:
    box, unit = layout.blanket, CM_PER[speech.units] * layout.scale
    x = box.left - layout.gutter
    steps: list[str | float] = ["M", x, box.top, "V", box.bottom]
    for mark, labelled in ticks(box.height, unit, STEPS[speech.units]):
        y = box.bottom - mark * unit
        steps += ["M", x, y, "H", x - (LONG_TICK if labelled else SHORT_TICK)]
        if labelled and mark:
            yield text(speech.number(mark), x - 7, y + 0.35 * FONT_SIZE, text_anchor="end")
    yield _lines(*steps)
    yield text(speech.length_unit, x - 7, box.bottom + 0.35 * FONT_SIZE, text_anchor="end")


def _width_ruler(layout: Layout, speech: Speech) -> Iterator[str]:
    box, unit = layout.blanket, CM_PER[speech.units] * layout.scale
    y = box.bottom + WIDTH_RULER_GAP
    steps: list[str | float] = ["M", box.left, y, "H", box.right]
    for mark, labelled in ticks(box.width, unit, STEPS[speech.units]):
        x = box.left + mark * unit
        steps += ["M", x, y, "V", y + (LONG_TICK if labelled else SHORT_TICK)]
        if labelled:
            yield text(speech.number(mark), x, y + 7 + 0.8 * FONT_SIZE, text_anchor="middle")
    yield _lines(*steps)


def _edge_names(layout: Layout, speech: Speech) -> Iterator[str]:
    """Yield what each edge is called, beside the ruler of the width."""
    box = layout.blanket
    y = box.bottom + WIDTH_RULER_GAP + 0.35 * FONT_SIZE
    left, right = sorted((Edge.START, Edge.FAR), key=layout.side)
    yield text(edge_side(left, speech), box.left - 6, y, text_anchor="end")
    yield text(edge_side(right, speech), box.right + 5, y, text_anchor="start")


def _row_numbers(layout: Layout, speech: Speech) -> Iterator[str]:
    """Yield the number of every so many-th row, or round, of the body, at the right."""
    x = layout.blanket.right + layout.gutter
    each = step(layout.row, ROW_STEPS, LABEL_GAP)
    steps: list[str | float] = []
    for index, worked in enumerate(layout.plan.passes):
        if worked.in_body and (worked.number % each == 0 or worked.number == 1):
            y = layout.height_at(index, 0.5)
            steps += ["M", x, y, "H", x + SHORT_TICK]
            label = speech.number(worked.number)
            yield text(label, x + 5, y + 0.35 * FONT_SIZE)
    yield _lines(*steps)
    label = body_pass(layout.plan)
    yield text(label, VIEW_WIDTH - 2, layout.blanket.top - 12, text_anchor="end")


def _motif_numbers(layout: Layout, grid: SquaresGrid, speech: Speech) -> Iterator[str]:
    """Yield the number of every so many-th motif, down the right side and along the top."""
    body = layout.body
    side, pitch = grid.side_cm * layout.scale, (grid.side_cm + grid.gap_cm) * layout.scale
    each = step(pitch, ROW_STEPS, LABEL_GAP)
    for row in _numbered(grid.rows, each):
        y = body.top + (row - 1) * pitch + side / 2
        yield text(speech.number(row), layout.blanket.right + 6, y + 0.35 * FONT_SIZE)
    for column in _numbered(grid.columns, each):
        x = body.left + (column - 1) * pitch + side / 2
        yield text(speech.number(column), x, layout.blanket.top - 5, text_anchor="middle")
    yield text("motif", layout.blanket.right + 6, layout.blanket.top - 5)


def _numbered(count: int, each: int) -> Iterator[int]:
    """Yield the numbers that are written of so many: the first, and every so many-th."""
    return (number for number in range(1, count + 1) if number == 1 or number % each == 0)
