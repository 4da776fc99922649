"""The drawing of a blanket as a paper has it."""

from __future__ import annotations

from exports.drawing import draw_blanket
from quoting.core.ground.cautions import Reader
from quoting.core.quote.offer import offer_of
from quoting.core.quote.quote import Quote
from quoting.wording import drawing_description, speech_of
from quoting.wording.paper import Picture


def buyers_picture(quote: Quote) -> Picture:
    """Return the drawing that the buyer is shown, in her language. Errors: as `speech_of`."""
    speech = speech_of(offer_of(quote))
    return Picture(
        svg=draw_blanket(quote, speech, reader=Reader.BUYER),
        in_words=drawing_description(quote, (), speech),
    )
