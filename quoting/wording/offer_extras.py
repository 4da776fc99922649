"""What goes with a blanket, as its buyer reads it, and what it is less without."""

from __future__ import annotations

from quoting.core.quote.offer import Offer
from quoting.wording.catalogues import sentence
from quoting.wording.speech import Speech

_WITHOUT = sentence("Without {what}: {less} less.")


def extras_words(offer: Offer, speech: Speech) -> str:
    """Return the extras of an offer, and what is paid less without those that may be left out."""
    listed = ", ".join(offer.extras)
    if not offer.left_out:
        return listed
    without = (
        speech.worded(_WITHOUT).format(what=extra.what, less=speech.money(extra.less))
        for extra in offer.left_out
    )
    return " ".join([f"{listed.removesuffix('.')}.", *without])
