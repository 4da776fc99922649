"""How far a blanket is: its rows from the first to the last, those still to be worked faint.

A motif is as wide as a row, and has its rounds side by side in it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import groupby

from exports.drawing.tables import colour_codes
from exports.svg import INK, element, path, picture
from quoting.core.making.made_rows import MadeRow, made_rows
from quoting.core.plan.passes import Plan, Work
from quoting.core.quote.quote import Quote

WIDTH, HEIGHT, OVER = 600, 32, 6
"""The bar in units of the picture, and how far the mark of where she is stands out of it."""

FAINT = 0.3
"""How much of its colour a row has that is still to be worked."""


def draw_rows_done(quote: Quote, done: int, words: str) -> str:
    """Return a bar of one blanket of which so many rows and rounds are done; `words` say the same.

    The foundation chain is not one of them; a motif, and a seam, is one.
    """
    rows = [_colours(made, quote.plan) for made in made_rows(quote).of_blanket]
    reached = WIDTH * done / len(rows)
    frame = element("rect", x=0, y=OVER, width=WIDTH, height=HEIGHT, class_="outline", stroke=INK)
    return picture(
        *_bands(rows, reached, colour_codes(quote)),
        frame,
        path("M", reached, 0, "V", HEIGHT + 2 * OVER, class_="reached", stroke=INK, stroke_width=2),
        width=WIDTH,
        height=HEIGHT + 2 * OVER,
        title="How far it is",
        description=words,
        prefix="rows-done",
        class_="rows-done",
    )


def _colours(made: MadeRow, plan: Plan) -> list[str]:
    """Return the colours of a row, one after the other; a chain is not one of its own."""
    works = plan.passes[made.first : made.last + 1]
    return [worked.colour for worked in works if worked.work is not Work.CHAIN]


def _bands(
    rows: Sequence[Sequence[str]], reached: float, codes: Mapping[str, str]
) -> Iterator[str]:
    """Yield the bands of one colour, each in front of where she is or behind it.

    Each unit of the picture has the colour of the row that its middle falls into.
    """

    def look(left: int) -> tuple[str, bool]:
        at = (left + 0.5) * len(rows) / WIDTH
        colours = rows[int(at)]
        return codes[colours[int(at % 1 * len(colours))]], left + 0.5 < reached

    for (code, is_done), run in groupby(range(WIDTH), key=look):
        units = list(run)
        yield element(
            "rect",
            x=units[0],
            y=OVER,
            width=len(units),
            height=HEIGHT,
            class_="done" if is_done else "to-come",
            fill=code,
            fill_opacity=None if is_done else FAINT,
        )
