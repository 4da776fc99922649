"""What the drawing says in sentences: its title and its description."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from quoting.core.estimate.strands import Strand
from quoting.core.quote.quote import Quote
from quoting.wording.rows_and_edges import body_pass, first_pass_words
from quoting.wording.speech import Speech


def drawing_title(quote: Quote) -> str:
    """Return the drawing's title."""
    return title_of_drawing(quote.order.title)


def title_of_drawing(title: str) -> str:
    """Return the title of the drawing of an order that is titled so."""
    return f"{title}, drawn to scale"


def drawing_description(quote: Quote, strands: Sequence[Strand], speech: Speech) -> str:
    """Return in sentences what the drawing shows of one blanket, and of its strands if any."""
    return " ".join(_sentences(quote, strands, speech))


def _sentences(quote: Quote, strands: Sequence[Strand], speech: Speech) -> Iterator[str]:
    plan, blankets = quote.plan, quote.order.quantity
    colours = ", ".join(
        f"{colour} {speech.number(rows)}" for colour, rows in plan.rows_by_colour.items()
    )
    yield f"{speech.size(plan.width_cm, plan.height_cm)}, {first_pass_words(plan)}."
    yield f"{speech.count(len(plan.rows), body_pass(plan))}: {colours}."
    if plan.rounds:
        yield f"Round them {speech.count(len(plan.rounds), 'border round')}."
    if blankets > 1:
        yield f"This is one of {speech.number(blankets)} blankets."
    if strands:
        yield f"It has {speech.count(2 * len(strands), 'end')} to weave in."
        carries = sum(len(strand.carries) for strand in strands)
        yield f"A yarn is carried up an edge {speech.count(carries, 'time')}."
