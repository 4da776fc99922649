"""A card of choices from quotes: each drawn to the same scale, none of them given yet."""

from __future__ import annotations

from collections.abc import Sequence

from exports.drawing import draw_side_by_side
from quoting.core.quote.offer import offer_of
from quoting.core.quote.quote import Quote
from quoting.wording import drawing_description, speech_of
from quoting.wording.choices import choices_paper
from quoting.wording.paper import Paper, Picture


def card_of(quotes: Sequence[Quote]) -> Paper:
    """Return the card of two or three quotes, in the language of their buyer."""
    offers = [offer_of(quote) for quote in quotes]
    speech = speech_of(offers[0])
    drawings = [
        Picture(svg=drawn, in_words=drawing_description(quote, (), speech))
        for quote, drawn in zip(quotes, draw_side_by_side(quotes, speech), strict=True)
    ]
    return choices_paper(offers, drawings)
