"""The blanket itself: the border's rounds as frames, and every row a band of its colour."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from itertools import groupby

from exports.drawing.boxes import Box
from exports.drawing.layout import Layout
from exports.svg import INK, element, escaped, path, route
from quoting.core.plan.passes import Pass, Work
from quoting.wording import Speech, band_name

THIN = 1.5
"""Rows thinner than this are drawn as one band with their neighbours of the same colour."""

LINED = 3.0
"""Rows at least this high are parted by a line."""

STITCHED = 2.2
"""Stitches at least this wide are shown."""

GRAIN = 0.5
"""The breadth of the line between two stitches."""

SEAM = "#808080"
"""A mid grey, which shows on a dark yarn and on a white one alike."""


Draw = Callable[[Layout, Mapping[str, str], Speech, str], Iterator[str]]
"""Yields a body from its passes, with each colour of the design as `#rrggbb`, named in a speech.

The last is what begins every id.
"""


def draw_bands(
    layout: Layout, codes: Mapping[str, str], draw_body: Draw, speech: Speech, *, prefix: str
) -> str:
    """Return border, body and chain; `codes` gives each colour of the design as `#rrggbb`."""
    outline = layout.outline.drawn(
        layout.blanket, class_="outline", stroke=INK, stroke_opacity=0.55, stroke_width=0.8
    )
    return element(
        "g",
        *_draw_rings(layout, codes, speech, in_border=True),
        *draw_body(layout, codes, speech, prefix),
        _seams(layout),
        *_chain(layout, codes),
        outline,
        class_="bands",
    )


def _rect(box: Box, *children: str, **attributes: str | float | None) -> str:
    return element(
        "rect", *children, x=box.left, y=box.top, width=box.width, height=box.height, **attributes
    )


def _named(passes: Sequence[Pass], speech: Speech) -> str:
    """Return the name of passes of one colour, for whoever points at them."""
    return element("title", escaped(band_name(passes, speech)))


def draw_rounds(
    layout: Layout, codes: Mapping[str, str], speech: Speech, prefix: str
) -> Iterator[str]:
    """Yield the rounds of the body, and of a rectangle the chain that it begins on."""
    del prefix
    yield from _draw_rings(layout, codes, speech, in_border=False)
    yield from _round_stitches(layout)
    body = layout.body
    if max(body.width, body.height) >= LINED:
        steps = ("M", body.left, body.top, "L", body.right, body.bottom)
        yield path(*steps, class_="begins-on", stroke=SEAM, stroke_width=1)


def _draw_rings(
    layout: Layout, codes: Mapping[str, str], speech: Speech, *, in_border: bool
) -> Iterator[str]:
    """Yield the rounds of the body, or of the border, each painted over by those inside it."""
    for index, worked in reversed(list(enumerate(layout.plan.passes))):
        if worked.work is Work.ROUND and worked.in_border is in_border:
            name, fill = _named((worked,), speech), codes[worked.colour]
            yield layout.outline.drawn(layout.ring(index), name, class_="round", fill=fill)


def draw_rows(
    layout: Layout, codes: Mapping[str, str], speech: Speech, prefix: str
) -> Iterator[str]:
    """Yield the rows from the bottom up, on a ground that keeps the page from showing through."""
    del prefix
    rows = layout.plan.rows
    yield _rect(layout.body, class_="ground", fill=codes[rows[0].colour])
    for run in _runs(layout):
        first, last = layout.band(run[0]), layout.band(run[-1])
        box = Box(first.left, last.top, first.width, first.bottom - last.top)
        worked = [layout.plan.passes[index] for index in run]
        yield _rect(box, _named(worked, speech), class_="row", fill=codes[worked[0].colour])
    yield from _stitches(layout)


def _runs(layout: Layout) -> Iterator[Sequence[int]]:
    """Yield rows by their passes: each alone, or thin ones of one colour together."""
    passes = layout.plan.passes
    rows = [index for index, worked in enumerate(passes) if worked.work is Work.ROW]

    def together(index: int) -> tuple[str, int]:
        thin = layout.band(index).height < THIN
        return passes[index].colour, -1 if thin else index

    for _, run in groupby(rows, key=together):
        yield list(run)


def _stitches(layout: Layout) -> Iterator[str]:
    """Yield a faint line between stitch and stitch, where a stitch is wide enough to be seen."""
    rows_of: dict[str, list[int]] = {}
    for index, worked in enumerate(layout.plan.passes):
        if worked.work is Work.ROW:
            rows_of.setdefault(worked.stitch, []).append(index)
    for stitch, rows in rows_of.items():
        width = layout.body.width / layout.plan.passes[rows[0]].stitches[stitch]
        height = layout.band(rows[0]).height
        if width >= STITCHED and height >= LINED:
            yield _grain(layout, rows, width, height)


def _round_stitches(layout: Layout) -> Iterator[str]:
    """Yield the same line for every round of the body, along its middle.

    It begins with half a stitch, so that none is bent round the corner that a side ends in: it
    would fill it.
    """
    for index, worked in enumerate(layout.plan.passes):
        if worked.grows:
            ring = layout.ring(index, middle=True)
            width = layout.outline.length(ring) / sum(worked.stitches.values())
            height = worked.height_cm * layout.scale
            if width >= STITCHED and height >= LINED:
                middle = (GRAIN - width) / 2
                yield _between(layout.outline.line(ring), width, height, begins=middle)


def _grain(layout: Layout, rows: Sequence[int], width: float, height: float) -> str:
    """Return the lines between the stitches of rows that are alike."""
    steps: list[str | float] = []
    for index in rows:
        steps += ["M", layout.body.left, layout.height_at(index, 0.5), "H", layout.body.right]
    return _between(steps, width, height, begins=GRAIN - width)


def _between(steps: Sequence[str | float], width: float, height: float, *, begins: float) -> str:
    """Return the lines between stitches so wide and high, along their middle."""
    return path(
        *steps,
        class_="stitches",
        stroke=SEAM,
        stroke_opacity=0.3,
        stroke_width=0.7 * height,
        stroke_dasharray=route(GRAIN, width - GRAIN),
        stroke_dashoffset=begins,
    )


def _seams(layout: Layout) -> str:
    """Return the lines between rows and between rounds, where there is room for them."""
    plan = layout.plan
    steps: list[str | float] = []
    for index, worked in enumerate(plan.passes):
        is_there = worked.in_border or plan.grid is None
        if is_there and worked.height_cm * layout.scale >= LINED:
            steps += _seam(layout, index, worked)
    return (
        path(*steps, class_="seams", stroke=SEAM, stroke_opacity=0.4, stroke_width=0.5)
        if steps
        else ""
    )


def _seam(layout: Layout, index: int, worked: Pass) -> list[str | float]:
    if worked.work is Work.ROUND:
        return layout.outline.line(layout.ring(index))
    return ["M", layout.body.left, layout.band(index).top, "H", layout.body.right]


def _chain(layout: Layout, codes: Mapping[str, str]) -> Iterator[str]:
    """Yield the foundation chain: a thin line of links under row 1."""
    for index, worked in enumerate(layout.plan.passes):
        if worked.work is Work.CHAIN:
            y = layout.height_at(index, 0.0)
            line = ("M", layout.body.left, y, "H", layout.body.right)
            yield path(*line, stroke=SEAM, stroke_width=1.8)
            yield path(
                *line,
                class_="chain",
                stroke=codes[worked.colour],
                stroke_width=1.2,
                stroke_dasharray="2.4 0.8",
            )
