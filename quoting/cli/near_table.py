"""The next smaller and larger blankets as a table of plain text."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from quoting.cli.columns import PAGE_WIDTH, columns, facts, wrapped
from quoting.core.quote.quote import Quote
from quoting.core.weighing.closing import closing_of
from quoting.core.weighing.neighbours import Neighbour
from quoting.wording import (
    Speech,
    apart_words,
    closed_words,
    neighbour_words,
    speech_of,
)


def near_table(quote: Quote, neighbours: Sequence[Neighbour]) -> str:
    """Return the table, to stand below that of the quote. Errors: as `speech_of`."""
    return "\n".join(_lines(quote, neighbours, speech_of(quote.workshop))) + "\n"


def _lines(quote: Quote, neighbours: Sequence[Neighbour], speech: Speech) -> Iterator[str]:
    yield f"A little larger or smaller, in {speech.currency}"
    yield "-" * PAGE_WIDTH
    heading = ("", f"Made, {speech.length_unit}", "Total", "Hours", "Ends")
    as_it_is = _row("As it is", quote, speech)
    others = (_row(neighbour_words(each), each.quote, speech) for each in neighbours)
    yield from columns([heading, as_it_is, *others])
    yield ""
    yield from facts(
        [
            ("As it is", closed_words(quote, closing_of(quote), speech)),
            *(
                (neighbour_words(each), closed_words(each.quote, each.closing, speech))
                for each in neighbours
            ),
        ]
    )
    apart = apart_words(closing_of(quote))
    yield from ["", *wrapped(apart, PAGE_WIDTH)] if apart else []


def _row(name: str, quote: Quote, speech: Speech) -> tuple[str, ...]:
    plan, estimate = quote.plan, quote.estimate
    return (
        name,
        " × ".join(speech.bare_length(side_cm) for side_cm in (plan.width_cm, plan.height_cm)),
        speech.bare_money(quote.price.total),
        speech.hours(estimate.hours.total),
        speech.number(estimate.ends),
    )
