"""An offer as the paper that its buyer reads."""

from __future__ import annotations

from collections.abc import Iterator

from quoting.core.quote.offer import Offer
from quoting.wording.locales import sheet_of
from quoting.wording.offer import SaidOffer, say_offer
from quoting.wording.paper import Amounts, Beside, Block, Facts, Paper, Picture, SaidRow, Words
from quoting.wording.speech import Speech, speech_of


def offer_paper(offer: Offer, drawing: Picture) -> Paper:
    """Return an offer as a paper, beside the drawing of its blanket. Errors: as `speech_of`."""
    said, speech = say_offer(offer), speech_of(offer)
    own = said.own_words
    return Paper(
        language=speech.language,
        sheet=sheet_of(speech.locale),
        name=said.name,
        maker=said.maker,
        address=tuple(words for words in (own.address, own.contact) if words),
        title=said.title,
        heading=said.heading,
        blocks=tuple(_blocks(said, drawing, speech)),
    )


def _blocks(said: SaidOffer, drawing: Picture, speech: Speech) -> Iterator[Block]:
    if said.own_words.greeting:
        yield Words(texts=(said.own_words.greeting,), as_typed=True)
    rows = (SaidRow(name=r.name, amount=r.amount, is_total=r.is_total) for r in said.rows)
    beside = (Amounts(rows=tuple(rows)), Facts(facts=said.facts))
    yield Beside(columns=((drawing,), beside))
    if said.cautions:
        yield Words(texts=said.cautions, warning=speech.worded("Please note:"))
    yield Words(texts=said.notes)
    yield from _own_words(said, speech)


def _own_words(said: SaidOffer, speech: Speech) -> Iterator[Words]:
    named = (("Care", said.own_words.care), ("Terms of sale", said.own_words.terms))
    for name, words in named:
        if words:
            yield Words(heading=speech.worded(name), texts=(words,), as_typed=True)
