"""What the drawing says in sentences: its title and its description."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from quoting.core.estimate.strands import Strand
from quoting.core.plan.passes import Pass, Plan, Work
from quoting.core.quote.quote import Quote
from quoting.wording.catalogues import sentence
from quoting.wording.ends import ends_to_do
from quoting.wording.speech import FILE_SPEECH, Speech

_TITLE = sentence("{title}, drawn to scale")
_IN_ROWS = sentence("{size}, row 1 at the bottom.")
_IN_ROUNDS = sentence("{size}, round 1 in the middle.")
_BANDS = {
    (Work.ROW, False): (
        sentence("Row {first} {colour}"),
        sentence("Rows {first}–{last} {colour}"),
    ),
    (Work.ROUND, False): (
        sentence("Round {first} {colour}"),
        sentence("Rounds {first}–{last} {colour}"),
    ),
    (Work.ROUND, True): (
        sentence("Border round {first} {colour}"),
        sentence("Border rounds {first}–{last} {colour}"),
    ),
}
"""For one pass and for several: what kind of pass, and whether in the border."""
_ONE_OF_SEVERAL = sentence("This is one of {blankets} blankets.")


def drawing_title(quote: Quote, speech: Speech = FILE_SPEECH) -> str:
    """Return the drawing's title."""
    return title_of_drawing(quote.order.title, speech)


def title_of_drawing(title: str, speech: Speech = FILE_SPEECH) -> str:
    """Return the title of the drawing of an order that is titled so."""
    return speech.worded(_TITLE).format(title=title)


def drawing_description(quote: Quote, strands: Sequence[Strand], speech: Speech) -> str:
    """Return in sentences what the drawing shows of one blanket, and of its strands if any."""
    of_strands = _strands(quote, strands, speech) if strands else ()
    return " ".join([*_blanket(quote, speech), *of_strands])


def band_name(passes: Sequence[Pass], speech: Speech) -> str:
    """Return what neighbouring passes of one colour are called: `Row 1 oat`, `Rows 2–4 teal`."""
    first, last = passes[0], passes[-1]
    one, several = _BANDS[first.work, first.in_border]
    text = speech.worded(one if first.number == last.number else several)
    return text.format(first=first.number, last=last.number, colour=first.colour)


def _blanket(quote: Quote, speech: Speech) -> Iterator[str]:
    plan, blankets = quote.plan, quote.order.quantity
    first = _IN_ROUNDS if plan.rows[0].work is Work.ROUND else _IN_ROWS
    yield speech.worded(first).format(size=speech.size(plan.width_cm, plan.height_cm))
    yield _passes_by_colour(plan, speech)
    if plan.rounds:
        yield speech.counted(len(plan.rounds), "Border: {n} round.", "Border: {n} rounds.")
    if blankets > 1:
        yield speech.worded(_ONE_OF_SEVERAL).format(blankets=speech.number(blankets))


def _passes_by_colour(plan: Plan, speech: Speech) -> str:
    colours = ", ".join(
        f"{colour} {speech.number(rows)}" for colour, rows in plan.rows_by_colour.items()
    )
    count = len(plan.rows)
    if plan.rows[0].work is Work.ROUND:
        return speech.counted(
            count, "{n} round: {colours}.", "{n} rounds: {colours}.", colours=colours
        )
    return speech.counted(count, "{n} row: {colours}.", "{n} rows: {colours}.", colours=colours)


def _strands(quote: Quote, strands: Sequence[Strand], speech: Speech) -> Iterator[str]:
    """Yield what only the maker is told, in her own English."""
    to_do = ends_to_do(quote.order.design)
    yield f"It has {speech.count(2 * len(strands), 'end')} {to_do}."
    carries = sum(len(strand.carries) for strand in strands)
    yield f"A yarn is carried up an edge {speech.count(carries, 'time')}."
