"""How far a blanket is: its rows, or motifs, as they are worked, those still to come faint."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

from exports.drawing.tables import colour_codes
from exports.svg import INK, element, path, picture
from quoting.core.making.made_rows import made_rows
from quoting.core.plan.passes import Work
from quoting.core.quote.quote import Quote

WIDTH, HEIGHT, OVER = 600, 32, 6
"""The bar in units of the picture, and how far the mark of where she is stands out of it."""

FAINT = 0.3
"""How much of its colour a row has that is still to be worked."""


def draw_rows_done(quote: Quote, done: int, words: str) -> str:
    """Return a bar of one blanket of which so much is done, as it is ticked off; `words` say so.

    A row or round has one colour; of a motif, which is ticked off at once, all its rounds are
    shown. A foundation chain is not shown.
    """
    rows = tuple(_rows(quote))
    reached = WIDTH * done / len(rows)
    frame = element("rect", x=0, y=OVER, width=WIDTH, height=HEIGHT, class_="outline", stroke=INK)
    return picture(
        *_bands(rows, reached),
        frame,
        path("M", reached, 0, "V", HEIGHT + 2 * OVER, class_="reached", stroke=INK, stroke_width=2),
        width=WIDTH,
        height=HEIGHT + 2 * OVER,
        title="How far it is",
        description=words,
        prefix="rows-done",
        class_="rows-done",
    )


def _rows(quote: Quote) -> Iterator[Sequence[str]]:
    """Yield the colours of what is ticked off, each as `#rrggbb`, in the order worked."""
    codes, passes = colour_codes(quote), quote.plan.passes
    for made in made_rows(quote).of_blanket:
        worked = passes[made.first : made.last + 1]
        yield [codes[each.colour] for each in worked if each.work is not Work.CHAIN]


def _bands(rows: Sequence[Sequence[str]], reached: float) -> Iterator[str]:
    """Yield the bands of each colour, those in front of where she is and those behind it.

    Each unit of the picture has the colour of the row, or of the round, that its middle falls into.
    All bands that look alike are one path, which keeps hundreds of motifs small.
    """

    def look(left: int) -> tuple[str, bool]:
        number, along = divmod((left + 0.5) * len(rows) / WIDTH, 1)
        colours = rows[int(number)]
        return colours[int(along * len(colours))], left + 0.5 < reached

    looks: dict[tuple[str, bool], list[str]] = {}
    for (code, is_done), run in groupby(range(WIDTH), key=look):
        units = list(run)
        looks.setdefault((code, is_done), []).append(
            f"M{units[0]} {OVER}h{len(units)}v{HEIGHT}h{-len(units)}z"
        )
    for (code, is_done), boxes in looks.items():
        yield element(
            "path",
            d="".join(boxes),
            class_="done" if is_done else "to-come",
            fill=code,
            fill_opacity=None if is_done else FAINT,
        )
