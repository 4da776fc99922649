"""A card of choices as a paper: two or three offers side by side, for a buyer who has not decided.

What holds for all of them is said once, below; what differs stands with each, and its total.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from quoting.core.quote.offer import Offer
from quoting.core.quote.offer_rows import RowCode
from quoting.wording.catalogues import sentence
from quoting.wording.cautions import caution_sentence
from quoting.wording.locales import sheet_of
from quoting.wording.offer_facts import facts_of_days, facts_of_making
from quoting.wording.offer_rows import said_row
from quoting.wording.paper import (
    Amounts,
    Beside,
    Block,
    Facts,
    Paper,
    Picture,
    SaidFact,
    SaidRow,
    Words,
)
from quoting.wording.speech import Speech, speech_of

LETTERS = ("A", "B", "C")
"""What the buyer answers with."""

_ANSWERS = {
    2: sentence(
        "This is a choice and no quote yet. Tell me which one you would like, A or B: "
        "a quote with its number follows."
    ),
    3: sentence(
        "This is a choice and no quote yet. Tell me which one you would like, A, B or C: "
        "a quote with its number follows."
    ),
}


def choices_paper(offers: Sequence[Offer], drawings: Sequence[Picture]) -> Paper:
    """Return two or three offers, each with its drawing, as one page. Errors: as `speech_of`."""
    first, speech = offers[0], speech_of(offers[0])
    name = speech.worded(sentence("A choice of blankets – {title}")).format(title=first.title)
    own = first.own_words
    return Paper(
        language=speech.language,
        sheet=sheet_of(first.locale),
        name=name,
        maker=first.maker,
        address=tuple(filter(None, (own.address, own.contact))),
        title=first.title,
        heading=_heading(first, speech),
        blocks=tuple(_blocks(offers, drawings, speech)),
    )


def _heading(offer: Offer, speech: Speech) -> str:
    day = speech.day(offer.day)
    if not offer.buyer:
        return speech.worded(sentence("A choice, {day}")).format(day=day)
    text = speech.worded(sentence("A choice for {buyer}, {day}"))
    return text.format(buyer=offer.buyer, day=day)


def _blocks(
    offers: Sequence[Offer], drawings: Sequence[Picture], speech: Speech
) -> Iterator[Block]:
    yield Words(texts=(speech.worded(_ANSWERS[len(offers)]),))
    facts = [_facts(offer, speech) for offer in offers]
    alike = [fact for fact in facts[0] if all(_is_among(fact, others) for others in facts)]
    yield Beside(
        columns=tuple(
            (
                Words(heading=letter, texts=()),
                drawing,
                Facts(facts=tuple(fact for fact in own if not _is_among(fact, alike))),
                Amounts(rows=_totals(offer, speech)),
            )
            for letter, offer, drawing, own in zip(LETTERS, offers, drawings, facts, strict=False)
        )
    )
    yield Facts(heading=speech.worded(sentence("The same for each")), facts=tuple(alike))
    cautions = [caution_sentence(caution, speech) for offer in offers for caution in offer.cautions]
    if cautions:
        warning = speech.worded(sentence("Please note:"))
        yield Words(texts=tuple(dict.fromkeys(cautions)), warning=warning)


def _is_among(fact: SaidFact, others: Sequence[SaidFact]) -> bool:
    """Return whether others say the same; in which order colours are worked does not matter."""
    return any(
        (fact.name, set(fact.colours) or fact.text) == (one.name, set(one.colours) or one.text)
        for one in others
    )


def _facts(offer: Offer, speech: Speech) -> list[SaidFact]:
    return [*facts_of_making(offer, speech), *facts_of_days(offer, speech)]


def _totals(offer: Offer, speech: Speech) -> tuple[SaidRow, ...]:
    """Return what is paid in all, and the same in the buyer's currency if that is another."""
    totals = (row for row in offer.rows if row.code is RowCode.TOTAL)
    return tuple(said_row(row, offer, speech) for row in totals)
