"""Joined motifs: each layout drawn once, and laid wherever the plan's grid has it.

The grid is drawn in a measure of its own, in which motifs lie one apart: so the place of each is
two whole numbers, and the picture of five thousand stays small.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import accumulate, groupby
from operator import itemgetter

from exports.drawing.bands import LINED, SEAM
from exports.drawing.boxes import Box
from exports.drawing.layout import Layout
from exports.drawing.outlines import RECTANGLE
from exports.svg import element, escaped, number, path
from quoting.core.plan.layout_colours import LayoutMade, joined_in, layouts_made
from quoting.core.plan.squares_grid import SquaresGrid
from quoting.wording import Speech, layout_name

GAP_SEEN = 1.5
"""A join at least this wide is seen by its own colour; another as a line."""


def draw_motifs(
    layout: Layout, codes: Mapping[str, str], speech: Speech, prefix: str
) -> Iterator[str]:
    """Yield the ground, which is seen where motifs lie apart, and the motifs on it."""
    grid = grid_of(layout)
    pitch = (grid.side_cm + grid.gap_cm) * layout.scale
    corner = f"{number(layout.body.left)} {number(layout.body.top)}"
    place = f"translate({corner}) scale({number(pitch)})"
    yield RECTANGLE.drawn(layout.body, class_="ground", fill=codes[_ground(layout)])
    yield element("defs", *_patterns(layout, codes, speech, prefix))
    yield element("g", *_placed(grid, prefix), class_="motifs", transform=place)
    if grid.gap_cm * layout.scale < GAP_SEEN and grid.count > 1:
        yield _edges(layout, grid, pitch)


def grid_of(layout: Layout) -> SquaresGrid:
    """Return where the motifs lie. Errors: ValueError where there are none."""
    if layout.plan.grid is None:
        raise ValueError("no motifs lie in this plan")
    return layout.plan.grid


def _ground(layout: Layout) -> str:
    """Return the colour that motifs are joined in, else that of the last round of one."""
    return joined_in(layout.plan) or layouts_made(layout.plan)[-1].colours[-1]


def _patterns(
    layout: Layout, codes: Mapping[str, str], speech: Speech, prefix: str
) -> Iterator[str]:
    """Yield a motif of each layout, by the name that the grid lays it by."""
    for made in layouts_made(layout.plan):
        name = element("title", escaped(layout_name(made, speech)))
        bands = _bands(layout, made, codes)
        yield element("g", name, *bands, class_="motif", id=_id(prefix, made.number))


def _id(prefix: str, number: int) -> str:
    return f"{prefix}-{number}"


def _bands(layout: Layout, made: LayoutMade, codes: Mapping[str, str]) -> Iterator[str]:
    """Yield the bands of one colour from the outer one in, and the lines between rounds."""
    grid = grid_of(layout)
    pitch_cm = grid.side_cm + grid.gap_cm
    outer = Box(0, 0, grid.side_cm / pitch_cm, grid.side_cm / pitch_cm)
    shares = [2 * height_cm / grid.side_cm for height_cm in accumulate(made.heights_cm)]
    rounds = zip(made.colours, shares, strict=True)
    runs = [list(run) for _, run in groupby(rounds, key=itemgetter(0))]
    for run in reversed(runs):
        colour, share = run[-1]
        yield RECTANGLE.drawn(outer.scaled(share, share), fill=codes[colour])
    lines: list[str | float] = []
    for height_cm, share in zip(made.heights_cm, shares[:-1], strict=False):
        if height_cm * layout.scale >= LINED:
            lines += RECTANGLE.line(outer.scaled(share, share))
    if lines:
        thin = 0.5 / (pitch_cm * layout.scale)
        yield path(*lines, stroke=SEAM, stroke_opacity=0.4, stroke_width=thin)


def _placed(grid: SquaresGrid, prefix: str) -> Iterator[str]:
    for row in range(grid.rows):
        for column in range(grid.columns):
            name = _id(prefix, grid.layout_at(column, row) + 1)
            yield element("use", href=f"#{name}", x=column, y=row)


def _edges(layout: Layout, grid: SquaresGrid, pitch: float) -> str:
    """Return the lines that the edges of the motifs lie on."""
    body, half = layout.body, grid.gap_cm * layout.scale / 2
    steps: list[str | float] = []
    for column in range(1, grid.columns):
        steps += ["M", body.left + column * pitch - half, body.top, "V", body.bottom]
    for row in range(1, grid.rows):
        steps += ["M", body.left, body.top + row * pitch - half, "H", body.right]
    return path(*steps, class_="edges", stroke=SEAM, stroke_opacity=0.6, stroke_width=0.7)
