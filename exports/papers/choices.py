"""A card of choices from quotes: each drawn, none of them given yet."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from exports.drawing import draw_blanket
from quoting.core.ground.cautions import Reader
from quoting.core.quote.offer import offer_of
from quoting.core.quote.quote import Quote
from quoting.wording import drawing_description, speech_of
from quoting.wording.choices import choices_paper
from quoting.wording.paper import Paper, Picture


def card_of(quotes: Sequence[Quote]) -> Paper:
    """Return the card of two or three quotes, in the language of their buyer."""
    return choices_paper([offer_of(quote) for quote in quotes], tuple(_pictures(quotes)))


def _pictures(quotes: Sequence[Quote]) -> Iterator[Picture]:
    """Yield the drawings, each with ids of its own, as they stand on one page."""
    for number, quote in enumerate(quotes, 1):
        speech = speech_of(offer_of(quote))
        drawn = draw_blanket(quote, speech, reader=Reader.BUYER, prefix=f"choice-{number}")
        yield Picture(svg=drawn, in_words=drawing_description(quote, (), speech))
