"""What the drawing says in words: its title, its description, and the names of its parts."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from quoting.core.passes import Edge, Pass, Work
from quoting.core.quote import Quote
from quoting.core.strands import Strand
from quoting.wording.speech import Speech
from quoting.wording.trade_words import edge_words, pass_words

EDGE_LABEL = {Edge.START: "start edge", Edge.FAR: "far edge"}
STARTS, ENDS, CARRIED, JOINED = "starts", "ends", "carried up", "new ball joined"


def passes_label(passes: Sequence[Pass]) -> str:
    """Return neighbouring passes and their colour: `Rows 2-4 teal`."""
    return f"{numbers_label(passes)} {passes[0].colour}"


def numbers_label(passes: Sequence[Pass]) -> str:
    """Return neighbouring passes of one kind: `Foundation chain`, `Row 1`, `Border rounds 2-4`."""
    first, last = passes[0], passes[-1]
    words = pass_words(first)
    if first.number != last.number:
        words = f"{words.removesuffix(f' {first.number}')}s {first.number}–{last.number}"
    return words[:1].upper() + words[1:]


def edge_label(worked: Pass, edge: Edge) -> str:
    """Return where along a pass: `the far edge`, `within the round`."""
    if edge is Edge.WITHIN and worked.work is Work.ROUND:
        return "within the round"
    return edge_words(edge)


def drawing_title(quote: Quote) -> str:
    """Return the drawing's title."""
    return f"{quote.order.title}, drawn to scale"


def drawing_description(quote: Quote, strands: Sequence[Strand], speech: Speech) -> str:
    """Return in sentences what the drawing shows of the piece with these strands."""
    return " ".join(_sentences(quote, strands, speech))


def _sentences(quote: Quote, strands: Sequence[Strand], speech: Speech) -> Iterator[str]:
    plan, pieces = quote.plan, quote.order.quantity
    colours = ", ".join(
        f"{colour} {speech.number(rows)}" for colour, rows in plan.rows_by_colour.items()
    )
    yield f"{speech.size(plan.width_cm, plan.height_cm)}, row 1 at the bottom."
    yield f"{speech.count(len(plan.rows), 'row')}: {colours}."
    if plan.rounds:
        yield f"Round them {speech.count(len(plan.rounds), 'border round')}."
    ends = speech.count(2 * len(strands), "end")
    if pieces > 1:
        yield f"This is one of {speech.number(pieces)} blankets; it has {ends} to weave in."
    else:
        yield f"There are {ends} to weave in."
    carries = sum(len(strand.carries) for strand in strands)
    yield f"A yarn is carried up an edge {speech.count(carries, 'time')}."
