"""An offer as a paper: the drawing beside what is made and its price, then all that is said."""

from __future__ import annotations

from collections.abc import Iterator

from quoting.core.quote.offer import Offer
from quoting.wording.offer import SaidOffer, say_offer
from quoting.wording.paper import Amounts, Beside, Block, Facts, Paper, Picture, Words


def offer_paper(offer: Offer, drawing: Picture) -> Paper:
    """Return an offer in words beside its blanket. Errors: as `speech_of`."""
    said = say_offer(offer)
    own = said.own_words
    beside = Beside(columns=((drawing, *_work(said)), tuple(told_blocks(said))))
    return Paper(
        language=said.language,
        name=said.name,
        maker=said.maker,
        address=tuple(filter(None, (own.address, own.contact))),
        title=said.title,
        heading=said.heading,
        blocks=(*_typed("", own.greeting), beside, *_below(said)),
    )


def told_blocks(said: SaidOffer) -> Iterator[Block]:
    """Yield what is made, for how much and by when."""
    yield Facts(facts=said.facts)
    yield Amounts(rows=said.rows)
    yield Facts(facts=said.days)


def _work(said: SaidOffer) -> Iterator[Block]:
    if said.work.facts:
        yield said.work


def _below(said: SaidOffer) -> Iterator[Block]:
    if said.cautions:
        yield Words(texts=said.cautions, warning=said.warning)
    yield Words(texts=said.notes)
    yield from _typed(said.care_heading, said.own_words.care)
    yield from _typed(said.terms_heading, said.own_words.terms)


def _typed(heading: str, text: str) -> Iterator[Block]:
    if text:
        yield Words(heading=heading, texts=(text,), as_typed=True)
