"""What the drawing says in sentences: its title and its description."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from quoting.core.estimate.strands import Strand
from quoting.core.plan.passes import Work
from quoting.core.quote.quote import Quote
from quoting.wording.catalogues import sentence
from quoting.wording.speech import Speech


def drawing_title(quote: Quote, speech: Speech) -> str:
    """Return the drawing's title."""
    return title_of_drawing(quote.order.title, speech)


def title_of_drawing(title: str, speech: Speech) -> str:
    """Return the title of the drawing of an order that is titled so."""
    return speech.worded(sentence("{title}, drawn to scale")).format(title=title)


def drawing_description(quote: Quote, strands: Sequence[Strand], speech: Speech) -> str:
    """Return in sentences what the drawing shows of one blanket, and of its strands if any."""
    return " ".join(_sentences(quote, strands, speech))


def _sentences(quote: Quote, strands: Sequence[Strand], speech: Speech) -> Iterator[str]:
    plan, blankets = quote.plan, quote.order.quantity
    colours = ", ".join(
        f"{colour} {speech.number(rows)}" for colour, rows in plan.rows_by_colour.items()
    )
    size, rows = speech.size(plan.width_cm, plan.height_cm), len(plan.rows)
    if plan.rows[0].work is Work.ROUND:
        yield speech.worded(sentence("{size}, round 1 in the middle.")).format(size=size)
        yield speech.counted(
            rows, "{n} round: {colours}.", "{n} rounds: {colours}.", colours=colours
        )
    else:
        yield speech.worded(sentence("{size}, row 1 at the bottom.")).format(size=size)
        yield speech.counted(rows, "{n} row: {colours}.", "{n} rows: {colours}.", colours=colours)
    if plan.rounds:
        yield speech.counted(
            len(plan.rounds), "Round them {n} border round.", "Round them {n} border rounds."
        )
    if blankets > 1:
        yield speech.counted(blankets, "This is {n} blanket.", "This is one of {n} blankets.")
    if strands:
        yield f"It has {speech.count(2 * len(strands), 'end')} to weave in."
        carries = sum(len(strand.carries) for strand in strands)
        yield f"A yarn is carried up an edge {speech.count(carries, 'time')}."
